"""From a raw update to a turn that is kept: in order within a chat, chats side by side, none lost, none poisonous.

An update may be confirmed (offset moved, 200 answered) when its `Kept` future says True: its turn is committed, or
there was nothing in it for the house. False means that it must come again.
"""

import asyncio
import logging
import traceback
from collections import deque
from collections.abc import Awaitable, Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from datetime import datetime

import telegram as api

from bot.channels.telegram.account import RawUpdate
from bot.channels.telegram.errands import Errands
from bot.channels.telegram.updates import Me, message_from
from bot.reply import Message
from core.errors import NotKept

TURNS_AT_ONCE = 16
TRIALS = 3  # a turn that breaks for another reason than the store is a fault of ours: it must not block its chat
PAUSE_BETWEEN_TRIALS = 0.2  # seconds

log = logging.getLogger(__name__)


@dataclass(frozen=True)
class Menu:
    """The commands offered to people of one language (None: everybody) in one kind of chat."""

    commands: tuple[tuple[str, str], ...]
    language: str | None = None
    chats: str = "all"  # "all", "private" or "group"


@dataclass(frozen=True)
class House:
    """What stands behind the door. `receive` runs one whole turn and commits; `deliver` sends what waits for a chat."""

    receive: Callable[[Message, datetime], bool]
    deliver: Callable[[str], Awaitable[None]]
    menus: tuple[Menu, ...] = ()


@dataclass
class Arrival:
    """A message on its way into the house, and the tap that wants an answer."""

    message: Message
    tap: str | None
    kept: "asyncio.Future[bool]" = field(default_factory=lambda: asyncio.get_running_loop().create_future())


@dataclass(frozen=True)
class Doorway:
    """What an intake needs of its surroundings: who we are, the house, the clock, and how a tap is answered."""

    me: Callable[[], Awaitable[Me]]
    house: Callable[[], Awaitable[House]]
    now: Callable[[], datetime]
    answer_tap: Callable[[str], Awaitable[None]]


class Intake:
    """Takes updates, one lane a chat, at most `turns_at_once` turns at a time."""

    def __init__(self, doorway: Doorway, turns_at_once: int = TURNS_AT_ONCE) -> None:
        self._doorway = doorway
        self._threads = ThreadPoolExecutor(turns_at_once, thread_name_prefix="turn")
        self._lanes: dict[str, deque[Arrival]] = {}
        self._running: set[asyncio.Task[None]] = set()
        self._errands = Errands(self._deliver)

    async def take(self, raw: RawUpdate) -> "asyncio.Future[bool]":
        """Put one update into its chat's lane; the future says whether it may be confirmed."""
        arrival = await self._read(raw)
        if arrival is None:
            nothing: asyncio.Future[bool] = asyncio.get_running_loop().create_future()
            nothing.set_result(True)
            return nothing
        self._put(arrival)
        return arrival.kept

    async def drain(self) -> None:
        """Wait until every turn that was taken in has ended and its replies were tried."""
        while self._running:
            await asyncio.wait(self._running)
        await self._errands.finish()
        self._threads.shutdown(wait=False)

    async def _read(self, raw: RawUpdate) -> Arrival | None:
        me = await self._doorway.me()
        try:
            update = api.Update.de_json(dict(raw), None)
            message = message_from(update, me, self._doorway.now())
        except Exception as oddity:  # whatever is wrong with it, it will be just as wrong the next time
            log.error("update %s cannot be read (%s)", raw.get("update_id"), type(oddity).__name__)
            return None
        tap = update.callback_query.id if update.callback_query is not None else None
        return None if message is None else Arrival(message, tap)

    def _put(self, arrival: Arrival) -> None:
        lane = self._lanes.get(arrival.message.chat)
        if lane is not None:
            lane.append(arrival)
            return
        self._lanes[arrival.message.chat] = deque([arrival])
        task = asyncio.create_task(self._run(arrival.message.chat))
        self._running.add(task)
        task.add_done_callback(self._running.discard)

    async def _run(self, chat: str) -> None:
        lane = self._lanes[chat]
        while lane:
            if not await self._turn(lane[0]):
                break
            _settle(lane.popleft(), kept=True)
            self._errands.run(chat)
        del self._lanes[chat]
        # what was said after a message that was not kept must come again after it
        for waiting in lane:
            _settle(waiting, kept=False)

    async def _turn(self, arrival: Arrival) -> bool:
        for trial in range(TRIALS):
            try:
                await self._in_thread(arrival.message)
            except NotKept:
                log.error("%s was not kept; it will come again", arrival.message.key)
                return False
            except Exception as fault:
                log.error("%s broke a turn: %s", arrival.message.key, where(fault))
                await asyncio.sleep(PAUSE_BETWEEN_TRIALS * trial)
            else:
                self._acknowledge(arrival)
                return True
        log.critical("%s broke its turn %s times and is passed over", arrival.message.key, TRIALS)
        return True

    async def _in_thread(self, message: Message) -> bool:
        house = await self._doorway.house()
        loop = asyncio.get_running_loop()
        return await loop.run_in_executor(self._threads, house.receive, message, self._doorway.now())

    def _acknowledge(self, arrival: Arrival) -> None:
        if arrival.tap is not None:
            task = asyncio.create_task(self._answer(arrival.tap))
            self._running.add(task)
            task.add_done_callback(self._running.discard)

    async def _answer(self, tap: str) -> None:
        try:
            await self._doorway.answer_tap(tap)
        except Exception as trouble:  # the wheel on the button turns a little longer: no harm
            log.debug("a tap was not answered (%s)", type(trouble).__name__)

    async def _deliver(self, chat: str) -> None:
        house = await self._doorway.house()
        await house.deliver(chat)


def where(fault: BaseException) -> str:
    """A fault by its kind and place: its words may quote what a person said, so they stay out of the log."""
    frames = traceback.extract_tb(fault.__traceback__)
    place = f"{frames[-1].filename}:{frames[-1].lineno}" if frames else "nowhere"
    return f"{type(fault).__name__} at {place}"


def _settle(arrival: Arrival, *, kept: bool) -> None:
    if not arrival.kept.done():
        arrival.kept.set_result(kept)
