"""What a slice would look like: pink from the faces, grey in the middle, and between them what may be either."""

from typing import TYPE_CHECKING, Any, Final

from bot.charts.look import HEIGHT, INK, MUTED, WIDTH, Page, Place
from bot.charts.shown import Cure, Slice
from bot.labels import CureWords
from core.person import Units
from core.units import METRES_PER_INCH, Metres

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.patches import Patch

PINK: Final[dict[str, Any]] = {"facecolor": "#f3a8a1", "edgecolor": INK, "linewidth": 1.2}
PERHAPS: Final[dict[str, Any]] = {"facecolor": "#d3b0a5", "edgecolor": "#7a3b34", "hatch": "..", "linewidth": 0.0}
GREY: Final[dict[str, Any]] = {"facecolor": "#9b948a", "edgecolor": "#2c2822", "hatch": "///", "linewidth": 0.0}
FRONT: Final[dict[str, Any]] = {"fill": False, "edgecolor": INK, "linestyle": (0, (5, 2)), "linewidth": 2.0}
EDGE: Final[dict[str, Any]] = {"fill": False, "edgecolor": INK, "linewidth": 1.8}
FAT: Final[dict[str, Any]] = {"facecolor": "#f6eed6", "edgecolor": MUTED, "hatch": "xx", "linewidth": 0.0}
ROUNDING: Final = 0.16
MILLIMETRES: Final = 1000.0
CAPTION: Final = 32.0
LINE: Final = 28.0
CAPTION_RIGHT: Final = 450.0  # where the numbers of the curves beside it begin
RULER: Final = 54.0  # room for the arrow and its number, left of the slice [px]
SLOW, MEDIAN, FAST = 0, 1, 2


def draw_slice(sheet: Page, place: Place, cut: tuple[Cure, Slice], said: tuple[str, CureWords, Units]) -> None:
    """One slice under its caption, true to scale, with its thickness beside it."""
    cure, slice_ = cut
    name, words, units = said
    top = place.top + _caption(sheet, place, name, _seen(cure, slice_, words, units))
    axes = sheet.axes(Place(place.left + RULER, top, place.right, place.bottom - 12))
    axes.set_axis_off()
    width, height = place.right - place.left - RULER, place.bottom - 12 - top
    whole = cure.thickness + cure.fat_cap
    tall = whole * 1.06
    axes.set_ylim(-0.03 * whole, 1.03 * whole)
    axes.set_xlim(-0.01 * tall, tall * width / height)
    _meat(axes, cure, slice_)
    _ruler(sheet, place, axes, (cure, units))


def _caption(sheet: Page, place: Place, name: str, seen: str) -> float:
    """Which slice it is and what is to be seen, on one line or two; the height of it all. [px]"""
    after = place.left + sheet.width(name, weight="bold") + 12
    fits = after + sheet.width(seen) <= CAPTION_RIGHT
    sheet.write(place.left, place.top, name, weight="bold", va="top")
    sheet.write(after if fits else place.left, place.top + (0 if fits else LINE), seen, va="top")
    return CAPTION if fits else CAPTION + LINE


def length(metres: Metres, units: Units) -> str:
    """A length as the person reads it."""
    return f"{metres / METRES_PER_INCH:.1f} in" if units.length == "in" else f"{metres * MILLIMETRES:.0f} mm"


def _seen(cure: Cure, slice_: Slice, words: CureWords, units: Units) -> str:
    """How wide the grey is, with its band; the unit stands once."""
    widths = [high - low for low, high in (slice_.grey(cure.thickness, q) for q in (FAST, MEDIAN, SLOW))]
    least, middle, most = (length(width, units) for width in widths)
    if most == length(0.0, units):
        return words.all_pink
    if least == most:
        return f"{words.grey} {middle}"
    return f"{words.grey} {middle} ({least.split()[0]}–{most})"


def _meat(axes: "Axes", cure: Cure, slice_: Slice) -> None:
    """The zones, clipped to the outline of the piece; the outline once more over them."""
    outline = _disc(cure, cure.thickness, **PINK) if cure.round else _slab(axes, cure, **PINK)
    axes.add_patch(outline)
    for quantile, look in ((SLOW, PERHAPS), (FAST, GREY), (MEDIAN, FRONT)):
        low, high = slice_.grey(cure.thickness, quantile)
        if high > low:
            zone = _disc(cure, high - low, **look) if cure.round else _stripe(axes, low, high, **look)
            axes.add_patch(zone)
            zone.set_clip_path(outline)
    if cure.fat_cap and not cure.round:
        fat = _stripe(axes, cure.thickness, cure.thickness + cure.fat_cap, **FAT)
        axes.add_patch(fat)
        fat.set_clip_path(outline)
    axes.add_patch(_disc(cure, cure.thickness, **EDGE) if cure.round else _slab(axes, cure, **EDGE))


def _disc(cure: Cure, across: Metres, **look: Any) -> "Patch":
    """A round zone about the middle of a round piece."""
    from matplotlib.patches import Circle

    return Circle((cure.thickness / 2, cure.thickness / 2), across / 2, **look)


def _slab(axes: "Axes", cure: Cure, **look: Any) -> "Patch":
    """The outline of a flat piece, its fat cap on top."""
    from matplotlib.patches import FancyBboxPatch

    whole = cure.thickness + cure.fat_cap
    corners = f"round,pad=0,rounding_size={ROUNDING * whole}"
    return FancyBboxPatch((0, 0), 0.99 * axes.get_xlim()[1], whole, boxstyle=corners, **look)


def _stripe(axes: "Axes", low: Metres, high: Metres, **look: Any) -> "Patch":
    """A zone from face to face of a flat piece."""
    from matplotlib.patches import Rectangle

    # wider than the piece, so that its own ends never show
    return Rectangle((-axes.get_xlim()[1], low), 3 * axes.get_xlim()[1], high - low, **look)


def _ruler(sheet: Page, place: Place, axes: "Axes", said: tuple[Cure, Units]) -> None:
    """The thickness of the meat as an arrow beside it."""
    cure, units = said
    foot, head = (HEIGHT - axes.transData.transform((0, y))[1] for y in (0, cure.thickness))
    x = place.left + RULER - 12
    sheet.figure.add_artist(_arrow(x, foot, head))
    sheet.write(x - 6, (foot + head) / 2, length(cure.thickness, units), rotation=90, ha="right", va="center")


def _arrow(x: float, foot: float, head: float) -> "Patch":
    from matplotlib.patches import FancyArrowPatch

    ends = [(x / WIDTH, 1 - y / HEIGHT) for y in (foot, head)]
    return FancyArrowPatch(*ends, arrowstyle="<->", mutation_scale=14, color=INK, linewidth=1.4, shrinkA=0, shrinkB=0)
