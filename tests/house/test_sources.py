"""The bibliography for people is the one that the code cites."""

from pathlib import Path

from core.sources import every_source

PAGE = Path(__file__).parents[2] / "docs" / "sources.md"


def test_the_page_lists_what_the_code_cites() -> None:
    """Key, title, place, year and status of every source, none more and none less."""
    rows = [[cell.strip() for cell in line.strip("|\n ").split(" | ")] for line in PAGE.read_text("utf-8").splitlines()]
    listed = {row[0]: tuple(row[1:]) for row in rows if len(row) == 5 and row[0].isupper()}
    cited = {k: (s.title, s.where, s.year, str(s.status)) for k, s in every_source().items()}

    assert listed == cited
