"""What was read in a line, as a few words that a person can check: «done flip @08:10», «read core 71c, pit 118c»."""

from collections.abc import Sequence
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from bot.intents.intents import (
    Ask,
    Change,
    Correct,
    Debrief,
    HandOver,
    Happened,
    Intent,
    MoveDeadline,
    Reading,
    Settings,
    Snooze,
    Start,
    StepDone,
    StepMissed,
    StepSkipped,
    Unclear,
)

ZONE = ZoneInfo("Europe/Vienna")
_SETTINGS = {
    "zone": "zone", "jurisdiction": "law", "quiet_from": "quiet", "quiet_to": "quiet", "flip_hours": "flips",
    "units": "units", "cooker": "cooker", "language": "language",
}  # fmt: skip
_NAMES = {"cure_nitrite_fraction": "cure", "salt_fraction": "salt", "pit_c": "pit", "at_risk_eaters": "risk"}
_ANY = ("fix", "missed", "happened", "settings")


def short(intents: Sequence[Intent]) -> str:
    """The intents of a line in short, in their order; what is only said back beside them is left out."""
    return " & ".join(_one(intent) for intent in intents if not (isinstance(intent, Unclear) and intent.why == "rest"))


def _one(intent: Intent) -> str:
    match intent:
        case StepDone(step=step, at=at):
            return _words("done", step, _clock(at))
        case StepMissed(step=step):
            return _words("missed", step)
        case StepSkipped():
            return "skip"
        case Snooze(until=until, by=by):
            return _words("later", f"{by.total_seconds() / 60:g}m" if by else "", _clock(until))
        case Reading(temperatures=temperatures):
            return "read " + ", ".join(f"{t.probe or ''} {t.value:g}{t.unit or ''}" for t in temperatures)
        case MoveDeadline(to=to, by=by, eaten=eaten):
            how = f"set purpose={eaten} & " if eaten else ""
            return how + _words("meal", _day(to) if to else "", f"{by.total_seconds() / 60:+g}m" if by else "")
        case Unclear():
            return "ask"
        case _:
            return _rest(intent)


def _rest(intent: Intent) -> str:
    match intent:
        case Start():
            return _start(intent)
        case Change(changes=changes):
            return " & ".join(f"set {_NAMES.get(k, k)}={_value(k, v)}" for k, v in changes.items())
        case Correct(value=value, unit=unit, at=at, days_back=days):
            return _words("fix", f"{value:g}" if value is not None else "", unit, _clock(at), "day" if days else "")
        case Ask(topic=topic):
            return f"ask {topic}"
        case Happened(what=what):
            return f"happened {what}"
        case Settings(changes=changes):
            return _words("settings", next((_SETTINGS[k] for k in changes if k in _SETTINGS), ""))
        case HandOver(to=to):
            return _words("hand", to)
        case Debrief():
            return "debrief"
        case _:
            return {"Help": "help", "Greet": "greet"}.get(type(intent).__name__, type(intent).__name__.lower())


ONCE_ALONE = ("duck_breast", "pork_shoulder")  # the samples are from when their product had no other cut


def _start(intent: Start) -> str:
    said = intent.said
    cut = said.get("cut") if said.get("cut") not in ONCE_ALONE else None
    parts = [said.get("product"), cut]
    parts += [f"{said['mass']:.4g}kg"] if "mass" in said else []
    parts += [_value(k, said[k]) for k in ("thickness", "cure_nitrite_fraction", "method") if k in said]
    parts += ["frozen"] if said.get("frozen") else []
    parts += [_day(said["deadline"], hour="deadline_hour" not in intent.assumed)] if said.get("deadline") else []
    unclear = [one.split(":")[0] for one in intent.unclear]
    if {"unit", "mass", "meat", "cut"} & set(unclear):
        return "ask"
    return _words("start", *parts, *(f"?{slot}" for slot in unclear))


def _value(name: str, value: Any) -> str:
    match name:
        case "thickness":
            return f"{1000 * value:.0f}mm"
        case "put_in_cure":
            return f"{1000 * value:g}g"
        case "mass":
            return f"{value:.4g}kg"
        case "pit_c":
            return f"{value:.0f}c"
        case _ if name.endswith("_fraction"):
            return f"{100 * value:.4g}%"
        case _:
            return str(float(f"{value:.12g}") if isinstance(value, float) else value)


def _day(at: datetime, hour: bool = True) -> str:
    wall = at.astimezone(ZONE)
    return f"{wall:%a%H:%M}".lower() if hour else f"{wall:%a}".lower()


def _clock(at: datetime | None) -> str:
    return f"@{at.astimezone(ZONE):%H:%M}" if at else ""


def _words(*parts: Any) -> str:
    return " ".join(str(p) for p in parts if p)
