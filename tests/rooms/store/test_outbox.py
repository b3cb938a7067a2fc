import threading
from collections import Counter
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from sqlalchemy import text

from core.plan.reminders import Wanted
from core.plan.steps import Urgency
from core.store import outbox
from core.store.database import Database, open_database
from core.store.outbox import Row

MINUTE = timedelta(minutes=1)
LEASE = timedelta(minutes=2)
Reply = Callable[..., str]
Remind = Callable[..., None]


@pytest.fixture
def reply(database: Database, now: datetime) -> Reply:
    def put(words: str, chat: str = "garden", at: datetime = now) -> str:
        with database.transaction() as tx:
            return outbox.put_reply(tx, chat, {"text": words}, at, answering="update/1", batch="abc")

    return put


@pytest.fixture
def remind(database: Database, now: datetime) -> Remind:
    def put(chat: str = "garden", **steps: timedelta) -> None:
        wanted = [Wanted(step, "flip", now + after, Urgency.QUIET) for step, after in steps.items()]
        with database.transaction() as tx:
            outbox.reconcile(tx, f"batch of {chat}", chat, wanted, now)

    return put


@pytest.fixture
def claim(database: Database) -> Callable[..., list[Row]]:
    def take(at: datetime, limit: int = 10, owner: str = "me", **more: object) -> list[Row]:
        return outbox.claim(database, at, LEASE, limit, owner, **more)  # type: ignore[arg-type]

    return take


Claim = Callable[..., list[Row]]


def words(rows: list[Row]) -> list[object]:
    return [row.body["text"] if row.body else row.step for row in rows]


def test_a_claimed_row_says_all_that_is_kept_of_it(claim: Claim, reply: Reply, remind: Remind, now: datetime) -> None:
    """A row carries its body or its step, whom it answers, and the claim it is under."""
    reply("hello")
    remind(flip=timedelta(0))
    said, reminded = claim(now)
    assert (said.sort, said.body, said.answering, said.batch) == ("reply", {"text": "hello"}, "update/1", "abc")
    assert (reminded.sort, reminded.step, reminded.kind, reminded.urgency) == ("reminder", "flip", "flip", "quiet")
    assert (reminded.batch, reminded.due_at, reminded.made_at) == ("batch of garden", now, now)
    assert (said.state, said.owner, said.attempts, said.repeat) == ("sending", "me", 1, False)
    assert said.free_at == now + LEASE


def test_nothing_is_claimed_before_it_is_due(claim: Claim, remind: Remind, now: datetime) -> None:
    """To the microsecond."""
    remind(flip=MINUTE)
    assert claim(now + MINUTE - timedelta(microseconds=1)) == []
    assert words(claim(now + MINUTE)) == ["flip"]


def test_replies_come_first_then_what_was_due_first(claim: Claim, reply: Reply, remind: Remind, now: datetime) -> None:
    """The order of a claim: replies, then reminders by their due time, then as they were put in."""
    remind("cellar", c=MINUTE * 3)
    remind("garden", a=MINUTE, late=MINUTE * 9)
    remind("shed", b=MINUTE)
    reply("one", "shed", now + MINUTE * 4)
    reply("two", "garden", now + MINUTE * 5)
    assert words(claim(now + MINUTE * 5)) == ["one", "two", "a", "b", "c"]


def test_a_claim_may_be_for_one_sort_or_one_chat(claim: Claim, reply: Reply, remind: Remind, now: datetime) -> None:
    """The path right after a turn takes the replies of its chat, and nothing else."""
    reply("mine")
    reply("other", "shed")
    remind(flip=timedelta(0))
    assert words(claim(now, sorts=("reply",), chat="garden")) == ["mine"]
    assert words(claim(now, sorts=("reminder",))) == ["flip"]


