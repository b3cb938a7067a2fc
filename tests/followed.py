"""A cook who does each step when it is due and reads what is asked for, and meat that does what the plan expects."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

import numpy as np

from core.batch import material
from core.batch.assess import Assessment, assess
from core.batch.batch import fold
from core.batch.events import Done, Event, Probe, Read, Started, What
from core.heat.cooling import MARKS, Chill
from core.person import Person
from core.plan.recipe import product
from core.plan.steps import Kind, State, Step

WHO = Person("hedda", zone="Europe/Vienna", zone_known=True, cure_nitrite_fraction=0.0625)
COLD_C = 3.0  # of the fridge and the brine
CHILLED_FROM_C = 60.0  # it rests until then
HOUR = timedelta(hours=1)
LATER = (Kind.USE_BY, Kind.DEBRIEF)
MOST = 120  # steps of a week


@dataclass
class Followed:
    """One batch that is followed from its plan: `now` is when its last step was done."""

    setup: dict[str, Any]
    now: datetime
    log: list[Event] = field(default_factory=list)
    climbs: tuple[tuple[float, ...], tuple[float, ...]] = ((), ())
    rests: timedelta = timedelta(0)
    cools: Chill | None = None

    def begun(self) -> Assessment:
        """The batch as it is begun."""
        self._tell(Started("batch", self.setup))
        return self._seen()

    def to_the_meal(self) -> Assessment:
        """Everything until the meat is on the table; raises AssertionError where the plan does not come to that."""
        for _ in range(MOST):
            step = self._next(self._seen())
            self.now = max(self.now, step.due)
            if step.kind is Kind.SERVE:
                return self._seen()
            self._do(step, self._seen())
        raise AssertionError(f"no meal after {MOST} steps")

    def _seen(self) -> Assessment:
        return assess(fold("b", self.log), WHO, self.now)

    def _next(self, a: Assessment) -> Step:
        assert a.plan is not None, a.refusal
        left = (s for s in a.plan.steps if s.state in (State.DUE, State.AHEAD) and s.kind not in LATER)
        return min(left, key=lambda s: s.due)

    def _tell(self, *told: What) -> None:
        for what in told:
            self.log.append(Event(len(self.log) + 1, self.now, self.now, WHO.id, f"m{len(self.log)}", what))

    def _do(self, step: Step, a: Assessment) -> None:
        """Do a step, and read what it asks for."""
        match step.kind:
            case Kind.READING:
                self._tell(Read(Probe.PIT, a.batch.setup.pit_c), Read(Probe.CORE, self._core(a)))
            case Kind.CHILL_CHECK:
                self.now += timedelta(minutes=2)  # and not on the degree
                self._tell(Read(Probe.CORE, self._core(a)))
            case Kind.BRINE_CHECK:
                self._tell(Read(Probe.BRINE, COLD_C), Done(step.key))
            case Kind.FRIDGE_CHECK | Kind.INTO_CURE | Kind.MEAT_ON:
                self._tell(Read(Probe.FRIDGE, COLD_C), Done(step.key))
            case Kind.OFF:
                self._off(a)
            case Kind.CHILL:
                self._tell(Read(Probe.CORE, CHILLED_FROM_C), Done(step.key, a.batch.setup.chill))
                self.cools = material.chill_of(a.batch.setup, CHILLED_FROM_C)
            case Kind.SLICE:
                self._tell(Read(Probe.CORE, COLD_C if a.chilled else CHILLED_FROM_C), Done(step.key))
            case _:
                self._tell(Done(step.key))
        if step.kind is Kind.MEAT_ON and (cook := self._seen().cook) is not None:
            self.climbs = (cook.curve.hours, cook.curve.p50)

    def _off(self, a: Assessment) -> None:
        """Off at its target, and no sooner; fish after its half hour there."""
        core, hold = self._core(a), product(a.batch.setup.product).hours.hold_at_target
        self._tell(Read(Probe.CORE, core))
        if core < a.batch.setup.target_c:
            self.now += timedelta(minutes=10)
            return
        if hold:
            self.now += timedelta(hours=hold, minutes=1)
            self._tell(Read(Probe.CORE, core))
        self._tell(Done("off"))
        plan = self._seen().plan
        chill = plan.step("chill") if plan else None
        self.rests = HOUR if chill is None else chill.due - self.now

    def _core(self, a: Assessment) -> float:
        """The core as the plan expects it: up to the target by its middle, and down by the chill's. [°C]"""
        on, off, chill = a.batch.done["meat_on"], a.batch.off_at, a.batch.done.get("chill")
        if off is None:
            return float(np.interp((self.now - on) / HOUR, *self.climbs))
        if chill is None or self.cools is None:
            rested = (self.now - off) / max(self.rests, timedelta(minutes=5))
            return a.batch.setup.target_c - (a.batch.setup.target_c - CHILLED_FROM_C) * min(rested, 1.0)
        hours = (self.now - chill) / HOUR
        falls = [(at.p50, mark) for mark in MARKS if (at := self.cools.to(mark)) is not None]
        return float(np.interp(hours, *zip(*sorted(falls), strict=True)))
