"""An update is confirmed only when its turn is kept: nothing is lost, and nothing is done twice."""

import asyncio
import threading
from datetime import datetime

import pytest

from bot.channels.telegram import channel as channel_room
from bot.channels.telegram.channel import Telegram
from bot.channels.telegram.intake import House
from bot.channels.telegram.polling import Poller
from bot.reply import Message
from core.errors import NotKept
from tests.telegram.conftest import behind_door, door, running
from tests.telegram.echo_house import EchoHouse
from tests.telegram.loopback import BotApi


async def test_unconfirmed_while_the_turn_runs(server: BotApi, house: EchoHouse) -> None:
    """While a turn runs, the Bot API still holds its update; after the commit it does not."""
    held: list[bool] = []
    ida = server.person("Ida")

    def receive(message: Message, now: datetime) -> bool:
        held.append(any(f"tg:{each['update_id']}" == message.key for each in server.pending))
        return house.receive(message, now)

    async def open_house() -> House:
        return House(receive, house.deliver)

    for number in range(5):
        ida.says(str(number))
    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(open_house)):
        await server.reaches(ida.chat, 5)
        await server.until(lambda: not server.pending)

    assert held == [True] * 5


async def test_a_crash_between_commit_and_confirmation(
    server: BotApi, house: EchoHouse, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The process dies after the commit: the update comes again, the house knows it, nothing is said twice."""
    monkeypatch.setattr(channel_room, "DRAIN_SECONDS", 0.05)
    committed, never = asyncio.Event(), asyncio.Event()
    loop = asyncio.get_running_loop()
    ida = server.person("Ida")

    def dies(message: Message, now: datetime) -> bool:
        house.receive(message, now)
        loop.call_soon_threadsafe(committed.set)
        return asyncio.run_coroutine_threadsafe(never.wait(), loop).result()

    async def doomed() -> House:
        return House(dies, house.deliver)

    ida.says("158")
    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(doomed)):
        await committed.wait()
    assert (len(server.pending), server.to(ida.chat)) == (1, [])

    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(house.open)):
        await server.until(lambda: not server.pending)
        sent = await server.reaches(ida.chat, 1)
    never.set()

    assert [each.text for each in sent] == ["158"]
    assert (len(house.received), house.repeated) == (1, [house.received[0].key])


@pytest.mark.parametrize("way", ["polling", "webhook"])
async def test_what_was_not_kept_comes_again_in_order(way: str, server: BotApi, house: EchoHouse) -> None:
    """A store that is full for a moment loses nothing, changes no order, says nothing twice; other chats go on."""
    ida, otto = server.person("Ida"), server.person("Otto")
    house.broken = [NotKept("disk full"), NotKept("disk full")]
    for number in range(4):
        ida.says(str(number))
    async with behind_door(way, server, house):
        otto.says("158")

        sent = await server.reaches(ida.chat, 4)
        await server.reaches(otto.chat, 1)
        await server.until(lambda: not server.pending)

        assert [each.text for each in sent] == ["0", "1", "2", "3"]
        assert len({each.key for each in house.received}) == len(house.received) == 5


async def test_a_store_that_stays_broken_is_not_hammered(server: BotApi, house: EchoHouse) -> None:
    """While nothing can be kept, the Bot API is asked less and less often, and nothing is confirmed."""
    house.broken = [NotKept("disk full") for _ in range(1000)]
    server.person("Ida").says("158")
    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(house.open)):
        await server.until(lambda: server.count("getUpdates") >= 6)
    asked = [at for method, _, at in server.calls if method == "getUpdates"]

    assert asked[5] - asked[0] > 1.0  # the breaths between: 0.1, 0.2, 0.4 and 0.8 s at least
    assert len(server.pending) == 1


@pytest.mark.parametrize("way", ["polling", "webhook"])
async def test_a_turn_that_always_breaks_is_passed_over(
    way: str, server: BotApi, house: EchoHouse, caplog: pytest.LogCaptureFixture
) -> None:
    """A fault of ours is tried three times, logged without what was said, and then lets the chat go on."""
    house.broken = [ValueError("could not read 'my secret'") for _ in range(3)]
    ida = server.person("Ida")
    ida.says("my secret")
    ida.says("158")
    async with behind_door(way, server, house):
        sent = await server.reaches(ida.chat, 1)
        await server.until(lambda: not server.pending)

        assert [each.text for each in sent] == ["158"]
        assert "ValueError at" in caplog.text
        assert "secret" not in caplog.text


async def test_a_fault_after_the_commit_says_nothing_twice(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """The second try of a turn that was committed and then broke is known, and its reply goes out once."""
    house.after_commit = [RuntimeError("after the commit")]
    ida = server.person("Ida")
    ida.says("158")

    await server.reaches(ida.chat, 1)
    await server.until(lambda: not server.pending)

    assert (len(house.received), len(house.repeated), len(server.to(ida.chat))) == (1, 1, 1)


async def test_stopping_finishes_and_confirms(server: BotApi, house: EchoHouse) -> None:
    """A stop while a turn runs waits for it, sends its reply and confirms it."""
    ida = server.person("Ida")
    go_on = house.held[str(ida.chat)] = threading.Event()
    ida.says("158")
    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(house.open)):
        await server.until(lambda: bool(house.begun))
        asyncio.get_running_loop().call_later(0.1, go_on.set)

    assert [each.text for each in server.to(ida.chat)] == ["158"]
    assert not server.pending


async def test_nothing_that_waits_is_dropped_at_the_start(server: BotApi, house: EchoHouse) -> None:
    """Readings sent while the bot was away are taken when it comes back, whatever way it used before."""
    ida = server.person("Ida")
    await server.webhook.start("http://127.0.0.1:9/gone", "")
    ida.says("158")
    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(house.open)):
        sent = await server.reaches(ida.chat, 1)

    assert [each.text for each in sent] == ["158"]
    assert ("drop_pending_updates", "true") not in {item for _, given, _ in server.calls for item in given.items()}


async def test_the_end_comes_with_a_turn_that_ends(server: BotApi) -> None:
    """A program that is stopped at the very moment at which a turn ends does end, and asks for no more updates."""
    channel = door(server)
    poller = Poller(channel._wire, channel._intake().take, 5)
    poller.ledger.begins(1)
    breathing = asyncio.create_task(poller._breathe(60.0))
    while not poller.ledger.moved._waiters:
        await asyncio.sleep(0)
    poller.ledger.moved.set()
    await asyncio.sleep(0)
    breathing.cancel()
    with pytest.raises(asyncio.CancelledError):
        await breathing
    await channel.close()
