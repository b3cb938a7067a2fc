"""The same talk in a terminal, as it happens: reminders arrive while the prompt waits.

What is typed is a message. A button is shown as `!1 Label` and pressed by `!1` or `!label`; the last message's
labels may be typed without the sign. A bare number presses nothing: `3` is a fridge's temperature. As in a
script, `\\` sends what follows as it is.
"""

import asyncio
import contextlib
import logging
import sys
import uuid
from collections.abc import AsyncIterator, Awaitable, Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any, TextIO

from bot.channels.album import Album
from bot.channels.buttons import Buttons, Pressed
from bot.channels.script import YOU
from bot.channels.talk import Talk
from bot.reply import Document, Message, Outgoing

log = logging.getLogger(__name__)


@dataclass(frozen=True)
class TerminalWords:
    """All that the terminal itself says; what stands in braces is filled in."""

    welcome: str
    goodbye: str
    prompt: str  # before what is typed
    picture: str  # {path} where a picture was saved, {says} what it shows
    picture_lost: str  # {folder} cannot be written to, {says} what the picture would have shown
    document: str  # {path} where a document was saved
    document_lost: str  # {folder} cannot be written to, {instead} what else can be done
    no_button: str  # {said} presses nothing; {labels} would
    failed: str  # the message could not be taken, nothing was changed
    reminder: str  # {time} of a reminder, before its text
    alert: str  # {time} of an alert, before its text
    leave: frozenset[str]  # what is typed to leave, in lower case


def now() -> datetime:
    """The time. [aware UTC]"""
    return datetime.now(UTC)


@dataclass(frozen=True)
class Desk:
    """Where the person sits: what is typed there and where it is read, and the clock on the wall.

    A `stdin` that is no terminal is read line by line, without a prompt. `out` is None for whatever standard
    output is at the moment: the prompt puts itself in its place.
    """

    album: Album
    stdin: TextIO = field(default_factory=lambda: sys.stdin)
    out: TextIO | None = None
    clock: Callable[[], datetime] = now


