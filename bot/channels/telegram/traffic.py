"""What was sent lately, and so when the Bot API will take the next message.

The limits are guidance of the Bot API's FAQ: 30 messages a second overall, 1 a second to a chat (short bursts pass),
20 a minute to a group. What the API itself says (`retry_after`) always holds, for the chat that it was said of.
"""

from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from time import monotonic

REMEMBERED_CHATS = 10_000
CATCH_UP = 3  # beats: a reminder that was granted late does not slow those behind it; a clap it must not become


@dataclass(frozen=True)
class Pace:
    """How fast, in messages and seconds: a little below the limits, since the API counts on arrival, by its clock."""

    a_second: int = 29
    second: float = 1.03
    chat_gap: float = 1.05
    group_gap: float = 3.1
    a_minute_to_a_group: int = 20
    minute: float = 61.0
    patience: float = 20.0  # longer than this nobody waits here: the outbox does, under no lease
    chat_patience: float = 0.2  # a reminder for a busy chat goes back to the outbox, and others pass it
    yields_for: float = 1.0  # a reminder lets replies pass for so long: not for ever, however many they are
    sends_at_once: int = 16  # more connections cost the pool more than they bring

    @property
    def beat(self) -> float:
        """From one message to the next at full pace. [s]"""
        return self.second / self.a_second


def is_group(chat: str) -> bool:
    """Whether a chat has several members: the Bot API numbers groups below zero."""
    return chat.startswith("-")


class Traffic:
    """Counts what goes out and says how long to wait. Times are seconds of `time`, a clock that never goes back."""

    def __init__(self, pace: Pace, time: Callable[[], float] = monotonic) -> None:
        self.pace = pace
        self._time = time
        self._free_at: dict[str, float] = {}
        self._halted: dict[str, float] = {}
        self._to_group: dict[str, deque[float]] = {}
        self._lately: deque[float] = deque()
        self._next_reminder = 0.0

    def wait(self, chat: str, *, urgent: bool) -> float:
        """Seconds until this chat may get a message; replies are urgent and mind only what the API enforces."""
        now = self._time()
        until = max(self._halted.get(chat, 0.0), self._group_free_at(chat, now))
        if not urgent:
            until = max(until, self._free_at.get(chat, 0.0))
        return max(0.0, until - now)

    def wait_overall(self, *, urgent: bool) -> float:
        """Seconds until any chat at all may get a message; reminders go out one by one, a beat apart."""
        now = self._time()
        until = 0.0 if urgent else self._next_reminder
        self._forget(self._lately, now - self.pace.second)
        if len(self._lately) >= self.pace.a_second:
            until = max(until, self._lately[-self.pace.a_second] + self.pace.second)
        return max(0.0, until - now)

    def starts(self, chat: str, *, urgent: bool) -> None:
        """A message goes out now."""
        now = self._time()
        self._lately.append(now)
        if is_group(chat):
            self._to_group.setdefault(chat, deque()).append(now)
        if not urgent:
            self._next_reminder = max(self._next_reminder, now - CATCH_UP * self.pace.beat) + self.pace.beat
        self.arrived(chat)

    def arrived(self, chat: str) -> None:
        """It has been taken by now: the chat's gap counts from here."""
        self._free_at[chat] = self._time() + (self.pace.group_gap if is_group(chat) else self.pace.chat_gap)
        if len(self._free_at) > REMEMBERED_CHATS:
            self._forget_chats()

    def halt(self, chat: str, seconds: float) -> None:
        """The API wants silence in this chat."""
        self._halted[chat] = max(self._halted.get(chat, 0.0), self._time() + seconds)

    def _group_free_at(self, chat: str, now: float) -> float:
        sent = self._to_group.get(chat)
        if sent is None:
            return 0.0
        self._forget(sent, now - self.pace.minute)
        room = self.pace.a_minute_to_a_group
        return sent[-room] + self.pace.minute if len(sent) >= room else 0.0

    def _forget(self, times: deque[float], before: float) -> None:
        while times and times[0] <= before:
            times.popleft()

    def _forget_chats(self) -> None:
        now = self._time()
        self._free_at = {chat: until for chat, until in self._free_at.items() if until > now}
        self._halted = {chat: until for chat, until in self._halted.items() if until > now}
        recent = now - self.pace.minute
        self._to_group = {chat: sent for chat, sent in self._to_group.items() if sent and sent[-1] > recent}
