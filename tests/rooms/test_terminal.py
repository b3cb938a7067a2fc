"""The terminal: what is typed is a message or a button, and what the bot says arrives while the prompt waits."""

import asyncio
import io
import logging
import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.channels.album import Album
from bot.channels.talk import Talk
from bot.channels.terminal import Desk, TerminalChat, TerminalWords, now
from bot.reply import Button, Document, Message, Outgoing, Picture, Reply

WORDS = TerminalWords(
    welcome="Say what you cook.",
    goodbye="Bye.",
    prompt="you> ",
    picture="(picture: {path})",
    picture_lost="(no picture: {says}, {folder})",
    document="(document: {path})",
    document_lost="(no document: {instead}, {folder})",
    no_button="{said} presses nothing, {labels} would",
    failed="That was not taken.",
    reminder="[{time}]",
    alert="[{time}!]",
    leave=frozenset({"exit", "quit"}),
)
MOMENT = datetime(2027, 3, 1, 7, 0, tzinfo=UTC)
PICTURE = Picture(b"\x89PNG\r\n\x1a\nflat", "a curve that rises", "cook")


class Keyboard(io.StringIO):
    """A standard input that is a terminal."""

    def isatty(self) -> bool:
        return True


@dataclass
class Bot:
    """A bot that says back what it hears, with two rows of buttons."""

    desk: Desk
    heard: list[Message] = field(default_factory=list)
    waiting: list[Reply] = field(default_factory=list)
    threads: set[str] = field(default_factory=set)
    picture: Picture | None = None
    breaks_on: str = "no such thing is ever said"
    answer: Callable[[str], Reply] = lambda said: Reply(
        f"heard {said}", ((Button("Done", "done"), Button("6.25 %", "strong")), (Button("2 days", "days"),))
    )

    def __post_init__(self) -> None:
        self.chat = TerminalChat(WORDS, self.desk)

    @property
    def talk(self) -> Talk:
        return Talk(self.receive, self.round, lambda: None)

    def receive(self, message: Message, at: datetime) -> bool:
        if message.text == self.breaks_on:
            raise RuntimeError("the disk is full")
        self.heard.append(message)
        self.threads.add(threading.current_thread().name)
        self.waiting.append(self.answer(message.text or f"pressed {message.pressed}"))
        return True

    async def round(self, at: datetime) -> int:
        sent, self.waiting = self.waiting, []
        for reply in sent:
            await self.chat.send(Outgoing("1", "you", at, reply, self.picture))
        return len(sent)


def sitting(tmp_path: Path, *typed: str) -> Bot:
    """A bot whose person types these lines through a pipe."""
    stdin = io.StringIO("".join(f"{line}\n" for line in typed))
    return Bot(Desk(Album(tmp_path / "pictures"), stdin, io.StringIO(), lambda: MOMENT))


async def said(bot: Bot) -> str:
    """All that was printed while the person talked."""
    await bot.chat.run(bot.talk)
    return bot.desk.out.getvalue()


async def test_a_line_is_a_message_and_its_answer_is_printed(tmp_path: Path) -> None:
    """From the welcome to the end of the pipe; an empty line says nothing."""
    bot = sitting(tmp_path, "3.2 kg brisket", "", "   ", "158")
    assert (
        await said(bot)
        == """\
Say what you cook.
heard 3.2 kg brisket
!1 Done  !2 6.25 %
!3 2 days

heard 158
!1 Done  !2 6.25 %
!3 2 days

Bye.
"""
    )
    assert [message.text for message in bot.heard] == ["3.2 kg brisket", "158"]
    assert len({message.key for message in bot.heard}) == 2
    assert {(message.said_at, message.chat, message.person) for message in bot.heard} == {(MOMENT, "you", "you")}


@pytest.mark.parametrize("word", ["exit", "QUIT", " exit "])
async def test_a_word_ends_the_talk(tmp_path: Path, word: str) -> None:
    """Nothing after it is heard, it is no message itself, and the terminal says goodbye."""
    bot = sitting(tmp_path, "one", word, "two")
    assert (await said(bot)).endswith("Bye.\n")
    assert [message.text for message in bot.heard] == ["one"]


