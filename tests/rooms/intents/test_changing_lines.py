"""Second thoughts, wishes, settings, questions, and the answers to what was asked."""

from dataclasses import replace as but
from datetime import time, timedelta

import pytest

from bot.intents.asked import read_answer
from bot.intents.intents import (
    Ask,
    Cancel,
    Change,
    Choose,
    Correct,
    Debrief,
    Greet,
    Help,
    Intent,
    MoveDeadline,
    Question,
    Reading,
    Settings,
    Start,
    StepDone,
    Temperature,
    Unclear,
    Undo,
)
from bot.intents.read import batch_named, read
from core.batch.events import Probe
from core.person import Units
from core.units import KILOGRAMS_PER_POUND as LB
from tests.talk_lines import KILOS, NOW, POUNDS, context, wall

NONE = context("none")
CURE = context("curing")
COOK = context("cooking", last_core_c=62.0, last_pit_c=121.0)
TWO = context("curing", batch="b1", batches=(("b1", "flat 1"), ("b2", "ham")))


@pytest.mark.parametrize(
    ("text", "correct"),
    [
        ("no, 185", Correct(185.0)),
        ("no 185", Correct(185.0)),
        ("no i meant 185", Correct(185.0)),
        ("185 sorry", Correct(185.0)),
        ("*185", Correct(185.0)),
        ("make that 185", Correct(185.0)),
        ("nein, 185", Correct(185.0)),
        ("typo 155 not 255", Correct(155.0, was=255.0)),
        ("i meant 70 c", Correct(70.0, unit="c")),
        ("that was yesterday's", Correct(days_back=1)),
        ("that was 20 min ago", Correct(at=NOW - timedelta(minutes=20))),
        ("wrong one, it's the pit", Correct(probe=Probe.PIT)),
        ("that was pit temp", Correct(probe=Probe.PIT)),
        ("last one was the fridge not the brine", Correct(probe=Probe.FRIDGE)),
        ("that flip was yesterday", Correct(days_back=1, step="flip")),
        ("scratch that its celsius", Correct(unit="c")),
        ("in c", Correct(unit="c")),
        ("i flipped at 7 not 8", Correct(at=wall(3, 1, 7), step="flip")),
    ],
)
def test_a_correction(text: str, correct: Correct) -> None:
    """Exactly what is different is set."""
    assert read(text, COOK) == [correct]


@pytest.mark.parametrize("text", ["undo", "Undo!", "take that back", "rückgängig", "/undo", "delete the last one"])
def test_undo(text: str) -> None:
    """The last entry is taken back by many words."""
    assert read(text, COOK) == [Undo()]


def test_what_really_went_in() -> None:
    """The dose that was weighed and the trimmed weight are changes; a weight of unknown unit is asked."""
    assert read("i only put 8 grams not 18", CURE) == [Change({"put_in_cure": 0.008})]
    known = context("curing", KILOS, mass=7.5 * LB)
    assert read("i said 7.5 but trimmed is 6.9", known) == [Change({"mass": pytest.approx(6.9 * LB)})]
    (asked,) = read("i said 7.5 but trimmed is 6.9", CURE)
    assert asked == Unclear(
        "unit", "i said 7.5 but trimmed is 6.9", (Change({"mass": 3.129787353}), Change({"mass": 6.9}))
    )


