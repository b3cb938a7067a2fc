"""Settings, read once from the environment by `bot/__main__` and handed on; nothing else reads it.

    SALTBELL_TOKEN            the token of the bot account; `saltbell run` needs it
    SALTBELL_DATABASE         a file, or a database URL; default: saltbell/saltbell.db in the user's data folder
    SALTBELL_ZONE             the zone of people who have not said theirs, such as Europe/Vienna
    SALTBELL_MODE             polling (default) or webhook
    SALTBELL_WEBHOOK_URL      where the channel reaches us, https://...; webhook only
    SALTBELL_WEBHOOK_SECRET   what it has to say there; webhook only
    SALTBELL_LISTEN           host:port that the webhook listens on; default 127.0.0.1:8080
    SALTBELL_API_URL          another server of the Bot API than the public one
    SALTBELL_PICTURES         the folder where the terminal leaves pictures
    SALTBELL_LOG              debug, info, warning (default) or error
    SALTBELL_LOG_AS           text (default) or json, one object a line
    SALTBELL_KEEPER           the keeper's number on the channel: may ask «bot status», is told when nothing is kept
    SALTBELL_ALLOWED          numbers of the people and groups that may use the bot, with commas; default: everybody
    SALTBELL_INVITATION       a code of 8 to 64 letters, digits, - and _: who says it is let in, and nobody else
    SALTBELL_CHAT_A_DAY       messages of one chat in a day where the bot is open to all; 0 for no limit; default 500
    SALTBELL_NEW_CHATS_A_DAY  new chats in a day where the bot is open to all; 0 for no limit; default 100
    SALTBELL_A_SECOND         messages a second that the account may send; default 29, a little below the public limit
    SALTBELL_METRICS          host:port of /healthz and /metrics for the keeper's own tools; default: none

deploy/saltbell.env.example is the same list for a machine.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal, cast, get_args
from zoneinfo import ZoneInfo

from core.errors import Missing, OutOfRange, Unreadable

Mode = Literal["polling", "webhook"]
Log = Literal["debug", "info", "warning", "error"]
LogAs = Literal["text", "json"]

SECRET = re.compile(r"[A-Za-z0-9_-]{1,256}")  # what the Bot API takes as a secret_token
CODE = re.compile(r"[A-Za-z0-9_-]{8,64}")  # 64: what a link of the channel carries
NUMBER = re.compile(r"-?\d{1,19}")
URL = re.compile(r"[a-z0-9+]+://")
HIGHEST_PORT = 65535


@dataclass(frozen=True)
class Listen:
    """Where the webhook listens."""

    host: str = "127.0.0.1"
    port: int = 8080


@dataclass(frozen=True)
class Door:
    """Whom the bot lets in: numbers and a code make it private; else so many a day, 0 for no limit."""

    allowed: frozenset[str] = frozenset()
    code: str | None = field(default=None, repr=False)
    messages: int = 500
    new_chats: int = 100


@dataclass(frozen=True)
class Settings:
    """What the environment says. Neither the token nor the secret shows when this is printed."""

    database: str
    pictures: Path
    token: str | None = field(default=None, repr=False)
    zone: str | None = None
    mode: Mode = "polling"
    webhook_url: str | None = None
    webhook_secret: str | None = field(default=None, repr=False)
    listen: Listen = Listen()
    api_url: str | None = None
    log: Log = "warning"
    log_as: LogAs = "text"
    keeper: str | None = None
    metrics: Listen | None = None
    door: Door = Door()
    a_second: int = 29

    @property
    def database_url(self) -> str:
        """The database as a URL, whether a file or a URL was named."""
        return self.database if URL.match(self.database) else f"sqlite:///{Path(self.database).expanduser().absolute()}"

    def ready_to_run(self) -> "Settings":
        """The same, once there is all that `saltbell run` needs; raises Missing, naming what is not there."""
        needed = {"SALTBELL_TOKEN": self.token}
        if self.mode == "webhook":
            needed |= {"SALTBELL_WEBHOOK_URL": self.webhook_url, "SALTBELL_WEBHOOK_SECRET": self.webhook_secret}
        for name, value in needed.items():
            if value is None:
                raise Missing(name)
        return self


def settings(environment: Mapping[str, str]) -> Settings:
    """The settings as an environment says them; a variable that is empty is one that is not set.

    Raises
    ------
    Unreadable
        A zone that there is not, a mode or a log level that is none, an address that is none.
    OutOfRange
        A port that cannot be.
    """
    said = {name.removeprefix("SALTBELL_"): value.strip() for name, value in environment.items() if value.strip()}
    data = _data_folder(environment)
    return Settings(
        database=said.get("DATABASE", str(data / "saltbell.db")),
        pictures=Path(said.get("PICTURES", data / "pictures")).expanduser(),
        token=said.get("TOKEN"),
        zone=_zone(said.get("ZONE")),
        mode=cast(Mode, _one_of("MODE", said.get("MODE", "polling"), get_args(Mode))),
        webhook_url=_https(said.get("WEBHOOK_URL")),
        webhook_secret=_secret(said.get("WEBHOOK_SECRET")),
        listen=_listen("LISTEN", said.get("LISTEN")) or Listen(),
        api_url=said.get("API_URL"),
        log=cast(Log, _one_of("LOG", said.get("LOG", "warning"), get_args(Log))),
        log_as=cast(LogAs, _one_of("LOG_AS", said.get("LOG_AS", "text"), get_args(LogAs))),
        keeper=said.get("KEEPER"),
        metrics=_listen("METRICS", said.get("METRICS")),
        door=Door(
            _numbers(said.get("ALLOWED", "")),
            _code(said.get("INVITATION")),
            _count("CHAT_A_DAY", said, Door.messages),
            _count("NEW_CHATS_A_DAY", said, Door.new_chats),
        ),
        a_second=_count("A_SECOND", said, Settings.a_second, least=1),
    )


def _data_folder(environment: Mapping[str, str]) -> Path:
    """The user's data folder, as the XDG base directory rules say: a path that is not absolute does not count."""
    said = Path(environment.get("XDG_DATA_HOME", ""))
    home = said if said.is_absolute() else Path.home() / ".local" / "share"
    return home / "saltbell"


