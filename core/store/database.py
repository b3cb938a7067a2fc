"""The engine, and one transaction: the only way into the store.

A transaction that writes takes the writer's place at once (`BEGIN IMMEDIATE` on SQLite): a read that
turns into a write later would be refused without waiting. Whatever keeps the store from keeping (disk
full, read-only, locked, torn) leaves here as `NotKept`, and nothing of the transaction is kept then.

Truth: sqlite.org/lang_transaction, sqlite.org/pragma; SQLAlchemy 2.1, "SQLite transactional behaviour".
"""

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from datetime import UTC, datetime
from typing import Any, Final, TypeVar

from sqlalchemy import Connection, CursorResult, Engine, Executable, Table, UpdateBase, event, text
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import DatabaseError, DataError, IntegrityError, ProgrammingError, StatementError
from sqlalchemy.exc import TimeoutError as PoolTimeout

from core.errors import NotKept
from core.store.engine import begin, engine_of, preparation
from core.store.migrations import migrate_if_needed
from core.store.place import Place
from core.store.spent import Spent
from core.store.together import Together
from core.store.writer import Writer

BUSY_SECONDS: Final = 5.0
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

    def __init__(self, connection: Connection, reckoned: Spent) -> None:
        self.connection: Final = connection
        self.reckoned: Final = reckoned  # what a service spends on working batches out
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
        self.engine: Final = engine_of(self.url, busy_seconds, in_memory=self.in_memory)
        self.busy_seconds: Final = busy_seconds
        self.reckoned: Final = Spent()
        self._writer: Final = Writer()
        self._together: Final = Together(self.engine, self._writer)
        self._place = Place(self.url.database) if self.on_sqlite and not self.in_memory else None
        if self.on_sqlite:
            event.listen(self.engine, "connect", preparation(busy_seconds))
            event.listen(self.engine, "begin", begin)

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
        with _kept(self.engine), self._begun(first=first) as connection:
            yield Transaction(connection, self.reckoned)

    @contextmanager
    def reading(self) -> Iterator[Transaction]:
        """One transaction that only reads: never waits for a writer. Raises NotKept."""
        with self._reading(), _kept(self.engine), self.engine.connect() as connection:
            connection.execution_options(saltbell_reads=True)
            yield Transaction(connection, self.reckoned)

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
    def _begun(self, *, first: bool) -> Iterator[Connection]:
        if self.on_sqlite and not self.in_memory:
            with self._together.transaction(self.busy_seconds, first=first) as connection:
                yield connection
        else:
            with self._writing(), self.engine.begin() as connection:
                yield connection

    @contextmanager
    def _writing(self) -> Iterator[None]:
        if not self.on_sqlite:
            yield
            return
        if not self._writer.acquire(self.busy_seconds):
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
