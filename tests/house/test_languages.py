"""The catalogues: each language says what the English says, with the same fields and the same figures."""

import re
from collections import Counter
from string import Formatter

import pytest

from tests.house.catalogue import of, paths, read

LANGUAGES = sorted(paths())


def pairs(language: str) -> list[tuple[str, str]]:
    """Each English sentence with its translation; the form for several where there are two."""
    found = [(m.id, m.string) for m in read(language) if m.id]
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
