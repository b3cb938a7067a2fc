"""What a tap carries: an intent in at most 64 bytes, `1|verb|batch|argument`, and back again.

The first field is the version: a button of an older form, a broken or a foreign one reads as None, and the talk says
that it is out of date. Instants are whole seconds since 1970; numbers come back exact.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from math import isfinite
from typing import Any, Final

from bot.intents.intents import (
    Ask,
    Cancel,
    Change,
    Choose,
    Debrief,
    Happened,
    Intent,
    MoveDeadline,
    Pause,
    Reading,
    Resume,
    Snooze,
    StepDone,
    StepMissed,
    StepSkipped,
    Temperature,
    Undo,
)
from core import patterns as re
from core.batch.events import Probe

VERSION: Final = "1"
LIMIT_BYTES: Final = 64  # Bot API, InlineKeyboardButton.callback_data: 1 to 64 bytes
_BAR: Final = "|"
_ANY_ID: Final = "x" * 12  # as long as the ids of batches may grow
# setup fields that a button may change, by a short code; appended to, never reordered or reused
_FIELDS: Final = {
    "cs": "cure_nitrite_fraction", "me": "method", "th": "thickness", "wr": "wrap", "ch": "chill", "pu": "purpose",
    "ri": "at_risk_eaters",
    "de": "deadline", "lc": "long_cure_confirmed", "sf": "sealed_faces", "sk": "skin_on", "fz": "frozen",
    "co": "cooker", "pc": "pit_c",
    "tc": "target_c", "fc": "fridge_c", "sa": "salt_fraction", "su": "sugar_fraction", "nt": "nitrite_target",
    "ws": "water_share",
    "pf": "pump_fraction", "cu": "cut", "ma": "mass", "pr": "product", "cd": "cure_days",
    "cv": "cover_share", "sh": "soak_hours", "rd": "rest_days", "hv": "heaviest", "pi": "put_in_cure",
    "bs": "brine_strength", "bh": "brine_hours", "sx": "salting_hours",
}  # fmt: skip
_PROBES: Final = {**{probe.value[0]: probe for probe in Probe}, "-": None}
_TEMPERATURE: Final = re.compile(
    r"(?P<value>-?[\d.e+-]{1,24}?)(?P<unit>[cf-])(?P<probe>[cpfbr-])(?P<at>[0-9a-f]{0,10})"
)
_CODES: Final = {name: code for code, name in _FIELDS.items()}


class TooWide(ValueError):
    """An intent that does not fit on a button: a fault of ours, found by the tests."""


def payload(intent: Intent) -> str:
    """The payload of a button that means `intent`.

    Raises
    ------
    TooWide
        The intent is none that a button can carry, or takes more than 64 bytes.
    """
    verb, arg = _written(intent)
    batch = getattr(intent, "batch", None) or ""
    out = _BAR.join((VERSION, verb, batch, arg))
    if _BAR in batch or len(out.encode()) > LIMIT_BYTES:
        raise TooWide(out)
    return out


def carried(intent: Intent) -> bool:
    """Whether a button can carry an intent, the batch's id included."""
    try:
        payload(intent if getattr(intent, "batch", None) else replace(intent, batch=_ANY_ID))  # type: ignore[arg-type]
    except (TooWide, TypeError):
        return False
    return True


def from_payload(text: str) -> Intent | None:
    """The intent of a payload; None for one that is broken, foreign or of another version."""
    parts = text.split(_BAR, 3) if len(text.encode("utf-8", "replace")) <= LIMIT_BYTES else []
    if len(parts) != 4 or parts[0] != VERSION or parts[1] not in _READERS:
        return None
    try:
        return _READERS[parts[1]](parts[2] or None, parts[3])
    except (ValueError, KeyError, OverflowError, OSError):
        return None


def _written(intent: Intent) -> tuple[str, str]:
    match intent:
        case StepDone(step=step, at=at, also_previous=also, detail=detail):
            return "d", _row(step or "", _at_text(at), "1" if also else "", detail)
        case StepSkipped(step=step):
            return "s", step or ""
        case Snooze(until=until, by=by, step=step):
            return "z", _row(step or "", _at_text(until), "" if by is None else str(int(by.total_seconds())))
        case StepMissed(step=step, at=at, whole_day=whole):
            return "m", _row(step or "", _at_text(at), "1" if whole else "")
        case Change(changes=changes) if len(changes) == 1:
            ((name, value),) = changes.items()
            return "c", f"{_code(name)}{_value_text(value)}"
        case Choose(slot=slot, value=value):
            return "o", f"{slot}~{_value_text(value)}"
        case Reading(temperatures=temperatures, tender=tender):
            return "g", _row("1" if tender else "", *map(_temperature_text, temperatures))
        case _:
            return _written_plain(intent)


def _written_plain(intent: Intent) -> tuple[str, str]:
    match intent:
        case Ask(topic=topic, about=about, text=""):
            return "a", _row(topic, about)
        case Happened(what=what, at=None) if not intent.facts:
            return "h", what
        case Undo(step=step):
            return "u", step or ""
        case Cancel(sure=sure):
            return "x", "1" if sure else ""
        case Pause(until=until, since=None):
            return "p", _at_text(until)
        case Resume():
            return "r", ""
        case Debrief(mass=mass, grey=grey, of=of, salt=salt, hours=None, unmeasured=False, rated=None):
            return "b", _row(*(_value_text(v) for v in (mass, grey, of, salt)))
        case MoveDeadline(to=to, by=by):
            return "t", _row(_at_text(to), "" if by is None else str(int(by.total_seconds())))
        case _:
            raise TooWide(type(intent).__name__)


