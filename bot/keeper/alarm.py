"""When the store keeps nothing the outbox cannot speak: who says something is told past it, once, and the keeper."""

import asyncio
import logging
from collections.abc import Awaitable, Callable
from datetime import datetime

from bot.reply import Message, Outgoing, Reply
from bot.wording import keeper as words
from core.errors import NotDelivered, NotKept

log = logging.getLogger(__name__)


class Alarm:
    """Tells each chat once that its message is not kept, until something is kept again.

    `loop` is that of the channel; turns run in threads. `keeper` is the keeper's chat, None where none is set.
    """

    def __init__(self, send: Callable[[Outgoing], Awaitable[str]], keeper: str | None) -> None:
        self._send = send
        self._keeper = keeper
        self._told: set[str] = set()
        self._running: set[asyncio.Task[None]] = set()
        self._loop = asyncio.get_running_loop()

    def receiving(self, receive: Callable[[Message, datetime], bool]) -> Callable[[Message, datetime], bool]:
        """The same turn; where it is not kept, people are told."""

        def watched(message: Message, now: datetime) -> bool:
            try:
                new = receive(message, now)
            except NotKept as trouble:
                self._loop.call_soon_threadsafe(self._tell, message.chat, trouble.why, now)
                raise
            if self._told:
                self._loop.call_soon_threadsafe(self._told.clear)
            return new

        return watched

    def _tell(self, chat: str, why: str, now: datetime) -> None:
        self._once(chat, words.not_kept(), now)
        if self._keeper is not None:
            self._once(f"keeper {self._keeper}", words.store_in_trouble(why), now)

    def _once(self, whom: str, text: str, now: datetime) -> None:
        if whom in self._told:
            return
        self._told.add(whom)
        chat = whom.removeprefix("keeper ")
        task = asyncio.ensure_future(self._out(Outgoing(f"alarm {whom} {now.timestamp()}", chat, now, Reply(text))))
        self._running.add(task)
        task.add_done_callback(self._running.discard)

    async def _out(self, outgoing: Outgoing) -> None:
        try:
            await self._send(outgoing)
        except NotDelivered:
            log.error("a chat could not be told that its message is not kept")
