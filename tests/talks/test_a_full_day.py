"""How much a chat hears: several batches at one hour in one message, and six messages a day at most."""

from collections import Counter
from datetime import datetime
from pathlib import Path
from typing import Any

from tests.talks.player import Player

BEGUN = (
    "3.2 kg brisket flat for 2 october 13:00, 48 mm, cure is 6.25 %",
    "2.8 kg brisket point for 3 october 13:00, 45 mm",
    "2 kg pork belly, skin off, 40 mm, for 3 october 18:00",
)
IN_BRINE = ("made the brine", "brine 3 c", "meat is in")
IN_CURE = {"flat": IN_BRINE, "point": IN_BRINE, "bacon": ("weighed the cure", "meat is in")}  # the belly is cured dry


def reminders(said: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What came by itself."""
    return [one for one in said if one["kind"] == "reminder"]


async def begun(player: Player) -> None:
    """Three batches, all in their cure."""
    for line in BEGUN:
        await player.play(line)
    for name, lines in IN_CURE.items():
        for line in lines:
            await player.play(f"{name}: {line}")


async def test_what_stands_at_one_hour_is_one_message(tmp_path: Path) -> None:
    """Three bags to turn at eight: one message that names each, a tap for each, and «all flipped» answers it."""
    player = Player(tmp_path)
    await begun(player)
    said = reminders(await player.play("@2027-09-24T08:01"))
    assert len(said) == 1
    (one,) = said
    names = set(one["facts"]["batches"])
    assert len(names) > 1
    assert all(f"{name.capitalize()}: Flip the bag" in one["text"] for name in names)
    assert [label for label in one["buttons"] if label.endswith("Flip the bag: done")]
    assert one["text"].count("\n") == len(names)
    assert one["text"].count("And read the fridge") == 1
    tapped = await player.play(f"!{one['buttons'][0]}")
    assert "Flip the bag: done 08:01." in tapped[0]["text"]
    rest = await player.play("all flipped")
    assert not any("which" in each["text"].lower() for each in rest)
    player.restart()


async def test_six_messages_a_day(tmp_path: Path) -> None:
    """Three batches and nobody who answers: on no day before the fire more than six messages come by themselves."""
    player = Player(tmp_path)
    for line in BEGUN:
        await player.play(line)
    said = reminders(await player.play("@2027-09-30T06:00"))
    a_day = Counter(datetime.fromisoformat(one["at"]).date() for one in said)
    assert a_day
    assert max(a_day.values()) <= 6
    player.restart()


async def test_what_comes_after_the_fifth_waits_for_the_evening(tmp_path: Path) -> None:
    """On a day of many steps the rest is one message at eight in the evening, with all that it takes to do it."""
    player = Player(tmp_path, start="2027-09-23T07:30")
    for number in range(7):
        await player.play(f"{2 + number / 10:.1f} kg brisket flat for 2 october 13:00, 48 mm, cure is 6.25 %", "+20m")
    await player.play("@2027-09-23T21:00")
    today = [one for one in reminders(player.said) if one["at"].startswith("2027-09-23")]
    assert len(today) == 6
    assert today[-1]["at"][11:16] == "20:00"
    assert today[-1]["text"].count("g curing salt") >= 2
    steps = today[-1]["facts"]["steps"]
    assert today[-1]["text"].count("Flat 6: Make the brine") == 1
    assert steps.count("brine") <= 7
    player.restart()


async def test_a_reply_to_such_a_message_is_of_all(tmp_path: Path) -> None:
    """«flipped» in reply to a message that calls for several is said of each; it is no word about the first alone."""
    player = Player(tmp_path)
    await begun(player)
    await player.play("@2027-09-24T08:01")
    number = len(player.said)
    told = await player.send(text="flipped", answers=f"talk-bot-{number}")
    assert len(told) > 1
    assert len({one["facts"]["batch"] for one in told}) == len(told)
    assert all("Flip the bag: done 08:01." in one["text"] for one in told)
    player.restart()
