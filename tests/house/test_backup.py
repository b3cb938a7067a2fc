"""Backup and restore, run as the scripts that a person runs, on a database that is in use."""

import sqlite3
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

DEPLOY = Path(__file__).parents[2] / "deploy"
STAMP = "[0-9]" * 8 + "-" + "[0-9]" * 6


def run(script: str, *arguments: Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, DEPLOY / script, *arguments]
    return subprocess.run(command, capture_output=True, text=True, timeout=60)


def rows(path: Path) -> list[int]:
    with closing(sqlite3.connect(path)) as opened:
        return [n for (n,) in opened.execute("SELECT n FROM said ORDER BY n")]


@pytest.fixture
def database(tmp_path: Path) -> Path:
    """A database in write-ahead mode with the numbers 0 to 99."""
    path = tmp_path / "saltbell.db"
    with closing(sqlite3.connect(path)) as opened:
        opened.execute("PRAGMA journal_mode=WAL")
        opened.execute("CREATE TABLE said (n INTEGER PRIMARY KEY, text TEXT)")
        with opened:
            opened.executemany("INSERT INTO said VALUES (?, ?)", [(n, "x" * 500) for n in range(100)])
    return path


@pytest.fixture
def in_use(database: Path) -> Iterator[sqlite3.Connection]:
    """The bot's connection: it has the database open, and what it wrote lies in the -wal file."""
    with closing(sqlite3.connect(database, check_same_thread=False)) as opened:
        with opened:
            opened.execute("INSERT INTO said VALUES (100, 'in the log')")
        yield opened


def test_a_backup_of_a_database_in_use_has_everything(
    database: Path, in_use: sqlite3.Connection, tmp_path: Path
) -> None:
    """What is committed is in the copy, what lies in the write-ahead file too; what is not committed is not."""
    in_use.execute("INSERT INTO said VALUES (101, 'not yet')")
    done = run("backup.py", database, tmp_path / "backups")
    copy = Path(done.stdout.strip())
    assert (done.returncode, done.stderr) == (0, "")
    assert list((tmp_path / "backups").glob(f"saltbell-{STAMP}.db")) == [copy]
    assert rows(copy) == list(range(101))
    assert copy.stat().st_mode & 0o077 == 0


def test_a_backup_is_of_one_moment(database: Path, in_use: sqlite3.Connection, tmp_path: Path) -> None:
    """While the bot writes on, the copy holds a run of numbers without a gap."""
    stop = threading.Event()

    def write() -> None:
        number = 200
        while not stop.is_set():
            with in_use:
                in_use.executemany("INSERT INTO said VALUES (?, 'y')", [(number + k,) for k in range(10)])
            number += 10

    writer = threading.Thread(target=write)
    writer.start()
    done = run("backup.py", database, tmp_path)
    stop.set()
    writer.join()
    late = [n for n in rows(Path(done.stdout.strip())) if n >= 200]
    assert late == list(range(200, 200 + len(late)))
    assert len(late) % 10 == 0


def test_no_database_no_backup(tmp_path: Path) -> None:
    """A path without a database is refused, and no empty file is left to be taken for a backup."""
    done = run("backup.py", tmp_path / "none.db", tmp_path / "backups")
    assert done.returncode == 1
    assert "there is no database" in done.stderr
    assert not (tmp_path / "backups").exists()


def test_a_broken_database_is_not_backed_up_in_silence(database: Path, tmp_path: Path) -> None:
    """A file that is no database gives exit 1 and leaves no copy."""
    database.write_bytes(b"no database at all" * 1000)
    done = run("backup.py", database, tmp_path / "backups")
    assert (done.returncode, list((tmp_path / "backups").iterdir())) == (1, [])
    assert "Traceback" not in done.stderr


def test_there_and_back(database: Path, tmp_path: Path) -> None:
    """A restored database holds what it held at the backup, and what was there since is kept beside it."""
    copy = Path(run("backup.py", database, tmp_path / "backups").stdout.strip())
    with closing(sqlite3.connect(database)) as opened, opened:
        opened.execute("DELETE FROM said WHERE n > 3")
    done = run("restore.py", copy, database)
    assert (done.returncode, done.stderr) == (0, "")
    assert rows(database) == list(range(100))
    (kept,) = tmp_path.glob(f"saltbell.db.before-{STAMP}")
    assert rows(kept) == [0, 1, 2, 3]
    assert database.stat().st_mode & 0o077 == 0


def test_a_restore_waits_for_nobody(database: Path, in_use: sqlite3.Connection, tmp_path: Path) -> None:
    """While the bot has the database open, nothing is changed and the person is told to stop it."""
    copy = Path(run("backup.py", database, tmp_path).stdout.strip())
    with in_use:
        in_use.execute("INSERT INTO said VALUES (102, 'later')")
    done = run("restore.py", copy, database)
    assert done.returncode == 1
    assert "stop the bot first" in done.stderr
    assert rows(database)[-1] == 102
    assert not list(tmp_path.glob("*.part"))


def test_a_restore_where_nothing_is(database: Path, tmp_path: Path) -> None:
    """On a new machine the backup becomes the database."""
    copy = Path(run("backup.py", database, tmp_path).stdout.strip())
    fresh = tmp_path / "fresh.db"
    done = run("restore.py", copy, fresh)
    assert done.stdout == f"Restored {fresh}.\n"
    assert rows(fresh) == list(range(100))


def test_a_restore_over_a_broken_file_keeps_it(database: Path, tmp_path: Path) -> None:
    """A database that cannot be opened any more is replaced, and kept for whoever wants to look."""
    copy = Path(run("backup.py", database, tmp_path).stdout.strip())
    database.write_bytes(b"broken" * 1000)
    assert run("restore.py", copy, database).returncode == 0
    assert rows(database) == list(range(100))
    (kept,) = tmp_path.glob(f"saltbell.db.before-{STAMP}")
    assert kept.read_bytes() == b"broken" * 1000


@pytest.mark.parametrize("content", [b"", b"no database" * 1000])
def test_what_is_no_backup_is_not_restored(database: Path, tmp_path: Path, content: bytes) -> None:
    """An empty or a broken file never takes the place of a database."""
    (tmp_path / "copy.db").write_bytes(content)
    done = run("restore.py", tmp_path / "copy.db", database)
    assert done.returncode == 1
    assert done.stderr.startswith("Nothing was changed")
    assert rows(database) == list(range(100))


@pytest.mark.parametrize("script", ["backup.py", "restore.py"])
def test_without_arguments_the_scripts_say_how_they_are_called(script: str) -> None:
    """A wrong call is exit 2 and shows the right one."""
    done = run(script)
    assert done.returncode == 2
    assert f"python3 deploy/{script}" in done.stderr
