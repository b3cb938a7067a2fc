"""Questions about the batch in hand that no reader knew by its words: told by likeness, answered from the record."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import datetime

from bot.conversation import ahead, answered, around, on_the_fire, other_days, read_back
from bot.conversation.around import Answer, Said, of_a, who_did
from bot.conversation.closer import ABOUT, far, figured, is_worded, with_a_mass
from bot.conversation.in_units import said_in
from bot.conversation.remarked import CLEAR, beside_a_remark, singular
from bot.conversation.understand import Understood, context_of
from bot.facts import facts
from bot.intents import when, yard
from bot.intents.called import as_it
from bot.intents.intents import Ask, MoveDeadline
from bot.intents.normal import normal
from bot.intents.questions import find_topic, is_question
from bot.intents.rewriting.slips import mended
from bot.intents.sums.of_heat import CAN_WE_EAT
from bot.intents.sums.told import told
from bot.reply import Reply
from bot.wording import answers as of_answers
from bot.wording import around as of_around
from bot.wording import (
    asking,
    at_table,
    chill_asked,
    cooling,
    general,
    plans,
    recalled,
    reckoned,
    sooner,
    standing,
    talked_of,
    turning,
)
from bot.wording.language import say
from core.answers.dangers import abroad
from core.answers.entries import ENGLISH
from core.answers.find import of_batch
from core.batch.assess import Assessment, assess
from core.batch.batch import Phase
from core.plan.steps import Kind
from core.service import batches
from core.service.turn import Turn

LAST_TIME = "last_time"
AGAIN = "again"
OF_ONES_OWN = frozenset(
    {"eta", "flip_next", "flip_last", "day", "since", "last_reading", "fridge_log", "weight", "meal", "cure_in"}
    | {LAST_TIME, AGAIN}
)  # no matter of the trade, whoever asks
# said as often as asked: «i have to leave»
TOLD = frozenset({"away", "bed", "hand_over", "less_water", "more_salt", "more_water", "no_fire", "quiet"})
OF_THE_CURE = frozenset({"flip_next", "flip_last", "flips_done", "skip_flip"})
SUPPER = 19  # the hour of a meal «tonight». Common practice
_EVENING = re.compile(r"\b(?:tonight|this evening)\b")
_NOT_THEN = re.compile(
    r"\b(?:(?:cant|can not|cannot|wont) (?:make|do|be there|be home|cook|smoke|come)(?: it)?|instead of|rather than"
    r"|than|not)"
    r"(?: on)?(?: this| next)? (?:mon|tue|wed|thu|fri|sat|sun)\w*,?"
)  # the day that is none
_OF_SOMEBODY = re.compile(
    r"\b(?:neighbou?rs?|friends?|mates?|buddy|cousin|uncle|he|she|they)\b.*\b(?:his|hers|theirs?)\b"
)
TURNED = re.compile(  # of the piece on the grate, and of no bag
    r"^(?:(?:so|and|ok) )*(?:(?:can|should|shall|do|may|must) i (?:have to |need to )?)?(?:flip|turn|rotate|move)"
    r" (?:it|the meat)(?: over| around)?\b(?! ?(?:up|down|off|on|(?:in|into|to|inside) (?:the )?(?:oven|house))\b)"
)
_BETWEEN = re.compile(  # asked of several: whose reading it was, and which comes first
    r"\b(?:which|whose|who)\b.*(?<![\d.:])\d{2,3}\b(?! ?(?:days?|h\b|hours?))"
    r"|\bis (?:the |that )?\d{2,3} (?:the|my|it)\b"
    r"|\b(?:which|what|who|or)\b.*\b(?:first|urgent|before the other|closer to|further along|nearest|soonest)\b"
    r"|\b(?:each|both|every) (?:one|batch|of them)\b.*\b(?:needs?|next|due|at|doing)\b"
)
_LIES = ("waiting", "curing")
_SO_MANY_DAYS = re.compile(  # «is 4 days enough» of the piece that lies there, and of nobody's absence
    r"^(?!.*\b(?:away|gone|off|without|fridge|warm|flip\w*|turn\w*|thaw\w*|freez\w*|keep\w*|rest|ago|late)\b)"
    r".*\b\d{1,2}(?:\.\d)? days?\b.*\b(?:enough|plenty|too (?:short|few|little|long|many)|ok|okay|do it)\b"
    r"|^(?:is|are|would|will) \d{1,2}(?:\.\d)? days? (?:do|be enough|enough)\b"
    r"|^(?!.*\b(?:flip\w*|turn\w*|check\w*|read\w*)\b).*\b(?:skip\w*|cut|drop|shorten|lose|knock off|ditch)\b.{0,14}"
    r"\b(?:the rest|cure short|(?:last|final) day"
    r"|(?:\d|one|two|three|four|few|couple of|last|remaining|other|these|those) (?:\w+ )?days?)\b"
    r"|\b(?:smoke|cook) (?:it|this) (?:right )?(?:now|today|tonight|tomorrow)\b.*\bdays?\b"
)
_OURS = re.compile(
    r"\b(?:mine|ours|our (?:meat|batch|one|brisket|bag)|my (?:meat|batch|one)|of this|the bag|(?:did|have|are) we"
    r"|(?:did|have) i|this (?:one|batch|cook|piece|lot|thing|ham|bird|leg|bacon|belly|brisket|flat))\b"
)
_TELLS = re.compile(
    r"(?:i|we|its?|that|this|not|quiet|sorry|no|nope|oops|strike|maybe|wrong|flipped|turned(?! out)"
    r"|did (?:it|that|this|the|both|not)|done|added|put|took|missed|fried|only|been)\b"
)  # and asks nothing


def topic_of(turn: Turn, text: str, phase: str) -> Ask | None:
    """What a line asks of a batch in that phase, by likeness; None where an entry is as likely, or figures are told."""
    language = turn.person.language
    if abroad(text):  # grave by its own words, whatever its English may be like
        return None
    typed, text = text, _as_it(turn, text)
    plain = normal(text, language)
    if text != typed and (found := find_topic(plain, phase)) and isinstance(found[1], Ask):
        return replace(found[1], text=typed)  # «is the bacon ok»: asked as «is it ok»
    if _OF_SOMEBODY.search(plain) or (phase == "cooking" and TURNED.search(plain)):
        return None
    if phase == "cooking" and on_the_fire.core_doubted(plain, turn.person) is not None:
        return Ask("pull_at", text=text)
    if _BETWEEN.search(plain) and len(batches.open_here(turn)) > 1:
        return Ask("batches", text=text)
    if by_name := ahead.topic(turn, text, phase):
        return Ask(by_name, text=text)
    if phase in _LIES and _SO_MANY_DAYS.search(plain) and not figured(plain):
        return Ask("earlier", text=text)
    asked = mended(text.lower()) if language == ENGLISH else plain
    named = of_batch(asked, far=far(phase), ours=bool(_OURS.search(plain))) or beside_a_remark(asked, far(phase))
    named = "pull_at" if named in (None, "feed") and phase == "cooking" and CAN_WE_EAT.search(plain) else named
    if _TELLS.match(plain) and not is_question(plain) and named not in TOLD:
        return None
    if (
        named is None
        or not is_worded(named, text if language == ENGLISH else plain)
        or yard.is_ahead(named, phase)
        or (figured(plain) and named not in with_a_mass(plain))
    ):
        return None
    topic, about = ABOUT.get(named, (named, ""))
    return Ask(topic, about, text)


def _as_it(turn: Turn, text: str) -> str:
    """«when is the bacon ready» of who has a batch called «bacon»: asked of it, and not of bacon; so is «the fish»."""
    here = batches.open_here(turn)
    for row in here:
        text = re.sub(rf"(?<!\ba )(?<!\ban )\b(?:(?:the|my) )?{re.escape(row.name)}\b", "it", text, flags=re.IGNORECASE)
    return singular(as_it(text, told(here[0].name).species) if len(here) == 1 else text)


def answer(turn: Turn, meant: Understood, intent: Ask) -> Sequence[Reply]:
    """One of the topics here answered; nothing where it is none of them."""
    if intent.topic not in TOPICS:
        return ()
    a = said_in(batches.look(turn, intent.batch or _that_has_it(turn, meant, intent.topic)), intent.text)
    said = TOPICS[intent.topic](turn, meant, (a, intent.text))
    text, rows = said if isinstance(said, tuple) else (said, ())
    body = facts(a) | {"answer_kind": "batch", "topic": intent.topic}
    answered.remember(turn, f"batch:{intent.topic}", intent.text or meant.message.text)
    return (Reply(text, buttons=rows, facts=body, about=a.batch.id),)


def _that_has_it(turn: Turn, meant: Understood, topic: str) -> str:
    """«when do i flip», where the batch of the talk has no flips: the one other that lies in its cure."""
    if topic not in OF_THE_CURE or meant.sure or meant.a is None or meant.a.batch.phase is Phase.CURING:
        return meant.of(None)
    found = [row.id for row in batches.open_here(turn) if batches.look(turn, row.id).batch.phase is Phase.CURING]
    return found[0] if len(found) == 1 else meant.of(None)


def without(turn: Turn, text: str) -> Sequence[Reply]:
    """A question about a batch where none is under way: what the last one was, or how to begin; else nothing."""
    if (found := topic_of(turn, text, "none")) is None or found.topic not in OF_ONES_OWN:
        return ()
    past = batches.latest(turn) if found.topic in (LAST_TIME, AGAIN) else None
    if past is not None and found.topic == AGAIN:
        said = around.repeated(past, found.text)
        return (Reply(said, facts={"answer_kind": "asked_back", "topic": AGAIN}),)
    body = {"answer_kind": "asked_back", "topic": found.topic}
    return (Reply(general.no_batch() if past is None else f"{reckoned.last_time(past)}\n{_again()}", facts=body),)


def of_none(text: str) -> bool:
    """Whether a line is plainly about somebody's own batch, and there is none."""
    return of_batch(text, CLEAR) in OF_ONES_OWN


