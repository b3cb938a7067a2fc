"""What a pattern needs is read from it, and where a line lacks that, the pattern does not match: for every pattern."""

import gc
import re
from functools import cache
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.intents.read import read
from bot.intents.rewriting.plainer import RULES, plainer
from bot.intents.rewriting.words import TOLD
from core import patterns
from core.answers import dangers
from core.patterns import Pattern
from core.patterns.line import Index
from core.patterns.needed import needs
from tests.benchmark.test_reading import lines
from tests.house.measure import TOP, files
from tests.talk_lines import context

NEEDED = {
    r"\bgrease\b": [{" grease "}],
    r"smok\w*|fire": [{"smok", "fire"}],
    r"^(?:so |and )?when\b": [{"^when ", "^so ", " when "}],
    r"\b\d{1,3} ?kg\b": [{" kg ", " 0kg "}],
    r"\d+%$": [{" %$"}, {"0 "}],
    r"(?<=\w) n (?=\w)": [{" n "}],
    r"(?:\w+ )?(?=.*\bleak)(?!dry)": [{" leak"}],
    r"(?i)grease": [],
    r"(?:grease)?": [],
    r"[^x]|fire": [],
    r"(?P<a>fire)(?P=a)": [{"fire"}],
}
# small patterns of every kind that may stand in a large one
ATOMS = (
    "a",
    "b1",
    "0",
    " ",
    r"\?",
    r"\d",
    r"\w",
    r"\b",
    r"\W",
    ".",
    "[ab]",
    "[^a]",
    "[0-3%]",
    "^",
    "$",
    r"\s",
    "_",
    "é",
)


@cache
def every() -> list[Pattern]:
    """All patterns that lines are held against, those of the lists as well, which are loaded with the first line."""
    read("flipped", context("curing"))
    dangers.grave("flipped")
    return sorted((one for one in gc.get_objects() if isinstance(one, Pattern)), key=lambda one: one.bit)


def may_match(pattern: str, line: str) -> bool:
    index = Index()
    return not index.add(needs(pattern)) & index.look(line)


@pytest.mark.parametrize("pattern", NEEDED)
def test_what_a_pattern_needs(pattern: str) -> None:
    """Its fixed letters, as far as they must be there, with the sides at which a word must end."""
    found = [set(need) for need in needs(pattern)]
    assert all(need in found for need in NEEDED[pattern]), found
    assert bool(found) is bool(NEEDED[pattern]), found


def test_no_pattern_matches_what_it_is_not_tried_on() -> None:
    """Every pattern of the house over the lines of the unseen sets, as they are typed."""
    all_of_them, tried, spared = every(), 0, 0
    assert len(all_of_them) > 1500
    for line in lines()[::9]:
        out = patterns.pattern.INDEX.look(line)
        for one in all_of_them:
            if not one.bit & out:
                tried += 1
                continue
            spared += 1
            assert one.tried.search(line) is None, (one.pattern, line)
    assert tried < 0.15 * spared


@given(st.data())
@settings(max_examples=400)
def test_a_line_that_matches_is_tried(data: st.DataObject) -> None:
    """A line is made from a pattern, with anything around it: the words that are asked for are there."""
    one = data.draw(st.sampled_from(every()))
    line = data.draw(st.from_regex(re.compile(one.pattern, one.flags)))
    assert not one.bit & patterns.pattern.INDEX.look(line), (one.pattern, line)


WAYS = ("{}{}", "{}|{}", "(?:{}|{})", "(?:{})?{}", "(?:{}){{2}}{}", "(?:{})*{}", "(?:{})+{}", "(?={}){}", "(?!{}){}",
        "({}){}", "(?i:{}){}", "(?>{}){}", "{} {}")  # fmt: skip


@st.composite
def small_patterns(draw: st.DrawFn) -> str:
    """Patterns of a few atoms, put together in all the ways in which ours are."""
    pattern = draw(st.sampled_from(ATOMS))
    for way, atom, first in draw(st.lists(st.tuples(*map(st.sampled_from, (WAYS, ATOMS, (True, False)))), max_size=6)):
        pattern = way.format(pattern, atom) if first else way.format(atom, pattern)
    return pattern