@pytest.mark.parametrize(
    ("typed", "payload"),
    [
        ("!1", "done"),
        ("!3", "days"),
        ("!2", "strong"),
        ("!Done", "done"),
        ("!done", "done"),
        ("!2 d", "days"),
        ("! 6.25", "strong"),
        ("Done", "done"),
        ("6.25 %", "strong"),
    ],
)
async def test_a_button_is_pressed_by_number_or_label(tmp_path: Path, typed: str, payload: str) -> None:
    """`!` and either; the last message's label also without. The payload comes back, and the message it was on."""
    bot = sitting(tmp_path, "one", typed)
    await said(bot)
    assert (bot.heard[-1].text, bot.heard[-1].pressed) == ("", payload)
    assert bot.heard[-1].answers


@pytest.mark.parametrize("typed", ["1", "3", "do", "2 days later", "\\!1"])
async def test_a_number_is_a_reading_and_no_button(tmp_path: Path, typed: str) -> None:
    """`3` beside three buttons is the temperature of a fridge; a backslash sends anything."""
    bot = sitting(tmp_path, "one", typed)
    await said(bot)
    assert (bot.heard[-1].text, bot.heard[-1].pressed) == (typed.removeprefix("\\"), None)


async def test_a_label_of_an_older_message_is_a_message(tmp_path: Path) -> None:
    """«done» after another message is said to that one; with `!` it still presses the old button."""
    bot = sitting(tmp_path, "done", "!done")
    await bot.chat.send(Outgoing("1", "you", MOMENT, Reply("look", ((Button("Done", "old"),),))))
    await bot.chat.send(Outgoing("2", "you", MOMENT, Reply("and this")))
    bot.answer = lambda text: Reply("ok")
    await said(bot)
    assert [(message.text, message.pressed) for message in bot.heard] == [("done", None), ("", "old")]


async def test_a_button_that_is_not_there_is_told(tmp_path: Path) -> None:
    """With the labels that there are; nothing is sent."""
    bot = sitting(tmp_path, "one", "!9", "!nope", "!")
    printed = await said(bot)
    assert "!9 presses nothing, Done, 6.25 %, 2 days would" in printed
    assert "!nope presses nothing" in printed
    assert len(bot.heard) == 1


async def test_a_picture_is_saved_and_its_path_printed(tmp_path: Path) -> None:
    """The file at the path holds the picture."""
    bot = sitting(tmp_path, "show")
    bot.picture = PICTURE
    printed = await said(bot)
    path = Path(printed.split("(picture: ")[1].split(")\n")[0])
    assert (path.parent, path.read_bytes()) == (tmp_path / "pictures", PICTURE.png)


@pytest.mark.parametrize("folder", [True, False])
async def test_a_document_is_saved_and_its_path_printed(tmp_path: Path, folder: bool) -> None:
    """The file at the path holds the document; where the folder takes none, what else can be done is said."""
    bot = sitting(tmp_path)
    if not folder:
        (tmp_path / "pictures").write_text("a file where the folder should be")
    await bot.chat.send(Outgoing("1", "you", MOMENT, Reply("Keep it."), document=Document(b"%PDF", "a.pdf", "Ask.")))
    printed = bot.desk.out.getvalue()  # type: ignore[union-attr]
    if folder:
        path = Path(printed.split("(document: ")[1].split(")\n")[0])
        assert (path.suffix, path.read_bytes()) == (".pdf", b"%PDF")
    else:
        assert f"(no document: Ask., {tmp_path / 'pictures'})" in printed


async def test_a_picture_that_cannot_be_saved_is_told(tmp_path: Path) -> None:
    """The sentence that says the same stands in its place."""
    (tmp_path / "pictures").write_text("a file where the folder should be")
    bot = sitting(tmp_path, "show")
    bot.picture = PICTURE
    assert f"(no picture: a curve that rises, {tmp_path / 'pictures'})" in await said(bot)


