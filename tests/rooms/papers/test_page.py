"""The record as a page: sound markup that fetches and runs nothing, whatever people call themselves."""

import xml.etree.ElementTree as ET
from collections.abc import Iterator
from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.paper import Paper, Section, Table
from bot.papers.page import page
from bot.wording import language
from bot.wording.records import record
from tests.kept_week import HOSTILE, MONDAY, NAMES, in_pounds, week

VOID = {"meta", "br", "hr", "img", "link", "input"}
RUNS_OR_FETCHES = {"script", "img", "link", "iframe", "object", "embed", "form", "a", "base", "svg", "video", "audio"}


class Seen(HTMLParser):
    """Every element with its attributes, and all text; raises where an end does not match its beginning."""

    def __init__(self) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []
        self._open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self._open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag in VOID
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self._open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.words.append(data)

    def whole(self) -> bool:
        return not self._open


def read(content: bytes) -> Seen:
    seen = Seen()
    seen.feed(content.decode("utf-8"))
    assert seen.whole()
    return seen


def cells(content: bytes) -> Iterator[tuple[str, str]]:
    """Each cell with the head that a phone shows before it."""
    body = ET.fromstring(content.decode().partition("\n")[2])  # noqa: S314 our own page
    return ((cell.attrib["data-head"], "".join(cell.itertext())) for cell in body.iter("td"))


def test_the_markup_is_sound_by_two_readers() -> None:
    """It is well-formed for a reader of XML, and every element ends where it should for a reader of HTML."""
    content = page(record(week()))
    assert content.startswith(b'<!DOCTYPE html>\n<html lang="en">')
    ET.fromstring(content.decode().partition("\n")[2])  # noqa: S314 our own page
    tags = [tag for tag, _ in read(content).elements]
    assert tags[:2] == ["html", "head"]
    assert (tags.count("h1"), tags.count("title"), tags.count("main"), tags.count("footer")) == (1, 1, 1, 1)
    assert tags.count("table") == 5


def test_it_fetches_and_runs_nothing() -> None:
    """No element that does, no address, no handler; and the page forbids it to itself."""
    elements = read(page(record(week()))).elements
    assert RUNS_OR_FETCHES.isdisjoint(tag for tag, _ in elements)
    assert not [a for _, has in elements for a in has if a.startswith("on") or a in ("href", "src", "style")]
    policy = [has["content"] for _, has in elements if has.get("http-equiv") == "Content-Security-Policy"]
    assert policy == ["default-src 'none'; style-src 'unsafe-inline'"]
    assert b"url(" not in page(record(week()))


def test_a_name_stays_a_name() -> None:
    """A name full of markup is shown as it was typed, in the cells of who did it, and makes no element."""
    found = list(cells(page(record(week()))))
    assert {text for head, text in found if head == "Who"} == {NAMES["m"], NAMES["j"], HOSTILE}
    assert "script" not in [tag for tag, _ in read(page(record(week()))).elements]


@given(st.text(st.characters(codec="utf-8"), max_size=40), st.text(max_size=40))
def test_whatever_is_said_the_page_is_sound(words: str, other: str) -> None:
    """Any words in any place: the same elements as for plain ones, and what can be seen of the words is there."""
    here = Paper(words, (other,), (Section(other, (words,), Table((words,), ((other,),), (1,))),), (words,), MONDAY, "")
    plain = Paper("a", ("b",), (Section("b", ("a",), Table(("a",), (("b",),), (1,))),), ("a",), MONDAY, "")
    assert [tag for tag, _ in read(page(here)).elements] == [tag for tag, _ in read(page(plain)).elements]
    ET.fromstring(page(here).decode().partition("\n")[2])  # noqa: S314 our own page
    visible = "".join(c for c in words if c.isprintable() or c == "\n")
    assert read(page(here)).words.count(visible) >= (2 if visible.strip() else 0)


@pytest.mark.parametrize(
    ("seen", "words"),
    [
        ("log", "no licence"),
        ("dose", "11.9 g × 6.25 % = 744 mg NaNO₂"),
        ("sum", "744 mg ÷ (3.200 kg meat + 1.757 kg pickle = 4.957 kg) = 150 mg/kg"),
        ("limit", "Limit 200 mg/kg (US, 9 CFR 424.21(c)"),
        ("zone", "the clock is that of Europe/Vienna"),
        ("time", "2027-03-08 08:55 +01:00"),
        ("tenth", "84.3 °C"),
        ("corrected", "first said: core 53 °C"),
        ("taken back", "taken back 2027-03-08 10:50 +01:00"),
        ("trouble", "power cut (1 h 30 min, the door stayed shut: yes)"),
        ("verdict", "Safe to serve, as far as the record shows."),
        ("kill", "6.5 log or more"),
        ("slice", "slice: grey 6 mm in the middle of 44 mm"),
        ("weight", "the finished piece weighs 1.9 kg"),
        ("limits of a rule", "90.7 °C; 62.8 °C at least"),
    ],
)
def test_it_says_what_was_done(seen: str, words: str) -> None:
    """Log, dose with its sum, limit, times with their zone, rules and verdict are on the page."""
    assert words in " ".join("".join(read(page(record(week()))).words).split())


def test_it_has_the_units_of_the_cook() -> None:
    """Pounds, inches and °F for who reads them; a dose is weighed in grams by everybody."""
    text = " ".join(read(page(record(in_pounds()))).words)
    assert "183.7 °F" in text
    assert "7.1 lb" in text
    assert "11.9 g × 6.25 %" in text
    assert "84.3 °C" not in text


def test_it_is_in_the_language_of_who_asks(monkeypatch: pytest.MonkeyPatch) -> None:
    """The words of the catalogue, the language on the page, and the decimal sign; names and times as they are."""
    monkeypatch.setattr(language, "OFFERED", frozenset({"en", "de"}))
    with language.speaking("de-AT"):
        paper = record(week())
    text = " ".join("".join(read(page(paper)).words).split())
    assert page(paper).startswith(b'<!DOCTYPE html>\n<html lang="de">')
    assert "Es ist keine Zulassung" in text
    assert "84,3 °C" in text
    assert "2027-03-08 08:55 +01:00" in text
    assert not {s.title for s in record(week()).sections} & {s.title for s in paper.sections}
