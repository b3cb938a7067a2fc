"""A Bot API on 127.0.0.1: real offset semantics, long polls, webhooks with redelivery, limits, and faults on demand.

    async with BotApi() as server:
        ida = server.person("Ida")
        ida.says("158")
        # ... the bot polls server.url ...
        said = await server.reaches(ida.chat, 1)

It follows the published description of the Bot API (https://core.telegram.org/bots/api), and shares no code with
the bot.
"""

import asyncio
import json
import time
from collections import deque
from collections.abc import Awaitable, Callable
from itertools import islice
from typing import Any

from tests.telegram.loopback_chats import Chat, Chats, Limits, Person, Refusal, Sent
from tests.telegram.loopback_faults import Fault, refusal
from tests.telegram.loopback_http import Answer, HttpServer, Parameters, Upload
from tests.telegram.loopback_webhook import WebhookCaller

TOKEN = "100001:loopback-token"
BOT = {"id": 100001, "is_bot": True, "first_name": "Saltbell", "username": "saltbell_bot"}
PATIENCE = 60.0  # seconds; a test that passes waits no longer than it must, however busy the machine
DOCUMENT_BYTES = 50_000_000
BUTTON_BYTES, TEXT_UNITS, CAPTION_UNITS = 64, 4096, 1024

Json = dict[str, Any]


