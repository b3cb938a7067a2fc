"""A weight or a thickness that is told anew without its unit, by what the record has of the piece."""

import pytest

from bot.intents.intents import Change, Unclear
from bot.intents.read import read
from tests.talk_lines import POUNDS, context


@pytest.mark.parametrize("line", ["it weighed 7.3 not 7", "weighed 7.3 not 7.0"])
def test_a_weight_put_right_is_no_dose(line: str) -> None:
    """What is denied is what the piece weighs, so the other number is its weight too: grams of cure it was before."""
    (found,) = read(line, context("curing", POUNDS, mass=3.175))
    assert isinstance(found, Change)
    assert found.changes == {"mass": pytest.approx(3.311, abs=0.001)}


def test_a_number_that_is_no_weight_is_asked_about() -> None:
    """Grams of what, nobody said."""
    (found,) = read("i weighed 11 not 11.8", context("curing", POUNDS, mass=3.175))
    assert isinstance(found, Unclear)


@pytest.mark.parametrize("line", ["measured it again, 2 1/4", "turns out its 2 1/4 thick"])
def test_measured_anew(line: str) -> None:
    """In the person's own unit."""
    (found,) = read(line, context("curing", POUNDS))
    assert found == Change({"thickness": pytest.approx(0.05715)})


@pytest.mark.parametrize("line", ["switch it to foil", "change wrap to foil"])
def test_another_wrap(line: str) -> None:
    """However it is switched to."""
    assert read(line, context("curing", POUNDS)) == [Change({"wrap": "foil"})]
