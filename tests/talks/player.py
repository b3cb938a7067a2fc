"""Plays a script through the whole house in one process, with a restart of the house between any two lines."""

import io
import json
import sqlite3
import tempfile
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import event

from bot.assembly import Built, build, newcomer
from bot.channels.script import YOU, ScriptedChat, Stage
from bot.channels.talk import Talk
from bot.reply import Message, Outgoing


@dataclass
class Player:
    """A chat on a store of its own; `said` is everything that the bot sent, in order."""

    folder: Path
    start: str = "2027-09-23T18:00"
    zone: str = "Europe/Vienna"
    out: io.StringIO = field(default_factory=io.StringIO)

    def __post_init__(self) -> None:
        self.folder.mkdir(parents=True, exist_ok=True)
        zone = ZoneInfo(self.zone)
        start = datetime.fromisoformat(self.start).replace(tzinfo=zone).astimezone(UTC)
        self._chat = ScriptedChat(Stage(start, zone, self.out, self.folder / "pictures", json=True, session="talk"))
        self._built: Built | None = None
        self._last: Message | None = None
        self._sent = 0

    @property
    def said(self) -> list[dict[str, Any]]:
        """Everything that the bot sent, in order."""
        return [json.loads(line) for line in self.out.getvalue().splitlines()]

    @property
    def now(self) -> datetime:
        """The time on the script's clock."""
        return self._chat.now

    async def play(self, *lines: str) -> list[dict[str, Any]]:
        """Play lines; what the bot sent to them."""
        before = self.out.tell()
        built = self.house()
        await self._chat.play(list(lines), Talk(self._receive, built.postman.round, built.next_due))
        return self._since(before)

    async def send(self, **what: Any) -> list[dict[str, Any]]:
        """A message that no script can hold (a sticker, an edit, any text as it is); what the bot sent to it."""
        self._sent += 1
        key = f"hand-{self._sent}"
        plain = {"key": key, "ref": key, "chat": YOU, "person": YOU, "name": "", "said_at": self.now}
        return await self._hand(Message(**{**plain, **what}))

    async def again(self) -> list[dict[str, Any]]:
        """The last message comes a second time, with the same key; what the bot sent to it."""
        if self._last is None:
            raise ValueError("nothing was said yet")
        return await self._hand(self._last)

    def restart(self) -> None:
        """The house is taken down and built anew on the same store; the phone keeps what it shows."""
        if self._built is not None:
            self._built.close()
            self._built = None

    async def _hand(self, message: Message) -> list[dict[str, Any]]:
        before = self.out.tell()
        self._receive(message, self.now)
        await self.house().postman.round(self.now)
        return self._since(before)

    def _receive(self, message: Message, now: datetime) -> bool:
        self._last = message
        return self.house().receive(message, now)

    def _since(self, before: int) -> list[dict[str, Any]]:
        return [json.loads(line) for line in self.out.getvalue()[before:].splitlines()]

    def house(self) -> Built:
        """The house, built anew after a restart."""
        if self._built is None:
            store = self.folder / "talk.db"
            if not store.exists():
                store.write_bytes(_empty_store())
            self._built = build(f"sqlite:///{store}", newcomer(self.zone), self._chat.send)
            event.listen(self._built.house.engine, "checkout", _unflushed)
        return self._built


@cache
def _empty_store() -> bytes:
    """The store of a house that nobody has spoken to, made once: a talk is not about its making."""
    with tempfile.TemporaryDirectory() as folder:
        store = Path(folder) / "empty.db"
        build(f"sqlite:///{store}", newcomer(None), _to_nobody).close()
        return store.read_bytes()


async def _to_nobody(_: Outgoing) -> str:
    raise AssertionError("nobody has spoken yet")


def _unflushed(connection: sqlite3.Connection, *_: object) -> None:
    """No talk ends with the power going: nobody waits for the disk (tests/durability does)."""
    connection.execute("PRAGMA synchronous = OFF")


async def play_all(folder: Path, lines: Iterable[str], restarts: Sequence[int] = ()) -> list[dict[str, Any]]:
    """A whole script, with restarts after the lines of those numbers."""
    folder.mkdir(parents=True, exist_ok=True)
    player = Player(folder)
    for number, line in enumerate(lines):
        await player.play(line)
        if number in restarts:
            player.restart()
    player.restart()
    return player.said
