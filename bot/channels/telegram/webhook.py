"""Updates brought by the Bot API: 200 is answered only when the turn is kept, anything else makes it come again."""

import asyncio
import hmac
import json
import logging
from collections.abc import Awaitable, Callable
from contextlib import suppress
from dataclasses import dataclass, field
from urllib.parse import urlsplit

import h11

from bot.channels.telegram.account import RawUpdate

BODY_LIMIT = 1 << 20  # bytes; an update is a few kilobytes
IDLE_SECONDS = 75.0
READ_SECONDS = 20.0
SECRET_HEADER = b"x-telegram-bot-api-secret-token"

TakeIn = Callable[[RawUpdate], Awaitable["asyncio.Future[bool]"]]

log = logging.getLogger(__name__)


@dataclass(frozen=True)
class WebhookSite:
    """Where the Bot API calls, where we listen, and the secret both share.

    `local_path` is for a proxy that changes the path on the way; without it the path is that of `public_url`.
    """

    public_url: str
    secret: str = field(repr=False)
    host: str = "127.0.0.1"
    port: int = 8443
    local_path: str | None = None

    @property
    def path(self) -> str:
        """The path that is called here."""
        return self.local_path or urlsplit(self.public_url).path or "/"


class WebhookServer:
    """A small HTTP/1.1 server for one path. TLS is the business of whatever stands before it."""

    def __init__(self, site: WebhookSite, take: TakeIn) -> None:
        self._site = site
        self._take = take
        self._server: asyncio.Server | None = None
        self._visits: set[asyncio.Task[None]] = set()
        self._leaving = False

    @property
    def port(self) -> int:
        """The port that is listened on, also where 0 was asked for."""
        if self._server is None:
            raise RuntimeError("the webhook server does not run")
        return int(self._server.sockets[0].getsockname()[1])

    async def open(self) -> None:
        """Begin to listen."""
        self._server = await asyncio.start_server(self._visit, self._site.host, self._site.port)

    def leave(self) -> None:
        """Take nothing more in; what was taken in is still answered."""
        self._leaving = True

    async def close(self) -> None:
        """Stop to listen."""
        if self._server is not None:
            self._server.close()
        for visit in self._visits:
            visit.cancel()
        if self._visits:
            await asyncio.wait(self._visits)

    async def _visit(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        task = asyncio.current_task()
        if task is None:
            return
        self._visits.add(task)
        try:
            await Visit(reader, writer).serve(self._answer)
        except (ConnectionError, TimeoutError, h11.RemoteProtocolError, asyncio.CancelledError):
            pass  # whoever called has gone, or talks nonsense: nothing was promised
        finally:
            self._visits.discard(task)
            writer.close()

    async def _answer(self, request: h11.Request, body: bytes | None) -> int:
        """The status for one request."""
        if request.target.split(b"?")[0] != self._site.path.encode():
            return 404
        if request.method != b"POST":
            return 405
        if not hmac.compare_digest(dict(request.headers).get(SECRET_HEADER, b""), self._site.secret.encode()):
            log.warning("a webhook call without our secret was refused")
            return 403
        if body is None:
            return 413
        return await self._kept(body)

    async def _kept(self, body: bytes) -> int:
        update: RawUpdate | None = None
        with suppress(ValueError):
            update = json.loads(body)
        if not isinstance(update, dict) or not isinstance(update.get("update_id"), int):
            log.error("the webhook was brought something that is no update")
            return 200  # it would be the same the next time
        if self._leaving:
            return 503
        kept = await self._take(update)
        return 200 if await asyncio.shield(kept) else 503


class Visit:
    """One connection: a request at a time, answered by `answer(request, body)`, a body of None being too long."""

    def __init__(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        self._reader = reader
        self._writer = writer
        self._talk = h11.Connection(h11.SERVER)

    async def serve(self, answer: Callable[[h11.Request, bytes | None], Awaitable[int]]) -> None:
        """Serve until the other side goes away."""
        while True:
            request = await self._event(IDLE_SECONDS)
            if not isinstance(request, h11.Request):
                return
            if self._talk.they_are_waiting_for_100_continue:
                await self._send(h11.InformationalResponse(status_code=100, headers=[]))
            body = await self._body()
            status = await answer(request, body)
            await self._respond(status)
            if body is None or self._talk.our_state is not h11.DONE or self._talk.their_state is not h11.DONE:
                return
            self._talk.start_next_cycle()

    async def _body(self) -> bytes | None:
        pieces, size = [], 0
        while isinstance(event := await self._event(READ_SECONDS), h11.Data):
            size += len(event.data)
            if size > BODY_LIMIT:
                return None
            pieces.append(bytes(event.data))
        return b"".join(pieces)

    async def _event(self, seconds: float) -> object:
        while (event := self._talk.next_event()) is h11.NEED_DATA:
            async with asyncio.timeout(seconds):
                self._talk.receive_data(await self._reader.read(65536))
        return event

    async def _respond(self, status: int) -> None:
        await self._send(h11.Response(status_code=status, headers=[("content-length", "0")]))
        await self._send(h11.EndOfMessage())

    async def _send(self, event: h11.Response | h11.InformationalResponse | h11.EndOfMessage) -> None:
        self._writer.write(self._talk.send(event) or b"")
        await self._writer.drain()
