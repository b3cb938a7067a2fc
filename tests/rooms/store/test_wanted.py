from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sqlalchemy import delete, text

from core.plan.reminders import Wanted
from core.plan.steps import Urgency
from core.store import outbox
from core.store.database import Database, open_database
from core.store.tables import metadata
from core.store.wanted import AGAIN_AFTER

NOW = datetime(2027, 3, 1, 8, tzinfo=UTC)
MINUTE = timedelta(minutes=1)
LEASE = timedelta(minutes=2)


def wish(step: str, after: float, **more: Any) -> Wanted:
    """A reminder wanted `after` minutes after eight."""
    return Wanted(step, more.pop("kind", step.split("/")[0]), NOW + after * MINUTE, Urgency.NORMAL, **more)


def reconcile(database: Database, wanted: Sequence[Wanted], after: float = 0, chat: str = "garden") -> None:
    with database.transaction() as tx:
        outbox.reconcile(tx, "abc", chat, wanted, NOW + after * MINUTE)


def deliver(database: Database, after: float) -> list[str]:
    """Send what is due; the steps that were reminded of."""
    at = NOW + after * MINUTE
    rows = outbox.claim(database, at, LEASE, 99, "me")
    for row in rows:
        outbox.sent(database, row, at, row.id)
    return [str(row.step) for row in rows]


def everything(database: Database) -> list[tuple[Any, ...]]:
    with database.reading() as tx:
        return [tuple(row) for row in tx.execute(text("SELECT * FROM outgoing ORDER BY id"))]


def waiting(database: Database) -> list[tuple[str, str, int, datetime]]:
    with database.reading() as tx:
        found = tx.execute(outbox.select(outbox.outgoing).where(outbox.OUT.state == "waiting")).all()
    return sorted((row.step, row.kind, row.occurrence, row.due_at) for row in found)


def test_what_is_wanted_waits(database: Database) -> None:
    """Each wanted reminder waits under its key, at its time; a late one is due at once."""
    reconcile(database, [wish("flip/1", 60), wish("flip/2", 90), wish("rinse", -30)])
    assert [(step, due) for step, _, _, due in waiting(database)] == [
        ("flip/1", NOW + 60 * MINUTE),
        ("flip/2", NOW + 90 * MINUTE),
        ("rinse", NOW - 30 * MINUTE),
    ]
    assert outbox.next_due(database) == NOW - 30 * MINUTE


def test_a_moved_step_moves_its_reminder_and_nothing_else(database: Database) -> None:
    """The same key at another time is the same row, earlier or later."""
    reconcile(database, [wish("flip/1", 60), wish("rinse", 90)])
    before = everything(database)
    reconcile(database, [wish("flip/1", 30), wish("rinse", 90)])
    after = everything(database)
    assert [row[0] for row in after] == [row[0] for row in before]
    assert after[1] == before[1]
    assert deliver(database, 30) == ["flip/1"]


def test_what_is_not_wanted_any_more_is_withdrawn_and_may_come_back(database: Database) -> None:
    """A step that was skipped is not reminded of; when that is undone, it is."""
    reconcile(database, [wish("flip/1", 60)])
    reconcile(database, [])
    assert deliver(database, 60) == []
    reconcile(database, [wish("flip/1", 60)])
    assert deliver(database, 60) == ["flip/1"]


def test_what_was_sent_is_not_sent_again(database: Database) -> None:
    """Neither when the plan still wants it, nor when its time wobbles, nor when it moved back."""
    reconcile(database, [wish("wrap", 60)])
    assert deliver(database, 60) == ["wrap"]
    for moved in (60, 60 + AGAIN_AFTER / MINUTE, 10):
        reconcile(database, [wish("wrap", moved)], 61)
        assert deliver(database, 300) == []


def test_what_moved_past_its_sending_is_said_again(database: Database) -> None:
    """«later»: put off by more than the wobble after it was sent, the step is reminded of once more, and once only."""
    reconcile(database, [wish("wrap", 60)])
    assert deliver(database, 60) == ["wrap"]
    reconcile(database, [wish("wrap", 90)], 61)
    assert deliver(database, 89) == []
    assert deliver(database, 90) == ["wrap"]
    reconcile(database, [wish("wrap", 90)], 91)
    assert deliver(database, 300) == []
    reconcile(database, [wish("wrap", 310)], 301)
    assert deliver(database, 310) == ["wrap"]


