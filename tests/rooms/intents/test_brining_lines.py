"""A strong brine by the clock: its strength and its hours, however they are told, and what is no hour in a brine."""

from datetime import timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from bot.intents.brinings import NIGHT
from bot.intents.intents import Ask, Change, Reading, Snooze, Start, StepDone, Unclear
from bot.intents.read import read
from core.cure.contents import SATURATED_BRINE
from tests.talk_lines import KILOS, context


@pytest.mark.parametrize(
    ("text", "strength", "hours"),
    [
        ("15% brine for 3 hours", 0.15, 3.0),
        ("1.2 kg salmon for saturday, 15% brine for 3 hours", 0.15, 3.0),
        ("1.2 kg salmon side tomorrow evening, 15% brine for 3 hours", 0.15, 3.0),
        ("salmon 2 kg, 4 hours in a 15 percent brine, saturday", 0.15, 4.0),
        ("1.2 kg salmon saturday 18:00, 20 % salt brine 2 hours then smoke", 0.20, 2.0),
        ("2 kg salmon for saturday, brine with 18% salt, 2½ hours", 0.18, 2.5),
        ("2 kg salmon for saturday, 150 g salt per litre, brine it for 90 minutes", 150 / 1150, 1.5),
        ("2 kg trout for saturday, 100 g of salt to the litre for an hour", 100 / 1100, 1.0),
        ("trout 6 x 350 g for saturday, 60 degree brine 1 h", 0.6 * SATURATED_BRINE, 1.0),
        ("2 kg salmon for saturday in an 80 degree brine for half an hour", 0.8 * SATURATED_BRINE, 0.5),
        ("20 % brine instead, 2 hours", 0.20, 2.0),
        ("brine it for 2 hours at 12 %", 0.12, 2.0),
        ("make it 2 hours in the brine", None, 2.0),
        ("brine for 45 min", None, 0.75),
        ("smoke 3 lb of salmon saturday, brined 2 hours", None, 2.0),
        ("2 kg salmon for saturday, 15 % brine for 2 days", 0.15, 48.0),
        ("brine it for 2 days at 15 %", 0.15, 48.0),
    ],
)
def test_a_brine_and_its_hours(text: str, strength: float | None, hours: float) -> None:
    """In a line that begins a batch, and in one that changes it."""
    (found,) = read(text, context("none" if "salmon" in text or "trout" in text else "waiting", KILOS))
    assert isinstance(found, Start | Change)
    fields: dict[str, Any] = found.said if isinstance(found, Start) else found.changes
    assert fields.get("brine_strength") == pytest.approx(strength, abs=1e-4)
    assert fields["brine_hours"] == pytest.approx(hours)
    assert "salt_fraction" not in fields


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("2 kg salmon for saturday, dry brine for 4 hours", 4.0),
        ("dry brine it overnight", NIGHT),
        ("salt it for 6 hours", 6.0),
        ("dry brine 90 min", 1.5),
    ],
)
def test_hours_in_plain_salt(text: str, hours: float) -> None:
    """Rubbed on and left by the hour; a night is twelve."""
    (found,) = read(text, context("none" if "salmon" in text else "waiting", KILOS))
    assert isinstance(found, Start | Change)
    fields: dict[str, Any] = found.said if isinstance(found, Start) else found.changes
    assert fields["method"] == "dry"
    assert fields["salting_hours"] == pytest.approx(hours)


@pytest.mark.parametrize("text", ["brine for 5 days", "a 5 day brine", "brine it 5 days"])
def test_days_in_a_brine_of_no_strength_are_days_of_cure(text: str) -> None:
    """An equilibrium has no hours of its own."""
    (found,) = read(text, context("waiting", KILOS))
    assert isinstance(found, Change)
    assert found.changes["cure_days"] == 5.0


@pytest.mark.parametrize(
    "text",
    ["5 days in the brine", "it has been 5 days in the brine", "3 weeks in the fridge", "brine day 5", "fridge 3 weeks",
     "the brine is 5 days old", "3 fillets in the brine"],
)  # fmt: skip
def test_days_and_fish_that_are_counted_are_no_degrees(text: str) -> None:
    """A count beside the name of a thermometer is never noted, nor offered, as what it reads."""
    for found in read(text, context("curing", KILOS)):
        assert not isinstance(found, Reading | Unclear)


@pytest.mark.parametrize("text", ["brine 3 c", "the brine is 4 degrees", "brine 3.5"])
def test_a_reading_of_the_brine_is_no_strength(text: str) -> None:
    """What stands beside a brine that is made is read off a thermometer."""
    (found,) = read(text, context("waiting", KILOS))
    assert isinstance(found, Reading)


def test_degrees_beside_a_brine_that_is_made_are_asked() -> None:
    """80 may be degrees of the salometer or of heat: neither is guessed."""
    (found,) = read("80° brine", context("waiting", KILOS))
    assert isinstance(found, Unclear)


@pytest.mark.parametrize(
    "text", ["in the brine for 3 hours now", "its been in the brine 3 h", "in the brine 2 hours ago"]
)
def test_what_has_passed_is_no_wish(text: str) -> None:
    """How long it has been there changes no hours."""
    for found in read(text, context("curing", KILOS)):
        assert not isinstance(found, Change)
        assert not isinstance(found, StepDone) or found.step == "into_cure"


@pytest.mark.parametrize(
    "text", ["forgot it, its still in the brine", "still in the salt, sorry", "fish is still in there"]
)
def test_what_is_still_in_the_brine_was_not_left_out(text: str) -> None:
    """What is due is called for; nothing is noted as missed or done."""
    (found,) = read(text, context("curing", KILOS))
    assert isinstance(found, Ask)
    assert found.topic == "now"


def test_salt_by_the_cup_is_asked() -> None:
    """A cup weighs by its salt: its words are kept, and no strength is made of them."""
    (found,) = read("4 lb salmon for saturday 6pm, 1 cup salt to 7 cups water, 2 hours", context("none", KILOS))
    assert isinstance(found, Start)
    assert found.unclear == ("brine:1 cup salt to 7 cups water",)
    assert "brine_strength" not in found.said


@pytest.mark.parametrize(
    "text",
    ["fish goes in the brine in 2 hours", "putting it in the brine in 30 min", "it goes into the brine at {ahead}"],
)
def test_what_goes_in_later_is_not_in(text: str) -> None:
    """A deed of the next hours is put off until then and never noted as done."""
    where = context("waiting", KILOS)
    hour = where.now.astimezone(ZoneInfo(where.zone)) + timedelta(hours=2)
    (found,) = read(text.format(ahead=f"{hour:%H:%M}"), where)
    assert isinstance(found, Snooze)
    assert found.step == "into_cure"
    assert found.by or found.until


def test_what_went_in_at_an_hour_just_gone_is_in() -> None:
    """«goes in at» an hour of a moment ago is the deed itself."""
    where = context("waiting", KILOS)
    hour = where.now.astimezone(ZoneInfo(where.zone)) - timedelta(minutes=10)
    (found,) = read(f"it goes into the brine at {hour:%H:%M}", where)
    assert isinstance(found, StepDone)
