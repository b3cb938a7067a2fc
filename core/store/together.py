"""One commit for several transactions that wait for one another anyway: the disk is waited for once for all of them.

Who ends while another waits for the writer's place leaves the commit to that one, and waits for it; who finds nobody
waiting, or ends later than `TOGETHER` after the first began, commits for all. What is in doubt until it is kept, as the
mark of a message that left, waits for no turn: it is kept with those before it. Each but the first stands behind a
savepoint, so that one that breaks takes back what is its own. What is kept, nobody is told before it is.
"""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from time import monotonic
from typing import Any, Final

from sqlalchemy import Connection, Engine

from core.errors import NotKept
from core.store.writer import Writer

TOGETHER: Final = 0.02  # seconds from the first of them: nobody's answer waits much longer for the others. Judgement


class Shared:
    """A transaction of the database with those of ours that are in it; used by one thread at a time."""

    def __init__(self, engine: Engine) -> None:
        self.connection: Final[Connection] = engine.connect()
        try:
            self.connection.begin()
        except BaseException:
            self.connection.close()
            raise
        self.until: Final = monotonic() + TOGETHER
        self.kept: Final = threading.Event()  # or not: then `trouble` says why
        self.trouble: BaseException | None = None
        self._members = 0

    @contextmanager
    def member(self) -> Iterator[Connection]:
        """One of ours: taken back alone where it breaks. Where that cannot be, all of them are lost."""
        self._members += 1
        first = self._members == 1
        if not first:
            self._driver.execute("SAVEPOINT one")
        try:
            yield self.connection
            if not first:
                self._driver.execute("RELEASE one")
        except BaseException as trouble:
            self._take_back(trouble, everything=first)
            raise

    def end(self) -> None:
        """Commit what is left of it, and let go of the connection; `trouble` where it was not kept."""
        try:
            if self.trouble is None and not self._driver.in_transaction:
                raise NotKept("the transaction was lost")  # the driver's commit would say nothing
            if self.trouble is None:
                self.connection.commit()
        except BaseException as trouble:
            self.trouble = trouble
        try:
            self._let_go()
        finally:
            self.kept.set()

    def _let_go(self) -> None:
        try:
            if self.trouble is not None:
                self._driver.rollback()
        except Exception:  # nobody else may find a transaction open in it
            self.connection.invalidate()
        self.connection.close()

    @property
    def _driver(self) -> Any:
        return self.connection.connection.driver_connection

    def _take_back(self, trouble: BaseException, *, everything: bool) -> None:
        # a full disk and its like take back the whole transaction by themselves (sqlite.org/lang_transaction, 4)
        if everything or not self._driver.in_transaction:
            self.trouble = trouble
            return
        try:
            self._driver.execute("ROLLBACK TO one")
            self._driver.execute("RELEASE one")
        except Exception:
            self.trouble = trouble


class Together:
    """The transactions of one process on one file, one after another."""

    def __init__(self, engine: Engine, writer: Writer) -> None:
        self._engine: Final = engine
        self._writer: Final = writer
        self._open: Shared | None = None  # left by who waits for its commit to whom the place was handed

    @contextmanager
    def transaction(self, seconds: float, *, first: bool) -> Iterator[Connection]:
        """One of them; waits so long for its turn. [s] Raises NotKept, and what the driver says of the commit."""
        if not self._writer.acquire(seconds, first=first):
            raise NotKept("database is locked")
        shared = self._begun()
        try:
            with shared.member() as connection:
                yield connection
        except BaseException:
            self._leave(shared, first=first)
            raise
        self._leave(shared, first=first)
        if shared.trouble is not None:
            raise NotKept(str(getattr(shared.trouble, "orig", shared.trouble))) from shared.trouble

    def _begun(self) -> Shared:
        shared, self._open = self._open, None
        if shared is not None:
            return shared
        try:
            return Shared(self._engine)
        except BaseException:
            self._writer.release()
            raise

    def _leave(self, shared: Shared, *, first: bool) -> None:
        """Leave it to who comes next, and wait for the commit; or commit. What is first waits for its like alone."""
        if shared.trouble is None and monotonic() < shared.until:
            self._open = shared
            if self._writer.hand_on(first=first):
                shared.kept.wait()
                return
            self._open = None
        try:
            shared.end()
        finally:
            self._writer.release()
