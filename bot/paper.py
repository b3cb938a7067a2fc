"""A paper: sections of lines and tables, worded in `bot/wording` and set by `bot/papers` as a page or a PDF."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True)
class Table:
    """A table: its head, its rows, and how wide its columns are beside each other."""

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    widths: tuple[int, ...]


@dataclass(frozen=True)
class Section:
    """A part with its title: lines, then a table where there is one."""

    title: str
    lines: tuple[str, ...] = ()
    table: Table | None = None


@dataclass(frozen=True)
class Paper:
    """A whole paper. `lead` stands at its head, `foot` under all of it; `language` is a code like "en"."""

    title: str
    lead: tuple[str, ...]
    sections: tuple[Section, ...]
    foot: tuple[str, ...]
    made_at: datetime
    page: str  # «Page {page} of {pages}»
    left_out: str = ""  # «The first {rows} …», where print has not room for all of a table
    language: str = "en"
