"""Questions around a batch that want more than its record: who did a step, what a new piece or weight makes of it."""

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final, TypeAlias

from bot import measures
from bot.conversation import water
from bot.conversation.understand import Understood, context_of
from bot.intents import guests, spans, when
from bot.intents.intents import MoveDeadline, Pause, Snooze
from bot.intents.normal import normal
from bot.intents.pauses import read_pause
from bot.intents.sums.told import told
from bot.wording import (
    around,
    asking,
    chill_asked,
    chilling,
    errands,
    fridge,
    measured,
    numbers,
    readings,
    reckoned,
    standing,
    talked_of,
    turning,
    unkept,
)
from bot.wording.language import say
from core.batch.assess import Assessment, assess
from core.batch.batch import Phase
from core.batch.events import Probe
from core.plan.steps import Kind, State
from core.service import households
from core.service.turn import Turn
from core.units import Kilograms

Of: TypeAlias = tuple[Assessment, str]
Said: TypeAlias = tuple[str, asking.Rows]
Answer: TypeAlias = Callable[[Turn, Understood, Of], str | Said]
WITH_A_MASS: Final = frozenset(
    {"another_piece", "reweighed", "grams", "less_water", "more_water", "more_salt"}
)  # asked of this batch with a weight of its own
_STEPS: Final = tuple(
    (kind, re.compile(words))
    for kind, words in (
        (Kind.INTO_CURE, r"\b(?:(?:in(?:to|side)?|went in) (?:the )?(?:brine|cure|bag|tub|bucket)|bagged)\b"),
        (Kind.OUT, r"\b(?:out of (?:the )?(?:brine|cure|bag|tub)|comes? out|came out)\b"),
        (Kind.FLIP, r"\b(?:flip\w*|turn(?:ed)?)\b"),
        (Kind.RINSE, r"\brins\w*\b"),
        (Kind.DRY, r"\bdry(?:ing)?\b(?! (?:cur\w+|salt|brin\w+|rub|wood))"),
        (Kind.RUB, r"\brub\w*\b"),
        (Kind.LIGHT, r"\b(?:lit|light|fire (?:going|started))\b"),
        (Kind.WRAP, r"\b(?:wrap\w*|foil\w*)\b"),
        (Kind.MEAT_ON, r"\b(?:(?:meat|it|that|go|went|put|goes) (?:it |the meat )?on)\b"),
        (Kind.OFF, r"\b(?:(?:come|came|took|take|pull\w*) (?:it |the meat )?off)\b"),
        (Kind.CHILL, r"\b(?:ice|chill\w*)\b"),
        (Kind.SLICE, r"\b(?:slic\w+|carv\w+|cut)\b"),
        (Kind.BRINE, r"\b(?:ma[dk]e|mix\w*|stirred) .*\bbrine\b"),
        (Kind.SERVE, r"\b(?:meal|dinner|lunch|supper|eat)\b"),
    )
)
_ASKED: Final = re.compile(
    r"^(?:so |and |ok )?(?:who|when|what time|did|have|has|was|how long (?:ago|since|is it since)|since when)\b"
    r"(?!.*\b(?:next|should|ppm|say|said)\b)"
)
_LESS: Final = re.compile(r"\b(?:less|not (?:so|as)|lower|weaker|reduce)\b")
_MORE: Final = re.compile(r"\b(?:more|saltier|stronger)\b")
_WEIGHT: Final = re.compile(r"(?<![\d.])\d{1,2}(?:\.\d{1,2})?(?![\d.])")
_DEGREES: Final = re.compile(  # no hour of the day, and no span
    r"(?<![\d.:])(?:(?:1?\d|2[0-4])(?![\d.:]| ?(?:oclock|tonight|tomorrow|in the))|2[5-9]|[3-9]\d)"
    r"(?![\d.:]| ?(?:h|hours?|min|days?|am|pm))"
)
_OF_A_BRINE: Final = (-2.0, 27.0)  # °C; what a pot in a kitchen or a fridge reads, and no hour of the day
_TO_GET_UP: Final = re.compile(r"\b(?:today|tomorrow|tonight|get up|be up)\b")
_AT_ONCE: Final = re.compile(r"\b(?:flip|turn)\b.{0,8} now\b")
_A_NIGHT: Final = re.compile(r"\b(?:bed|sleep\w*|nap|night|overnight|kip|snooze)\b")
_WHAT_THEN: Final = re.compile(
    r",? ?\b(?:so |and )?(?:what (?:happens|then|now|do i do|about (?:it|the \w+))"
    r"|is (?:that|it) (?:ok|okay|fine|bad)\b.*|ok|okay|fine)[ ?]*$|\bwhat happens (?:when|if|while) "
)
_MORE_PEOPLE: Final = re.compile(r"\b(?:add\w*|extra|plus|another|\d+ (?:more|extra))\b(?!.*\b(?:in all|total)\b)")
MAY_WAIT: Final = (Kind.FLIP, Kind.FRIDGE_CHECK, Kind.MID_CHECK)
SOON: Final = timedelta(minutes=1)
NEAR: Final = 0.03  # of its weight: the figure that was said before


