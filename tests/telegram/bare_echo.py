"""The bare python-telegram-bot echo bot: the baseline that our own bot is measured against, as a program of its own.

    python tests/telegram/bare_echo.py URL TOKEN [--order sequential|chats] [--webhook PORT SECRET]

`sequential` is the library as it comes. `chats` adds what it would need to keep the order of each chat while 16 chats
go side by side; no update is made durable, nothing is paced.
"""

import argparse
import asyncio
from collections import defaultdict
from collections.abc import Awaitable
from typing import Any

from telegram import Update
from telegram.ext import Application, BaseUpdateProcessor, ContextTypes, MessageHandler, filters

AT_ONCE = 16


class InOrderOfChats(BaseUpdateProcessor):
    """One update of a chat at a time, chats side by side."""

    def __init__(self) -> None:
        super().__init__(max_concurrent_updates=10 * AT_ONCE)
        self._chats: defaultdict[int, asyncio.Lock] = defaultdict(asyncio.Lock)
        self._free = asyncio.Semaphore(AT_ONCE)

    async def do_process_update(self, update: object, coroutine: Awaitable[Any]) -> None:
        assert isinstance(update, Update)
        chat = update.effective_chat
        async with self._chats[chat.id if chat else 0], self._free:
            await coroutine

    async def initialize(self) -> None: ...

    async def shutdown(self) -> None: ...


async def echo(update: Update, _: ContextTypes.DEFAULT_TYPE) -> None:
    if update.message is not None and update.message.text is not None:
        await update.message.reply_text(update.message.text)


def build(url: str, token: str, order: str) -> Application[Any, Any, Any, Any, Any, Any]:
    builder = Application.builder().token(token).base_url(url)
    if order == "chats":
        builder = builder.concurrent_updates(InOrderOfChats()).connection_pool_size(AT_ONCE)
    application = builder.build()
    application.add_handler(MessageHandler(filters.TEXT, echo))
    return application


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("url")
    parser.add_argument("token")
    parser.add_argument("--order", choices=("sequential", "chats"), default="sequential")
    parser.add_argument("--webhook", nargs=2, metavar=("PORT", "SECRET"))
    given = parser.parse_args()
    application = build(given.url, given.token, given.order)
    if given.webhook is None:
        application.run_polling(allowed_updates=["message"])
        return
    port, secret = given.webhook
    where = f"http://127.0.0.1:{port}/telegram"
    application.run_webhook("127.0.0.1", int(port), "telegram", webhook_url=where, secret_token=secret)


if __name__ == "__main__":
    main()