def test_no_two_claims_get_the_same_row(database: Database, remind: Remind, now: datetime) -> None:
    """Eight threads claim 200 rows, seven at a time: each row is claimed once, each chat's in order, none is left."""
    for chat in range(20):
        remind(f"chat {chat}", **{f"step{i}": MINUTE for i in range(10)})
    got: Counter[str] = Counter()
    order: dict[str, list[int]] = {}

    def work(owner: str) -> None:
        while outbox.next_due(database) is not None:
            for row in outbox.claim(database, now + MINUTE, LEASE, 7, owner):
                got[row.id] += 1
                order.setdefault(row.chat, []).append(int(row.id))
                assert outbox.sent(database, row, now + MINUTE, row.id)

    threads = [threading.Thread(target=work, args=(f"owner {i}",)) for i in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(got) == 200
    assert set(got.values()) == {1}
    assert all(ids == sorted(ids) for ids in order.values())


def test_one_reminder_of_a_chat_is_in_hand(database: Database, claim: Claim, remind: Remind, now: datetime) -> None:
    """Whoever asks, in whichever process: the next of a chat is given out when the one before it is done with."""
    remind("garden", a=timedelta(0), b=MINUTE)
    remind("shed", c=MINUTE)
    (first, other) = claim(now + MINUTE)
    assert words([first, other]) == ["a", "c"]
    assert outbox.claim(database, now + MINUTE, LEASE, 9, "another") == []
    assert outbox.next_due(database) == now + MINUTE + LEASE
    outbox.sent(database, first, now + MINUTE, "1")
    assert words(outbox.claim(database, now + MINUTE, LEASE, 9, "another")) == ["b"]


def test_a_reminder_in_doubt_holds_nothing_up(database: Database, claim: Claim, remind: Remind, now: datetime) -> None:
    """It is in nobody's hand until it is repeated; the chat's next is not two minutes late for it."""
    remind(a=timedelta(0), b=timedelta(0))
    (row,) = claim(now)
    outbox.unsure(database, row, now + MINUTE)
    assert words(claim(now)) == ["b"]


def test_what_was_sent_is_done(database: Database, claim: Claim, remind: Remind, now: datetime) -> None:
    """A row marked sent is never claimed again, and is found by its key in the channel."""
    remind(flip=timedelta(0))
    (row,) = claim(now)
    assert outbox.sent(database, row, now + MINUTE, "17")
    assert claim(now + timedelta(days=9)) == []
    assert outbox.next_due(database) is None
    with database.reading() as tx:
        found = outbox.find_by_channel_key(tx, "garden", "17")
        assert found is not None
        assert (found.id, found.state, found.sent_at, found.batch) == (row.id, "sent", now + MINUTE, "batch of garden")
        assert outbox.find_by_channel_key(tx, "shed", "17") is None


def test_a_claim_that_was_not_finished_ends_with_its_lease(claim: Claim, remind: Remind, now: datetime) -> None:
    """Whoever died in between: the row is claimed once more when the lease ends, as a repeat."""
    remind(flip=timedelta(0))
    claim(now, owner="dead")
    assert claim(now + LEASE - timedelta(microseconds=1)) == []
    (row,) = claim(now + LEASE)
    assert (row.owner, row.attempts, row.repeat) == ("me", 2, True)


def test_who_lost_the_claim_changes_nothing(database: Database, claim: Claim, remind: Remind, now: datetime) -> None:
    """A frozen process that wakes after its lease cannot mark, move or drop what another holds, even by its name."""
    remind(flip=timedelta(0))
    (old,) = claim(now)
    (new,) = claim(now + LEASE)
    assert not outbox.sent(database, old, now, "1")
    assert not outbox.put_back(database, old, now)
    assert not outbox.unsure(database, old, now)
    assert not outbox.withdraw(database, old)
    assert not outbox.give_up(database, old, "why")
    assert outbox.sent(database, new, now, "2")


def test_a_row_put_back_waits_and_is_no_repeat(database: Database, claim: Claim, remind: Remind, now: datetime) -> None:
    """What certainly did not arrive is tried later under its first due time, without a word of repetition."""
    remind(flip=timedelta(0))
    (row,) = claim(now)
    assert outbox.put_back(database, row, now + MINUTE)
    assert outbox.next_due(database) == now + MINUTE
    assert claim(now + MINUTE - timedelta(microseconds=1)) == []
    (row,) = claim(now + MINUTE)
    assert (row.attempts, row.repeat, row.due_at) == (2, False, now)


def test_once_a_repeat_always_a_repeat(database: Database, claim: Claim, remind: Remind, now: datetime) -> None:
    """What may have arrived keeps that mark through a later try that certainly failed."""
    remind(flip=timedelta(0))
    (row,) = claim(now)
    assert outbox.unsure(database, row, now + MINUTE)
    (row,) = claim(now + MINUTE)
    assert row.repeat
    outbox.put_back(database, row, now + 2 * MINUTE)
    (row,) = claim(now + 2 * MINUTE)
    assert row.repeat


def test_a_later_reply_never_overtakes(database: Database, claim: Claim, reply: Reply, now: datetime) -> None:
    """While the first reply of a chat waits for its next try, the second waits too; other chats go on."""
    reply("first")
    reply("second")
    reply("elsewhere", "shed")
    first, elsewhere = claim(now)
    assert words([first, elsewhere]) == ["first", "elsewhere"]
    assert claim(now) == []
    outbox.put_back(database, first, now + MINUTE)
    reply("third")
    assert claim(now + MINUTE / 2) == []
    assert outbox.next_due(database) == now + MINUTE
    for expected in ("first", "second", "third"):
        (row,) = claim(now + MINUTE)
        assert words([row]) == [expected]
        outbox.sent(database, row, now + MINUTE, expected)


def test_a_reply_that_dies_lets_the_next_one_go(database: Database, claim: Claim, reply: Reply, now: datetime) -> None:
    """A reply that can never arrive holds nothing back, and is not tried again."""
    reply("first")
    reply("second")
    (row,) = claim(now)
    assert outbox.give_up(database, row, "refused")
    assert words(claim(now)) == ["second"]


def test_a_chat_that_must_wait_waits_whole(
    database: Database, claim: Claim, reply: Reply, remind: Remind, now: datetime
) -> None:
    """After a reply that was put off nothing of its chat is tried; after a reminder its reminders only."""
    remind("garden", a=timedelta(0), b=timedelta(0), tomorrow=MINUTE * 1440)
    remind("shed", c=timedelta(0))
    reply("hello")
    (row,) = claim(now, limit=1, sorts=("reminder",))
    outbox.put_back(database, row, now + MINUTE)
    said, other = claim(now)
    assert words([said, other]) == ["hello", "c"]
    outbox.sent(database, other, now, "c")
    outbox.put_back(database, said, now + 2 * MINUTE)
    assert claim(now + MINUTE) == []
    assert words(claim(now + 2 * MINUTE)) == ["hello"]
    assert words(claim(now + 2 * MINUTE)) == ["a"]
    assert outbox.next_due(database) == now + 4 * MINUTE


def test_a_row_put_back_alone_holds_nothing_up(database: Database, claim: Claim, remind: Remind, now: datetime) -> None:
    """One sentence that cannot be made does not silence its chat."""
    remind(a=timedelta(0), b=timedelta(0))
    (row,) = claim(now, limit=1)
    outbox.put_back(database, row, now + MINUTE, alone=True)
    assert words(claim(now)) == ["b"]


def test_next_due_is_when_a_claim_gets_something(
    database: Database, claim: Claim, reply: Reply, remind: Remind, now: datetime
) -> None:
    """The earliest of due times, waits and leases; a reply that is held back does not count."""
    assert outbox.next_due(database) is None
    remind(flip=3 * MINUTE)
    assert outbox.next_due(database) == now + 3 * MINUTE
    reply("first")
    reply("second")
    assert outbox.next_due(database) == now
    claim(now)
    assert outbox.next_due(database) == now + LEASE


def test_a_start_gives_back_every_claim(database: Database, claim: Claim, remind: Remind, now: datetime) -> None:
    """The only process need not wait for leases: at its start what was in flight is due again, as a repeat."""
    remind(flip=timedelta(0), rinse=MINUTE)
    claim(now)
    if not database.on_sqlite:  # replicas share a server: none of them is the only one
        assert outbox.give_back_all(database) == 0
        return
    assert outbox.give_back_all(database) == 1
    (row,) = claim(now)
    assert (row.step, row.repeat) == ("flip", True)


def test_a_second_process_takes_no_claim_from_the_first(tmp_path: Path, now: datetime) -> None:
    """Started while another works on the same file, a process leaves what is in flight there alone."""
    url = f"sqlite:///{tmp_path / 'cellar.db'}"
    first, second = open_database(url), open_database(url)
    assert outbox.give_back_all(first) == 0
    with first.transaction() as tx:
        outbox.put_reply(tx, "garden", {"text": "hello"}, now)
    (row,) = outbox.claim(first, now, LEASE, 1, "first")
    assert outbox.give_back_all(second) == 0
    assert outbox.sent(first, row, now, "1")
    first.close()
    second.close()


def test_a_chat_that_is_gone_gets_nothing_more(
    database: Database, claim: Claim, reply: Reply, remind: Remind, now: datetime
) -> None:
    """Whatever waited for it is dead, and says why; other chats keep theirs."""
    reply("hello")
    remind("garden", flip=timedelta(0))
    remind("shed", flip=timedelta(0))
    with database.transaction() as tx:
        assert outbox.chat_gone(tx, "garden") == 2
    assert [row.chat for row in claim(now)] == ["shed"]
    with database.reading() as tx:
        dead = tx.execute(text("SELECT why FROM outgoing WHERE state = 'dead'")).scalars().all()
    assert dead == ["chat gone", "chat gone"]


def test_a_chat_that_is_back_waits_for_what_is_ahead(
    database: Database, claim: Claim, reply: Reply, remind: Remind, now: datetime
) -> None:
    """Its reminders that are ahead wait again; what fell due meanwhile, what was said, and other dead rows do not."""
    reply("hello")
    remind(past=timedelta(0), ahead=2 * MINUTE)
    remind("shed", other=2 * MINUTE)
    with database.transaction() as tx:
        outbox.chat_gone(tx, "garden")
    with database.transaction() as tx:
        outbox.chat_gone(tx, "shed")
    with database.transaction() as tx:
        assert outbox.chat_back(tx, "garden", now + MINUTE) == 1
    assert claim(now + MINUTE) == []
    (row,) = claim(now + 2 * MINUTE)
    assert (row.chat, row.step, row.attempts, row.repeat) == ("garden", "ahead", 1, False)


def test_the_last_reminder_is_what_an_answer_means(
    database: Database, claim: Claim, reply: Reply, remind: Remind, now: datetime
) -> None:
    """«done» without more means the reminder that was sent last to this chat, not a reply and not one that waits."""
    with database.reading() as tx:
        assert outbox.last_reminder(tx, "garden") is None
    remind(a=timedelta(0), b=MINUTE, c=MINUTE * 5)
    for at in (now, now + MINUTE):
        (row,) = claim(at)
        outbox.sent(database, row, at, str(row.step))
    reply("hello")
    (said,) = claim(now + 2 * MINUTE)
    outbox.sent(database, said, now + 2 * MINUTE, "hello")
    with database.reading() as tx:
        last = outbox.last_reminder(tx, "garden")
        assert last is not None
        assert last.step == "b"
        assert outbox.last_reminder(tx, "shed") is None


def test_old_replies_are_forgotten_once_done(database: Database, claim: Claim, reply: Reply, now: datetime) -> None:
    """Only replies that were sent or given up, only old ones; what waits stays, however old."""
    reply("done")
    reply("stuck")
    reply("young", at=now + MINUTE)
    (row,) = claim(now)
    outbox.sent(database, row, now, "1")
    with database.transaction() as tx:
        assert outbox.prune(tx, now + MINUTE) == 1
    assert words(claim(now + MINUTE)) == ["stuck"]
