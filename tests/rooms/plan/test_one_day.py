"""Fish that lies for hours in a strong brine: brined, dried, smoked and eaten within a day or two."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from core.plan.case import Case
from core.plan.progress import Progress
from core.plan.recipe import product
from core.plan.schedule import schedule
from core.plan.steps import Band, Durations
from tests.weeks import MONDAY, VIENNA, did

HOURS = 3.0
SIDE = Durations(
    cure=Band(HOURS / 24, HOURS / 24, HOURS / 24), cook=Band(1.5, 2.0, 3.0), rest=0.7, chill=1.0, keep_days=14
)


def at(day: int, hour: int) -> datetime:
    return datetime(2027, 3, day, hour, tzinfo=ZoneInfo("Europe/Vienna")).astimezone(UTC)


def side(**said: object) -> Case:
    made = product("salmon")
    setup = made.setup({"mass": 1.2, "brine_strength": 0.15, "brine_hours": HOURS, **said})
    return Case(setup, made, SIDE, Progress(started=MONDAY), VIENNA, MONDAY)


def times(known: Case, *keys: str) -> list[str]:
    steps = {s.key: s for s in schedule(known).steps}
    return [f"{steps[key].due.astimezone(VIENNA.tz):%a %H:%M}" for key in keys]


@pytest.mark.parametrize(
    ("deadline", "purpose", "wanted"),
    [
        (at(1, 20), "hot", ["Mon 09:45", "Mon 12:45", "Mon 15:45", "Mon 20:00"]),  # eaten warm, the same evening
        (at(2, 19), "cold", ["Mon 09:00", "Mon 12:00", "Mon 15:00", "Tue 19:00"]),  # the fire on the eve
        (at(6, 13), "cold", ["Fri 09:00", "Fri 12:00", "Fri 15:00", "Sat 13:00"]),  # there is time: no sooner
    ],
)
def test_the_day_is_laid_out_backwards(deadline: datetime, purpose: str, wanted: list[str]) -> None:
    """In the brine, out of it, on the fire, served; begun on Monday at eight."""
    assert times(side(deadline=deadline, purpose=purpose), "into_cure", "out", "meat_on", "serve") == wanted


def test_a_cold_meal_of_the_same_day_where_its_hours_allow_it() -> None:
    """Begun at eight for ten in the evening, chilled: an hour of drying is enough, the fire is that day."""
    known = side(deadline=at(1, 21) + timedelta(minutes=30))
    assert times(known, "into_cure", "meat_on", "serve") == ["Mon 09:00", "Mon 14:15", "Mon 21:30"]


def test_fish_that_is_in_late_is_smoked_the_same_day_while_nobody_is_woken_for_it() -> None:
    """In at half past one for lunch tomorrow: on at half past five, off by half past eight at the slow end."""
    known = side(deadline=at(2, 13))
    known = did(did(known, "brine", hours=4.5), "into_cure", hours=1.0)
    assert times(known, "out", "meat_on", "serve") == ["Mon 16:30", "Mon 17:30", "Tue 13:00"]
    late = did(did(side(deadline=at(2, 13)), "brine", hours=7.0), "into_cure", hours=1.0)
    assert times(late, "out", "meat_on")[1].startswith(
        "Tue"
    )  # out at seven, on at eight: off after the quiet hours begin


def test_what_is_late_is_not_put_off_to_the_next_day() -> None:
    """A brine that was made in the morning of the eve, and not in the evening before, still makes the meal."""
    known = side(deadline=at(2, 13))
    known = did(did(known, "brine", hours=0.5), "into_cure", hours=1.0)
    assert times(known, "out", "meat_on", "serve") == ["Mon 12:30", "Mon 15:00", "Tue 13:00"]
    assert schedule(known).late == timedelta(0)
