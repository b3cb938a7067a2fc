"""A step that is told out of its turn: what would be counted wrong by it is asked, and nothing noted."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.conversation import which_step
from bot.conversation.half import pack
from bot.conversation.understand import Understood, context_of, understand
from bot.facts import facts, step_facts
from bot.intents.intents import Intent, Reading, StepDone
from bot.intents.merged import BEYOND_THE_CURE
from bot.intents.read import read
from bot.reply import Reply
from bot.wording import asking, doneness, out_of_turn, put_in
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.plan.steps import Kind, Step
from core.service import steps
from core.service.turn import Turn

IN_THE_CURE = frozenset({Kind.FLIP, Kind.MID_CHECK})
SLOT = "took_out"  # the question whether it is out for good
ON_THE_FIRE = frozenset({Probe.PIT, Probe.CORE})
STILL_SAID = timedelta(hours=6)  # so long «rinsed it» goes with what was said of it


def taken_out(turn: Turn, meant: Understood) -> Understood:
    """«out», asked whether for good, and then «for good» or «rinsed it»: it is out since the first of the two."""
    asked, a = meant.asked or {}, meant.a
    if asked.get("slot") != SLOT or a is None or asked["batch"] != a.batch.id or "out" in a.batch.done:
        return meant
    told, since = [intent.step for intent in meant.intents if isinstance(intent, StepDone)], asked["at"]
    after = steps.AFTER_THE_CURE | steps.COOKED if "line" in asked else BEYOND_THE_CURE  # asked, and told again: it is
    beyond = not after.isdisjoint(told) and Kind.OUT not in told
    if meant.message.said_at - since > STILL_SAID or not (beyond or Kind.OUT in told) or _flipped_since(a, since):
        return meant
    turn.ask(None)
    those = (StepDone(str(Kind.OUT)), *(() if "line" in asked else meant.intents)) if beyond else meant.intents
    return replace(meant, intents=tuple(_since(intent, since) for intent in those))


def one_question(meant: Understood) -> Understood:
    """«rinsed, dried, in the smoker at 90 c» of meat that is in its cure by the plan: that is asked once.

    What is read on the fire waits with its deeds for the answer: of meat in its cure it would be counted wrong.
    """
    early = _early(meant)
    kept = (one if one not in early[:-1] else None for one in (_off_the_fire(i) if early else i for i in meant.intents))
    return replace(meant, intents=tuple(one for one in kept if one is not None)) if early else meant


def _early(meant: Understood) -> list[StepDone]:
    """The deeds of a typed line that come after the cure, told of the batch in hand while it is in for long yet."""
    a, told = meant.a, [one for one in meant.intents if isinstance(one, StepDone)]
    if a is None or meant.message.pressed is not None or any(one.step == Kind.OUT for one in told):
        return []
    here = [one for one in told if one.batch in (None, a.batch.id)]
    return [one for one in here if steps.is_in_for_long(a, one.step or "", one.at or meant.message.said_at)]


def _off_the_fire(intent: Intent) -> Intent | None:
    """A reading without what was read on a fire; None where nothing is left of it."""
    if not isinstance(intent, Reading):
        return intent
    cold = tuple(t for t in intent.temperatures if t.probe not in ON_THE_FIRE)
    return replace(intent, temperatures=cold) if cold else None


def keep_line(turn: Turn, meant: Understood) -> None:
    """A line whose deeds were asked about waits for the answer, as it was typed."""
    if meant.a is not None and _early(meant):
        line = {"line": meant.message.text, "at": pack(meant.message.said_at)}
        turn.ask({"slot": SLOT, "batch": meant.a.batch.id, **line})


def line_kept(turn: Turn, meant: Understood) -> Iterator[Understood]:
    """The deeds and readings of the line that waited, once it is said that the meat is out, each read as it is then."""
    asked, a = meant.asked or {}, meant.a
    if "line" not in asked or asked.get("slot") != SLOT or a is None or "out" in a.batch.done:
        return
    if "out" not in steps.look(turn, a.batch.id).batch.done:
        return
    turn.ask(None)
    line = replace(meant.message, text=asked["line"], said_at=asked["at"], pressed=None, answers=None)
    for said in (line, meant.message) if _tells_more(turn, meant) else (line,):
        again = understand(turn, said)
        if not isinstance(again, Reply) and (waited := tuple(one for one in again.intents if _waits(one))):
            yield replace(again, intents=waited)


def _tells_more(turn: Turn, meant: Understood) -> bool:
    """Whether the answer was a deed that comes after the cure, and not that it is out."""
    told = () if meant.message.pressed else read(meant.message.text, context_of(turn, meant.message, None, meant.a))
    return any(isinstance(one, StepDone) and one.step != Kind.OUT for one in told)


def _waits(one: Intent) -> bool:
    return (isinstance(one, StepDone) and one.step != Kind.OUT) or _off_the_fire(one) is None


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
    if steps.is_in_for_long(a, step.kind, at):
        return _asked(a, *out_of_turn.is_it_out(step, a))
    if typed and steps.is_lit_early(a, step):
        return _asked(a, *out_of_turn.is_it_lit(step, a))
    before = steps.done_later(_as_told(meant, a, step), step, at)
    return () if before is None else too_soon(a, step, at, before)


def with_the_brine(reply: Reply, a: Assessment, text: str) -> Reply:
    """«how salty is the brine», of salt that was planned dry: answered, with the brine one tap away."""
    if not which_step.brine_said(a, text):
        return reply
    said, rows = put_in.no_water(a)
    return replace(reply, text=f"{reply.text}\n{said}", buttons=(*rows, *reply.buttons))


def beside(meant: Understood, a: Assessment, step: Step, marked: Reply) -> Reply:
    """What was marked, as it is said beside what else the line tells."""
    if step.kind is not Kind.OFF:
        return in_a_brine(meant, a, step, marked)
    read = any(t.probe is Probe.CORE for one in meant.intents if isinstance(one, Reading) for t in one.temperatures)
    last = a.batch.last(Probe.CORE)
    doubted = read and (
        last is None or last.at < meant.message.said_at
    )  # «off at 205», asked about: no older one counts
    return replace(marked, text=marked.text.replace(doneness.short_of(a), "", 1)) if doubted else marked


def in_a_brine(meant: Understood, a: Assessment, step: Step, marked: Reply) -> Reply:
    """«in the brine», of plain salt that was planned dry: noted, and said how the brine is planned instead."""
    typed = meant.message.pressed is None and step.kind is Kind.INTO_CURE
    if not (typed and which_step.brine_said(a, meant.message.text)):
        return marked
    return replace(marked, text=f"{marked.text}\n{put_in.planned_dry()}")


def too_soon(a: Assessment, step: Step, at: datetime, before: tuple[str, datetime]) -> Sequence[Reply]:
    """An hour at which what comes before it was not done yet."""
    (reply,) = _asked(a, *out_of_turn.out_of_order(step, at, before, a))
    return (Reply(reply.text, buttons=reply.buttons, facts=reply.facts | step_facts(step), about=a.batch.id),)


def _as_told(meant: Understood, a: Assessment, step: Step) -> Assessment:
    """The batch before the message, for «brine made, meat in since 7»: the hour of the first is not told."""
    return meant.began if meant.began is not None and step.kind is Kind.INTO_CURE else a


def _asked(a: Assessment, text: str, rows: asking.Rows = ()) -> Sequence[Reply]:
    return (Reply(text, buttons=rows, facts=facts(a) | {"answer_kind": "asked_back"}, about=a.batch.id),)
