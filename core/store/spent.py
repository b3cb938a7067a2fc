"""How often something is done in this process, and how long it takes in all."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from time import perf_counter
from typing import Final


class Spent:
    """Counted from the start of the process; any thread may count. `seconds` in all, `times` so often."""

    def __init__(self) -> None:
        self.seconds = 0.0
        self.times = 0
        self._guard: Final = threading.Lock()

    @contextmanager
    def timed(self) -> Iterator[None]:
        """Once more, and however long it takes in here."""
        began = perf_counter()
        try:
            yield
        finally:
            with self._guard:
                self.seconds += perf_counter() - began
                self.times += 1
