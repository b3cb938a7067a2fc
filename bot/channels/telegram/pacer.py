"""Whose turn it is to be sent: replies at once, reminders as fast as the Bot API allows and no faster.

A library's plain rate limiter made replies wait 30 s behind a storm of reminders; here replies never queue behind
them, and a reminder for a busy chat lets those for other chats pass.
"""

import asyncio
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from datetime import timedelta
from time import monotonic

from bot.channels.telegram.traffic import Pace, Traffic
from core.errors import NotDelivered


class Waiting:
    """A reminder that waits for its turn."""

    def __init__(self, chat: str) -> None:
        self.chat = chat
        self.turn: asyncio.Future[None] = asyncio.get_running_loop().create_future()


class Pacer:
    """Grants turns to send. Times in seconds."""

    def __init__(self, pace: Pace | None = None, time: Callable[[], float] = monotonic) -> None:
        self.pace = pace or Pace()
        self.traffic = Traffic(self.pace, time)
        self._queue: list[Waiting] = []
        self._changed = asyncio.Event()
        self._granting: asyncio.Task[None] | None = None
        self._slots = asyncio.Semaphore(self.pace.sends_at_once)
        self._reminder_slots = asyncio.Semaphore(self.pace.reminders_at_once)

    @asynccontextmanager
    async def turn(self, chat: str, *, urgent: bool) -> AsyncIterator[None]:
        """Wait for a turn and hold it while sending.

        Raises NotDelivered(after) where the wait would be longer than the patience of the pace.
        """
        await (self._urgent_turn(chat) if urgent else self._reminder_turn(chat))
        try:
            async with self._slots:
                yield
        finally:
            self.traffic.arrived(chat)
            if not urgent:
                self._reminder_slots.release()

    async def _urgent_turn(self, chat: str) -> None:
        while (wait := self.traffic.wait(chat, urgent=True)) > 0:
            _refuse_if_longer(self.pace.patience, wait)
            await asyncio.sleep(wait)
        self.traffic.starts(chat, urgent=True)

    async def _reminder_turn(self, chat: str) -> None:
        _refuse_if_longer(self.pace.chat_patience, self.traffic.wait(chat, urgent=False))
        _refuse_if_longer(self.pace.patience, len(self._queue) * self.pace.second / self.pace.reminders_a_second)
        waiting = Waiting(chat)
        self._queue.append(waiting)
        self._wake()
        try:
            await asyncio.wait({waiting.turn}, timeout=self.pace.patience)
        except asyncio.CancelledError:
            self._withdraw(waiting)
            raise
        if not waiting.turn.done():
            self._queue.remove(waiting)
            raise NotDelivered(after=timedelta(seconds=max(1.0, self.traffic.wait(chat, urgent=False))), paced=True)

    def _withdraw(self, waiting: Waiting) -> None:
        if waiting.turn.done():
            self._reminder_slots.release()
        else:
            self._queue.remove(waiting)

    def _wake(self) -> None:
        self._changed.set()
        if self._granting is None or self._granting.done():
            self._granting = asyncio.create_task(self._grant())

    async def _grant(self) -> None:
        while self._queue:
            await self._reminder_slots.acquire()
            waiting = await self._next()
            if waiting is None:
                self._reminder_slots.release()
                return
            self._queue.remove(waiting)
            self.traffic.starts(waiting.chat, urgent=False)
            waiting.turn.set_result(None)

    async def _next(self) -> Waiting | None:
        """The first in the queue whose chat is free, once there is one; None when all have gone away."""
        while self._queue:
            self._changed.clear()
            pause, first = min(
                ((self.traffic.wait(each.chat, urgent=False), each) for each in self._queue), key=lambda pair: pair[0]
            )
            pause = max(pause, self.traffic.wait_for_reminder())
            if pause <= 0:
                return first
            await self._sleep(pause)
        return None

    async def _sleep(self, seconds: float) -> None:
        """Until then, or until the queue changes."""
        try:
            await asyncio.wait_for(self._changed.wait(), seconds)
        except TimeoutError:
            return


def _refuse_if_longer(patience: float, wait: float) -> None:
    if wait > patience:
        raise NotDelivered(after=timedelta(seconds=wait), paced=True)
