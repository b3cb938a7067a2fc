"""The one writer's place of a file, within this process: who marks what left goes before who begins a turn.

What left and is not marked would be said twice after a crash. Turns are many and can wait a moment.
Waiting here is woken at once; SQLite's own busy wait sleeps and polls.
"""

import threading
from collections import deque
from typing import Final


class Writer:
    """A lock with two queues. Any thread may wait."""

    def __init__(self) -> None:
        self._guard: Final = threading.Lock()
        self._taken = False
        self._first: Final[deque[threading.Event]] = deque()
        self._then: Final[deque[threading.Event]] = deque()

    def acquire(self, seconds: float, *, first: bool = False) -> bool:
        """Wait for the place, at most so long; whether it is ours. `first` passes all those who did not say it. [s]"""
        with self._guard:
            if not self._taken:
                self._taken = True
                return True
            mine = threading.Event()
            queue = self._first if first else self._then
            queue.append(mine)
        if mine.wait(seconds):
            return True
        with self._guard:
            if mine.is_set():  # handed over at the last moment
                return True
            queue.remove(mine)
            return False

    def release(self) -> None:
        """Hand it to the next, or leave it free."""
        with self._guard:
            self._taken = self._next()

    def hand_on(self, *, first: bool) -> bool:
        """Hand it to the next, or with `first` to the next of those only; where there is none it stays ours."""
        with self._guard:
            return self._next(first=first)

    def _next(self, *, first: bool = False) -> bool:
        queue = self._first if first else self._first or self._then
        if queue:
            queue.popleft().set()
            return True
        return False
