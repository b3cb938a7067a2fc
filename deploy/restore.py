#!/usr/bin/env python3
"""Puts a backup in the place of the database. The bot must be stopped; what was there is kept beside it.

    python3 deploy/restore.py BACKUP DATABASE

The database that was there becomes DATABASE.before-YYYYMMDD-HHMMSS, the time in UTC. Exit 1 and a sentence
where nothing was changed.
"""

import os
import shutil
import sqlite3
import sys
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path


def restore(backup: Path, database: Path, now: datetime) -> Path | None:
    """Put `backup` in the place of `database`; where the old one is kept, None if there was none."""
    _check(backup)
    fresh = database.with_name(f"{database.name}.part")
    shutil.copyfile(backup, fresh)
    try:
        fresh.chmod(0o600)
        with fresh.open("rb") as written:
            os.fsync(written.fileno())
        kept = _set_aside(database, now)
        fresh.replace(database)
    finally:
        fresh.unlink(missing_ok=True)
    return kept


def _check(backup: Path) -> None:
    if not backup.is_file():
        raise FileNotFoundError(f"there is no backup {backup}")
    with closing(sqlite3.connect(f"{backup.absolute().as_uri()}?mode=ro&immutable=1", uri=True)) as copy:
        tables = copy.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
        found = [row[0] for row in copy.execute("PRAGMA integrity_check")]
    if found != ["ok"] or not tables:
        raise sqlite3.DatabaseError(f"{backup} is no sound database")


def _set_aside(database: Path, now: datetime) -> Path | None:
    """Keep the old database under another name.

    Leaving write-ahead mode takes the only lock there is, so it fails while the bot has the file open, and it
    folds the -wal file in: no stray page of the old database can come up in the new one.
    """
    if not database.exists():
        return None
    try:
        with closing(sqlite3.connect(database, timeout=1)) as old:
            old.execute("PRAGMA journal_mode=DELETE")
    except sqlite3.OperationalError as trouble:
        raise sqlite3.OperationalError(f"{database}: {trouble}; stop the bot first") from trouble
    except sqlite3.DatabaseError:
        pass  # no database any more: a reason to restore, and it is kept all the same
    kept = database.with_name(f"{database.name}.before-{now:%Y%m%d-%H%M%S}")
    for end in ("", "-wal", "-shm"):  # the last two are there only beside a file that is broken
        part = database.with_name(database.name + end)
        if part.exists():
            part.replace(kept.with_name(kept.name + end))
    return kept


def main(arguments: list[str]) -> int:
    """Run as the command that the module's first lines show; the exit status."""
    if len(arguments) != 2:
        print(__doc__, file=sys.stderr)
        return 2
    try:
        kept = restore(Path(arguments[0]), Path(arguments[1]), datetime.now(UTC))
    except (OSError, sqlite3.Error) as trouble:
        print(f"Nothing was changed: {trouble}", file=sys.stderr)
        return 1
    print(f"Restored {arguments[1]}." + (f" What was there is kept as {kept}." if kept else ""))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
