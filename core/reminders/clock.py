"""The alarm clock: wakes the postman when the next message falls due, and every 30 s all the same.

APScheduler keeps no reminder here. Its two jobs, in memory, only ring a bell; what is due is asked of
the outbox. The sweep covers what the alarm cannot know: another replica's reminders, leases that
ended, a night's sleep of the machine, a clock that jumped.
"""

import asyncio
import logging
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING, Any, Final

from core.reminders.delivery import Postman
from core.store.servertime import steady

if TYPE_CHECKING:
    from apscheduler.schedulers.asyncio import AsyncIOScheduler

SWEEP_SECONDS: Final = 30
REST_SECONDS: Final = 0.1  # from one round to the next that somebody rings for: under a crowd one serves many
SNAG: Final = timedelta(seconds=5)  # the wait when something is due and cannot be sent just now
SET_BACK_SECONDS: Final = 5.0  # judgement: less than that is slewed, and costs a try no more
TIDY_EVERY: Final = timedelta(days=1)
WAKE: Final = "wake"

log = logging.getLogger(__name__)


class Clock:
    """Rings when it is time. `now` tells the time, aware UTC; the machine's own clock only times the wait."""

    def __init__(self, now: Callable[[], datetime]) -> None:
        self.now: Final = now
        self._bell: Final = asyncio.Event()
        self._rung: asyncio.TimerHandle | None = None  # what will sound the bell, once it was rung for
        self._rested_at = 0.0  # when the last round ended, by the loop's clock
        self._loop: asyncio.AbstractEventLoop | None = None
        self._scheduler: AsyncIOScheduler | None = None
        self._wake_at: datetime | None = None
        self._tidied_at: datetime | None = None
        self._seen: tuple[datetime, float] | None = None  # the time at the last round, and what was counted by then

    def ring(self) -> None:
        """Run a round at once, or a moment after the last. From any thread; before the clock runs it does nothing."""
        if self._loop is not None:
            self._loop.call_soon_threadsafe(self._ring)

    def _ring(self) -> None:
        if self._loop is not None and self._rung is None:
            self._rung = self._loop.call_at(self._rested_at + REST_SECONDS, self._sound)

    def _sound(self) -> None:
        self._rung = None
        self._bell.set()

    def wake_at(self, at: datetime) -> None:
        """Ring at that time, unless it rings before. Any thread may call it."""
        if self._loop is not None:
            self._loop.call_soon_threadsafe(self._set, at)

    async def run(self, postman: Postman[Any]) -> None:
        """Deliver what is due, wait for the bell, and so on until cancelled."""
        self._start()
        postman.bell = self.ring
        try:
            while True:
                self._bell.clear()
                # forgotten before the store is asked: what is put in from now on sets an alarm of its own
                self._wake_at = None
                await self._round(postman)
                await self._bell.wait()
        finally:
            postman.bell = None
            self._stop()

    async def _round(self, postman: Postman[Any]) -> None:
        try:
            await postman.call_the_roll()
            if self._was_set_back():
                await postman.set_back(self.now())
            due = await postman.next_due()
            if postman.in_hand or (due is not None and due <= self.now()):
                await postman.storm(self.now)
                due = await postman.next_due()
            await self._tidy(postman)
        except Exception:
            # whatever went wrong (a full disk, a bug), the clock goes on: the next message may well go out
            log.exception("a delivery round broke off")
            due = self.now() + SNAG
        if due is not None:
            self._set(max(due, self.now() + timedelta(milliseconds=1)))
        self._rested_at = asyncio.get_running_loop().time()

    def _was_set_back(self) -> bool:
        """Whether the time went back, or stood still, since this was asked last."""
        before, (now, count) = self._seen, (self.now(), steady())
        self._seen = now, count
        return before is not None and (now - before[0]).total_seconds() < count - before[1] - SET_BACK_SECONDS

    async def _tidy(self, postman: Postman[Any]) -> None:
        now = self.now()
        if self._tidied_at is None or abs(now - self._tidied_at) >= TIDY_EVERY:
            self._tidied_at = now
            await postman.tidy(now)

    def _set(self, at: datetime) -> None:
        if self._scheduler is None or (self._wake_at is not None and self._wake_at <= at):
            return
        self._wake_at = at
        run_date = datetime.now(UTC) + (at - self.now())
        self._scheduler.add_job(self._rings, "date", run_date=run_date, id=WAKE, replace_existing=True)

    async def _rings(self) -> None:
        # a coroutine, since APScheduler runs a plain function in a thread, and the bell belongs to the loop
        self._bell.set()

    def _start(self) -> None:
        from apscheduler.schedulers.asyncio import AsyncIOScheduler

        self._loop = asyncio.get_running_loop()
        # by default a job that is a second late would be dropped, and local time would be the host's
        self._scheduler = AsyncIOScheduler(
            event_loop=self._loop, timezone=UTC, job_defaults={"misfire_grace_time": None, "coalesce": True}
        )
        self._scheduler.add_job(self._rings, "interval", seconds=SWEEP_SECONDS, id="sweep")
        self._scheduler.start()

    def _stop(self) -> None:
        if self._scheduler is not None:
            self._scheduler.shutdown(wait=False)
        if self._rung is not None:
            self._rung.cancel()
        self._scheduler = self._loop = self._wake_at = self._rung = None


async def run(postman: Postman[Any], now: Callable[[], datetime]) -> None:
    """Deliver for as long as the program runs, on a clock of its own."""
    await Clock(now).run(postman)
