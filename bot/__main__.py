"""The composition root and the command line: builds everything once, then runs.

    saltbell run       the bot on Telegram, by polling or webhook
    saltbell chat      the same talk in this terminal; --script plays a file of lines against a clock of its own

What is not needed for the first question to the Bot API is imported after it has gone out.
"""

import argparse
import asyncio
import ctypes
import io
import os
import sys
import tempfile
from collections.abc import Awaitable, Callable, Iterable
from contextlib import ExitStack, suppress
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo, available_timezones

from bot import logs
from bot.config import Listen, Settings, settings
from core.errors import Missing, NotKept, SaltbellError, Unreadable

if TYPE_CHECKING:
    from bot.assembly import Built
    from bot.channels.telegram.intake import House
    from bot.keeper.alarm import Alarm
    from bot.reply import Outgoing
    from core.store.servertime import Time

PROGRAM = "saltbell"
M_ARENA_MAX, M_MMAP_THRESHOLD = -8, -3  # malloc.h of the GNU C library
LARGE = 1 << 20  # bytes; what is larger is given back to the system as soon as it is let go


def main(arguments: list[str] | None = None) -> int:
    """The command line; the exit code."""
    # The matrices of the core are small: threads of the algebra library only wait for one another (on two busy cores
    # 1 ms became 500). It is read when numpy is first imported, which is later than this.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    _share_heaps()
    said = _parser().parse_args(arguments)
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(encoding="utf-8")  # whatever the locale, what is said is said in full
    try:
        chosen = settings(os.environ)
        logs.begin(chosen.log, as_json=chosen.log_as == "json")
        return int(said.run(said, chosen))
    except SaltbellError as trouble:
        print(f"{PROGRAM}: {_plain(trouble)}", file=sys.stderr)
        return 2
    except BrokenPipeError:  # whoever read along has read enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except KeyboardInterrupt:
        return 130


def _share_heaps() -> None:
    """Let all threads share two heaps of the C library: with one each they keep 12 MB more among them for ever.

    Large arrays, as the entries need while they are loaded, stay out of these heaps: 20 MB else.

    Only the GNU library has such a thing (mallopt(3)); elsewhere nothing is changed.
    """
    with suppress(AttributeError, OSError, TypeError):
        library = ctypes.CDLL(None)
        library.mallopt(M_ARENA_MAX, 2)
        library.mallopt(M_MMAP_THRESHOLD, LARGE)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog=PROGRAM, description="Cures and smokes with you, step by step.")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    run = commands.add_parser("run", help="the bot on Telegram")
    run.set_defaults(run=_run)
    chat = commands.add_parser("chat", help="the same talk in this terminal")
    chat.add_argument("--script", metavar="FILE", help="play the lines of FILE, - for standard input")
    chat.add_argument("--start", metavar="TIME", help="when a script begins, like 2027-03-01T08:00")
    chat.add_argument("--zone", metavar="ZONE", help="the zone of the clock, like Europe/Vienna")
    chat.add_argument("--json", action="store_true", help="one JSON object a line for each thing that is sent")
    chat.add_argument("--database", metavar="FILE", help="where it is kept; a script starts with nothing kept")
    chat.set_defaults(run=_chat)
    return parser


def _plain(trouble: SaltbellError) -> str:
    match trouble:
        case Missing(quantity):
            return f"{quantity} is not set; see deploy/saltbell.env.example"
        case Unreadable(file, where, why):
            return f"{file}: {where}: {why}"
        case NotKept(why):
            return f"the store cannot be opened: {why}"
        case _:
            return repr(trouble)


def _now() -> datetime:
    return datetime.now(UTC)


def _run(_: argparse.Namespace, chosen: Settings) -> int:
    from bot.channels.telegram.account import TokenRefused

    ready = chosen.ready_to_run()
    try:
        asyncio.run(_telegram(ready))
    except TokenRefused:
        print(f"{PROGRAM}: the Bot API does not know this token; get a new one and set SALTBELL_TOKEN", file=sys.stderr)
        return 2
    return 0


async def _telegram(chosen: Settings) -> None:
    import signal

    from bot.channels.telegram.account import API_URL, Account
    from bot.channels.telegram.channel import Manners, Telegram
    from bot.channels.telegram.intake import House
    from bot.channels.telegram.traffic import Pace
    from bot.channels.telegram.webhook import WebhookSite
    from core.store.servertime import Time

    now = Time()
    manners = Manners(Pace(a_second=chosen.a_second), now=now)
    telegram = Telegram(Account(chosen.token or "", chosen.api_url or API_URL), manners)
    alarms: list[asyncio.Task[None]] = []

    async def open_house() -> House:
        from bot.keeper.alarm import Alarm

        built = await asyncio.to_thread(_built, chosen, telegram.send, now)
        built.postman.marked, built.postman.shared_by = telegram.marked, telegram.shared_by
        built.postman.takes_along = True
        if chosen.metrics is not None:
            alarms.append(asyncio.create_task(_watched(built, chosen.metrics)))
        return _opened(built, now, alarms, Alarm(telegram.send, chosen.keeper))

    for name in (signal.SIGTERM, signal.SIGINT):
        asyncio.get_running_loop().add_signal_handler(name, telegram.stop)
    try:
        if chosen.mode == "webhook":
            listen = chosen.listen
            site = WebhookSite(chosen.webhook_url or "", chosen.webhook_secret or "", listen.host, listen.port)
            await telegram.run_webhook(open_house, site)
        else:
            await telegram.run_polling(open_house)
    finally:
        for task in alarms:
            task.cancel()
        await asyncio.gather(*alarms, return_exceptions=True)