async def test_a_turn_that_fails_is_a_sentence_and_the_talk_goes_on(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    """No traceback reaches the person; the log has it."""
    bot = sitting(tmp_path, "one", "two", "three")
    bot.breaks_on = "two"
    with caplog.at_level(logging.ERROR):
        printed = await said(bot)
    assert "That was not taken.\n" in printed
    assert "Traceback" not in printed
    assert "the disk is full" in caplog.text
    assert [message.text for message in bot.heard] == ["one", "three"]


async def test_a_turn_runs_in_a_thread(tmp_path: Path) -> None:
    """What a turn computes holds up no reminder."""
    bot = sitting(tmp_path, "one")
    await said(bot)
    assert threading.main_thread().name not in bot.threads


async def test_reminders_say_when(tmp_path: Path) -> None:
    """A reminder and an alert carry the time of their arrival, an answer does not."""
    bot = sitting(tmp_path)
    bot.waiting = [Reply("flip", kind="reminder"), Reply("too warm", kind="alert"), Reply("hello")]
    clock = f"{MOMENT.astimezone():%H:%M}"
    assert f"[{clock}] flip\n\n[{clock}!] too warm\n\nhello\n" in await said(bot)


async def test_alarms_run_as_long_as_the_talk(tmp_path: Path) -> None:
    """They are started with it and stopped with it."""
    bot = sitting(tmp_path, "one")
    seen: list[str] = []

    async def alarms() -> None:
        seen.append("started")
        try:
            await asyncio.sleep(3600)
        finally:
            seen.append("stopped")

    await bot.chat.run(bot.talk, alarms)
    assert seen == ["started", "stopped"]


async def test_alarms_that_break_are_in_the_log(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    """Reminders never stop in silence, and the talk goes on without them."""
    bot = sitting(tmp_path, "one")

    async def alarms() -> None:
        raise RuntimeError("no more alarms")

    await bot.chat.run(bot.talk, alarms)
    assert "no more alarms" in caplog.text
    assert len(bot.heard) == 1


async def test_a_reminder_arrives_while_the_prompt_waits(tmp_path: Path) -> None:
    """At a true prompt: nothing is typed, the reminder is printed, what was begun stays, and Ctrl-D says goodbye."""
    from prompt_toolkit.application import create_app_session
    from prompt_toolkit.data_structures import Size
    from prompt_toolkit.input import create_pipe_input
    from prompt_toolkit.output.vt100 import Vt100_Output

    screen = io.StringIO()
    output = Vt100_Output(screen, lambda: Size(rows=40, columns=100), term="dumb")
    bot = Bot(Desk(Album(tmp_path), Keyboard(), None, lambda: MOMENT))

    async def alarms() -> None:
        while "you>" not in screen.getvalue():
            await asyncio.sleep(0.01)
        keys.send_text("15")
        bot.waiting = [Reply("Flip the flat.", kind="reminder")]
        await bot.round(MOMENT)
        while "Flip the flat." not in screen.getvalue():
            await asyncio.sleep(0.01)
        keys.send_text("8\r")
        while not bot.heard:
            await asyncio.sleep(0.01)
        keys.send_text("\x04")

    with create_pipe_input() as keys, create_app_session(input=keys, output=output):
        await asyncio.wait_for(bot.chat.run(bot.talk, alarms), timeout=60)
    assert [message.text for message in bot.heard] == ["158"]
    assert "heard 158" in screen.getvalue()
    assert "Bye." in screen.getvalue()


async def test_ctrl_c_leaves_kindly(tmp_path: Path) -> None:
    """As Ctrl-D does: no traceback."""
    from prompt_toolkit.application import create_app_session
    from prompt_toolkit.input import create_pipe_input
    from prompt_toolkit.output import DummyOutput

    out = io.StringIO()
    bot = Bot(Desk(Album(tmp_path), Keyboard(), out, lambda: MOMENT))
    with create_pipe_input() as keys, create_app_session(input=keys, output=DummyOutput()):
        keys.send_text("\x03")
        await asyncio.wait_for(bot.chat.run(bot.talk), timeout=60)
    assert out.getvalue().endswith("Bye.\n")


def test_the_clock_is_aware() -> None:
    """The clock on the wall tells UTC."""
    assert now().tzinfo is UTC
