"""How long to leave the Bot API alone after it failed: longer each time, never in step with others."""

import random
from collections.abc import Callable
from datetime import timedelta
from time import monotonic

FIRST_WAIT, LONGEST_WAIT = 1.0, 60.0  # seconds
FAILURES_TO_OPEN = 4


class Circuit:
    """Counts failures in a row. Once it is open, one try at a time goes through until one succeeds."""

    def __init__(self, time: Callable[[], float] = monotonic) -> None:
        self._time = time
        self._failures = 0
        self._failed_at = 0.0
        self._closed_again_at = 0.0

    def begins(self) -> float:
        """A try begins; to be told when it failed."""
        return self._time()

    def failed(self, began: float) -> timedelta:
        """The API failed; the wait before the next try, doubled each time, with jitter against a herd.

        Tries that were under way side by side fail together: that counts once.
        """
        if began >= self._failed_at:
            self._failures += 1
        self._failed_at = self._time()
        longest = min(LONGEST_WAIT, FIRST_WAIT * float(1 << min(self._failures - 1, 10)))
        wait = longest * random.uniform(0.5, 1.0)
        if self._failures >= FAILURES_TO_OPEN:
            self._closed_again_at = self._failed_at + wait
        return timedelta(seconds=wait)

    def works(self) -> None:
        """The API answered, be it with a refusal."""
        self._failures, self._closed_again_at = 0, 0.0

    def shut(self, seconds: float) -> None:
        """The API wants silence from all of us. [s]"""
        self._closed_again_at = max(self._closed_again_at, self._time() + seconds)

    def wait(self) -> timedelta | None:
        """How long to stay away, None to go ahead. Whoever may go ahead after a wait holds the others back."""
        left = self._closed_again_at - self._time()
        if left > 0:
            return timedelta(seconds=left * random.uniform(1.0, 1.5))
        if self._failures >= FAILURES_TO_OPEN:
            self._closed_again_at = self._time() + FIRST_WAIT
        return None
