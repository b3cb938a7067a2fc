"""What is known of one batch, as plain numbers, histories and times: all that the ledger judges by."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Final

from core.safety.history import HOTTEST_CORE, History, Reading, ordered, printed_f
from core.safety.left_out import CEILING
from core.safety.lethality import BIRDS
from core.units import Celsius, Days, Fraction, MilligramsPerKilogram

COLD_F: Final = 41.0  # where the last cooling rule ends
Fact = float | bool | str | None


@dataclass(frozen=True)
class Incident:
    """Something went wrong: what, when (aware), and the facts that decide, None where nobody knows.

    `needed` in `incidents.py` names the facts of each kind.
    """

    what: str
    at: datetime
    facts: Mapping[str, Fact] = field(default_factory=dict)


CURED_FROM: MilligramsPerKilogram = (
    100.0  # in the centre: the nitrite of the rule for cured meat; sources.FSIS_COOLING_1999
)


@dataclass(frozen=True)
class Record:
    """One batch as the ledger sees it. Times are aware; histories are in °C, in any order.

    `species` is "beef", "pork", "turkey", "chicken", "duck" or "fish"; `product_class` a line of the storage chart
    ("pastrami", "ham", "fish" …). `intact` is false once it was pierced, rolled, boned or minced. `cured_centre` is
    the nitrite in the modelled centre, `ingoing` that of the dose as its limit counts it, None where unknown;
    `without_cure` says that it lay as good as without, so that its raw days run from going in. `doneness_floor` is the
    core below which the product is never called done [°C], None for the chart's. `modelled_low` is the low side of a
    modelled core between the readings. `pit_meant` is what the pit was set to, each from when on [°C].
    `storage_started_at` is when it stood cold in the fridge to be kept; without it the first cold core reading says so.
    `frozen_at` is since when all of it lies in the freezer, `frozen_days` how
    long it lay there before, which puts its days in the fridge off. `wet` is a brine, not a dry rub or a needle.
    `vouched` holds what the cook gives their word for ("fridge_cold").
    """

    species: str
    now: datetime
    product_class: str = "roast"
    intact: bool = True
    injected: bool = False
    fat_fraction: Fraction | None = None
    ingoing_mg_kg: MilligramsPerKilogram | None = None
    nitrite_limit_mg_kg: MilligramsPerKilogram = CEILING
    cured_centre_mg_kg: MilligramsPerKilogram | None = None
    without_cure: bool = False
    ascorbate_mg_kg: MilligramsPerKilogram | None = None
    at_risk_eaters: bool | None = None
    doneness_floor_c: Celsius | None = None
    core: History = ()
    modelled_low: History = ()
    pit: History = ()
    pit_meant: History = ()
    fridge: History = ()
    brine: History = ()
    put_in_cure_at: datetime | None = None
    out_at: datetime | None = None
    meat_on_at: datetime | None = None
    off_at: datetime | None = None
    chill_started_at: datetime | None = None
    storage_started_at: datetime | None = None
    frozen_at: datetime | None = None
    frozen_days: Days = 0.0
    vacuum: bool = False
    wet: bool = True
    incidents: tuple[Incident, ...] = ()
    vouched: frozenset[str] = frozenset()

    @property
    def bird(self) -> bool:
        """Whether it is poultry."""
        return self.species in BIRDS

    @property
    def fish(self) -> bool:
        """Whether it is fish."""
        return self.species == "fish"

    @property
    def whole(self) -> bool:
        """Whether the middle was never reached by a needle or a knife."""
        return self.intact and not self.injected

    @property
    def delicate(self) -> bool:
        """Whether it is judged by its core: a bird, or meat that is not intact."""
        return self.bird or not self.whole

    @property
    def hurried(self) -> bool:
        """Whether it has the trade's 4 h to 140 °F: a bird, or meat that is not intact and not cured to the middle."""
        return self.bird or (not self.whole and not self.cured)

    @property
    def cured(self) -> bool:
        """Whether the middle holds the rule's nitrite."""
        return self.cured_centre_mg_kg is not None and self.cured_centre_mg_kg >= CURED_FROM

    def said_cold(self, what: str) -> tuple[datetime, ...]:
        """Up to when the fridge ("warm_fridge") or brine ("warm_brine") was cold, by the hours that the cook told."""
        told = ((i.at, i.facts.get("hours")) for i in self.incidents if i.what == what and i.at <= self.now)
        return tuple(at - timedelta(hours=h) for at, h in told if isinstance(h, float | int))

    @property
    def stored_since(self) -> datetime | None:
        """Since when it is kept cold: as said, where that is after it came off, else its first cold core reading."""
        if self.off_at is None:
            return None
        if self.storage_started_at is not None and self.storage_started_at > self.off_at:
            return self.storage_started_at
        cold = (r.at for r in self.possible_core if r.at > self.off_at and printed_f(r.celsius) <= COLD_F)
        return next(cold, None)

    @property
    def possible_core(self) -> tuple[Reading, ...]:
        """The core readings that a core can have, in order, up to now."""
        return tuple(r for r in ordered(self.core) if r.celsius <= HOTTEST_CORE and r.at <= self.now)

    @property
    def impossible_core(self) -> tuple[Reading, ...]:
        """Core readings that no wet meat can have: a probe in the air, or °F taken for °C."""
        return tuple(r for r in ordered(self.core) if r.celsius > HOTTEST_CORE and r.at <= self.now)
