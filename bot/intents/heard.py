"""Whether every number of a line went into what was understood of it: one that did not is asked about, not dropped."""

from collections.abc import Iterator, Sequence
from dataclasses import fields, is_dataclass
from datetime import datetime, time, timedelta
from typing import Any, Final
from zoneinfo import ZoneInfo

from bot import measures
from bot.intents.context import Context
from bot.intents.intents import (
    Change,
    Correct,
    Greet,
    HandOver,
    Happened,
    Intent,
    MoveDeadline,
    Pause,
    Reading,
    Snooze,
    StepDone,
    StepMissed,
    StepSkipped,
    Unclear,
)
from bot.intents.rated import MARK
from bot.intents.temperatures.plausible import everything
from bot.intents.temperatures.readings import read_reading
from core import patterns as re
from core.batch.events import Probe
from core.units import KILOGRAMS_PER_OUNCE, KILOGRAMS_PER_POUND, METRES_PER_INCH

_ACTS: Final = (
    Change, Correct, Greet, HandOver, Happened, MoveDeadline, Pause, Reading, Snooze, StepDone, StepMissed,
    StepSkipped,
)  # fmt: skip
ANSWERED: Final = frozenset({"iced", "melted", "fuelled", "extra_left_out", "spoiled"})  # by a word, and noted nowhere
# a run of numbers with nothing but signs between them: «68 / 115» is one look at two thermometers
_RUN: Final = re.compile(
    r"(?<![\w./:,%#°-])(?<!\d )\d{1,3}(?:\.\d)?(?: ?[/,] ?\d{1,3}(?:\.\d)?)?(?: ?°?[cf]\b)?(?![\w/:%]|\.\d"
    r"| \d/\d| \d lb)"
)
_OF_THE_FAT: Final = re.compile(  # and of the water about the meat
    r"(?: ?[cf]\b)? (?:(?:in|on|at) the (?:fat|skin|outside|surface|rind)|(?:in |is )?(?:the )?(?:ice ?)?(?:bath"
    r"|water))\b"
)
_COUNTS: Final = re.compile(  # «2 bags», «day 3», «another 2», «down 5»: how many, and how much of a difference
    r" ?(?:x|of|times|bags?|probes?|thermometers?|flips?|turns?|pieces?|fill?ets?|people|days?|nights?|weeks?"
    r"|months?|hours?"
    r"|mins?|minutes?|more|th|st|nd|rd|%|degrees"
    r"|splits?|coals?|briquett?e?s?|lumps?|cubes?|handfuls?|scoops?|deg|ago|out of|readings?|towels?|layers?"
    r"|chunks?|bits?|logs?|kids?|guests?|flats?|slices?|oclock|[ap]m"
    r"|percent|times|for a (?:bit|while|minute|moment)|earlier|before)\b"
)
_OF_A_COUNT: Final = re.compile(
    r"\b(?:(?:water|bath|surface|outside|skin|edges?|rim)(?: is| at)?|since|day|(?<!all )night|week|no|number|nr"
    r"|piece|bag|probe|channel|page|step"
    r"|another|by|up|down|dropped|rose|climbed|lost|for"
    r"|was|were|from|not|over|last|past|till?|until|between|within|if|under|below|above|when|target|aiming for"
    r"|out of|in)"
    r"(?: to| about| at| it| hits)?$|\b(?:gonna|going to|will|ill|about to|planning to)\b[^,;.]*$|\b(?:skinny"
    r"|thin|narrow)\b[^,;.]*$|\bwrap(?:ping)?\b[^,;.\d]{0,24}\bat$"
)
_THERMOMETER: Final = re.compile(r"\b(?:pit|grill|smoker|core|meat|fridge|brine)s? [a-z ]{0,16}$")
_TOO: Final = re.compile(r"\b(?:it|them) 2$")
_ITS: Final = re.compile(r"\b(?:its|it is|now|back to|down to|back at|reads|says)(?: (?:at|now|already|back|on))* ?$")
COLD_PLACES: Final = frozenset({Probe.FRIDGE, Probe.BRINE})
_NEAR: Final = 0.006  # of a value: what a change of units leaves of it
_UNITS: Final = (KILOGRAMS_PER_POUND, KILOGRAMS_PER_OUNCE, METRES_PER_INCH)
_FACTORS: Final = (1.0, 100.0, 1000.0, *(1.0 / one for one in _UNITS))


