"""The chats behind the loopback Bot API: who is in them, what they received, and what people do in them."""

import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any, Protocol

from tests.telegram.loopback_http import Upload

Json = dict[str, Any]


class Refusal(Exception):
    """The API says no: status, description, parameters."""

    def __init__(self, status: int, description: str, **extra: int) -> None:
        super().__init__(description)
        self.status, self.description, self.extra = status, description, extra


@dataclass(frozen=True)
class Limits:
    """Messages in a window of seconds: overall, to a private chat, to a group."""

    overall: tuple[int, float] = (30, 1.0)
    chat: tuple[int, float] = (4, 3.0)
    group: tuple[int, float] = (20, 60.0)


@dataclass(frozen=True)
class Sent:
    """One message that the bot sent and the chat received. `at` is time.monotonic()."""

    at: float
    chat: int
    message_id: int
    text: str
    buttons: tuple[tuple[str, str], ...] = ()
    quiet: bool = False
    photo: bytes | None = None
    answering: int | None = None
    document: Upload | None = None

    def payload(self, label: str) -> str:
        """What the button of this label carries."""
        return next(payload for name, payload in self.buttons if name == label)


class Server(Protocol):
    """What people need of the server: a way to bring updates, and what was sent."""

    me: Json
    privacy: bool
    sent: list[Sent]
    clock: Callable[[], float]

    def bring(self, kind: str, content: Json) -> int: ...


@dataclass
class Chat:
    """A private chat or a group, as the server keeps it."""

    id: int
    about: Json
    blocked: bool = False
    moved_to: int | None = None
    messages: dict[int, Json] = field(default_factory=dict)

    @property
    def is_group(self) -> bool:
        return self.id < 0


class Chats:
    """All chats, their message numbers and their limits."""

    def __init__(self, server: Server, limits: Limits | None) -> None:
        self.server = server
        self.limits = limits
        self.refused = 0
        self._chats: dict[int, Chat] = {}
        self._windows: dict[int, deque[float]] = {}
        self._numbers = 0

    def person(self, name: str, language: str) -> "Person":
        number = 700_000 + len(self._chats)
        about = {"id": number, "is_bot": False, "first_name": name, "language_code": language}
        chat = Chat(number, {"id": number, "type": "private", "first_name": name})
        self._chats[number] = chat
        return Person(self, chat, about)

    def group(self, title: str, kind: str = "group") -> Chat:
        number = -900_000 - len(self._chats)
        self._chats[number] = Chat(number, {"id": number, "type": kind, "title": title})
        return self._chats[number]

    def open(self, number: int) -> Chat:
        """A chat that can be written to. Raises Refusal as the API would refuse."""
        chat = self._chats.get(number)
        if chat is None:
            raise Refusal(400, "Bad Request: chat not found")
        if chat.moved_to is not None:
            moved = "Bad Request: group chat was upgraded to a supergroup chat"
            raise Refusal(400, moved, migrate_to_chat_id=chat.moved_to)
        if chat.blocked:
            how = "kicked from the group chat" if chat.is_group else "blocked by the user"
            raise Refusal(403, f"Forbidden: bot was {how}")
        return chat

    def number(self) -> int:
        self._numbers += 1
        return self._numbers

    def mind_limits(self, chat: Chat) -> None:
        """Count one message, or refuse it with 429."""
        if self.limits is None:
            return
        own = self.limits.group if chat.is_group else self.limits.chat
        checks = ((0, self.limits.overall), (chat.id, own))
        waits = [wait for key, limit in checks if (wait := self._over(key, limit)) > 0]
        if waits:
            self.refused += 1
            seconds = max(1, int(max(waits) + 0.999))
            raise Refusal(429, f"Too Many Requests: retry after {seconds}", retry_after=seconds)
        for key, _ in checks:
            self._windows[key].append(time.monotonic())

    def _over(self, key: int, limit: tuple[int, float]) -> float:
        count, seconds = limit
        times = self._windows.setdefault(key, deque())
        while times and times[0] <= time.monotonic() - seconds:
            times.popleft()
        return times[0] + seconds - time.monotonic() if len(times) >= count else 0.0


