"""Order: the messages of one chat in the order in which they were sent, chats side by side."""

import threading
from dataclasses import replace
from datetime import datetime

import pytest

from bot.channels.telegram.channel import Telegram
from bot.channels.telegram.intake import House
from bot.reply import Message
from tests.telegram.conftest import QUICK, behind_door, door, running
from tests.telegram.echo_house import HELD_AT_MOST, EchoHouse
from tests.telegram.loopback import BotApi


@pytest.mark.parametrize("way", ["polling", "webhook"])
async def test_a_chat_keeps_its_order(way: str, server: BotApi, house: EchoHouse) -> None:
    """Thirty messages of each of four people: each chat is taken and answered in order, none twice."""
    people = [server.person(name) for name in ("Ida", "Otto", "Mina", "Carl")]
    for number in range(30):
        for person in people:
            person.says(str(number))
    async with behind_door(way, server, house, QUICK):
        for person in people:
            sent = await server.reaches(person.chat, 30)
            assert [each.text for each in sent] == [str(number) for number in range(30)]
        assert len(house.received) == 120


@pytest.mark.parametrize("way", ["polling", "webhook"])
async def test_a_slow_chat_delays_nobody_else(way: str, server: BotApi, house: EchoHouse) -> None:
    """While a turn of one chat takes its time, what another chat says afterwards is answered."""
    async with behind_door(way, server, house):
        slow, quick = server.person("Ida"), server.person("Otto")
        go_on = house.held[str(slow.chat)] = threading.Event()
        slow.says("draw a picture")
        await server.until(lambda: str(slow.chat) in house.begun)
        quick.says("158")

        await server.reaches(quick.chat, 1)

        assert server.to(slow.chat) == []
        go_on.set()
        assert len(await server.reaches(slow.chat, 1)) == 1


async def test_turns_at_once_are_bounded(server: BotApi) -> None:
    """With forty chats speaking at once, no more turns run at a time than were allowed."""
    under_way, most, lock = 0, 0, threading.Lock()
    four = threading.Barrier(4)  # each waits until four are there, so that four there must be
    house = EchoHouse()

    def receive(message: Message, now: datetime) -> bool:
        nonlocal under_way, most
        with lock:
            under_way += 1
            most = max(most, under_way)
        four.wait(HELD_AT_MOST)
        with lock:
            under_way -= 1
        return house.receive(message, now)

    async def open_house() -> House:
        return House(receive, house.deliver)

    people = [server.person(f"P{number}") for number in range(40)]
    for person in people:
        person.says("hello")
    house.channel = door(server, replace(QUICK, turns_at_once=4))
    async with running(house.channel, house.channel.run_polling(open_house)):
        for person in people:
            await server.reaches(person.chat, 1)

    assert most == 4


async def test_the_house_opens_after_the_first_question(server: BotApi, house: EchoHouse) -> None:
    """The first question to the Bot API does not wait until the rest of the program is loaded."""
    asked_before_open: list[int] = []

    async def open_house() -> House:
        await server.until(lambda: server.count("getUpdates") > 0)
        asked_before_open.append(server.count("getUpdates"))
        return await house.open()

    ida = server.person("Ida")
    ida.says("158")
    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(open_house)):
        await server.reaches(ida.chat, 1)

    assert asked_before_open[0] >= 1


async def test_what_the_house_raises_at_its_opening_ends_the_run(server: BotApi) -> None:
    """A house that cannot open ends the program with its own error, not with silence."""

    async def open_house() -> House:
        raise OSError("the disk is gone")

    channel: Telegram = door(server)
    with pytest.raises(OSError, match="the disk is gone"):
        await channel.run_polling(open_house)
