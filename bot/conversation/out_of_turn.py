"""A step that is told out of its turn: what would be counted wrong by it is asked, and nothing noted."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.conversation import which_step
from bot.conversation.understand import Understood
from bot.facts import facts, step_facts
from bot.intents.intents import Intent, StepDone
from bot.intents.merged import BEYOND_THE_CURE
from bot.reply import Reply
from bot.wording import asking, out_of_turn, put_in
from core.batch.assess import Assessment
from core.plan.steps import Kind, Step
from core.service import steps
from core.service.turn import Turn

IN_THE_CURE = frozenset({Kind.FLIP, Kind.MID_CHECK})
SLOT = "took_out"  # the question whether it is out for good
STILL_SAID = timedelta(hours=6)  # so long «rinsed it» goes with what was said of it


def taken_out(turn: Turn, meant: Understood) -> Understood:
    """«out», asked whether for good, and then «for good» or «rinsed it»: it is out since the first of the two."""
    asked, a = meant.asked or {}, meant.a
    if asked.get("slot") != SLOT or a is None or asked["batch"] != a.batch.id or "out" in a.batch.done:
        return meant
    told, since = [intent.step for intent in meant.intents if isinstance(intent, StepDone)], asked["at"]
    beyond = not BEYOND_THE_CURE.isdisjoint(told) and Kind.OUT not in told
    if meant.message.said_at - since > STILL_SAID or not (beyond or Kind.OUT in told) or _flipped_since(a, since):
        return meant
    turn.ask(None)
    those = (StepDone(str(Kind.OUT)), *meant.intents) if beyond else meant.intents
    return replace(meant, intents=tuple(_since(intent, since) for intent in those))


def _flipped_since(a: Assessment, at: datetime) -> bool:
    """Whether it lay in its bag again after that."""
    return any(step.startswith(Kind.FLIP) and done > at for step, done in a.batch.done.items())


def _since(intent: Intent, at: datetime) -> Intent:
    is_out = isinstance(intent, StepDone) and intent.step == Kind.OUT and intent.at is None
    return replace(intent, at=at) if is_out else intent


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
