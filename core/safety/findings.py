"""What a rule finds in a record, and what that means for the meat.

A Finding carries the rule, how it stands, the readings that decided, the deadline, the value and its
limit. The worst finding wins; what cannot be proven is `cannot_say`, and `cannot_say` is never shown as safe.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from core.safety.history import Reading
from core.sources import Source


class Status(StrEnum):
    """How a rule stands: open has time left, unknown cannot be proven from the record."""

    PASSED = "passed"
    FAILED = "failed"
    OPEN = "open"
    UNKNOWN = "unknown"


class Outcome(StrEnum):
    """What is to be done with the meat, from the best to the worst.

    `not_yet` is worse than `eat_now`: what is not done yet is not to be eaten at all.
    """

    SAFE = "safe"
    EAT_NOW = "eat_now"
    NOT_YET = "not_yet"
    CANNOT_SAY = "cannot_say"
    THROW_AWAY = "throw_away"


_ORDER = tuple(Outcome)


def worst(outcomes: Iterable[Outcome]) -> Outcome:
    """The worst of some outcomes; safe where there is none to be afraid of."""
    return max(outcomes, key=_ORDER.index, default=Outcome.SAFE)


class Rule(StrEnum):
    """Every rule that the ledger judges by; each has words at the rim."""

    CORE_POSSIBLE = "core_reading_possible"
    NITRITE_CEILING = "nitrite_ceiling"
    FRIDGE = "fridge_40f"
    BRINE = "brine_40f"
    RAW_KEEPING = "raw_keeping"
    LONGEST_CURE = "longest_cure"
    COME_UP = "come_up_6h"
    REACH_140 = "reach_140f_in_4h"
    HELD_140 = "held_above_140f"
    DONENESS = "doneness_floor"
    LETHALITY = "lethality_table"
    POULTRY_165 = "poultry_165f"
    FISH_160 = "smoked_fish_160f"
    PARTIAL_COOK = "partial_cook"
    COOLING = "cooling"
    TWO_HOURS = "two_hours_off_the_heat"
    USE_BY = "use_by"
    VACUUM_FISH = "vacuum_fish_38f"
    FIRE_OUT = "fire_out"
    LEFT_OUT = "left_out"
    POWER_CUT = "power_cut"
    LEAK = "leaked_bag"
    WARM_FRIDGE = "warm_fridge"
    WARM_BRINE = "warm_brine"
    DOSED_TWICE = "dosed_twice"
    SPOILED = "spoiled"
    PARASITES = "trichinae"


@dataclass(frozen=True)
class Finding:
    """What one rule finds.

    `value` and `limit` are in `unit` ("h", "°C", "log", "mg/kg", "d", "-"). `readings` are those that
    decided. `missing` names the fact or reading that would settle it ("core_reading"), `deadline` is the
    time by which. `detail` names the row, stage or case of the rule. `advice` names what to do ("reheat_165_today").
    """

    rule: Rule
    status: Status
    means: Outcome
    source: Source
    readings: tuple[Reading, ...] = ()
    deadline: datetime | None = None
    value: float | None = None
    limit: float | None = None
    unit: str = ""
    missing: str = ""
    detail: str = ""
    advice: str = ""

    @property
    def edition(self) -> str:
        """The year of the edition that the rule was taken from."""
        return self.source.year