@pytest.mark.parametrize(
    ("text", "changes"),
    [
        ("45mm", {"thickness": 0.045}),
        ("its 48 mm thick", {"thickness": 0.048}),
        ("cure is 6.25%", {"cure_nitrite_fraction": 0.0625}),
        ("6.25%", {"cure_nitrite_fraction": 0.0625}),
        ("my cure is 0.5% nitrite", {"cure_nitrite_fraction": 0.005}),
        ("salt 2%", {"salt_fraction": 0.02}),
        ("make it dry", {"method": "dry"}),
        ("lets inject it", {"method": "inject"}),
        ("swap to the butcher paper", {"wrap": "paper"}),
        ("wrap in foil", {"wrap": "foil"}),
        ("no wrap", {"wrap": "none"}),
        ("chill in an ice bath", {"chill": "ice"}),
        ("fridge runs at 4c", {"fridge_c": 4.0}),
        ("smoke at 225", {"pit_c": pytest.approx(107.2222, abs=1e-3)}),
        ("pull it at 195", {"target_c": pytest.approx(90.5556, abs=1e-3)}),
        ("kids will eat", {"at_risk_eaters": True}),
        ("no kids", {"at_risk_eaters": None}),
        ("pulled please", {"purpose": "pulled"}),
        ("slice it cold", {"purpose": "cold"}),
        ("its the point", {"cut": "brisket_point"}),
        ("thickness was 42 not 45", {"thickness": 0.042}),
        ("i weighed it again 3.35 kg", {"mass": 3.35}),
        ("no deadline", {"deadline": None}),
        ("its actually 3.1 kg", {"mass": 3.1}),
        ("150 ppm", {"nitrite_target": 150.0}),
        ("cure for 10 days", {"cure_days": 10.0}),
        ("leave it in for 10 days", {"cure_days": 10.0}),
        ("keep it in there 8 days", {"cure_days": 8.0}),
        ("make it brine", {"method": "brine"}),
        ("48 mm, fat cap on, cure 6.25 %, pit 110c",
         {"thickness": 0.048, "sealed_faces": 1, "cure_nitrite_fraction": 0.0625, "pit_c": 110.0}),
        ("48 mm dick", {"thickness": 0.048}),
    ],
)  # fmt: skip
def test_a_field_that_is_stated(text: str, changes: dict[str, object]) -> None:
    """Fields of the setup, in the units of the house."""
    assert read(text, CURE) == [Change(changes)]


@pytest.mark.parametrize(
    "text", ["2.5%", "cure is 6.25", "using cure #1", "3.1 kg", "1 tsp pink", "half a cup of salt"]
)
def test_a_dose_is_never_guessed(text: str) -> None:
    """A share of nothing, a strength without percent, a mass in the middle of the cure, a spoon: asked."""
    (asked,) = read(text, CURE)
    assert isinstance(asked, Unclear)


@pytest.mark.parametrize(
    ("text", "move"),
    [
        ("dinner moved to 15:00", MoveDeadline(wall(3, 6, 15))),
        ("push dinner to 3", MoveDeadline(wall(3, 6, 15))),
        ("can we eat at 3 instead of 1", MoveDeadline(wall(3, 6, 15))),
        ("rather eat at 12.30", MoveDeadline(wall(3, 6, 12, 30))),
        ("make it sunday", MoveDeadline(wall(3, 7, 13), assumed=("deadline_hour",))),
        ("sunday instead of saturday", MoveDeadline(wall(3, 7, 13), assumed=("deadline_hour",))),
        ("i have to work saturday, make it sunday", MoveDeadline(wall(3, 7, 13), assumed=("deadline_hour",))),
        ("guests are coming at 5", MoveDeadline(wall(3, 6, 17))),
        ("friday 6pm", MoveDeadline(wall(3, 5, 18))),
        ("Abendessen auf 15 Uhr verschieben", MoveDeadline(wall(3, 6, 15))),
        ("need it an hour earlier", MoveDeadline(by=-timedelta(hours=1))),
        ("push everything by a day", MoveDeadline(by=timedelta(days=1))),
        ("guests 2 hours late", MoveDeadline(by=timedelta(hours=2))),
        ("bring it forward an hour", MoveDeadline(by=-timedelta(hours=1))),
    ],
)
def test_a_meal_that_is_moved(text: str, move: MoveDeadline) -> None:
    """A new hour keeps the day, a new day keeps the hour, a span counts from what stands."""
    assert read(text, CURE) == [move]


@pytest.mark.parametrize(
    ("text", "options"),
    [
        ("sat", (MoveDeadline(wall(3, 6, 13), assumed=("deadline_hour",)),)),
        ("meal is 3/4", (MoveDeadline(wall(4, 3, 13)), MoveDeadline(wall(3, 4, 13)))),
        ("we eat at half 7", (MoveDeadline(wall(3, 6, 18, 30)), MoveDeadline(wall(3, 6, 19, 30)))),
        ("sat 5", (MoveDeadline(wall(3, 6, 17)),)),
    ],
)
def test_a_meal_that_may_be_two(text: str, options: tuple[Intent, ...]) -> None:
    """What may be two days or hours is offered, not taken."""
    (asked,) = read(text, CURE)
    assert isinstance(asked, Unclear)
    assert asked.options == options


