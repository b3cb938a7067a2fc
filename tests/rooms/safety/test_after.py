"""core.safety.after: off the heat, hot for two hours, then by the cooling rules; on the limits and beside them."""

import pytest

from core.safety.after import after_findings, hot_until
from core.safety.findings import Outcome, Rule
from tests.records import at, brisket, history

COOKED = ((0.0, 39.0), (1.0, 60.0), (3.0, 120.0), (4.0, 142.0), (6.0, 158.0), (10.0, 195.0))


@pytest.mark.parametrize(("last", "until"), [(140.0, 12.5), (139.9, 12.0), (141.0, 12.5)])
def test_two_hours_from_the_last_reading_at_140(last, until):
    """A reading of 140 °F itself still counts as hot."""
    record = brisket((*COOKED, (10.5, last)), now=at(10.6), chill_started_at=None)
    assert hot_until(record) == at(until)


def test_nothing_is_found_before_it_is_off():
    """The time of coming off lies ahead, or is not known: there is no chill to judge yet."""
    for off in (at(10.2), None):
        assert after_findings(brisket(COOKED, now=at(10.0), off_at=off, chill_started_at=None)) == ()
    assert after_findings(brisket(COOKED, now=at(10.2), off_at=at(10.2), chill_started_at=None)) != ()


@pytest.mark.parametrize(
    ("last", "now", "means"),
    [
        (195.0, 11.0, Outcome.SAFE),  # an hour ago it was hot: it may be eaten, or chilled
        (135.0, 10.5, Outcome.NOT_YET),  # never hot: the cooling is all there is to wait for
    ],
)
def test_an_open_cooling_is_no_reason_to_wait_while_it_is_hot(last, now, means):
    """Only what is open is set aside, and only while it is hot enough to be served."""
    core = ((0.0, 39.0), (2.0, 100.0), (10.0, last))
    record = brisket(core, now=at(now), off_at=at(10.05), chill_started_at=None)
    (cooling,) = [f for f in after_findings(record) if f.rule is Rule.COOLING]
    assert (cooling.means, cooling.advice) == (means, "")


def test_hot_at_the_last_look_is_140_itself():
    """The two hours speak from a last reading of 140 °F; below it the cooling rules do."""
    for last, spoken in ((140.0, True), (139.9, False)):
        record = brisket((*COOKED, (10.5, last)), now=at(10.6), chill_started_at=None)
        assert any(f.rule is Rule.TWO_HOURS for f in after_findings(record)) is spoken


def test_a_fridge_of_later_says_nothing_yet():
    """Kept cold from an hour that lies ahead: no fridge reading is judged for it."""
    warm = history((12.5, 60.0))
    ahead = brisket(now=at(17.0), fridge=warm, storage_started_at=at(20.0))
    assert not [f for f in after_findings(ahead) if f.rule is Rule.FRIDGE]
