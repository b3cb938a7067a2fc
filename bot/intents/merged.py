"""What follows each other in a line and is one thing: readings, changes, settings, a step with how it tasted."""

from dataclasses import replace
from typing import Any, Final

from bot.intents.intents import (
    Change,
    Debrief,
    Happened,
    Intent,
    MoveDeadline,
    Pause,
    Reading,
    Settings,
    Snooze,
    Start,
    StepDone,
    StepSkipped,
    Temperature,
    Unclear,
)
from core.batch.events import Probe
from core.plan.steps import Kind

_PAIR: Final = 2
_APART: Final = {"f": 9.0, "c": 5.0}  # no brine differs by so much between two places of it. Judgement
BEYOND_THE_CURE = frozenset({Kind.RINSE, Kind.SOAK, Kind.DRY, Kind.RUB})


def merged(intents: list[Intent]) -> list[Intent]:
    """Readings, changes and settings that follow each other, as one each."""
    out: list[Intent] = []
    for intent in _out_for_good(intents):
        joined = _joined(out[-1], intent) if out else None
        if joined is None:
            out.append(intent)
        else:
            out[-1] = joined
    return [_one_place(one) for one in out]


def _one_place(intent: Intent) -> Intent:
    """«58 n 36» of a brine that cools: the one of them is the fridge's, and which is asked."""
    two = intent.temperatures if isinstance(intent, Reading) else ()
    if len(two) < _PAIR or any(t.probe is not Probe.BRINE or t.at or t.unit != two[0].unit for t in two):
        return intent
    if max(t.value for t in two) - min(t.value for t in two) <= _APART.get(two[0].unit or "", min(_APART.values())):
        return intent
    either = (Reading((replace(t, probe=probe),)) for t in two for probe in (Probe.BRINE, Probe.FRIDGE))
    return Unclear("number", ", ".join(f"{t.value:g}" for t in two), tuple(either))


def _out_for_good(intents: list[Intent]) -> list[Intent]:
    """«its out, rinsed and soaking»: what is rinsed is out of the cure for good, and not for a moment."""
    beyond = any(isinstance(one, StepDone) and one.step in BEYOND_THE_CURE for one in intents)
    return [one.options[0] if beyond and isinstance(one, Unclear) and one.why == "took_out" else one for one in intents]


def _tells_both(one: Intent, two: Intent) -> bool:
    """Whether the second tells nothing beyond the first."""
    match one, two:
        case Snooze(), Snooze(until=None, by=None, step=None) if one.until or one.by:
            return True  # «half an hour more, then ping me»
        case Happened(what="lid"), StepDone(step=Kind.FLIP):  # «spritzed and turned it», on the grate
            return True
        case Change(changes={"chill": _}), Unclear(why="chilled_on"):
            return True
        case StepDone() | Debrief() | Reading(), Debrief(
            mass=None, grey=None, salt=None, hours=None, unmeasured=False
        ):  # «sliced, lovely»
            return True
        case _:
            return isinstance(one, StepDone | Happened) and one == two


def _joined(one: Intent, two: Intent) -> Intent | None:
    if _tells_both(one, two):
        return one
    match one, two:
        case Reading(temperatures=a, tender=ta, batch=ba), Reading(temperatures=b, tender=tb, batch=bb) if ba == bb:
            both: tuple[Temperature, ...] = (*a, *b)
            return Reading(both, ta or tb, ba, (*one.beside, *two.beside))
        case Change(changes=a, batch=ba), Change(changes=b, batch=bb) if ba == bb:
            return Change({**a, **b, **_both_woods(a, b)}, ba)
        case Settings(changes=a, unclear=ua), Settings(changes=b, unclear=ub):
            return Settings({**a, **b}, ua or ub)
        case Start(), Change(changes=b):
            return replace(one, said={**one.said, **b})
        case (Snooze(until=None, by=None), Snooze()) | (Pause(until=None), Pause()):
            return two
        case StepSkipped(step=None), Snooze():  # «skip the reminder, we check it at 10»
            return two
        case StepSkipped(step=Kind.FLIP, at=at), Snooze(until=until, step=None) if at and until and until > at:
            return replace(two, step=one.step)  # «not tonight, in the morning»
        case Unclear(why="chilled_on"), Change(changes={"chill": _}):
            return two
        case Change(changes={"deadline": None}), MoveDeadline() | Unclear(
            options=(MoveDeadline(),)
        ):  # «no rush, sunday»
            return two.options[0] if isinstance(two, Unclear) else two
        case MoveDeadline(to=a), MoveDeadline(to=b) if (a is None) != (b is None):  # «running 30 late, 6:30 ok»
            return two if a is None else one  # «only on sunday, so may we move it by a day»
        case MoveDeadline(to=None), Unclear(options=(*_, Snooze(), MoveDeadline() as meal)):
            return meal
        case StepDone(step=Kind.RINSE | Kind.SOAK, detail=""), StepDone(step=Kind.RINSE, at=None, detail=said) if said:
            return replace(one, detail=said)  # «soaked an hour, tastes fine»
        case _:
            return None


def _both_woods(one: dict[str, Any], two: dict[str, Any]) -> dict[str, Any]:
    """«cherry and a bit of hickory»: the one does not take the place of the other."""
    return {"wood": f"{one['wood']}+{two['wood']}"} if "wood" in one and "wood" in two else {}
