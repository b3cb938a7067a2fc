"""bot.wording.language: the language of the turn, its decimals and days, and English where a catalogue is silent."""

from collections.abc import Iterator
from datetime import date

import pytest

from bot.wording import language, numbers
from bot.wording.language import Words, later, say, say_n

KNOWN = "Flip the bag"


@pytest.fixture
def german(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A turn with somebody who is spoken to in German."""
    monkeypatch.setattr(language, "OFFERED", frozenset({"en", "de"}))
    with language.speaking("de-AT"):
        yield


def test_english_is_said_as_it_is_written() -> None:
    """Without a turn, and in a language that nobody offers."""
    assert say("Weigh {grams} of cure.", grams="12.0 g") == "Weigh 12.0 g of cure."
    with language.speaking("xx"):
        assert (say(KNOWN), language.spoken()) == (KNOWN, "en")


@pytest.mark.usefixtures("german")
def test_a_sentence_without_a_translation_is_said_in_english() -> None:
    """Half a catalogue is no half sentence."""
    assert say("Nobody translates {this}.", this="that") == "Nobody translates that."


@pytest.mark.usefixtures("german")
def test_figures_carry_the_sign_of_the_language_and_the_same_digits() -> None:
    """A comma for the point; what is rounded is rounded alike."""
    assert (numbers.grams(0.01187), numbers.percent(0.0625)) == ("11,9 g", "6,25 %")
    assert (language.decimal(0.25, 1), f"{0.25:.1f}") == ("0,2", "0.2")


@pytest.mark.usefixtures("german")
def test_the_sign_is_the_turn_s_and_no_longer() -> None:
    """Whoever is spoken to next is spoken to in their own language."""
    with language.speaking("en"):
        assert numbers.grams(0.01187) == "11.9 g"
    assert numbers.grams(0.01187) == "11,9 g"


def test_days_are_those_of_the_unicode_cldr() -> None:
    """English as it always was."""
    assert (language.day(date(2027, 3, 13)), language.weekday(date(2027, 3, 13))) == ("Sat 13 Mar", "Sat")


@pytest.mark.parametrize(("count", "said"), [(1, "day"), (2, "days"), (0.5, "days"), (1.5, "days"), (0, "days")])
def test_half_a_day_takes_the_form_of_several(count: float, said: str) -> None:
    """One is one; everything else is more."""
    assert say_n("day", "days", count) == said


def test_a_table_of_words_is_a_mapping() -> None:
    """It is looked up, joined and counted like any other."""
    names = Words({"out": later("Out")}) | Words({"rest": "Rest"})
    assert (names["out"], names.get("nothing", "?"), len(names)) == ("Out", "?", 2)
    assert set(names) == {"out", "rest"}
