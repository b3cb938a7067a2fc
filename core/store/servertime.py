"""The time that all replicas of a store go by: that of its server, so that none is early or ends another's lease.

A clock that is a minute ahead would send a minute early and take what another has in hand; one that is behind would
give its claims a minute less. So a replica asks the server for the time and counts on from there by a clock that no one
sets. A store in a file has one machine: there the machine's own time holds.
Truth: Linux man-pages, clock_gettime(2): CLOCK_BOOTTIME.
"""

import time
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:  # the time is told before the store is loaded
    from core.store.database import Database

PROMPT: Final = 0.5  # seconds; an answer that took longer tells the time no better than what was agreed before


def steady() -> float:
    """Seconds that go on while this process is stopped and, where the system can tell, while the machine sleeps."""
    boot = getattr(time, "CLOCK_BOOTTIME", None)
    return time.monotonic() if boot is None else time.clock_gettime(boot)


def wall() -> datetime:
    """The machine's own time, aware UTC."""
    return datetime.now(UTC)


class Time:
    """Tells the time, aware UTC, when called. Any thread may call it."""

    def __init__(self, own: Callable[[], datetime] = wall, count: Callable[[], float] = steady) -> None:
        self._own: Final = own
        self._count: Final = count
        self._agreed: tuple[datetime, float] | None = None  # the server's time, and our count when it was heard

    def __call__(self) -> datetime:
        """The time, aware UTC."""
        if self._agreed is None:
            return self._own()
        at, heard = self._agreed
        return at + timedelta(seconds=self._count() - heard)

    def agree(self, database: "Database") -> None:
        """Go by the time of the store's server from now on. Raises NotKept."""
        if not database.on_sqlite:
            self.go_by(database.time)

    def go_by(self, ask: Callable[[], datetime]) -> None:
        """Go by the time that `ask` tells, aware UTC.

        It counts from when the answer was heard, so that we are never ahead; one that was long under way, or was heard
        by a process that was stopped meanwhile, would leave us behind, and is passed over where there is a better one.
        """
        asked = self._count()
        at = ask()
        heard = self._count()
        if heard - asked <= PROMPT or self._agreed is None:
            self._agreed = at, heard
