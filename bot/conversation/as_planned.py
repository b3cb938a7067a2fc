"""The plan of a batch as it is shown, or why there is none and which ways do work."""

from collections.abc import Sequence

from bot.facts import facts
from bot.reply import Reply
from bot.wording import asking, cautions, doses, general, plans, put_in, refusals, taken
from core.batch.assess import Assessment, Change
from core.batch.ways import alternatives
from core.batch.weighed import is_told
from core.errors import SaltbellError, TooSoon, UnknownCure
from core.service.turn import Turn


def show(turn: Turn, a: Assessment, *, had_plan: bool = False) -> Sequence[Reply]:
    """The plan of a batch, or what stands in its way with the ways round it."""
    if isinstance(a.refusal, UnknownCure):
        return (_ask_cure(turn, a),)
    if a.refusal is not None:
        return (refused(a, had_plan=had_plan),)
    text = "\n".join(filter(None, (put_in.judged(a), plans.whole(a), *cautions.at_the_start(a))))
    return (Reply(text, buttons=asking.changes(a), facts=facts(a), about=a.batch.id),)


def never_told(change: Change) -> Sequence[Reply]:
    """A word more where the cure was weighed before its strength was known: the planned dose may not be in it."""
    a = change.after
    was_unknown = change.before is not None and isinstance(change.before.refusal, UnknownCure)
    if not was_unknown or isinstance(a.refusal, UnknownCure) or a.batch.dosed is None or is_told(a.batch):
        return ()
    text, rows = put_in.never_told(a)
    return (Reply(text, buttons=rows, about=a.batch.id),)


def refused(a: Assessment, *, had_plan: bool = False) -> Reply:
    """Why there is no plan (any more), and the ways that do work, each computed and one tap away."""
    error = a.refusal or SaltbellError()
    ways = alternatives(a) if isinstance(error, TooSoon) else ()
    lost = general.no_plan_till_then() if had_plan else ""
    told = (put_in.judged(a), put_in.to_plan(a), refusals.say(error, a.person), doses.dose(a), general.ways(ways), lost)
    text = "\n\n".join(filter(None, told))
    body = facts(a) | {"refused": type(error).__name__, "ways": [w.name for w in ways]}
    return Reply(text, buttons=asking.ways(a, ways) or asking.long_cure(a), facts=body, about=a.batch.id)


def _ask_cure(turn: Turn, a: Assessment) -> Reply:
    text, rows = asking.cure(a.batch.id)
    turn.ask({"slot": "cure", "batch": a.batch.id})
    body = facts(a) | {"answer_kind": "asked_back", "asked": "cure"}
    return Reply(f"{text}\n{taken.noted(a)}", buttons=rows, facts=body, about=a.batch.id)
