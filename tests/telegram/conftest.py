"""A loopback Bot API, a bot at its door, and a house behind it.

Any house fits that has `open()` (an awaitable of intake.House) and an attribute `channel`: `behind_door` puts it behind
a door that polls, or one that is called.
"""

import asyncio
from collections.abc import AsyncIterator, Awaitable
from contextlib import asynccontextmanager
from typing import Protocol

import pytest

from bot.channels.telegram.account import Account
from bot.channels.telegram.channel import Manners, Telegram
from bot.channels.telegram.intake import House
from bot.channels.telegram.webhook import WebhookSite
from tests.telegram.echo_house import EchoHouse
from tests.telegram.loopback import BotApi

SECRET = "a-secret-of-the-allotment"


class AnyHouse(Protocol):
    """What stands behind a door."""

    channel: Telegram | None

    async def open(self) -> House: ...


def door(server: BotApi, manners: Manners | None = None) -> Telegram:
    """A channel that calls the loopback server, with the short patience of a test."""
    return Telegram(Account(server.token, server.url, read_timeout=0.5, poll_seconds=5), manners)


@asynccontextmanager
async def running(channel: Telegram, ingress: Awaitable[None]) -> AsyncIterator[Telegram]:
    """The channel while its ingress runs."""
    task = asyncio.ensure_future(ingress)
    try:
        yield channel
    finally:
        channel.stop()
        await task


@asynccontextmanager
async def behind_door(way: str, server: BotApi, house: AnyHouse) -> AsyncIterator[Telegram]:
    """A house behind a door of its own: `way` is "polling" or "webhook"."""
    house.channel = door(server)
    if way == "polling":
        async with running(house.channel, house.channel.run_polling(house.open)) as channel:
            yield channel
        return
    port = await _unused_port()
    site = WebhookSite(f"http://127.0.0.1:{port}/telegram", SECRET, port=port)
    async with running(house.channel, house.channel.run_webhook(house.open, site)) as channel:
        await server.until(lambda: bool(server.webhook.url))
        yield channel


async def _unused_port() -> int:
    listening = await asyncio.start_server(lambda *_: None, "127.0.0.1", 0)
    port = int(listening.sockets[0].getsockname()[1])
    listening.close()
    await listening.wait_closed()
    return port


@pytest.fixture
async def server() -> AsyncIterator[BotApi]:
    async with BotApi() as api:
        yield api


@pytest.fixture
def house() -> EchoHouse:
    return EchoHouse()


@pytest.fixture
async def polling(server: BotApi, house: EchoHouse) -> AsyncIterator[Telegram]:
    """The echo house behind a door that polls."""
    async with behind_door("polling", server, house) as channel:
        yield channel


@pytest.fixture
async def webhook(server: BotApi, house: EchoHouse) -> AsyncIterator[Telegram]:
    """The echo house behind a door that is called."""
    async with behind_door("webhook", server, house) as channel:
        yield channel