@pytest.mark.parametrize(
    ("text", "changes"),
    [
        ("we are in chicago time", {"zone": "America/Chicago"}),
        ("im in berlin", {"zone": "Europe/Berlin"}),
        ("timezone europe/vienna", {"zone": "Europe/Vienna"}),
        ("my time zone is new york", {"zone": "America/New_York"}),
        ("set timezone to viena", {"zone": "Europe/Vienna"}),
        ("central time", {"zone": "America/Chicago"}),
        ("vienna", {"zone": "Europe/Vienna"}),
        ("i'm in germany", {"zone": "Europe/Berlin", "jurisdiction": "EU"}),
        ("uk rules", {"jurisdiction": "UK"}),
        ("only use kg and c pls", {"units": Units("kg", "in", "c")}),
        ("metric please", {"units": Units("kg", "mm", "c")}),
        ("i use celsius", {"units": Units("lb", "in", "c")}),
        ("quiet 23 to 6", {"quiet_from": time(23), "quiet_to": time(6)}),
        ("quiet from 10 to 7", {"quiet_from": time(22), "quiet_to": time(7)}),
        ("dont ping me before 8", {"quiet_to": time(8)}),
        ("no messages after 10pm", {"quiet_from": time(22)}),
        ("flips at 7 and 19", {"flip_hours": (time(7), time(19))}),
        ("gas cooker", {"cooker": "gas"}),
        ("auf deutsch bitte", {"language": "de"}),
    ],
)
def test_a_setting(text: str, changes: dict[str, object]) -> None:
    """Fields of the person, by words."""
    assert read(text, CURE) == [Settings(changes)]


def test_a_place_that_is_none() -> None:
    """An unknown place is told as such; a wrong clock is asked for its place; a kitchen is no city."""
    assert read("timezone narnia", CURE) == [Settings({}, "narnia")]
    assert read("wrong time zone it says 9 but its 6", CURE) == [Settings({})]
    assert not any(isinstance(intent, Settings) for intent in read("im in the kitchen", CURE))


@pytest.mark.parametrize(
    ("text", "topic", "about"),
    [
        ("what now", "now", ""),
        ("Was jetzt?", "now", ""),
        ("plan", "plan", ""),
        ("/plan", "plan", ""),
        ("send me the plan again", "plan", ""),
        ("why 11 days", "why", "days"),
        ("why so much cure", "why", "dose"),
        ("is it safe?", "safe", ""),
        ("how much longer?? guests here", "eta", ""),
        ("done?", "eta", ""),
        ("show me the curve of the cook", "picture", "cook"),
        ("did i flip this morning", "log", ""),
        ("how much cure do i need", "dose", ""),
        ("how hot is the pit", "pit", ""),
    ],
)
def test_a_question_about_the_batch(text: str, topic: str, about: str) -> None:
    """The topic of a question, with its words as typed."""
    assert read(text, COOK) == [Ask(topic, about, text)]


@pytest.mark.parametrize(
    ("slot", "text", "intent"),
    [
        ("cure", "6.25", Change({"cure_nitrite_fraction": 0.0625})),
        ("cure", "6,25 %", Change({"cure_nitrite_fraction": 0.0625})),
        ("cure", "its 6.25% i think", Change({"cure_nitrite_fraction": 0.0625})),
        ("cure", "cure #1", Choose("cure", "unknown")),
        ("cure", "no idea", Choose("cure", "unknown")),
        ("cure", "62.5", Unclear("number", "62.5")),
        ("thickness", "45", Change({"thickness": 0.045})),
        ("thickness", "1 3/4", Change({"thickness": 0.04445})),
        ("thickness", "2", Change({"thickness": 0.0508})),
        ("thickness", "dont know", Choose("thickness", "unknown")),
        ("weight_after", "4 lb 2 oz", Debrief(mass=pytest.approx(4.125 * LB))),
        ("grey", "12", Debrief(grey=0.012)),
        ("grey", "no", Debrief(grey=0.0)),
        ("salty", "too salty", Debrief(salt=1)),
        ("salty", "just right", Debrief(salt=0)),
        ("eaters", "nope", Change({"at_risk_eaters": False})),
        ("confirm", "yes please", Choose("confirm", True)),
        ("confirm", "no", Choose("confirm", False)),
        ("zone", "viena", Settings({"zone": "Europe/Vienna", "jurisdiction": "EU"})),
        ("zone", "chicago", Settings({"zone": "America/Chicago", "jurisdiction": "US"})),
        ("zone", "sydney", Settings({"zone": "Australia/Sydney"})),
        ("zone", "narnia", Settings({}, "narnia")),
        ("deadline", "sat 1pm", Change({"deadline": wall(3, 6, 13)})),
        ("deadline", "whenever", Change({"deadline": None})),
        ("when", "8", Choose("when", wall(3, 1, 8))),
        ("probe", "fridge c", Choose("probe", "fridge/c")),
        ("doubt", "forget it", Choose("doubt", "drop")),
        ("doubt", "thats not right", Choose("doubt", "drop")),
        ("doubt", "yes its right", Choose("doubt", "keep")),
        ("doubt", "really, it is", Choose("doubt", "keep")),
        ("doubt", "keep it", Choose("doubt", "keep")),
        ("pit_c", "250", Change({"pit_c": pytest.approx(121.111, abs=1e-3)})),
        ("pit_c", "121", Change({"pit_c": 121.0})),
        ("fridge_c", "38", Change({"fridge_c": pytest.approx(3.333, abs=1e-3)})),
        ("wrap", "paper", Change({"wrap": "paper"})),
        ("method", "inject it", Change({"method": "inject"})),
    ],
)
def test_the_answer_to_what_was_asked(slot: str, text: str, intent: Intent) -> None:
    """A fitting answer settles the open question, without a unit where the slot says it."""
    assert read(text, context("curing", asked=slot)) == [intent]


