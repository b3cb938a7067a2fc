"""The fridge and the brine while the meat is raw, and the fridge while the finished meat is kept.

40 °F is the line. Up to 44.6 °F for part of a day is mended and the cure goes on; warmer, or for a time that
nobody can bound, the two-hour rule decides (one hour at 90 °F or above). A warm spell counts from the last
cold reading before it to the first cold reading after it. The policy is in docs/science/safety.md.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby, pairwise
from typing import Final

from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.history import (
    History,
    Reading,
    hours_between,
    later,
    ordered,
    printed_f,
    warmest_at_each_time,
    within,
)
from core.sources import FSIS_DANGER_ZONE, NCHFP_CURING, SMALL_PLANT_STORAGE, Source
from core.units import Celsius, Hours

COLD_F: Final = 40.0
MENDED_F: Final = 44.6  # 7 °C: up to here part of a day is mended; sources.SMALL_PLANT_STORAGE
PART_OF_A_DAY: Final = 24.0  # h
TWO_HOURS: Final = 2.0
HOT_DAY_F: Final = 90.0
HOT_DAY_HOURS: Final = 1.0
BRINE_COOL_F: Final = 60.0  # a brine under this for 2 to 4 h is a doubt, not a certainty
BRINE_DOUBT_HOURS: Final = 4.0
READ_EVERY: Final = 60.0  # h; a daily check, of which one may be missed, at another hour of the day. JUDGEMENT


@dataclass(frozen=True)
class Window:
    """The time that is judged; `until` None is still running. `vouched`: the cook says that it stayed cold.

    `said_cold` are times up to which it was cold by the cook's word («warm for an hour at most»): they bound a gap
    between readings, and never outweigh one.
    """

    since: datetime
    until: datetime | None
    now: datetime
    vouched: bool = False
    said_cold: tuple[datetime, ...] = ()

    @property
    def end(self) -> datetime:
        """Where the time that is judged ends."""
        return self.now if self.until is None else min(self.until, self.now)


@dataclass(frozen=True)
class WarmSpell:
    """A run of readings above 40 °F. [h]

    `at_most` counts from the last cold reading before it to the first cold one after it (or to the end),
    `at_least` between its own readings. `closed` says that a cold reading ended it.
    """

    warmest: Reading
    begins: datetime
    at_most: Hours
    at_least: Hours
    closed: bool

    @property
    def limit(self) -> Hours:
        """How long it may last. [h]"""
        warmest_f = printed_f(self.warmest.celsius)
        if warmest_f <= MENDED_F:
            return PART_OF_A_DAY
        return two_hour_limit(self.warmest.celsius)


def two_hour_limit(celsius: Celsius | None) -> Hours:
    """The two-hour rule: one hour where it is 90 °F or warmer. [h] sources.FSIS_DANGER_ZONE"""
    hot = celsius is not None and printed_f(celsius) >= HOT_DAY_F
    return HOT_DAY_HOURS if hot else TWO_HOURS


def judge_fridge(history: History, window: Window) -> Finding:
    """How the fridge stands over a window.

    Parameters
    ----------
    history
        Readings of the fridge, in any order; those outside the window do not count. [aware datetime, °C]
    window
        From when to when the meat was in it, and whether the cook vouches for the gaps.

    Returns
    -------
    The gravest warm spell by its rule; without one, whether the readings are close enough to show a cold fridge.
    With no reading at all nothing can be said.

    References
    ----------
    `sources.FSIS_DANGER_ZONE`, `sources.SMALL_PLANT_STORAGE`.
    """
    readings = warmest_at_each_time(within(ordered(history), window.since, window.end))
    spells = warm_spells(readings, window)
    if spells:
        return max(((_judge_spell(spell), spell.at_most) for spell in spells), key=_gravity)[0]
    return _judge_watch(readings, window)


def judge_brine(history: History, window: Window) -> Finding | None:
    """How the brine stands.

    Parameters
    ----------
    history
        Readings of the brine, in any order. [aware datetime, °C]
    window
        From when to when the meat was in it.

    Returns
    -------
    The gravest warm spell: as for the fridge, and up to 60 °F for at most 4 h a doubt. None where nobody read it,
    since the fridge speaks for it then.

    References
    ----------
    `sources.NCHFP_CURING`.
    """
    readings = warmest_at_each_time(within(ordered(history), window.since, window.end))
    if not readings:
        return None
    found = [(_judge_brine_spell(spell), spell.at_most) for spell in warm_spells(readings, window)]
    cold = Finding(Rule.BRINE, Status.PASSED, Outcome.SAFE, NCHFP_CURING, readings[-1:], detail="cold")
    return max(found, key=_gravity)[0] if found else cold


def warm_spells(readings: Sequence[Reading], window: Window) -> tuple[WarmSpell, ...]:
    """The runs of readings above 40 °F, each with the longest that it can have lasted."""
    spells, cold_at = [], window.since
    runs = [(warm, tuple(run)) for warm, run in groupby(readings, lambda r: printed_f(r.celsius) > COLD_F)]
    for i, (warm, run) in enumerate(runs):
        if not warm:
            cold_at = run[-1].at
            continue
        cold_at = max([cold_at, *(at for at in window.said_cold if at <= run[0].at)])
        after = runs[i + 1][1][0].at if i + 1 < len(runs) else None
        most = hours_between(cold_at, after or window.end)
        warmest = max(run, key=lambda r: r.celsius)
        spells.append(WarmSpell(warmest, cold_at, most, hours_between(run[0].at, run[-1].at), after is not None))
    return tuple(spells)


def _judge_spell(spell: WarmSpell) -> Finding:
    mended = printed_f(spell.warmest.celsius) <= MENDED_F
    status, means = _spell_status(spell)
    return _spell_finding(Rule.FRIDGE, spell, (status, means), SMALL_PLANT_STORAGE if mended else FSIS_DANGER_ZONE)


def _judge_brine_spell(spell: WarmSpell) -> Finding:
    status, means = _spell_status(spell)
    if printed_f(spell.warmest.celsius) <= BRINE_COOL_F and spell.at_most <= BRINE_DOUBT_HOURS:
        means = min(means, Outcome.CANNOT_SAY, key=tuple(Outcome).index)
    return _spell_finding(Rule.BRINE, spell, (status, means), NCHFP_CURING)


def _spell_status(spell: WarmSpell) -> tuple[Status, Outcome]:
    if spell.at_least > spell.limit:
        return Status.FAILED, Outcome.THROW_AWAY
    if spell.at_most > spell.limit:
        return Status.UNKNOWN, Outcome.CANNOT_SAY
    return (Status.PASSED if spell.closed else Status.OPEN), Outcome.SAFE


def _spell_finding(rule: Rule, spell: WarmSpell, found: tuple[Status, Outcome], source: Source) -> Finding:
    status, means = found
    settled = status in (Status.PASSED, Status.FAILED)
    return Finding(
        rule=rule,
        status=status,
        means=means,
        source=source,
        readings=(spell.warmest,),
        deadline=None if settled else later(spell.begins, spell.limit),
        value=spell.at_most,
        limit=spell.limit,
        unit="h",
        missing="" if settled else "hours_above_40f" if status is Status.UNKNOWN else "fridge_reading",
        detail="warm_spell",
        advice="throw_away" if means is Outcome.THROW_AWAY else "fridge_colder",
    )


def _judge_watch(readings: Sequence[Reading], window: Window) -> Finding:
    """All readings are cold: were there enough of them?"""
    marks = [window.since, *(r.at for r in readings), window.end]
    longest, begins = max((hours_between(a, b), a) for a, b in pairwise(marks))
    watched = bool(readings) and (window.vouched or longest <= READ_EVERY)
    early = longest <= PART_OF_A_DAY
    status = Status.PASSED if watched else Status.OPEN if early else Status.UNKNOWN
    return Finding(
        rule=Rule.FRIDGE,
        status=status,
        means=Outcome.CANNOT_SAY if status is Status.UNKNOWN else Outcome.SAFE,
        source=FSIS_DANGER_ZONE,
        readings=tuple(readings[-1:]),
        deadline=None if watched else later(begins, READ_EVERY),
        value=longest,
        limit=READ_EVERY,
        unit="h",
        missing="" if watched else "fridge_reading",
        detail="watched" if watched else "not_watched",
    )


def _gravity(judged: tuple[Finding, Hours]) -> tuple[int, bool, Hours]:
    """What still runs comes before what is over, and the longer before the shorter."""
    finding, hours = judged
    return tuple(Outcome).index(finding.means), finding.status is Status.OPEN, hours
