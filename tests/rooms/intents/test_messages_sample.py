"""The 60 lines of the sample, each against what its writer meant (tests/published/intents/messages_sample.csv).

The meaning is stated here as the intent that does what the `intended_meaning` column asks for; the goal is 58 of
60, and that every line which the sample calls ambiguous is asked about.
"""

import json
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from bot.intents.context import Context
from bot.intents.intents import (
    Change,
    Correct,
    HandOver,
    Intent,
    MoveDeadline,
    Pause,
    Reading,
    Settings,
    Snooze,
    Start,
    StepDone,
    StepMissed,
    StepSkipped,
    Temperature,
    Unclear,
    Undo,
)
from bot.intents.read import read
from core.batch.events import Probe
from core.person import Units
from core.units import KILOGRAMS_PER_POUND as LB
from core.units import celsius_from_fahrenheit as from_f
from tests.talk_lines import MEAL, NOW, POUNDS, context, rows, wall

START = context("none")
CURE = context("curing", due_step="flip/3")
COOK = context("cooking", last_core_c=from_f(150), last_pit_c=121.0)
COOLER = context("cooking", last_core_c=from_f(120), last_pit_c=121.0)
CHILL = context("chilling", last_core_c=from_f(145))
TWO = context("cooking", batches=(("b1", "flat"), ("b2", "bacon")), mass=7.5 * LB, last_core_c=from_f(150))


def core(value: float, unit: str = "f", **more: Any) -> Temperature:
    return Temperature(value, unit, Probe.CORE, **more)


def at(probe: Probe, value: float, unit: str = "f") -> Reading:
    return Reading((Temperature(value, unit, probe),))


MEANT: dict[str, tuple[Context, list[Intent]]] = {
    "M001": (START, [Start({"mass": 7.5 * LB, "product": "pastrami", "cut": "brisket_flat", "deadline": MEAL})]),
    "M003": (
        START,
        [Start({"mass": 5 * LB, "product": "corned_beef", "deadline": wall(3, 17, 13)}, assumed=("deadline_hour",))],
    ),
    "M004": (START, [Start({"mass": 2.2, "product": "bacon", "skin_on": True, "method": "dry"})]),
    "M005": (START, [Start({"mass": 12.7 * LB, "cut": "brisket_flat"}, pieces=(6.8 * LB, 5.9 * LB))]),
    "M006": (
        START,
        [
            Start(
                {"mass": 9.0, "product": "ham", "cut": "ham_bone_in", "deadline": wall(12, 25, 13)},
                assumed=("deadline_hour",),
            )
        ],
    ),
    "M008": (
        START,
        [Start({"mass": 1.2, "product": "salmon", "deadline": wall(3, 5, 20)}, assumed=("deadline_hour",))],
    ),
    "M011": (
        START,
        [
            Start(
                {"mass": 8 * LB, "cut": "brisket_flat", "cure_nitrite_fraction": 0.0625, "thickness": 0.0508},
                assumed=("cut",),
            )
        ],
    ),
    "M016": (START, [Start({"mass": 5 * LB, "cut": "brisket_point"})]),
    "M019": (context("waiting", asked="thickness"), [Change({"thickness": 0.045})]),
    "M021": (START, [Settings({"zone": "America/Chicago"})]),
    "M022": (START, [Settings({"units": Units("kg", POUNDS.length, "c")})]),
    "M023": (COOK, [Reading((core(158),))]),
    "M030": (COOK, [Reading((core(148),))]),
    "M031": (COOK, [Reading((core(164),))]),
    "M032": (CURE, [at(Probe.FRIDGE, 38)]),
    "M033": (CURE, [at(Probe.FRIDGE, 4, "c")]),
    "M034": (CURE, [at(Probe.FRIDGE, 46)]),
    "M035": (COOK, [Reading((core(203),), tender=True)]),
    "M037": (CHILL, [Reading((core(140, at=wall(2, 28, 19)),))]),
    "M038": (CHILL, [Reading((core(82, at=wall(2, 28, 21)), core(44, at=wall(3, 1, 7))))]),
    "M040": (COOLER, [Reading((core(131), Temperature(250, "f", Probe.PIT)))]),
    "M041": (COOLER, [Unclear("number", "250 250 145", (Reading((core(145), Temperature(250, "f", Probe.PIT))),))]),
    "M042": (COOK, [Reading((core(93, "c"),))]),
    "M045": (context("waiting"), [at(Probe.BRINE, 39)]),
    "M046": (context("waiting"), [at(Probe.BRINE, 55)]),
    "M048": (
        COOK,
        [
            Reading(
                (
                    core(153, at=NOW - timedelta(hours=1)),
                    core(154, at=NOW - timedelta(minutes=30)),
                    core(153, at=NOW),
                )
            )
        ],
    ),
    "M049": (CURE, [StepDone("flip")]),
    "M055": (CURE, [StepDone("flip")]),
    "M057": (CURE, [StepDone("rinse", detail="tastes fine")]),
    "M058": (context("drying"), [StepDone("light")]),
    "M059": (COOK, [StepDone("wrap", detail="foil"), Reading((core(162),))]),
    "M061": (context("resting", last_core_c=60.0), [StepDone("chill", detail="fridge")]),
    "M064": (CURE, [StepSkipped()]),
    "M066": (CURE, [Snooze(by=timedelta(minutes=20))]),
    "M068": (CURE, [StepDone("flip", also_previous=True)]),
    "M070": (context("chilling"), [StepDone("slice"), StepDone("serve")]),
    "M072": (COOK, [Pause(wall(3, 1, 18))]),
    "M073": (CURE, [Pause()]),
    "M075": (context(deadline=wall(3, 7, 13)), [MoveDeadline(wall(3, 6, 13), assumed=("deadline_hour",))]),
    "M076": (CURE, [MoveDeadline(wall(3, 6, 12, 30))]),
    "M077": (CURE, [MoveDeadline(by=-timedelta(hours=1))]),
    "M083": (COOK, [Change({"wrap": "paper"})]),
    "M084": (CURE, [Change({"method": "inject"})]),
    "M087": (CURE, [HandOver("wife", wall(3, 2, 0))]),  # with its first flip
    "M092": (
        START,
        [Unclear("number", "140", (Reading((core(140),)), Reading((Temperature(140, "c", Probe.PIT),))))],
    ),
    "M094": (COOK, [Unclear("number", "its hot")]),
    "M101": (START, [Unclear("spoons", "1 tsp pink")]),
    "M102": (START, [Unclear("word", "wet or dry")]),
    "M105": (CURE, [Unclear("word", "sat", (MoveDeadline(wall(3, 6, 13), assumed=("deadline_hour",)),))]),
    "M107": (COOK, [Correct(185.0)]),
    "M108": (COOK, [Correct(days_back=1)]),
    "M110": (COOK, [Correct(probe=Probe.PIT)]),
    "M111": (COOK, [Correct(155.0, was=255.0)]),
    "M112": (CURE, [Correct(at=wall(3, 1, 7), step="flip")]),
    "M113": (COOK, [Undo()]),
    "M114": (COOK, [Correct(unit="c")]),
    "M116": (CURE, [Change({"put_in_cure": 0.008})]),
    "M117": (CURE, [StepMissed(at=wall(2, 28, 12), whole_day=True)]),
    "M118": (TWO, [Correct(to_batch="b2")]),
    "M120": (TWO, [Change({"mass": pytest.approx(6.9 * LB)})]),
}
AMBIGUOUS = [row["id"] for row in rows("messages_sample.csv") if '"ambiguous"' in row["intended_meaning"]]


