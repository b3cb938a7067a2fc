"""What a line does not say is not guessed: a size for a temperature, one of two strengths, what is still to come."""

from datetime import timedelta

import pytest

from bot.intents.intents import (
    Ask,
    Change,
    Choose,
    Happened,
    MoveDeadline,
    Pause,
    Reading,
    Settings,
    Snooze,
    Start,
    StepDone,
    Unclear,
)
from bot.intents.read import read
from core.answers.dangers import grave
from tests.talk_lines import NOW, POUNDS, context, wall

CURE, RAW, FIRE, CHILL = context("curing"), context("waiting"), context("cooking"), context("chilling")
ASKED = context("waiting", asked="cure")


@pytest.mark.parametrize(
    "text",
    [
        "half a percent i think",
        "maybe .5",
        "0.6% i guess",
        "its 1 percent prob",
        "i think 6ish",
        "6 i think",
        "maybe 6",
    ],
)
def test_a_weak_curing_salt_by_a_guess_is_asked(text: str) -> None:
    """Of the strong one its dose would be ten times too much: the packet is looked at, and a tap takes it."""
    (found,) = read(text, ASKED)
    assert found == Choose("cure", "unknown") or (isinstance(found, Unclear) and found.why == "strength")


@pytest.mark.parametrize(
    ("text", "step"),
    [
        ("flipped it i think", "flip"),
        ("i think i flipped it", "flip"),
        ("my wife flipped it i guess", "flip"),
        ("probably flipped", "flip"),
        ("took it out of the brine i think", "out"),
    ],
)
def test_a_deed_that_is_doubted_is_asked(text: str, step: str) -> None:
    """A tap notes it; an hour that is told loosely is no doubt of the deed."""
    (found,) = read(text, CURE)
    assert isinstance(found, Unclear)
    assert found.options == (StepDone(step),)
    assert isinstance(read("flipped at 8 i think", CURE)[0], StepDone)


@pytest.mark.parametrize("text", ["yep", "yes", "yeah"])
def test_a_yes_to_nothing_tells_of_a_deed(text: str) -> None:
    """What is done is asked, with the step that is next to tap."""
    assert read(text, CURE) == [StepDone()]
    assert read(text, context("none")) != [StepDone()]


@pytest.mark.parametrize("text", ["1 oz treats 25 lb", "1 tsp per 5 lb", "2.5 g per kg", "4 oz for 100 lbs"])
def test_how_a_packet_doses_is_no_strength(text: str) -> None:
    """The strength is asked for again."""
    assert read(text, ASKED) == [Choose("cure", "unknown")]


@pytest.mark.parametrize("text", ["none just salt n sugar", "no pink just salt", "none of it", "none"])
def test_no_curing_salt_at_all(text: str) -> None:
    """Salted, and not cured; «none yet» has none so far."""
    assert read(text, ASKED) == [Change({"nitrite_target": 0.0})]
    assert read("none yet", ASKED) != [Change({"nitrite_target": 0.0})]


@pytest.mark.parametrize(("text", "share"), [("half a percent", 0.005), ("6.25 i think", 0.0625), ("says .6%", 0.006)])
def test_what_the_packet_says_is_taken(text: str, share: float) -> None:
    """So is the strong one, which nobody makes up to the quarter."""
    assert read(text, ASKED) == [Change({"cure_nitrite_fraction": pytest.approx(share)})]


@pytest.mark.parametrize("text", ["6.25% 2 in thick dry", "dry, 2in, 6.25%", "6.25 % 2in dry"])
def test_what_stands_with_the_strength_is_taken(text: str) -> None:
    """How thick it is was lost, and so was the way of the cure."""
    (found,) = read(text, ASKED)
    assert isinstance(found, Change)
    assert found.changes == {
        "cure_nitrite_fraction": pytest.approx(0.0625), "thickness": pytest.approx(0.0508), "method": "dry",
    }  # fmt: skip


def test_a_start_with_a_guessed_strength_asks_for_it() -> None:
    """The rest of it is begun."""
    (found,) = read("5lb belly 0.5% cure i think for sunday", context("none"))
    assert isinstance(found, Start)
    assert "cure_nitrite_fraction" not in found.said


@pytest.mark.parametrize("text", ["flat is 2", "belly 1.5", "brisket is 3", "ham 2.5", "salmon 1.2"])
@pytest.mark.parametrize("where", [CURE, RAW])
def test_a_small_number_beside_raw_meat_is_asked(text: str, where: object) -> None:
    """It is a size as likely as degrees."""
    (found,) = read(text, where)  # type: ignore[arg-type]
    assert isinstance(found, Unclear)
    assert any(isinstance(one, Change) for one in found.options)


@pytest.mark.parametrize("text", ["flat is 1.5 to 2", "belly is 1 to 1.5", "brisket 2 to 3"])
def test_two_sizes_are_no_temperatures(text: str) -> None:
    """Neither is kept."""
    (found,) = read(text, RAW)
    assert isinstance(found, Unclear)
    assert not any(isinstance(one, Reading) for one in found.options)


@pytest.mark.parametrize(
    "text", ["salmon weighs 1.3", "it weighs 4.9", "brisket weighed 7", "weighs 3.2 now", "is 7 heavy"]
)
@pytest.mark.parametrize("phase", ["waiting", "curing", "cooking", "chilling"])
def test_what_something_weighs_is_no_temperature(text: str, phase: str) -> None:
    """Whatever the number is."""
    assert not any(isinstance(found, Reading) for found in read(text, context(phase, POUNDS)))


@pytest.mark.parametrize("text", ["6.25 / 5", "6.25 or 5.88", "either 6.25 or 0.5", "5.88 to 6.25"])
def test_of_two_strengths_none_is_taken(text: str) -> None:
    """A dose hangs on it."""
    assert not any(isinstance(found, Change) for found in read(text, ASKED))