class BotApi:
    """The server. `sent` is the delivery log, `calls` every call with its parameters and time."""

    def __init__(self, latency: float = 0.0, limits: Limits | None = None, port: int = 0) -> None:
        self.latency = latency
        self.port = port
        self.clock: Callable[[], float] = time.time  # what the phones show; seconds since 1970
        self.privacy = True
        self.token = TOKEN
        self.me: Json = dict(BOT)
        self.faults: list[Fault] = []
        self.sent: list[Sent] = []
        self.calls: list[tuple[str, Parameters, float]] = []
        self.taps_answered: list[str] = []
        self.commands: dict[tuple[str, str], list[dict[str, str]]] = {}
        self.pending: deque[Json] = deque()
        self.allowed: set[str] | None = None
        self.news = asyncio.Event()
        self.chats = Chats(self, limits)
        self.webhook = WebhookCaller(self)
        self._http = HttpServer(self._respond)
        self._polling: asyncio.Event | None = None
        self._next_update = 500_000_001
        self._methods = self._table()

    async def __aenter__(self) -> "BotApi":
        self.port = await self._http.open(self.port)
        return self

    async def __aexit__(self, *_: object) -> None:
        await self.webhook.stop()
        await self._http.close()

    @property
    def url(self) -> str:
        """What a bot is given as the address of the API; the token follows it."""
        return f"http://127.0.0.1:{self.port}/bot"

    @property
    def lines(self) -> int:
        """How many connections were made so far."""
        return self._http.accepted

    def person(self, name: str, language: str = "en") -> Person:
        return self.chats.person(name, language)

    def group(self, title: str) -> Chat:
        return self.chats.group(title)

    def fail(self, method: str, how: str = "status", **details: Any) -> Fault:
        """The next calls of a method go wrong."""
        fault = Fault(method, how, **details)
        self.faults.append(fault)
        return fault

    def to(self, chat: int) -> list[Sent]:
        """What reached a chat, in order."""
        return [each for each in self.sent if each.chat == chat]

    def count(self, method: str) -> int:
        """How often a method was called."""
        return sum(name == method for name, *_ in self.calls)

    async def reaches(self, chat: int, count: int, seconds: float = PATIENCE) -> list[Sent]:
        """Wait until a chat received `count` messages."""
        await self.until(lambda: len(self.to(chat)) >= count, seconds)
        return self.to(chat)

    async def until(self, true: Callable[[], bool], seconds: float = PATIENCE) -> None:
        """Wait until something holds."""
        async with asyncio.timeout(seconds):
            while not true():
                await asyncio.sleep(0.005)

    def bring(self, kind: str, content: Any) -> int:
        """Something happened that the bot may want to know; the update's id (0 where it asked not to be told)."""
        if self.allowed is not None and kind not in self.allowed:
            return 0
        # a copy as it is now: a later edit must not change what waits
        update = json.loads(json.dumps({"update_id": self._next_update, kind: content}))
        self._next_update += 1
        self.pending.append(update)
        self.news.set()
        return int(update["update_id"])

    async def _respond(self, path: str, given: Parameters) -> Answer | None:
        token, _, method = path.removeprefix("/bot").partition("/")
        self.calls.append((method, given, time.monotonic()))
        if self.latency and method != "getUpdates":
            await asyncio.sleep(self.latency)
        fault = next((each for each in self.faults if each.strikes(method, _chat(given))), None)
        if fault is None:
            return await self._answer(token, method, given)
        answer = await self._answer(token, method, given) if fault.delivered else refusal(500, "nothing was done")
        return await fault.misbehave(answer)

    async def _answer(self, token: str, method: str, given: Parameters) -> Answer:
        if token != self.token:
            return refusal(401, "Unauthorized")
        if method not in self._methods:
            return refusal(404, "Not Found")
        try:
            result = await self._methods[method](given)
        except Refusal as no:
            return refusal(no.status, no.description, **no.extra)
        return Answer(200, json.dumps({"ok": True, "result": result}).encode())

    def _table(self) -> dict[str, Callable[[Parameters], Awaitable[Any]]]:
        return {
            "getMe": self._get_me,
            "getUpdates": self._get_updates,
            "setWebhook": self._set_webhook,
            "deleteWebhook": self._delete_webhook,
            "sendMessage": self._send_message,
            "sendPhoto": self._send_photo,
            "sendDocument": self._send_document,
            "answerCallbackQuery": self._answer_callback_query,
            "setMyCommands": self._set_my_commands,
            "getChat": self._get_chat,
            "deleteMessage": self._delete_message,
            "editMessageText": self._edit_message,
            "editMessageReplyMarkup": self._edit_message,
        }

    async def _get_me(self, _: Parameters) -> Json:
        return self.me | {"can_join_groups": True, "can_read_all_group_messages": not self.privacy}

    async def _get_updates(self, given: Parameters) -> list[Json]:
        if self.webhook.url:
            raise Refusal(409, "Conflict: can't use getUpdates method while webhook is active; use deleteWebhook first")
        self._allow(given)
        if self._polling is not None:
            self._polling.set()  # the API ends the older of two questions
        ended = self._polling = asyncio.Event()
        offset = _int(given, "offset", 0)
        while self.pending and self.pending[0]["update_id"] < offset:
            self.pending.popleft()
        await self._wait_for_news(_int(given, "timeout", 0), ended)
        if ended.is_set():
            raise Refusal(409, "Conflict: terminated by other getUpdates request; make sure that only one bot runs")
        self._polling = None
        return list(islice(self.pending, _int(given, "limit", 100)))

    async def _wait_for_news(self, seconds: float, ended: asyncio.Event) -> None:
        deadline = time.monotonic() + seconds
        while not self.pending and not ended.is_set() and (left := deadline - time.monotonic()) > 0:
            self.news.clear()
            waits = {asyncio.create_task(event.wait()) for event in (self.news, ended)}
            try:
                await asyncio.wait(waits, timeout=left, return_when=asyncio.FIRST_COMPLETED)
            finally:
                for each in waits:
                    each.cancel()

    def _allow(self, given: Parameters) -> None:
        if "allowed_updates" in given:
            self.allowed = set(json.loads(str(given["allowed_updates"]))) or None

    async def _set_webhook(self, given: Parameters) -> bool:
        self._allow(given)
        await self.webhook.start(str(given["url"]), str(given.get("secret_token", "")))
        return True

    async def _delete_webhook(self, given: Parameters) -> bool:
        await self.webhook.stop()
        if str(given.get("drop_pending_updates", "")).lower() == "true":
            self.pending.clear()
        return True

    async def _send_message(self, given: Parameters) -> Json:
        text = str(given.get("text", ""))
        if not text.strip():
            raise Refusal(400, "Bad Request: message text is empty")
        return self._deliver(given, text, None)

    async def _send_photo(self, given: Parameters) -> Json:
        photo = given.get("photo")
        if isinstance(photo, str):
            photo = given.get(photo.removeprefix("attach://"))
        if not isinstance(photo, Upload) or not photo.content.startswith(b"\x89PNG"):
            raise Refusal(400, "Bad Request: IMAGE_PROCESS_FAILED")
        return self._deliver(given, str(given.get("caption", "")), photo.content)

    async def _send_document(self, given: Parameters) -> Json:
        document = given.get("document")
        if isinstance(document, str):
            document = given.get(document.removeprefix("attach://"))
        if not isinstance(document, Upload) or not document.content:
            raise Refusal(400, "Bad Request: file must be non-empty")
        if len(document.content) > DOCUMENT_BYTES:
            raise Refusal(413, "Request Entity Too Large")
        return self._deliver(given, str(given.get("caption", "")), None, document)

    def _deliver(self, given: Parameters, text: str, photo: bytes | None, document: Upload | None = None) -> Json:
        chat = self.chats.open(_chat(given) or 0)
        plain = photo is None and document is None
        if units(text) > (TEXT_UNITS if plain else CAPTION_UNITS):
            raise Refusal(400, f"Bad Request: message {'' if plain else 'caption '}is too long")
        buttons = _buttons(given)
        self.chats.mind_limits(chat)
        number = self.chats.number()
        message = {"message_id": number, "from": self.me, "chat": chat.about, "date": int(self.clock()), "text": text}
        chat.messages[number] = message
        answering = json.loads(str(given.get("reply_parameters", "{}"))).get("message_id")
        quiet = str(given.get("disable_notification", "")).lower() == "true"
        self.sent.append(Sent(time.monotonic(), chat.id, number, text, buttons, quiet, photo, answering, document))
        return message

    async def _answer_callback_query(self, given: Parameters) -> bool:
        self.taps_answered.append(str(given["callback_query_id"]))
        return True

    async def _set_my_commands(self, given: Parameters) -> bool:
        scope = json.loads(str(given.get("scope", '{"type": "default"}')))["type"]
        self.commands[scope, str(given.get("language_code", ""))] = json.loads(str(given["commands"]))
        return True

    async def _get_chat(self, given: Parameters) -> Json:
        return self.chats.open(_chat(given) or 0).about | {"accent_color_id": 0, "max_reaction_count": 11}

    async def _delete_message(self, given: Parameters) -> bool:
        chat = self.chats.open(_chat(given) or 0)
        if chat.messages.pop(_int(given, "message_id", 0), None) is None:
            raise Refusal(400, "Bad Request: message to delete not found")
        return True

    async def _edit_message(self, given: Parameters) -> Json:
        message = self.chats.open(_chat(given) or 0).messages.get(_int(given, "message_id", 0))
        if message is None:
            raise Refusal(400, "Bad Request: message to edit not found")
        if given.get("text", message["text"]) == message["text"] and "reply_markup" not in given:
            raise Refusal(400, "Bad Request: message is not modified")
        message["text"] = given.get("text", message["text"])
        return message | {"edit_date": int(self.clock())}


def units(text: str) -> int:
    """Length in UTF-16 code units, the API's measure."""
    return len(text.encode("utf-16-le")) // 2


def _int(given: Parameters, name: str, default: int) -> int:
    return int(str(given.get(name, default)))


def _chat(given: Parameters) -> int | None:
    number = str(given.get("chat_id", ""))
    return int(number) if number.lstrip("-").isdecimal() else None


def _buttons(given: Parameters) -> tuple[tuple[str, str], ...]:
    rows = json.loads(str(given.get("reply_markup", "{}"))).get("inline_keyboard", [])
    buttons = tuple((each["text"], each["callback_data"]) for row in rows for each in row)
    if any(not 1 <= len(payload.encode()) <= BUTTON_BYTES for _, payload in buttons):
        raise Refusal(400, "Bad Request: BUTTON_DATA_INVALID")
    return buttons
