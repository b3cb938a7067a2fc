"""A line in reply to one of our messages is about the batch and the step of that message, whatever was said since."""

from pathlib import Path

import pytest

from tests.talks.player import Player

BEGUN = (
    "3.2 kg brisket flat for 2 october 13:00, 48 mm, cure is 6.25 %", "2 kg pork belly, 40 mm, for 3 october 18:00",
    "flat: made the brine", "flat: brine 3 c", "flat: meat is in", "bacon: weighed the cure", "bacon is in the bag",
)  # fmt: skip


async def _number(player: Player, words: str) -> int:
    """The number of the last message that holds some words."""
    return max(n for n, one in enumerate(player.said, 1) if words in one["text"])


@pytest.mark.parametrize("name", ["flat", "bacon"])
async def test_a_reply_names_its_batch(tmp_path: Path, name: str) -> None:
    """A reading in reply to what was said of one of two is of that one, and one without is asked about or of both."""
    player = Player(tmp_path)
    await player.play(*BEGUN, "flat: what now", "bacon: what now")
    number = await _number(player, f"{name.capitalize()}: Nothing to do now")
    said = await player.send(text="fridge 3 c", answers=f"talk-bot-{number}")
    assert [one["facts"].get("batch_name") for one in said] == [name]
    assert said[0]["facts"]["read_fridge_c"] == pytest.approx(3.0)
    player.restart()


async def test_a_reply_to_a_call_is_that_step(tmp_path: Path) -> None:
    """«done» hours later, in reply to the call for the flip, is that flip; the batch of the talk is another by then."""
    player = Player(tmp_path)
    await player.play(*BEGUN[:1], *BEGUN[2:5], "@2027-09-24T20:01", "2 kg pork belly, 40 mm, for 3 october 18:00")
    number = await _number(player, "Flip the bag")
    (done,) = await player.send(text="done", answers=f"talk-bot-{number}")
    assert done["text"].startswith("Flat: Flip the bag: done 20:01.")
    player.restart()
