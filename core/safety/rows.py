"""The published tables in `tables/`, read once, row by row, as they are printed."""

import csv
from functools import cache
from importlib.resources import files

from core.errors import Unreadable

Row = dict[str, str]


@cache
def rows(table: str) -> tuple[Row, ...]:
    """The rows of one table by the names of its columns; raises Unreadable where there is no such table."""
    path = files("core.safety") / "tables" / f"{table}.csv"
    try:
        text = path.read_text(encoding="utf-8")
    except FileNotFoundError as missing:
        raise Unreadable(f"{table}.csv", "core/safety/tables", "there is no such table") from missing
    return tuple(csv.DictReader(text.splitlines()))


def number(row: Row, column: str) -> float:
    """The number in one column; raises Unreadable for an empty cell, so that none is ever read as 0."""
    found = optional_number(row, column)
    if found is None:
        raise Unreadable("tables", column, "the cell is empty")
    return found


def optional_number(row: Row, column: str) -> float | None:
    """The number in one column, None where the table leaves it empty; raises Unreadable for anything else."""
    text = row[column].strip()
    try:
        return float(text) if text else None
    except ValueError as wrong:
        raise Unreadable("tables", column, f"{text!r} is no number") from wrong