def _built(chosen: Settings, send: "Callable[[Outgoing], Awaitable[str]]", now: "Time") -> "Built":
    from bot.assembly import build, made_ready, newcomer, rules

    made_ready()
    built = build(chosen.database_url, newcomer(chosen.zone), send, rules(chosen)).without_facts()
    built.go_by(now)
    return built


async def _watched(built: "Built", where: Listen) -> None:
    """The keeper's door, open until cancelled."""
    from bot.keeper.door import Door

    door = Door(built.report)
    await door.open(where.host, where.port)
    try:
        await asyncio.Event().wait()
    finally:
        await door.close()


def _opened(built: "Built", now: "Time", alarms: list["asyncio.Task[None]"], alarm: "Alarm") -> "House":
    """What stands behind the door, with the alarm clock running."""
    from bot.channels.telegram.intake import House, Menu
    from bot.wording.commands import MENUS
    from core.reminders.clock import Clock

    clock = Clock(now)
    alarms.append(asyncio.create_task(clock.run(built.postman)))

    async def deliver(chat: str) -> None:
        await built.postman.replies(chat, now())

    menus = tuple(Menu(commands, language, chats) for language, chats, commands in MENUS)
    return House(alarm.receiving(built.receive), deliver, menus)


def _chat(said: argparse.Namespace, chosen: Settings) -> int:
    if said.script is not None:
        return asyncio.run(_scripted(said, chosen))
    return asyncio.run(_interactive(said, chosen))


async def _interactive(said: argparse.Namespace, chosen: Settings) -> int:
    from bot.assembly import build, newcomer
    from bot.channels.album import Album
    from bot.channels.talk import Talk
    from bot.channels.terminal import Desk, TerminalChat, TerminalWords
    from bot.wording.terminal import LEAVE, PLACES
    from core.reminders.clock import Clock

    chat = TerminalChat(TerminalWords(**PLACES, leave=LEAVE), Desk(Album(chosen.pictures)))
    url = _url(said.database) or chosen.database_url
    zone = said.zone or chosen.zone or _host_zone()
    built = build(url, newcomer(_zone(zone).key if zone else None), chat.send)
    clock = Clock(_now)
    talk = Talk(built.receive, built.postman.round, built.next_due)
    try:
        await chat.run(talk, lambda: clock.run(built.postman))
    finally:
        built.close()
    return 0


async def _scripted(said: argparse.Namespace, chosen: Settings) -> int:
    from bot.assembly import build, newcomer
    from bot.channels.script import ScriptedChat, Stage, perform
    from bot.channels.talk import Talk

    zone = said.zone or chosen.zone or "UTC"
    with tempfile.TemporaryDirectory() as fresh:
        stage = Stage(_start(said.start, _zone(zone)), _zone(zone), sys.stdout, chosen.pictures, said.json)
        chat = ScriptedChat(stage)
        built = build(_url(said.database) or _url(str(Path(fresh) / "script.db")) or "", newcomer(zone), chat.send)
        try:
            talk = Talk(built.receive, built.postman.round, built.next_due)
            with ExitStack() as opened:
                return await perform(chat, _lines(said.script, opened), talk, sys.stderr)
        finally:
            built.close()


def _lines(name: str, opened: ExitStack) -> Iterable[bytes]:
    """The lines of a script: a file is read whole first, standard input as it comes."""
    if name == "-":
        return sys.stdin.buffer
    try:
        return opened.enter_context(Path(name).open("rb")).readlines()
    except OSError as trouble:
        raise Unreadable(name, "the script", trouble.strerror or str(trouble)) from trouble


def _start(said: str | None, zone: ZoneInfo) -> datetime:
    """When a script begins: as it was said, in the zone of the clock, or now."""
    if said is None:
        return _now()
    from bot.channels.lines import instant

    try:
        return instant(said, zone)
    except ValueError as trouble:
        raise Unreadable("--start", said, str(trouble)) from trouble


def _zone(name: str) -> ZoneInfo:
    try:
        return ZoneInfo(name)
    except (KeyError, ValueError, OSError) as trouble:
        raise Unreadable("--zone", name, "there is no such zone") from trouble


def _url(database: str | None) -> str | None:
    if database is None or "://" in database:
        return database
    return f"sqlite:///{Path(database).expanduser().absolute()}"


def _host_zone() -> str | None:
    """The zone of this machine, where it says one by name; a terminal sits where its person sits."""
    named = os.environ.get("TZ", "").removeprefix(":")
    link = Path("/etc/localtime").resolve().parts
    found = named or ("/".join(link[link.index("zoneinfo") + 1 :]) if "zoneinfo" in link else "")
    return found if found in available_timezones() and found not in ("UTC", "Etc/UTC") else None


if __name__ == "__main__":
    sys.exit(main())
