"""The record of a batch: what the events say and the ledger finds, put together and nothing else."""

from dataclasses import replace
from datetime import timedelta

import pytest

from core.batch.assess import assess
from core.batch.batch import fold
from core.batch.batch_record import batch_record, dose_sum
from core.batch.events import Corrected, Done, Handed, Probe, Read
from core.batch.material import dose_of
from core.errors import Gone
from core.plan.recipe import product
from core.safety.findings import Outcome
from tests.kept_week import FIRE, HOSTILE, NAMES, OWNER, ended, log, recorded, told, week


def test_everything_that_was_said_is_in_it() -> None:
    """One entry for each thing that happened, in the order of its time, by the number of who said it."""
    entries = week().entries
    assert len(entries) == len(told())
    assert [e.at for e in entries] == sorted(e.at for e in entries)
    assert [m.name for m in week().members] == [NAMES["m"], NAMES["j"], HOSTILE]
    assert {e.by for e in entries if isinstance(e.said, Read) and e.said.probe is Probe.FRIDGE} == {2}
    assert week().owner == week().members[0]


def test_a_correction_shows_what_stands_what_was_said_and_by_whom() -> None:
    """53 °C was put right to 55 by Yulia; the last flip was taken back by Marta; both stay in the log."""
    entries = week().entries
    slip = next(e for e in entries if e.said == Read(Probe.CORE, 53.0))
    flip = next(e for e in entries if e.said == Done("flip/6"))
    assert (slip.what, slip.amended, slip.amended_by) == (Read(Probe.CORE, 55.0), FIRE + timedelta(minutes=170), 2)
    assert (flip.what, flip.amended_by) == (None, 1)
    assert sum(e.amended is not None for e in entries) == 2


def test_a_correction_that_was_taken_back_leaves_no_mark() -> None:
    """Taken back, it is as if nobody had corrected: 53 °C stands, and no note says otherwise."""
    number = next(e.number for e in log() if isinstance(e.what, Corrected))
    entries = recorded((FIRE + timedelta(minutes=171), "j", Corrected(number))).entries
    slip = next(e for e in entries if e.said == Read(Probe.CORE, 53.0))
    assert (slip.what, slip.amended, slip.amended_by) == (slip.said, None, None)


def test_it_agrees_with_the_ledger() -> None:
    """The batch in the record is the fold of the same log, judged at the same time: no figure is kept apart."""
    r = week()
    plain = assess(fold("b1", log()), OWNER, r.as_of)
    assert r.a == plain
    assert r.a.ledger.verdict.kind is Outcome.SAFE
    assert r.dose is not None
    assert r.a.dose is not None
    assert r.dose.nitrite_kg / r.dose.base_kg * 1e6 == pytest.approx(r.a.dose.nitrite_ingoing, rel=1e-12)


@pytest.mark.parametrize("method", ["brine", "dry", "inject"])
def test_the_sum_gives_the_ingoing_figure_of_each_method(method: str) -> None:
    """Nitrite over its base is what the formula of the method says (FSIS Handbook 1995, chapter 3)."""
    made = product("pastrami")
    setup = made.setup({"cut": "brisket_flat", "mass": 3.2, "cure_nitrite_fraction": 0.0625, "method": method})
    dose = dose_of(setup, "US")
    total = dose_sum(dose)
    assert total.nitrite_kg / total.base_kg * 1e6 == pytest.approx(dose.nitrite_ingoing, rel=1e-12)
    assert total.meat_kg == 3.2
    covered = dose_sum(replace(dose, covered=True))  # the rest of the pickle stands about an injected piece
    assert covered.nitrite_kg / covered.base_kg * 1e6 == pytest.approx(replace(dose, covered=True).ingoing().nitrite)
    if total.pumped is not None:
        assert total.nitrite_kg * total.pumped / total.pickle_kg * 1e6 == pytest.approx(dose.nitrite_ingoing, rel=1e-12)


def test_the_verdicts_are_those_of_their_time() -> None:
    """Raw when it left the cure, open in the chill, safe on the board: each by what was known up to then."""
    found = {v.step: v.verdict.kind for v in week().verdicts}
    assert found == {"out": Outcome.NOT_YET, "off": Outcome.SAFE, "chill": Outcome.SAFE, "slice": Outcome.SAFE}
    assert [v.at for v in week().verdicts] == sorted(v.at for v in week().verdicts)


def test_a_batch_that_is_over_is_judged_as_of_its_end() -> None:
    """Asked for in a month it is still the meal that was eaten in time; one that is not over has run out by then."""
    eaten = recorded(ended(1.2), days_after=30)
    kept = recorded(days_after=30)
    assert (eaten.as_of, eaten.made_at) == (FIRE + timedelta(days=1.2), FIRE + timedelta(days=30))
    assert eaten.a.ledger.verdict.kind is Outcome.SAFE
    assert kept.a.ledger.verdict.kind is Outcome.THROW_AWAY


def test_who_has_no_name_has_a_number() -> None:
    """Of somebody who was forgotten the log keeps the deeds and a number, and no id of the channel."""
    r = batch_record("b1", log(), (replace(OWNER, name=""), {"j": NAMES["j"]}), FIRE + timedelta(days=2))
    assert [(m.number, m.name) for m in r.members] == [(1, ""), (2, NAMES["j"]), (3, "")]


def test_without_a_beginning_there_is_no_record() -> None:
    """A log that begins nothing is refused, not guessed at."""
    with pytest.raises(Gone):
        batch_record("b1", log()[1:], (OWNER, NAMES), FIRE)


def test_who_has_something_in_hand_is_named_and_not_numbered() -> None:
    """By the name that is kept of them, none where they were forgotten; no id of a channel and no chat is in it."""
    since = FIRE + timedelta(hours=1)
    known, gone, typed = (
        Handed("fire", since, "j", "Julia", "chat-j"),
        Handed("flips", since, "gone", "Ada", "chat-a"),
        Handed("all", since, "", "grandma", "here"),
    )
    r = recorded(*((since, "m", what) for what in (known, gone, typed)))
    handed = [e.what for e in r.entries if isinstance(e.what, Handed)]
    assert [(one.name, one.person, one.chat) for one in handed] == [
        (NAMES["j"], "", ""),
        ("", "", ""),
        ("grandma", "", ""),
    ]
