"""A long text is cut where a reader would pause, and nothing of it is lost."""

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.channels.telegram.splitting import CAPTION_LIMIT, TEXT_LIMIT, length, split
from tests.telegram.loopback import CAPTION_UNITS, TEXT_UNITS, units

WORDS = st.text(alphabet=st.sampled_from("ab. !?\n…é🔥\u200d,;:"), max_size=400)


def test_the_limits_are_those_of_the_api() -> None:
    """4096 and 1024, as the published description of sendMessage and sendPhoto says."""
    assert (TEXT_LIMIT, CAPTION_LIMIT) == (4096, 1024) == (TEXT_UNITS, CAPTION_UNITS)


@settings(max_examples=300, deadline=None)
@given(WORDS, st.integers(8, 60))
def test_nothing_is_lost_and_no_part_is_too_long(text: str, limit: int) -> None:
    """The parts hold every character but blanks, in order; none is blank or over the limit."""
    parts = split(text, limit)

    assert re.sub(r"\s", "", "".join(parts)) == re.sub(r"\s", "", text)
    assert all(0 < units(part) <= limit for part in parts)
    assert all(part.strip() for part in parts)


@given(st.text(max_size=200))
def test_length_is_counted_as_the_api_counts(text: str) -> None:
    """UTF-16 code units: a flame counts two."""
    assert length(text) == len(text.encode("utf-16-le", "surrogatepass")) // 2


def test_the_cut_is_after_a_sentence() -> None:
    """Not in the middle of one, where a sentence ends within reach."""
    assert split("Take it out. Rinse it well. Then dry it for an hour.", 30) == [
        "Take it out. Rinse it well.",
        "Then dry it for an hour.",
    ]


def test_a_paragraph_goes_before_a_sentence() -> None:
    """The larger pause is preferred."""
    assert split("One. Two.\n\nThree is longer. Four.", 24) == ["One. Two.", "Three is longer. Four."]


def test_a_number_is_not_cut_at_its_point() -> None:
    """«6.25 %» stays whole: a point without a blank after it ends no sentence."""
    assert split("It is 6.25 % strong and so on", 12) == ["It is 6.25 %", "strong and", "so on"]


def test_one_endless_word_is_cut_hard() -> None:
    """Five thousand letters without a pause still arrive."""
    assert [len(part) for part in split("x" * 5000)] == [4096, 904]
