"""Just enough HTTP/1.1 for a Bot API on 127.0.0.1: a server that can misbehave on demand, and a client for webhooks.

Standard library only, and none of the bot's own code, so that the two do not merely agree with each other.
"""

import asyncio
import json
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from urllib.parse import parse_qsl, urlsplit

Parameters = dict[str, object]


@dataclass(frozen=True)
class Upload:
    """A file that came in a multipart form."""

    name: str
    content: bytes


@dataclass(frozen=True)
class Answer:
    """What goes back. `keep` is how much of it is sent before the line is cut (None: all, and the line stays)."""

    status: int
    body: bytes
    keep: int | None = None
    drip: float = 0.0  # seconds between bytes


Respond = Callable[[str, Parameters], Awaitable[Answer | None]]


class HttpServer:
    """Calls `respond(path, parameters)` for each request; None closes the line without an answer."""

    def __init__(self, respond: Respond) -> None:
        self._respond = respond
        self._server: asyncio.Server | None = None
        self._visits: set[asyncio.Task[None]] = set()
        self.accepted = 0

    async def open(self, port: int = 0) -> int:
        self._server = await asyncio.start_server(self._visit, "127.0.0.1", port)
        return int(self._server.sockets[0].getsockname()[1])

    async def close(self) -> None:
        if self._server is not None:
            self._server.close()
        for visit in self._visits:
            visit.cancel()
        if self._visits:
            await asyncio.wait(self._visits)

    async def _visit(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        task = asyncio.current_task()
        assert task is not None
        self._visits.add(task)
        self.accepted += 1
        try:
            while await self._one(reader, writer):
                pass
        except (asyncio.IncompleteReadError, ConnectionError, asyncio.CancelledError):
            pass
        finally:
            self._visits.discard(task)
            writer.close()

    async def _one(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> bool:
        path, headers = await read_head(reader)
        body = await reader.readexactly(int(headers.get("content-length", 0)))
        answer = await self._respond(path, parameters(headers.get("content-type", ""), body))
        if answer is None:
            return False
        size = len(answer.body)
        head = f"HTTP/1.1 {answer.status} x\r\ncontent-type: application/json\r\ncontent-length: {size}\r\n\r\n"
        whole = head.encode() + answer.body
        if answer.drip:
            await _drip(writer, whole, answer.drip)
        else:
            writer.write(whole if answer.keep is None else whole[: len(head) + answer.keep])
        await writer.drain()
        return answer.keep is None


async def _drip(writer: asyncio.StreamWriter, whole: bytes, seconds: float) -> None:
    for place in range(len(whole)):
        writer.write(whole[place : place + 1])
        await writer.drain()
        await asyncio.sleep(seconds)


async def read_head(reader: asyncio.StreamReader) -> tuple[str, dict[str, str]]:
    """The second word of the first line (path or status) and the headers, in lower case."""
    first, *lines = (await reader.readuntil(b"\r\n\r\n")).decode("latin-1").split("\r\n")
    pairs = (line.split(":", 1) for line in lines if line)
    return first.split(" ")[1], {name.strip().lower(): value.strip() for name, value in pairs}


def parameters(kind: str, body: bytes) -> Parameters:
    """The parameters of a call: a form, a multipart form or JSON; nested values are JSON inside a form."""
    if kind.startswith("multipart/form-data"):
        return multipart(kind, body)
    if kind.startswith("application/json"):
        return dict(json.loads(body))
    return dict(parse_qsl(body.decode(), keep_blank_values=True))


def multipart(kind: str, body: bytes) -> Parameters:
    boundary = b"--" + kind.split("boundary=")[1].strip('"').encode()
    found: Parameters = {}
    for piece in body.split(boundary)[1:-1]:
        head, content = piece.removeprefix(b"\r\n").split(b"\r\n\r\n", 1)
        content = content.removesuffix(b"\r\n")
        words = dict(part.strip().split("=", 1) for part in head.decode().split("\r\n")[0].split(";")[1:])
        name, file = words["name"].strip('"'), words.get("filename")
        found[name] = content.decode() if file is None else Upload(file.strip('"'), content)
    return found


class HttpClient:
    """Posts JSON over one kept line at a time, as the Bot API calls a webhook."""

    def __init__(self, url: str, headers: dict[str, str]) -> None:
        self._where = urlsplit(url)
        self._headers = headers
        self._idle: list[tuple[asyncio.StreamReader, asyncio.StreamWriter]] = []

    async def post(self, body: bytes) -> int:
        """The status; 0 where there was none."""
        try:
            return await self._post(body)
        except (OSError, asyncio.IncompleteReadError):
            return 0

    async def _post(self, body: bytes) -> int:
        line = self._idle.pop() if self._idle else await self._dial()
        reader, writer = line
        extra = "".join(f"{name}: {value}\r\n" for name, value in self._headers.items())
        head = f"POST {self._where.path} HTTP/1.1\r\nhost: x\r\n{extra}content-length: {len(body)}\r\n\r\n"
        try:
            writer.write(head.encode() + body)
            status, headers = await read_head(reader)
            await reader.readexactly(int(headers.get("content-length", 0)))
        except BaseException:
            writer.close()
            raise
        self._idle.append(line)
        return int(status)

    async def _dial(self) -> tuple[asyncio.StreamReader, asyncio.StreamWriter]:
        return await asyncio.open_connection(self._where.hostname, self._where.port)

    def close(self) -> None:
        for _, writer in self._idle:
            writer.close()
        self._idle.clear()
