"""Questions for the facts that decide what went wrong, each with what to type; «no idea» is always an answer."""

from collections.abc import Collection, Sequence
from datetime import datetime
from typing import Final

from bot.wording.language import Words
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Probe
from core.safety.findings import Finding, Rule
from core.safety.fridge import COLD_F
from core.units import Celsius, celsius_from_fahrenheit

COLD: Final = celsius_from_fahrenheit(COLD_F)
READ: Final = {Probe.FRIDGE: "warm_fridge", Probe.BRINE: "warm_brine"}

WARMTH: Final = Words(
    {
        "hours": "How long at most, and how warm did it get? Type like «3 hours, 9 c»; «no idea» is an answer too.",
        "room_c": "How warm did it get at most? Type like «got to 7 c»; «no idea» is an answer too.",
    }
)
ASK: Final = {
    "power_cut": Words(
        {
            "hours": "How long was it off at most, and did the door stay shut? Type like «3 hours, door shut»; «no idea» is an answer too.",
            "door_shut": "Did the door stay shut all the time? Type «shut» or «opened»; «no idea» is an answer too.",
            "room_c": "How warm is it there? From 32 °C (90 °F) up it is one hour at most. Type like «room 22 c»; «no idea» is an answer too.",
            "ice_crystals": "Is there still ice in it? Type «ice in it» or «no ice»; «no idea» is an answer too.",
            "core_c": "Only the middle of the meat at 4 °C (40 °F) or below, read within the hour, changes that: type «core 4 c».",
        }
    ),
    "left_out": Words(
        {
            "hours": "How long was it out at most, and how warm is it there? Type like «90 minutes, room 22 c»; «no idea» is an answer too.",
            "room_c": "How warm is it there? From 32 °C (90 °F) up it is one hour at most. Type like «room 22 c»; «no idea» is an answer too.",
        }
    ),
    "warm_fridge": WARMTH,
    "warm_brine": WARMTH,
    "fire_out": Words(
        {
            "hours": "Type like «30 min»; «no idea» is an answer too.",
            "core_c": "Type like «core 58 c»; «no idea» is an answer too.",
        }
    ),
    "leaked": Words(
        {
            "lost_fraction": "How much of the liquid is gone, and since when at most? Type like «a third, 1 day»; «no idea» is an answer too.",
            "unnoticed_days": "Since when at most can it have leaked? Type like «1 day» or «since monday»; «no idea» is an answer too.",
        }
    ),
    "dosed_twice": Words(
        {
            "mg_kg": "How many grams of curing salt are in it in all? Type like «24 g»; with «no idea» I count it as twice.",
        }
    ),
}

ALREADY_READ: Final = Words(
    {
        "warm_fridge": "How long can the fridge have been so warm at most? Type like «1 hour»; «no idea» is an answer too.",
        "warm_brine": "How long can the brine have been so warm at most? Type like «1 hour»; «no idea» is an answer too.",
    }
)
WATCHED: Final = {"warm_fridge": Rule.FRIDGE, "warm_brine": Rule.BRINE}


def read_warm(a: Assessment, plain: Sequence[tuple[Probe, Celsius, datetime]]) -> tuple[str, str]:
    """After a fridge or brine that read warm while nobody said for how long: the question, and its kind.

    A fridge that is a little warm is let go on with a cure for a day at most: so how long it was is asked, too.
    """
    read = {what for probe, what in READ.items() if any(p is probe and c > COLD for p, c, _ in plain)}
    if "warm_fridge" in read and a.batch.phase is Phase.CURING and not a.ledger.thrown:
        return ALREADY_READ["warm_fridge"], "warm_fridge"
    return unshown(a, read)


def unshown(a: Assessment, those: Collection[str]) -> tuple[str, str]:
    """The question for how long the first of those was warm at most, and its kind; nothing where it is shown."""
    open_still = [w for w in sorted(those) if any(_unshown(f) for f in a.ledger.verdict.of(WATCHED[w]))]
    return (ALREADY_READ[open_still[0]], open_still[0]) if open_still and not a.ledger.thrown else ("", "")


def _unshown(f: Finding) -> bool:
    return f.missing == "hours_above_40f"


def wanted(what: str, facts: Sequence[str]) -> str:
    """The question for the first of the facts that still decide; nothing where it has none."""
    asked = ASK.get(what, {})
    return next((asked[fact] for fact in facts if fact in asked), "")
