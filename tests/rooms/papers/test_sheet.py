"""The record as a PDF, read by another hand's reader."""

from dataclasses import replace
from datetime import timedelta
from functools import cache

import pypdfium2
import pytest

from bot.paper import Paper, Section, Table
from bot.papers import sheet as made
from bot.papers.sheet import sheet
from bot.wording.records import record
from tests.kept_week import MONDAY, NAMES, week

PLAIN = Paper("Record", ("It is a log.",), (), ("It ends.",), MONDAY, "Page {page} of {pages}")


@cache
def printed() -> bytes:
    return sheet(record(week()))


def texts(content: bytes) -> list[str]:
    """What a reader reads on each page, blanks as one."""
    document = pypdfium2.PdfDocument(content)
    found = [" ".join(page.get_textpage().get_text_range().split()) for page in document]
    document.close()
    return found


def test_it_opens_and_its_pages_are_numbered() -> None:
    """A4, several pages, each with its number under it."""
    document = pypdfium2.PdfDocument(printed())
    assert {tuple(round(side / 72 * 25.4) for side in page.get_size()) for page in document} == {(210, 297)}
    pages = texts(printed())
    assert 2 <= len(pages) <= 6
    assert all(f"Page {n} of {len(pages)}" in text for n, text in enumerate(pages, 1))
    document.close()


@pytest.mark.parametrize("name", [NAMES["m"], NAMES["j"], "<script>alert(1)</script>"])
def test_every_name_can_be_read_and_searched(name: str) -> None:
    """Umlauts, Polish and Cyrillic letters come out of the file as letters; a name is never markup."""
    assert name in "".join(texts(printed())).replace(" ", "") or any(name in text for text in texts(printed()))


def test_it_says_what_the_page_says() -> None:
    """Every line of every section stands in the PDF, and every cell of every table, word for word."""
    paper = record(week())
    whole = "".join(texts(printed())).replace(" ", "")
    said = [line for section in paper.sections for line in section.lines]
    said += [cell for s in paper.sections if s.table for row in s.table.rows for cell in row]
    missing = [line for line in said if "".join(line.split())[:24] not in whole]
    assert missing == []


def test_nothing_is_printed_over_the_edge() -> None:
    """No letter stands outside the margins of its page."""
    document = pypdfium2.PdfDocument(printed())
    for page in document:
        width, height = page.get_size()
        text = page.get_textpage()
        boxes = [text.get_charbox(n) for n in range(text.count_chars())]
        assert min(left for left, *_ in boxes) > 30
        assert max(right for _, _, right, _ in boxes) < width - 30
        assert min(bottom for _, bottom, *_ in boxes) > 10
        assert max(top for *_, top in boxes) < height - 30
    document.close()


def test_the_same_record_is_the_same_file() -> None:
    """What goes out once more after a crash is no other file."""
    assert sheet(record(week())) == printed()
    assert sheet(replace(PLAIN, made_at=MONDAY + timedelta(days=1))) != sheet(PLAIN)


@pytest.mark.parametrize("words", ["猫 🐈 ok", "{nb} ok", "a\u202eb ok", "**ok** __x__", "ok" * 400, "\x00\x1b ok", ""])
def test_no_words_break_it(words: str) -> None:
    """What the font has not is a sign that says so; no control of a page or of the writer is taken from words."""
    paper = replace(PLAIN, title=words, sections=(Section(words, (words,), Table((words,), ((words,),), (1,))),))
    pages = texts(sheet(paper))
    assert "It ends." in pages[-1]
    assert ("ok" in "".join(pages)) is bool(words)
    assert f"of {len(pages)}" in pages[0]


def test_a_table_without_end_is_cut_and_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    """The latest rows are printed, and how many are not; a row more or less at the edge is neither lost nor told."""
    monkeypatch.setattr(made, "MOST_ROWS", 3)
    for count, told in ((3, False), (5, True)):
        rows = tuple((f"row{n}",) for n in range(count))
        paper = replace(PLAIN, left_out="Left out: {rows}.", sections=(Section("S", (), Table(("H",), rows, (1,))),))
        (text,) = texts(sheet(paper))
        assert ("Left out: 2." in text) is told
        assert [n for n in range(count) if f"row{n}" in text] == list(range(count - 3, count))
    assert "{rows}" in record(week()).left_out
