"""A loopback Bot API, a bot at its door, and a house behind it.

Any house fits that has `open()` (an awaitable of intake.House) and an attribute `channel`: `behind_door` puts it behind
a door that polls, or one that is called.
"""

import asyncio
import logging
from collections.abc import AsyncIterator, Awaitable, Iterator
from contextlib import asynccontextmanager
from typing import Protocol

import pytest

from bot.channels.telegram.account import Account
from bot.channels.telegram.channel import Manners, Telegram
from bot.channels.telegram.intake import House
from bot.channels.telegram.traffic import Pace
from bot.channels.telegram.webhook import WebhookSite
from tests.telegram.echo_house import EchoHouse
from tests.telegram.loopback import BotApi

SECRET = "a-secret-of-the-allotment"
PUBLIC = "https://bot.example.org"
# ten messages where life has one: for tests of something else than the pace
QUICK = Manners(Pace(a_second=290, chat_gap=0.105, group_gap=0.31))


@pytest.fixture(autouse=True)
def lines_as_before() -> Iterator[None]:
    """A channel hides its token in every line of its process; the tests after it read theirs as they were written."""
    made = logging.getLogRecordFactory()
    yield
    logging.setLogRecordFactory(made)


class AnyHouse(Protocol):
    """What stands behind a door."""

    channel: Telegram | None

    async def open(self) -> House: ...


def door(server: BotApi, manners: Manners | None = None, *, read_timeout: float = 30.0) -> Telegram:
    """A channel that calls the loopback server; on a busy machine an answer may take its time."""
    return Telegram(Account(server.token, server.url, read_timeout=read_timeout, poll_seconds=5), manners)


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
async def behind_door(
    way: str, server: BotApi, house: AnyHouse, manners: Manners | None = None
) -> AsyncIterator[Telegram]:
    """A house behind a door of its own: `way` is "polling" or "webhook"."""
    house.channel = door(server, manners)
    if way == "polling":
        async with running(house.channel, house.channel.run_polling(house.open)) as channel:
            yield channel
        return
    site = WebhookSite(f"{PUBLIC}/telegram", SECRET, port=0)
    async with running(house.channel, house.channel.run_webhook(house.open, site)) as channel:
        while channel.webhook_port is None:  # known before the address is told to the server
            await asyncio.sleep(0)
        server.webhook.proxies[PUBLIC] = (f"http://127.0.0.1:{channel.webhook_port}",)
        await server.until(lambda: bool(server.webhook.url))
        yield channel


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
