"""The meat of the batch by whatever name it goes, and what is said beside a reading (common practice, no source)."""

import pytest

from bot.intents.intents import StepDone
from bot.intents.read import read
from tests.rooms.intents.shorthand import short
from tests.talk_lines import POUNDS, context

LAST = {"cooking": 60.0, "resting": 80.0, "chilling": 40.0}


@pytest.mark.parametrize(
    ("phase", "line", "meant"),
    [
        ("drying", "belly is on, 215 on the dome", "done meat_on & read pit 215f"),
        ("drying", "turkey on at 7:40, pit 250", "done meat_on @07:40 & read pit 250f"),
        ("drying", "its on, lid says 230", "done meat_on & read pit 230f"),
        ("drying", "fish is in the smoker", "done meat_on"),
        ("drying", "put the pork on 10 minutes ago", "done meat_on @08:20"),
        ("drying", "drying on rack", "done dry"),
        ("cooking", "took the ham out, internal 152", "read core 152f & done off"),
        ("cooking", "its out", "ask"),
        ("cooking", "belly wont go over 140", "question"),
        ("chilling", "on a rack in the fridge", "done chill"),
        ("stored", "all pink, salt bit much", "debrief"),
    ],
)
def test_what_is_said_of_the_meat(phase: str, line: str, meant: str) -> None:
    """A deed with a reading beside it is both; what did not happen is no deed."""
    assert short(read(line, context(phase, POUNDS, last_core_c=LAST.get(phase)))) == meant


def test_the_batch_that_is_named_keeps_its_name() -> None:
    """«ham is on», where two lie in the cure: the step of that one."""
    (done,) = read("ham is on", context("drying", POUNDS, batches=(("h", "ham"), ("b", "bacon")), batch="b"))
    assert (short([done]), done.batch) == ("done meat_on", "h")  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("text", "phase", "step"),
    [
        ("trout are in", "waiting", "into_cure"),
        ("the fish are in", "waiting", "into_cure"),
        ("they are in", "waiting", "into_cure"),
        ("the fish are drying", "drying", "dry"),
        ("its drying in the fridge", "drying", "dry"),
        ("the fillets are on", "drying", "meat_on"),
        ("the fish came off", "cooking", "off"),
        ("they are off", "cooking", "off"),
    ],
)
def test_several_pieces_are_the_one_batch(text: str, phase: str, step: str) -> None:
    """A tub of trout is one batch, whatever the grammar says."""
    (found,) = read(text, context(phase))
    assert isinstance(found, StepDone)
    assert found.step == step
