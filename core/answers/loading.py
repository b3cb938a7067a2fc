"""What takes a second to load, once a process: by one thread while the others wait, and by none that holds the store.

A turn runs within `nothing_loads`: where it needs what was never loaded, it breaks off with NotLoaded before anything
of it is kept. Whoever began it loads that then, while nobody waits for the store, and begins the turn anew.
"""

import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from functools import partial
from typing import Final, Generic, TypeVar

Made = TypeVar("Made")

_FORBIDDEN: Final[ContextVar[bool]] = ContextVar("no loading here", default=False)


class NotLoaded(Exception):
    """It is not loaded yet, and must not be here; `load` does it, or waits until another thread has done it."""

    def __init__(self, load: Callable[[], object]) -> None:
        super().__init__()
        self.load: Final = load


class Once(Generic[Made]):
    """What `make` gives for a name, made by the first who asks for it. Raises NotLoaded; what `make` raises."""

    def __init__(self, make: Callable[[str], Made]) -> None:
        self._make: Final = make
        self._made: Final[dict[str, Made]] = {}
        self._making: Final = threading.Lock()

    def __call__(self, name: str) -> Made:
        """What goes with a name."""
        if name in self._made:
            return self._made[name]
        if _FORBIDDEN.get():
            raise NotLoaded(partial(self, name))
        with self._making:
            if name not in self._made:
                self._made[name] = self._make(name)
        return self._made[name]

    def forget(self) -> None:
        """As at the start of the process."""
        self._made.clear()


@contextmanager
def nothing_loads() -> Iterator[None]:
    """In here nothing is loaded: what is missing raises NotLoaded."""
    before = _FORBIDDEN.set(True)
    try:
        yield
    finally:
        _FORBIDDEN.reset(before)
