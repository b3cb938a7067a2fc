"""core.safety.raw: the fridge, brine, dose and days of raw meat; what is judged, and from which hour on."""

import pytest

from core.safety.findings import Outcome, Rule, Status
from core.safety.raw import raw_findings
from core.safety.record import Incident
from tests.records import at, brisket, history

IN_CURE = {
    "core": (),
    "put_in_cure_at": at(0.0),
    "out_at": None,
    "meat_on_at": None,
    "off_at": None,
    "chill_started_at": None,
    "fridge": (),
}


def _found(rule, **changes):
    return [f for f in raw_findings(brisket(**{**IN_CURE, **changes})) if f.rule is rule]


def test_the_fridge_is_watched_from_the_hour_on():
    """Put in this very minute: the watch is open. Put in tomorrow: there is nothing to watch."""
    (begun,) = _found(Rule.FRIDGE, now=at(0.0))
    assert (begun.status, begun.deadline) == (Status.OPEN, at(60.0))
    assert not _found(Rule.FRIDGE, now=at(-0.1))
    assert not _found(Rule.FRIDGE, now=at(1.0), put_in_cure_at=None)


def test_the_cooks_word_bridges_a_gap():
    """Five days between two cold readings: shown cold only where the cook gives their word for the fridge."""
    gap = {"fridge": history((0.0, 38.0), (120.0, 38.0)), "now": at(120.0)}
    for vouched, means in (
        ((), Outcome.CANNOT_SAY),
        (("fridge_cold",), Outcome.SAFE),
        (("smoke",), Outcome.CANNOT_SAY),
    ):
        (found,) = _found(Rule.FRIDGE, **gap, vouched=frozenset(vouched))
        assert found.means is means


@pytest.mark.parametrize(("what", "rule"), [("warm_fridge", Rule.FRIDGE), ("warm_brine", Rule.BRINE)])
def test_how_long_it_was_warm_by_the_cooks_word(what, rule):
    """«Warm for half an hour at most» counts as cold up to then, in the fridge or in the brine that it is said of."""
    warm = history((0.0, 38.0), (10.0, 44.0))
    told = Incident(what, at(10.0), {"hours": 0.5})
    (found,) = _found(rule, now=at(12.0), fridge=warm, brine=warm, incidents=(told,))
    assert found.value == 2.5
    other = Rule.BRINE if rule is Rule.FRIDGE else Rule.FRIDGE
    (unsaid,) = _found(other, now=at(12.0), fridge=warm, brine=warm, incidents=(told,))
    assert unsaid.value == 12.0


@pytest.mark.parametrize(
    ("step", "judged"), [("put_in_cure_at", 1), ("out_at", 1), ("meat_on_at", 1), ("off_at", 1), (None, 0)]
)
def test_a_dose_is_judged_once_meat_has_met_it(step, judged):
    """Any step that says so is enough: 21 CFR 172.170 is about meat. A mix alone is judged as a mix."""
    times = {name: at(0.0) if name == step else None for name in ("put_in_cure_at", "out_at", "meat_on_at", "off_at")}
    assert len(_found(Rule.NITRITE_CEILING, now=at(1.0), ingoing_mg_kg=250.0, **times)) == judged


def test_meat_that_is_not_in_keeps_no_clock():
    """Without nitrite, and never put in: no days are counted."""
    assert not _found(Rule.RAW_KEEPING, now=at(200.0), ingoing_mg_kg=0.0, put_in_cure_at=None)
