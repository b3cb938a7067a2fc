"""Counts of what the bot does, kept in memory from its start; of people nothing but how many."""

import threading
from collections import Counter
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from datetime import datetime
from time import perf_counter

from bot.reply import Message, Outgoing
from core.errors import NotDelivered, NotKept

# seconds of a turn, the estimate and the plan in it; a chat feels quick below a third of one
BOUNDS = (0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 10.0)


@dataclass
class Gauges:
    """Counters of one process. Any thread may count."""

    started: datetime
    updates: Counter[str] = field(default_factory=Counter)  # kept, repeated, not_kept
    sends: Counter[str] = field(default_factory=Counter)  # reply, reminder, repeat, failed, gone
    turns: Counter[float] = field(default_factory=Counter)  # upper bound of a turn's seconds -> how many
    turn_seconds: float = 0.0
    not_kept: str | None = None  # why the last turn was not kept; None once one was
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def receiving(self, receive: Callable[[Message, datetime], bool]) -> Callable[[Message, datetime], bool]:
        """The same turn, counted and timed."""

        def counted(message: Message, now: datetime) -> bool:
            began = perf_counter()
            try:
                new = receive(message, now)
            except NotKept as trouble:
                self._end("not_kept", perf_counter() - began, trouble.why)
                raise
            self._end("kept" if new else "repeated", perf_counter() - began, None)
            return new

        return counted

    def sending(self, send: Callable[[Outgoing], Awaitable[str]]) -> Callable[[Outgoing], Awaitable[str]]:
        """The same sending, counted."""

        async def counted(outgoing: Outgoing) -> str:
            try:
                key = await send(outgoing)
            except NotDelivered as trouble:
                self.sends["gone" if trouble.chat_gone else "failed"] += 1
                raise
            self.sends["repeat" if outgoing.repeat else "reply" if outgoing.reply.kind == "reply" else "reminder"] += 1
            return key

        return counted

    def _end(self, how: str, seconds: float, why: str | None) -> None:
        with self._lock:
            self.updates[how] += 1
            self.not_kept = why
            self.turn_seconds += seconds
            self.turns[next((bound for bound in BOUNDS if seconds <= bound), float("inf"))] += 1
