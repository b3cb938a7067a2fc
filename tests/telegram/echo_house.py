"""A house that answers each message with its own words, over a little outbox: enough to try the door alone."""

import asyncio
import threading
from dataclasses import dataclass, field
from datetime import datetime

from bot.channels.telegram.channel import Telegram
from bot.channels.telegram.intake import House
from bot.reply import Button, Message, Outgoing, Picture, Reply
from core.errors import NotDelivered, NotKept

HELD_AT_MOST = 60.0  # seconds


@dataclass
class EchoHouse:
    """`received` is what was kept, in order; `waiting` the outbox; `troubles` what sends came to."""

    received: list[Message] = field(default_factory=list)
    repeated: list[str] = field(default_factory=list)
    waiting: list[Outgoing] = field(default_factory=list)
    troubles: list[NotDelivered] = field(default_factory=list)
    keys: dict[str, str] = field(default_factory=dict)
    broken: list[Exception] = field(default_factory=list)  # what the next turns raise
    after_commit: list[Exception] = field(default_factory=list)  # a crash between commit and confirmation
    held: dict[str, threading.Event] = field(default_factory=dict)  # chat -> its turns wait for this
    begun: list[str] = field(default_factory=list)  # the chats whose turns began
    buttons: tuple[tuple[Button, ...], ...] = ()
    picture: Picture | None = None
    channel: Telegram | None = None
    patience: float = 0.0  # longest wait before a reply is tried again
    _lock: threading.Lock = field(default_factory=threading.Lock)

    async def open(self) -> House:
        return House(self.receive, self.deliver)

    def receive(self, message: Message, now: datetime) -> bool:
        self.begun.append(message.chat)
        if message.chat in self.held:
            self.held[message.chat].wait(HELD_AT_MOST)
        with self._lock:
            if self.broken:
                raise self.broken.pop(0)
            if message.key in {each.key for each in self.received}:
                self.repeated.append(message.key)
                return False
            self.received.append(message)
            self.waiting.append(self._echo(message, now))
            if self.after_commit:
                raise self.after_commit.pop(0)
            return True

    def _echo(self, message: Message, now: datetime) -> Outgoing:
        text = message.text or message.pressed or f"[{message.other}]"
        return Outgoing(f"re {message.key}", message.chat, now, Reply(text, self.buttons), self.picture)

    async def deliver(self, chat: str) -> None:
        """Send what waits for a chat; what failed goes back, to be tried again after its wait."""
        assert self.channel is not None
        while (outgoing := next((each for each in self.waiting if each.chat == chat), None)) is not None:
            self.waiting.remove(outgoing)
            try:
                self.keys[outgoing.id] = await self.channel.send(outgoing)
                self.channel.marked(outgoing.id)
            except NotDelivered as trouble:
                self.troubles.append(trouble)
                if trouble.after is None:
                    continue
                self.waiting.insert(0, outgoing)
                if trouble.after.total_seconds() > self.patience:
                    return
                await asyncio.sleep(trouble.after.total_seconds())


__all__ = ["EchoHouse", "NotKept"]
