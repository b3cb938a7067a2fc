"""The engine behind a URL, and how its connections are set up: SQLite's by pragmas, a server's by its options.

Truth: sqlite.org/pragma; PostgreSQL 18, 19.11 and 32.1.2; SQLAlchemy 2.1, "SQLite transactional behaviour".
"""

import json
import sqlite3
from collections.abc import Callable
from time import monotonic, sleep
from typing import Any, Final

from sqlalchemy import Connection, Engine, create_engine
from sqlalchemy.engine import URL
from sqlalchemy.engine.interfaces import DBAPIConnection, DBAPICursor
from sqlalchemy.pool import StaticPool

PAUSE_SECONDS: Final = 0.01  # between two tries where SQLite does not wait by itself
# a replica that is frozen in the middle of a turn is cut off by the server after this long: it has kept nothing
FROZEN_SECONDS: Final = 20.0


def engine_of(url: URL, busy_seconds: float, *, in_memory: bool) -> Engine:
    """The engine for a URL; who waits for another waits so long. [s]"""
    if in_memory:
        return create_engine(
            url, poolclass=StaticPool, connect_args={"check_same_thread": False}, json_serializer=_json
        )
    patience = {} if url.get_backend_name() == "sqlite" else {"connect_args": _patience(busy_seconds)}
    return create_engine(url, pool_size=16, max_overflow=16, pool_use_lifo=True, json_serializer=_json, **patience)


def _patience(busy_seconds: float) -> dict[str, Any]:
    """How long a server lets us wait for others, and others for us. Truth: PostgreSQL 18, 19.11 and 32.1.2."""
    waits = {"lock_timeout": busy_seconds, "idle_in_transaction_session_timeout": FROZEN_SECONDS}
    said = " ".join(f"-c {name}={int(seconds * 1000)}" for name, seconds in waits.items())
    return {"options": said, "connect_timeout": max(2, int(busy_seconds)), "keepalives_idle": 30}


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))


def preparation(busy_seconds: float) -> Callable[[DBAPIConnection, object], None]:
    """What sets up a connection to a file; it waits so long for another writer. [s]"""

    def prepare(connection: DBAPIConnection, _record: object) -> None:
        """Set up one connection of the pool."""
        connection.isolation_level = None  # the driver begins nothing by itself: `_begin` does
        cursor = connection.cursor()
        cursor.execute(f"PRAGMA busy_timeout = {int(busy_seconds * 1000)}")
        _into_wal(cursor, monotonic() + busy_seconds)
        # in WAL, NORMAL outlives a kill but not a power cut
        cursor.execute("PRAGMA synchronous = FULL")
        cursor.execute("PRAGMA foreign_keys = ON")
        cursor.close()

    return prepare


def _into_wal(cursor: DBAPICursor, until: float) -> None:
    """Into the write-ahead log, tried until that moment of the monotonic clock. Raises the driver's error.

    An empty file that another process is about to write cannot change its journal, and SQLite 3.40 says so at once
    instead of waiting as long as `busy_timeout` has it: two first starts in one moment.
    """
    while True:
        try:
            cursor.execute("PRAGMA journal_mode = WAL")
        except sqlite3.OperationalError as trouble:
            if trouble.sqlite_errorcode != sqlite3.SQLITE_BUSY or monotonic() > until:
                raise
            sleep(PAUSE_SECONDS)
        else:
            return


def begin(connection: Connection) -> None:
    """Begin a transaction of SQLite: one that may write takes the writer's place at once."""
    reads = connection.get_execution_options().get("saltbell_reads", False)
    connection.exec_driver_sql("BEGIN" if reads else "BEGIN IMMEDIATE")