def test_a_time_that_the_person_named_is_kept_to_the_minute(database: Database) -> None:
    """«ok 2 mins» is no wobble of an estimate: the reminder comes back at that time, once."""
    reconcile(database, [wish("wrap", 60)])
    assert deliver(database, 60) == ["wrap"]
    for _ in range(2):
        reconcile(database, [wish("wrap", 63, put_off=True)], 61)
    assert [deliver(database, at) for at in (62, 63)] == [[], ["wrap"]]
    reconcile(database, [wish("wrap", 63, put_off=True)], 64)
    assert deliver(database, 300) == []


def test_a_put_off_that_was_taken_back_is_silent(database: Database) -> None:
    """When «later» is undone the step was reminded of already: nothing is sent at once."""
    reconcile(database, [wish("wrap", 60)])
    deliver(database, 60)
    reconcile(database, [wish("wrap", 90)], 61)
    reconcile(database, [wish("wrap", 60)], 62)
    assert deliver(database, 300) == []


def test_an_occurrence_is_a_reminder_of_its_own(database: Database) -> None:
    """The one repeat of a step that was not answered has its own time and is sent once."""
    reconcile(database, [wish("wrap", 60), wish("wrap", 90, occurrence=1)])
    assert [deliver(database, at) for at in (60, 90)] == [["wrap"], ["wrap"]]
    reconcile(database, [wish("wrap", 60), wish("wrap", 90, occurrence=1)], 91)
    assert deliver(database, 300) == []


def test_the_kind_only_chooses_the_words(database: Database) -> None:
    """A flip that was sent together with the fridge check is not sent alone afterwards."""
    reconcile(database, [wish("flip/1", 60, kind="flip_and_fridge")])
    assert deliver(database, 60) == ["flip/1"]
    reconcile(database, [wish("flip/1", 60, kind="flip")], 61)
    assert deliver(database, 300) == []


def test_what_is_on_its_way_is_left_alone(database: Database) -> None:
    """A reminder in flight counts as said now: it is not put in twice, and may be put off."""
    reconcile(database, [wish("wrap", 60)])
    (row,) = outbox.claim(database, NOW + 60 * MINUTE, LEASE, 1, "me")
    reconcile(database, [wish("wrap", 60)], 60)
    assert waiting(database) == []
    reconcile(database, [wish("wrap", 90)], 60)
    assert [due for *_, due in waiting(database)] == [NOW + 90 * MINUTE]
    assert outbox.sent(database, row, NOW + 60 * MINUTE, "1")


def test_a_wait_for_the_next_try_is_not_cut_short(database: Database) -> None:
    """A plan that is derived again does not make the channel be asked sooner than it wished."""
    reconcile(database, [wish("wrap", 60)])
    (row,) = outbox.claim(database, NOW + 60 * MINUTE, LEASE, 1, "me")
    outbox.put_back(database, row, NOW + 70 * MINUTE)
    reconcile(database, [wish("wrap", 55)], 61)
    assert outbox.next_due(database) == NOW + 70 * MINUTE


def test_a_moved_reminder_that_may_have_arrived_is_still_a_repeat(database: Database) -> None:
    """A new plan moves a reminder that is to be repeated: it keeps its tries and still says that it is a repeat."""
    reconcile(database, [wish("wrap", 60)])
    outbox.claim(database, NOW + 60 * MINUTE, LEASE, 1, "dead")
    (row,) = outbox.claim(database, NOW + 62 * MINUTE, LEASE, 1, "me")
    outbox.put_back(database, row, NOW + 63 * MINUTE)
    reconcile(database, [wish("wrap", 61)], 62)
    (row,) = outbox.claim(database, NOW + 63 * MINUTE, LEASE, 1, "me")
    assert (row.repeat, row.attempts, row.due_at) == (True, 3, NOW + 61 * MINUTE)


