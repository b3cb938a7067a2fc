"""The scripted chat: a week in a second, for docs, tests and anyone who wants to see one.

The lines of a script are in `bot/channels/lines.py`. Plain output is the talk as a person would read it; with
`json` it is one object a line for each thing that the bot sends.
"""

import json
import uuid
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import TextIO
from zoneinfo import ZoneInfo

from bot.channels.album import Album
from bot.channels.buttons import Buttons
from bot.channels.lines import ALONE, IN_GROUP, Act, BadLine, Move, Press, Say, acts
from bot.channels.talk import Talk
from bot.reply import Message, Outgoing

YOU = "you"  # the person whose chat it is; as with a private chat anywhere, chat and person are one


@dataclass(frozen=True)
class Stage:
    """When and where a script begins, and what becomes of what the bot sends.

    `start` is aware; local times of the script and of its output are those of `zone`. `session` keeps the
    messages of two runs on one store apart.
    """

    start: datetime
    zone: ZoneInfo
    out: TextIO
    pictures: Path
    json: bool = False
    session: str = field(default_factory=lambda: uuid.uuid4().hex[:12])


class ScriptedChat:
    """A chat whose lines and clock come from a script; it can be played on, as after a restart of the bot."""

    def __init__(self, stage: Stage) -> None:
        self.now = stage.start.astimezone(UTC)
        self._stage = stage
        self._album = Album(stage.pictures)
        self._buttons = Buttons()
        self._speakers: dict[str, str] = {}
        self._received = self._sent = 0
        self._stamped = ""

    async def play(self, lines: Iterable[str | bytes], talk: Talk) -> None:
        """Play lines, delivering in order what falls due on the way.

        A sequence is read to its end before its first line is played, so a mistake in it costs nothing;
        anything else (standard input) is played as it comes.

        Raises
        ------
        BadLine
            A line cannot be read, or presses a button that is not there.
        """
        script: Iterable[tuple[int, Act]] = acts(lines, self.now, self._stage.zone)
        if isinstance(lines, Sequence):
            script = list(script)
        await self._move(self.now, talk)
        for number, act in script:
            await self._act(number, act, talk)

    async def send(self, outgoing: Outgoing) -> str:
        """Print one thing that the bot sends; its key."""
        self._sent += 1
        key = f"{self._stage.session}-bot-{self._sent}"
        self._buttons.show(key, outgoing.reply)
        picture = self._album.keep(outgoing.picture, self._local()) if outgoing.picture else None
        document = self._album.keep(outgoing.document, self._local()) if outgoing.document else None
        kept = (picture, document)
        self._print(self._as_json(outgoing, kept) if self._stage.json else self._as_talk(outgoing, kept))
        return key

    async def _act(self, number: int, act: Act, talk: Talk) -> None:
        """One act of the script, and the answers that it gets."""
        if isinstance(act, Move):
            await self._move(act.to, talk)
            return
        message = self._message(number, act)
        if not self._stage.json:
            said = act.text if isinstance(act, Say) else f"[{act.label}]"
            self._print(f"{self._stamp()}> {act.who}: {said}" if act.who else f"{self._stamp()}> {said}")
        talk.receive(message, self.now)
        await talk.round(self.now)

    async def _move(self, to: datetime, talk: Talk) -> None:
        """Move the clock, stopping wherever something falls due on the way."""
        stuck = None
        while (due := talk.next_due()) is not None and due <= to and due != stuck:
            # what is due and cannot be sent must not hold the clock: it is tried again at the end of the move
            self._set(max(due, self.now), talk)
            stuck = None if await talk.round(self.now) else due
        self._set(to, talk)
        await talk.round(to)

    def _set(self, now: datetime, talk: Talk) -> None:
        self.now = now.astimezone(UTC)
        talk.tell(self.now)

    def _message(self, number: int, act: Say | Press) -> Message:
        """What is said, as the bot is handed it."""
        self._received += 1
        who = act.who or YOU
        key = f"{self._stage.session}-{self._received}"
        self._speakers[key] = who
        text, pressed, answers = (act.text, None, None) if isinstance(act, Say) else self._press(number, act.label)
        return Message(
            key=key,
            ref=key,
            chat=who if act.where == ALONE else YOU,
            person=who,
            name=act.who or "",
            said_at=self.now,
            text=text,
            pressed=pressed,
            answers=answers,
            in_group=act.where == IN_GROUP,
        )

    def _press(self, number: int, label: str) -> tuple[str, str, str]:
        """No text, the payload of the button that is meant, and the message that it belongs to."""
        found = self._buttons.labelled(label)
        if found is None:
            there = ", ".join(f"[{known}]" for known in self._buttons.labels()) or "no button at all"
            raise BadLine(number, f"no single button is meant by «{label}»; there is {there}")
        return "", found.button.payload, found.key

    def _as_json(self, outgoing: Outgoing, kept: tuple[Path | None, Path | None]) -> str:
        """One thing that the bot sends, as one line."""
        reply, (picture, document) = outgoing.reply, kept
        spoken = {
            "at": self._local().isoformat(timespec="seconds"),
            "kind": reply.kind,
            "to": self._to(outgoing),
            "text": reply.text,
            "buttons": [button.label for row in reply.buttons for button in row],
            "picture": str(picture) if picture else None,
            **({"document": str(document)} if document else {}),
            "facts": reply.facts,
        }
        return json.dumps(spoken, ensure_ascii=False, allow_nan=False)

    def _as_talk(self, outgoing: Outgoing, kept: tuple[Path | None, Path | None]) -> str:
        """One thing that the bot sends, as a person reads it."""
        reply, (picture, document) = outgoing.reply, kept
        rows = (" ".join(f"[{button.label}]" for button in row) for row in reply.buttons)
        shown = [f"picture: {picture}"] if picture else [outgoing.picture.says] if outgoing.picture else []
        filed = [f"document: {document}"] if document else [outgoing.document.instead] if outgoing.document else []
        return self._stamp() + "\n".join([reply.text, *rows, *shown, *filed]) + "\n"

    def _to(self, outgoing: Outgoing) -> str:
        """Whom it is for: who is named, else who is answered, else the chat."""
        return outgoing.reply.to or self._speakers.get(outgoing.answering or "", outgoing.chat)

    def _local(self) -> datetime:
        return self.now.astimezone(self._stage.zone)

    def _stamp(self) -> str:
        """A line with the local time, whenever the minute is another."""
        stamp = f"{self._local():[%a %Y-%m-%d %H:%M]}\n"
        before, self._stamped = self._stamped, stamp
        return "" if stamp == before else stamp

    def _print(self, text: str) -> None:
        print(text, file=self._stage.out, flush=True)


async def perform(chat: ScriptedChat, lines: Iterable[str | bytes], talk: Talk, err: TextIO) -> int:
    """Play a script for the command line: exit code 0, or 2 and one clear line for a script that cannot be read."""
    try:
        await chat.play(lines, talk)
    except BadLine as wrong:
        print(wrong, file=err, flush=True)
        return 2
    return 0
