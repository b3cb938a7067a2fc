"""The engine, and one transaction: the only way into the store.

A transaction that writes takes the writer's place at once (`BEGIN IMMEDIATE` on SQLite): a read that
turns into a write later would be refused without waiting. Whatever keeps the store from keeping (disk
full, read-only, locked, torn) leaves here as `NotKept`, and nothing of the transaction is kept then.

Truth: sqlite.org/lang_transaction, sqlite.org/pragma; SQLAlchemy 2.1, "SQLite transactional behaviour".
"""

import json
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from datetime import UTC, datetime
from time import monotonic, sleep
from typing import Any, Final, TypeVar

from sqlalchemy import Connection, CursorResult, Engine, Executable, Table, UpdateBase, create_engine, event, text
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import URL, make_url
from sqlalchemy.engine.interfaces import DBAPIConnection, DBAPICursor
from sqlalchemy.exc import DatabaseError, DataError, IntegrityError, ProgrammingError, StatementError
from sqlalchemy.exc import TimeoutError as PoolTimeout
from sqlalchemy.pool import StaticPool

from core.errors import NotKept
from core.store.migrations import migrate_if_needed
from core.store.place import Place
from core.store.writer import Writer

BUSY_SECONDS: Final = 5.0
PAUSE_SECONDS: Final = 0.01  # between two tries where SQLite does not wait by itself
# a replica that is frozen in the middle of a turn is cut off by the server after this long: it has kept nothing
FROZEN_SECONDS: Final = 20.0
TIME: Final = text("SELECT clock_timestamp()")
TAKE_TURNS: Final = text("SELECT pg_advisory_xact_lock(:kind, hashtext(:name))")
# a foreign key or a repeated key is our own mistake, not the disk's: it stays loud
OURS: Final = (IntegrityError, ProgrammingError, DataError)

Read = TypeVar("Read")


def inserting(table: Table, *, on_server: bool) -> sqlite.Insert | postgresql.Insert:
    """See `Transaction.insert`; for statements that are built once."""
    return postgresql.insert(table) if on_server else sqlite.insert(table)


class Transaction:
    """One transaction. Store functions execute through it; everybody else only hands it on."""

    def __init__(self, connection: Connection) -> None:
        self.connection: Final = connection
        self.appended: Final[set[tuple[str, str]]] = set()
        self.derived: Final[dict[str, Any]] = {}  # what a service worked out, with what it worked it out from
        self._read: Final[dict[tuple[str, ...], tuple[Any, frozenset[str]]]] = {}

    def execute(self, statement: Executable, values: Any = None) -> CursorResult[Any]:
        """Execute one statement, or one with many sets of values."""
        if isinstance(statement, UpdateBase):
            self._written(str(statement.table))
        return self.connection.execute(statement, values)

    def once(self, read: Callable[..., Read], *of: str, tables: frozenset[str]) -> Read:
        """What `read(self, *of)` gives, read once until one of its tables is written in this transaction.

        Where other processes write at the same time it is read anew each time: what they committed meanwhile counts.
        """
        if self.on_server:
            return read(self, *of)
        key = read.__name__, *of
        if key not in self._read:
            self._read[key] = read(self, *of), tables
        found: Read = self._read[key][0]
        return found

    def known(self, read: Callable[..., Any], *of: str, given: Any, tables: frozenset[str]) -> None:
        """What `read(self, *of)` would give was read along with something else: `once` need not ask for it."""
        self._read[(read.__name__, *of)] = given, tables

    def _written(self, table: str) -> None:
        for key in [key for key, (_, tables) in self._read.items() if table in tables]:
            del self._read[key]

    def insert(self, table: Table) -> sqlite.Insert | postgresql.Insert:
        """An insert that can say what becomes of a row that is there already, as this database spells it."""
        return inserting(table, on_server=self.on_server)

    @property
    def on_server(self) -> bool:
        """Whether other processes write to the store at the same time."""
        return self.connection.dialect.name == "postgresql"

    def take_turns(self, *names: str) -> None:
        """Wait until no other transaction holds one of the names, and hold them to the end of this one.

        So the turns of a chat, and of a person, come one after another over all replicas. Everybody names the chat
        first: nobody ever waits in a ring. On SQLite there is one writer anyway.
        """
        if self.on_server:
            for kind, name in enumerate(names):
                self.connection.execute(TAKE_TURNS, {"kind": kind, "name": name})

    def take_turns_of_batch(self, batch: str) -> None:
        """The same for a batch that several chats have: named after the chat and the person of a turn."""
        if self.on_server:
            self.connection.execute(TAKE_TURNS, {"kind": 2, "name": batch})


