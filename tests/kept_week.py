"""A week of a flat in a family with difficult names, as a log, for the tests of its record. The people are invented."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import cache

from core.batch.batch_record import BatchRecord, batch_record
from core.batch.events import (
    Changed,
    Corrected,
    Done,
    Event,
    Finished,
    Incident,
    Probe,
    Read,
    Skipped,
    Sliced,
    Snoozed,
    Started,
    Tasted,
    Weighed,
    What,
)
from core.person import Person, Units

MONDAY = datetime(2027, 3, 1, 7, 0, tzinfo=UTC)
FIRE = MONDAY + timedelta(days=7)
HOSTILE = '=HYPERLINK("//x";"<script>alert(1)</script>")'
NAMES = {"m": "Marta Grün-Żółć", "j": "Юлия Щукина", "x": HOSTILE}
OWNER = Person("m", NAMES["m"], zone="Europe/Vienna", zone_known=True)
FLAT = {
    "product": "pastrami", "cut": "brisket_flat", "mass": 3.2, "thickness": 0.048, "cure_nitrite_fraction": 0.0625,
    "deadline": FIRE + timedelta(days=1, hours=4),
}  # fmt: skip
COOK = ((55, 31.0), (128, 46.0), (166, 53.0), (240, 63.0), (330, 71.0), (420, 84.3), (450, 90.7))
CHILL = ((520, 72.0), (545, 61.0), (580, 31.0), (595, 25.0), (700, 4.0))


def told() -> list[tuple[datetime, str, What]]:
    """When, by whom and what, in the order in which it was said."""
    said: list[tuple[datetime, str, What]] = [
        (MONDAY, "m", Started("flat", FLAT)),
        (MONDAY + timedelta(hours=1), "m", Done("brine")),
        (MONDAY + timedelta(hours=13), "m", Read(Probe.BRINE, 3.0)),
        (MONDAY + timedelta(hours=13), "m", Done("into_cure")),
    ]
    for day in range(1, 7):
        said.append((MONDAY + timedelta(days=day), "j", Read(Probe.FRIDGE, 3.4)))
        said.append((MONDAY + timedelta(days=day), "x", Done(f"flip/{day}")))
    said += [
        (MONDAY + timedelta(days=6, hours=1), "j", Incident("power_cut", {"hours": 1.5, "door_shut": True})),
        (MONDAY + timedelta(days=6, hours=2), "x", Snoozed("out", MONDAY + timedelta(days=6, hours=11))),
        (MONDAY + timedelta(days=6, hours=10), "m", Done("out")),
        (MONDAY + timedelta(days=6, hours=10), "m", Done("rinse", "tastes fine")),
        (MONDAY + timedelta(days=6, hours=10), "m", Skipped("rub")),
        (FIRE, "m", Done("meat_on")),
    ]
    said += [(FIRE + timedelta(minutes=m), "m", Read(Probe.CORE, c)) for m, c in COOK]
    said += [(FIRE + timedelta(minutes=460), "m", Done("off"))]
    said += [(FIRE + timedelta(minutes=m), "j", Read(Probe.CORE, c)) for m, c in CHILL]
    return [
        *said,
        (FIRE + timedelta(minutes=545), "j", Done("chill", "ice")),
        (FIRE + timedelta(days=1), "m", Done("slice")),
        (FIRE + timedelta(days=1), "m", Changed({"at_risk_eaters": False})),
        (FIRE + timedelta(days=1), "x", Sliced(0.006, 0.044)),
        (FIRE + timedelta(days=1), "x", Tasted(1)),
        (FIRE + timedelta(days=1), "x", Weighed(1.9)),
    ]


def log(*more: tuple[datetime, str, What]) -> list[Event]:
    """The week as a log, with whatever comes after it; the reading of 53 °C is put right to 55 by somebody else."""
    said = told()
    slip = next(n for n, (_, _, what) in enumerate(said, 1) if what == Read(Probe.CORE, 53.0))
    wrong = next(n for n, (_, _, what) in enumerate(said, 1) if what == Done("flip/6"))
    at = FIRE + timedelta(minutes=170)
    said += [(at, "j", Corrected(slip, Read(Probe.CORE, 55.0))), (at, "m", Corrected(wrong)), *more]
    return [Event(n, at, at, by, f"t{n}", what) for n, (at, by, what) in enumerate(said, 1)]


def recorded(*more: tuple[datetime, str, What], days_after: float = 1.5, **person: object) -> BatchRecord:
    """The record of the week, some days after the fire."""
    owner = replace(OWNER, **person)  # type: ignore[arg-type]
    return batch_record("b1", log(*more), (owner, NAMES), FIRE + timedelta(days=days_after))


@cache
def week() -> BatchRecord:
    """The record of the week, metric."""
    return recorded()


@cache
def in_pounds() -> BatchRecord:
    """The same week for somebody who reads pounds, inches and °F."""
    return recorded(units=Units("lb", "in", "f"))


def ended(days: float) -> tuple[datetime, str, What]:
    """It is all eaten, some days after the fire."""
    return FIRE + timedelta(days=days), "m", Finished("eaten")
