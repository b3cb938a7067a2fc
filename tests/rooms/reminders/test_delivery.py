import asyncio
import random
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from sqlalchemy import text

from core.errors import NotDelivered, NotKept
from core.plan.reminders import Wanted
from core.plan.steps import Urgency
from core.reminders import delivery
from core.reminders.delivery import LONGEST, PATIENCE, SIDE_BY_SIDE, Postman
from core.store import batches, outbox
from core.store.database import BUSY_SECONDS, Database, open_database
from core.store.outbox import Row

NOW = datetime(2027, 3, 1, 8, tzinfo=UTC)
MINUTE = timedelta(minutes=1)
LEASE = timedelta(minutes=2)


@dataclass
class Street:
    """Where the postman goes: what was said arrives, unless `troubles` say otherwise for the next tries."""

    troubles: list[Exception | None] = field(default_factory=list)
    arrived: list[str] = field(default_factory=list)
    tried: list[str] = field(default_factory=list)
    held: dict[str, asyncio.Event] = field(default_factory=dict)
    in_flight: Counter[str] = field(default_factory=Counter)
    most: Counter[str] = field(default_factory=Counter)
    dumb: set[str] = field(default_factory=set)
    silent: set[str] = field(default_factory=set)

    def render(self, row: Row, now: datetime) -> str | None:
        name = str(row.body["text"]) if row.body else str(row.step)
        if name in self.dumb:
            raise KeyError(name)
        if name in self.silent:
            return None
        late = f" late {(now - row.due_at) // MINUTE}" if now > row.due_at else ""
        return f"{row.chat}: {name}{late}{' repeat' if row.repeat else ''}"

    async def send(self, rendered: str) -> str:
        sort = "reply" if "hello" in rendered else "reminder"
        self.tried.append(rendered)
        self.in_flight[sort] += 1
        self.most[sort] = max(self.most[sort], self.in_flight[sort])
        try:
            await asyncio.sleep(0)
            for name, event in self.held.items():
                if name in rendered:
                    await event.wait()
            trouble = self.troubles.pop(0) if self.troubles else None
            if trouble is not None:
                raise trouble
        finally:
            self.in_flight[sort] -= 1
        self.arrived.append(rendered)
        return str(len(self.arrived))


@pytest.fixture
def database() -> Iterator[Database]:
    opened = open_database("sqlite://")
    yield opened
    opened.close()


@pytest.fixture
def street() -> Street:
    return Street()


@pytest.fixture
def postman(database: Database, street: Street) -> Postman[str]:
    return Postman(database, street.render, street.send, "me", LEASE)


def reply(database: Database, words: str, chat: str = "garden", at: datetime = NOW) -> None:
    with database.transaction() as tx:
        outbox.put_reply(tx, chat, {"text": words}, at)


def remind(database: Database, chat: str = "garden", **steps: float) -> None:
    wanted = [Wanted(step, "flip", NOW + after * MINUTE, Urgency.QUIET) for step, after in steps.items()]
    with database.transaction() as tx:
        outbox.reconcile(tx, f"batch of {chat}", chat, wanted, NOW)


def state_of(database: Database, step: str) -> str:
    with database.reading() as tx:
        return str(tx.execute(text("SELECT state FROM outgoing WHERE step = :step"), {"step": step}).scalar_one())


async def test_a_round_sends_what_is_due_in_order(database: Database, postman: Postman[str], street: Street) -> None:
    """Replies first, then reminders by their due time; what is ahead waits; the count is what went out."""
    remind(database, b=2, a=1, tomorrow=1440)
    reply(database, "hello")
    reply(database, "hello again")
    assert await postman.round(NOW + 2 * MINUTE) == 4
    assert street.arrived == ["garden: hello late 2", "garden: hello again late 2", "garden: a late 1", "garden: b"]
    assert await postman.round(NOW + 2 * MINUTE) == 0
    assert await postman.next_due() == NOW + 1440 * MINUTE


