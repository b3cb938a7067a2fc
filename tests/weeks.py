"""Weeks to plan, for the tests of the plan and of the fold: one stated case, and any case that may come."""

from dataclasses import replace
from datetime import UTC, datetime, time, timedelta
from functools import cache
from itertools import pairwise
from zoneinfo import ZoneInfo, available_timezones

from hypothesis import strategies as st

from core.errors import TooSoon
from core.plan.case import Case
from core.plan.hours import Wall
from core.plan.progress import Progress
from core.plan.recipe import product
from core.plan.schedule import schedule
from core.plan.steps import Band, Durations

MONDAY = datetime(2027, 3, 1, 8, 0, tzinfo=ZoneInfo("Europe/Vienna")).astimezone(UTC)
VIENNA = Wall(ZoneInfo("Europe/Vienna"), time(22, 0), time(7, 0))
USUAL = Durations(cure=Band(4.5, 5.5, 7.0), cook=Band(8.0, 10.0, 12.0), rest=1.5, chill=4.0)

# names under these are either no places or other spellings of the same ones
ZONES = sorted(z for z in available_timezones() if not z.startswith(("posix/", "right/")) and z != "Factory")


def case(*, now: datetime = MONDAY, wall: Wall = VIENNA, durations: Durations = USUAL, **said: object) -> Case:
    """A pastrami as it stands on the day it was begun: 3.2 kg of flat, wet cure, unless said otherwise."""
    made = product("pastrami")
    setup = made.setup({"cut": "brisket_flat", "mass": 3.2, **said})
    return Case(setup, made, durations, Progress(started=now), wall, now)


def later(known: Case, **ahead: float) -> Case:
    """The same batch when some time has passed and nobody said anything."""
    return replace(known, now=known.now + timedelta(**ahead))


def did(known: Case, *steps: str, **ahead: float) -> Case:
    """The same batch after some time, at which the steps were said to be done."""
    passed = later(known, **ahead)
    return replace(
        passed, progress=replace(passed.progress, done={**passed.progress.done, **dict.fromkeys(steps, passed.now)})
    )


def clocks(step_minutes: int = 15) -> st.SearchStrategy[time]:
    """Any time of day, in steps."""
    return st.integers(0, 24 * 60 // step_minutes - 1).map(
        lambda n: time(n * step_minutes // 60, n * step_minutes % 60)
    )


def moments() -> st.SearchStrategy[datetime]:
    """Any minute of three years, the clock changes among them."""
    return st.integers(0, 3 * 365 * 24 * 60).map(lambda n: datetime(2026, 1, 1, tzinfo=UTC) + timedelta(minutes=n))


@cache
def changes(zone: str) -> tuple[datetime, ...]:
    """The clock changes of a zone in 2027, to the half hour."""
    tz, start = ZoneInfo(zone), datetime(2027, 1, 1, tzinfo=UTC)
    times = [start + timedelta(minutes=30 * n) for n in range(365 * 48)]
    return tuple(b for a, b in pairwise(times) if a.astimezone(tz).utcoffset() != b.astimezone(tz).utcoffset())


# by an hour in Europe and America, by half of one on Lord Howe, by two at Troll, at midnight in Havana and Cairo
CHANGING = (
    "Europe/Vienna",
    "America/Chicago",
    "Australia/Lord_Howe",
    "Antarctica/Troll",
    "America/Havana",
    "Africa/Cairo",
)


@st.composite
def changing(draw: st.DrawFn) -> tuple[str, datetime]:
    """A zone whose clocks change, and a minute near a change."""
    zone = draw(st.sampled_from(CHANGING))
    return zone, draw(st.sampled_from(changes(zone))) + timedelta(minutes=draw(st.integers(-300, 300)))


@st.composite
def walls(draw: st.DrawFn) -> Wall:
    """Any zone there is, with quiet hours that somebody may keep."""
    quiet_from, quiet_to = draw(st.sampled_from([(22, 7), (21, 6), (23, 9), (0, 8), (22, 8), (20, 5)]))
    return Wall(ZoneInfo(draw(st.sampled_from(ZONES))), time(quiet_from), time(quiet_to))


@st.composite
def bands(draw: st.DrawFn, low: float, high: float) -> Band:
    """Any band within limits, in order."""
    return Band(*sorted(draw(st.lists(st.floats(low, high), min_size=3, max_size=3))))


@st.composite
def durations(draw: st.DrawFn) -> Durations:
    """What the solvers may say, from a thin strip to a whole packer."""
    return Durations(
        cure=draw(bands(0.5, 14.0)),
        cook=draw(bands(2.0, 16.0)),
        rest=draw(st.floats(0.0, 4.0)),
        chill=draw(st.floats(1.0, 16.0)),
        lighting=draw(st.floats(0.25, 1.0)),
        thaw=draw(st.floats(0.0, 96.0)),
    )


@st.composite
def cases(draw: st.DrawFn, *, deadlines: bool = False) -> Case:
    """A batch on the day it is begun, anywhere, at any time of the year; with `deadlines`, for a meal that can be."""
    now = draw(moments())
    said: dict[str, object] = {
        "purpose": draw(st.sampled_from(["thin", "cold", "hot", "pulled"])),
        "method": draw(st.sampled_from(["brine", "dry", "inject"])),
        "wrap": draw(st.sampled_from(["none", "paper", "foil"])),
        "frozen": draw(st.booleans()),
    }
    begun = case(now=now, wall=draw(walls()), durations=draw(durations()), **said)
    return due_in(begun, draw(st.floats(0.0, 40.0))) if deadlines else begun


def due_in(known: Case, days: float) -> Case:
    """The same batch for a meal in so many days; where that is too soon, for the first that can be."""
    asked = too_soon(known, days)
    deadline = known.now + timedelta(minutes=int(days * 24 * 60)) if asked is None else asked.earliest
    return replace(known, setup=known.setup.change({"deadline": deadline}))


def too_soon(known: Case, days: float) -> TooSoon | None:
    """The refusal of a meal in so many days, where it is refused."""
    deadline = known.now + timedelta(minutes=int(days * 24 * 60))
    try:
        schedule(replace(known, setup=known.setup.change({"deadline": deadline})))
    except TooSoon as refused:
        return refused
    return None
