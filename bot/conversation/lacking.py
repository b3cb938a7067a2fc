"""What a start lacks: asked one thing at a time, with all that was said of it kept while the question is open."""

from collections.abc import Mapping
from typing import Any

from bot.conversation import meats_in_turn
from bot.conversation.half import NO_CUT, pack, take_cut
from bot.intents.weights import share_of
from bot.reply import Reply
from bot.wording import asking, other_cuts, refusals, taken
from core.service.turn import Turn

SHARE = "share"  # several pieces with one weight, of which nobody said yet whether it is that of each


def missing(turn: Turn, said: dict[str, Any], unclear: Mapping[str, str]) -> Reply | None:
    """The question for the first thing that cannot be done without."""
    typed = said.pop(NO_CUT, None)
    unclear = {"meat": typed, **unclear} if typed and "cut" not in said else unclear
    known = ("cut" in said or "meat" not in unclear) and take_cut(said)
    broken = _broken(turn, said, unclear)
    if broken is not None:
        return broken
    if not known:
        text, rows = asking.cut(said.get("product", "pastrami"), open_="product" not in said)
        return ask(turn, "cut", said, taken.so_far(text, said, turn.person, turn.now), rows)
    if "mass" not in said:
        typed = said.get(SHARE)  # asked again, not anew, whatever was said meanwhile
        if typed:
            return ask(turn, "share", said, *asking.share(*share_of(typed), turn.person))
        question = taken.so_far(asking.mass(turn.person), said, turn.person, turn.now)
        return ask(turn, "mass", said, meats_in_turn.named(said, question), ())
    said.pop(SHARE, None)
    meals = said.pop("meals", None)
    if meals and "deadline" not in said:
        return ask(turn, "deadline", said, *taken.which_meal(meals, turn.person, turn.now))
    if not turn.person.zone_known:
        return ask(turn, "zone", said, asking.zone(), ())
    return None


def _broken(turn: Turn, said: dict[str, Any], unclear: Mapping[str, str]) -> Reply | None:
    """What was typed and could not be taken; the rest of the message is kept while it is asked."""
    for slot, typed in unclear.items():
        match slot:
            case "cut" if typed in taken.WHOLE_BRISKET:  # its weight is that of both
                rest = {k: v for k, v in said.items() if k != "mass"}
                return ask(turn, "cut", rest, taken.so_far(taken.flat_or_point(), rest, turn.person, turn.now), ())
            case "meat" | "cut":
                cuts = asking.cut(said.get("product", "pastrami"))[1]
                text, rows = other_cuts.like_cut(typed) or (other_cuts.unknown_meat(typed), cuts)
                return ask(turn, "cut", said | {NO_CUT: typed}, taken.so_far(text, said, turn.person, turn.now), rows)
            case "unit":
                text, rows = asking.mass_unit(float(typed), None)
                rest = {k: v for k, v in said.items() if k != "mass"}  # what is typed now takes its place
                return ask(turn, "mass_unit", rest | {"mass_value": float(typed)}, text, rows)
            case "deadline" if "meals" in said:  # asked when the rest is known
                continue
            case "share":
                text, rows = asking.share(*share_of(typed), turn.person)
                return ask(turn, "share", said | {SHARE: typed}, text, rows)
            case "brine":
                return ask(turn, slot, said, asking.brine(typed), ())
            case "mass" | "deadline" | "thickness":
                return ask(turn, slot, said, taken.again(slot, typed), ())
            case _:  # the strength is asked for by itself; the rest may be changed under the plan
                continue
    return _unfit(turn, said)


def _unfit(turn: Turn, said: dict[str, Any]) -> Reply | None:
    deadline = said.get("deadline")
    unfit = None if deadline is None else refusals.unfit_date(turn.person, deadline, turn.now)
    if unfit is None:
        return None
    kept = {k: v for k, v in said.items() if k != "deadline"}
    return ask(turn, "deadline", kept, unfit, ())


def ask(turn: Turn, slot: str, said: dict[str, Any], text: str, rows: asking.Rows) -> Reply:
    """The question for one slot of a start; what was said of it so far is kept with the question."""
    turn.ask({"slot": slot, "said": pack(said)})
    return Reply(text, buttons=rows, facts={"answer_kind": "asked_back", "asked": slot})
