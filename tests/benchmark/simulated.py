"""An event loop whose time is simulated: whoever sleeps an hour has slept it at once, and all clocks agree."""

import asyncio
from collections.abc import Awaitable, Callable
from typing import Any


class SimulatedLoop(asyncio.SelectorEventLoop):
    """Where every task waits, the clock jumps to the first that wakes. Nothing may wait for the real world."""

    def __init__(self) -> None:
        super().__init__()
        self._at = 0.0
        select = self._selector.select  # type: ignore[attr-defined]

        def jump(seconds: float | None) -> Any:
            self._at += max(0.0, seconds or 0.0)
            return select(0)

        self._selector.select = jump  # type: ignore[attr-defined]

    def time(self) -> float:
        return self._at


def simulate(main: Callable[[Callable[[], float]], Awaitable[None]]) -> None:
    """Run `main(time)` to its end in simulated time. [s]"""
    loop = SimulatedLoop()
    try:
        loop.run_until_complete(main(loop.time))
    finally:
        loop.close()


async def inline(work: Callable[..., Any], *arguments: Any) -> Any:
    """In place of asyncio.to_thread: in simulated time a thread takes none."""
    return work(*arguments)
