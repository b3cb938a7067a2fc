"""Beginning a batch: what is missing is asked for one thing at a time, and nothing that was said is lost."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType
from typing import Any

from bot import measures
from bot.conversation import meats_in_turn
from bot.conversation.half import NO_CUT, adds_to, pack, take_cut
from bot.conversation.meats_in_turn import AND_THEN, made
from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.again import LIKE_LAST
from bot.intents.intents import Start
from bot.intents.severally import said_of
from bot.intents.weights import share_of
from bot.reply import Reply
from bot.wording import asking, cautions, doses, general, meat_names, other_cuts, plans, put_in, refusals, taken
from bot.wording import batches as several
from core.batch.assess import Assessment, Change
from core.batch.ways import alternatives
from core.batch.weighed import is_told
from core.errors import OtherWay, OutOfRange, SaltbellError, TooSoon, UnknownCure
from core.person import Person
from core.plan.hours import wall_of
from core.service import batches
from core.service.turn import Turn

SAME_KG = 0.0005
NO_LAST = "no_last"  # among what a start assumes: «as last time» was said, and there was none
SHARE = "share"  # several pieces with one weight, of which nobody said yet whether it is that of each
TYPED_IN = "typed_in"  # "kg" or "lb", as a first weight was typed


def start(turn: Turn, meant: Understood, intent: Start) -> Sequence[Reply]:
    """A batch begun, or the one question that has to be answered first."""
    goes_on = bool((meant.asked or {}).get("said")) and bool(intent.said)
    intent = _like_last(turn, intent) if LIKE_LAST in intent.assumed else intent
    half = (meant.asked or {}).get("said") or {}
    said = _said(intent, meant.asked) | _typed_in(meant.message.text)
    said |= {AND_THEN: list(intent.then)} if intent.then else {}
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
    question = _missing(turn, said, unclear)
    if question is not None:
        return (question,)
    turn.ask(None)
    then = said.pop(AND_THEN, [])
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
        first, *rest = begin(
            turn, {k: v for k, v in said.items() if k != "method"} | ({AND_THEN: then} if then else {})
        )
        return (replace(first, text=f"{refusals.say(other, turn.person)}\n{first.text}"), *rest)
    except OutOfRange as odd:
        if odd.quantity not in ("mass", "thickness"):
            raise
        kept = said | ({AND_THEN: then} if then else {})  # the weight too: «2 pieces» may be the answer
        return (_ask(turn, odd.quantity, kept, refusals.say(odd, turn.person), ()),)
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


def show(turn: Turn, a: Assessment, *, had_plan: bool = False) -> Sequence[Reply]:
    """The plan of a batch, or what stands in its way with the ways round it."""
    if isinstance(a.refusal, UnknownCure):
        return (_ask_cure(turn, a),)
    if a.refusal is not None:
        return (refused(a, had_plan=had_plan),)
    return (
        Reply(
            "\n".join([plans.whole(a), *cautions.at_the_start(a)]),
            buttons=asking.changes(a),
            facts=facts(a),
            about=a.batch.id,
        ),
    )


def never_told(change: Change) -> Sequence[Reply]:
    """A word more where the cure was weighed before its strength was known: the planned dose may not be in it."""
    a = change.after
    was_unknown = change.before is not None and isinstance(change.before.refusal, UnknownCure)
    if not was_unknown or isinstance(a.refusal, UnknownCure) or a.batch.dosed is None:
        return ()
    text, rows = (put_in.judged(a), ()) if is_told(a.batch) else put_in.never_told(a)
    return (Reply(text, buttons=rows, about=a.batch.id),) if text else ()


def refused(a: Assessment, *, had_plan: bool = False) -> Reply:
    """Why there is no plan (any more), and the ways that do work, each computed and one tap away."""
    error = a.refusal or SaltbellError()
    ways = alternatives(a) if isinstance(error, TooSoon) else ()
    lost = general.no_plan_till_then() if had_plan else ""
    told = (put_in.to_plan(a), refusals.say(error, a.person), doses.dose(a), general.ways(ways), lost)
    text = "\n\n".join(filter(None, told))
    body = facts(a) | {"refused": type(error).__name__, "ways": [w.name for w in ways]}
    return Reply(text, buttons=asking.ways(a, ways) or asking.long_cure(a), facts=body, about=a.batch.id)


def _ask_cure(turn: Turn, a: Assessment) -> Reply:
    text, rows = asking.cure(a.batch.id)
    turn.ask({"slot": "cure", "batch": a.batch.id})
    body = facts(a) | {"answer_kind": "asked_back", "asked": "cure"}
    return Reply(f"{text}\n{taken.noted(a)}", buttons=rows, facts=body, about=a.batch.id)


def _missing(turn: Turn, said: dict[str, Any], unclear: Mapping[str, str]) -> Reply | None:
    """The question for the first thing that cannot be done without."""
    typed = said.pop(NO_CUT, None)
    unclear = {"meat": typed, **unclear} if typed and "cut" not in said else unclear
    known = ("cut" in said or "meat" not in unclear) and take_cut(said)
    broken = _broken(turn, said, unclear)
    if broken is not None:
        return broken
    if not known:
        text, rows = asking.cut(said.get("product", "pastrami"), open_="product" not in said)
        return _ask(turn, "cut", said, taken.so_far(text, said, turn.person, turn.now), rows)
    if "mass" not in said:
        typed = said.get(SHARE)  # asked again, not anew, whatever was said meanwhile
        if typed:
            return _ask(turn, "share", said, *asking.share(*share_of(typed), turn.person))
        question = taken.so_far(asking.mass(turn.person), said, turn.person, turn.now)
        return _ask(turn, "mass", said, meats_in_turn.named(said, question), ())
    said.pop(SHARE, None)
    meals = said.pop("meals", None)
    if meals and "deadline" not in said:
        return _ask(turn, "deadline", said, *taken.which_meal(meals, turn.person, turn.now))
    if not turn.person.zone_known:
        return _ask(turn, "zone", said, asking.zone(), ())
    return None


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


def _broken(turn: Turn, said: dict[str, Any], unclear: Mapping[str, str]) -> Reply | None:
    """What was typed and could not be taken; the rest of the message is kept while it is asked."""
    for slot, typed in unclear.items():
        match slot:
            case "cut" if typed in taken.WHOLE_BRISKET:  # its weight is that of both
                rest = {k: v for k, v in said.items() if k != "mass"}
                return _ask(turn, "cut", rest, taken.so_far(taken.flat_or_point(), rest, turn.person, turn.now), ())
            case "meat" | "cut":
                cuts = asking.cut(said.get("product", "pastrami"))[1]
                text, rows = other_cuts.like_cut(typed) or (other_cuts.unknown_meat(typed), cuts)
                return _ask(turn, "cut", said | {NO_CUT: typed}, taken.so_far(text, said, turn.person, turn.now), rows)
            case "unit":
                text, rows = asking.mass_unit(float(typed), None)
                return _ask(turn, "mass_unit", said | {"mass_value": float(typed)}, text, rows)
            case "deadline" if "meals" in said:  # asked when the rest is known
                continue
            case "share":
                text, rows = asking.share(*share_of(typed), turn.person)
                return _ask(turn, "share", said | {SHARE: typed}, text, rows)
            case "brine":
                return _ask(turn, slot, said, asking.brine(typed), ())
            case "mass" | "deadline" | "thickness":
                return _ask(turn, slot, said, taken.again(slot, typed), ())
            case _:  # the strength is asked for by itself; the rest may be changed under the plan
                continue
    return _unfit(turn, said)


def _unfit(turn: Turn, said: dict[str, Any]) -> Reply | None:
    deadline = said.get("deadline")
    unfit = None if deadline is None else refusals.unfit_date(turn.person, deadline, turn.now)
    if unfit is None:
        return None
    kept = {k: v for k, v in said.items() if k != "deadline"}
    return _ask(turn, "deadline", kept, unfit, ())


def _ask(turn: Turn, slot: str, said: dict[str, Any], text: str, rows: asking.Rows) -> Reply:
    turn.ask({"slot": slot, "said": pack(said)})
    return Reply(text, buttons=rows, facts=_asked(slot))


def _asked(slot: str) -> dict[str, Any]:
    return {"answer_kind": "asked_back", "asked": slot}