@pytest.mark.parametrize(
    ("slot", "text", "intent"),
    [
        ("mass", "3.2 kg", Choose("mass", 3.2)),
        ("mass_unit", "pounds", Choose("mass_unit", "lb")),
        ("cut", "the point", Choose("cut", "brisket_point")),
        ("deadline", "sat 1pm", Choose("deadline", wall(3, 6, 13))),
        ("thickness", "48 mm", Choose("thickness", 0.048)),
    ],
)
def test_the_answer_completes_a_start(slot: str, text: str, intent: Intent) -> None:
    """While a start is half said, an answer is its own; it never changes another batch."""
    half = context("curing", asked=slot, asked_of_start=True)
    assert read(text, half) == [intent]
    assert read(text, context("none", asked=slot)) == [intent]


def test_a_number_for_another_question_is_asked() -> None:
    """With the strength asked, «4» may be the fridge; with the thickness asked and the fridge due, «38» may be too."""
    assert read("4", context("curing", asked="cure")) == [
        Unclear("strength", "4 %", (Change({"cure_nitrite_fraction": 0.04}),))
    ]
    (asked,) = read("38", context("curing", asked="thickness", due_step="fridge_check/2"))
    assert isinstance(asked, Unclear)
    assert asked.options == (Change({"thickness": 0.038}), Reading((Temperature(38, "f", Probe.FRIDGE),)))


def test_a_hundredfold_dose_is_asked() -> None:
    """0.0625 may be a fraction or a percentage: what some packet holds is offered, and not a hundredth of it."""
    (asked,) = read("0.0625", context("curing", asked="cure"))
    assert isinstance(asked, Unclear)
    assert asked.options == (Change({"cure_nitrite_fraction": 0.0625}),)


@pytest.mark.parametrize("slot", ["cure", "thickness", "zone", "deadline", "confirm", "grey", "mass_unit", "probe"])
def test_the_subject_may_change(slot: str) -> None:
    """A line about something else is read as if nothing had been asked."""
    where = context("curing", asked=slot)
    assert read("flipped", where) == [StepDone("flip")]
    assert read("what now", where) == [Ask("now", text="what now")]
    assert read("cancel", where) == [Cancel()]
    assert read("fridge 3c", where) == [Reading((Temperature(3, "c", Probe.FRIDGE),))]


def test_what_a_number_was() -> None:
    """«95: which?» «the meat»: in the unit that fits; where both fit, the unit is asked."""
    meat = context("cooking", asked="probe", asked_value=165.0)
    assert read("meat", meat) == [Choose("probe", "core/f")]
    (asked,) = read("the pit", context("cooking", asked="probe", asked_value=120.0))
    assert asked == Unclear("unit", "the pit", (Choose("probe", "pit/c"), Choose("probe", "pit/f")))


