"""Two who share a batch and are apart: in two zones, in two languages; and what is thrown away stays so for both."""

from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import pytest

from tests.talks.player import Player

FLAT = "3.2 kg brisket flat for 2 october 13:00, 48 mm, cure is 6.25 %"


def said_to(came: list[dict[str, Any]], who: str) -> list[str]:
    """What was sent to somebody."""
    return [one["text"] for one in came if one["to"] == who]


@pytest.fixture
async def two(tmp_path: Path) -> AsyncIterator[Player]:
    """Ida has begun a flat in Vienna, and Jo, who speaks German, has it too; it lies in its cure."""
    player = Player(tmp_path)
    code = (await player.play(f"as Ida alone: {FLAT}", "as Ida alone: invite"))[-1]["facts"]["invitation"]
    await player.play(f"as Jo alone: join {code}", "as Jo alone: auf deutsch", "as Ida alone: made the brine")
    await player.play("@2027-09-24T07:05 as Ida alone: brine 3 c", "as Ida alone: meat is in")
    yield player
    player.restart()


async def test_a_batch_of_two_stays_on_the_clock_of_its_fridge(two: Player) -> None:
    """Its owner flies to New York: who stayed at home is called at eight there, its owner in no night of their own."""
    (told,) = await two.play("as Ida alone: im in new york till saturday")
    assert "«flat» stays on the clock of Vienna" in told["text"]
    day = await two.play("@2027-09-25T12:30")
    assert [one["at"][11:16] for one in day if one["to"] == "Jo"][:2] == ["20:00", "08:00"]
    asleep = range(22 + 6 - 24, 7 + 6)  # the night of New York by the clock of the script, six hours ahead
    assert not [one["at"] for one in day if one["to"] == "Ida" and int(one["at"][11:13]) in asleep]


async def test_said_once_more_it_goes_along_and_is_at_home_again_with_its_owner(two: Player) -> None:
    """The same place twice takes the batch along; nothing else has to be known."""
    (first,) = await two.play("as Ida alone: im in new york")
    (second,) = await two.play("as Ida alone: im in new york")
    assert "stays on the clock" in first["text"]
    assert "stays on the clock" not in second["text"]
    assert "(was " in second["text"]


async def test_each_is_told_in_their_own_language(two: Player) -> None:
    """What Ida did in English, Jo hears in German, and the calls too."""
    called = await two.play("@2027-09-24T20:05")
    assert said_to(called, "Ida")[0].startswith("Flip the bag")
    assert said_to(called, "Jo")[0].startswith("Wende den Beutel")
    done = await two.play("as Ida alone: flipped")
    assert said_to(done, "Jo") == ["Ida (flat): Beutel wenden: erledigt 20:05."]
    back = await two.play("as Jo alone: gewendet")
    assert "Das war Ida." in said_to(back, "Jo")[0]


async def test_what_is_thrown_away_is_told_to_both_and_stays_so(two: Player) -> None:
    """A fridge at 15 °C for two days: the other hears it, and no step that is done with it afterwards makes it food."""
    await two.play("as Ida alone: fridge 15 c", "as Ida alone: yes")
    told = await two.play("@2027-09-26T09:00 as Ida alone: fridge 15 c", "as Ida alone: yes")
    assert [text for text in said_to(told, "Jo") if text.startswith("Ida (flat): Bitte wirf es weg")]
    later = await two.play("@2027-09-26T20:05 as Ida alone: flipped")
    (flipped,) = [one for one in later if one["to"] == "Ida"]
    assert flipped["text"].startswith("Please throw it away.")
    assert "Next:" not in flipped["text"]
