"""What the pictures show. Units of the house; datetimes aware.

A `Band` is three curves over the same places. A field that is None or empty is not drawn: a picture of nothing
at all is axes and the words for "nothing yet".
"""

from dataclasses import dataclass, field
from datetime import datetime
from zoneinfo import ZoneInfo

from core.person import Units
from core.units import Celsius, Fraction, Metres, MilligramsPerKilogram, Seconds

Readings = tuple[tuple[datetime, Celsius], ...]


@dataclass(frozen=True)
class Band:
    """A quantity over time: 10, 50 and 90 % of what it may be."""

    p10: tuple[float, ...] = ()
    p50: tuple[float, ...] = ()
    p90: tuple[float, ...] = ()


@dataclass(frozen=True)
class Curve:
    """Temperatures that are expected, past or ahead. [°C]"""

    at: tuple[datetime, ...] = ()
    celsius: Band = field(default_factory=Band)


@dataclass(frozen=True)
class Frame:
    """What every picture needs: its title, the person's zone and units, the seven short names of days."""

    title: str
    zone: ZoneInfo
    units: Units
    days: tuple[str, ...]  # Monday first
    nothing: str  # written on a picture that has nothing to show yet


@dataclass(frozen=True)
class Cook:
    """A cook so far and ahead.

    `ready` is when the target is met: 10, 50 and 90 %. `deadline` is when it has to be off for the meal, `wrap_by`
    until when a wrap still brings it there.
    """

    core: Readings = ()
    pit: Readings = ()
    expected: Curve = field(default_factory=Curve)
    pit_set: Celsius | None = None
    target: Celsius | None = None
    ready: tuple[datetime, datetime, datetime] | None = None
    stall: tuple[datetime, datetime] | None = None
    wrap: datetime | None = None
    wrap_by: datetime | None = None
    now: datetime | None = None
    deadline: datetime | None = None


@dataclass(frozen=True)
class Slice:
    """How far pink has come from each face, 10, 50 and 90 %. [m]

    What lies between the two is grey; a sealed face has none, (0, 0, 0). For a round piece both are the same.
    """

    top: tuple[Metres, Metres, Metres]
    bottom: tuple[Metres, Metres, Metres]

    def grey(self, thickness: Metres, quantile: int) -> tuple[Metres, Metres]:
        """Where grey begins and ends, from the bottom face, at quantile 0, 1 or 2 of what has come in. [m]"""
        low, high = self.bottom[quantile], thickness - self.top[quantile]
        return (low, high) if high > low else ((low + high) / 2, (low + high) / 2)


@dataclass(frozen=True)
class Cure:
    """A piece in cure. Times count from when it went in. [s]

    `pink_from` is the nitrite that turns the species pink, `salt_wanted` the mean that was asked for.
    """

    thickness: Metres
    now: Slice | None = None
    end: Slice | None = None
    round: bool = False
    fat_cap: Metres = 0.0
    times: tuple[Seconds, ...] = ()
    nitrite_centre: Band = field(default_factory=Band)  # [mg/kg]
    salt_centre: Band = field(default_factory=Band)  # [fraction]
    pink_from: MilligramsPerKilogram | None = None
    salt_wanted: Fraction | None = None
    elapsed: Seconds | None = None
    cured: Seconds | None = None


@dataclass(frozen=True)
class Rule:
    """A cooling rule as the stairs that a core must stay under: by each time, down to each temperature."""

    name: str
    corners: Readings


@dataclass(frozen=True)
class Chill:
    """A piece that cools, against up to two rules; either of them would do."""

    readings: Readings = ()
    expected: Curve = field(default_factory=Curve)
    rules: tuple[Rule, ...] = ()
    now: datetime | None = None
