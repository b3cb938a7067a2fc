import sqlite3
import subprocess
import sys
import threading
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from sqlalchemy import text

from core.errors import NotKept
from core.store import inbox, outbox
from core.store.database import Database, migrate, open_database
from core.store.migrations import HEAD


@pytest.fixture
def url(tmp_path: Path) -> str:
    return f"sqlite:///{tmp_path / 'cellar.db'}"


def pragma(database: Database, name: str) -> object:
    with database.reading() as tx:
        return tx.execute(text(f"PRAGMA {name}")).scalar()


def test_what_is_committed_outlives_a_power_cut(url: str) -> None:
    """WAL with a full sync for each commit, and foreign keys held (sqlite.org/pragma: FULL is 2)."""
    database = open_database(url)
    assert pragma(database, "journal_mode") == "wal"
    assert pragma(database, "synchronous") == 2
    assert pragma(database, "foreign_keys") == 1
    database.close()


def test_a_transaction_is_kept_whole_or_not_at_all(database: Database, now: datetime) -> None:
    """An error anywhere in it takes back all of it."""
    with pytest.raises(ZeroDivisionError), database.transaction() as tx:
        _ = int(outbox.put_reply(tx, "garden", {"text": "hello"}, now)) / 0
    assert outbox.next_due(database) is None


def test_reading_changes_nothing(database: Database, now: datetime) -> None:
    """What somebody writes while only reading is not kept."""
    with database.reading() as tx:
        inbox.first_time(tx, "update/1", now)
    with database.reading() as tx:
        assert inbox.first_time(tx, "update/1", now)


def test_a_reader_never_waits_for_a_writer(url: str, now: datetime) -> None:
    """While a turn is being written, what was kept before can be read, as it was."""
    database = Database(url, busy_seconds=0.0)
    migrate(url)
    with database.transaction() as writing:
        inbox.first_time(writing, "update/1", now)
        with database.reading() as reading:
            assert reading.execute(text("SELECT count(*) FROM seen")).scalar() == 0
    database.close()


