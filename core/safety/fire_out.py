"""The fire went out: the decision grid, by what the core reads and how long it can have been below 140 °F.

The worst case counts, from the last good reading to now, with no credit for hoping. The grid follows the
two-hour rule and the policy; it is ours, not a published table (status DERIVED).
"""

from dataclasses import dataclass
from typing import Final

from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.history import Reading, printed_f
from core.sources import FSIS_DANGER_ZONE
from core.units import Celsius, Fahrenheit, Hours

HOT_F: Final = 140.0
LOWEST_F: Final = 110.0  # below it staphylococci had their best hours on the way
COLD_F: Final = 40.0
LONGEST_BELOW: Final = 2.0  # h
LONGEST_COME_UP: Final = 4.0  # h since going on, for meat that never reached 140 °F
LONGEST_WHOLE: Final = 6.0  # h, for intact meat whose core is past 110 °F: the clock of sources.FSIS_COOKING_2021


@dataclass(frozen=True)
class FireOut:
    """The facts that decide. None is not known.

    `core` is the reading now, `hours_below` the worst case without heat: below 140 °F since the last good reading,
    or, before it ever was so hot, since the fire was last shown to burn [h], `reached` whether it ever read 140 °F,
    `hours_since_on` since the meat went on, until it read 140 °F again [h], `hours_in_all` between 40 and 140 °F in
    all [h], `delicate` whether the 4 h count: a bird or meat that is not intact, `again` whether it read 140 °F after
    it was found.
    """

    core: Celsius | None
    hours_below: Hours | None
    reached: bool
    hours_since_on: Hours | None
    hours_in_all: Hours | None = None
    delicate: bool = False
    again: bool = False


def judge_fire_out(facts: FireOut, readings: tuple[Reading, ...] = ()) -> Finding:
    """What the grid says.

    Parameters
    ----------
    facts
        What is known of the core and the clock.
    readings
        The two readings that decided: the last good one and the one now.
    """
    case = _case(facts)
    status, means, advice = _GRID[case]
    return Finding(
        rule=Rule.FIRE_OUT,
        status=status,
        means=means,
        source=FSIS_DANGER_ZONE,
        readings=readings,
        value=facts.hours_since_on if case in _BY_COME_UP else facts.hours_below,
        limit=LONGEST_COME_UP if case in _BY_COME_UP else LONGEST_BELOW,
        unit="h",
        missing=_MISSING.get(case, ""),
        detail=case,
        advice=advice,
    )


_GRID: Final = {
    "no_core": (Status.UNKNOWN, Outcome.CANNOT_SAY, "read_the_core"),
    "still_hot": (Status.PASSED, Outcome.SAFE, "relight_and_finish"),  # whether it is done, the floor of its core says
    "still_cold": (Status.PASSED, Outcome.SAFE, "relight_and_finish"),
    "came_through": (Status.PASSED, Outcome.SAFE, ""),
    "unknown_loss": (Status.UNKNOWN, Outcome.CANNOT_SAY, "say_how_long_out"),
    "on_its_way": (Status.OPEN, Outcome.NOT_YET, "through_140f_now"),
    "bring_through": (Status.OPEN, Outcome.EAT_NOW, "to_165f_now_eat_today"),
    "never_reached": (Status.FAILED, Outcome.THROW_AWAY, "throw_away"),
    "unknown_time": (Status.UNKNOWN, Outcome.THROW_AWAY, "throw_away"),
    "too_long": (Status.FAILED, Outcome.THROW_AWAY, "throw_away"),
    "too_cold": (Status.FAILED, Outcome.THROW_AWAY, "throw_away"),
    "delicate_too_long": (Status.FAILED, Outcome.THROW_AWAY, "throw_away"),
}
_MISSING: Final = {"no_core": "core_reading", "unknown_time": "last_good_reading", "unknown_loss": "hours_out"}
_BY_COME_UP: Final = frozenset({"on_its_way", "never_reached", "came_through"})


def _case(facts: FireOut) -> str:
    if facts.core is None:
        return "no_core"
    core_f = printed_f(facts.core)
    if core_f >= HOT_F and _short(facts):
        return "still_hot"
    if not facts.reached:
        return _never_reached(facts, core_f)
    return _fallen(facts, core_f)


def _never_reached(facts: FireOut, core_f: Fahrenheit) -> str:
    """On its way up the clock of the come-up counts from going on, and the two hours from when the heat was lost."""
    if core_f <= COLD_F:
        return "still_cold"
    if facts.hours_since_on is None:
        return "unknown_time"
    whole = not facts.delicate and core_f >= LOWEST_F
    if facts.hours_since_on > (LONGEST_WHOLE if whole else LONGEST_COME_UP):
        return "never_reached"
    if facts.hours_below is None:
        return "unknown_loss"
    if facts.hours_below > LONGEST_BELOW:
        return "too_long"
    if facts.hours_since_on > LONGEST_COME_UP:
        return "bring_through"
    return "came_through" if facts.again else "on_its_way"


def _fallen(facts: FireOut, core_f: Fahrenheit) -> str:
    if facts.hours_below is None:
        return "unknown_time"
    if facts.hours_below > LONGEST_BELOW:
        return "too_long"
    if core_f < LOWEST_F:
        return "too_cold"
    if facts.delicate and facts.hours_in_all is not None and facts.hours_in_all > LONGEST_COME_UP:
        return "delicate_too_long"
    return "bring_through"


def _short(facts: FireOut) -> bool:
    """A core at 140 °F now settles it only where it was not long below since the last good reading."""
    return facts.hours_below is None or facts.hours_below <= LONGEST_BELOW
