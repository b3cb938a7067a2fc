"""A storm of reminders goes out at the pace of the Bot API without one 429, and replies overtake it."""

import asyncio
import time
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from bot.channels.telegram import pacer as room
from bot.channels.telegram.channel import Manners, Telegram
from bot.channels.telegram.pacer import Pacer
from bot.channels.telegram.traffic import CATCH_UP, Pace, Traffic
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
    second=1.03 / FAST,
    minute=61 / FAST,
    chat_gap=1.05 / FAST,
    group_gap=3.1 / FAST,
    chat_patience=0.2 / FAST,
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
        # 252 reminders at 140 a second take 1.8 s; what is put back now and then costs some of it
        assert took >= 1.7
        assert sorted(replies)[len(replies) // 2] < took / 10


async def test_without_a_pacer_the_same_server_refuses() -> None:
    """The limits of the loopback server do bite, on a machine of any speed: the storm sent as it goes gets 429s."""
    unpaced = Pace(a_second=100_000, chat_gap=0, group_gap=0, a_minute_to_a_group=10_000)
    async with BotApi(limits=replace(LIMITS, overall=(30, 60.0))) as server:
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
    """What replies use of the overall rate is not there for reminders, nor for more replies."""
    clock = Clock()
    traffic = Traffic(Pace(), clock)
    assert traffic.wait_overall(urgent=False) == 0
    for number in range(29):
        traffic.starts(str(number), urgent=True)

    assert traffic.wait_overall(urgent=False) == pytest.approx(1.03)
    assert traffic.wait_overall(urgent=True) == pytest.approx(1.03)


def test_reminders_are_spread_over_the_second() -> None:
    """After an idle while they do not go out in one clap."""
    clock = Clock()
    traffic = Traffic(Pace(), clock)
    sent = 0
    for _ in range(200):  # two seconds in steps of 10 ms
        clap = 0
        while traffic.wait_overall(urgent=False) == 0:
            traffic.starts(str(sent), urgent=False)
            sent, clap = sent + 1, clap + 1
        assert clap <= CATCH_UP + 1
        clock.now += 0.01

    assert 55 <= sent <= 61


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


SLOW = Pace(second=29 * 60.0)  # a beat of a minute: what goes on within the test was let go by a mark


async def test_one_message_is_in_doubt_at_a_time() -> None:
    """Where the API answers within a beat, a message leaves when the one before it is marked: a crash repeats one."""
    pacer = Pacer(SLOW)
    under_way, most = 0, 0

    async def send(name: str) -> None:
        nonlocal under_way, most
        async with pacer.turn(name, urgent=True, of=name):
            under_way += 1
            most = max(most, under_way)
            await asyncio.sleep(0.005)
        await asyncio.sleep(0.005)  # the store takes its time
        under_way -= 1
        pacer.marked(name)

    async with asyncio.timeout(PATIENCE):
        await asyncio.gather(*(send(str(number)) for number in range(12)))

    assert most == 1


async def test_what_arrived_is_waited_for_until_it_is_marked(monkeypatch: pytest.MonkeyPatch) -> None:
    """However many beats a busy store takes, no second message comes to be in doubt; a store that is stuck is left."""
    pacer = Pacer(Pace(a_second=1000, second=1.0))
    left: list[str] = []

    async def send(name: str) -> None:
        async with pacer.turn(name, urgent=True, of=name):
            left.append(name)

    async with asyncio.timeout(PATIENCE):
        await send("1")
        second = asyncio.create_task(send("2"))
        await asyncio.sleep(50 * pacer.pace.beat)
        assert left == ["1"]
        pacer.marked("1")
        await second
        monkeypatch.setattr(room, "MARK_SECONDS", 0.0)
        pacer.marked("2")
        await send("3")
        await send("4")  # and nobody has marked the third
    assert left == ["1", "2", "3", "4"]


async def test_a_failed_message_lets_the_next_go_at_once() -> None:
    """What did not leave is not waited for; the parts of one message do not wait for one another."""
    pacer = Pacer(SLOW)
    async with asyncio.timeout(PATIENCE):
        with pytest.raises(NotDelivered):
            async with pacer.turn("1", urgent=True, of="1"):
                raise NotDelivered(after=None)
        async with pacer.turn("2", urgent=True, of="2"):
            pass
        async with pacer.turn("2", urgent=True, of="2"):
            pass


async def test_where_few_wait_one_is_on_its_way_however_long_it_takes() -> None:
    """As many talk as never make a crowd, and the API takes twenty beats: a second message is never in doubt."""
    pacer = Pacer(Pace(a_second=1000, second=1.0))
    on_their_way, most = 0, 0

    async def send(name: str) -> None:
        nonlocal on_their_way, most
        for number in range(3):
            async with pacer.turn(name, urgent=True, of=f"{name}/{number}"):
                on_their_way += 1
                most = max(most, on_their_way)
                await asyncio.sleep(20 * pacer.pace.beat)
            on_their_way -= 1
            pacer.marked(f"{name}/{number}")

    async with asyncio.timeout(PATIENCE):
        await asyncio.gather(*(send(str(number)) for number in range(room.FEW)))

    assert most == 1


async def test_one_that_hangs_alone_is_waited_for_no_longer_than_a_breath(monkeypatch: pytest.MonkeyPatch) -> None:
    """A reply goes by a send that hangs, though nobody else waits."""
    monkeypatch.setattr(room, "HANG_SECONDS", 0.01)
    pacer, hanging = Pacer(SLOW), asyncio.Event()

    async def hang() -> None:
        async with pacer.turn("1", urgent=True, of="1"):
            await hanging.wait()

    stuck = asyncio.create_task(hang())
    await asyncio.sleep(0)
    async with asyncio.timeout(PATIENCE):
        async with pacer.turn("2", urgent=True, of="2"):
            pass
        hanging.set()
        await stuck


async def test_in_a_crowd_a_message_that_hangs_is_waited_for_a_beat_at_most() -> None:
    """Nobody stands behind a send that hangs; and where the API is slow, the pace is kept side by side."""
    pacer = Pacer(Pace())
    hanging = asyncio.Event()

    async def hang(name: str) -> None:
        async with pacer.turn(name, urgent=True, of=name):
            await hanging.wait()

    stuck = [asyncio.create_task(hang(str(number))) for number in range(5)]
    await asyncio.sleep(0)  # they stand before it in the line
    async with asyncio.timeout(PATIENCE):
        async with pacer.turn("9", urgent=True):
            pass
        hanging.set()
        await asyncio.gather(*stuck)


async def test_a_reminder_does_not_yield_for_ever() -> None:
    """However many write to the bot, what must be said to others is said after a second."""
    pacer = Pacer(replace(PACE, yields_for=0.2 / FAST))
    order: list[str] = []

    async def talk(name: str) -> None:
        for _ in range(30):
            async with pacer.turn(name, urgent=True):
                order.append(name)

    talkers = [asyncio.create_task(talk(str(number))) for number in range(4)]
    await asyncio.sleep(0.05 / FAST)
    async with asyncio.timeout(PATIENCE):
        async with pacer.turn("garden", urgent=False):
            order.append("garden")
        await asyncio.gather(*talkers)

    assert order.index("garden") < 60


def test_the_pace_is_shared() -> None:
    """Three processes of one account have a third of its pace each, and the whole of it when they are alone again."""
    pacer = Pacer(Pace())
    pacer.shared_by(3)
    assert (pacer.pace.a_second, pacer.pace.a_minute_to_a_group) == (9, 6)
    pacer.shared_by(100)
    assert (pacer.pace.a_second, pacer.pace.a_minute_to_a_group) == (1, 1)
    pacer.shared_by(1)
    assert pacer.pace == Pace()


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
    pacer = Pacer(Pace(patience=0.1, sends_at_once=1))

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


async def test_fire_lets_no_other_reminder_pass() -> None:
    """What breaks the quiet hours leaves first, however late it came; then replies, then the rest."""
    pacer = Pacer(Pace(sends_at_once=1, second=0.29))
    order: list[str] = []
    busy = asyncio.Event()

    async def send(name: str, *, urgent: bool = False, piercing: bool = False) -> None:
        async with pacer.turn(name, urgent=urgent, piercing=piercing):
            order.append(name)
            await busy.wait()

    async with asyncio.timeout(PATIENCE), asyncio.TaskGroup() as group:
        group.create_task(send("on its way", urgent=True))
        await asyncio.sleep(0.02)
        for name in ("flip a", "flip b"):
            group.create_task(send(name))
        group.create_task(send("reply", urgent=True))
        group.create_task(send("fire", piercing=True))
        await asyncio.sleep(0.02)
        busy.set()

    assert order == ["on its way", "fire", "reply", "flip a", "flip b"]
