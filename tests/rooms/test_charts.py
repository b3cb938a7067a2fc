"""Pictures: they can be drawn of anything, read in grey, and nothing on them overlaps or is cut off."""

import io
import struct
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import combinations
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.charts import chill, cook, cure, look
from bot.charts.hours import Span, _ticks, span
from bot.charts.shown import (
    Band,
    Chill,
    Cook,
    Cure,
    Curve,
    Frame,
    Rule,
    Slice,
)
from bot.charts.slices import length
from bot.charts.strokes import at_least, at_most
from bot.labels import ChillWords, CookWords, CureWords
from core.person import Units

ZONE = ZoneInfo("Europe/Vienna")
METRIC, CUSTOMARY = Units(), Units("lb", "in", "f")
DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
FRAME = Frame("Brisket flat for the harvest supper", ZONE, METRIC, DAYS, "Nothing was read yet.")
COOK_WORDS = CookWords(
    "Temperature", "core, as read", "pit, as read", "core, expected", "8 in 10 end in here", "pit, as set",
    "target", "ready", "stall", "wrapped", "wrap by", "now", "supper",
)  # fmt: skip
CURE_WORDS = CureWords(
    "now, day 3", "at the end, day 7", "now", "out", "cured pink", "may be either", "grey", "pink all through", "fat",
    "Nitrite at the centre", "Salt at the centre", "days in the cure", "turns pink", "as you like it",
    "expected", "8 in 10",
)  # fmt: skip
CHILL_WORDS = ChillWords(
    "Temperature", "core, as read", "core, expected", "8 in 10 end in here", "breaks the rule", "now"
)
START = datetime(2027, 9, 11, 6, 0, tzinfo=UTC)


def after(hours: float) -> datetime:
    return START + timedelta(hours=hours)


def rising(hours: np.ndarray, wide: float) -> Curve:
    middle = 95 - 90 * np.exp(-hours / 4)
    spread = wide * (hours - hours[0])
    band = Band(tuple(middle - spread), tuple(middle), tuple(middle + spread))
    return Curve(tuple(after(hour) for hour in hours), band)


FULL_COOK = Cook(
    core=tuple((after(h), 95 - 90 * float(np.exp(-h / 4))) for h in (0, 1, 2.2, 3)),
    pit=tuple((after(h), 118.0 + h) for h in (0, 1, 2.2, 3)),
    expected=rising(np.linspace(3, 12, 40), 1.0),
    pit_set=121.0,
    target=92.0,
    ready=(after(9), after(10), after(11.5)),
    stall=(after(2.5), after(5)),
    wrap=after(4),
    now=after(3),
    deadline=after(13),
)
RULES = (
    Rule("130-80-40", ((after(1), 54.44), (after(2.5), 26.67), (after(7.5), 4.44))),
    Rule("135-70-41", ((after(0.9), 57.22), (after(2.9), 21.11), (after(6.9), 5.0))),
)
FULL_CHILL = Chill(
    tuple((after(h), 60 - 10.0 * h) for h in (0, 1, 1.5)), rising(np.linspace(1.5, 9, 20), 0.5), RULES, after(1.5)
)
_WIDE = tuple(np.linspace(0, 40, 30))
FULL_CURE = Cure(
    thickness=0.05,
    now=Slice((0.010, 0.015, 0.020), (0.010, 0.015, 0.020)),
    end=Slice((0.022, 0.030, 0.040), (0.022, 0.030, 0.040)),
    times=tuple(np.linspace(0, 7 * 86400.0, 30)),
    nitrite_centre=Band(_WIDE, tuple(1.2 * v for v in _WIDE), tuple(1.4 * v for v in _WIDE)),
    salt_centre=Band(tuple(v / 4000 for v in _WIDE), tuple(v / 3000 for v in _WIDE), tuple(v / 2000 for v in _WIDE)),
    pink_from=14.0,
    salt_wanted=0.018,
    elapsed=3 * 86400.0,
    cured=6.9 * 86400.0,
)