class Person:
    """Somebody with a phone. What they do returns the update's id (0: the bot is not told)."""

    def __init__(self, chats: Chats, chat: Chat, about: Json) -> None:
        self._chats, self._private, self.about = chats, chat, about
        self.last = 0  # number of the message that was sent last
        self.updates: set[int] = set()  # what the bot was to be told of it

    @property
    def chat(self) -> int:
        return self._private.id

    def says(self, text: str, group: Chat | None = None, answering: int | None = None) -> int:
        """A text, in private or in a group."""
        return self.sends(group=group, answering=answering, text=text, entities=_entities(text))

    def sends(self, group: Chat | None = None, answering: int | None = None, **content: Any) -> int:
        """A message with any content: text, photo, sticker, voice, …"""
        chat = group or self._private
        message = self._message(chat) | content
        if answering is not None:
            message["reply_to_message"] = chat.messages[answering]
        chat.messages[self.last] = message
        if not self._reaches_bot(chat, message):
            return 0
        update = self._chats.server.bring("message", message)
        self.updates.add(update)
        return update

    def photo(self, caption: str = "", **where: Any) -> int:
        size = {"file_id": "AgAD", "file_unique_id": "AQAD", "width": 90, "height": 60, "file_size": 1200}
        if caption:
            where["caption"] = caption
        return self.sends(photo=[size, size | {"width": 900, "height": 600}], **where)

    def sticker(self, **where: Any) -> int:
        about = {"file_id": "CAAC", "file_unique_id": "AgAC", "type": "regular", "width": 512, "height": 512}
        return self.sends(sticker=about | {"is_animated": False, "is_video": False, "emoji": "🔥"}, **where)

    def voice(self, **where: Any) -> int:
        return self.sends(voice={"file_id": "AwAC", "file_unique_id": "AgAD", "duration": 3}, **where)

    def edits(self, text: str, message: int | None = None, group: Chat | None = None) -> int:
        """Change an earlier message (the last one)."""
        chat = group or self._private
        number = message or self.last
        chat.messages[number] |= {
            "text": text,
            "edit_date": int(self._chats.server.clock()),
            "entities": _entities(text),
        }
        if not self._reaches_bot(chat, chat.messages[number]):
            return 0
        return self._chats.server.bring("edited_message", chat.messages[number])

    def taps(self, label: str, group: Chat | None = None) -> int:
        """Press the button of that label under the latest message that has it."""
        chat = group or self._private
        shown = [each for each in self._chats.server.sent if each.chat == chat.id]
        under = next(each for each in reversed(shown) if label in dict(each.buttons))
        return self.taps_payload(under.payload(label), under.message_id, group)

    def taps_payload(self, payload: str, message: int, group: Chat | None = None) -> int:
        """Press a button with a payload of one's own choice."""
        chat = group or self._private
        query = {"id": f"tap{self._chats.number()}", "from": self.about, "chat_instance": "1", "data": payload}
        return self._chats.server.bring("callback_query", query | {"message": chat.messages[message]})

    def blocks(self) -> int:
        """Block the bot."""
        self._private.blocked = True
        return self._membership(self._private, "kicked")

    def unblocks(self) -> int:
        """Let the bot in again."""
        self._private.blocked = False
        return self._membership(self._private, "member")

    def removes_bot(self, group: Chat) -> int:
        group.blocked = True
        return self._membership(group, "kicked")

    def upgrades(self, group: Chat) -> Chat:
        """A group becomes a supergroup, with another number."""
        bigger = self._chats.group(group.about["title"], "supergroup")
        group.moved_to = bigger.id
        self._chats.server.bring("message", self._message(group) | {"migrate_to_chat_id": bigger.id})
        self._chats.server.bring("message", self._message(bigger) | {"migrate_from_chat_id": group.id})
        return bigger

    def _membership(self, chat: Chat, status: str) -> int:
        bot = self._chats.server.me
        change = {"chat": chat.about, "from": self.about, "date": int(self._chats.server.clock())}
        member = {"status": "member", "user": bot}
        now = {"status": status, "user": bot} | ({"until_date": 0} if status == "kicked" else {})
        return self._chats.server.bring("my_chat_member", change | {"old_chat_member": member, "new_chat_member": now})

    def _message(self, chat: Chat) -> Json:
        self.last = self._chats.number()
        return {
            "message_id": self.last,
            "from": self.about,
            "chat": chat.about,
            "date": int(self._chats.server.clock()),
        }

    def _reaches_bot(self, chat: Chat, message: Json) -> bool:
        """Privacy mode: in a group only commands, replies to the bot and mentions of it."""
        if not chat.is_group or not self._chats.server.privacy:
            return True
        bot = self._chats.server.me
        answers_us = message.get("reply_to_message", {}).get("from", {}).get("id") == bot["id"]
        text = message.get("text") or message.get("caption") or ""
        command = text.split(maxsplit=1)[0] if text.startswith("/") else ""
        ours = bool(command) and ("@" not in command or command.endswith(f"@{bot['username']}"))
        return answers_us or ours or f"@{bot['username']}" in text


def _entities(text: str) -> list[Json]:
    """Commands and mentions, as the server marks them."""
    found, place = [], 0
    for word in text.split(" "):
        kind = "bot_command" if word.startswith("/") else "mention" if word.startswith("@") else ""
        if kind and len(word) > 1:
            found.append({"type": kind, "offset": place, "length": len(word)})
        place += len(word) + 1
    return found