def test_the_dead_come_back_only_while_they_are_ahead(database: Database) -> None:
    """Somebody who had blocked the bot and writes again is reminded of what is ahead, not of what was missed."""
    plan = [wish("flip/1", 60), wish("flip/2", 600)]
    reconcile(database, plan)
    with database.transaction() as tx:
        outbox.chat_gone(tx, "garden")
    assert outbox.next_due(database) is None
    reconcile(database, plan, 120)
    assert [step for step, *_ in waiting(database)] == ["flip/2"]


def test_reminders_go_to_the_chat_where_the_batch_is(database: Database) -> None:
    """A batch that is told of in another chat now takes its waiting reminders along."""
    reconcile(database, [wish("wrap", 60)])
    reconcile(database, [wish("wrap", 60)], chat="shed")
    assert [row.chat for row in outbox.claim(database, NOW + 60 * MINUTE, LEASE, 9, "me")] == ["shed"]


def test_another_batch_is_not_touched(database: Database) -> None:
    """The same steps of another batch keep their times."""
    reconcile(database, [wish("wrap", 60)])
    with database.transaction() as tx:
        outbox.reconcile(tx, "other", "garden", [wish("wrap", 70)], NOW)
    reconcile(database, [])
    assert [due for *_, due in waiting(database)] == [NOW + 70 * MINUTE]


WISHES = st.lists(
    st.builds(
        wish,
        st.sampled_from(["flip/1", "flip/2", "wrap"]),
        st.integers(-20, 120),
        kind=st.sampled_from(["a", "b"]),
        occurrence=st.integers(0, 1),
        put_off=st.booleans(),
    ),
    max_size=5,
    unique_by=lambda w: (w.step, w.occurrence),
)
MOVES = st.sampled_from(["send", "die in flight", "put back", "wait"])
STORY = st.lists(st.tuples(WISHES, MOVES, st.integers(0, 30)), max_size=5)


def live(database: Database, story: Sequence[tuple[list[Wanted], str, int]]) -> int:
    """Play a story of plans and of what became of the messages; the minutes that it took."""
    clock = 0
    for plan, move, minutes in story:
        reconcile(database, plan, clock)
        clock += minutes
        at = NOW + clock * MINUTE
        if move != "wait":
            for row in outbox.claim(database, at, LEASE, 2, "me"):
                if move == "send":
                    outbox.sent(database, row, at, row.id)
                elif move == "put back":
                    outbox.put_back(database, row, at + MINUTE)
    return clock


@pytest.fixture(scope="module")
def two() -> Iterator[tuple[Database, Database]]:
    """Two stores, to be emptied for each story: it takes longer to make one than to play a story in it."""
    both = open_database("sqlite://"), open_database("sqlite://")
    yield both
    for each in both:
        each.close()


def emptied(database: Database) -> Database:
    with database.transaction() as tx:
        for table in reversed(metadata.sorted_tables):
            tx.execute(delete(table))
    return database


@settings(max_examples=60, deadline=None)
@given(story=STORY, plan=WISHES, detour=WISHES)
def test_reconciling_converges_whatever_happened_before(
    two: tuple[Database, Database],
    story: list[tuple[list[Wanted], str, int]],
    plan: list[Wanted],
    detour: list[Wanted],
) -> None:
    """What waits in the end is what the last plan wants and nobody was told; twice or by a detour, it is the same."""
    straight, round_about = map(emptied, two)
    clock = live(straight, story)
    assert live(round_about, story) == clock
    said = {
        (row.step, row.occurrence, NOW + clock * MINUTE if row.state == "sending" else row.sent_at)
        for row in rows_of(straight)
        if row.state in ("sending", "sent")
    }

    reconcile(straight, plan, clock)
    once = everything(straight)
    reconcile(straight, plan, clock)
    assert everything(straight) == once

    wanted = sorted(
        (w.step, w.kind, w.occurrence, w.due_at)
        for w in plan
        if not any(
            (w.step, w.occurrence) == (step, n) and w.due_at <= at + (not w.put_off) * AGAIN_AFTER
            for step, n, at in said
        )
    )
    assert waiting(straight) == wanted
    reconcile(round_about, detour, clock)
    reconcile(round_about, plan, clock)
    assert waiting(round_about) == wanted


def rows_of(database: Database) -> Sequence[Any]:
    with database.reading() as tx:
        return tx.execute(outbox.select(outbox.outgoing)).all()
