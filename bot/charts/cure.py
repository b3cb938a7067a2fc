"""A piece in cure: what a slice would look like now and at the end, and nitrite and salt at its centre over days."""

from datetime import timedelta
from typing import TYPE_CHECKING, Any, Final

from bot.charts.hours import NEVER, Flag, Flags, Span, say_nothing
from bot.charts.look import HEIGHT, INK, MARGIN, SMALL, WIDTH, Page, Place, outlined, page, png
from bot.charts.shown import Band, Cure, Frame
from bot.charts.slices import FAT, GREY, PERHAPS, PINK, draw_slice
from bot.charts.strokes import BAND, EXPECTED, Key, band_key, draw_band, line_key
from bot.labels import CureWords
from core.units import SECONDS_PER_DAY, SECONDS_PER_HOUR

if TYPE_CHECKING:
    from matplotlib.axes import Axes

SLICES_RIGHT: Final = 420.0
CURVES_LEFT: Final = 530.0
ALONE_LEFT: Final = 104.0
TICKS: Final = 56.0  # room of the figures at the axis, which a heading may stand above
GAP: Final = 14.0
ROOM_UNDER_KEY: Final = 10.0
HEADING: Final = 30.0
BOTTOM: Final = 96.0
ROOM_ABOVE: Final = 1.25
ROOM_AT_END: Final = 1.04
PERCENT: Final = 100.0
DAY_STEPS: Final = (1, 2, 5, 10, 20, 50, 100)
MOST_DAYS: Final = 8
LEAST_DAYS: Final = 1.0


def draw(cure: Cure, words: CureWords, frame: Frame) -> bytes:
    """The picture of a piece in cure, as PNG bytes."""
    with page(frame.title) as sheet:
        sheet.key(_key(cure, words))
        sheet.top += ROOM_UNDER_KEY
        _slices(sheet, cure, words, frame)
        _curves(sheet, cure, words, frame)
        return png(sheet)


def _key(cure: Cure, words: CureWords) -> Key:
    key: Key = []
    if cure.now or cure.end:
        key = [(band_key(PINK), words.pink), (band_key(PERHAPS), words.perhaps), (band_key(GREY), words.grey)]
        if cure.fat_cap and not cure.round:
            key.append((band_key(FAT), words.fat))
    if cure.nitrite_centre.p50 or cure.salt_centre.p50:
        key.append((line_key(EXPECTED), words.expected))
    if cure.nitrite_centre.p10 or cure.salt_centre.p10:
        key.append((band_key(BAND), words.band))
    return key


def _slices(sheet: Page, cure: Cure, words: CureWords, frame: Frame) -> None:
    """The slice now over the slice at the end, or the one that there is."""
    wanted = [(cut, name) for cut, name in ((cure.now, words.now), (cure.end, words.end)) if cut is not None]
    height = (HEIGHT - MARGIN - sheet.top) / max(len(wanted), 1)
    for number, (cut, name) in enumerate(wanted):
        top = sheet.top + number * height
        place = Place(MARGIN, top, SLICES_RIGHT, top + min(height, 260.0))
        draw_slice(sheet, place, (cure, cut), (name, words, frame.units))


def _curves(sheet: Page, cure: Cure, words: CureWords, frame: Frame) -> None:
    """Nitrite over salt, on the same days."""
    shown = _span(cure, frame)
    marks = _marks(cure, words)
    middle = (sheet.top + HEIGHT - BOTTOM) / 2
    left = CURVES_LEFT if cure.now or cure.end else ALONE_LEFT
    sheet.write(left - TICKS, sheet.top, f"{words.nitrite}, mg/kg", weight="bold", va="top")
    sheet.top += HEADING
    nitrite = Flags(sheet, shown, marks).axes(left, middle)
    _curve(nitrite, (shown, cure), cure.nitrite_centre, frame)
    _level(nitrite, cure.pink_from, words.pink_from)
    sheet.write(left - TICKS, middle + GAP, f"{words.salt}, %", weight="bold", va="top")
    salt = sheet.axes(Place(left, middle + GAP + HEADING + 4, WIDTH - MARGIN, HEIGHT - BOTTOM))
    for mark in marks:
        salt.axvline(
            shown.hours(mark.at), color=INK, linestyle=mark.style, linewidth=2.4 if mark.bold else 1.6, zorder=0
        )
    _curve(salt, (shown, cure), _percent(cure.salt_centre), frame)
    _level(salt, None if cure.salt_wanted is None else PERCENT * cure.salt_wanted, words.salt_wanted)
    _mark_days(nitrite, shown, names=False)
    _mark_days(salt, shown, names=True)
    salt.set_xlabel(words.days, size=SMALL, color=INK, parse_math=False)


def _span(cure: Cure, frame: Frame) -> Span:
    """The days of the picture, counted from when the piece went in."""
    ends = [*cure.times[-1:], cure.elapsed, cure.cured]
    last = max(*(end for end in ends if end is not None), LEAST_DAYS * SECONDS_PER_DAY, 0)
    return Span(NEVER, NEVER + timedelta(seconds=last * ROOM_AT_END), frame.zone)


def _marks(cure: Cure, words: CureWords) -> list[Flag]:
    """Now, and when it comes out."""
    marks = []
    if cure.elapsed is not None:
        marks.append(Flag(NEVER + timedelta(seconds=cure.elapsed), words.now_mark, bold=True))
    if cure.cured is not None:
        marks.append(Flag(NEVER + timedelta(seconds=cure.cured), words.end_mark, (0, (8, 3))))
    return marks


def _curve(axes: "Axes", where: tuple[Span, Cure], band: Band, frame: Frame) -> None:
    """One quantity at the centre with its band, from zero up."""
    shown, cure = where
    hours = [time / SECONDS_PER_HOUR for time in cure.times]
    axes.set_xlim(0, shown.length)
    draw_band(axes, hours, band)
    if len(hours) == 0:
        say_nothing(axes, frame.nothing)
    highest = max([*band.p90, *band.p50], default=1.0)
    axes.set_ylim(0, (highest or 1.0) * ROOM_ABOVE)
    axes.locator_params(axis="y", nbins=5)


def _level(axes: "Axes", value: float | None, label: str) -> None:
    """A value that is waited for, named at its left end."""
    if value is None:
        return
    axes.set_ylim(0, max(axes.get_ylim()[1], value * ROOM_ABOVE))
    axes.axhline(value, color=INK, linewidth=1.6, linestyle=(0, (1, 1.2)), zorder=4)
    how: dict[str, Any] = {"size": SMALL, "color": INK, "parse_math": False, "zorder": 7, **outlined()}
    axes.annotate(label, (0, value), (6, 4), textcoords="offset points", va="bottom", **how)


def _mark_days(axes: "Axes", shown: Span, *, names: bool) -> None:
    """Whole days."""
    days = shown.length * SECONDS_PER_HOUR / SECONDS_PER_DAY
    step = next((step for step in DAY_STEPS if days / step <= MOST_DAYS), DAY_STEPS[-1])
    whole = range(0, int(days) + 1, step)
    axes.set_xticks([24 * day for day in whole], [str(day) if names else "" for day in whole])
    axes.set_xlim(0, shown.length)


def _percent(band: Band) -> Band:
    """Fractions as percent."""
    low, middle, high = (tuple(PERCENT * value for value in values) for values in (band.p10, band.p50, band.p90))
    return Band(low, middle, high)
