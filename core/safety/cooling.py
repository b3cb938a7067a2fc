"""How fast cooked meat must pass the danger band, and how a record of readings stands under each rule.

Spores survive the cook and wake between 130 and 80 °F. Between two readings the unsafe side counts: a
stage starts at the last reading at or above its start and ends at the first reading at or below its limit.
Granted are 130-80-40 (FSIS Appendix B) and 135-70-41 (Food Code). The 15 h row for cured meat is granted
only where the centre holds its nitrite and the meat its ascorbate; else it is explained (policy).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final, TypeAlias

from core.safety.cooling_rules import CoolingRule, Stage, Use, judged_rules
from core.safety.findings import Outcome, Status
from core.safety.history import (
    History,
    Reading,
    hours_between,
    later,
    ordered,
    printed_f,
    until_cold,
    warmest_at_each_time,
)
from core.units import Fahrenheit, Hours, MilligramsPerKilogram

Contents: TypeAlias = tuple[MilligramsPerKilogram | None, MilligramsPerKilogram | None]

GROWS_BELOW_F: Final = 130.0  # where the slowest spores begin, and the rules with them
HEATED_AGAIN_F: Final = 140.0
_NOISE = 1e-9  # h; binary fractions of an hour, not a tolerance


@dataclass(frozen=True)
class StageJudgement:
    """How one stage stands. [h]

    `started` is the reading from which its clock runs, `ended` the first at or below its limit. `hours_at_most`
    is the time between them, or up to now while it is open, and alone can pass; `hours_by_line` is the
    time by straight lines between the readings, which tells "failed" from "cannot be shown".
    """

    stage: Stage
    status: Status
    started: Reading | None
    ended: Reading | None
    deadline: datetime | None
    hours_at_most: Hours
    hours_by_line: Hours


@dataclass(frozen=True)
class RuleJudgement:
    """How one rule stands: its stages by the clock, its conditions by the record."""

    rule: CoolingRule
    status: Status
    stages: tuple[StageJudgement, ...]
    conditions: Status

    @property
    def clock(self) -> Status:
        """How the stages alone stand, whatever the conditions."""
        return together([s.status for s in self.stages])


@dataclass(frozen=True)
class CoolingVerdict:
    """What the cooling means for the meat.

    `decided_by` is the rule that decided, `stage` its stage that did, with the two readings.
    """

    kind: Outcome
    rules: tuple[RuleJudgement, ...]
    decided_by: RuleJudgement
    stage: StageJudgement

    @property
    def next_stage(self) -> StageJudgement | None:
        """The stage that runs out first, None where the rule is settled: a later stage never ends before it."""
        return self.stage if self.kind is Outcome.NOT_YET else None

    @property
    def deciding(self) -> tuple[Reading, ...]:
        """The two readings that decided; one while its stage runs."""
        return tuple(r for r in (self.stage.started, self.stage.ended) if r is not None)

    def of(self, key: str) -> RuleJudgement:
        """How the rule of that key stands."""
        return next(judged for judged in self.rules if judged.rule.key == key)


def judge_cooling(
    history: History,
    cured_centre: MilligramsPerKilogram | None,
    ascorbate: MilligramsPerKilogram | None,
    now: datetime,
) -> CoolingVerdict:
    """How the cooling stands under every rule, and what that means.

    Parameters
    ----------
    history
        Core readings from the end of the cook on. [aware datetime, °C]
    cured_centre
        Nitrite in the modelled centre, not the tub's average; None where unknown. [mg/kg]
    ascorbate
        Ascorbate or erythorbate put in; None where unknown. [mg/kg]
    now
        The time at which it is asked. aware

    Raises
    ------
    Missing, OutOfRange
        A reading without a zone, or one that cannot be.
    """
    readings = ordered(history)
    judged = tuple(judge_rule(rule, readings, (cured_centre, ascorbate), now) for rule in judged_rules())
    kind, decided_by = _decide(judged)
    return CoolingVerdict(kind, judged, decided_by, _decisive(decided_by))


def judge_rule(
    rule: CoolingRule,
    readings: Sequence[Reading],
    in_the_meat: Contents,
    now: datetime,
) -> RuleJudgement:
    """How one rule stands.

    Parameters
    ----------
    rule
        A row of the published options.
    readings
        Core readings in order, from the last before it came off. [aware UTC, °C]
    in_the_meat
        Nitrite at the centre and ascorbate put in; None where unknown. [mg/kg]
    now
        The time at which it is asked. aware

    Returns
    -------
    Its stages by the clock, its conditions by the record, and the worse of both.
    """
    cooled = until_cold(rule.stages[-1].to_f, _until_heated_again(warmest_at_each_time(readings)))
    stages = tuple(judge_stage(stage, cooled, now) for stage in rule.stages)
    limits = (rule.min_nitrite, rule.min_ascorbate)
    shown = [_at_least(held, limit) for held, limit in zip(in_the_meat, limits, strict=True) if limit is not None]
    if rule.start_within is not None:
        shown.append(Status.UNKNOWN)  # the start of the chill is no core reading
    conditions = together(shown)
    return RuleJudgement(rule, together([conditions, *(s.status for s in stages)]), stages, conditions)


def judge_stage(stage: Stage, readings: Sequence[Reading], now: datetime) -> StageJudgement:
    """How one stage stands.

    Parameters
    ----------
    stage
        From one temperature to another within some hours. [°F, h]
    readings
        Core readings of one cooling, in order. [aware UTC, °C]
    now
        The time up to which an open stage has run. aware

    Returns
    -------
    Passed by the worst case only; failed where even straight lines between the readings are too slow; unknown
    between the two. Its end is the first reading at or below the limit after which none is above it.
    """
    started = _start(stage, readings)
    if started is None:
        return StageJudgement(stage, Status.UNKNOWN, None, None, None, 0.0, 0.0)
    after = [r for r in readings if r.at >= started.at]
    ended = _end(stage, after)
    at_most = hours_between(started.at, ended.at if ended else max(now, started.at))
    by_line = _hours_by_line(stage, after, ended)
    status = _stage_status(stage, ended, at_most, by_line)
    return StageJudgement(stage, status, started, ended, later(started.at, stage.max_h), at_most, by_line)


def together(statuses: Sequence[Status]) -> Status:
    """Several as one: failed, else unknown, else open, else passed."""
    order = (Status.FAILED, Status.UNKNOWN, Status.OPEN)
    return next((status for status in order if status in statuses), Status.PASSED)


def _stage_status(stage: Stage, ended: Reading | None, at_most: Hours, by_line: Hours) -> Status:
    """Failed where even the line between the readings is too slow; unknown where only a reading is wanting."""
    if by_line > stage.max_h + _NOISE:
        return Status.FAILED
    if at_most > stage.max_h + _NOISE:
        return Status.UNKNOWN
    return Status.PASSED if ended else Status.OPEN


def _end(stage: Stage, after: Sequence[Reading]) -> Reading | None:
    """The first reading at or below the limit after which none is above it."""
    warm = [i for i, r in enumerate(after) if printed_f(r.celsius) > stage.to_f]
    cold = after[warm[-1] + 1 :] if warm else after
    return cold[0] if cold else None


def _until_heated_again(readings: Sequence[Reading]) -> tuple[Reading, ...]:
    """The readings up to a second heating: heating again is no cure for a slow cooling and starts no new clock."""
    hot = fallen = False
    for place, reading in enumerate(readings):
        at_f = printed_f(reading.celsius)
        if fallen and at_f >= HEATED_AGAIN_F:
            return tuple(readings[:place])
        hot = hot or at_f >= GROWS_BELOW_F
        fallen = fallen or (hot and at_f < GROWS_BELOW_F)
    return tuple(readings)


def _start(stage: Stage, readings: Sequence[Reading]) -> Reading | None:
    """The last reading at or above the start, before the first below it.

    Meat that was never read so warm starts at the reading before its warmest.
    """
    if not readings:
        return None
    warm = [printed_f(r.celsius) >= stage.from_f for r in readings]
    if not any(warm):
        warmest = max(range(len(readings)), key=lambda i: readings[i].celsius)
        return readings[max(warmest - 1, 0)]
    first = warm.index(True)
    fell = warm.index(False, first) if False in warm[first:] else len(readings)
    return readings[fell - 1]


def _hours_by_line(stage: Stage, after: Sequence[Reading], ended: Reading | None) -> Hours:
    """What the stage took by straight lines between the readings; up to the last reading while it has no end."""
    until = [r for r in after if ended is None or r.at <= ended.at]
    begun = _crossing(stage.from_f, until[:2])
    over = _crossing(stage.to_f, until[-2:]) if ended else until[-1].at
    return max(0.0, hours_between(begun, over))


def _crossing(limit_f: Fahrenheit, pair: Sequence[Reading]) -> datetime:
    """When the straight line through two readings passes a limit; the nearer reading where it does not."""
    first, second = pair[0], pair[-1]
    fall = printed_f(first.celsius) - printed_f(second.celsius)
    share = (printed_f(first.celsius) - limit_f) / fall if fall > 0 else 0.0
    return first.at + (second.at - first.at) * max(share, 0.0)


def _at_least(value: float | None, limit: float) -> Status:
    if value is None:
        return Status.UNKNOWN
    return Status.PASSED if value >= limit else Status.FAILED


def _decide(judged: Sequence[RuleJudgement]) -> tuple[Outcome, RuleJudgement]:
    """The policy for cooling: the granting rules first, then the 15 h rows, then out."""
    granting = [j for j in judged if j.rule.use is Use.GRANTS]
    cured = [j for j in judged if j.rule.use is Use.CURED]
    whole = [j for j in cured if j.rule.min_ascorbate is not None]
    for status, means in ((Status.PASSED, Outcome.SAFE), (Status.OPEN, Outcome.NOT_YET)):
        for group in (granting, whole):
            found = next((j for j in group if j.status is status), None)
            if found is not None:
                return means, found
    return _not_granted(granting, cured, [j for j in judged if j.rule.use is Use.SUPPORTS])


def _not_granted(
    granting: Sequence[RuleJudgement], cured: Sequence[RuleJudgement], supports: Sequence[RuleJudgement]
) -> tuple[Outcome, RuleJudgement]:
    """Cannot say where a row that does not grant is met or may be, or where nobody looked; else throw away.

    Where the centre does not hold the nitrite of the 1999 row, no 15 h row is about this meat.
    """
    older = next(j for j in cured if j.rule.min_ascorbate is None)
    inside = (older,) if older.conditions is not Status.FAILED else ()
    met = [j for j in inside if j.clock in (Status.PASSED, Status.OPEN)]
    met += [j for j in supports if j.clock is Status.PASSED]
    unshown = [j for j in (*inside, *granting) if j.clock is Status.UNKNOWN]
    for found in (*met, *unshown):
        return Outcome.CANNOT_SAY, found
    return Outcome.THROW_AWAY, (*inside, *granting)[0]


def _decisive(judged: RuleJudgement) -> StageJudgement:
    """The stage that decided: the first that stands as the whole rule does by the clock; where all passed, the last."""
    if judged.clock is Status.PASSED:
        return judged.stages[-1]
    return next(s for s in judged.stages if s.status is judged.clock)
