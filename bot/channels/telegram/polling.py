"""Updates by asking for them. The offset moves past an update only when its turn is kept.

While a turn runs, the next question names it as the first that is still wanted, so the Bot API hands it out again
(and we know it) together with what came after it: a slow turn delays its own chat only.
"""

import asyncio
import logging
import random
from collections import deque
from collections.abc import Awaitable, Callable, Sequence
from contextlib import suppress

from telegram.error import BadRequest, Conflict, InvalidToken, TelegramError

from bot.channels.telegram.account import BATCH, Flooded, RawUpdate, TokenRefused, Wire

TakeIn = Callable[[RawUpdate], Awaitable["asyncio.Future[bool]"]]

BREATH = 0.05  # seconds between two questions while turns run and nothing new comes
LONGEST_BREATH = 1.0
CROWD = BATCH // 2  # more than so many under way, and an answer would bring little but what is known
FIRST_BACK_OFF, LONGEST_BACK_OFF = 1.0, 30.0
KEPT_REMEMBERED = 10 * BATCH
CONFLICT_PAUSE = 10.0

log = logging.getLogger(__name__)


class Ledger:
    """Which updates were seen, which still run, and so what may be confirmed."""

    def __init__(self) -> None:
        self._next = 0
        self._running: set[int] = set()
        self._owed: set[int] = set()  # not kept at the first try: the Bot API must bring them again
        self._kept: deque[int] = deque(maxlen=KEPT_REMEMBERED)
        self.moved = asyncio.Event()

    @property
    def offset(self) -> int:
        """The first update that may not be confirmed yet; 0 before anything was seen."""
        return min(self._running | self._owed, default=self._next)

    @property
    def open(self) -> int:
        """How many updates are not kept yet."""
        return len(self._running | self._owed)

    @property
    def owes(self) -> bool:
        """Whether the house could not keep something."""
        return bool(self._owed)

    def new(self, updates: Sequence[RawUpdate]) -> list[RawUpdate]:
        """Those of an answer that are neither under way nor kept."""
        ids = {update["update_id"] for update in updates}
        self._forget_expired(ids)
        known = self._running.union(self._kept)
        fresh = [update for update in updates if update["update_id"] not in known]
        if ids and not fresh and not self.open:
            # numbers start anywhere after a week of silence: without this we would ask for the same for ever
            self._next = max(ids) + 1
        return fresh

    def begins(self, update: int) -> None:
        """A turn begins."""
        self._running.add(update)
        self._next = max(self._next, update + 1)

    def ends(self, update: int, *, kept: bool) -> None:
        """A turn has ended."""
        self._running.discard(update)
        if kept:
            self._kept.append(update)
            self._owed.discard(update)
        else:
            self._owed.add(update)
        self.moved.set()

    def _forget_expired(self, ids: set[int]) -> None:
        """What is owed and was not brought again is no longer there: the Bot API keeps updates for a day."""
        last = max(ids) if len(ids) == BATCH else float("inf")
        self._owed = {owed for owed in self._owed if owed in ids or owed > last or owed in self._running}


class Poller:
    """Asks for updates and hands each of them in once."""

    def __init__(self, wire: Wire, take: TakeIn, seconds: int) -> None:
        self._wire = wire
        self._take = take
        self._seconds = seconds
        self._failures = 0
        self.ledger = Ledger()

    async def run(self) -> None:
        """Poll until cancelled. Raises TokenRefused."""
        breath = BREATH
        while True:
            updates = await self._ask()
            fresh = self.ledger.new(updates) if updates is not None else []
            for update in fresh:
                await self._hand_in(update)
            breath = BREATH if fresh and not self.ledger.owes else min(LONGEST_BREATH, breath * 2)
            if self.ledger.open:
                await self._breathe(breath)

    async def confirm(self) -> None:
        """Tell the Bot API what is kept, so that it is not handed out once more after a restart."""
        if self.ledger.offset:
            await self._wire.raw_updates(self.ledger.offset, 0)

    async def _ask(self) -> Sequence[RawUpdate] | None:
        """One question; None where the Bot API could not be asked, after a while."""
        seconds = 0 if self.ledger.open else self._seconds
        try:
            updates = await self._wire.raw_updates(self.ledger.offset, seconds)
        except TelegramError as trouble:
            await self._bear(trouble)
            return None
        self._failures = 0
        return updates

    async def _bear(self, trouble: TelegramError) -> None:
        match trouble:
            case InvalidToken():
                raise TokenRefused("the Bot API refuses this token") from None
            case Conflict() if "webhook" in trouble.message.lower():
                log.warning("a webhook was set for this bot; it is removed, since we poll")
                await self._remove_webhook()
            case Conflict():
                log.error("another program polls with this bot's token (409): stop it, or use a webhook for several")
                await asyncio.sleep(CONFLICT_PAUSE * random.uniform(1.0, 1.5))
            case Flooded():
                await asyncio.sleep(trouble.seconds)
            case _:
                await asyncio.sleep(self._back_off(trouble))

    async def _remove_webhook(self) -> None:
        try:
            await self._wire.delete_webhook(drop_pending_updates=False)
        except TelegramError as trouble:
            await asyncio.sleep(self._back_off(trouble))

    def _back_off(self, trouble: TelegramError) -> float:
        self._failures += 1
        longest = min(LONGEST_BACK_OFF, FIRST_BACK_OFF * float(1 << min(self._failures - 1, 10)))
        wait = longest * random.uniform(0.5, 1.0)
        loud = log.error if isinstance(trouble, BadRequest) else log.warning
        loud("the Bot API cannot be asked (%s); again in %.1f s", type(trouble).__name__, wait)
        return wait

    async def _hand_in(self, update: RawUpdate) -> None:
        number = update["update_id"]
        self.ledger.begins(number)
        kept = await self._take(update)
        kept.add_done_callback(lambda future: self.ledger.ends(number, kept=future.result()))

    async def _breathe(self, longest: float) -> None:
        """Wait for the turns that run, but not so long that a slow one keeps new messages waiting.

        Of a crowd that waits its turn already, for a part of it: what is new would only wait behind it.
        """
        clock = asyncio.get_running_loop()
        few, longest = (CROWD, LONGEST_BREATH) if self.ledger.open > CROWD else (0, longest)
        ends = clock.time() + longest
        while self.ledger.open > few and (left := ends - clock.time()) > 0:
            self.ledger.moved.clear()
            with suppress(TimeoutError):
                async with asyncio.timeout(left):  # `wait_for` of Python 3.11 may swallow the end of the program
                    await self.ledger.moved.wait()
