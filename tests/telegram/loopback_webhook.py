"""The half of the Bot API that calls a webhook: in order within a chat, side by side otherwise, again until 200."""

import asyncio
import json
import random
from collections import deque
from contextlib import suppress
from typing import Any, Protocol
from urllib.parse import urlsplit

from tests.telegram.loopback_http import HttpClient

Json = dict[str, Any]


class Source(Protocol):
    """Where the updates wait."""

    pending: deque[Json]
    news: asyncio.Event


class WebhookCaller:
    """Brings what is pending to `url` while one is set. `statuses` is what came back, call by call."""

    def __init__(self, source: Source, patience: float = 0.05) -> None:
        self._source = source
        self._patience = patience  # seconds before an update that was not taken is brought again
        self._task: asyncio.Task[None] | None = None
        self._under_way: dict[int, asyncio.Task[None]] = {}
        # public address -> where the proxy that speaks https passes it on to, to any one of several
        self.proxies: dict[str, tuple[str, ...]] = {}
        self.hangs_up_after: float | None = None  # seconds without an answer
        self.statuses: list[int] = []
        self.url = ""

    async def start(self, url: str, secret: str) -> None:
        await self.stop()
        self.url = url
        if url:
            self._task = asyncio.create_task(self._run(secret))

    async def stop(self) -> None:
        self.url = ""
        tasks = [*self._under_way.values(), *([self._task] if self._task else [])]
        for task in tasks:
            task.cancel()
        if tasks:
            await asyncio.wait(tasks)
        self._task = None

    async def _run(self, secret: str) -> None:
        headers = {"content-type": "application/json"} | ({"X-Telegram-Bot-Api-Secret-Token": secret} if secret else {})
        clients = [HttpClient(url, headers) for url in self._behind_proxy()]
        try:
            while True:
                self._source.news.clear()
                for update in list(self._source.pending):
                    self._bring(update, random.choice(clients))
                await self._source.news.wait()
        finally:
            for client in clients:
                client.close()

    def _behind_proxy(self) -> list[str]:
        where = urlsplit(self.url)
        hosts = self.proxies.get(f"{where.scheme}://{where.netloc}", (f"http://{where.netloc}",))
        return [host + where.path for host in hosts]

    def _bring(self, update: Json, client: HttpClient) -> None:
        """Start a call, unless one for the same chat is under way."""
        chat = _chat_of(update)
        if chat in self._under_way:
            return
        task = asyncio.create_task(self._call(update, client))
        self._under_way[chat] = task
        task.add_done_callback(lambda _: self._ended(chat))

    async def _call(self, update: Json, client: HttpClient) -> None:
        status = 0
        with suppress(TimeoutError):
            async with asyncio.timeout(self.hangs_up_after):
                status = await client.post(json.dumps(update).encode())
        self.statuses.append(status)
        if 200 <= status < 300:
            self._source.pending.remove(update)
        else:
            await asyncio.sleep(self._patience)

    def _ended(self, chat: int) -> None:
        del self._under_way[chat]
        self._source.news.set()


def _chat_of(update: Json) -> int:
    content = next(value for name, value in update.items() if name != "update_id")
    if not isinstance(content, dict):
        return 0
    chat = content.get("chat") or content.get("message", {}).get("chat", {})
    return int(chat.get("id", 0))
