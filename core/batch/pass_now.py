"""What to do now so that the chill still keeps its rule: unwrap, ice, halve, each computed from the last core."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from core.batch.assess import Assessment
from core.batch.cold import CHILL_CLOCK_C
from core.batch.material import cut_of, layer
from core.heat.band import Band
from core.heat.cooling import ChillMethod
from core.heat.ways import Way, ways
from core.safety.cooling import StageJudgement
from core.units import Celsius, celsius_from_fahrenheit

EASE = ("foil", "rack", "fan", "ice")  # from what costs nothing to what wants a bag and ice


@dataclass(frozen=True)
class Help:
    """One thing to do: the method, whether it is cut, and when the next corner is reached then (10 to 90 %)."""

    method: ChillMethod
    cut_to: float | None
    reached: tuple[datetime, datetime, datetime]


def help_now(a: Assessment) -> Help | None:
    """The easiest way from now that reaches the next corner in time in nine of ten.

    None where no corner is open, where it is on its way as it lies, and where no way reaches it.

    The middle is the warmest spot of a piece that cools, and the whole piece is taken to be as warm: the careful side.
    """
    stage = _next_stage(a)
    core = a.cooling.readings[-1] if a.cooling.readings else None
    if stage is None or core is None or stage.deadline is None or core.celsius < a.batch.setup.fridge_c + 1.0:
        return None
    if core.celsius > CHILL_CLOCK_C and "chill" not in a.batch.done:
        return None  # it rests: the chill has not begun, and no corner is open
    goal = celsius_from_fahrenheit(stage.stage.to_f)
    if _on_its_way(a, goal, stage.deadline):
        return None
    found = (_help(a, way, goal, core.at) for way in _by_ease(a, core.celsius))
    return next((one for one in found if one is not None and one.reached[2] <= stage.deadline), None)


def _on_its_way(a: Assessment, goal: Celsius, deadline: datetime) -> bool:
    """Whether the chill as it runs, by its own readings, is there in time in nine of ten."""
    hours = a.cooling.forecast.to(goal) if a.cooling.forecast else None
    return hours is not None and a.cooling.since is not None and a.cooling.since + timedelta(hours=hours.p90) < deadline


def _next_stage(a: Assessment) -> StageJudgement | None:
    return a.ledger.cooling.next_stage if a.ledger.cooling is not None else None


def _by_ease(a: Assessment, core_c: Celsius) -> list[Way]:
    """Ways for a piece that is so warm: whole before cut, no bag before ice."""
    cut = cut_of(a.batch)
    found = ways(layer(a.piece, cut[1] if cut else None), core_c, a.batch.setup.fridge_c)
    return sorted(found, key=lambda way: (way.cut_to is not None, -(way.cut_to or 0.0), EASE.index(way.method)))


def _help(a: Assessment, way: Way, goal: Celsius, read_at: datetime) -> Help | None:
    hours: Band | None = way.chill.to(goal)
    if hours is None:
        return None
    since = max(read_at, a.now)
    low, middle, high = (since + timedelta(hours=h) for h in (hours.p10, hours.p50, hours.p90))
    return Help(way.method, way.cut_to, (low, middle, high))