def _row(*parts: str) -> str:
    """Several arguments in one; none of them may hold the mark between them."""
    if any("~" in part for part in parts):
        raise TooWide(str(parts))
    return "~".join(parts)


def _columns(arg: str, count: int) -> list[str]:
    parts = arg.split("~")
    if len(parts) != count:
        raise ValueError(arg)
    return parts


def _code(name: str) -> str:
    if name not in _CODES:
        raise TooWide(name)
    return _CODES[name]


def _at_text(at: datetime | None) -> str:
    return "" if at is None else str(int(at.timestamp()))


def _at(text: str) -> datetime | None:
    return datetime.fromtimestamp(int(text), UTC) if text else None


def _span(text: str) -> timedelta | None:
    return timedelta(seconds=int(text)) if text else None


def _temperature_text(temperature: Temperature) -> str:
    """«158.0fc» with the hour in base 16 after it, where one was said: value, unit, the letter of the thermometer."""
    unit, probe = temperature.unit or "-", temperature.probe.value[0] if temperature.probe else "-"
    at = "" if temperature.at is None else f"{int(temperature.at.timestamp()):x}"
    return f"{temperature.value!r}{unit}{probe}{at}"


def _temperature(text: str) -> Temperature:
    found = _TEMPERATURE.fullmatch(text)
    if not found:
        raise ValueError(text)
    unit = None if found["unit"] == "-" else found["unit"]
    at = datetime.fromtimestamp(int(found["at"], 16), UTC) if found["at"] else None
    return Temperature(_finite(found["value"]), unit, _PROBES[found["probe"]], at)


def _value_text(value: Any) -> str:
    """A value with a letter for its kind, so that «1», 1 and true come back as they went."""
    match value:
        case None:
            return "n"
        case bool():
            return "b1" if value else "b0"
        case int():
            return f"i{value}"
        case float() if isfinite(value):
            return f"f{value!r}"
        case str():
            return f"s{value}"
        case datetime():
            return f"t{_at_text(value)}"
        case _:
            raise TooWide(repr(value))


def _value(text: str) -> Any:
    kind, rest = text[:1], text[1:]
    if kind not in _VALUES:
        raise ValueError(text)
    return _VALUES[kind](rest)


def _flag(text: str) -> bool:
    if text not in ("", "0", "1"):
        raise ValueError(text)
    return text == "1"


def _finite(text: str) -> float:
    value = float(text)
    if not isfinite(value):
        raise ValueError(text)
    return value


_VALUES: Final[dict[str, Callable[[str], Any]]] = {
    "n": {"": None}.__getitem__, "b": _flag, "i": int, "f": _finite, "s": str, "t": _at,
}  # fmt: skip


@dataclass(frozen=True)
class _Arg:
    """Readers of each verb; a broken argument raises ValueError or KeyError."""

    @staticmethod
    def done(batch: str | None, arg: str) -> Intent:
        step, at, also, detail = _columns(arg, 4)
        return StepDone(step or None, _at(at), detail, _flag(also), batch)

    @staticmethod
    def snooze(batch: str | None, arg: str) -> Intent:
        step, until, by = _columns(arg, 3)
        return Snooze(_at(until), _span(by), step or None, batch)

    @staticmethod
    def missed(batch: str | None, arg: str) -> Intent:
        step, at, whole = _columns(arg, 3)
        return StepMissed(step or None, _at(at), _flag(whole), batch)

    @staticmethod
    def choose(batch: str | None, arg: str) -> Intent:
        slot, _, value = arg.partition("~")
        return Choose(slot, _value(value), batch)

    @staticmethod
    def ask(batch: str | None, arg: str) -> Intent:
        topic, about = _columns(arg, 2)
        return Ask(topic, about, batch=batch)

    @staticmethod
    def debrief(batch: str | None, arg: str) -> Intent:
        mass, grey, of, salt = (_value(part) for part in _columns(arg, 4))
        return Debrief(mass, grey, of, salt, batch)

    @staticmethod
    def reading(batch: str | None, arg: str) -> Intent:
        tender, *temperatures = arg.split("~")
        if not temperatures:
            raise ValueError(arg)
        return Reading(tuple(map(_temperature, temperatures)), _flag(tender), batch)

    @staticmethod
    def move(batch: str | None, arg: str) -> Intent:
        to, by = _columns(arg, 2)
        return MoveDeadline(_at(to), _span(by), batch)


_READERS: Final[dict[str, Callable[[str | None, str], Intent]]] = {
    "d": _Arg.done,
    "s": lambda batch, arg: StepSkipped(arg or None, batch),
    "z": _Arg.snooze,
    "m": _Arg.missed,
    "c": lambda batch, arg: Change({_FIELDS[arg[:2]]: _value(arg[2:])}, batch),
    "o": _Arg.choose,
    "a": _Arg.ask,
    "b": _Arg.debrief,
    "g": _Arg.reading,
    "h": lambda batch, arg: Happened(arg, batch=batch),
    "u": lambda batch, arg: Undo(batch, arg or None),
    "x": lambda batch, arg: Cancel(batch, _flag(arg)),
    "p": lambda batch, arg: Pause(_at(arg), batch),
    "r": lambda batch, arg: Resume(batch),
    "t": _Arg.move,
}
