"""One round of the postman: claim what is due, let it be put in words, send it, mark it.

At least once: a crash between send and mark repeats that message. Chats are served side by side, each in its own
order; the channel lets the next message leave when the last is marked, or when it takes too long. The postman is told
the time; it waits for nothing but the channel.
"""

import asyncio
import logging
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, Final, Generic, TypeVar

from core.errors import NotDelivered, NotKept
from core.store import chats, due, outbox, standing
from core.store.database import Database, Transaction
from core.store.outbox import Row
from core.store.roll import Roll
from core.store.tidy import tidy

Rendered = TypeVar("Rendered")

LEASE: Final = timedelta(seconds=120)  # longer than any send that a channel allows
PATIENCE: Final = timedelta(seconds=5)  # the first wait after a failure; it doubles
LONGEST: Final = timedelta(minutes=5)
SHORTEST: Final = timedelta(seconds=1)  # a wait of nothing would claim the same row for ever
SIDE_BY_SIDE: Final = 8  # what a storm at the full pace has in hand: put in words, waiting for a turn, on its way
AGAIN_AFTER: Final = (0.2, 1.0, 3.0, 9.0, 27.0)  # seconds; with the waits for the store itself well within the lease
RENDER_TRIES: Final = 5  # a sentence that cannot be made five times will not be made

log = logging.getLogger(__name__)


@dataclass(frozen=True)
class Later:
    """In place of words: the row waits until a moment (aware UTC), and no try was made."""

    until: datetime


@dataclass(frozen=True)
class Together(Generic[Rendered]):
    """Words that say other waiting rows too: these are marked with the one that went out."""

    words: Rendered
    rows: tuple[str, ...]


