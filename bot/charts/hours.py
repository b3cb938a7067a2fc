"""A time axis in the hours of the person, and flags that say what happens when."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from typing import TYPE_CHECKING, Any, Final
from zoneinfo import ZoneInfo

from bot.charts.look import HEIGHT, INK, LARGE, MARGIN, PAPER, SMALL, WIDTH, Page, Place, outlined
from bot.charts.shown import Frame

if TYPE_CHECKING:
    from matplotlib.axes import Axes

STEPS_MIN: Final = (15, 30, 60, 120, 180, 240, 360, 720, 1440, 2880, 7200, 14400, 43200)
MOST_TICKS: Final = 7
EDGE: Final = 0.035  # a label closer to the end of the axis would leave the page
ROW: Final = 30.0
EMPTY_SPAN: Final = timedelta(hours=4)
LEAST: Final = timedelta(minutes=30)
NEVER: Final = datetime(2000, 1, 1, tzinfo=UTC)


@dataclass(frozen=True)
class Span:
    """The time that a picture covers; x on its axis is hours since its begin."""

    begin: datetime
    end: datetime
    zone: ZoneInfo
    known: bool = True  # False when there was no moment to show

    def hours(self, moment: datetime) -> float:
        """Where a moment stands on the axis. [h]"""
        return (moment - self.begin).total_seconds() / 3600

    def holds(self, moment: datetime | None) -> bool:
        """Whether a moment is on the picture."""
        return moment is not None and self.begin <= moment <= self.end

    @property
    def length(self) -> float:
        """All of it. [h]"""
        return self.hours(self.end)


@dataclass(frozen=True)
class Flag:
    """A moment with a name, and the stroke of its line."""

    at: datetime
    label: str
    style: Any = "-"
    bold: bool = False

    @property
    def width(self) -> float:
        """How thick its line is. [pt]"""
        return 2.4 if self.bold else 1.6

    @property
    def weight(self) -> str:
        """How heavy its letters are."""
        return "bold" if self.bold else "normal"


def span(moments: Iterable[datetime], marks: Iterable[datetime | None], zone: ZoneInfo) -> Span:
    """The span of all moments, with a little room; marks stretch it by no more than half, or are left out."""
    known = [moment.astimezone(UTC) for moment in moments]
    marked = [mark.astimezone(UTC) for mark in marks if mark is not None]
    begin, end = min(known or marked or [NEVER]), max(known or marked or [NEVER])
    if end - begin < LEAST:
        end = begin + EMPTY_SPAN
    reach = max((end - begin) / 2, EMPTY_SPAN / 2)
    near = [mark for mark in marked if begin - reach <= mark <= end + reach]
    begin, end = min([begin, *near]), max([end, *near])
    room = (end - begin) / 40
    return Span(begin - room, end + room, zone, bool(known or marked))


def mark_hours(axes: "Axes", shown: Span, frame: Frame) -> None:
    """Ticks at round local hours; the day's name under the first and under each new day."""
    places, labels, before = [], [], None
    for moment in _ticks(shown) if shown.known else []:
        if shown.hours(moment) > (1 - EDGE) * shown.length:
            continue
        local = moment.astimezone(shown.zone)
        day = f"\n{frame.days[local.weekday()]}" if local.date() != before else ""
        before = local.date()
        places.append(shown.hours(moment))
        labels.append(f"{local:%H:%M}{day}")
    axes.set_xlim(0, shown.length)
    axes.set_xticks(places, labels, parse_math=False)


def clock(moment: datetime, shown: Span) -> str:
    """A moment as the person's clock shows it."""
    return f"{moment.astimezone(shown.zone):%H:%M}"


def _ticks(shown: Span) -> list[datetime]:
    """Round local times inside a span, as few as there is room for."""
    for step in STEPS_MIN:
        ticks = list(_every(shown, step))
        if len(ticks) <= MOST_TICKS:
            return ticks
    return []


def _every(shown: Span, step_min: int) -> Iterator[datetime]:
    """Local wall times that are whole steps from the midnight before the span."""
    midnight = datetime.combine(shown.begin.astimezone(shown.zone).date(), time())
    for count in range(int((shown.length + 26) * 60 / step_min) + 1):
        wall = (midnight + count * timedelta(minutes=step_min)).replace(tzinfo=shown.zone)
        moment = wall.astimezone(UTC)
        # an hour that the clocks skip in spring has no place on the axis
        real = moment.astimezone(shown.zone).replace(tzinfo=None) == wall.replace(tzinfo=None)
        if real and shown.begin <= moment <= shown.end:
            yield moment


class Flags:
    """Flags over axes: each label above its line, in as many rows as it takes that none touches another."""

    def __init__(self, page: Page, shown: Span, flags: Sequence[Flag]) -> None:
        self._page, self._shown = page, shown
        self._flags = sorted((flag for flag in flags if shown.holds(flag.at)), key=lambda flag: flag.at)

    def axes(self, left: float, bottom: float) -> "Axes":
        """Axes in what is left of the page under the flags, which are drawn."""
        strip = Place(left, self._page.top, WIDTH - MARGIN, bottom)
        rows = self._placed(strip)
        top = self._page.top + ROW * (max((row for _, row, _ in rows), default=-1) + 1) + 8
        for flag, row, middle in rows:
            foot = top - 6 - ROW * row
            self._line(strip.x(self._share(flag)), Place(left, foot, strip.right, bottom), flag)
            self._label(middle, foot, flag)
        return self._page.axes(Place(left, top, strip.right, bottom))

    def clear(self, begin: float, end: float) -> float:
        """The place between two that is farthest from every flag's line. [h]"""
        lines = [self._shown.hours(flag.at) for flag in self._flags]
        places = [begin + (end - begin) * share for share in (0.5, 0.3, 0.7)]
        return max(places, key=lambda place: min((abs(place - line) for line in lines), default=0.0))

    def _placed(self, strip: Place) -> list[tuple[Flag, int, float]]:
        """Each flag, its row from below and the middle of its label. [px]"""
        placed: list[tuple[Flag, int, float]] = []
        ends: list[float] = []
        for flag in self._flags:
            half = self._page.width(flag.label, SMALL, flag.weight) / 2
            middle = min(max(strip.x(self._share(flag)), MARGIN + half), WIDTH - MARGIN / 2 - half)
            row = next((row for row, end in enumerate(ends) if middle - half > end), len(ends))
            ends[row : row + 1] = [middle + half + 14]
            placed.append((flag, row, middle))
        return placed

    def _share(self, flag: Flag) -> float:
        return self._shown.hours(flag.at) / self._shown.length

    def _label(self, middle: float, foot: float, flag: Flag) -> None:
        box = {"facecolor": PAPER, "edgecolor": "none", "pad": 1.5}
        self._page.write(middle, foot, flag.label, ha="center", va="bottom", weight=flag.weight, bbox=box)

    def _line(self, x: float, place: Place, flag: Flag) -> None:
        """The line of a flag, under everything that the axes show."""
        from matplotlib.lines import Line2D

        ends = [1 - place.top / HEIGHT, 1 - place.bottom / HEIGHT]
        line = Line2D([x / WIDTH] * 2, ends, color=INK, linewidth=flag.width, linestyle=flag.style, zorder=-1)
        self._page.figure.add_artist(line)


def say_nothing(axes: "Axes", words: str) -> None:
    """A picture of nothing yet says so in its middle."""
    middle: dict[str, Any] = {"ha": "center", "va": "center", "transform": axes.transAxes}
    axes.text(0.5, 0.5, words, size=LARGE, color=INK, parse_math=False, **middle, **outlined())