def _unreadable(name: str, why: str) -> Unreadable:
    return Unreadable("environment", f"SALTBELL_{name}", why)


def _one_of(name: str, said: str, known: tuple[str, ...]) -> str:
    if said.lower() not in known:
        raise _unreadable(name, f"{said!r} is none of {', '.join(known)}")
    return said.lower()


def _zone(said: str | None) -> str | None:
    if said is not None:
        try:
            ZoneInfo(said)
        except (KeyError, ValueError, OSError) as trouble:
            raise _unreadable("ZONE", f"{said!r} is no zone") from trouble
    return said


def _https(said: str | None) -> str | None:
    if said is not None and not said.startswith("https://"):
        raise _unreadable("WEBHOOK_URL", "it does not begin with https://")
    return said


def _secret(said: str | None) -> str | None:
    if said is not None and not SECRET.fullmatch(said):
        raise _unreadable("WEBHOOK_SECRET", "1 to 256 letters, digits, - and _ only")
    return said


def _numbers(said: str) -> frozenset[str]:
    found = frozenset(filter(None, re.split(r"[\s,;]+", said)))
    wrong = sorted(one for one in found if not NUMBER.fullmatch(one))
    if wrong:
        raise _unreadable("ALLOWED", f"{wrong[0]!r} is no number of a person or a group")
    return found


def _code(said: str | None) -> str | None:
    if said is not None and not CODE.fullmatch(said):
        raise _unreadable("INVITATION", "8 to 64 letters, digits, - and _ only")
    return said


def _count(name: str, said: Mapping[str, str], default: int, least: int = 0) -> int:
    found = said.get(name, str(default))
    if not found.isdecimal() or int(found) < least:
        raise _unreadable(name, f"{found!r} is no whole number" + f" from {least}" * bool(least))
    return int(found)


def _listen(name: str, said: str | None) -> Listen | None:
    if said is None:
        return None
    host, colon, port = said.rpartition(":")
    if not colon or not port.isdecimal():
        raise _unreadable(name, f"{said!r} is not host:port")
    if not 1 <= int(port) <= HIGHEST_PORT:
        raise OutOfRange(f"SALTBELL_{name}", float(port), 1, HIGHEST_PORT)
    return Listen(host.strip("[]"), int(port))