@given(small_patterns(), st.lists(st.text("ab019 ?%,_é\n", max_size=9), min_size=1, max_size=6))
@settings(max_examples=600)
def test_no_small_pattern_is_left_out(pattern: str, those: list[str]) -> None:
    """Whatever a pattern is made of, where it is not tried it does not match, from wherever it is looked for."""
    for line in those:
        assert may_match(pattern, line) or re.search(pattern, line) is None, (pattern, line, needs(pattern))


def test_a_pattern_finds_what_re_finds() -> None:
    """Each of its ways, on a line that has its words and on one that has not."""
    one, plain = Pattern(r"\b(fire|ash) (?P<n>\d)\b"), re.compile(r"\b(fire|ash) (?P<n>\d)\b")
    for line in ("fire 3, ash 4", "the fire is out", "flipped", "", "fire 3, ash 4"):
        for way in ("search", "match", "fullmatch"):
            ours, theirs = getattr(one, way)(line), getattr(plain, way)(line)
            assert (ours and ours.groups()) == (theirs and theirs.groups())
        for way in ("sub", "subn"):
            assert getattr(one, way)("x", line) == getattr(plain, way)("x", line)
        for way in ("split", "findall"):
            assert getattr(one, way)(line) == getattr(plain, way)(line)
        assert [m.span() for m in one.finditer(line)] == [m.span() for m in plain.finditer(line)]
        for place in (3, 20, 0):  # in vain from a place on, and yet there
            assert (one.search(line, place) is None) is (plain.search(line, place) is None)


def test_rules_have_their_turn_in_their_order() -> None:
    """Each sees what those before it wrote, as if all were tried one after the other."""
    rules = patterns.Rules((Pattern(a), b) for a, b in product(("fire", "ash", "coal"), ("ash", "coal", "fire")))
    for line in ("fire", "a coal fire", "ash and coal", "flipped"):
        plain = line
        for pattern, put in rules:
            plain = pattern.tried.sub(put, plain)
        assert rules.in_turn(line, lambda text, pattern, put: pattern.sub(put, text)) == plain


def test_rules_and_dangers_are_what_they_were_in_full() -> None:
    """Writing out and the list of dangers, beside the plain way through all of their patterns."""
    untold = [(pattern, put) for pattern, put in RULES if put != TOLD]
    ours = patterns.Rules(untold)
    for line in lines()[::9]:
        plain = line
        for pattern, put in untold:
            plain = pattern.tried.sub(put, plain)
        assert ours.in_turn(line, lambda text, pattern, put: pattern.sub(put, text)) == plain
        for name in ("dangers.toml", "dangers_de.toml"):
            there = dangers._Line(plainer(line))
            slow = next((one.entry for one in dangers._graves(name) if one.fits(there)), None)
            assert dangers._listed(plainer(line), name) == slow


def test_a_pattern_that_comes_later_is_known() -> None:
    """A line that was looked at before a pattern was made is looked at again."""
    line = "a line about zzymurgy"
    assert Pattern("zzymurgy").search(line)
    assert Pattern("zzymurg").search(line)
    assert Pattern("zzymurgys").search(line) is None


def test_whoever_reads_lines_has_their_patterns_from_here() -> None:
    """No reader holds a line against a pattern of the standard `re`, which is tried whatever the line says."""
    rooms = [*files("bot/intents"), TOP / "core/answers/dangers.py"]
    plain = [path.name for path in rooms if re.search(r"^import re$", path.read_text("utf-8"), re.MULTILINE)]
    assert len(rooms) > 90
    assert plain == []


def test_what_goes_over_thousands_of_lines_once_has_plain_patterns() -> None:
    """To look at the words of a line pays for those that are held against hundreds of patterns, not against ten."""
    for name in ("figures", "likeness", "slang"):
        assert "patterns" not in (TOP / f"core/answers/{name}.py").read_text("utf-8")
