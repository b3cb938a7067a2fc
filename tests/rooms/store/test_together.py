"""Transactions that wait for one another are committed together: each is told when it is kept, and none takes another
along that breaks."""

import random
import sqlite3
import threading
import time
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from datetime import datetime
from pathlib import Path

import pytest
from sqlalchemy import event, text
from sqlalchemy.exc import OperationalError

from core.errors import NotKept
from core.store import inbox, together
from core.store.database import Database, open_database

AT_ONCE = 8
LONG = 5.0  # seconds


@pytest.fixture
def database(tmp_path: Path) -> Iterator[Database]:
    opened = open_database(f"sqlite:///{tmp_path / 'cellar.db'}")
    yield opened
    opened.close()


@pytest.fixture
def commits(database: Database) -> list[int]:
    """One more for each commit."""
    found: list[int] = []
    event.listen(database.engine, "commit", lambda _: found.append(1))
    return found


def kept(database: Database) -> set[str]:
    with database.reading() as tx:
        return set(tx.execute(text("SELECT key FROM seen")).scalars())


def all_waiting(
    database: Database, works: list[Callable[[], None]], then: Callable[[], None] = lambda: None
) -> list[BaseException | None]:
    """Let all of them wait for the writer's place, and then in; what each raised, and at the end who held it."""

    def told(work: Callable[[], None]) -> BaseException | None:
        try:
            work()
        except BaseException as trouble:
            return trouble
        return None

    with ThreadPoolExecutor(len(works)) as threads:
        running = list[Future[BaseException | None]]()

        def hold() -> None:
            with database.transaction():
                running.extend(threads.submit(told, work) for work in works)
                while len(database._writer._then) + len(database._writer._first) < len(works):
                    time.sleep(0.001)
                then()

        held = told(hold)
        return [*(each.result(LONG) for each in running), held]


def keeps(database: Database, now: datetime, key: str, *, breaks: bool = False) -> Callable[[], None]:
    def work() -> None:
        with database.transaction() as tx:
            assert inbox.first_time(tx, key, now)
            if breaks:
                raise ZeroDivisionError
        assert key in kept(database)  # whoever goes on from here finds it kept

    return work


def test_those_that_wait_are_committed_once(
    database: Database, now: datetime, commits: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The first found nobody waiting when it began; it and all that waited then are one commit."""
    monkeypatch.setattr(together, "TOGETHER", LONG)
    assert all_waiting(database, [keeps(database, now, str(n)) for n in range(AT_ONCE)]) == [None] * (AT_ONCE + 1)
    assert kept(database) == {str(n) for n in range(AT_ONCE)}
    assert len(commits) == 1


def test_nobody_waits_for_the_others_for_long(
    database: Database, now: datetime, commits: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """After its time what is there is committed, however many still wait."""
    monkeypatch.setattr(together, "TOGETHER", 0.0)
    assert all_waiting(database, [keeps(database, now, str(n)) for n in range(AT_ONCE)]) == [None] * (AT_ONCE + 1)
    assert len(commits) == AT_ONCE + 1


def test_what_is_in_doubt_is_kept_with_those_before_it(
    database: Database, now: datetime, commits: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The marks of what left are one commit with the turn that was under way, and wait for none that comes after."""
    monkeypatch.setattr(together, "TOGETHER", LONG)
    when: list[int] = []

    def mark(key: str) -> Callable[[], None]:
        def work() -> None:
            with database.transaction(first=True) as tx:
                inbox.first_time(tx, key, now)
            when.append(len(commits))

        return work

    turns = [keeps(database, now, str(n)) for n in range(AT_ONCE)]
    assert all_waiting(database, [*turns, mark("a"), mark("b")]) == [None] * (AT_ONCE + 3)
    assert (when, len(commits)) == ([1, 1], 2)


def test_what_breaks_takes_back_what_is_its_own(
    database: Database, now: datetime, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Before, between and behind those that do not."""
    monkeypatch.setattr(together, "TOGETHER", LONG)
    works = [keeps(database, now, str(n), breaks=n % 3 == 0) for n in range(AT_ONCE)]
    told = all_waiting(database, works)
    assert [type(one) for one in told[:-1]] == [ZeroDivisionError if n % 3 == 0 else type(None) for n in range(AT_ONCE)]
    assert kept(database) == {str(n) for n in range(AT_ONCE) if n % 3}


def test_where_the_commit_fails_all_are_told(
    database: Database, now: datetime, monkeypatch: pytest.MonkeyPatch
) -> None:
    """None of them was kept, and the next is."""
    monkeypatch.setattr(together, "TOGETHER", LONG)

    def broken(_: object) -> None:
        raise OperationalError("COMMIT", {}, sqlite3.OperationalError("disk I/O error"))

    works = [keeps(database, now, str(n)) for n in range(AT_ONCE)]
    told = all_waiting(database, works, lambda: event.listen(database.engine, "commit", broken))
    assert [type(one) for one in told] == [NotKept] * (AT_ONCE + 1)
    event.remove(database.engine, "commit", broken)
    assert kept(database) == set()
    keeps(database, now, "next")()


def test_a_disk_that_is_full_for_one_is_full_for_all_or_for_that_one(
    database: Database, now: datetime, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Who is told that it is kept finds it kept, who is told that it is not does not."""
    monkeypatch.setattr(together, "TOGETHER", LONG)
    told: dict[str, bool] = {}

    def work(key: str) -> Callable[[], None]:
        def one() -> None:
            try:
                with database.transaction() as tx:
                    inbox.first_time(tx, key, now)
            except NotKept:
                told[key] = False
            else:
                told[key] = True

        return one

    with database.reading() as tx:  # each connection of the pool has its own limit: this one serves all of them
        pages = tx.execute(text("PRAGMA page_count")).scalar_one()
        tx.execute(text(f"PRAGMA max_page_count = {pages}"))
    all_waiting(database, [work(f"{n}" * (100_000 if n == 5 else 1)) for n in range(AT_ONCE)])
    assert {key for key, was in told.items() if was} == kept(database)
    assert not told["5" * 100_000]


def test_whatever_breaks_what_was_told_is_true(database: Database, now: datetime) -> None:
    """Many threads, some of whose transactions break: what is kept is what was told to be."""
    chance, guard = random.Random(8), threading.Lock()
    told: set[str] = set()

    def work(thread: int) -> None:
        for n in range(30):
            with guard:
                breaks, first = chance.random() < 0.3, chance.random() < 0.3
            try:
                with database.transaction(first=first) as tx:
                    assert inbox.first_time(tx, f"{thread}/{n}", now)
                    if breaks:
                        raise ZeroDivisionError
            except ZeroDivisionError:
                continue
            assert f"{thread}/{n}" in kept(database)
            told.add(f"{thread}/{n}")

    with ThreadPoolExecutor(AT_ONCE) as threads:
        for each in [threads.submit(work, thread) for thread in range(AT_ONCE)]:
            each.result(60)
    assert kept(database) == told
