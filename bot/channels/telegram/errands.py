"""One errand a chat at a time; asked for again while it runs, it runs once more."""

import asyncio
import logging
from collections.abc import Awaitable, Callable

log = logging.getLogger(__name__)


class Errands:
    """Runs `errand(chat)` in the background, never twice at once for the same chat."""

    def __init__(self, errand: Callable[[str], Awaitable[None]]) -> None:
        self._errand = errand
        self._tasks: dict[str, asyncio.Task[None]] = {}
        self._again: set[str] = set()

    def run(self, chat: str) -> None:
        """See to it that the errand runs once from its start, from now on."""
        if chat in self._tasks:
            self._again.add(chat)
        else:
            self._tasks[chat] = asyncio.create_task(self._go(chat))

    async def finish(self) -> None:
        """Wait until nothing runs."""
        while self._tasks:
            await asyncio.wait(self._tasks.values())

    async def _go(self, chat: str) -> None:
        try:
            wanted = True
            while wanted:
                self._again.discard(chat)
                await self._errand(chat)
                wanted = chat in self._again
        except Exception as fault:  # what waits stays in the outbox, and the next round tries it
            log.error("replies of a chat were not delivered now (%s)", type(fault).__name__)
        finally:
            self._again.discard(chat)
            del self._tasks[chat]
