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


async def test_what_comes_late_does_not_come_in_the_night(tmp_path: Path) -> None:
    """The bot is back at two in the morning: the flip of the evening waits, and is that of the morning by then."""
    player = Player(tmp_path)
    await player.play(
        "3.2 kg brisket flat for 2 october 13:00, 48 mm, cure 6.25 %", "made the brine, brine 3 c, meat is in"
    )
    house = player.house()
    night = player.now.replace(day=25, hour=0, minute=0)  # two in Vienna
    await house.postman.round(night)
    assert not any(said["kind"] == "reminder" and "Flip" in said["text"] for said in player.said)
    called = await player.play("@2027-09-25T08:01")
    assert sum("Flip the bag" in said["text"] for said in called) == 1
    player.restart()


async def test_what_is_about_safety_shouts_whenever_the_bot_is_back(tmp_path: Path) -> None:
    """The meat came off in the evening and the bot was away: back at half past one, it asks for the core at once."""
    player = Player(tmp_path)
    await player.play(
        "3.2 kg brisket flat for 2 october 13:00, 48 mm, cure 6.25 %", "made the brine, brine 3 c, meat is in"
    )
    await player.play("@2027-09-30T17:00 out of the cure", "rinsed", "@2027-10-01T06:00 lit it", "+1h meat is on")
    await player.play("@2027-10-01T19:00 core 95", "it is off", "+30m core 60, in the ice bath")
    house = player.house()
    night = player.now.replace(day=1, hour=23, minute=30)  # half past one in Vienna
    before = len(player.said)
    await house.postman.round(night)
    came = [said for said in player.said[before:] if said["kind"] == "alert"]
    assert any("due yesterday 20:45" in said["text"] and "26 °C" in said["text"] for said in came)
    player.restart()