def unheard(text: str, found: Sequence[Intent], context: Context) -> list[Intent]:
    """The numbers of a plain line that are in none of its intents: a reading of two, or the question what it is."""
    if not found or context.phase == "none" or not all(map(_is_taken, found)):
        return []
    if any(isinstance(intent, Change) and "heaviest" in intent.changes for intent in found):
        return []  # «3.5 and 4 lb»: all of them are in the sum
    known = of_values(found, ZoneInfo(context.zone))
    left = [run for run in _RUN.finditer(_bare(text, context)) if not _is_heard(run, text, known)]
    return [
        _named(run, text, context) or _still(run, text, (found, context)) or _asked(run[0], context) for run in left
    ][:1]


def _is_taken(one: Intent) -> bool:
    return isinstance(one, _ACTS) or (isinstance(one, Unclear) and one.why in ANSWERED)


def of_values(found: Sequence[Intent], zone: ZoneInfo) -> list[float]:
    """Every number that is in what was understood, in the units in which people may have said it."""
    return [value for intent in found for value in _values(intent, zone)]


def _named(run: re.Match[str], text: str, context: Context) -> Intent | None:
    """«lid was open, pit fell to 85»: its thermometer stands right before it."""
    said = _THERMOMETER.search(text[: run.start()])
    found = read_reading(f"{said[0]}{run[0]}".strip(), context) if said else None
    return found if isinstance(found, Reading) else None


def _still(run: re.Match[str], text: str, of: tuple[Sequence[Intent], Context]) -> Intent | None:
    """«fridge was 44 this morning, door shut and now its 39»: of the one cold place that the line speaks of."""
    found, context = of
    probes = {t.probe for intent in found if isinstance(intent, Reading) for t in intent.temperatures}
    if len(probes) != 1 or not probes <= COLD_PLACES or not _ITS.search(text[: run.start()]):
        return None
    again = read_reading(f"{next(iter(probes))} {run[0]}".strip(), context)
    return again if isinstance(again, Reading) else None


def _bare(text: str, context: Context) -> str:
    """A line without the names of batches, and without what has a unit of its own but degrees."""
    text = MARK.sub(lambda hit: " " * len(hit[0]), text)
    for m in measures.find(text):
        if m.kind != "temperature":
            text = text[: m.start] + " " * (m.end - m.start) + text[m.end :]
    for _, name in context.batches:
        text = re.sub(rf"\b{re.escape(name.lower())}\b", lambda hit: " " * len(hit[0]), text)
    return text


def _is_heard(run: re.Match[str], text: str, known: Sequence[float]) -> bool:
    if (
        _TOO.search(text[: run.end()])
        or _COUNTS.match(text[run.end() :])
        or _OF_THE_FAT.match(text[run.end() :])
        or _OF_A_COUNT.search(text[: run.start()].rstrip())
    ):
        return True
    numbers = [float(number) for number in re.findall(r"\d+(?:\.\d+)?", run[0])]
    return all(any(abs(number - value) <= _NEAR * max(abs(value), 1.0) for value in known) for number in numbers)


def _asked(run: str, context: Context) -> Intent:
    """Two numbers are read as meat and pit where they can be nothing else; one is asked about, with what it may be."""
    found = read_reading(run.strip(), context)
    if isinstance(found, Reading) and len(found.temperatures) > 1:
        return found
    number = measures.number(run.strip())
    options = () if number is None else tuple(Reading((t,)) for t in everything(number, context)[:4])
    return Unclear("number", run.strip(), options)


def _values(thing: Any, zone: ZoneInfo) -> Iterator[float]:
    """Every number that is somewhere in an intent, in the units in which people may have said it."""
    match thing:
        case bool() | None | str():
            return
        case int() | float():
            yield from (thing * factor for factor in _FACTORS)
            yield thing * 1.8 + 32.0  # a pit of 107 °C was said as 225
        case datetime():
            local = thing.astimezone(zone)
            yield from (*_on_the_clock(local.time()), local.day, local.month)
        case time():
            yield from _on_the_clock(thing)
        case timedelta():
            yield from (thing.total_seconds() / unit for unit in (60.0, 3600.0, 86400.0))
        case dict() | tuple() | list():
            for part in thing.values() if isinstance(thing, dict) else thing:
                yield from _values(part, zone)
        case _ if is_dataclass(thing):
            for one in fields(thing):
                yield from _values(getattr(thing, one.name), zone)


def _on_the_clock(hour: time) -> tuple[float, ...]:
    """The numbers in which an hour is typed: 15, 3, 30, and in one 1530 and 330."""
    half = hour.hour % 12 or 12
    return hour.hour, half, hour.minute, 100 * hour.hour + hour.minute, 100 * half + hour.minute