class Postman(Generic[Rendered]):
    """Sends what the outbox holds.

    Parameters
    ----------
    render
        A row into what the channel is handed, alone or together with other rows; `Later` where its time is not now,
        None where there is nothing to say any more. Runs in a thread.
    send
        Hands it to the channel; the channel's key of the message. Raises NotDelivered.
    owner
        The name of this process among those that share the store.
    lease
        How long a claim lasts: longer than the longest send.
    """

    def __init__(
        self,
        database: Database,
        render: Callable[[Row, datetime], Rendered | Together[Rendered] | Later | None],
        send: Callable[[Rendered], Awaitable[str]],
        owner: str,
        lease: timedelta = LEASE,
    ) -> None:
        self.database: Final = database
        self.render: Final = render
        self.send: Final = send
        self.owner: Final = owner
        self.lease: Final = lease
        self.bell: Callable[[], None] | None = None
        self.takes_along = False  # whether every turn is followed by `replies` of its chat
        self.stands: Callable[[Row], bool] = lambda _: False  # whether its words stand: then no thread is worth it
        self.marked: Callable[[str], None] | None = None  # told the row of which nothing is in doubt any more
        self.shared_by: Callable[[int], None] | None = None  # told how many processes send by the same channel
        self.agree: Callable[[Database], None] | None = None  # sets our clock by that of the store's server
        self._roll: Final = Roll(database, owner)
        # on a server another process may commit an answer between our look for it and our commit
        self._alone: Final = database.on_sqlite
        self._claiming: Final = asyncio.Lock()
        self._held: Final[dict[str, Row]] = {}  # by its id, from when it is taken until it is marked
        self._in_hand: Final[dict[str, Row]] = {}  # by chat: taken with the turn or the mark before it, not yet sent

    @property
    def busy(self) -> bool:
        """Whether something is in flight just now."""
        return bool(self._held)

    @property
    def in_hand(self) -> bool:
        """Whether something was taken that nobody has begun to send."""
        return bool(self._in_hand)

    async def round(self, now: datetime) -> int:
        """Send everything that is due at `now`, in order; how many messages went out."""
        count = 0
        while (out := await self.one(now)) is not None:
            count += out
        self._ring()
        return count

    async def one(self, now: datetime) -> bool | None:
        """Take the next thing that is due: whether it went out, None where nothing is due."""
        row = await self._take(now, due.SORTS, None)
        return None if row is None else await self._hand_over(row, now)

    async def storm(self, now: Callable[[], datetime], lanes: int = SIDE_BY_SIDE) -> None:
        """Send everything that is due, chats side by side. The time is asked for each: a storm takes minutes.

        What breaks ends one lane; the others finish what they have in hand, and then it is raised.
        """
        beside: list[asyncio.Task[None]] = []
        try:
            while (row := await self._take(moment := now(), due.SORTS, None)) is not None:
                if lanes > 1 and (not beside or beside[-1].done()):
                    beside.append(asyncio.create_task(self.storm(now, lanes - 1)))
                await self._hand_over(row, moment)
        except asyncio.CancelledError:
            _ = [lane.cancel() for lane in beside]
            raise
        finally:
            ended = await asyncio.gather(*beside, return_exceptions=True)
        if broken := next((one for one in ended if one is not None), None):
            raise broken

    async def replies(self, chat: str, now: datetime) -> int:
        """Send the waiting replies of one chat, in order; never waits for a reminder."""
        count, more = 0, True
        try:
            while more and (row := await self._take(now, ("reply",), chat)) is not None:
                out = await self._hand_over(row, now, with_the_next=self._alone)
                count += out
                more = not (out and self._alone) or chat in self._in_hand  # the next was looked for with the mark
        finally:  # where the store was too busy to say what waits, the clock asks it again
            self._ring()
        return count

    def take_reply(self, tx: Transaction, chat: str, now: datetime) -> Row | None:
        """Take the first reply of a chat that may go out, in the transaction that puts it in; then `hand` it over."""
        held = tuple(self._held.values())
        if not self.takes_along or any(row.chat == chat and row.sort == "reply" for row in held):
            return None  # the next is taken with the mark of the one on its way
        return outbox.next_reply(tx, chat, self._claim(now))

    def hand(self, row: Row) -> None:
        """What `take_reply` took is committed: it goes out with the next errand of its chat. From any thread."""
        self._held[row.id] = row
        self._in_hand[row.chat] = row

    async def next_due(self) -> datetime | None:
        """When there will be something to send."""
        return await asyncio.to_thread(outbox.next_due, self.database, tuple(self._held))

    async def call_the_roll(self) -> None:
        """Agree on the time, take over what a dead replica had in hand, and share the pace with those that live."""
        if self.database.on_sqlite:
            return
        if self.agree is not None:
            await asyncio.to_thread(self.agree, self.database)
        await asyncio.to_thread(self._roll.call)
        if self.shared_by is not None:
            self.shared_by(await asyncio.to_thread(self._roll.alive))

    def leave(self) -> None:
        """Be counted among the replicas no longer."""
        self._roll.leave()

    async def set_back(self, now: datetime) -> None:
        """The clock was set back to `now`: no try waits for the time that it showed before."""
        await asyncio.to_thread(outbox.set_back, self.database, now)

    async def tidy(self, now: datetime) -> None:
        """Forget what nobody will ask for again."""
        await asyncio.to_thread(tidy, self.database, now)

    def _ring(self) -> None:
        # whoever brought us here may have put in reminders too: the clock looks when the next one is due
        if self.bell is not None:
            self.bell()

    def _claim(self, now: datetime) -> outbox.Claim:
        return outbox.Claim(now, self.lease, self.owner)

    def _from_hand(self, chat: str | None) -> Row | None:
        found = next(iter(self._in_hand), None) if chat is None else chat
        return None if found is None else self._in_hand.pop(found, None)

    async def _take(self, now: datetime, sorts: tuple[str, ...], chat: str | None) -> Row | None:
        if (row := self._from_hand(chat)) is not None:
            return row
        # one claim after another, so that each knows what is held
        async with self._claiming:
            claim = (self.database, now, self.lease, 1, self.owner, sorts, chat, tuple(self._held))
            for row in await asyncio.to_thread(outbox.claim, *claim):
                self._held[row.id] = row
                return row
        return None

    async def _hand_over(self, row: Row, now: datetime, *, with_the_next: bool = False) -> bool:
        try:
            return await self._deliver(row, now, with_the_next)
        finally:
            self._held.pop(row.id, None)
            if self.marked is not None:
                self.marked(row.id)

    async def _deliver(self, row: Row, now: datetime, with_the_next: bool) -> bool:
        try:
            rendered = self.render(row, now) if self.stands(row) else await asyncio.to_thread(self.render, row, now)
        except Exception:
            log.exception("outbox row %s cannot be put in words", row.id)
            await asyncio.to_thread(self._unspeakable, row, now)
            return False
        if rendered is None:
            await self._insist(outbox.withdraw, self.database, row)
            return False
        if isinstance(rendered, Later):
            await self._insist(standing.hold, self.database, row, rendered.until)
            return False
        words, others = (rendered.words, rendered.rows) if isinstance(rendered, Together) else (rendered, ())
        try:
            key = await self.send(words)
        except NotDelivered as trouble:
            await self._insist(self._failed, row, trouble, now)
            return False
        return await self._insist(self._sent, row, (now, key), others, with_the_next)

    async def _insist(self, keep: Callable[..., Any], *given: Any) -> bool:
        """Keep what became of a row, tried again while it is ours: else it is said twice, and after the lease."""
        for seconds in AGAIN_AFTER:
            try:
                return bool(await asyncio.to_thread(keep, *given))
            except NotKept:
                log.warning("what became of a message was not kept; again in %s s", seconds)
                await asyncio.sleep(seconds)
        return bool(await asyncio.to_thread(keep, *given))

    def _sent(self, row: Row, told: tuple[datetime, str], others: tuple[str, ...], with_the_next: bool) -> bool:
        """Mark what went out and all that it said, and take the next reply of the chat along: one commit for all."""
        following = None
        with self.database.transaction(first=True) as tx:
            out = outbox.mark_sent(tx, row, *told)
            if others:
                standing.said_too(tx, others, *told)
            if out and with_the_next:
                following = outbox.next_reply(tx, row.chat, self._claim(told[0]))
        if following is not None:
            self.hand(following)
        return out

    def _unspeakable(self, row: Row, now: datetime) -> None:
        if row.attempts >= RENDER_TRIES:
            outbox.give_up(self.database, row, "cannot be put in words")
        else:
            outbox.put_back(self.database, row, now + _patience(row), alone=True)

    def _failed(self, row: Row, trouble: NotDelivered, now: datetime) -> None:
        """What becomes of a row that the channel did not take."""
        if trouble.moved_to is not None:
            self._move(row, trouble.moved_to, now)
        elif trouble.chat_gone:
            self._lose(row)
        elif trouble.uncertain:
            wait = _patience(row) if row.sort == "reply" else max(self.lease, _patience(row))
            outbox.unsure(self.database, row, now + max(trouble.after or SHORTEST, wait))
        elif trouble.after is None:
            log.error("outbox row %s (%s, %s) was refused and is given up", row.id, row.sort, row.kind)
            outbox.give_up(self.database, row, "refused by the channel")
        elif trouble.paced:
            outbox.not_tried(self.database, row, now + max(trouble.after, SHORTEST))
        else:
            wait = SHORTEST if row.attempts == 1 else _patience(row)
            outbox.put_back(self.database, row, now + max(trouble.after, wait))

    def _move(self, row: Row, chat: str, now: datetime) -> None:
        with self.database.transaction() as tx:
            chats.moved(tx, row.chat, chat)
        # a channel that sends us from one chat to the next and back is not followed for ever
        wait = timedelta(0) if row.attempts == 1 else _patience(row)
        outbox.put_back(self.database, row, now + wait, alone=True)

    def _lose(self, row: Row) -> None:
        outbox.give_up(self.database, row, outbox.GONE)
        with self.database.transaction() as tx:
            outbox.chat_gone(tx, row.chat)


def _patience(row: Row) -> timedelta:
    """How long to wait after this try: twice as long each time, within limits."""
    doublings = min(row.attempts - 1, 10)
    return min(PATIENCE * (1 << doublings), LONGEST)