@pytest.mark.parametrize(
    "text",
    [
        "bag says 6.25 % sodium nitrite 93.75 % salt",
        "6.25 sodium nitrite 93.75 salt",
        "6.25 % nitrite 93.75 % sodium chloride on the label",
        "sodium nitrite 6.25 and 93.75 salt",
    ],
)
def test_what_is_in_a_packet_of_curing_salt(text: str) -> None:
    """Its nitrite is its strength, and it is no pure nitrite."""
    assert grave(text) is None
    assert read(text, ASKED) == [Change({"cure_nitrite_fraction": 0.0625})]


@pytest.mark.parametrize("text", ["sodium nitrite 99", "nitrite 98 % pure", "nitrite 97 grams for salt"])
def test_pure_nitrite_stays_grave(text: str) -> None:
    """What is no curing salt is refused."""
    assert grave(text) == "pure-nitrite" or "grams" in text


@pytest.mark.parametrize("text", ["just use salt", "use only salt", "lets use plain salt", "well use kosher salt only"])
def test_plain_salt_alone_is_no_cure(text: str) -> None:
    """Asked how strong the curing salt is."""
    assert read(text, ASKED) == [Change({"nitrite_target": 0.0})]


@pytest.mark.parametrize("text", ["about 2 fingers", "2 fingers", "maybe 3 thumbs wide"])
def test_a_thickness_by_hand_is_asked_for_a_ruler(text: str) -> None:
    """No hand is like another."""
    (found,) = read(text, RAW)
    assert isinstance(found, Unclear)
    assert found.why == "ruler"


@pytest.mark.parametrize(
    ("text", "hour"),
    [
        ("meat goes in tonight", 20),
        ("meat goes in tonight not tomorrow", 20),
        ("meat goes in at 9 tonight", 21),
        ("putting the meat in at 7 tonight", 19),
        ("brisket goes in this evening", 19),
    ],
)
def test_what_goes_in_tonight_is_not_in(text: str, hour: int) -> None:
    """It is called for then."""
    assert read(text, RAW) == [Snooze(until=wall(3, 1, hour), step="into_cure")]


@pytest.mark.parametrize("text", ["meat goes in now", "meat went in tonight at 7", "its in"])
def test_what_is_in_is_in(text: str) -> None:
    """The present is no evening."""
    assert any(isinstance(found, StepDone) for found in read(text, RAW))


@pytest.mark.parametrize("text", ["going to the store back in 40", "popping out back in 40", "ill be back in 40"])
def test_minutes_of_an_errand(text: str) -> None:
    """They are no degrees."""
    assert read(text, FIRE) == [Pause(NOW + timedelta(minutes=40))]


@pytest.mark.parametrize(
    "text", ["power cut pellet grill off 10 min", "pellet grill lost power for 10 min", "smoker lost power"]
)
def test_a_cooker_without_power_is_a_fire_that_is_out(text: str) -> None:
    """No fridge stood still, and no other cooker is set."""
    (found,) = read(text, FIRE)
    assert isinstance(found, Happened)
    assert found.what == "fire_out"


@pytest.mark.parametrize("text", ["iced it again", "iced it", "iced them", "put more ice in"])
def test_ice_again_goes_on_with_the_chill(text: str) -> None:
    """It asks for no dose."""
    (found,) = read(text, CHILL)
    assert isinstance(found, Unclear)
    assert found.why == "iced"


def test_what_none_of_these_is() -> None:
    """The neighbours are read as before."""
    assert read("meat 38", CURE) != read("meat 3", CURE)
    assert read("gas cooker", FIRE) == [Settings({"cooker": "gas"})]
    assert read("6.25", ASKED) == [Change({"cure_nitrite_fraction": 0.0625})]
    assert read("no idea", ASKED) == [Choose("cure", "unknown")]
    assert [one.topic for one in read("what now", CURE) if isinstance(one, Ask)] == ["now"]


@pytest.mark.parametrize("text", ["out", "its out", "took it out", "out now"])
def test_out_of_the_cure_days_early_is_asked(text: str) -> None:
    """It may be out of the fridge for a moment."""
    (found,) = read(text, context("curing", out_due=NOW + timedelta(days=5)))
    assert isinstance(found, Unclear)
    assert found.why == "took_out"


@pytest.mark.parametrize("text", ["wednesday or thursday", "sat or sun?", "maybe sat or sun", "on fri or sat"])
def test_one_of_two_days_is_asked(text: str) -> None:
    """Of the meal; no days are counted."""
    (found,) = read(text, CURE)
    assert isinstance(found, Unclear)
    assert [type(one) for one in found.options] == [MoveDeadline, MoveDeadline]


@pytest.mark.parametrize("text", ["not sure about this one", "not sure", "im not sure of that"])
def test_who_is_not_sure_is_asked_of_what(text: str) -> None:
    """No entry is guessed at."""
    (found,) = read(text, CURE)
    assert isinstance(found, Unclear)
    assert found.why == "which"


@pytest.mark.parametrize("text", ["is it ok like this", "is that ok as it is", "is it all right so"])
def test_whether_it_is_well_so_is_asked_of_the_record(text: str) -> None:
    """Like «is it ok»."""
    assert [one.topic for one in read(text, CURE) if isinstance(one, Ask)] == ["safe"]


@pytest.mark.parametrize("text", ["half", "about half", "half of it", "its half"])
@pytest.mark.parametrize("where", [CURE, FIRE, CHILL])
def test_half_is_asked(text: str, where: object) -> None:
    """Of the meat, of the way, or of an hour."""
    assert read(text, where) == [Unclear("half", text, (Snooze(by=timedelta(minutes=30)),))]  # type: ignore[arg-type]
