"""Telegram as a channel: updates in by polling or webhook, replies out at the pace of the Bot API.

    telegram = Telegram(Account(token))
    await telegram.run_polling(open_house)      # until telegram.stop()
    key = await telegram.send(outgoing)         # at any time, from the same loop

`open_house` is awaited once, after the first question to the Bot API has gone out, so that the rest of the program
loads while the answer travels.
"""

import asyncio
import logging
from collections.abc import Awaitable, Callable, Coroutine
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import UTC, datetime
from functools import partial
from typing import Any, TypeVar

import telegram as api
from telegram.error import BadRequest, InvalidToken, TelegramError

from bot.channels.telegram.account import WANTED, Account, Flooded, TokenRefused, connect, hide_token
from bot.channels.telegram.circuit import Circuit
from bot.channels.telegram.intake import TURNS_AT_ONCE, Doorway, House, Intake, Menu
from bot.channels.telegram.pacer import Pacer
from bot.channels.telegram.polling import Poller
from bot.channels.telegram.sending import Sender, linked
from bot.channels.telegram.traffic import Pace
from bot.channels.telegram.updates import Me
from bot.channels.telegram.webhook import WebhookServer, WebhookSite
from bot.reply import Outgoing

OpenHouse = Callable[[], Awaitable[House]]
Result = TypeVar("Result")

HEAD_START = 0.03  # seconds in which the first question leaves before the rest of the program loads
DRAIN_SECONDS = 20.0

log = logging.getLogger(__name__)


@dataclass(frozen=True)
class Manners:
    """How the channel behaves: its pace, how many turns at once, and its clock (aware UTC)."""

    pace: Pace = field(default_factory=Pace)
    turns_at_once: int = TURNS_AT_ONCE
    now: Callable[[], datetime] = lambda: datetime.now(UTC)


