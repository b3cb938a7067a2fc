"""The bot's account at the Bot API: its token, its connection, and the token kept out of every log.

Built on python-telegram-bot's `Bot` and request layer alone: its application layer confirms an update before
the update was handled (docs/decisions), so the house brings its own ingress.
"""

import json
import logging
import ssl
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import timedelta
from functools import cache, partial
from typing import Any

import httpx
from telegram import Bot
from telegram.error import NetworkError, TelegramError
from telegram.request import BaseRequest, HTTPXRequest

from bot.logs import fault

API_URL = "https://api.telegram.org/bot"
BATCH = 100  # updates in one answer, the most that the Bot API gives
WANTED = ("message", "edited_message", "callback_query", "my_chat_member")

RawUpdate = Mapping[str, Any]


class TokenRefused(Exception):
    """The Bot API does not know this token (any more): nothing works until the keeper puts in another."""


class ServerTrouble(NetworkError):
    """The Bot API answered 5xx. `status` says which, since some of them leave open what was done."""

    def __init__(self, status: int) -> None:
        super().__init__(f"the Bot API answered {status}")
        self.status = status


class Flooded(TelegramError):
    """The Bot API asks for silence. Ours, since the library's own warns of its own future each time it is made."""

    def __init__(self, seconds: float) -> None:
        super().__init__(f"the Bot API asks for {seconds} s of silence")
        self.seconds = seconds


class Garbled(TelegramError):
    """The Bot API answered what is not JSON: what was asked for may have been done all the same."""


@dataclass(frozen=True)
class Account:
    """Which bot, at which server, with how much patience (seconds)."""

    token: str = field(repr=False)
    api_url: str = API_URL
    connect_timeout: float = 10.0
    read_timeout: float = 30.0
    poll_seconds: int = 30

    @property
    def longest_call(self) -> timedelta:
        """What a call may take at most: to connect, to hand over, to be answered."""
        return timedelta(seconds=self.connect_timeout + 2 * self.read_timeout)


class PlainRequest(HTTPXRequest):
    """The library's request layer, which tells 5xx and bad JSON apart and never logs what it read."""

    async def do_request(self, *args: Any, **kwargs: Any) -> tuple[int, bytes]:
        """One request; ServerTrouble for any 5xx, whatever its body says, and Flooded for a 429."""
        status, payload = await super().do_request(*args, **kwargs)
        if status == 429:
            raise Flooded(_retry_after(payload))
        if status >= 500:
            raise ServerTrouble(status)
        return status, payload

    @staticmethod
    def parse_json_payload(payload: bytes) -> dict[str, Any]:
        """The answer as an object; Garbled where it is none."""
        try:
            answer = json.loads(payload)
        except ValueError:
            raise Garbled("not JSON") from None
        if not isinstance(answer, dict) or ("ok" in answer and not isinstance(answer["ok"], bool)):
            raise Garbled("not an answer of the Bot API")
        return answer


class Lines(BaseRequest):
    """Several connections of one line each, the warmest first.

    One pool of sixteen connections looks at all of them at every request, which took a third of the time of a send.
    """

    def __init__(self, dial: Callable[[], PlainRequest]) -> None:
        self._dial = dial
        self._all: list[PlainRequest] = []
        self._idle: list[PlainRequest] = []

    @property
    def read_timeout(self) -> float | None:
        """Seconds that an answer may take; None where the first line tells."""
        return self._all[0].read_timeout if self._all else None

    async def initialize(self) -> None:
        """Nothing to do: a line is made when it is needed."""

    async def shutdown(self) -> None:
        """Hang up."""
        for line in self._all:
            await line.shutdown()

    async def do_request(self, *args: Any, **kwargs: Any) -> tuple[int, bytes]:
        """One request, over a line of its own."""
        line = self._idle.pop() if self._idle else self._new()
        try:
            return await line.do_request(*args, **kwargs)
        finally:
            self._idle.append(line)

    def _new(self) -> PlainRequest:
        self._all.append(self._dial())
        return self._all[-1]

    parse_json_payload = staticmethod(PlainRequest.parse_json_payload)


class Wire(Bot):
    """The library's Bot, which can also hand out updates as they came, so that one odd update spoils no other."""

    async def raw_updates(self, offset: int, seconds: int) -> Sequence[RawUpdate]:
        """What waits from `offset` on, up to BATCH; waits up to `seconds` for the first. Confirms what is before."""
        wish = {"offset": offset, "timeout": seconds, "limit": BATCH, "allowed_updates": list(WANTED)}
        answer = await self._post("getUpdates", wish, read_timeout=seconds + (self._request[0].read_timeout or 10.0))
        if not isinstance(answer, list):
            raise Garbled("updates are not a list")
        return [update for update in answer if isinstance(update, dict) and isinstance(update.get("update_id"), int)]

    @property
    def requests(self) -> tuple[BaseRequest, BaseRequest]:
        """The two connections, to be closed at the end."""
        return self._request


def connect(account: Account) -> Wire:
    """A bot that is ready to call; nothing is sent yet."""
    certificates = _certificates()
    return Wire(
        account.token,
        base_url=account.api_url,
        request=Lines(partial(_request, account, certificates)),
        get_updates_request=_request(account, certificates),
    )


@cache
def _certificates() -> ssl.SSLContext:
    """Whom to trust: loaded once for all connections, since it takes 20 ms."""
    return httpx.create_ssl_context()


def _request(account: Account, certificates: ssl.SSLContext) -> PlainRequest:
    return PlainRequest(
        connection_pool_size=1,
        connect_timeout=account.connect_timeout,
        read_timeout=account.read_timeout,
        write_timeout=account.read_timeout,
        pool_timeout=account.read_timeout,
        httpx_kwargs={"verify": certificates},
    )


def _retry_after(payload: bytes) -> float:
    """Seconds of silence that a 429 asks for; one where it does not say."""
    try:
        return max(1.0, float(json.loads(payload)["parameters"]["retry_after"]))
    except (ValueError, TypeError, KeyError):
        return 1.0


def hide_token(token: str) -> None:
    """From now on no log record of this process shows the token, whichever logger and handler it takes.

    The token is part of every address that is called, so libraries write it into their lines and tracebacks.
    """
    make = logging.getLogRecordFactory()
    if getattr(make, "hides", None) == token:
        return

    def make_without_token(*args: Any, **kwargs: Any) -> logging.LogRecord:
        record = make(*args, **kwargs)
        if token in str(record.msg) or token in str(record.args):
            record.msg, record.args = record.getMessage().replace(token, "<token>"), ()
        if record.exc_info:
            record.exc_text = fault(record.exc_info)  # without its words: an address that is called holds the token
            record.exc_info = None
        return record

    make_without_token.hides = token  # type: ignore[attr-defined]
    logging.setLogRecordFactory(make_without_token)
    for chatty in ("httpx", "httpcore", "telegram"):
        logging.getLogger(chatty).setLevel(logging.WARNING)
