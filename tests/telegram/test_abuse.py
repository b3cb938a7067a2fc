"""Somebody means ill: floods, sends what is huge, forges and repeats. The others notice nothing; nothing is done."""

import pytest

from bot.channels.telegram.channel import Telegram
from tests.telegram.conftest import behind_door
from tests.telegram.echo_house import EchoHouse
from tests.telegram.loopback import BotApi

FLOOD = 50


@pytest.mark.parametrize("way", ["polling", "webhook"])
async def test_a_flood_from_one_chat(way: str, server: BotApi, house: EchoHouse) -> None:
    """50 messages of one chat at once: who speaks after them is answered long before they are; none is lost."""
    mallory, ida = server.person("Mallory"), server.person("Ida")
    async with behind_door(way, server, house):
        for number in range(FLOOD):
            mallory.says(f"flood {number}")
        ida.says("158")

        await server.reaches(ida.chat, 1)
        answered = len(server.to(mallory.chat))
        await server.reaches(mallory.chat, FLOOD)

    # a chat's answers go one by one; how far they got is a matter of the machine, that she did not wait is not
    assert answered < FLOOD / 2
    assert [each.text for each in server.to(mallory.chat)] == [f"flood {number}" for number in range(FLOOD)]


async def test_what_is_huge_is_not_fetched(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """A photo and a file of two gigabytes are known by their kind: nothing of them is ever downloaded."""
    ida = server.person("Ida")
    huge = {"file_id": "AgAD", "file_unique_id": "AQAD", "file_size": 2_000_000_000}
    ida.sends(photo=[huge | {"width": 100_000, "height": 100_000}])
    ida.sends(document=huge | {"file_name": "../../etc/passwd", "mime_type": "application/zip"})
    ida.sends(video=huge | {"width": 9999, "height": 9999, "duration": 2_000_000})

    await server.reaches(ida.chat, 3)

    assert {name for name, _, _ in server.calls} <= {"getMe", "getUpdates", "sendMessage", "setMyCommands"}
    assert all(not message.text and message.other for message in house.received)


async def test_a_tap_that_is_replayed_is_one(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """The very same update, brought again later, is taken once, whatever comes between."""
    ida = server.person("Ida")
    ida.says("158")
    await server.reaches(ida.chat, 1)
    ida.taps_payload("done", ida.last)
    await server.reaches(ida.chat, 2)
    tapped = house.received[-1]

    assert not house.receive(tapped, tapped.said_at)
    assert house.repeated == [tapped.key]


@pytest.mark.parametrize(
    "payload", ["", "x" * 5000, "\x00", "../../x", "'; DROP TABLE batches; --", "{0.__class__}", "🔥"]
)
async def test_a_payload_that_no_button_carries(
    payload: str, server: BotApi, polling: Telegram, house: EchoHouse
) -> None:
    """What somebody writes into a tap by hand goes in as it is, and the next who speaks is served."""
    ida = server.person("Ida")
    ida.says("158")
    await server.reaches(ida.chat, 1)
    ida.taps_payload(payload, ida.last)
    ida.says("still here")
    await server.until(lambda: any(each.text == "still here" for each in server.to(ida.chat)))