ALL = {
    "a cook": lambda frame: cook.draw(FULL_COOK, COOK_WORDS, frame),
    "a cook before the fire": lambda frame: cook.draw(
        replace(FULL_COOK, core=(), pit=(), wrap=None), COOK_WORDS, frame
    ),
    "a cook of one reading": lambda frame: cook.draw(Cook(core=((START, 5.0),)), COOK_WORDS, frame),
    "a cook of nothing": lambda frame: cook.draw(Cook(), COOK_WORDS, frame),
    "a cook of a target": lambda frame: cook.draw(Cook(target=95.0, now=START), COOK_WORDS, frame),
    "a frozen cook": lambda frame: cook.draw(Cook(core=((START, -18.0), (after(9), 4.0))), COOK_WORDS, frame),
    "a cure": lambda frame: cure.draw(FULL_CURE, CURE_WORDS, frame),
    "a cure with a fat cap": lambda frame: cure.draw(replace(FULL_CURE, fat_cap=0.008), CURE_WORDS, frame),
    "a cure in long words": lambda frame: cure.draw(
        FULL_CURE, replace(CURE_WORDS, now="Slice as it would be now", end="Slice when it comes out"), frame
    ),
    "a round cure": lambda frame: cure.draw(replace(FULL_CURE, round=True, fat_cap=0.01), CURE_WORDS, frame),
    "a cure ahead": lambda frame: cure.draw(replace(FULL_CURE, now=None, elapsed=None), CURE_WORDS, frame),
    "a cure of nothing": lambda frame: cure.draw(Cure(0.05), CURE_WORDS, frame),
    "a cure of slices": lambda frame: cure.draw(Cure(0.05, FULL_CURE.now, FULL_CURE.end), CURE_WORDS, frame),
    "a chill": lambda frame: chill.draw(FULL_CHILL, CHILL_WORDS, frame),
    "a chill by one rule": lambda frame: chill.draw(replace(FULL_CHILL, rules=RULES[:1]), CHILL_WORDS, frame),
    "a chill of nothing": lambda frame: chill.draw(Chill(), CHILL_WORDS, frame),
    "a chill of a rule": lambda frame: chill.draw(Chill(rules=RULES), CHILL_WORDS, frame),
    "a chill of one reading": lambda frame: chill.draw(Chill(readings=((START, 60.0),)), CHILL_WORDS, frame),
}


def pixels(png: bytes) -> np.ndarray:
    """A picture as a phone in grey shows it: 0 black to 1 white (Rec. 601 weights)."""
    from matplotlib.image import imread

    return imread(io.BytesIO(png))[:, :, :3] @ np.array([0.299, 0.587, 0.114])


@contextmanager
def kept(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[look.Page]]:
    """The pages that are drawn meanwhile, instead of their pictures."""
    pages: list[look.Page] = []
    with monkeypatch.context() as patch:
        for room in (cook, cure, chill):
            patch.setattr(room, "png", lambda page: pages.append(page) or b"")
        yield pages


def written(page: look.Page) -> list:
    """The texts that can be seen: ticks beyond the ends of an axis are kept by the library, and not drawn."""
    from matplotlib.text import Text

    page.figure.canvas.draw()
    axes = [axis for axes in page.figure.axes for axis in (axes.xaxis, axes.yaxis)]
    ticks = {label for axis in axes for tick in axis.get_major_ticks() for label in (tick.label1, tick.label2)}
    hidden = ticks - {tick.label1 for axis in axes if axis.axes.axison for tick in axis._update_ticks()}
    texts = page.figure.findobj(lambda artist: isinstance(artist, Text) and artist not in hidden)
    return [text for text in texts if text.get_visible() and text.get_text().strip()]


def faults(page: look.Page) -> list[str]:
    """Texts that leave the page, and pairs of texts that overlap by more than a pixel."""
    boxes = [(text.get_text(), text.get_window_extent()) for text in written(page)]
    outside = [
        said
        for said, box in boxes
        if box.x0 < 0 or box.y0 < 0 or box.x1 > look.WIDTH + 0.5 or box.y1 > look.HEIGHT + 0.5
    ]
    touching = [
        f"{one} | {other}"
        for (one, a), (other, b) in combinations(boxes, 2)
        if min(a.x1, b.x1) - max(a.x0, b.x0) > 1 and min(a.y1, b.y1) - max(a.y0, b.y0) > 1
    ]
    return outside + touching


@pytest.mark.parametrize("name", ALL)
def test_every_picture_is_a_png_of_one_size(name: str) -> None:
    """One size, with a PNG's signature, of much, of little and of nothing."""
    png = ALL[name](FRAME)
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    assert struct.unpack(">II", png[16:24]) == (look.WIDTH, look.HEIGHT)
    assert pixels(png).min() < 0.2


