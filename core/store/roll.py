"""Which processes on a database server are alive, so that what a dead one had in hand is sent at once by another.

Each holds a lock of its session; the server frees it when the process dies, however it dies. A process that is
frozen keeps its lock: then the lease of its claim must end (docs/decisions, 2). The pendant of `place.py`, for a
store with several processes. Truth: PostgreSQL 18, 13.3.5 and 9.28.10.
"""

from typing import Final

from sqlalchemy import Connection, Engine, select, text, update

from core.store.database import Database
from core.store.tables import outgoing

ALIVE: Final = 17  # the class of these locks; the turns of chats and people have 0 and 1
HERE: Final = text("SELECT pg_try_advisory_lock_shared(:kind, hashtext(:name))")
HOW_MANY: Final = text(
    "SELECT count(DISTINCT pid) FROM pg_locks WHERE locktype = 'advisory' AND classid = :kind AND objsubid = 2"
    " AND mode = 'ShareLock' AND granted"
    " AND database = (SELECT oid FROM pg_database WHERE datname = current_database())"
)
GONE: Final = text("SELECT pg_try_advisory_xact_lock(:kind, hashtext(:name))")


class Roll:
    """The roll of the processes that share a store, called with every round of delivery."""

    def __init__(self, database: Database, me: str) -> None:
        self.database: Final = database
        self.me: Final = me
        self._line: Connection | None = None

    def call(self) -> int:
        """Say that we are here, and give back what the dead had in hand, as repeats; how many rows. Raises NotKept."""
        if self.database.on_sqlite:
            return 0  # `outbox.give_back_all` has seen to it
        with self.database.kept():
            self._answer(self.database.engine)
        with self.database.transaction() as tx:
            held = select(outgoing.c.owner).distinct().where(outgoing.c.state == "sending", outgoing.c.owner != self.me)
            owners = tx.execute(held).scalars().all()
            dead = [owner for owner in owners if tx.execute(GONE, {"kind": ALIVE, "name": owner}).scalar()]
            if not dead:
                return 0
            theirs = update(outgoing).where(outgoing.c.state == "sending", outgoing.c.owner.in_(dead))
            back = {"state": "waiting", "owner": None, "free_at": outgoing.c.due_at, "repeat": True}
            return tx.execute(theirs.values(back)).rowcount

    def alive(self) -> int:
        """How many processes are on the roll, we among them. Raises NotKept."""
        if self.database.on_sqlite:
            return 1
        with self.database.reading() as tx:
            return max(1, int(tx.execute(HOW_MANY, {"kind": ALIVE}).scalar_one()))

    def leave(self) -> None:
        """Be counted no longer."""
        if self._line is not None:
            self._line.close()
            self._line = None

    def _answer(self, engine: Engine) -> None:
        """Hold our lock, on a line of its own; a line that broke is made anew."""
        try:
            if self._line is None:
                self._line = engine.connect().execution_options(isolation_level="AUTOCOMMIT")
                self._line.detach()  # out of the pool: to close it is to hang up, and so to let go of the lock
            self._line.execute(HERE, {"kind": ALIVE, "name": self.me})
        except BaseException:
            self.leave()
            raise
