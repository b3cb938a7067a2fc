"""What goes first: the urgent before all, and what a try that failed holds back."""

import re
from datetime import datetime, timedelta

import pytest
from sqlalchemy import event, insert, select

from core.plan.reminders import Wanted
from core.plan.steps import Urgency
from core.store import batches, outbox
from core.store.database import Database
from core.store.tables import outgoing

SECOND, MINUTE, LEASE = timedelta(seconds=1), timedelta(minutes=1), timedelta(minutes=2)
FLIPS = 10_000


def remind(database: Database, chat: str, *wanted: Wanted) -> None:
    with database.transaction() as tx:
        outbox.reconcile(tx, f"batch of {chat}", chat, wanted, wanted[0].due_at)


def flips(database: Database, now: datetime, chats: int) -> None:
    """Flips that are due for ten minutes already, a storm of them."""
    common = {"sort": "reminder", "kind": "flip", "urgency": "quiet", "made_at": now, "due_at": now, "free_at": now}
    many = [
        common | {"state": "waiting", "batch": f"b{n}", "chat": f"chat {n % chats}", "step": f"flip/{n}"}
        for n in range(FLIPS)
    ]
    with database.transaction() as tx:
        tx.execute(insert(outgoing), many)


def test_fire_overtakes_ten_thousand_flips(database: Database, now: datetime) -> None:
    """A fire that is due for a second goes out in the first batch of a storm, the very first of it."""
    flips(database, now, chats=2500)
    at = now + 10 * MINUTE
    remind(database, "allotment", Wanted("light", "light", at - SECOND, Urgency.PIERCING))
    first, *others = outbox.claim(database, at, LEASE, 8, "me")
    assert (first.step, first.chat) == ("light", "allotment")
    assert {row.kind for row in others} == {"flip"}
    assert len(others) == 7


def test_fire_overtakes_the_flips_of_its_own_chat(database: Database, now: datetime) -> None:
    """It waits neither for those that are due before it, nor for one in hand, nor for one that is to be tried again."""
    flip, later = Wanted("flip/a", "flip", now, Urgency.QUIET), Wanted("flip/b", "flip", now, Urgency.QUIET)
    fire = Wanted("light", "light", now + MINUTE, Urgency.PIERCING)
    chill = Wanted("chill", "chill", now + 2 * MINUTE, Urgency.PIERCING)
    remind(database, "garden", flip, later, fire, chill)
    (in_hand,) = outbox.claim(database, now, LEASE, 1, "another")
    assert in_hand.step == "flip/a"
    (row,) = outbox.claim(database, now + MINUTE, LEASE, 8, "me")
    assert row.step == "light"
    assert outbox.put_back(database, in_hand, now + 9 * MINUTE)
    assert outbox.sent(database, row, now + MINUTE, "1")
    assert [row.step for row in outbox.claim(database, now + 2 * MINUTE, LEASE, 8, "me")] == ["chill"]


def test_lanes_in_their_order(database: Database, now: datetime) -> None:
    """Whatever was due first: fire, then replies, then what is not repeated lightly, then flips; a row that is called
    nothing is quiet, and in no lane twice."""
    for chat, urgency, ago in (("a", Urgency.QUIET, 3), ("b", Urgency.NORMAL, 2), ("c", Urgency.PIERCING, 1)):
        remind(database, chat, Wanted("step", "step", now - ago * MINUTE, urgency))
    with database.transaction() as tx:
        outbox.put_reply(tx, "d", {"text": "hello"}, now)
        nameless = {"chat": "e", "sort": "reminder", "made_at": now, "due_at": now, "free_at": now, "state": "waiting"}
        tx.execute(insert(outgoing), nameless)
    assert [row.chat for row in outbox.claim(database, now, LEASE, 9, "me")] == ["c", "d", "b", "a", "e"]
    assert outbox.next_due(database) == now + LEASE