async def test_what_was_sent_is_known_by_its_key(database: Database, postman: Postman[str], street: Street) -> None:
    """The channel's key is kept with the row and with the time it was told."""
    remind(database, a=1)
    await postman.round(NOW + 5 * MINUTE)
    with database.reading() as tx:
        row = outbox.find_by_channel_key(tx, "garden", "1")
        assert row is not None
        assert (row.step, row.sent_at) == ("a", NOW + 5 * MINUTE)


def asked_twice(database: Database) -> None:
    """A step that is asked for at once, and once more half an hour later."""
    wanted = [Wanted("chill", "chill", NOW + n * 30 * MINUTE, Urgency.PIERCING, n) for n in (0, 1)]
    with database.transaction() as tx:
        outbox.reconcile(tx, "batch", "garden", wanted, NOW)


async def test_a_repeat_counts_from_when_the_first_went_out(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """After an outage of 50 minutes the step is asked for once; the repeat comes half an hour after that."""
    asked_twice(database)
    assert await postman.round(NOW + 50 * MINUTE) == 1
    assert await postman.next_due() == NOW + 80 * MINUTE
    assert await postman.round(NOW + 79 * MINUTE) == 0
    assert await postman.round(NOW + 80 * MINUTE) == 1


async def test_who_only_waits_for_a_turn_is_no_failure(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """A chat that has just got a reminder waits a second for the next, however often: the wait does not double."""
    remind(database, a=0)
    for second in range(8):
        street.troubles = [NotDelivered(after=timedelta(seconds=1), paced=True)]
        await postman.round(NOW + timedelta(seconds=second))
        assert await postman.next_due() == NOW + timedelta(seconds=second + 1)


async def test_waiting_for_a_turn_makes_no_later_failure_longer(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """However often a reply had to wait: the first time that it really fails, it is tried again a second later."""
    reply(database, "hello")
    street.troubles = [NotDelivered(after=timedelta(seconds=1), paced=True)] * 9 + [NotDelivered(after=timedelta(0))]
    for second in range(10):
        await postman.round(NOW + timedelta(seconds=second))
    assert len(street.tried) == 10
    assert await postman.next_due() == NOW + timedelta(seconds=10)


async def test_a_repeat_that_is_in_time_stays_there(database: Database, postman: Postman[str], street: Street) -> None:
    """Sent when it is due, the first leaves its repeat where the plan has it."""
    asked_twice(database)
    assert await postman.round(NOW) == 1
    assert await postman.next_due() == NOW + 30 * MINUTE


async def test_a_repeat_waits_while_the_first_is_on_its_way(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """Another replica that looks while the first hangs in the channel does not take the repeat."""
    asked_twice(database)
    street.held["chill"] = asyncio.Event()
    round_ = asyncio.create_task(postman.round(NOW + 50 * MINUTE))
    while not street.in_flight["reminder"]:
        await asyncio.sleep(0.001)
    assert outbox.claim(database, NOW + 50 * MINUTE, LEASE, 10, "another") == []
    street.held["chill"].set()
    assert await round_ == 1


async def test_a_storm_is_sent_side_by_side(database: Database, postman: Postman[str], street: Street) -> None:
    """Twenty chats, three reminders each: so many in hand as there are lanes, never two of a chat, each once."""
    for chat in "abcdefghijklmnopqrst":
        remind(database, chat, **{f"step{i}": 0 for i in range(3)})
    street.held["step0"] = asyncio.Event()
    marked: list[str] = []
    postman.marked = marked.append
    storm = asyncio.create_task(postman.storm(lambda: NOW))
    async with asyncio.timeout(60):
        while street.in_flight["reminder"] < SIDE_BY_SIDE:
            await asyncio.sleep(0.001)
        street.held["step0"].set()
        await storm
    assert street.most["reminder"] == SIDE_BY_SIDE
    assert len(street.arrived) == len(set(street.arrived)) == len(set(marked)) == 60
    for chat in "abcdefghijklmnopqrst":
        assert [words for words in street.arrived if words[0] == chat] == [f"{chat}: step{i}" for i in range(3)]


async def test_a_storm_that_is_broken_off_leaves_claims(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """A program that ends in a storm has so many in doubt as it had in hand; each is repeated once and says so."""
    for chat in "abcdefghijklmnopqrst":
        remind(database, chat, flip=0)
    street.held["flip"] = asyncio.Event()
    storm = asyncio.create_task(postman.storm(lambda: NOW))
    while street.in_flight["reminder"] < SIDE_BY_SIDE:
        await asyncio.sleep(0.001)
    storm.cancel()
    with pytest.raises(asyncio.CancelledError):
        await storm
    assert not postman.busy
    street.held.clear()
    await Postman(database, street.render, street.send, "another", LEASE).round(NOW + LEASE)
    assert len(street.arrived) == 20
    assert sum(words.endswith("repeat") for words in street.arrived) == SIDE_BY_SIDE


async def test_a_reply_never_waits_for_a_reminder(database: Database, postman: Postman[str], street: Street) -> None:
    """While a reminder hangs in the channel, the replies of a turn go out."""
    remind(database, stuck=0)
    street.held["stuck"] = asyncio.Event()
    round_ = asyncio.create_task(postman.round(NOW))
    while not street.in_flight["reminder"]:
        await asyncio.sleep(0.001)
    reply(database, "hello")
    assert await postman.replies("garden", NOW) == 1
    assert street.arrived == ["garden: hello"]
    street.held["stuck"].set()
    assert await round_ == 1


async def test_a_night_of_sleep_repeats_nothing_that_is_in_flight(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """The machine sleeps while a message is in flight: its lease is over, but we know that we are still at it."""
    remind(database, stuck=0, later=60)
    street.held["stuck"] = asyncio.Event()
    round_ = asyncio.create_task(postman.one(NOW))
    while not street.in_flight["reminder"]:
        await asyncio.sleep(0.001)
    reply(database, "hello", at=NOW + 600 * MINUTE)
    assert postman.busy
    assert await postman.replies("garden", NOW + 600 * MINUTE) == 1
    assert await postman.next_due() is None  # the chat's next waits for the one in hand
    street.held["stuck"].set()
    assert await round_
    assert not postman.busy
    assert await postman.round(NOW + 600 * MINUTE) == 1
    assert street.arrived == ["garden: hello", "garden: stuck", "garden: later late 540"]


async def test_a_reply_in_flight_over_a_jump_of_the_clock_is_said_once(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """A round after the jump leaves the reply alone that is still on its way."""
    reply(database, "hello")
    street.held["hello"] = asyncio.Event()
    saying = asyncio.create_task(postman.replies("garden", NOW))
    while not street.in_flight["reply"]:
        await asyncio.sleep(0.001)
    assert await postman.round(NOW + 600 * MINUTE) == 0
    assert await postman.next_due() is None
    street.held["hello"].set()
    assert await saying == 1
    assert await postman.round(NOW + 600 * MINUTE) == 0
    assert street.arrived == ["garden: hello"]


async def test_replies_are_those_of_one_chat_in_order(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """The path after a turn sends this chat's replies, in the order in which they were put in, and no reminder."""
    for n in range(5):
        reply(database, f"hello {n}")
    reply(database, "hello", "shed")
    remind(database, flip=0)
    counts = await asyncio.gather(*(postman.replies("garden", NOW) for _ in range(3)))
    assert sum(counts) == 5
    assert street.arrived == [f"garden: hello {n}" for n in range(5)]
    assert street.most["reply"] == 1


async def test_what_must_wait_waits_and_is_no_repeat(database: Database, postman: Postman[str], street: Street) -> None:
    """The wait that the channel names is kept to the microsecond; other chats go on meanwhile."""
    remind(database, "garden", a=0)
    remind(database, "shed", b=0)
    street.troubles = [NotDelivered(timedelta(seconds=31))]
    assert await postman.round(NOW) == 1
    assert await postman.next_due() == NOW + timedelta(seconds=31)
    assert await postman.round(NOW + timedelta(seconds=31, microseconds=-1)) == 0
    assert await postman.round(NOW + timedelta(seconds=31)) == 1
    assert street.arrived == ["shed: b", "garden: a late 0"]


async def test_a_wait_of_nothing_is_no_busy_loop(database: Database, postman: Postman[str], street: Street) -> None:
    """A channel that says «at once» is asked once a round, and less and less often, five minutes at the longest."""
    remind(database, a=0)
    street.troubles = [NotDelivered(timedelta(0))] * 12
    waits = []
    at: datetime | None = NOW
    while street.troubles and at is not None:
        assert await postman.round(at) == 0
        due = await postman.next_due()
        assert due is not None
        waits.append(due - at)
        at = due
    assert waits[0] == timedelta(seconds=1)
    assert waits == sorted(waits)
    assert waits[1] == 2 * PATIENCE
    assert waits[-1] == LONGEST
    assert at is not None
    assert await postman.round(at) == 1


async def test_what_may_have_arrived_is_said_once_more(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """An unclear time-out is left to the lease, then repeated as a repeat; once that arrived, never again."""
    remind(database, a=0)
    street.troubles = [NotDelivered(None, uncertain=True)]
    assert await postman.round(NOW) == 0
    assert await postman.next_due() == NOW + LEASE
    assert await postman.round(NOW + LEASE) == 1
    assert street.arrived == ["garden: a late 2 repeat"]
    assert await postman.round(NOW + timedelta(days=9)) == 0


async def test_an_unclear_reply_is_repeated_soon(database: Database, postman: Postman[str], street: Street) -> None:
    """Somebody waits for a reply: it is repeated after seconds, not after a lease, and before what came later."""
    reply(database, "hello")
    reply(database, "hello again")
    street.troubles = [NotDelivered(None, uncertain=True)]
    assert await postman.replies("garden", NOW) == 0
    assert await postman.round(NOW + PATIENCE) == 2
    assert street.arrived == ["garden: hello late 0 repeat", "garden: hello again late 0"]


async def test_an_unclear_end_with_a_wait_keeps_the_wait(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """When the channel names a wait that is longer than the lease, the repeat comes after it."""
    remind(database, a=0)
    street.troubles = [NotDelivered(10 * MINUTE, uncertain=True)]
    await postman.round(NOW)
    assert await postman.next_due() == NOW + 10 * MINUTE
    assert await postman.round(NOW + 10 * MINUTE) == 1
    assert street.arrived == ["garden: a late 10 repeat"]


async def test_what_the_channel_refuses_is_given_up(
    database: Database, postman: Postman[str], street: Street, caplog: pytest.LogCaptureFixture
) -> None:
    """A refusal for good is never tried again, is told to the keeper without its words, and blocks nothing."""
    remind(database, a=0, b=1)
    street.troubles = [NotDelivered(None)]
    assert await postman.round(NOW + MINUTE) == 1
    assert (state_of(database, "a"), state_of(database, "b")) == ("dead", "sent")
    assert "was refused" in caplog.text


async def test_a_chat_that_is_gone_is_left_in_peace(database: Database, postman: Postman[str], street: Street) -> None:
    """Blocked by the person: one try, then nothing more to this chat, today or tomorrow; the batch is kept."""
    with database.transaction() as tx:
        batches.add(tx, "abc", "garden", "7", "flat", NOW)
    remind(database, "garden", a=0, b=0, tomorrow=1440)
    remind(database, "shed", c=0)
    street.troubles = [NotDelivered(None, chat_gone=True)]
    assert await postman.round(NOW) == 1
    assert await postman.round(NOW + 1440 * MINUTE) == 0
    assert street.tried == ["garden: a", "shed: c"]
    with database.reading() as tx:
        assert [row.id for row in batches.open_in(tx, "garden")] == ["abc"]


async def test_a_chat_that_moved_is_followed(database: Database, postman: Postman[str], street: Street) -> None:
    """A group that became another one gets the message there at once, and keeps its batches."""
    with database.transaction() as tx:
        batches.add(tx, "abc", "garden", "7", "flat", NOW)
    remind(database, a=0, tomorrow=1440)
    street.troubles = [NotDelivered(None, moved_to="big garden")]
    assert await postman.round(NOW) == 1
    assert await postman.round(NOW + 1440 * MINUTE) == 1
    assert street.arrived == ["big garden: a", "big garden: tomorrow"]
    with database.reading() as tx:
        assert [row.id for row in batches.open_in(tx, "big garden")] == ["abc"]


async def test_a_chat_that_moves_in_circles_is_not_followed_for_ever(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """A channel that sends us there and back is given time."""
    remind(database, a=0)
    street.troubles = [NotDelivered(None, moved_to=chat) for chat in ("there", "garden", "there")]
    assert await postman.round(NOW) == 0
    assert len(street.tried) == 2
    assert await postman.next_due() == NOW + 2 * PATIENCE


async def test_what_has_nothing_to_say_is_withdrawn(database: Database, postman: Postman[str], street: Street) -> None:
    """A reminder of a step that was done meanwhile is not sent."""
    remind(database, a=0, b=0)
    street.silent = {"a"}
    assert await postman.round(NOW) == 1
    assert street.tried == ["garden: b"]
    assert state_of(database, "a") == "withdrawn"


async def test_a_sentence_that_cannot_be_made_stops_nobody(
    database: Database, postman: Postman[str], street: Street, caplog: pytest.LogCaptureFixture
) -> None:
    """A bug in the words is logged, tried again a few times, then given up; the next reminder goes out at once."""
    remind(database, a=0, b=0)
    street.dumb = {"a"}
    assert await postman.round(NOW) == 1
    assert street.arrived == ["garden: b"]
    rounds = 0
    while (due := await postman.next_due()) is not None:
        await postman.round(due)
        rounds += 1
    assert rounds == 4
    assert state_of(database, "a") == "dead"
    assert "cannot be put in words" in caplog.text


async def test_ended_in_the_middle_of_sending_it_is_repeated_once(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """A program that ends between claim and mark leaves one claim; its lease turns it into one repeat, in its order."""
    remind(database, a=0, b=0)
    street.held["a"] = asyncio.Event()
    dying = asyncio.create_task(postman.round(NOW))
    while not street.in_flight["reminder"]:
        await asyncio.sleep(0.001)
    dying.cancel()
    with pytest.raises(asyncio.CancelledError):
        await dying
    street.held.clear()
    next_life = Postman(database, street.render, street.send, "another", LEASE)
    assert await next_life.round(NOW + MINUTE) == 0
    assert await next_life.round(NOW + LEASE) == 2
    assert street.arrived == ["garden: a late 2 repeat", "garden: b late 2"]


async def test_a_store_that_cannot_keep_is_told_to_the_caller(
    database: Database, postman: Postman[str], street: Street
) -> None:
    """Nothing is sent that could not be claimed."""
    remind(database, a=0)
    impatient = Database("sqlite://", busy_seconds=0.01)
    rung: list[int] = []
    busy = Postman(impatient, street.render, street.send, "me", LEASE)
    busy.bell = lambda: rung.append(1)
    with impatient.transaction():
        with pytest.raises(NotKept):
            await busy.round(NOW)
        with pytest.raises(NotKept):
            await busy.replies("garden", NOW)
    assert street.tried == []
    assert rung == [1]  # the clock asks again
    impatient.close()


async def test_a_mark_that_is_not_kept_is_tried_again(
    database: Database, postman: Postman[str], street: Street, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What arrived while the store was busy is said once: the mark waits for the store, and not for the lease."""
    marking, troubles = outbox.mark_sent, [NotKept("database is locked"), NotKept("database is locked")]

    def mark(*given: Any) -> bool:
        if troubles:
            raise troubles.pop()
        return marking(*given)

    monkeypatch.setattr(outbox, "mark_sent", mark)
    monkeypatch.setattr(delivery, "AGAIN_AFTER", (0.0, 0.0))
    reply(database, "hello")
    assert await postman.round(NOW) == 1
    assert await postman.round(NOW + LEASE) == 0
    assert street.arrived == ["garden: hello"]


async def test_a_mark_that_is_never_kept_is_told(
    database: Database, postman: Postman[str], street: Street, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It was tried well within the lease, after which another says it as a repeat."""

    def mark(*_: Any) -> bool:
        raise NotKept("disk I/O error")

    assert timedelta(seconds=sum(delivery.AGAIN_AFTER) + 6 * BUSY_SECONDS) < delivery.LEASE * 0.75
    monkeypatch.setattr(outbox, "mark_sent", mark)
    monkeypatch.setattr(delivery, "AGAIN_AFTER", (0.0, 0.0))
    reply(database, "hello")
    with pytest.raises(NotKept):
        await postman.round(NOW)
    monkeypatch.undo()
    await postman.round(NOW + LEASE)
    assert street.arrived == ["garden: hello", "garden: hello late 2 repeat"]


async def test_what_one_lane_of_a_storm_meets_breaks_off_no_other(
    database: Database, postman: Postman[str], street: Street, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A store that is busy for one claim leaves nothing in doubt that is on its way; the rest goes out later."""
    for chat in "abcdefghijklmnopqrst":
        remind(database, chat, flip=0)
    claim, claims = outbox.claim, 0

    def claiming(*given: Any) -> list[Row]:
        nonlocal claims
        claims += 1
        if claims == SIDE_BY_SIDE:
            raise NotKept("database is locked")
        return claim(*given)

    monkeypatch.setattr(outbox, "claim", claiming)
    with pytest.raises(NotKept):
        await postman.storm(lambda: NOW)
    await postman.storm(lambda: NOW)
    assert sorted(street.arrived) == [f"{chat}: flip" for chat in "abcdefghijklmnopqrst"]
    assert not postman.busy


@pytest.mark.parametrize("seed", range(6))
async def test_a_bad_week_loses_nothing(database: Database, street: Street, seed: int) -> None:
    """Whatever the channel does, everything arrives; nothing more often than it was unclear; replies in their order."""
    dice = random.Random(seed)
    unclear: Counter[str] = Counter()
    arrived: list[str] = []

    async def send(rendered: str) -> str:
        name = rendered.split(" late")[0].removesuffix(" repeat")
        luck = dice.random()
        if luck < 0.2:
            raise NotDelivered(timedelta(seconds=dice.randrange(0, 90)))
        if luck < 0.4:
            unclear[name] += 1
            if dice.random() < 0.5:
                arrived.append(name)
            raise NotDelivered(None, uncertain=True)
        if luck < 0.5:
            unclear[name] += 1
            if dice.random() < 0.5:
                arrived.append(name)
            raise asyncio.CancelledError
        arrived.append(name)
        return name

    for chat in ("garden", "shed"):
        for n in range(8):
            reply(database, f"hello {n}", chat, NOW + n * MINUTE)
        remind(database, chat, **{f"step{n}": n for n in range(8)})
    postman = Postman(database, street.render, send, "me", LEASE)
    while (due := await postman.next_due()) is not None:
        try:
            await postman.round(due)
        except asyncio.CancelledError:
            postman = Postman(database, street.render, send, "me", LEASE)
    times = Counter(arrived)
    assert len(times) == 32
    assert all(count <= 1 + unclear[name] for name, count in times.items())
    for chat in ("garden", "shed"):
        first = list(dict.fromkeys(name for name in arrived if name.startswith(f"{chat}: hello")))
        assert first == [f"{chat}: hello {n}" for n in range(8)]
