"""Ready before the meal: how long it has to be held hot, and how long it stays hot by itself."""

from dataclasses import dataclass
from datetime import timedelta

from core.batch.assess import Assessment
from core.batch.events import Probe
from core.heat.band import Band
from core.heat.cooling import Chill, RestMethod, rest
from core.plan.recipe import product
from core.units import Celsius, Hours

HOT_C: Celsius = 60.0  # 140 °F, in the middle
WORTH_TELLING: Hours = 1.5  # between coming off and the knife; less is a rest
WAYS: tuple[RestMethod, ...] = ("foil", "towels", "box")
HOUR = timedelta(hours=1)
JUST_BEFORE = timedelta(minutes=30)  # a core read then is the core that came off


@dataclass(frozen=True)
class Hold:
    """A hot hold. `hours` from coming off to the knife as a band, `by_itself` the hours above 60 °C of each way.

    A way is enough where nine in ten such pieces stay hot for the middle of the wait, and that is no longer than the
    product's longest hold. [h]
    """

    hours: Band
    by_itself: tuple[tuple[RestMethod, Band], ...]
    longest: Hours

    @property
    def enough(self) -> RestMethod | None:
        """The simplest way that keeps it hot till the knife; None where heat has to be added."""
        if self.hours.p50 > self.longest:
            return None
        return next((way for way, stays in self.by_itself if stays.p10 >= self.hours.p50), None)


def hold(a: Assessment) -> Hold | None:
    """The hold between coming off and the knife of meat that is eaten hot; None where there is none to speak of."""
    off, knife = (a.plan.step(key) if a.plan else None for key in ("off", "slice"))
    if a.chilled or off is None or knife is None or "slice" in a.batch.done:
        return None
    hours = product(a.batch.setup.product).hours
    times = [off.late or off.due, off.due, off.early or off.due]
    low, middle, high = (max((knife.due - at) / HOUR, hours.least_rest) for at in times)
    return Hold(Band(low, middle, high), by_itself(a), hours.hold_longest) if middle >= WORTH_TELLING else None


def by_itself(a: Assessment) -> tuple[tuple[RestMethod, Band], ...]:
    """How long the middle stays above 60 °C in foil, in towels, and in a box with towels. [h]"""
    found = ((way, _resting(a, way).to(HOT_C)) for way in WAYS)
    return tuple((way, hours) for way, hours in found if hours is not None)


def _resting(a: Assessment, way: RestMethod) -> Chill:
    off = a.batch.off_at
    seen = [r for r in a.batch.of_probe(Probe.CORE) if off is not None and r.at >= off - JUST_BEFORE]
    start = seen[-1].celsius if seen else a.batch.setup.target_c
    return rest(a.piece, way, start_c=max(start, HOT_C + 1.0))