def step_asked(text: str) -> Kind | None:
    """The step that somebody asks who did it, or when it was done."""
    plain = text.lower().strip(" ?")
    return step_named(plain) if _ASKED.search(plain) else None


def step_named(plain: str) -> Kind | None:
    """The first step that a text in small letters names."""
    return next((kind for kind, words in _STEPS if words.search(plain)), None)


def _done_step(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    kind = step_asked(text) or step_named(text.lower()) or Kind.FLIP
    return around.done_step(a, kind, who_did(turn, a, kind.value))


def who_did(turn: Turn, a: Assessment, step: str) -> str:
    """Who said that a step was done, by name; "" where nobody did, or has no name."""
    did = households.who_did(turn, a.batch.id, step)
    if did is not None and did[0] == turn.person.id:
        return say("you")
    return "" if did is None else households.name_of(turn, did[0]) or ""


def _call_at(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    return around.call_at(a, step_named(text.lower()))


def _earliest(turn: Turn, meant: Understood, of: Of) -> str | Said:
    """The soonest meal, and the tap that moves it there."""
    a, _ = of
    soon = turn.now + SOON  # as if it were wanted at once, so that the plan says what can be had
    then = assess(replace(a.batch, setup=replace(a.batch.setup, deadline=soon)), a.person, turn.now)
    said = around.earliest(a, then)
    if then.plan is None or a.plan is None or then.plan.serve >= a.plan.serve:
        return said
    return said, ((asking.button(say("Move the meal"), MoveDeadline(to=then.plan.serve, batch=a.batch.id)),),)


def _day(turn: Turn, meant: Understood, a: Assessment, text: str) -> datetime | None:
    said = when.meal(normal(text, turn.person.language).strip(" ?"), context_of(turn, meant.message, None, a))
    return said.at if said is not None and said.day_said else None


def _no_fire(turn: Turn, meant: Understood, of: Of) -> str:
    return around.no_fire(of[0], _day(turn, meant, *of))


def _mass(turn: Turn, text: str) -> Kilograms | None:
    found = [m.value for m in measures.find(normal(text, turn.person.language)) if m.kind == "mass"]
    return found[0] if found else None


def _another_piece(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    mass = _mass(turn, text)
    if mass is None:
        return say("How heavy is the new piece? Ask once more, with its weight.")
    return around.another_piece(a, mass)


def _grams(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    mass = _mass(turn, text)
    return around.grams(a, a.dose.cure_kg if a.dose else 0.0) if mass is None else around.grams(a, mass)


def _reweighed(turn: Turn, meant: Understood, of: Of) -> str:
    """The weight of the two that is not the one which was said before."""
    a, text = of
    plain, was = normal(text, turn.person.language), a.batch.setup.mass
    told = [m.value for m in measures.find(plain) if m.kind == "mass"]
    bare = [float(n) for n in _WEIGHT.findall(plain)] if not told else []
    ways = [told] if told else [[measures.to_house(n, unit) for n in bare] for unit in ("kg", "lb")]
    known = next((masses for masses in ways if any(abs(m - was) <= NEAR * was for m in masses)), None)
    masses = known or (told or ([measures.to_house(n, a.person.units.mass) for n in bare]))
    new = next((m for m in masses if abs(m - was) > NEAR * was), None)
    if new is None or not 0.5 * was <= new <= 2.0 * was:
        return say("What does it weigh now? Type it, like «it weighs 3.1 kg».")
    return around.reweighed(a, new)


def _again(turn: Turn, meant: Understood, of: Of) -> str:
    return repeated(*of)


def repeated(a: Assessment, text: str) -> str:
    """A batch once more, with as much salt as a line wishes."""
    plain = text.lower()
    return around.again(a, -1 if _LESS.search(plain) else 1 if _MORE.search(plain) else 0)


def _leaves(words: Callable[[Assessment], str | Said]) -> Answer:
    """Somebody goes: for some hours, where a line says how many and means no night, or for as long as it may be."""

    def answer(turn: Turn, meant: Understood, of: Of) -> str | Said:
        a, text = of
        plain = normal(text, turn.person.language)
        span = spans.span(plain)
        short = span is not None and timedelta(0) < span <= errands.LONGEST and not _A_NIGHT.search(plain)
        return errands.out_for(a, span) if span is not None and short else words(a)

    return answer


def _away(turn: Turn, meant: Understood, of: Of) -> str | Said:
    """Somebody goes, as for a bed; and between two times that are told, what falls due meanwhile."""
    a, text = of
    plain = _WHAT_THEN.sub("", normal(text, turn.person.language)).strip(" ,?")
    gone = read_pause(plain, context_of(turn, meant.message, None, a))
    said = _leaves(talked_of.away)(turn, meant, of)
    if not isinstance(gone, Pause) or gone.until is None:
        return said
    words, rows = said if isinstance(said, tuple) else (said, ())
    due = errands.due_between(a, gone.since or a.now, gone.until)
    if any(step.kind not in MAY_WAIT for step in due):
        words = errands.wants_somebody(a)
    return f"{errands.listed(a, due)}\n{words}", rows


def _skip_flip(turn: Turn, meant: Understood, of: Of) -> str | Said:
    """A flip left out; at another hour that is named, called for then by a tap."""
    a, text = of
    said = when.future(normal(text, turn.person.language).strip(" ?"), context_of(turn, meant.message, None, a))
    waiting = [s for s in turning.flips(a) if s.state in (State.DUE, State.AHEAD)]
    if waiting and a.batch.phase is Phase.CURING and _AT_ONCE.search(text.lower()):
        return errands.flip_at(a, say("Now"))
    far = bool(said and waiting) and said.at - waiting[0].due >= timedelta(days=1)  # more than one left out
    if said is None or not said.hour_said or far or not waiting or a.batch.phase is not Phase.CURING:
        return errands.no_flip_on(a, said.at) if far and said and said.day_said else turning.skip_flip(a)
    at = numbers.when(said.at, a.person, a.now)
    if said.at <= waiting[0].due:
        return errands.flip_at(a, at)
    later = asking.button(say("Call me at {at}", at=at), Snooze(until=said.at, step=waiting[0].key, batch=a.batch.id))
    return errands.flip_at(a, at), ((later,),)


def _more_salt(turn: Turn, meant: Understood, of: Of) -> str:
    """Plain salt too much, by its grams where they are told."""
    a, text = of
    return unkept.more_salt(a, _mass(turn, text))


def _brine_cold(turn: Turn, meant: Understood, of: Of) -> str:
    """When the brine is cold enough; of a temperature that is named, whether that is."""
    a, text = of
    plain = normal(text, turn.person.language)
    marked = [m.value for m in measures.find(plain) if m.kind == "temperature"]
    bare = [measures.to_house(float(n), a.person.units.temperature) for n in _DEGREES.findall(plain)]
    step = standing.of_step(Kind.BRINE_CHECK, a)
    told_ = next((c for c in marked or bare if _OF_A_BRINE[0] <= c <= _OF_A_BRINE[1]), None)
    last = a.batch.last(Probe.BRINE)
    if told_ is None and last is None:
        return f"{unkept.to_be_read(a)}\n{step}"
    return f"{unkept.cold_enough(last.celsius if told_ is None and last else told_ or 0.0, a)}\n{step}"


def _left(turn: Turn, meant: Understood, of: Of) -> str:
    """What is still to be done; of a day that is named, what falls on that."""
    a, text = of
    day = _day(turn, meant, a, text)
    lines = standing.on_that_day(a, day) if day is not None and _TO_GET_UP.search(text.lower()) else []
    return "\n".join(lines) or standing.left(a)


def _chill(turn: Turn, meant: Understood, of: Of) -> str | Said:
    """How the chill stands and when it is cold, once it is in it; else each way of chilling."""
    a, text = of
    in_it = "chill" in a.batch.done and a.batch.phase is Phase.CHILLING
    return chill_asked.asked(a, text) if in_it and a.ledger.cooling else chilling.asked(a)


_SLICES: Final = re.compile(r"\bhow many (?:\w+ )?slices\b")


def _feed(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    plain = normal(text, turn.person.language)
    if _MORE_PEOPLE.search(plain) and guests.how_many(plain) is None:  # so many beside those who nobody counted
        return reckoned.feed_more(a)
    sliced = f"{reckoned.slices(a)}\n" if _SLICES.search(plain) else ""
    return sliced + reckoned.feed(a, told(plain).people or guests.how_many(plain))


def of_a(words: Callable[[Assessment], str | Said]) -> Answer:
    """The answer that needs the batch alone."""
    return lambda turn, meant, of: words(of[0])


TOPICS: Final[Mapping[str, Answer]] = {
    "bed": _leaves(talked_of.bed), "away": _away, "skip_flip": _skip_flip, "feed": _feed,
    "begin": of_a(standing.begin), "fire_hours": of_a(reckoned.fire_hours),
    "no_record": of_a(unkept.no_record), "vessel": of_a(unkept.vessel),
    "less_water": water.of_less, "more_water": water.of_more, "more_salt": _more_salt,
    "probe_lost": of_a(readings.probe_out),
    "left": _left, "chill": _chill, "brine_cold": _brine_cold,
    "late": of_a(around.late), "flips_done": of_a(turning.flips_done), "done_step": _done_step, "earliest": _earliest,
    "altogether": of_a(measured.altogether), "portion_salt": of_a(measured.portion_salt), "ice": of_a(measured.ice),
    "grams": _grams, "no_fire": _no_fire, "photo": of_a(around.photo),
    "another_piece": _another_piece, "reweighed": _reweighed, "again": _again, "which_call": of_a(around.which_call),
    "call_at": _call_at, "rub": of_a(measured.rub), "fridge_if": of_a(fridge.how_cold),
}  # fmt: skip
