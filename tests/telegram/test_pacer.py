"""A storm of reminders goes out at the pace of the Bot API without one 429, and replies overtake it."""

import asyncio
import time
from datetime import UTC, datetime, timedelta

import pytest

from bot.channels.telegram.channel import Manners, Telegram
from bot.channels.telegram.pacer import Pacer
from bot.channels.telegram.traffic import Pace, Traffic
from bot.reply import Kind, Outgoing, Reply
from core.errors import NotDelivered
from tests.telegram.conftest import door
from tests.telegram.loopback import PATIENCE, BotApi
from tests.telegram.loopback_chats import Limits

NOW = datetime(2027, 3, 1, 8, tzinfo=UTC)
# everything five times as fast as in life, the API's limits and our pace alike
FAST = 5.0
LIMITS = Limits(overall=(30, 1 / FAST), chat=(4, 3 / FAST), group=(20, 60 / FAST))
PACE = Pace(
    second=1 / FAST,
    minute=61 / FAST,
    chat_gap=1.05 / FAST,
    group_gap=3.1 / FAST,
    chat_patience=0.2 / FAST,
    reminders_at_once=2,
)


class Clock:
    """A clock that is told the time."""

    def __init__(self) -> None:
        self.now = 1000.0

    def __call__(self) -> float:
        return self.now


def reminder(chat: int, number: int, kind: Kind = "reminder") -> Outgoing:
    return Outgoing(f"{chat}/{number}/{kind}", str(chat), NOW, Reply(f"{kind} {number}", kind=kind))


async def insist(channel: Telegram, outgoing: Outgoing) -> float:
    """Send as an outbox would: again after the wait that it is told. How long it took."""
    started = time.monotonic()
    while True:
        try:
            await channel.send(outgoing)
        except NotDelivered as trouble:
            await asyncio.sleep((trouble.after or timedelta(days=1)).total_seconds())
        else:
            return time.monotonic() - started