def _again() -> str:
    return say("For another, type its weight and the meal, like «3.2 kg brisket flat for saturday 13:00».")


def _last_time(turn: Turn, a: Assessment) -> str:
    return of_around.compared(a, batches.latest(turn, a.batch.id))


def _flip_last(turn: Turn, a: Assessment) -> str:
    last = turning.last_flip(a)
    return turning.flip_last(a, who_did(turn, a, last.key) if last else "")


def _cure_in(turn: Turn, a: Assessment) -> str:
    return recalled.cure_in(a, recalled.dosed_at(a), who_did(turn, a, Kind.BRINE.value))


def _cooled(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> str:
    a, text = of
    if a.ledger.cooling is not None:
        return f"{chill_asked.lead(a, text)}\n{cooling.stands(a)}".strip()
    return of_answers.safe(a) if a.batch.off_at else say("It does not cool yet. {next}", next=plans.coming(a)).strip()


def _in_time(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> str | Said:
    """«will it be ready by saturday instead»: whether it can be, and the tap that moves it there."""
    a, _ = of
    if a.batch.off_at is not None:
        return at_table.tonight(a)
    if said := on_the_fire.by_hour(turn, meant, of):
        return said
    wanted = _wanted(turn, meant, of)
    if wanted is None or a.plan is None or abs(wanted - a.plan.serve) < sooner.WORTH:
        return sooner.in_time(a)
    return _moved_to(turn, a, wanted)


def _moved_to(turn: Turn, a: Assessment, wanted: datetime) -> str | Said:
    """The meal at another time as it would be, and the tap that moves it there where it can be had."""
    then = assess(replace(a.batch, setup=replace(a.batch.setup, deadline=wanted)), a.person, turn.now)
    text = sooner.moved(a, then, wanted)
    if then.plan is None or then.plan.late >= sooner.WORTH or wanted <= a.now:
        return text
    return text, ((asking.button(say("Move the meal"), MoveDeadline(to=wanted, batch=a.batch.id)),),)


def _cook_on(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> str | Said:
    """The cook on another day: the meal moves by as many days; what burns already is cooked today."""
    a, text = of
    if a.on_at is not None:
        said = _in_time(turn, meant, (a, _NOT_THEN.sub("", text.lower())))
        lead, rows = said if isinstance(said, tuple) else (said, ())
        return f"{sooner.cooks_already(a)}\n{lead}", rows
    planned = next((s for kind in (Kind.LIGHT, Kind.MEAT_ON) if a.plan for s in a.plan.of_kind(kind)), None)
    asked = normal(_NOT_THEN.sub("", text.lower()), turn.person.language).strip(" ?")
    day = other_days.day_asked(turn, meant, (a, asked))
    if planned is None or a.plan is None or day is None:
        return of_around.no_fire(a, None)
    later = day - planned.due.astimezone(a.person.tz).date()
    if not later:
        return sooner.cooks_then(a, planned)
    return _moved_to(turn, a, a.plan.serve + later)


def _wanted(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> datetime | None:
    a, text = of
    plain = re.sub(r"\b(?:make|by|for|around) (?=\d)", "at ", normal(text, turn.person.language))
    plain = re.sub(r"\binstead of .*$|\binstead\b", "", plain).strip(" ?")
    said = when.meal(plain, context_of(turn, meant.message, None, a))
    if said is None or not (said.day_said or said.hour_said):
        return None
    evening = not said.hour_said and bool(_EVENING.search(plain))
    return said.at.astimezone(a.person.tz).replace(hour=SUPPER) if evening else said.at


def _slice(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> str:
    """When and how it is cut; and how it is warmed, where both are asked for."""
    a, text = of
    warm = at_table.warm_up(a) if re.search(r"\b(?:re)?(?:heat|warm|steam)\w*", text.lower()) else ""
    return f"{at_table.slice_(a)}\n{warm}".strip()


def _use_by(a: Assessment) -> Said:
    """Until when it keeps; where that hangs on a fridge that nobody read, the tap that says that it stayed cold."""
    return recalled.keeps(a), asking.fridge_stayed_cold(a) if a.batch.off_at is not None else ()


def _hand_over(a: Assessment) -> str:
    return f"{talked_of.hand_over(a)}\n{of_around.taken_over(a)}".strip()


def _of_turn(words: Callable[[Turn, Assessment], str]) -> Answer:
    return lambda turn, meant, of: words(turn, of[0])


TOPICS: Mapping[str, Answer] = {
    **around.TOPICS, **on_the_fire.TOPICS, **ahead.TOPICS, **read_back.TOPICS,
    "day": of_a(standing.day), "out": of_a(standing.out), "since": of_a(standing.since),
    "flip_next": of_a(turning.flip_next), "flip_last": _of_turn(_flip_last), "missed": of_a(turning.missed),
    "fridge_log": of_a(recalled.fridge), "weight": of_a(recalled.weight), "cure_in": _of_turn(_cure_in),
    "is_cured": of_a(recalled.is_cured), "cured_yet": of_a(sooner.cured_yet), "earlier": other_days.earlier,
    "longer": other_days.longer, "eat_cold": of_a(talked_of.eat_cold), "cooled": _cooled, "in_time": _in_time,
    "cook_on": _cook_on, "no_probe": of_a(recalled.no_probe), "another_meat": of_a(of_around.another_meat),
    "meal": of_a(standing.meal),
    "off": of_a(reckoned.off),
    "rest": of_a(talked_of.rest), "slice": _slice,
    "warm_up": of_a(at_table.warm_up), "cooked_for": of_a(at_table.cooked_for),
    "use_by": of_a(_use_by), "cooker": of_a(reckoned.cooker_runs),
    LAST_TIME: _of_turn(_last_time), "catch_up": of_a(reckoned.catch_up), "need": of_a(reckoned.need),
    "method": of_a(recalled.method), "strength": of_a(recalled.strength), "salty": of_a(talked_of.salty),
    "why_cold": of_a(talked_of.why_cold),
    "quiet": of_a(talked_of.quiet), "hand_over": of_a(_hand_over),
    "take_back": of_a(talked_of.take_back),
}  # fmt: skip
