"""Finished meat in the freezer: the clock of the fridge stops, and no day comes back."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.batch.assess import Assessment, assess
from core.batch.batch import Batch, Reading
from core.batch.events import Incident, Probe
from core.batch.frozen import frozen_at, frozen_days
from core.person import Person
from core.plan.recipe import product
from core.plan.steps import State
from core.safety.after import after_findings
from core.safety.findings import Outcome, Rule

OFF = datetime(2027, 3, 6, 15, tzinfo=UTC)
IDA = Person("ida", "Ida", zone="Europe/Vienna")
DAY, MINUTE = timedelta(days=1), timedelta(minutes=1)


def side(*told: tuple[float, str, bool], eaters: bool | None = None) -> Batch:
    """Hot-smoked salmon that came off on a Saturday; what was told, days after that."""
    setup = product("salmon").setup({"mass": 1.2, "thickness": 0.03})
    setup = replace(setup, at_risk_eaters=eaters)
    done = {"into_cure": OFF - 2 * DAY, "out": OFF - DAY, "meat_on": OFF - 2 * DAY / 24, "off": OFF, "slice": OFF + DAY}
    core = tuple(Reading(OFF - minutes * MINUTE, Probe.CORE, 72.0, n) for n, minutes in enumerate((35, 1)))
    incidents = tuple(
        (OFF + days * DAY, Incident(what, {"all": whole} if what == "frozen" else {})) for days, what, whole in told
    )
    return Batch("b", "salmon", setup, OFF - 3 * DAY, done=done, readings=core, incidents=incidents)


def keeping(batch: Batch, days: float) -> tuple[Outcome, Assessment]:
    found = assess(batch, IDA, OFF + days * DAY)
    (kept,) = [f for f in after_findings(found.ledger.record) if f.rule is Rule.USE_BY]
    return kept.means, found


def test_while_it_is_frozen_the_date_waits() -> None:
    """Fourteen days are for the fridge (storage chart): a year in the freezer after four of them is no year."""
    assert keeping(side(), 15.0)[0] is Outcome.EAT_NOW
    means, found = keeping(side((4.0, "frozen", True)), 365.0)
    assert means is Outcome.SAFE
    assert found.plan is not None
    use_by = found.plan.step("use_by")
    assert use_by is not None
    assert use_by.state is State.SKIPPED


def test_after_the_thaw_the_rest_of_its_days_is_left_and_the_thaw_counts() -> None:
    """Four days before, ten after less the day of the thaw: no day more."""
    batch = side((4.0, "frozen", True), (64.0, "thawed", False))
    assert frozen_at(batch) is None
    assert frozen_days(batch) == pytest.approx(59.0)
    assert keeping(batch, 72.9)[0] is Outcome.SAFE
    assert keeping(batch, 73.1)[0] is Outcome.EAT_NOW


def test_a_part_leaves_the_date_of_what_is_in_the_fridge() -> None:
    assert keeping(side((1.0, "frozen", False)), 15.0)[0] is Outcome.EAT_NOW


@pytest.mark.parametrize(("eaters", "means"), [(None, Outcome.EAT_NOW), (True, Outcome.THROW_AWAY)])
def test_what_was_past_its_date_is_not_mended(eaters: bool | None, means: Outcome) -> None:
    """Frozen on the fifteenth day, looked at after a month: the day of the freezing decides."""
    assert keeping(side((14.5, "frozen", True), eaters=eaters), 45.0)[0] is means
    assert keeping(side((22.0, "frozen", True)), 45.0)[0] is Outcome.THROW_AWAY


def test_what_was_told_before_the_fire_is_of_raw_fish() -> None:
    batch = side((-1.0, "frozen", True))
    assert (frozen_at(batch), frozen_days(batch)) == (None, 0.0)


def test_a_short_spell_gives_no_day_back() -> None:
    """A night in the freezer is no longer than its thaw."""
    assert frozen_days(side((2.0, "frozen", True), (2.6, "thawed", False))) == 0.0
