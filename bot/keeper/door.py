"""A small HTTP door for the keeper's own tools: `/healthz` and `/metrics`, and nothing else.

It shows counts only, but it is meant for this machine or its own network: it has no password.
"""

import asyncio
from contextlib import suppress

from bot.keeper.report import Report

HEAD_LIMIT = 8192  # bytes of a request's head; ours have a few hundred
HEAD_SECONDS = 5.0
TEXT = "text/plain; version=0.0.4; charset=utf-8"


class Door:
    """Answers one request a connection."""

    def __init__(self, report: Report) -> None:
        self._report = report
        self._server: asyncio.Server | None = None

    async def open(self, host: str, port: int) -> int:
        """Begin to listen; the port, also where 0 was asked for. Raises OSError where it is taken."""
        self._server = await asyncio.start_server(self._visit, host, port, limit=HEAD_LIMIT)
        return int(self._server.sockets[0].getsockname()[1])

    async def close(self) -> None:
        """Stop to listen."""
        if self._server is not None:
            self._server.close()
            await self._server.wait_closed()

    async def _visit(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        unfinished = (TimeoutError, asyncio.IncompleteReadError, asyncio.LimitOverrunError, ConnectionError)
        try:
            with suppress(*unfinished):
                head = await asyncio.wait_for(reader.readuntil(b"\r\n\r\n"), HEAD_SECONDS)
                status, text = await asyncio.to_thread(self._answer, head.split(b"\r\n", 1)[0])
                body = text.encode()
                lines = f"HTTP/1.1 {status}\r\ncontent-type: {TEXT}\r\ncontent-length: {len(body)}\r\nconnection: close"
                writer.write(f"{lines}\r\n\r\n".encode() + body)
                await writer.drain()
        finally:
            writer.close()

    def _answer(self, request: bytes) -> tuple[str, str]:
        match request.split(b" "):
            case [b"GET", b"/healthz", _]:
                well, text = self._report.health()
                return ("200 OK" if well else "503 Service Unavailable"), f"{text}\n"
            case [b"GET", b"/metrics", _]:
                return "200 OK", self._report.metrics()
            case [b"GET", _, _]:
                return "404 Not Found", "/healthz or /metrics\n"
        return "405 Method Not Allowed", "GET only\n"
