"""The entries that a cook may write are held to their schema, and every number of their text to a source."""

import re

import pytest

from core.answers.dangers import grave
from core.answers.entries import Entry, asked_in, entries, entry, read
from core.errors import Gone, Unreadable
from core.safety.cautions import caution

ALL = list(entries().values())
SHORT, LONG = 400, 1200
FIRST = 140  # what a lock screen shows of a message: the first sentence stands on a line of its own
NUMBER = re.compile(r"\d+(?:\.\d+)?")
SPELLED = re.compile(
    r"\b(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty|sixty|ninety"
    r"|hundreds?|thousands?|dozens?|\w+fold|twice|double|half|halves|thirds?|quarters?)\b"
)
NO_FIGURE = {"halved", "halves", "half-warm", "never twice alike"}  # said of a piece or a state, not of an amount
KINDS = {"entry", "refused", "off_topic"}


@pytest.mark.parametrize("e", ALL, ids=lambda e: e.id)
def test_an_entry_keeps_to_the_schema(e: Entry) -> None:
    """Short, asked for in several ways, with its sources and with cautions that exist."""
    assert 0 < len(e.short) <= SHORT
    assert len(re.split(r"(?<=[.?]) ", e.short)[0]) <= FIRST
    assert len(e.more) <= LONG
    assert len(e.asks) >= 3
    assert e.kind in KINDS
    assert e.sources or e.kind == "off_topic"
    assert "!" not in e.short + e.more
    for name in e.cautions:
        assert caution(name).key == name


@pytest.mark.parametrize("e", ALL, ids=lambda e: e.id)
def test_every_number_has_a_source(e: Entry) -> None:
    """No invented figure: a number stands, as it is printed, beside its source; and each of these is used."""
    text = f"{e.short}\n{e.more}"
    assert [printed for printed in e.figures if printed not in text] == []
    for printed in sorted(e.figures, key=len, reverse=True):
        text = text.replace(printed, "")
    for said in NO_FIGURE:
        text = text.replace(said, "")
    assert NUMBER.findall(text) + SPELLED.findall(text.lower()) == []


def test_no_two_entries_are_asked_for_alike() -> None:
    """A phrasing leads to one entry."""
    asked = [ask.lower() for asks in asked_in("en").values() for ask in asks]
    assert len(asked) == len(set(asked))


def test_words_of_danger_raise_few_false_alarms() -> None:
    """Of the phrasings of what may be granted, one in a hundred at most is met by another entry's warning instead."""
    harmless = [(name, ask) for name, asks in asked_in("en").items() if entry(name).kind == "entry" for ask in asks]
    alarms = [(name, ask, grave(ask)) for name, ask in harmless if grave(ask) not in (None, name)]
    assert len(alarms) <= 0.01 * len(harmless), alarms


def test_a_broken_file_is_named(tmp_path) -> None:  # type: ignore[no-untyped-def]
    """The name of the file and what is wrong in it."""
    broken = tmp_path / "broken.md"
    broken.write_text('+++\nsubject = "x"\nasks = ["a"]\nsources = ["NOBODY"]\n+++\nText.\n')
    with pytest.raises(Unreadable) as refused:
        read(broken)
    assert refused.value.file == "broken.md"
    with pytest.raises(Gone):
        entry("nothing")
