"""The real house behind the real door: store, talk, postman and channel, against the loopback Bot API."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

from bot.assembly import Built, build, newcomer
from bot.channels.telegram.account import Account
from bot.channels.telegram.channel import Manners, Telegram
from bot.channels.telegram.intake import House
from bot.channels.telegram.traffic import Pace
from core.store import outbox
from tests.telegram.loopback import BotApi

MONDAY = datetime(2027, 3, 1, 15, tzinfo=UTC)  # four in the afternoon in Vienna
MOST_ROUNDS = 400
AT_ONCE = Pace(chat_gap=0.0, group_gap=0.0, a_second=1000, a_minute_to_a_group=100_000)


class RealHouse:
    """A house on a store of its own. Its clock and the phones' stand still between its moves."""

    def __init__(self, server: BotApi, folder: Path, zone: str | None = "Europe/Vienna") -> None:
        self.standing = MONDAY
        self.server = server
        server.clock = self._phones
        self._delivering = 0
        # a first picture takes its time on a busy machine, and a time-out would be a repeat
        account = Account(server.token, server.url, read_timeout=15.0, poll_seconds=5)
        self.channel = Telegram(account, Manners(AT_ONCE, now=self.now))
        self.built: Built = build(f"sqlite:///{folder / 'house.db'}", newcomer(zone), self.channel.send)
        self.built.postman.marked = self.channel.marked
        self.built.postman.takes_along = True

    def now(self) -> datetime:
        """The time in the house."""
        return self.standing

    def _phones(self) -> float:
        """What the phones show. [s since 1970]"""
        return self.standing.timestamp()

    async def open(self) -> House:
        return House(self.built.receive, self.deliver)

    async def deliver(self, chat: str) -> None:
        self._delivering += 1
        try:
            await self.built.postman.replies(chat, self.now())
        finally:
            self._delivering -= 1

    async def round(self) -> int:
        """What falls due by now goes out."""
        return await self.built.postman.round(self.now())

    async def move(self, **by: float) -> None:
        """The clock moves on, and what falls due on the way goes out in order."""
        await self.move_to(self.now() + timedelta(**by))

    async def move_to(self, moment: datetime) -> None:
        """The clock moves on to a moment, and what falls due on the way goes out in order."""
        for _ in range(MOST_ROUNDS):
            due = self.built.next_due()
            if due is None or due > moment:
                break
            self.standing = max(self.now(), due)
            await self.round()
        self.standing = max(self.now(), moment)
        await self.round()

    async def settled(self) -> None:
        """Wait until every update was taken, and each answer has gone out or waits for a later time."""
        await self.server.until(lambda: not self.server.pending)
        # what is not claimed yet is owed; what is claimed is being delivered
        await self.server.until(lambda: not self._owes() and not self._delivering)

    def _owes(self) -> bool:
        """Whether an answer waits that could go out now."""
        due = outbox.next_due(self.built.house, sorts=("reply",))
        return due is not None and due <= self.now()

    def close(self) -> None:
        self.built.close()
