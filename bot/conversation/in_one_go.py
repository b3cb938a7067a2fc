"""What is done or read once for several batches, and so told of each: one fridge, one round of bags, one fire."""

from collections.abc import Sequence
from datetime import timedelta

from bot.intents.intents import Intent, Reading, StepDone
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Done, Probe
from core.plan.steps import Kind, State
from core.service import batches
from core.service.turn import Turn

TOGETHER = frozenset({Kind.FLIP, Kind.OUT, Kind.RINSE, Kind.SOAK, Kind.RUB, Kind.DRY, Kind.LIGHT, Kind.MEAT_ON})
"""What is done to several pieces in one go; each comes off the fire, is wrapped and sliced when it is ready."""
AT_WORK = timedelta(hours=3)  # of one round of work; the next day it may be one of them alone. Judgement
BESIDE_IT = timedelta(hours=1)
ONE_FIRE = timedelta(hours=2)  # what is lit so near each other is planned on one fire. Judgement


def in_one_go(turn: Turn, intents: Sequence[Intent], those: Sequence[str]) -> bool:
    """Whether a line that names no batch tells what is the same for all of these."""
    found = [batches.look(turn, key) for key in those]
    same = _one_fridge(found, intents) or _one_round(found, intents) or _one_fire(found, intents)
    return same or _goes_on(turn, found, intents)


def _one_fridge(found: Sequence[Assessment], intents: Sequence[Intent]) -> bool:
    """Whether a fridge was asked for once for all of these batches: then its one reading is that of each."""
    if _probes(intents) != {Probe.FRIDGE} or not all(isinstance(intent, Reading) for intent in intents):
        return False
    checks = ([step.state for step in a.plan.of_kind(Kind.FRIDGE_CHECK)] if a.plan else [] for a in found)
    return all(State.DUE in states for states in checks)


def _one_round(found: Sequence[Assessment], intents: Sequence[Intent]) -> bool:
    """Whether a line tells of the flips that are due in all of these batches, and of the fridge beside them.

    One round is made of the bags in a fridge, as they are called for at once.
    """
    due = all(a.plan and any(s.state is State.DUE for s in a.plan.of_kind(Kind.FLIP)) for a in found)
    flips = [i for i in intents if isinstance(i, StepDone) and (i.step or Kind.FLIP).split("/")[0] == Kind.FLIP]
    beside = [i for i in intents if isinstance(i, Reading) and {t.probe for t in i.temperatures} == {Probe.FRIDGE}]
    return due and bool(flips) and len(flips) + len(beside) == len(intents)


def _one_fire(found: Sequence[Assessment], intents: Sequence[Intent]) -> bool:
    """Whether a line tells only of the fire, and all of these are on it, or are to be at about the same time."""
    lit = [i for i in intents if isinstance(i, StepDone) and i.step == Kind.LIGHT]
    read = [i for i in intents if isinstance(i, Reading)]
    if len(lit) + len(read) != len(intents) or _probes(read) - {Probe.PIT}:
        return False
    if read and not lit and all(a.batch.phase is Phase.COOKING for a in found):
        return True
    hours = [step.due for a in found if a.plan and (step := a.plan.step(str(Kind.LIGHT)))]
    return len(hours) == len(found) and max(hours) - min(hours) <= ONE_FIRE


def _goes_on(turn: Turn, found: Sequence[Assessment], intents: Sequence[Intent]) -> bool:
    """Whether a line tells the next deed of pieces that were last told of in one: «both out, rinsed», then «rubbed».

    So is the fridge that is read beside them.
    """
    deeds = [i for i in intents if isinstance(i, StepDone) and i.step and i.step.split("/")[0] in TOGETHER]
    cold = [i for i in intents if isinstance(i, Reading) and _probes([i]) == {Probe.FRIDGE}]
    if not intents or len(deeds) + len(cold) < len(intents) or (cold and not _by_deed(turn, found)):
        return False
    last = {batches.last_message(turn, a.batch.id) for a in found}
    if len(last) > 1 or None in last:
        return False
    return all(turn.now - batches.last_event(turn, a.batch.id).said_at <= AT_WORK for a in found)


def _by_deed(turn: Turn, found: Sequence[Assessment]) -> bool:
    """Whether the last that was told of each was a deed, within the hour: then one cook stands beside one fridge."""
    last = [next(reversed(batches.standing(turn, a.batch.id)), None) for a in found]
    deeds = [e for e in last if e is not None and isinstance(e.what, Done) and e.what.step.split("/")[0] in TOGETHER]
    return len(deeds) == len(found) and all(turn.now - e.said_at <= BESIDE_IT for e in deeds)


def _probes(intents: Sequence[Intent]) -> set[Probe | None]:
    return {t.probe for intent in intents if isinstance(intent, Reading) for t in intent.temperatures}