def test_many_threads_write_in_turn(database: Database, now: datetime) -> None:
    """Eight threads at once: each transaction reads what the one before it wrote, and none is refused."""
    if not database.on_sqlite:
        pytest.skip("a server lets writers of different rows work side by side")
    seen: list[int] = []

    def write(thread: int) -> None:
        for n in range(10):
            with database.transaction() as tx:
                before = tx.execute(text("SELECT count(*) FROM seen")).scalar_one()
                inbox.first_time(tx, f"{thread}/{n}", now)
                seen.append(before)

    threads = [threading.Thread(target=write, args=(i,)) for i in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert seen == list(range(80))


def test_a_store_locked_by_another_is_not_kept(url: str, now: datetime) -> None:
    """When a backup holds the lock for longer than we wait, the turn is refused with the reason, then works again."""
    database = open_database(url)
    impatient = Database(url, busy_seconds=0.05)
    other = sqlite3.connect(url.removeprefix("sqlite:///"), isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(NotKept, match="locked"), impatient.transaction() as tx:
        inbox.first_time(tx, "update/1", now)
    other.execute("ROLLBACK")
    with impatient.transaction() as tx:
        assert inbox.first_time(tx, "update/1", now)
    other.close()
    impatient.close()
    database.close()


def test_a_transaction_inside_another_is_not_kept(url: str) -> None:
    """A second transaction of the same thread is refused after the wait; it does not hang."""
    migrate(url)
    database = Database(url, busy_seconds=0.05)
    with pytest.raises(NotKept, match="locked"), database.transaction(), database.transaction():
        pass
    database.close()


def test_a_full_disk_is_not_kept(url: str, now: datetime) -> None:
    """When no page can be added the turn is refused and taken back whole; with room again it works."""
    database = open_database(url)
    with database.reading() as tx:  # the same connection serves the next transaction
        tx.execute(text(f"PRAGMA max_page_count = {pragma(database, 'page_count')}"))
    with pytest.raises(NotKept, match="full"), database.transaction() as tx:
        outbox.put_reply(tx, "garden", {"text": "x" * 100_000}, now)
    assert outbox.next_due(database) is None
    with database.transaction() as tx:
        tx.execute(text("PRAGMA max_page_count = 100000"))
        outbox.put_reply(tx, "garden", {"text": "x" * 100_000}, now)
    assert outbox.next_due(database) == now
    database.close()


def test_a_read_only_store_is_not_kept(url: str, now: datetime) -> None:
    """A store that cannot be written refuses the turn and can still be read."""
    migrate(url)
    database = Database(f"sqlite:///file:{url.removeprefix('sqlite:///')}?mode=ro&uri=true")
    with pytest.raises(NotKept, match="readonly"), database.transaction() as tx:
        inbox.first_time(tx, "update/1", now)
    assert outbox.next_due(database) is None
    database.close()


def test_a_torn_store_is_not_kept(url: str, now: datetime) -> None:
    """A file that is no store is refused on opening and while running, and is left as it is."""
    file = Path(url.removeprefix("sqlite:///"))
    file.write_bytes(b"potatoes " * 2000)
    with pytest.raises(NotKept, match="not a database"):
        open_database(url)
    assert file.read_bytes() == b"potatoes " * 2000


def test_a_page_that_went_bad_is_not_kept(url: str, now: datetime) -> None:
    """A table whose page the disk lost: what needs it is refused with the reason, and the rest can still be read."""
    database = open_database(url)
    with database.transaction() as tx:
        outbox.put_reply(tx, "garden", {"text": "hello"}, now)
        root = tx.execute(text("SELECT rootpage FROM sqlite_master WHERE name = 'outgoing'")).scalar_one()
        size = tx.execute(text("PRAGMA page_size")).scalar_one()
    database.close()  # the last to leave moves the log into the file
    with Path(url.removeprefix("sqlite:///")).open("r+b") as file:
        file.seek((root - 1) * size)
        file.write(b"\xa5" * size)

    database = open_database(url)
    with pytest.raises(NotKept, match="malformed"):
        outbox.claim(database, now, timedelta(minutes=2), 1, "me")
    with database.transaction() as tx:
        assert inbox.first_time(tx, "update/1", now)
    database.close()


def test_a_start_on_a_finished_store_loads_no_migration_tool(url: str) -> None:
    """Alembic costs a quarter of a second, and is loaded only when there is work."""
    ask = (
        "import sys; from core.store.database import open_database; open_database(sys.argv[1]).close();"
        "print('alembic' in sys.modules)"
    )
    runs = [subprocess.run([sys.executable, "-c", ask, url], capture_output=True, text=True) for _ in range(2)]
    assert [run.stdout.strip() for run in runs] == ["True", "False"], [run.stderr for run in runs]


def test_a_store_of_a_newer_version_is_refused(url: str) -> None:
    """A store that a newer version made is not touched by an older one."""
    database = open_database(url)
    with database.transaction() as tx:
        tx.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    database.close()
    with pytest.raises(NotKept, match="9999"):
        open_database(url)


def test_several_processes_may_start_on_an_empty_store(url: str) -> None:
    """Four starts at once make the tables once, and all of them are up to date."""
    ask = "import sys; from core.store.database import open_database; open_database(sys.argv[1]).close()"
    runs = [subprocess.Popen([sys.executable, "-c", ask, url], stderr=subprocess.PIPE, text=True) for _ in range(4)]
    ends = [(run.communicate()[1], run.returncode) for run in runs]
    assert ends == [("", 0)] * 4
    database = open_database(url)
    with database.reading() as tx:
        assert tx.execute(text("SELECT version_num FROM alembic_version")).scalars().all() == [HEAD]
    database.close()


def test_a_first_start_waits_for_another_that_writes_the_empty_file(url: str) -> None:
    """SQLite refuses the write-ahead log at once while somebody is about to write: it is tried again meanwhile."""
    other = sqlite3.connect(url.removeprefix("sqlite:///"), isolation_level=None, check_same_thread=False)
    other.execute("BEGIN IMMEDIATE")
    done = threading.Timer(0.2, other.execute, ["COMMIT"])
    done.start()
    database = open_database(url)
    assert pragma(database, "journal_mode") == "wal"
    database.close()
    done.join()
    other.close()


def test_a_first_start_does_not_wait_for_ever(url: str) -> None:
    """Whoever keeps the empty file for longer than the store waits is told of."""
    other = sqlite3.connect(url.removeprefix("sqlite:///"), isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    database = Database(url, busy_seconds=0.1)
    with pytest.raises(NotKept, match="locked"), database.reading():
        pass
    database.close()
    other.close()


def test_one_process_is_alone_on_a_file(url: str) -> None:
    """The first holds the place until it closes; the second is not alone meanwhile, and is afterwards."""
    first, second = open_database(url), open_database(url)
    assert first.alone()
    assert first.alone()
    assert not second.alone()
    first.close()
    assert second.alone()
    second.close()


def test_a_first_start_makes_its_folder(tmp_path: Path) -> None:
    """Nobody has to make a folder before the first command; where none can be made, that is said."""
    open_database(f"sqlite:///{tmp_path / 'new' / 'saltbell' / 'saltbell.db'}").close()
    assert (tmp_path / "new" / "saltbell" / "saltbell.db").exists()

    (tmp_path / "file").write_text("in the way")
    with pytest.raises(NotKept, match="file"):
        open_database(f"sqlite:///{tmp_path / 'file' / 'saltbell.db'}")
