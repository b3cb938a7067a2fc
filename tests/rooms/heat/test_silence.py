"""Who says nothing at the fire: the request stands where it was, and is renewed every two hours at most."""

from dataclasses import replace
from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest

from core.heat.cook import Cook, History, Seen
from core.heat.ready import forecast
from core.meat.cuts import cut
from core.meat.piece import piece
from core.plan.hours import Wall
from core.plan.reminders import READING_AGAIN, wanted
from core.plan.steps import Kind, Plan, Step, Urgency

HOUR = 3600.0
COOK = Cook(piece(cut("brisket_flat"), 3.5), "ceramic", 121.0, 4.0, 93.0)
WALL = Wall(ZoneInfo("UTC"), time(22), time(7))
NOON = datetime(2027, 10, 2, 12, tzinfo=UTC)


def test_time_that_passes_in_silence_does_not_put_the_reading_off() -> None:
    """Asked for at the same time, whether looked at when it was read or three hours later."""
    seen = (Seen(HOUR, "core", 30.0), Seen(2 * HOUR, "core", 48.0))
    at_once = forecast(COOK, History(seen, now_s=2 * HOUR)).next_reading_s
    later = forecast(COOK, History(seen, now_s=5 * HOUR)).next_reading_s
    assert later == pytest.approx(at_once, abs=600.0)
    assert later < 5 * HOUR


def test_a_reading_that_does_not_come_is_asked_for_every_two_hours_while_the_meat_is_on() -> None:
    """At 12, 14 and 16 for meat that is off at 18 at the latest; never two within two hours, never after the end."""
    off = Step("off", Kind.OFF, NOON + timedelta(hours=4), Urgency.PIERCING, late=NOON + timedelta(hours=6))
    reading = Step("reading/3", Kind.READING, NOON, Urgency.PIERCING)
    plan = Plan((reading, off), NOON + timedelta(hours=8), None, 0.0)
    asked = [w.due_at for w in wanted(plan, WALL) if w.step == reading.key]
    assert asked == [NOON, NOON + READING_AGAIN, NOON + 2 * READING_AGAIN]
    ended = replace(plan, steps=(reading, replace(off, late=NOON + timedelta(hours=1))))
    assert len([w for w in wanted(ended, WALL) if w.step == reading.key]) == 1