async def test_a_storm() -> None:
    """Hundreds of reminders to people and two groups at once: no 429, order kept, each once, replies in a blink."""
    async with BotApi(limits=LIMITS) as server:
        people = [server.person(f"P{number}").chat for number in range(60)]
        groups = [server.group("Harvest supper").id, server.group("Smoke day").id]
        channel = door(server, Manners(pace=PACE))

        async def storm_of(chat: int, count: int) -> None:
            for number in range(count):
                await insist(channel, reminder(chat, number))

        started = time.monotonic()
        storm = asyncio.gather(*(storm_of(chat, 4) for chat in people), *(storm_of(chat, 6) for chat in groups))
        replies: list[float] = []
        talker = server.person("Ida").chat
        while not storm.done():
            await asyncio.sleep(0.2)
            replies.append(await insist(channel, reminder(talker, len(replies), "reply")))
        await storm
        took = time.monotonic() - started
        await channel.close()

        assert server.chats.refused == 0
        for chat in people:
            assert [each.text for each in server.to(chat)] == [f"reminder {number}" for number in range(4)]
        for chat in groups:
            assert [each.text for each in server.to(chat)] == [f"reminder {number}" for number in range(6)]
        # 252 reminders at 125 a second take 2 s; what is put back now and then costs some of it
        assert took >= 2.0
        assert sorted(replies)[len(replies) // 2] < took / 10


async def test_without_a_pacer_the_same_server_refuses() -> None:
    """The limits of the loopback server do bite: the storm sent as fast as it goes gets 429s."""
    unpaced = Pace(reminders_a_second=10_000, chat_gap=0, group_gap=0, a_minute_to_a_group=10_000, reminders_at_once=16)
    async with BotApi(limits=LIMITS) as server:
        people = [server.person(f"P{number}").chat for number in range(60)]
        channel = door(server, Manners(pace=unpaced))

        sent = await asyncio.gather(
            *(channel.send(reminder(chat, number)) for chat in people for number in range(4)), return_exceptions=True
        )
        await channel.close()

        assert server.chats.refused > 0
        assert any(isinstance(each, NotDelivered) for each in sent)


def test_a_reply_minds_only_what_the_api_enforces() -> None:
    """After a reminder a second one to the same chat waits, a reply does not."""
    clock = Clock()
    traffic = Traffic(Pace(), clock)
    traffic.starts("7", urgent=False)

    assert traffic.wait("7", urgent=False) == pytest.approx(1.05)
    assert traffic.wait("7", urgent=True) == 0
    assert traffic.wait("8", urgent=False) == 0


def test_twenty_a_minute_to_a_group() -> None:
    """The twenty-first message to a group waits for the first to be a minute old, replies included."""
    clock = Clock()
    traffic = Traffic(Pace(), clock)
    for _ in range(20):
        traffic.starts("-7", urgent=True)
        clock.now += 1

    assert traffic.wait("-7", urgent=True) == pytest.approx(61 - 20)
    assert traffic.wait("7", urgent=True) == 0


def test_replies_slow_reminders_down() -> None:
    """What replies use of the overall rate is not there for reminders."""
    clock = Clock()
    traffic = Traffic(Pace(), clock)
    assert traffic.wait_for_reminder() == 0
    for number in range(25):
        traffic.starts(str(number), urgent=True)

    assert traffic.wait_for_reminder() == pytest.approx(1.0)


def test_reminders_are_spread_over_the_second() -> None:
    """After an idle while they do not go out in one clap."""
    clock = Clock()
    traffic = Traffic(Pace(), clock)
    sent = 0
    for _ in range(200):  # two seconds in steps of 10 ms
        while traffic.wait_for_reminder() == 0:
            traffic.starts(str(sent), urgent=False)
            sent += 1
        clock.now += 0.01

    assert 49 <= sent <= 52


def test_old_chats_are_forgotten() -> None:
    """A hundred thousand chats do not stay in the memory."""
    clock = Clock()
    traffic = Traffic(Pace(), clock)
    for number in range(30_000):
        traffic.starts(str(-number), urgent=True)
        clock.now += 0.05

    assert max(len(kept) for kept in vars(traffic).values() if isinstance(kept, dict)) <= 11_000


async def test_a_busy_chat_goes_back_to_the_outbox() -> None:
    """A reminder for a chat that has just got one is put back with its wait, so that others pass it."""
    pacer = Pacer(Pace(), Clock())
    async with pacer.turn("7", urgent=False):
        pass

    with pytest.raises(NotDelivered) as trouble:
        async with pacer.turn("7", urgent=False):
            pass

    assert trouble.value.after == timedelta(seconds=1.05)
    assert not trouble.value.uncertain


async def test_one_reminder_is_in_flight_at_a_time() -> None:
    """A crash can leave one reminder in doubt, not several; an urgent message is not held up by it."""
    pacer = Pacer(Pace())
    under_way, most, overtaken = 0, 0, asyncio.Event()

    async def send(chat: str) -> None:
        nonlocal under_way, most
        async with pacer.turn(chat, urgent=False):
            under_way += 1
            most = max(most, under_way)
            await overtaken.wait()
            under_way -= 1

    sends = [asyncio.create_task(send(str(number))) for number in range(4)]
    async with asyncio.timeout(PATIENCE):
        while not under_way:
            await asyncio.sleep(0)
        async with pacer.turn("9", urgent=True):
            overtaken.set()
        await asyncio.gather(*sends)

    assert most == 1


async def test_who_goes_away_leaves_no_gap() -> None:
    """A reminder that is cancelled while it waits, or as it is granted, blocks nobody behind it."""
    pacer = Pacer(Pace())

    async def hold(chat: str, seconds: float) -> None:
        async with pacer.turn(chat, urgent=False):
            await asyncio.sleep(seconds)

    first = asyncio.create_task(hold("1", 0.1))
    gone = [asyncio.create_task(hold(str(chat), 1)) for chat in range(2, 6)]
    await asyncio.sleep(0.05)
    for each in gone:
        each.cancel()
    await asyncio.wait([first, *gone])

    await asyncio.wait_for(hold("7", 0), PATIENCE)


async def test_patience_ends() -> None:
    """Who would wait longer than a lease should is sent back, and takes no turn later."""
    pacer = Pacer(Pace(patience=0.1))

    held, let_go = asyncio.Event(), asyncio.Event()

    async def hold() -> None:
        async with pacer.turn("1", urgent=False):
            held.set()
            await let_go.wait()

    holding = asyncio.create_task(hold())
    await held.wait()
    with pytest.raises(NotDelivered) as trouble:
        async with pacer.turn("2", urgent=False):
            pass
    let_go.set()
    await holding

    assert trouble.value.after is not None
    await asyncio.wait_for(_pass(pacer), PATIENCE)


async def _pass(pacer: Pacer) -> None:
    async with pacer.turn("3", urgent=False):
        pass
