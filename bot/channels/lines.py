r"""What a line of a scripted chat means.

A line is a message, with these exceptions:

- an empty line says nothing; neither does `#` at the start of a line, nor a `#` between blanks and what follows
  it (`flipped  # an hour late`; «batch #2» is not a comment);
- `+12h`, `+30m`, `+2d`, `+1h30m` moves the clock by that much true time, `@2027-03-05T08:00` to that local
  time; what follows on the same line is read as a line of its own at the new time;
- `!label` presses a button;
- `as NAME: text` and `as NAME: !label` do it as another member of the chat; `as NAME in group: text` says it in a
  group, where names are called, and `as NAME alone: text` in a chat of their own;
- `\text` sends the text just as it is, whatever it begins with.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

_NUMBER = r"(\d{1,9}(?:\.\d{1,6})?)"
_DURATION = re.compile(rf"\+(?:{_NUMBER}w)?(?:{_NUMBER}d)?(?:{_NUMBER}h)?(?:{_NUMBER}m(?:in)?)?(?:{_NUMBER}s)?")
_WALL_TIME = re.compile(r"\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2})?(?:Z|[+-]\d{2}:\d{2})?")
_SPEAKER = re.compile(r"as ([^:]*):(?:\s+(.*))?$", re.DOTALL)
ALONE, IN_GROUP = WHERE = ("alone", "in group")
_COMMENT = re.compile(r"(?:^|\s+)#(?:\s.*)?$|^#.*$", re.DOTALL)


@dataclass(frozen=True)
class Move:
    """The clock moves to a time. [aware UTC]"""

    to: datetime


@dataclass(frozen=True)
class Say:
    """Somebody says something; None is the person whose chat it is."""

    text: str
    who: str | None = None
    where: str = ""  # "alone", "in group" or neither


@dataclass(frozen=True)
class Press:
    """Somebody presses the button with a label."""

    label: str
    who: str | None = None
    where: str = ""


Act = Move | Say | Press


@dataclass(eq=False)
class BadLine(Exception):
    """A line that cannot be played: its number, counted from 1, and why."""

    number: int
    why: str

    def __str__(self) -> str:
        return f"line {self.number}: {self.why}"


def acts(lines: Iterable[str | bytes], start: datetime, zone: ZoneInfo) -> Iterator[tuple[int, Act]]:
    """What the lines of a script do, each with its line number, from a start on. [aware UTC]

    Raises
    ------
    BadLine
        A line is not UTF-8, moves the clock in no way that can be read, or back, or names nobody or no button.
    """
    now = start
    for number, line in enumerate(lines, 1):
        try:
            for act in _line(_decoded(line), now, zone):
                now = act.to if isinstance(act, Move) else now
                yield number, act
        except ValueError as wrong:
            raise BadLine(number, str(wrong)) from wrong


def instant(text: str, zone: ZoneInfo, not_before: datetime | None = None) -> datetime:
    """The moment that a local wall time means, `2027-03-05T08:00`. [aware UTC]

    An hour that comes twice in autumn is the first of the two, or the second when the first is past already.

    Raises
    ------
    ValueError
        The text is no such time, or the clocks skip that time in spring.
    """
    if not _WALL_TIME.fullmatch(text):
        raise ValueError(f"{text} is no local time like 2027-03-05T08:00")
    local = datetime.fromisoformat(text)
    if local.tzinfo is not None:
        return local.astimezone(UTC)
    first, second = (local.replace(tzinfo=zone, fold=fold).astimezone(UTC) for fold in (0, 1))
    if first.astimezone(zone).replace(tzinfo=None) != local:
        raise ValueError(f"{text} does not exist in {zone.key}: the clocks go forward over it")
    return second if not_before and first < not_before <= second else first


def _decoded(line: str | bytes) -> str:
    """One line as text, its end of line and a byte order mark taken off."""
    try:
        text = line.decode("utf-8") if isinstance(line, bytes) else line.encode("utf-8").decode("utf-8")
    except UnicodeError as wrong:
        raise ValueError("not UTF-8") from wrong
    return text.removeprefix("\ufeff").strip()


def _line(text: str, now: datetime, zone: ZoneInfo) -> Iterator[Act]:
    """The acts of one line."""
    while text and text[0] in "+@":
        # a move may stand before anything, another move too, so what is left is read as a line again
        move, *rest = text.split(maxsplit=1)
        now, text = _moved(move, now, zone), "".join(rest)
        yield Move(now)
    if text.startswith("\\"):
        yield Say(text[1:])
    elif text := _COMMENT.sub("", text).strip():
        yield _spoken(text)


def _spoken(text: str) -> Act:
    """A message, a button, or either by another member."""
    speaker = _SPEAKER.match(text)
    if not speaker:
        return _said(text, None)
    name, rest = speaker[1].strip(), (speaker[2] or "").strip()
    where = next((each for each in WHERE if name.endswith(f" {each}")), "")
    name = name.removesuffix(f" {where}").strip() if where else name
    if not name:
        raise ValueError("as whom? write «as NAME: text»")
    if not rest:
        raise ValueError(f"what does {name} say? write «as {name}: text»")
    return _said(rest, name, where)


def _said(text: str, who: str | None, where: str = "") -> Act:
    """A message or a button, said by one member."""
    if not text.startswith("!"):
        return Say(text.removeprefix("\\") if who else text, who, where)
    label = text[1:].strip()
    if not label:
        raise ValueError("which button? write «!label»")
    return Press(label, who, where)


def _moved(move: str, now: datetime, zone: ZoneInfo) -> datetime:
    """Where the clock stands after a move. [aware UTC]"""
    try:
        then = _later(move, now) if move[0] == "+" else instant(move[1:], zone, now)
    except OverflowError as wrong:
        raise ValueError(f"{move} leads out of the calendar") from wrong
    if then < now:
        raise ValueError(f"{move} goes back in time: it is already {now.astimezone(zone):%Y-%m-%dT%H:%M}")
    return then


def _later(move: str, now: datetime) -> datetime:
    """The time that lies a written while ahead. [aware UTC]"""
    parts = _DURATION.fullmatch(move)
    if not parts or move == "+":
        raise ValueError(f"{move} is no clock move like +30m, +12h, +2d or +1h30m; text that begins with + wants a \\")
    weeks, days, hours, minutes, seconds = (float(part or 0) for part in parts.groups())
    return now + timedelta(weeks=weeks, days=days, hours=hours, minutes=minutes, seconds=seconds)