class TerminalChat:
    """One person's chat in a terminal."""

    def __init__(self, words: TerminalWords, desk: Desk) -> None:
        self._words = words
        self._desk = desk
        self._buttons = Buttons()
        self._session = uuid.uuid4().hex[:12]
        self._received = self._sent = 0

    async def run(self, talk: Talk, alarms: Callable[[], Awaitable[None]] | None = None) -> None:
        """Talk until the person leaves. `alarms` runs rounds as things fall due, for as long as the chat lasts."""
        task = asyncio.ensure_future(_watched(alarms)) if alarms else None
        try:
            async with self._typed() as ask:
                self._print(self._words.welcome)
                await talk.round(self._desk.clock())
                while (said := await self._next(ask)) is not None:
                    await self._take(said, talk)
                self._print(self._words.goodbye)
        finally:
            if task:
                task.cancel()
                await asyncio.gather(task, return_exceptions=True)

    async def send(self, outgoing: Outgoing) -> str:
        """Print one thing that the bot sends; its key."""
        self._sent += 1
        key = f"{self._session}-bot-{self._sent}"
        self._buttons.show(key, outgoing.reply)
        self._print(self._shown(outgoing))
        return key

    @contextlib.asynccontextmanager
    async def _typed(self) -> AsyncIterator[Callable[[], Awaitable[str]]]:
        """What asks for the next line: a prompt in a terminal, else whatever comes through the pipe."""
        if not self._desk.stdin.isatty():
            yield self._piped
            return
        # only an interactive chat needs the prompt; a script starts 90 ms sooner without it
        from prompt_toolkit import PromptSession
        from prompt_toolkit.patch_stdout import patch_stdout

        prompt: PromptSession[str] = PromptSession()
        with patch_stdout():
            yield lambda: prompt.prompt_async(self._words.prompt)

    async def _piped(self) -> str:
        """The next line of standard input."""
        line = await asyncio.to_thread(self._desk.stdin.readline)
        if not line:
            raise EOFError
        return line

    async def _next(self, ask: Callable[[], Awaitable[str]]) -> str | None:
        """What the person says next; None when they leave."""
        try:
            said = (await ask()).strip()
        except (EOFError, KeyboardInterrupt):
            return None
        return None if said.casefold() in self._words.leave else said

    async def _take(self, said: str, talk: Talk) -> None:
        """One line that was typed, and the answers that it gets."""
        pressed = self._press(said)
        if said.startswith("!") and pressed is None:
            labels = ", ".join(self._buttons.labels())
            self._print(self._words.no_button.format(said=said, labels=labels))
        elif said:
            message = self._message(pressed=pressed) if pressed else self._message(said.removeprefix("\\"))
            await self._turn(message, talk)

    async def _turn(self, message: Message, talk: Talk) -> None:
        """One turn, in a thread of its own: what it computes must not hold up a reminder."""
        moment = message.said_at
        try:
            await asyncio.to_thread(talk.receive, message, moment)
            await talk.round(moment)
        except Exception:
            # whatever it was, a person reads a sentence and the log the rest; the next message may well be taken
            log.exception("a turn failed")
            self._print(self._words.failed)

    def _press(self, said: str) -> Pressed | None:
        """The button that a line presses, if it does."""
        if said.startswith("!"):
            label = said[1:].strip()
            return (self._buttons.numbered(int(label)) if label.isdecimal() else None) or self._buttons.labelled(label)
        return self._buttons.spelled(said, f"{self._session}-bot-{self._sent}")

    def _message(self, text: str = "", pressed: Pressed | None = None) -> Message:
        """What is said, as the bot is handed it."""
        self._received += 1
        key = f"{self._session}-{self._received}"
        return Message(
            key=key,
            ref=key,
            chat=YOU,
            person=YOU,
            name="",
            said_at=self._desk.clock(),
            text=text,
            pressed=pressed.button.payload if pressed else None,
            answers=pressed.key if pressed else None,
        )

    def _shown(self, outgoing: Outgoing) -> str:
        """One thing that the bot sends, as it stands in the terminal."""
        reply, moment = outgoing.reply, self._desk.clock()
        before = {"reminder": self._words.reminder, "alert": self._words.alert}.get(reply.kind, "")
        number, rows = 0, []
        for row in reply.buttons:
            rows.append("  ".join(f"!{number + place} {button.label}" for place, button in enumerate(row, 1)))
            number += len(row)
        shown = [self._picture(outgoing, moment)] if outgoing.picture else []
        shown += [self._document(outgoing.document, moment)] if outgoing.document else []
        opened = before.format(time=f"{moment.astimezone():%H:%M}") + " " if before else ""
        return opened + "\n".join([reply.text, *rows, *shown]) + "\n"

    def _picture(self, outgoing: Outgoing, moment: datetime) -> str:
        """A picture as a line of text: where it was saved."""
        facts: dict[str, Any] = {"says": outgoing.picture.says if outgoing.picture else ""}
        path = self._desk.album.keep(outgoing.picture, moment.astimezone()) if outgoing.picture else None
        if path is None:
            return self._words.picture_lost.format(folder=self._desk.album.folder, **facts)
        return self._words.picture.format(path=path, **facts)

    def _document(self, document: Document, moment: datetime) -> str:
        """A document as a line of text: where it was saved."""
        path = self._desk.album.keep(document, moment.astimezone())
        if path is None:
            return self._words.document_lost.format(folder=self._desk.album.folder, instead=document.instead)
        return self._words.document.format(path=path)

    def _print(self, text: str) -> None:
        print(text, file=self._desk.out, flush=True)


async def _watched(alarms: Callable[[], Awaitable[None]]) -> None:
    """Run the alarms; should they ever stop, the log knows why."""
    try:
        await alarms()
    except Exception:
        log.exception("reminders have stopped")
