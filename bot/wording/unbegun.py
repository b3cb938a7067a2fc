"""Words for what is told of a batch where none is under way: of which piece, and how to begin it."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from bot.intents.intents import Change, Intent, MoveDeadline, Reading, Snooze, StepDone, StepMissed, StepSkipped
from bot.wording import doneness, numbers, options
from bot.wording.language import say
from core.batch.events import Probe
from core.person import Person
from core.units import celsius_from_fahrenheit

_COLD_C = celsius_from_fahrenheit(40.0)  # the fridge of a cure; the rule of core/safety/fridge.py


def say_of(intent: Intent, typed: str, person: Person) -> str:
    """What is asked and said of it; "" where the plain refusal says all."""
    begin = say(
        "Start with the cut and the weight, like «2 kg pork belly», and say what is done, like «meat on at 7:00»."
    )
    match intent:
        case Snooze(by=by) | MoveDeadline(by=by) if by is not None or "day" in typed.lower():
            first = say(
                "«{typed}» of what: in the cure already, or until the meal? Nothing is under way here.", typed=typed
            )
        case Change(changes) if "thickness" in changes:
            first = say(
                "«{typed}»: how thick a piece is, or pieces that went in? Nothing is under way here.", typed=typed
            )
        case Reading():
            return "\n".join(line for line in (_read(intent, person), _fridge(intent, person), begin) if line)
        case StepDone() | StepMissed() | StepSkipped() | Change({"pit_c": _}):
            first = say("«{typed}»: which piece is that? Nothing is under way here, so nothing is noted.", typed=typed)
        case _:
            return ""
    return f"{first}\n{begin}"


def waits(intent: Intent, typed: str, of: tuple[Mapping[str, Any], Person, datetime]) -> str:
    """What is said of it while a piece is half begun, by what is known of that: a core against the floor of its meat."""
    half, person, at = of
    kept = say(
        "«{typed}» is kept with its hour, {clock}, and counts once I know this:",
        typed=typed,
        clock=numbers.clock(at, person),
    )
    made = half.get("product", "")
    cores = [t for t in getattr(intent, "temperatures", ()) if t.probe is Probe.CORE]
    if not (made and cores):
        return kept
    lowest = min(options.celsius(t, person) for t in cores)
    return f"{doneness.judged(lowest, made, person)}\n{kept}"


def taken(lines: str, more: str) -> str:
    """What was told before the piece was begun, each line as it is noted now, and what follows from the last."""
    return "\n".join(part for part in (say("Taken now, each with its hour:"), lines, more) if part)


def _read(reading: Reading, person: Person) -> str:
    return say(
        "{reading}: of which piece? Nothing is under way here, so nothing is noted.",
        reading=options.label(reading, person),
    )


def _fridge(reading: Reading, person: Person) -> str:
    cold = [t for t in reading.temperatures if t.probe is Probe.FRIDGE]
    if not cold:
        return ""
    limit = numbers.both(_COLD_C, person)
    if all(options.celsius(t, person) <= _COLD_C for t in cold):
        return say("That is cold enough for a cure: {limit} or below is right.", limit=limit)
    return say("That is too warm for a cure: {limit} or below is right.", limit=limit)
