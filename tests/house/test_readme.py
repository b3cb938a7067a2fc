"""What the README shows is what the bot says, and the command that it gives is one that works."""

import io
import re
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from bot.assembly import build, newcomer
from bot.channels.script import ScriptedChat, Stage
from bot.channels.talk import Talk

README = (Path(__file__).parents[2] / "README.md").read_text("utf-8")
COMMAND = re.compile(r"deploy/chat --script (\S+) --start (\S+) --zone (\S+)")


async def said(lines: list[str], start: str, zone: str, folder: Path) -> str:
    """A script as the terminal shows it."""
    out, tz = io.StringIO(), ZoneInfo(zone)
    begins = datetime.fromisoformat(start).replace(tzinfo=tz).astimezone(UTC)
    chat = ScriptedChat(Stage(begins, tz, out, folder / "pictures"))
    built = build(f"sqlite:///{folder / 'readme.db'}", newcomer(zone), chat.send)
    await chat.play(lines, Talk(built.receive, built.postman.round, built.next_due))
    built.close()
    return out.getvalue()


async def test_the_session_is_true(tmp_path: Path) -> None:
    """The session shown is the talk of the script that the README names, from its beginning."""
    command = COMMAND.search(README)
    assert command is not None
    script, start, zone = command.groups()
    shown = next(block for block in README.split("```") if block.startswith("\n[") and "\n> " in block).lstrip("\n")
    lines = (Path(__file__).parents[2] / script).read_text("utf-8").splitlines()

    assert (await said(lines[:24], start, zone, tmp_path)).startswith(shown.rstrip())
