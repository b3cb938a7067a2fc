"""What has been done so far, as the schedule needs to know it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from core.plan.steps import TimeBand


@dataclass(frozen=True)
class Progress:
    """Where a batch stands. Times are aware UTC.

    `settled` is when the cook last said when the meal is: one that could be had then is late when time runs on, not
    refused. `done` holds when each step was done, by key. `ready` is the estimate of a cook under
    way, `wrap_at` when its core is expected to reach wrapping, `next_reading` when a reading would tell most,
    `readings` how many core readings there are since the meat went on. `at_60c` is when the core falls to 60 °C,
    `from_54c` when it fell below 54.4 °C (130 °F), `cold_at` when it is expected at 4.4 °C (40 °F). `cooled` names
    the chill corners already read ("27", "4"). `fire_seen` says that core or pit were read since it came out of the
    cure: then there is a fire, whoever lit it and whatever was said. `warm_at` is when the fridge was last read so warm
    that the two-hour rule counts, where nobody has read it colder since.
    """

    started: datetime
    settled: datetime | None = None
    done: Mapping[str, datetime] = field(default_factory=dict)
    skipped: frozenset[str] = frozenset()
    snoozed: Mapping[str, datetime] = field(default_factory=dict)
    ready: TimeBand | None = None
    wrap_at: datetime | None = None
    next_reading: datetime | None = None
    readings: int = 0
    at_60c: datetime | None = None
    from_54c: datetime | None = None
    cold_at: datetime | None = None
    cooled: frozenset[str] = frozenset()
    fire_seen: bool = False
    warm_at: datetime | None = None
