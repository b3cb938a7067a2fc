"""The catalogues: each language says what the English says, with the same fields and the same figures."""

import re
from collections import Counter
from string import Formatter

import pytest

from bot.wording.language import ENTRIES, OFFERED, SENTENCES
from tests.house.catalogue import entry_texts, gaps, of, paths, read, renewed, unsaid
from tests.house.measure import TOP

LANGUAGES = sorted(paths())
ROOMS = ("wording", "conversation")
ENGLISH_ONLY = {"terminal.py": "the words of the terminal itself, before anybody has said in which language"}


def pairs(language: str) -> list[tuple[str, str]]:
    """Each English sentence and text of an entry with its translation; the form for several where there are two."""
    found = [(m.id, m.string) for kind in (SENTENCES, ENTRIES) for m in read(language, kind) if m.id]
    flat = [(i[-1], s[-1]) if isinstance(i, tuple) else (i, s) for i, s in found]
    return [(i, s) for i, s in flat if s]


def fields(sentence: str) -> set[str]:
    """What a sentence leaves open."""
    return {name for _, name, _, _ in Formatter().parse(sentence) if name}


def figures(sentence: str) -> Counter[str]:
    """The figures of a sentence, whatever the decimal sign."""
    bare = re.sub(r"\{[^}]*\}", "", sentence)
    return Counter(figure.replace(",", ".") for figure in re.findall(r"\d+(?:[.,]\d+)*", bare))


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_catalogue_holds_what_is_said_and_nothing_else(language: str) -> None:
    """It is as `python -m tests.house.catalogue` would write it."""
    assert renewed(read(language), language) == paths()[language].read_text("utf-8")


@pytest.mark.parametrize("language", LANGUAGES)
def test_nearly_every_entry_is_translated(language: str) -> None:
    """Entries are data that a cook may add to: one without words is said in English, and says so."""
    known = {m.id: m.string for m in read(language, ENTRIES) if m.id}
    texts = entry_texts()
    missing = [text for text in texts if not known.get(text)]
    assert len(missing) <= len(texts) / 5, missing


@pytest.mark.parametrize("language", sorted(OFFERED & paths().keys()))
def test_a_language_that_is_offered_speaks_of_everything(language: str) -> None:
    """Every sentence has its words: nobody is answered half in their own language and half in English."""
    assert gaps(read(language)) == []


def test_only_whole_catalogues_are_offered() -> None:
    """English needs none; every other language that is spoken has one."""
    assert OFFERED - {"en"} <= paths().keys()


@pytest.mark.parametrize("room", ROOMS)
def test_nothing_is_said_past_the_catalogue(room: str) -> None:
    """Each sentence to people goes through `say`."""
    files = [path for path in sorted((TOP / "bot" / room).glob("*.py")) if path.name not in ENGLISH_ONLY]
    assert {path.name: found for path in files if (found := list(unsaid(path.read_text("utf-8"))))} == {}


def test_what_goes_past_it_is_seen() -> None:
    """The eye itself: joined words and plain sentences are seen; units, keys, docstrings and what is said are not."""
    source = '"""Not this."""\nf(f"{a} days")\ng("Not yet.")\nsay("All {x} well.", x=f"{y} kWh")\n'
    source += 'h({"No key": 1}, f"{z} kg")'
    assert sorted(unsaid(source)) == ["Not yet.", "f'{a} days'"]


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_translation_leaves_the_same_open(language: str) -> None:
    """A field that is lost is a figure that is lost."""
    assert {i: s for i, s in pairs(language) if fields(i) != fields(s)} == {}


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_translation_says_the_same_figures(language: str) -> None:
    """No limit, no hour and no example has another figure in another language."""
    assert {i: s for i, s in pairs(language) if figures(i) != figures(s)} == {}


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_translation_is_as_calm(language: str) -> None:
    """No exclamation marks, and the same lines: what leads a message in English leads it everywhere."""
    assert [s for _, s in pairs(language) if "!" in s] == []
    assert {i: s for i, s in pairs(language) if i.count("\n") != s.count("\n")} == {}
    assert {i: s for i, s in pairs(language) if (i[:1] == " ", i[-1:] == " ") != (s[:1] == " ", s[-1:] == " ")} == {}


def test_sentences_are_gathered_from_the_source() -> None:
    """The gatherer itself: each way to say something, and nothing else."""
    source = 'say("One {a}.", a=f(1))\nlanguage.say("Two")\nother.say("no")\nsay_n("day", "days", 3)\n'
    source += 'x = Words({"k": "Three", "none": ""})\nlater("Four")\nprint("no")\n'
    assert set(of(source)) == {"One {a}.", "Two", ("day", "days"), "Three", "Four"}
