"""The way up that a cook has before it: whether the slow ones of such pieces pass the rule's line in its time."""

from dataclasses import dataclass, replace
from typing import Final

from core.batch.assess import Assessment
from core.batch.material import cook_of, history_of
from core.heat.cook import PitSet
from core.heat.curve import Curve
from core.heat.ready import Estimate, forecast
from core.plan.steps import TimeBand
from core.safety.come_up import COME_UP, REACH_140, Climb, judge_climb
from core.safety.cook import cook_readings
from core.safety.findings import Status
from core.units import Celsius, Hours, celsius_from_fahrenheit

# 250, 275, 300 and 325 °F, what a cooker is run at for meat that has to hurry. Common practice, no source
PITS_C: Final = (121.0, 135.0, 149.0, 163.0)


@dataclass(frozen=True)
class Rise:
    """A way up that may be too slow. `to_c` within `within` of going on; nine in ten are there by `slow`. [°C, h]

    `pit_c` is the pit at which nine in ten pass in time, None where none of the house's does.
    """

    to_c: Celsius
    within: Hours
    slow: Hours
    pit_c: Celsius | None


def rise(a: Assessment) -> Rise | None:
    """Where meat that is judged by its core may come up too slowly; None where all is well, or it is past that.

    Sources: the clocks of `core.safety.come_up`; the hours are those of the estimate.
    """
    if a.cook is None or a.batch.off_at is not None or not a.ledger.record.delicate:
        return None
    climb = REACH_140 if a.ledger.record.hurried else COME_UP  # by the days that the cure had, or is planned to have
    to_c = celsius_from_fahrenheit(climb.to_f)
    if _over(climb, a):
        return None
    slow = _slow(a.cook.curve, to_c)
    if slow <= climb.max_h:
        return None
    hotter = (pit for pit in PITS_C if pit > a.batch.setup.pit_c)
    return Rise(to_c, climb.max_h, slow, next((p for p in hotter if _slow(_at(a, p).curve, to_c) <= climb.max_h), None))


def ready_at(a: Assessment, pit_c: Celsius) -> TimeBand | None:
    """When a cook under way is ready with another pit from now on; None where none is. `pit_c` in °C."""
    return None if a.ready is None else replace(a, cook=_at(a, pit_c)).ready


def _over(climb: Climb, a: Assessment) -> bool:
    """Whether the clock has run out or was met: a colder spot that is read later takes it up again."""
    record = a.ledger.record
    if record.meat_on_at is None:
        return False
    return judge_climb(climb, cook_readings(record), record.meat_on_at, a.now).status is not Status.OPEN


def _slow(curve: Curve, to_c: Celsius) -> Hours:
    """When nine in ten have passed a core; never, where the curve ends before."""
    return next((h for h, c in zip(curve.hours, curve.p10, strict=True) if c >= to_c), float("inf"))


def _at(a: Assessment, pit_c: Celsius) -> Estimate:
    """The estimate with another pit from now on."""
    cook, seen = cook_of(a.batch, a.person), history_of(a.batch, a.now)
    if a.on_at is None:
        return forecast(replace(cook, pit_c=pit_c), seen)
    return forecast(cook, replace(seen, pit_sets=(*seen.pit_sets, PitSet(seen.now, pit_c))))
