"""A paper as a PDF on A4, in a font that has the letters of Europe, with its tables broken over pages.

The font comes with matplotlib; only the letters that are used go into the file.
"""

from functools import cached_property
from pathlib import Path
from typing import Final

import matplotlib as mpl
from fpdf import FPDF, XPos, YPos
from fpdf.enums import VAlign
from fpdf.fonts import FontFace

from bot.paper import Paper, Section, Table

FONT: Final = "DejaVu"
FILES: Final = {"": "DejaVuSans.ttf", "B": "DejaVuSans-Bold.ttf"}
NOT_IN_THE_FONT: Final = "\N{REPLACEMENT CHARACTER}"
MARGIN: Final = 15.0  # mm
TITLE, HEADING, TEXT, SMALL = 16.0, 12.0, 9.5, 7.5  # points
MOST_ROWS: Final = 500  # of a table; setting thousands would hold up what else is to be sent
GREY: Final = (236, 236, 236)


def sheet(paper: Paper) -> bytes:
    """The PDF; the same paper gives the same bytes."""
    return _Sheet(paper).whole()


class _Sheet(FPDF):
    """One paper on its way into a PDF."""

    def __init__(self, paper: Paper) -> None:
        super().__init__(format="A4", unit="mm")
        self.paper = paper
        self.set_margin(MARGIN)
        self.c_margin = 0.0
        self.set_auto_page_break(auto=True, margin=MARGIN + 5)
        for style, name in FILES.items():
            self.add_font(FONT, style, Path(mpl.get_data_path()) / "fonts" / "ttf" / name)
        self.set_title(self._fit(paper.title))
        self.set_lang(paper.language)
        self.set_creation_date(paper.made_at)

    def footer(self) -> None:
        """The number of the page, under each."""
        self.set_y(-MARGIN)
        self.set_font(FONT, "", SMALL)
        said = self.paper.page.format(page=self.page_no(), pages="{nb}")
        self.cell(0, 5, f"{self._fit(self.paper.title)} · {said}", align="C")

    def whole(self) -> bytes:
        """Everything, set."""
        self.add_page()
        self._line(self.paper.title, TITLE, "B")
        for line in self.paper.lead:
            self._line(line, TEXT, "B")
        for section in self.paper.sections:
            self._section(section)
        self.ln(4)
        self._line(" ".join(self.paper.foot), SMALL)  # in one: single lines would go over to a page of their own
        return bytes(self.output())

    def _section(self, section: Section) -> None:
        self.ln(4)
        if self.will_page_break(25):  # no title stands alone at the foot of a page
            self.add_page()
        self._line(section.title, HEADING, "B")
        for line in section.lines:
            self._line(line, TEXT)
        if section.table is not None and section.table.rows:
            left_out = len(section.table.rows) - MOST_ROWS
            if left_out > 0:
                self._line(self.paper.left_out.format(rows=left_out), TEXT)
            self._rows(section.table)

    def _rows(self, rows: Table) -> None:
        self.ln(1)
        self.set_font(FONT, "", SMALL)
        style = FontFace(emphasis="BOLD", fill_color=GREY)
        with self.table(
            headings_style=style,
            col_widths=rows.widths,
            text_align="LEFT",
            line_height=SMALL * 0.5,
            borders_layout="HORIZONTAL_LINES",
            v_align=VAlign.T,
            padding=(0.6, 1.0),
        ) as table:
            for row in (rows.head, *rows.rows[-MOST_ROWS:]):
                table.row([self._fit(cell) for cell in row])

    def _line(self, text: str, size: float, style: str = "") -> None:
        self.set_font(FONT, style, size)
        self.multi_cell(0, size * 0.5, self._fit(text), align="L", new_x=XPos.LMARGIN, new_y=YPos.NEXT)

    @cached_property
    def _letters(self) -> frozenset[int]:
        """What the font has."""
        return frozenset(self.fonts[FONT.lower()].cmap)

    def _fit(self, text: str) -> str:
        """The text in the letters that the font has; {nb} is the sheet's own word for the number of pages."""
        printed = (c for c in text if c.isprintable() or c == "\n")
        fitting = (c if c == "\n" or ord(c) in self._letters else NOT_IN_THE_FONT for c in printed)
        return "".join(fitting).replace(self.str_alias_nb_pages or "{nb}", "{ nb}")