@pytest.mark.parametrize("units", [METRIC, CUSTOMARY], ids=["metric", "customary"])
@pytest.mark.parametrize("name", ALL)
def test_no_words_overlap_or_leave_the_page(name: str, units: Units, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every text stands alone, whatever is drawn, and no letter is smaller than 16 pt."""
    long = "Brisket flat for the harvest supper of the allotment society, 3.5 kg, on Saturday: ready about 18:50"
    frame = replace(FRAME, units=units, title=FRAME.title if units == METRIC else long)
    with kept(monkeypatch) as pages:
        ALL[name](frame)
    assert faults(pages[0]) == []
    assert min(text.get_fontsize() for text in written(pages[0])) >= 16


hours = st.floats(0, 20)


@settings(max_examples=25, deadline=None)
@given(wrap=hours, now=hours, deadline=hours, ready=hours, stall=st.tuples(hours, st.floats(0, 6)))
def test_marks_never_collide(wrap: float, now: float, deadline: float, ready: float, stall: tuple) -> None:
    """Flags stand in as many rows as it takes, wherever they fall."""
    drawn = replace(
        FULL_COOK,
        wrap=after(wrap),
        now=after(now),
        deadline=after(deadline),
        ready=(after(ready), after(ready), after(ready + 1)),
        stall=(after(stall[0]), after(sum(stall))),
    )
    with pytest.MonkeyPatch.context() as patch, kept(patch) as pages:
        cook.draw(drawn, COOK_WORDS, FRAME)
    assert faults(pages[0]) == []


readings = st.lists(st.tuples(st.floats(0, 30).map(after), st.floats(-20, 300)), max_size=4).map(tuple)


@settings(max_examples=20, deadline=None)
@given(core=readings, pit=readings, now=st.none() | hours.map(after))
def test_any_few_readings_can_be_drawn(core: tuple, pit: tuple, now: datetime | None) -> None:
    """None, one, two at one moment, out of order: no picture fails."""
    with pytest.MonkeyPatch.context() as patch, kept(patch) as pages:
        cook.draw(Cook(core=core, pit=pit, now=now), COOK_WORDS, FRAME)
        chill.draw(Chill(readings=core, rules=RULES, now=now), CHILL_WORDS, FRAME)
    assert [faults(page) for page in pages] == [[], []]


def test_what_people_wrote_is_never_a_formula() -> None:
    """A dollar sign in a name is a dollar sign."""
    words = (
        replace(COOK_WORDS, core="$x_1$ and \\frac", supper="$") if False else replace(COOK_WORDS, core="$x$ \\frac")
    )
    assert cook.draw(FULL_COOK, words, replace(FRAME, title="5 $ a pound, 7 $ the flat \\frac{"))[:4] == b"\x89PNG"


def line_of(drawn: Cook) -> np.ndarray:
    """The pixels of the one horizontal line in a cook, in grey, without its ends and flags."""
    empty = pixels(cook.draw(replace(drawn, core=(), pit=(), pit_set=None, expected=Curve()), COOK_WORDS, FRAME))
    full = pixels(cook.draw(drawn, COOK_WORDS, FRAME))
    changed = np.abs(full - empty)[160:530, 150:820]
    row = changed.mean(axis=1).argmax()
    return changed[row] > 0.25


def test_lines_can_be_told_apart_in_grey() -> None:
    """Core, pit, expected and set are dark for another share of their length, or broken another number of times."""
    ends = (START, after(10))
    flat = Band((), (60.0, 60.0), ())
    blank = Cook(now=START, deadline=after(10), ready=(START, START, after(10)))
    lines = {
        "core": line_of(replace(blank, core=tuple((at, 60.0) for at in ends))),
        "pit": line_of(replace(blank, pit=tuple((at, 60.0) for at in ends))),
        "expected": line_of(replace(blank, expected=Curve(ends, flat))),
        "set": line_of(replace(blank, pit_set=60.0)),
    }
    share = {name: line.mean() for name, line in lines.items()}
    breaks = {name: int((np.diff(line.astype(int)) == -1).sum()) for name, line in lines.items()}
    assert share["core"] == pytest.approx(1.0)
    for one, other in combinations(lines, 2):
        ratio = (breaks[one] + 1) / (breaks[other] + 1)
        assert abs(share[one] - share[other]) > 0.12 or not 0.7 < ratio < 1.4, (one, other, share, breaks)


def test_the_zones_of_a_slice_can_be_told_apart_in_grey() -> None:
    """Pink is plain, what may be either has dots and grey has strokes, darker by a tenth of the scale and more."""
    even = Slice((0.008, 0.012, 0.016), (0.008, 0.012, 0.016))
    shades = pixels(cure.draw(replace(FULL_CURE, now=even, end=None), CURE_WORDS, FRAME))[:, 120:380]
    edges = np.flatnonzero(shades.max(axis=1) < 0.3)  # the outline: rows that are dark from end to end
    top, bottom = edges[edges > 100].min(), edges.max()
    at = {"pink": 0.08, "either": 0.20, "grey": 0.50}
    zones = {name: shades[int(top + (bottom - top) * share) :][:8] for name, share in at.items()}
    assert zones["pink"].std() < 0.01
    assert zones["either"].std() > 0.05
    assert zones["grey"].std() > 0.05
    brightness = {name: zone.mean() for name, zone in zones.items()}
    assert brightness["pink"] > brightness["either"] + 0.05
    assert brightness["either"] > brightness["grey"] + 0.1


@pytest.mark.parametrize(
    ("day", "expected"),
    [
        # Vienna: on 2027-03-28 02:00 does not exist, on 2027-10-31 it comes twice
        (datetime(2027, 3, 28, tzinfo=ZONE), ["00:00", "01:00", "03:00", "04:00", "05:00"]),
        (datetime(2027, 10, 31, tzinfo=ZONE), ["00:00", "01:00", "02:00", "03:00", "04:00", "05:00"]),
        (datetime(2027, 9, 11, 22, tzinfo=ZONE), ["22:00", "23:00", "00:00", "01:00", "02:00", "03:00"]),
    ],
)
def test_ticks_are_round_hours_of_the_person(day: datetime, expected: list[str]) -> None:
    """Local wall times, over a change of the clocks too."""
    end = datetime.combine(day.date() + timedelta(days=day.hour // 12), (day + timedelta(hours=5)).time(), ZONE)
    ticks = _ticks(Span(day.astimezone(UTC), end.astimezone(UTC), ZONE))
    assert [f"{tick.astimezone(ZONE):%H:%M}" for tick in ticks] == expected


def test_a_mark_far_off_does_not_squeeze_the_picture() -> None:
    """A meal two days after the cook is left out; one an hour after it is shown."""
    moments = (START, after(10))
    assert not span(moments, (after(58),), ZONE).holds(after(58))
    assert span(moments, (after(11),), ZONE).holds(after(11))
    assert span(moments, (after(58),), ZONE).length < 11


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        (at_most(26.6666667, CUSTOMARY), "80 °F"),
        (at_most(26.6666667, METRIC), "26.6 °C"),
        (at_most(4.4444444, METRIC), "4.4 °C"),
        (at_most(4.4, CUSTOMARY), "39.9 °F"),
        (at_most(21.11, CUSTOMARY), "70 °F"),
        (at_least(71.1111111, METRIC), "71.2 °C"),
        (at_least(71.1111111, CUSTOMARY), "160 °F"),
        (at_least(95.0, CUSTOMARY), "203 °F"),
        (length(0.05, METRIC), "50 mm"),
        (length(0.05, CUSTOMARY), "2.0 in"),
    ],
)
def test_limits_are_written_on_their_safe_side(written: str, expected: str) -> None:
    """A limit never above itself, a temperature to reach never below itself."""
    assert written == expected


def test_drawing_is_loaded_with_the_first_picture_and_pyplot_never() -> None:
    """The bot starts without matplotlib (it takes half a second); pyplot would keep every figure."""
    code = (
        "import sys; from bot.charts import cook, cure, chill; from bot.charts.shown import *;"
        "from bot.labels import *;"
        "assert 'matplotlib' not in sys.modules;"
        "from zoneinfo import ZoneInfo; from core.person import Units;"
        "frame = Frame('t', ZoneInfo('UTC'), Units(), tuple('abcdefg'), 'n');"
        "cook.draw(Cook(), CookWords(*'abcdefghijklm'), frame);"
        "assert 'matplotlib.figure' in sys.modules and 'matplotlib.pyplot' not in sys.modules"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)
    assert (done.returncode, done.stderr) == (0, "")


@pytest.mark.benchmark
@pytest.mark.parametrize("name", ["a cook", "a cure", "a chill"])
def test_a_picture_takes_a_quarter_of_a_second_at_most(name: str) -> None:
    """After the first, which loads the drawing library; the best of three, on the processor's own clock."""
    draw: Callable[[Frame], bytes] = ALL[name]
    draw(FRAME)
    taken = []
    for _ in range(3):
        begin = time.process_time()
        draw(FRAME)
        taken.append(time.process_time() - begin)
    assert min(taken) < 0.25
