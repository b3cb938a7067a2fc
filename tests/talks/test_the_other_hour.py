"""What was guessed is one tap away from what was meant: the other half of the day, the other side of a border."""

from pathlib import Path

from tests.talks.player import Player

FLAT = "3.2 kg brisket flat for 2 october 13:00, 48 mm, cure is 6.25 %"


async def test_a_deed_at_the_other_hour(tmp_path: Path) -> None:
    """«flipped at 8» said at ten past nine is taken as this morning; a tap makes it last night."""
    player = Player(tmp_path)
    for line in (FLAT, "made the brine", "brine 3 c", "meat is in", "@2027-09-25T09:10"):
        await player.play(line)
    done = (await player.play("flipped at 8"))[0]
    assert "Flip the bag: done 08:00." in done["text"]
    assert "No, yesterday 20:00" in done["buttons"]
    (mended,) = await player.play("!No, yesterday 20:00")
    assert "Corrected" in mended["text"]
    assert "yesterday 20:00" in mended["text"]
    later = (await player.play("remind me at 11"))[0]
    assert "No, 23:00" in later["buttons"]
    plain = (await player.play("flipped at 8 am"))[0]
    assert not [label for label in plain["buttons"] if label.startswith("No, ")]
    player.restart()


async def test_a_meal_at_the_other_hour(tmp_path: Path) -> None:
    """A meal at seven is in the evening, and one tap makes it breakfast; nobody is offered five in the morning."""
    player = Player(tmp_path)
    await player.play(FLAT)
    (moved,) = await player.play("dinner at 7")
    assert "No, Sat 2 Oct 07:00" in moved["buttons"]
    (mended,) = await player.play("!No, Sat 2 Oct 07:00")
    assert "meal Sat 2 Oct 07:00" in mended["text"]
    (five,) = await player.play("dinner at 5")
    assert not [label for label in five["buttons"] if label.startswith("No, ")]
    player.restart()


async def test_a_shared_location(tmp_path: Path) -> None:
    """The clock of the nearest place; where another clock is near, it is one tap away; the place is kept nowhere."""
    player = Player(tmp_path)
    (vienna,) = await player.send(text="48.2081,16.3713", other="location")
    assert "your clock is Europe/Vienna, where it is 18:00 now" in vienna["text"]
    (nashville,) = await player.send(text="36.1627,-86.7816", other="location")
    (tap,) = nashville["buttons"]
    (mended,) = await player.play(f"!{tap}")
    assert "where it is 11:00 now" in mended["text"]
    (nowhere,) = await player.send(text="95.0,400.0", other="location")
    assert "your clock" not in nowhere["text"]
    assert b"36.1627" not in (tmp_path / "talk.db").read_bytes()
    player.restart()