def test_a_row_put_back_touches_no_other(database: Database, now: datetime) -> None:
    """However much waits for the chat, due or not: one row is written, and the others wait for it all the same."""
    flips(database, now, chats=1)
    (row,) = outbox.claim(database, now, LEASE, 1, "me")
    with database.reading() as tx:
        before = {one.id: one for one in tx.execute(select(outgoing))}
    assert outbox.put_back(database, row, now + MINUTE)
    with database.reading() as tx:
        changed = [one.id for one in tx.execute(select(outgoing)) if one != before[one.id]]
    assert changed == [int(row.id)]
    assert outbox.claim(database, now + MINUTE - SECOND, LEASE, 8, "me") == []
    assert outbox.next_due(database) == now + MINUTE
    (again,) = outbox.claim(database, now + MINUTE, LEASE, 8, "me")
    assert (again.id, again.why) == (row.id, None)
    assert outbox.sent(database, again, now + MINUTE, "1")
    assert len(outbox.claim(database, now + MINUTE, LEASE, 8, "me")) == 1


def test_what_will_not_be_tried_again_is_waited_for_no_longer(database: Database, now: datetime) -> None:
    """A plan that takes the failed reminder back, or moves it to another day, lets the chat's others go."""
    failed, other = Wanted("flip/a", "flip", now, Urgency.QUIET), Wanted("flip/b", "flip", now, Urgency.QUIET)
    for moved in ((), (Wanted("flip/a", "flip", now + 600 * MINUTE, Urgency.QUIET),)):
        remind(database, "garden", failed, other)
        (row,) = outbox.claim(database, now, LEASE, 1, "me")
        outbox.put_back(database, row, now + 60 * MINUTE)
        assert outbox.claim(database, now, LEASE, 1, "me") == []
        remind(database, "garden", other, *moved)
        (row,) = outbox.claim(database, now, LEASE, 1, "me")
        assert row.step == "flip/b"
        outbox.put_back(database, row, now)


def test_the_planner_finds_what_is_due_by_index(database: Database, now: datetime) -> None:
    """Claims and the next due time read partial indexes, so that a million waiting rows cost nothing."""
    if not database.on_sqlite:
        pytest.skip("asks SQLite's planner")
    told: list[tuple[str, object]] = []
    event.listen(database.engine, "before_cursor_execute", lambda *of: told.append((of[2], of[3])))
    outbox.claim(database, now, LEASE, 1, "me")
    outbox.next_due(database)
    claiming, *asking = [one for one in told if "outgoing" in one[0]]
    both = ({"urgent_due", "due"}, {"urgent_free"}, {"free"}, {"urgent_free"}, {"free"})
    with database.reading() as tx:
        for (statement, values), kinds in zip((claiming, *asking), both, strict=True):
            plan = tx.connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {statement}", values)
            steps = [row[3] for row in plan]
            used = {kind for step in steps for kind in re.findall("outgoing USING INDEX ix_outgoing_([a-z_]+) ", step)}
            assert used == kinds, steps
            assert not any(step.startswith(("SCAN outgoing", "SCAN earlier", "SCAN failed")) for step in steps), steps


def test_a_turn_reads_nothing_of_other_chats(database: Database, now: datetime) -> None:
    """What was said last, and which batches are open in a chat, are found by its own rows."""
    if not database.on_sqlite:
        pytest.skip("asks SQLite's planner")
    told: list[tuple[str, object]] = []
    event.listen(database.engine, "before_cursor_execute", lambda *of: told.append((of[2], of[3])))
    with database.transaction() as tx:
        outbox.last_about(tx, "garden")
        outbox.last_reminder(tx, "garden")
        outbox.find_by_channel_key(tx, "garden", "1")
        batches.open_in(tx, "garden")
        asked = [one for one in told if one[0].startswith("SELECT")]
        assert len(asked) == 4
        for statement, values in asked:
            plan = tx.connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {statement}", values)
            steps = [row[3] for row in plan if row[3].startswith(("SEARCH", "SCAN"))]
            assert steps
            assert all(re.match(r"SEARCH .*(\(chat=\?|\(batch=\?|\(id=\?)", step) for step in steps), steps
