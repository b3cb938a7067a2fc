"""When a reading of the core is asked for: where it tells most, and at the latest before a clock on the way up ends."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import Final

from core.batch.batch import Batch
from core.batch.events import Probe
from core.batch.ledger import Known, record_of
from core.plan.recipe import product
from core.safety.come_up import COME_UP, REACH_140, judge_climb
from core.safety.cook import cook_readings
from core.safety.done import VOUCHED
from core.safety.findings import Status
from core.safety.history import printed_f
from core.safety.record import Record
from core.units import Celsius

LAST_CALL: Final = timedelta(minutes=15)  # before a clock runs out. Judgement


def next_reading(batch: Batch, known: Known, now: datetime) -> datetime | None:
    """When the core is to be read next; None where no meat is on the fire.

    What is judged by its core is judged by readings alone, so one is asked for while it can still show the rule kept.
    It counts from what was read, not from `now`: time that passes in silence does not put it off.
    """
    on = batch.done.get("meat_on")
    if on is None or batch.off_at is not None:
        return None
    tells_most = on + timedelta(seconds=known.cook.next_reading_s)
    made = product(batch.setup.product)
    since = held_since(batch, made.safety_floor_c) if made.hours.hold_at_target else None
    if since is not None:  # it stays on so long at its floor: read again when that is over
        tells_most = max(tells_most, since + timedelta(hours=made.hours.hold_at_target))
    return min([tells_most, *_last_calls(record_of(batch, known, now), on)])


def held_since(batch: Batch, target_c: Celsius) -> datetime | None:
    """The first of the readings of the core from `target_c` on that no colder one and no long silence has ended."""
    on = batch.done.get("meat_on")
    read = [r for r in batch.of_probe(Probe.CORE) if on is not None and r.at >= on]
    since: datetime | None = None
    for reading in reversed(read):
        silent = since is not None and since - reading.at > timedelta(hours=VOUCHED)
        if printed_f(reading.celsius) < printed_f(target_c) or silent:
            break
        since = reading.at
    return since


def _last_calls(record: Record, on: datetime) -> Iterator[datetime]:
    """For each clock that runs on: shortly before its end, where nothing was read since."""
    core = cook_readings(record)
    seen = core[-1].at if core else on
    clocks = [COME_UP] * record.delicate + [REACH_140] * record.hurried
    for judged in (judge_climb(clock, core, on, seen) for clock in clocks):
        if judged.status is Status.OPEN and judged.deadline is not None and judged.deadline - LAST_CALL > seen:
            yield judged.deadline - LAST_CALL
