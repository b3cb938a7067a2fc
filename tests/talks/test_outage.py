"""The bot was away when a step fell due: it asks once when it is back, and once more as much later."""

from datetime import timedelta
from pathlib import Path

from tests.talks.player import Player


async def test_a_step_and_its_second_asking_after_an_outage(tmp_path: Path) -> None:
    """The bot is back at eight, an hour late: what it asks again at ten otherwise, it asks again at eleven."""
    player = Player(tmp_path, start="2027-09-23T09:00")
    await player.play("3.2 kg brisket flat", "!6.25 %", "+1h done")
    due = player.house().next_due()
    assert due is not None
    back = due + timedelta(hours=1)

    assert await player.house().postman.round(back) == 2  # the brine, and the meat into it
    assert not any("Still open" in said["text"] for said in player.said)
    assert not await player.play("@2027-09-24T10:55")
    again = await player.play("@2027-09-24T11:00")
    assert [said["text"][:11] for said in again] == ["Still open:"] * 2
    player.restart()