def test_batches_by_name() -> None:
    """A batch is addressed by its name, anywhere in the line; of another batch no reading is guessed."""
    assert read("flipped the ham", TWO) == [StepDone("flip", batch="b2")]
    assert read("ham: fridge 38", TWO) == [Reading((Temperature(38, "f", Probe.FRIDGE),), batch="b2")]
    assert read("that was for the ham", TWO) == [Correct(to_batch="b2")]
    reading, done = read("fridge 38 for the ham, flat 1 flipped", TWO)
    assert (getattr(reading, "batch", None), getattr(done, "batch", None)) == ("b2", "b1")
    (asked,) = read("ham 158", TWO)
    assert isinstance(asked, Unclear)
    assert {getattr(option, "batch", None) for option in asked.options} == {"b2"}
    assert batch_named("flipped the ham", TWO) == "b2"
    assert batch_named("that was for the ham", TWO) is None
    assert batch_named("flipped", TWO) is None


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("hi", "hello"),
        ("thanks!", "thanks"),
        ("hi and thanks", "thanks"),
        ("good night", "nod"),
        ("got it", "nod"),
        ("ok thanks", "thanks"),
        ("Danke", "thanks"),
        ("/start", "hello"),
    ],
)
def test_small_talk(text: str, kind: str) -> None:
    """A greeting, thanks or a nod asks for nothing, and gets the like back."""
    assert read(text, CURE) == [Greet(kind)]


@pytest.mark.parametrize("text", ["help", "/help", "?", "hilfe", "what can you do"])
def test_help(text: str) -> None:
    """Help by its words and by a question mark."""
    assert read(text, CURE) == [Help()]


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "empty"),
        ("  \n ", "empty"),
        ("\u200b\ufeff", "empty"),
        ("...", "empty"),
        ("🎉🎉", "other"),
        ("asdf", "word"),
        ("x" * 501, "too_long"),
    ],
)
def test_what_is_nothing(text: str, why: str) -> None:
    """Nothing, a picture in a letter, a word of no meaning, too much: each has its name."""
    (intent,) = read(text, CURE)
    assert isinstance(intent, Unclear)
    assert intent.why == why


def test_units_of_the_person_are_the_rim() -> None:
    """The same word is another number to another person: a start in kilos or pounds is as typed for both."""
    for units in (KILOS, POUNDS):
        (start,) = read("3.2 kg flat", context("none", units))
        assert start == Start({"mass": 3.2, "cut": "brisket_flat"})


@pytest.mark.parametrize(
    "text",
    [
        "take it out tomorrow instead",
        "only ping me at 8",
        "10 days in the cure",
        "use lighter fluid in the kamado w hot coals",
        "wild boar cured no cook sliced thin",
        "i sprinkled the pink curing salt on my fries",
    ],
)
def test_what_only_looks_like_something_does_nothing(text: str) -> None:
    """A line whose words are those of a step or a setting, and which means neither, goes to the entries."""
    assert read(text, CURE) == [Question(text)]


@pytest.mark.parametrize("text", ["turned it down", "turned down the fridge", "turned it colder"])
def test_a_fridge_that_was_turned_down_is_read_again(text: str) -> None:
    """No flip of the bag, and no degrees."""
    assert read(text, CURE) == [Unclear("dial", text)]


@pytest.mark.parametrize("text", ["sorry core 141 f", "i mean core 141 f", "oops, core 141 f"])
def test_a_number_that_was_asked_about_is_read_and_corrects_nothing(text: str) -> None:
    """«core 41» was asked about and never noted: the next word of it is that reading, and an older one stands."""
    (found,) = read(text, but(context("cooking"), asked="probe", asked_value=41.0))
    assert isinstance(found, Reading)
    assert found.temperatures == (Temperature(141.0, "f", Probe.CORE),)


@pytest.mark.parametrize("phase", ["cooking", "resting", "chilling", "stored"])
@pytest.mark.parametrize(
    "text", ["63 c in the middle is enough for me", "core 63 c is enough", "i like it at 63 c", "i want it at 145 f"]
)
def test_how_it_is_wanted_is_nothing_that_was_read(text: str, phase: str) -> None:
    """A wish is a target, or asked about; a core that nobody read would be taken for a kill."""
    for found in read(text, context(phase)):
        assert not isinstance(found, Reading)


def test_smoked_to_is_a_core_and_smoked_at_a_pit() -> None:
    for text, fields in (
        ("hot smoke it to 145 f", {"target_c": pytest.approx(62.778, abs=1e-3)}),
        ("smoke it at 90 c", {"pit_c": 90.0}),
        ("smoke at 90 c to a core of 63 c", {"pit_c": 90.0, "target_c": 63.0}),
    ):
        (found,) = read(text, context("waiting"))
        assert isinstance(found, Change)
        assert found.changes == fields


@pytest.mark.parametrize(
    "line", ["how long do they keep", "not sure", "is that right", "are you sure", "core now", "keep going"]
)
def test_a_doubted_reading_is_vouched_for_by_no_other_word(line: str) -> None:
    """A number that was doubted counts for the record of safety: only words that say so let it stand."""
    assert read_answer(line, context(asked="doubt")) is None
