#!/usr/bin/env python3
"""Copies the database while the bot goes on, and proves the copy sound before it bears its name.

    python3 deploy/backup.py DATABASE FOLDER

The copy is FOLDER/saltbell-YYYYMMDD-HHMMSS.db, the time in UTC; its path is printed. Exit 1 and a sentence
where there is no copy.
"""

import os
import sqlite3
import sys
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path


def back_up(database: Path, folder: Path, now: datetime) -> Path:
    """Copy `database` into `folder` as it stands at one moment, however busy the bot is; the path of the copy."""
    if not database.is_file():
        raise FileNotFoundError(f"there is no database {database}")
    folder.mkdir(parents=True, exist_ok=True)
    copy = folder / f"saltbell-{now:%Y%m%d-%H%M%S}.db"
    unproven = copy.with_suffix(".part")
    try:
        _copy(database, unproven)
        unproven.replace(copy)
    finally:
        unproven.unlink(missing_ok=True)
    return copy


def _copy(database: Path, target: Path) -> None:
    target.unlink(missing_ok=True)
    target.touch(mode=0o600)  # people's talks: nobody else's to read
    with (
        closing(sqlite3.connect(f"{database.absolute().as_uri()}?mode=ro", uri=True, timeout=30)) as source,
        closing(sqlite3.connect(target)) as copy,
    ):
        source.backup(copy)
        copy.execute("PRAGMA journal_mode=DELETE")  # one file, with nothing beside it
        found = [row[0] for row in copy.execute("PRAGMA integrity_check")]
    if found != ["ok"]:
        raise sqlite3.DatabaseError(f"the copy is not sound: {found[0]}")
    with target.open("rb") as written:
        os.fsync(written.fileno())


def main(arguments: list[str]) -> int:
    """Run as the command that the module's first lines show; the exit status."""
    if len(arguments) != 2:
        print(__doc__, file=sys.stderr)
        return 2
    try:
        print(back_up(Path(arguments[0]), Path(arguments[1]), datetime.now(UTC)))
    except (OSError, sqlite3.Error) as trouble:
        print(f"No backup was made: {trouble}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