class Database:
    """The store behind one URL. Any thread may open a transaction; one is never shared by two threads.

    Parameters
    ----------
    url
        `sqlite:///file`, `sqlite://` (in memory, for tests) or `postgresql+psycopg://…`.
    busy_seconds
        How long to wait for another writer before it is `NotKept`. [s]
    """

    def __init__(self, url: str, busy_seconds: float = BUSY_SECONDS) -> None:
        self.url: Final[URL] = make_url(url)
        self.on_sqlite: Final = self.url.get_backend_name() == "sqlite"
        self.in_memory: Final = self.on_sqlite and self.url.database in (None, "", ":memory:")
        self.engine: Final = _engine(self.url, busy_seconds, in_memory=self.in_memory)
        self.busy_seconds: Final = busy_seconds
        self._writer: Final = Writer()
        self._place = Place(self.url.database) if self.on_sqlite and not self.in_memory else None
        if self.on_sqlite:
            event.listen(self.engine, "connect", _preparation(busy_seconds))
            event.listen(self.engine, "begin", _begin)

    def _make_room(self) -> None:
        """A first start finds no folder yet."""
        if self._place is None:
            return
        try:
            self._place.make_room()
        except OSError as trouble:
            raise NotKept(str(trouble)) from trouble

    @contextmanager
    def transaction(self, *, first: bool = False) -> Iterator[Transaction]:
        """One transaction that may write: committed at the end, rolled back on any error.

        `first` lets it pass those of this process that wait to write: for what is short and in doubt until it is kept.

        Raises
        ------
        NotKept
            The store could not keep it; nothing was kept.
        """
        with self._writing(first=first), _kept(self.engine), self.engine.begin() as connection:
            yield Transaction(connection)

    @contextmanager
    def reading(self) -> Iterator[Transaction]:
        """One transaction that only reads: never waits for a writer. Raises NotKept."""
        with self._reading(), _kept(self.engine), self.engine.connect() as connection:
            connection.execution_options(saltbell_reads=True)
            yield Transaction(connection)

    def time(self) -> datetime:
        """What the server's clock shows at this moment, aware UTC (PostgreSQL 18, 9.9.5). Raises NotKept."""
        with self.reading() as tx:
            at: datetime = tx.execute(TIME).scalar_one()
        return at.astimezone(UTC)

    def kept(self) -> AbstractContextManager[None]:
        """What goes wrong with the store in here is NotKept."""
        return _kept(self.engine)

    def close(self) -> None:
        """Close every connection, and leave the place of the only process to another."""
        self.engine.dispose()
        if self._place is not None:
            self._place.leave()

    def alone(self) -> bool:
        """Whether this is the only process on the store, from now until it is closed.

        A file has one such place, which a killed process leaves by dying. Replicas on a server never have it.
        """
        return self.in_memory or (self._place is not None and self._place.take())

    @contextmanager
    def _writing(self, *, first: bool = False) -> Iterator[None]:
        if not self.on_sqlite:
            yield
            return
        if not self._writer.acquire(self.busy_seconds, first=first):
            raise NotKept("database is locked")
        try:
            yield
        finally:
            self._writer.release()

    @contextmanager
    def _reading(self) -> Iterator[None]:
        # the database in memory is one connection, which threads must take in turn
        if not self.in_memory:
            yield
            return
        with self._writing():
            yield


def migrate(url: str) -> None:
    """Bring the store of that URL up to date, and leave it. Raises NotKept."""
    open_database(url).close()


def open_database(url: str) -> Database:
    """The store of that URL, its folder made and its tables brought up to date first. Raises NotKept."""
    database = Database(url)
    try:
        database._make_room()
        with database._writing(), _kept(database.engine):
            migrate_if_needed(database.engine)
    except BaseException:
        database.close()
        raise
    return database


def _engine(url: URL, busy_seconds: float, *, in_memory: bool) -> Engine:
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


def _preparation(busy_seconds: float) -> Callable[[DBAPIConnection, object], None]:
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


def _begin(connection: Connection) -> None:
    reads = connection.get_execution_options().get("saltbell_reads", False)
    connection.exec_driver_sql("BEGIN" if reads else "BEGIN IMMEDIATE")


@contextmanager
def _kept(engine: Engine) -> Iterator[None]:
    """Whatever the driver says about the disk, the lock or the line becomes NotKept."""
    try:
        yield
    except OURS:
        raise
    except (DatabaseError, PoolTimeout) as trouble:
        raise NotKept(str(getattr(trouble, "orig", trouble))) from trouble
    except StatementError as trouble:
        # a value refused by one of our own types is told as it was raised there
        raise trouble.orig or trouble from None
    except engine.dialect.loaded_dbapi.Error as trouble:  # while connecting, before SQLAlchemy wraps anything
        raise NotKept(str(trouble)) from trouble
