"""Whose turn it is to be sent: replies at once, reminders as fast as the Bot API allows and no faster.

A library's plain rate limiter made replies wait 30 s behind a storm of reminders; here replies never queue behind
them, what breaks the quiet hours goes before what does not, and a reminder for a busy chat lets those for others pass.

One message leaves at a time: the next when the last is marked in the outbox. So at a crash one is in doubt, however
busy the machine is; nobody waits longer than a second for another that hangs, nor than another second for its mark. In
a crowd, from where more than a few wait until nobody does, the pace goes first: the next leaves a beat after the last
where that is still on its way, and as many are in doubt as the pace needs at the speed of the API, two where it answers
within two beats.
"""

import asyncio
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager, suppress
from dataclasses import dataclass, field, replace
from datetime import timedelta
from math import inf
from time import monotonic

from bot.channels.telegram.traffic import Pace, Traffic
from core.errors import NotDelivered

MARK_SECONDS = 1.0  # what arrived is waited for so long to be marked; a store takes milliseconds. Judgement
HANG_SECONDS = 1.0  # and what left to arrive; the API takes a tenth. Judgement
FEW = 5  # that wait or are on their way: one after the other they leave within a breath. Judgement
LEAST = 0.001  # what is shorter than a clock can tell is no wait


@dataclass(eq=False)
class Waiting:
    """A message that waits for its turn: `urgent` a reply, `piercing` a reminder that lets none pass.

    `of` is who will be told of as marked; None: nobody.
    """

    chat: str
    urgent: bool
    of: str | None
    since: float
    piercing: bool = False
    turn: "asyncio.Future[None]" = field(default_factory=lambda: asyncio.get_running_loop().create_future())


class Pacer:
    """Grants turns to send. Times in seconds."""

    def __init__(self, pace: Pace | None = None, time: Callable[[], float] = monotonic) -> None:
        self._whole = pace or Pace()
        self._time = time
        self.traffic = Traffic(self._whole, time)
        self._queue: list[Waiting] = []
        self._under_way = 0
        self._crowd = False  # whether more than a few waited since the last time that nobody did
        self._last: tuple[Waiting, float, bool] | None = None  # what left last, till it is marked; since; if it arrived
        self._changed = asyncio.Event()
        self._granting: asyncio.Task[None] | None = None

    @property
    def pace(self) -> Pace:
        """How fast we may go."""
        return self.traffic.pace

    def shared_by(self, processes: int) -> None:
        """So many processes send with this account: each has its part of the pace."""
        room, group = self._whole.a_second // processes, self._whole.a_minute_to_a_group // processes
        self.traffic.pace = replace(self._whole, a_second=max(1, room), a_minute_to_a_group=max(1, group))

    def marked(self, of: str) -> None:
        """What was sent under this name is marked: it is in doubt no longer."""
        if self._last is not None and self._last[0].of == of:
            self._last = None
            self._changed.set()

    @asynccontextmanager
    async def turn(
        self, chat: str, *, urgent: bool, of: str | None = None, piercing: bool = False
    ) -> AsyncIterator[None]:
        """Wait for a turn and hold it while sending. Whoever names `of` says later that it is `marked`.

        Raises NotDelivered(after) where the wait would be longer than the patience of the pace.
        """
        waiting = Waiting(chat, urgent, of, self._time(), piercing)
        await self._granted(waiting)
        arrived = False
        try:
            yield
            arrived = True
        finally:
            self.traffic.arrived(chat)
            self._end(waiting, in_doubt=arrived and of is not None)

    async def _granted(self, waiting: Waiting) -> None:
        pace = self.pace
        patience = pace.patience if waiting.urgent else pace.chat_patience
        self._refuse_if_longer(patience, self.traffic.wait(waiting.chat, urgent=waiting.urgent))
        if not waiting.urgent:
            self._refuse_if_longer(pace.patience, len(self._queue) * pace.beat)
        self._queue.append(waiting)
        self._crowd = self._crowd or len(self._queue) + self._under_way > FEW
        self._wake()
        try:
            await asyncio.wait({waiting.turn}, timeout=pace.patience)
        except asyncio.CancelledError:
            self._withdraw(waiting)
            raise
        if not waiting.turn.done():
            self._queue.remove(waiting)
            wait = self.traffic.wait(waiting.chat, urgent=waiting.urgent)
            raise NotDelivered(after=timedelta(seconds=max(1.0, wait)), paced=True)

    def _withdraw(self, waiting: Waiting) -> None:
        if waiting.turn.done():
            self._end(waiting, in_doubt=False)
        else:
            self._queue.remove(waiting)

    def _end(self, waiting: Waiting, *, in_doubt: bool) -> None:
        self._under_way -= 1
        if self._last is not None and self._last[0] is waiting:
            self._last = (waiting, self._time(), True) if in_doubt else None
        self._changed.set()

    def _wake(self) -> None:
        self._changed.set()
        if self._granting is None or self._granting.done():
            self._granting = asyncio.create_task(self._grant())

    async def _grant(self) -> None:
        while self._queue:
            self._changed.clear()
            pause, first = self._next()
            if pause > 0:
                await self._sleep(pause)
                continue
            self._queue.remove(first)
            self._under_way += 1
            self._last = first, self._time(), False
            self.traffic.starts(first.chat, urgent=first.urgent)
            first.turn.set_result(None)
        self._crowd = False

    def _next(self) -> tuple[float, Waiting]:
        """Who goes next, and in how many seconds: replies first, and with them a reminder that yields to none, or did
        so long enough."""
        now = self._time()
        yields = now - self.pace.yields_for
        waits = [(self._wait(each, now), _class(each, yields)) for each in self._queue]
        place = min(range(len(waits)), key=waits.__getitem__)
        return waits[place][0], self._queue[place]

    def _wait(self, waiting: Waiting, now: float) -> float:
        if self._under_way >= self.pace.sends_at_once:
            return inf
        own = self.traffic.wait(waiting.chat, urgent=waiting.urgent)
        return max(own, self.traffic.wait_overall(urgent=waiting.urgent), self._wait_for_mark(waiting, now))

    def _wait_for_mark(self, waiting: Waiting, now: float) -> float:
        if self._last is None or (waiting.of is not None and self._last[0].of == waiting.of):
            return 0.0
        _, since, arrived = self._last
        patience = MARK_SECONDS if arrived else self.pace.beat if self._crowd else HANG_SECONDS
        return max(0.0, since + patience - now)

    async def _sleep(self, seconds: float) -> None:
        """Until then, or until something changes."""
        with suppress(TimeoutError):
            async with asyncio.timeout(None if seconds == inf else max(seconds, LEAST)):
                await self._changed.wait()

    @staticmethod
    def _refuse_if_longer(patience: float, wait: float) -> None:
        if wait > patience:
            raise NotDelivered(after=timedelta(seconds=wait), paced=True)


def _class(waiting: Waiting, yields: float) -> int:
    """Whom a message goes before, where several could leave: first what is piercing, last what still yields."""
    if waiting.piercing:
        return 0
    return 1 if waiting.urgent or waiting.since <= yields else 2
