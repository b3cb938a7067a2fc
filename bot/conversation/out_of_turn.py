"""A step that is told out of its turn: what would be counted wrong by it is asked, and nothing noted."""

from collections.abc import Sequence
from datetime import datetime

from bot.conversation import which_step
from bot.conversation.understand import Understood
from bot.facts import facts, step_facts
from bot.reply import Reply
from bot.wording import asking, out_of_turn, put_in
from core.batch.assess import Assessment
from core.plan.steps import Kind, Step
from core.service import steps

IN_THE_CURE = frozenset({Kind.FLIP, Kind.MID_CHECK})


def asked(meant: Understood, a: Assessment, step: Step, at: datetime) -> Sequence[Reply]:
    """What has to be asked before a step is noted as done at a time; nothing where it is in its turn."""
    typed = meant.message.pressed is None
    if typed and which_step.wet_or_dry(a, step, meant.message.text):
        return _asked(a, *put_in.wet_or_dry(a, step))
    if step.kind in IN_THE_CURE and "into_cure" not in a.batch.done:
        return _asked(a, *out_of_turn.not_in_yet(a))
    if step.kind in IN_THE_CURE and steps.is_out(a, at):
        return _asked(a, out_of_turn.out_already(a))
    if steps.is_in_for_long(a, step, at):
        return _asked(a, *out_of_turn.is_it_out(step, a))
    if typed and steps.is_lit_early(a, step):
        return _asked(a, *out_of_turn.is_it_lit(step, a))
    before = steps.done_later(_as_told(meant, a, step), step, at)
    return () if before is None else too_soon(a, step, at, before)


def too_soon(a: Assessment, step: Step, at: datetime, before: tuple[str, datetime]) -> Sequence[Reply]:
    """An hour at which what comes before it was not done yet."""
    (reply,) = _asked(a, *out_of_turn.out_of_order(step, at, before, a))
    return (Reply(reply.text, buttons=reply.buttons, facts=reply.facts | step_facts(step), about=a.batch.id),)


def _as_told(meant: Understood, a: Assessment, step: Step) -> Assessment:
    """The batch before the message, for «brine made, meat in since 7»: the hour of the first is not told."""
    return meant.began if meant.began is not None and step.kind is Kind.INTO_CURE else a


def _asked(a: Assessment, text: str, rows: asking.Rows = ()) -> Sequence[Reply]:
    return (Reply(text, buttons=rows, facts=facts(a) | {"answer_kind": "asked_back"}, about=a.batch.id),)
