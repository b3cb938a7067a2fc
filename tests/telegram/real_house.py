"""The real house behind the real door: store, talk, postman and channel, against the loopback Bot API."""

import asyncio
from datetime import UTC, datetime, timedelta
from pathlib import Path

from bot.assembly import Built, build, newcomer
from bot.channels.telegram.account import Account
from bot.channels.telegram.channel import Manners, Telegram
from bot.channels.telegram.intake import House
from bot.channels.telegram.traffic import Pace
from tests.telegram.loopback import BotApi

MOST_ROUNDS = 400
AT_ONCE = Pace(chat_gap=0.0, group_gap=0.0, reminders_a_second=1000, a_minute_to_a_group=100_000)


class RealHouse:
    """A house on a store of its own. `ahead` moves its clock on from the machine's."""

    def __init__(self, server: BotApi, folder: Path, zone: str | None = "Europe/Vienna") -> None:
        self.standing: datetime | None = None  # a clock that stands still between its moves
        self.ahead = timedelta(0)
        # a first picture takes its time on a busy machine, and a time-out would be a repeat
        account = Account(server.token, server.url, read_timeout=15.0, poll_seconds=5)
        self.channel = Telegram(account, Manners(AT_ONCE, now=self.now))
        self.built: Built = build(f"sqlite:///{folder / 'house.db'}", newcomer(zone), self.channel.send)

    def now(self) -> datetime:
        """The time in the house."""
        return self.standing or datetime.now(UTC) + self.ahead

    async def open(self) -> House:
        return House(self.built.receive, self.deliver)

    async def deliver(self, chat: str) -> None:
        await self.built.postman.replies(chat, self.now())

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
            self._set(max(self.now(), due))
            await self.round()
        self._set(max(self.now(), moment))
        await self.round()

    def _set(self, moment: datetime) -> None:
        if self.standing is not None:
            self.standing = moment
        else:
            self.ahead = moment - datetime.now(UTC) + timedelta(milliseconds=5)

    def close(self) -> None:
        self.built.close()


async def settled(server: BotApi, chat: int, quiet: float = 0.3) -> None:
    """Wait until every update was taken and nothing more reaches a chat for a while."""
    await server.until(lambda: not server.pending, 20)
    count, same = -1, 0
    while same < 3:
        same = same + 1 if count == len(server.to(chat)) else 0
        count = len(server.to(chat))
        await asyncio.sleep(quiet / 2)
