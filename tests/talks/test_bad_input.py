"""Whatever is typed, tapped or sent gets one clear sentence, and nothing is lost."""

from dataclasses import replace
from datetime import timedelta

import pytest

from bot.reply import Message
from core.store import batches
from tests.talks.player import Player

BEGUN = ("3.2 kg brisket flat for 2 october 13:00", "!6.25 %")


def kept(player: Player) -> int:
    """How many batches are under way."""
    with player.house().house.reading() as tx:
        return len(batches.open_in(tx, "you"))


@pytest.mark.parametrize(
    ("said", "answer"),
    [
        ("0 kg brisket flat", "not a weight"),
        ("900 kg brisket flat", "not a weight"),
        ("-3 kg brisket flat", "not a weight"),
        ("7.5 brisket flat", "kilograms or pounds"),
        ("two kilos of moon", "I do not know «moon»"),
        ("3 kg brisket flat for yesterday 13:00", "has gone by"),
        ("x" * 5000, "Say it in one short line"),
        ("🔥🥩", "Type it in words"),
        ("{0} %s %(a)s", "Start with"),
        ("'; drop table batches;--", "Start with"),
    ],
)
async def test_one_clear_sentence(player: Player, said: str, answer: str) -> None:
    """A weight, a date, a meat or a text that cannot be: one reply that says what to type, and no batch."""
    heard = await player.play(f"\\{said}")

    assert len(heard) == 1
    assert answer in heard[0]["text"]
    assert kept(player) == 0


async def test_what_was_said_with_a_broken_weight_is_kept(player: Player) -> None:
    """The date of «900 kg brisket flat for 2 october» stands while the weight is asked for again."""
    await player.play("900 kg brisket flat for 2 october 13:00", "3.2 kg")
    heard = await player.play("!6.25 %")

    assert "meal Sat 2 Oct 13:00" in heard[0]["text"]


async def test_a_date_too_soon_offers_ways_that_work(player: Player) -> None:
    """Each way that is offered for tomorrow's supper gives a plan, or the day that it says."""
    heard = await player.play("3.2 kg brisket flat for saturday 13:00 brine", "!6.25 %")
    offered = [label for label in heard[-1]["buttons"] if "meal" in label.lower()]
    assert "too soon" in heard[-1]["text"]
    assert offered

    pressed = await player.play(f"!{offered[-1]}")
    assert pressed[0]["facts"]["plan"]


@pytest.mark.parametrize("other", ["sticker", "voice", "photo"])
async def test_what_cannot_be_read(player: Player, other: str) -> None:
    """A sticker, a voice message, a photo nobody asked for."""
    await player.play("hello")
    message = Message("m1", "you", "you", "", player.now, other=other, ref="m1")
    player.house().receive(message, player.now)
    heard = await player.play("+1m hello")

    assert "Type it in words" in heard[0]["text"]


async def test_a_button_of_a_batch_that_is_gone(player: Player) -> None:
    """A tap on a plan that was dropped changes nothing and says so."""
    await player.play(*BEGUN, "cancel", "!Drop it")
    heard = await player.play("!Why these days")

    assert "over" in heard[0]["text"] or "gone" in heard[0]["text"]


async def test_a_message_that_comes_twice_counts_once(player: Player) -> None:
    """The same delivery of a reading adds nothing the second time."""
    await player.play(*BEGUN)
    message = Message("m7", "you", "you", "", player.now, text="fridge 3 c", ref="m7")
    house = player.house()

    assert house.receive(message, player.now)
    assert not house.receive(replace(message), player.now + timedelta(minutes=1))


async def test_a_reading_of_900(player: Player) -> None:
    """It is asked about, not kept."""
    await player.play(*BEGUN, "+1d", "@2027-10-01T07:20 meat is on", "+1h")
    heard = await player.play("core 900 f")

    assert heard[0]["facts"]["asked"] == "doubt"
    assert "core_c" not in heard[0]["facts"]


async def test_two_people_at_once(player: Player) -> None:
    """The first «done» counts for both, and the second is told so."""
    await player.play(*BEGUN)
    await player.play("+1h as Marta: done")
    heard = await player.play("as Bo: the brine is done")

    assert "noted already" in heard[0]["text"] or "Next" in heard[0]["text"]
