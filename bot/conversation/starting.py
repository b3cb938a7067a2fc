"""Beginning a batch: what is missing is asked for one thing at a time, and nothing that was said is lost."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType
from typing import Any

from bot import measures
from bot.conversation import meats_in_turn, on_that_day
from bot.conversation.as_planned import show
from bot.conversation.half import NO_CUT, TOLD, adds_to, of_each
from bot.conversation.lacking import ask, missing
from bot.conversation.meats_in_turn import AND_THEN, made
from bot.conversation.understand import Understood
from bot.intents.again import LIKE_LAST
from bot.intents.intents import Start
from bot.intents.severally import said_of
from bot.reply import Reply
from bot.wording import batches as several
from bot.wording import meat_names, refusals, taken
from core.errors import OtherWay, OutOfRange, UnknownCure
from core.person import Person
from core.plan.hours import wall_of
from core.service import batches
from core.service.turn import Turn

SAME_KG = 0.0005
NO_LAST = "no_last"  # among what a start assumes: «as last time» was said, and there was none
TYPED_IN = "typed_in"  # "kg" or "lb", as a first weight was typed


def start(turn: Turn, meant: Understood, intent: Start) -> Sequence[Reply]:
    """A batch begun, or the one question that has to be answered first."""
    goes_on = bool((meant.asked or {}).get("said")) and bool(intent.said)
    intent = _like_last(turn, intent) if LIKE_LAST in intent.assumed else intent
    half = (meant.asked or {}).get("said") or {}
    said = _said(intent, meant.asked) | on_that_day.kept(turn, meant, intent) | _typed_in(meant.message.text)
    said |= {AND_THEN: meats_in_turn.told_on(half, list(intent.then))} if intent.then else {}
    both = (made(half), made(intent.said))
    if not adds_to(intent, meant.asked) and "" not in both and both[0] != both[1]:
        said = meats_in_turn.beside(said, half, meant.message.text)
    said = meats_in_turn.its_turn(turn, said)
    replies = begin(turn, said, dict(_slot(one) for one in intent.unclear))
    if intent.then:
        names = meats_in_turn.names(list(intent.then))
        replies = (replace(replies[0], text=several.one_by_one(replies[0].text, names)), *replies[1:])
    if NO_LAST in intent.assumed:
        replies = (replace(replies[0], text=f"{taken.no_last()}\n{replies[0].text}"), *replies[1:])
    return tuple(taken.beside(as_taken(turn, reply, intent.assumed), kept=goes_on) for reply in replies)


def _like_last(turn: Turn, intent: Start) -> Start:
    """The same product and cut as in this person's last batch, where there was one and nothing else was named.

    What else they do as before, and what the slices taught, the plan takes from the past by itself.
    """
    past = batches.latest(turn)
    named = {"product", "cut"} & intent.said.keys()
    if past is None or named:
        unknown = (NO_LAST,) if past is None else ()
        return replace(intent, assumed=(*(one for one in intent.assumed if one != LIKE_LAST), *unknown))
    setup = past.batch.setup
    return replace(intent, said={"product": setup.product, "cut": setup.cut} | intent.said)


def as_taken(turn: Turn, reply: Reply, assumed: Collection[str]) -> Reply:
    """The reply about a batch with how an open line was taken, and the other reading one tap away."""
    if not assumed or reply.about is None:
        return reply
    lines, rows = taken.taken(batches.look(turn, reply.about), assumed)
    text = "\n".join([reply.text, *lines])
    return replace(reply, text=text, buttons=(*reply.buttons, *rows), facts={**reply.facts, "assumed": list(assumed)})


def begin(turn: Turn, said: dict[str, Any], unclear: Mapping[str, str] = MappingProxyType({})) -> Sequence[Reply]:
    """Go on with a start: ask for the first thing that is missing, or make the batch and show its plan.

    `unclear` holds what was typed and could not be taken, by slot.
    """
    question = missing(turn, said, of_each(said, unclear))
    if question is not None:
        return (question,)
    turn.ask(None)
    beside = {key: those for key in (AND_THEN, TOLD) if (those := said.pop(key, None))}
    then = beside.get(AND_THEN, [])
    said.pop("mass_value", None)  # a weight without its unit, told again since
    _keep_unit(turn, said.pop(TYPED_IN, None))
    keep_packet(turn, said)
    again = _said_anew(turn, said)
    try:
        change = (
            batches.start(turn, said, meat_names.short_name) if again is None else batches.change(turn, again, said)
        )
    except OtherWay as other:  # «whole chicken, brined»: said, and planned in the way that does for it
        if "method" not in said:
            raise
        first, *rest = begin(turn, {k: v for k, v in said.items() if k != "method"} | beside)
        return (replace(first, text=f"{refusals.say(other, turn.person)}\n{first.text}"), *rest)
    except OutOfRange as odd:
        if odd.quantity not in ("mass", "thickness"):
            raise
        kept = said | beside  # the weight too: «2 pieces» may be the answer
        return (ask(turn, odd.quantity, kept, refusals.say(odd, turn.person), ()),)
    shown = (*show(turn, change.after), *dosed_too(turn, change.after.batch.id, said))
    return (*shown, *go_on(turn, then))


def go_on(turn: Turn, then: list[dict[str, Any]]) -> Sequence[Reply]:
    """The next of the meats that wait begins, unless a question about the one before it is open."""
    if not then or meats_in_turn.wait(turn, then):
        return ()
    return begin(turn, {**then[0], AND_THEN: then[1:]})


def _typed_in(text: str) -> dict[str, str]:
    """The unit of the weight in a line, where there is one and no other."""
    units = {m.unit for m in measures.find(text.lower()) if m.kind == "mass"} & {"kg", "lb"}
    return {TYPED_IN: units.pop()} if len(units) == 1 else {}


def _keep_unit(turn: Turn, unit: str | None) -> None:
    """Who types a first weight in kilos reads kilos, whatever their city made us guess; what they said stays."""
    if unit is not None and not turn.person.units_known:
        turn.keep_person(units=replace(turn.person.units, mass=unit), units_known=True)


def dosed_too(turn: Turn, but: str, said: Mapping[str, Any]) -> Sequence[Reply]:
    """The other batches of the same cook that waited for the strength of the curing salt: each has its plan now."""
    strength = said.get("cure_nitrite_fraction")
    if strength is None or said.get("cure_nitrate_fraction"):
        return ()
    replies: list[Reply] = []
    for row in batches.open_here(turn):
        a = batches.look(turn, row.id)
        if row.id != but and a.person.id == turn.person.id and isinstance(a.refusal, UnknownCure):
            replies += show(turn, batches.change(turn, row.id, {"cure_nitrite_fraction": strength}).after)
    return replies


def keep_packet(turn: Turn, said: Mapping[str, Any]) -> None:
    """The packet outlasts the batch. One with nitrate is asked for again: nobody may dose it by its nitrite alone."""
    if said.get("cure_nitrate_fraction"):
        turn.keep_person(cure_nitrite_fraction=None)
    elif said.get("cure_nitrite_fraction") is not None:
        turn.keep_person(cure_nitrite_fraction=said["cure_nitrite_fraction"])


def _said_anew(turn: Turn, said: dict[str, Any]) -> str | None:
    """The batch of this very piece that could not be planned yet: typed once more, it is that one and no second."""
    for row in batches.open_here(turn):
        a = batches.look(turn, row.id)
        setup = a.batch.setup
        same = setup.cut == said.get("cut", setup.cut) and abs(setup.mass - said["mass"]) < SAME_KG
        if same and a.refusal is not None and not a.batch.done and setup.pieces == said.get("pieces", 1):
            return row.id
    return None


def on_the_wall(said: dict[str, Any], before: Person, after: Person) -> dict[str, Any]:
    """A meal that was named before the zone was known keeps the day and the hour that were typed."""
    deadline = said.get("deadline")
    if deadline is None:
        return said
    typed, known = wall_of(before), wall_of(after)
    return said | {"deadline": known.at(typed.day(deadline), typed.clock(deadline).replace(tzinfo=None))}


def _said(intent: Start, asked: dict[str, Any] | None) -> dict[str, Any]:
    """Everything that was said of a start: with a question about a half one still open, both together."""
    half = (asked or {}).get("said") or {}
    said = (half if adds_to(intent, asked) else {}) | said_of(intent)
    for name in ("mass_value", *((NO_CUT,) if intent.said.keys() & {"product", "cut"} else ())):
        said.pop(name, None)
    return said


def _slot(unclear: str) -> tuple[str, str]:
    """ "mass:900 kg" as its slot and the words."""
    slot, _, typed = unclear.partition(":")
    return slot, typed