class Telegram:
    """The channel. One instance serves one account in one event loop."""

    def __init__(self, account: Account, manners: Manners | None = None) -> None:
        self._account = account
        self._manners = manners or Manners()
        self._wire = connect(account)
        self._sender = Sender(self._wire, Pacer(self._manners.pace), Circuit(), self._in_time)
        self._stop = asyncio.Event()
        self._me: asyncio.Task[Me] | None = None
        self._house: asyncio.Task[House] | None = None
        self.webhook_port: int | None = None

    async def send(self, outgoing: Outgoing) -> str:
        """Deliver one reply; its key in the channel, "chat:message". Raises NotDelivered."""
        if outgoing.reply.invite is not None:
            outgoing = linked(outgoing, await self._who_we_are())
        return await self._sender.send(outgoing)

    def marked(self, reply: str) -> None:
        """Be told that what was sent of this reply is marked in the outbox: until then the next waits, for a beat."""
        self._sender.marked(reply)

    def shared_by(self, processes: int) -> None:
        """Be told that so many processes send with this account: each takes its part of the pace."""
        self._sender.shared_by(processes)

    async def run_polling(self, open_house: OpenHouse) -> None:
        """Ask for updates and take them in until `stop`. Raises TokenRefused; what `open_house` raises."""
        intake = self._intake()
        poller = Poller(self._wire, intake.take, self._account.poll_seconds)
        polling = asyncio.create_task(poller.run())
        await asyncio.sleep(HEAD_START)
        try:
            await self._until_stopped(open_house, polling)
        finally:
            await self._leave(polling, intake)
            with suppress(TelegramError):
                await poller.confirm()
            await self.close()

    async def run_webhook(self, open_house: OpenHouse, site: WebhookSite) -> None:
        """Let updates be brought and take them in until `stop`. Raises TokenRefused, OSError (port taken)."""
        intake = self._intake()
        server = WebhookServer(site, intake.take)
        await server.open()
        self.webhook_port = server.port
        announcing = asyncio.create_task(self._announce(site))
        try:
            await self._until_stopped(open_house, announcing)
        finally:
            server.leave()
            await self._leave(announcing, intake)
            await server.close()
            await self.close()

    def stop(self) -> None:
        """Take nothing more in, finish what runs, return from `run_…`."""
        self._stop.set()

    def _in_time(self, outgoing: Outgoing) -> bool:
        """Whether a call that begins now ends while it is ours to send: we may have been stopped, or asleep."""
        return outgoing.until is None or self._manners.now() + self._account.longest_call < outgoing.until

    def _intake(self) -> Intake:
        hide_token(self._account.token)
        doorway = Doorway(self._who_we_are, self._opened_house, self._manners.now, self._answer_tap)
        return Intake(doorway, self._manners.turns_at_once)

    async def _until_stopped(self, open_house: OpenHouse, ingress: "asyncio.Task[None]") -> None:
        """Open the house, then wait for `stop` or for what cannot be mended."""
        self._house = asyncio.ensure_future(_as_coroutine(open_house))
        self._me = self._me or asyncio.create_task(self._ask_who_we_are())
        menus = asyncio.create_task(self._tell_menus())
        stopped = asyncio.create_task(self._stop.wait())
        watched: set[asyncio.Task[Any]] = {stopped, self._house, self._me, ingress, menus}
        try:
            while not stopped.done():
                done, watched = await asyncio.wait(watched, return_when=asyncio.FIRST_COMPLETED)
                for each in done:
                    each.result()
        finally:
            for each in (stopped, menus):
                each.cancel()
                with suppress(asyncio.CancelledError, Exception):
                    await each

    async def _leave(self, ingress: "asyncio.Task[None]", intake: Intake) -> None:
        ingress.cancel()
        with suppress(asyncio.CancelledError, TokenRefused):
            await ingress
        with suppress(TimeoutError):
            async with asyncio.timeout(DRAIN_SECONDS):
                await intake.drain()

    async def close(self) -> None:
        """Hang up: what is sent from now on is not delivered. Whoever runs need not call it, the end of a run does."""
        self._sender.close()
        for task in (self._me, self._house):
            if task is not None:
                task.cancel()
        for request in self._wire.requests:
            await request.shutdown()

    async def _opened_house(self) -> House:
        while self._house is None:
            await asyncio.sleep(HEAD_START)
        return await asyncio.shield(self._house)

    async def _who_we_are(self) -> Me:
        if self._me is None:
            self._me = asyncio.create_task(self._ask_who_we_are())
        return await asyncio.shield(self._me)

    async def _ask_who_we_are(self) -> Me:
        user = await self._insist(self._wire.get_me)
        return Me(user.id, user.username or "")

    async def _announce(self, site: WebhookSite) -> None:
        async def set_webhook() -> bool:
            return await self._wire.set_webhook(
                site.public_url,
                secret_token=site.secret,
                allowed_updates=WANTED,
                max_connections=self._manners.turns_at_once,
                drop_pending_updates=False,
            )

        await self._insist(set_webhook)

    async def _tell_menus(self) -> None:
        house = await self._opened_house()
        for menu in house.menus:
            await self._insist(partial(self._set_menu, menu))

    async def _set_menu(self, menu: Menu) -> None:
        commands = [api.BotCommand(name, description) for name, description in menu.commands]
        try:
            await self._wire.set_my_commands(commands, scope=_SCOPES[menu.chats](), language_code=menu.language)
        except BadRequest as refused:
            log.error("the commands for %s, %s were refused: %s", menu.chats, menu.language, refused.message)

    async def _insist(self, call: Callable[[], Coroutine[Any, Any, Result]]) -> Result:
        """Call until it works: a start without network is a start all the same. Raises TokenRefused."""
        circuit = Circuit()
        while True:
            try:
                return await call()
            except InvalidToken:
                raise TokenRefused("the Bot API refuses this token") from None
            except TelegramError as trouble:
                wait = circuit.failed(circuit.begins()).total_seconds()
                wait = max(wait, trouble.seconds) if isinstance(trouble, Flooded) else wait
                # what we ask here says nothing of any person, so the API's words may be shown
                log.warning("the Bot API did not do it (%s); again in %.1f s", trouble.message, wait)
                await asyncio.sleep(wait)

    async def _answer_tap(self, tap: str) -> None:
        await self._wire.answer_callback_query(tap)


_SCOPES: dict[str, Callable[[], api.BotCommandScope]] = {
    "all": api.BotCommandScopeDefault,
    "private": api.BotCommandScopeAllPrivateChats,
    "group": api.BotCommandScopeAllGroupChats,
}


async def _as_coroutine(open_house: OpenHouse) -> House:
    return await open_house()
