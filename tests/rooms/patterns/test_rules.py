"""Patterns in a row: only those are tried that may match, and what they find is what each would find alone."""

import re

import pytest

from core import patterns


def test_hits_are_what_each_pattern_finds() -> None:
    """In their order, each where it first matches, and none that does not."""
    rules = patterns.Rules([(patterns.compile(words), words) for words in (r"\bpit\b", r"\d+", "fridge", r"\bcore\b")])
    text = "core 70 and 71, pit hot"
    assert [(hit[0], what) for hit, what in rules.hits(text)] == [
        ("pit", r"\bpit\b"),
        ("70", r"\d+"),
        ("core", r"\bcore\b"),
    ]


@pytest.mark.parametrize(
    "pattern",
    [
        r"\?|\bis (?:it|that) (?:ok|safe)\b|^(?:why|how)\b",
        r"a\|b|[|)(]x|(?:c|d(?:e|f))g",
        r"[]|]y|[^]|]z|\(q|r\)",
        "one",
        "",
    ],
)
def test_a_pattern_by_its_ways_matches_where_it_does(pattern: str) -> None:
    """Bars in groups, in classes and behind a backslash part nothing."""
    whole, ways = re.compile(pattern), patterns.either(pattern)
    for text in ("is it safe", "how long", "ok?", "a|b", "|x", "(x", "cg", "deg", "dfg", "]y", "|y", "kz", "(q", ""):
        assert any(ways.hits(text)) is bool(whole.search(text)), text
