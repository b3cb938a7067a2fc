"""The look of our pictures: paper, ink, sizes, and a page on which nothing overlaps.

900 x 820 px, letters of 17 pt and more, dark ink on light paper: on a phone 65 mm wide they are as large as
the small print of a newspaper, outdoors. The
two inks differ in hue only by courtesy; what tells them apart is the stroke.

Only `Figure` and the Agg canvas are used: pyplot would keep every figure for ever. The drawing library is loaded
by the process that draws, since it takes longer to load than all the rest of the house.
"""

import io
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from matplotlib.artist import Artist
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

WIDTH: Final = 900
HEIGHT: Final = 820
DPI: Final = 100
MARGIN: Final = 22

PAPER: Final = "#fdfbf5"
INK: Final = "#1d1a16"
FAINT: Final = "#d9d2c3"
MUTED: Final = "#5f584c"
MEAT: Final = "#a3201c"  # whatever is the core's
FIRE: Final = "#1f4e79"  # whatever is the pit's
BLUSH: Final = "#f0c3b2"  # a band

TITLE: Final = 23.0
LARGE: Final = 18.0
SMALL: Final = 17.0

KEY_STROKE: Final = 82.0  # a stroke and the gap to its name [px]
KEY_GAP: Final = 28.0
KEY_ROW: Final = 32.0


@dataclass(frozen=True)
class Place:
    """Where axes stand on the page. [px, from its top left corner]"""

    left: float
    top: float
    right: float
    bottom: float

    def x(self, share: float) -> float:
        """A place between left and right. [px]"""
        return self.left + share * (self.right - self.left)


class Page:
    """A page that is filled from the top: title, keys, then axes in what is left. Lengths in px, y downwards."""

    def __init__(self, figure: "Figure", renderer: Any) -> None:
        self.figure = figure
        self.top: float = MARGIN
        self._renderer = renderer

    def title(self, text: str) -> None:
        """The title, in one line or two, in smaller letters before it is cut."""
        lines, size = _fitted(self, text, WIDTH - 2 * MARGIN)
        for line in lines:
            self.write(MARGIN, self.top, line, size=size, weight="bold", va="top")
            self.top += size * DPI / 72 * 1.25
        self.top += 6

    def key(self, entries: Sequence[tuple["Artist", str]]) -> None:
        """What the strokes mean, in as many rows as it takes."""
        rows: list[list[tuple[Artist, str]]] = []
        room = 0.0
        for entry in entries:
            width = KEY_STROKE + self.width(entry[1])
            if width > room:
                rows.append([])
                room = WIDTH - 2 * MARGIN
            rows[-1].append(entry)
            room -= width + KEY_GAP
        for row in rows:
            self._key_row(row)
            self.top += KEY_ROW

    def axes(self, place: Place) -> "Axes":
        """Axes with a faint grid, two spines and letters that can be read outdoors."""
        width, height = place.right - place.left, place.bottom - place.top
        rectangle = (place.left / WIDTH, 1 - place.bottom / HEIGHT, width / WIDTH, height / HEIGHT)
        axes = self.figure.add_axes(rectangle, facecolor="none")
        axes.tick_params(labelsize=SMALL, colors=INK, length=5, width=1.2)
        axes.tick_params(axis="x", pad=12)
        axes.grid(axis="y", color=FAINT, linewidth=1.0)
        axes.set_axisbelow(True)
        for side, spine in axes.spines.items():
            spine.set(visible=side in ("left", "bottom"), linewidth=1.2, color=INK)
        return axes

    def write(self, x: float, y: float, text: str, **how: Any) -> None:
        """Text on the page; what people wrote is never read as a formula."""
        how.setdefault("size", SMALL)
        how.setdefault("color", INK)
        self.figure.text(x / WIDTH, 1 - y / HEIGHT, text, parse_math=False, **how)

    def width(self, text: str, size: float = SMALL, weight: str = "normal") -> float:
        """How wide a text is. [px]"""
        from matplotlib.font_manager import FontProperties

        font = FontProperties(size=size, weight=weight)
        return max(
            float(self._renderer.get_text_width_height_descent(line, font, False)[0]) for line in text.split("\n")
        )

    def _key_row(self, row: Sequence[tuple["Artist", str]]) -> None:
        handles, labels = zip(*row, strict=True)
        legend = self.figure.legend(
            handles,
            labels,
            ncols=len(row),
            loc="upper left",
            bbox_to_anchor=((MARGIN - 8) / WIDTH, 1 - (self.top - 4) / HEIGHT),
            frameon=False,
            fontsize=SMALL,
            labelcolor=INK,
            handlelength=2.6,
            handleheight=1.1,
            columnspacing=1.5,
            borderaxespad=0,
        )
        for text in legend.get_texts():
            text.set_parse_math(False)


@contextmanager
def page(title: str) -> Iterator[Page]:
    """A fresh page with a title; the font's drawing code is not safe with threads, so one at a time in a process."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=(WIDTH / DPI, HEIGHT / DPI), dpi=DPI, facecolor=PAPER)
    canvas: Any = FigureCanvasAgg(figure)
    fresh = Page(figure, canvas.get_renderer())
    fresh.title(title)
    yield fresh


def png(drawn: Page) -> bytes:
    """The page as a PNG."""
    kept = io.BytesIO()
    drawn.figure.savefig(kept, format="png", dpi=DPI, facecolor=PAPER)
    return kept.getvalue()


def outlined() -> dict[str, Any]:
    """Text that stays readable where it crosses a line."""
    from matplotlib.patheffects import withStroke

    return {"path_effects": [withStroke(linewidth=4, foreground=PAPER)]}


def _fitted(page: Page, text: str, room: float) -> tuple[list[str], float]:
    """A title's lines and letters."""
    for size in (TITLE, TITLE - 2, TITLE - 4):
        if page.width(text, size, "bold") <= room:
            return [text], size
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and page.width(longer, LARGE, "bold") > room:
            lines.append(word)
        else:
            lines[-1] = longer
    return lines[:2], LARGE