def rounded(intents: list[Intent]) -> list[Intent]:
    """The intents with the masses of a start to the milligram: the sample prints whole grams."""
    return [_rounded(intent) if isinstance(intent, Start) else intent for intent in intents]


def _rounded(start: Start) -> Start:
    said = {name: round(value, 6) if name == "mass" else value for name, value in start.said.items()}
    return replace(start, said=said, pieces=tuple(round(piece, 6) for piece in start.pieces))


@pytest.mark.parametrize("row", rows("messages_sample.csv"), ids=lambda row: row["id"])
def test_a_line_of_the_sample_means_what_its_writer_meant(row: dict[str, str]) -> None:
    """Every line of the sample is read as the intent that it was written for."""
    where, meant = MEANT[row["id"]]
    assert rounded(read(row["message"], where)) == rounded(meant)


def test_the_table_covers_the_sample() -> None:
    """All 60 lines are in the table, none is left out quietly."""
    assert [row["id"] for row in rows("messages_sample.csv")] == list(MEANT)
    assert len(MEANT) == 60


@pytest.mark.parametrize("key", AMBIGUOUS)
def test_what_is_ambiguous_is_asked_about(key: str) -> None:
    """A line that the sample calls ambiguous is never acted on."""
    message = next(row["message"] for row in rows("messages_sample.csv") if row["id"] == key)
    assert [type(intent) for intent in read(message, MEANT[key][0])] == [Unclear]


@pytest.mark.parametrize("row", rows("messages_sample.csv"), ids=lambda row: row["id"])
def test_the_weight_of_a_start_is_that_of_the_sample(row: dict[str, str]) -> None:
    """Masses agree with the sample's grams, which are rounded to the gram."""
    meant = json.loads(row["intended_meaning"])
    if meant["intent"] != "start_batch":
        return
    (start,) = read(row["message"], MEANT[row["id"]][0])
    assert isinstance(start, Start)
    grams = meant.get("weight_g") or sum(piece["g"] for piece in meant["pieces"])
    assert start.said["mass"] * 1000 == pytest.approx(grams, abs=1.0)
