"""Words for the lines of a record: when, who, what, and how a line came to stand as it does."""

import unicodedata
from collections.abc import Mapping
from datetime import datetime
from typing import Any

from bot.measures import from_house
from bot.wording import mends, numbers, steps, values
from bot.wording.households import TASKS, somebody
from bot.wording.language import Words, decimal, say
from bot.wording.readings import PLACES
from core.batch.batch_record import BatchRecord, Entry, Member
from core.batch.events import (
    Assumed,
    Changed,
    Done,
    Finished,
    Handed,
    Incident,
    Missed,
    Rated,
    Read,
    Skipped,
    Sliced,
    Snoozed,
    Started,
    Tasted,
    Took,
    Weighed,
    What,
)
from core.units import Celsius

ENDS = Words(
    {"eaten": "over: eaten up", "cancelled": "over: cancelled", "thrown_away": "over: thrown away"},
)
TASTES = Words({-1: "tasted: bland", 0: "tasted: right", 1: "tasted: too salty"})
TROUBLES = Words(
    {
        "fire_out": "the fire went out",
        "power_cut": "power cut",
        "left_out": "left out of the cold",
        "leaked": "the bag leaked",
        "leak": "the bag leaked",
        "dosed_twice": "dosed twice",
        "doubled_cure": "dosed twice",
        "spoiled": "it had gone off",
        "warm_fridge": "the fridge was warm",
        "warm_brine": "the brine was warm",
        "fridge_door_open": "the fridge was warm",
        "fridge_warm": "the fridge was warm",
        "brine_warm": "the brine was warm",
        "flare": "the fire flared up",
        "cure_as_salt": "curing salt was used as table salt",
        "cure_in_rub": "curing salt went into the rub",
        "lid": "the lid was opened",
        "unwrapped": "the wrap came off",
        "cut": "cut to cool",
        "frozen": "into the freezer",
        "thawed": "out of the freezer",
        "forgot_cure": "the curing salt was forgotten",
        "wrong_salt": "another salt went in",
    }
)
FACTS = Words(
    {
        "hours": "{value}",
        "core_c": "core {value}",
        "room_c": "air {value}",
        "mg_kg": "{value} mg/kg",
        "door_shut": "the door stayed shut: {value}",
        "ice_crystals": "ice crystals in it: {value}",
        "lost_fraction": "lost {value}",
        "day": "day {value}",
        "unnoticed_days": "unnoticed for {value} days",
        "salt": "{value}",
    }
)
DETAILS = Words(
    {
        "foil": "in foil",
        "paper": "in paper",
        "ice": "ice bath",
        "fan": "with a fan",
        "rack": "on a rack",
        "fridge": "in the fridge",
        "tastes salty": "tastes salty",
        "tastes bland": "tastes bland",
        "tastes off": "tastes off",
        "tastes fine": "tastes fine",
    }
)
NOT_OF_A_NAME = ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp")  # Unicode categories of signs that nobody sees


def stamp(moment: datetime, r: BatchRecord) -> str:
    """«2027-10-01 06:10 +02:00»: the local time, with what it is ahead of UTC."""
    local = moment.astimezone(r.a.person.tz)
    return f"{local:%Y-%m-%d %H:%M} {local.isoformat()[-6:]}"


def degrees(celsius: Celsius, r: BatchRecord) -> str:
    """A reading in the unit of whose batch it is, to a tenth: a record does not round to the half degree."""
    fahrenheit = r.a.person.units.temperature == "f"
    tenths = round(from_house(celsius, "f") if fahrenheit else celsius, 1)
    return f"{decimal(tenths, 0 if tenths == int(tenths) else 1)} °{'F' if fahrenheit else 'C'}"


def who(member: Member, r: BatchRecord) -> str:
    """The name of a member; a number where none is kept, or where two have the same."""
    name = "".join(c for c in member.name if unicodedata.category(c) not in NOT_OF_A_NAME).strip()
    if not name:
        return say("the cook") if len(r.members) == 1 else say("cook {number}", number=member.number)
    alike = [other for other in r.members if other.name == member.name]
    return name if len(alike) == 1 else f"{name} ({member.number})"


def what(entry: Entry, r: BatchRecord) -> str:
    """What stands of an entry; of one that was taken back, what was said."""
    return happened(entry.what or entry.said, r)


def note(entry: Entry, r: BatchRecord) -> str:
    """How an entry came to stand as it does: said later, corrected, taken back."""
    if entry.amended is None or entry.amended_by is None:
        late = abs((entry.said_at - entry.at).total_seconds()) >= 60
        return say("said {when}", when=stamp(entry.said_at, r)) if late else ""
    when, by = stamp(entry.amended, r), who(r.member(entry.amended_by), r)
    if entry.what is None:
        return say("taken back {when} by {who}", when=when, who=by)
    return say("corrected {when} by {who}; first said: {was}", when=when, who=by, was=happened(entry.said, r))


def happened(event: What, r: BatchRecord) -> str:
    """One thing that happened, in a few words."""
    match event:
        case Read(probe, celsius):
            return f"{PLACES[probe]} {degrees(celsius, r)}"
        case Started(_, setup):
            stated = {k: v for k, v in setup.items() if k not in setup.get("assumed", ())}
            return say("begun: {setup}", setup=_told(stated, r))
        case Changed(changes, _):
            return say("said: {setup}", setup=_told(changes, r))
        case Assumed(changes):
            return say("assumed: {setup}", setup=_told(changes, r))
        case Incident(kind, facts):
            return say("trouble: {what}", what=_trouble(kind, facts, r))
        case Handed(task, since, _, name):
            return say(
                "{name}: {task}, from {since}.", name=name or somebody(), task=TASKS[task], since=stamp(since, r)
            )
        case Sliced() | Tasted() | Weighed() | Took() | Rated() | Finished():
            return _at_the_end(event, r)
        case _:
            return _of_step(event, r)


def _of_step(event: What, r: BatchRecord) -> str:
    match event:
        case Done(step, detail):
            done = say("{name_of}: done", name_of=steps.name_of(step))
            return f"{done} ({DETAILS.get(detail, detail)})" if detail else done
        case Skipped(step):
            return say("{step}: left out", step=steps.name_of(step))
        case Missed(missed):
            names = ", ".join(dict.fromkeys(steps.name_of(step) for step in missed))
            return say("{step}: missed", step=names)
        case Snoozed(step, until):
            return say("{step}: put off until {when}", step=steps.name_of(step), when=stamp(until, r))
        case _:
            return mends.name(event, r.a)


def _at_the_end(event: Sliced | Tasted | Weighed | Took | Rated | Finished, r: BatchRecord) -> str:
    person = r.a.person
    match event:
        case Sliced(grey) if grey == 0:
            return say("slice: pink all through")
        case Sliced(None):
            return say("slice: grey in the middle, not measured")
        case Sliced(grey, of):
            width = say("slice: grey {grey} in the middle", grey=numbers.length(grey, person))
            return width if of is None else say("{slice} of {of}", slice=width, of=numbers.length(of, person))
        case Tasted(salt):
            return TASTES[salt]
        case Weighed(mass):
            return say("the finished piece weighs {mass}", mass=numbers.mass(mass, person))
        case Took(hours):
            return say("on the fire for {hours}", hours=numbers.hours(hours))
        case Rated(mark, of):
            return say("mark: {mark} of {of}", mark=numbers.plain(mark), of=numbers.plain(of))
        case Finished(how):
            return ENDS[how]


def _told(changes: Mapping[str, Any], r: BatchRecord) -> str:
    """What was said of the setup, field by field; a meal with its date."""
    fields = {"product": ""} | {k: values.FIELDS.get(k, k.replace("_", " ")) for k in changes if k != "product"}
    told = ((fields[k], _value(k, v, r)) for k, v in changes.items() if k != "assumed")
    return ", ".join(f"{field} {value}".strip() for field, value in told)


def _value(field: str, value: Any, r: BatchRecord) -> str:
    return stamp(value, r) if isinstance(value, datetime) else values.value(field, value, r.a)


def _trouble(kind: str, facts: Mapping[str, Any], r: BatchRecord) -> str:
    """What went wrong, with the facts that were told of it."""
    name = TROUBLES.get(kind, kind.replace("_", " "))
    told = [_fact(key, value, r) for key, value in facts.items() if value is not None and key in FACTS]
    return f"{name} ({', '.join(told)})" if told else name


def _fact(key: str, value: Any, r: BatchRecord) -> str:
    match value:
        case bool():
            shown = say("yes") if value else say("no")
        case int() | float() if key.endswith("_c"):
            shown = degrees(value, r)
        case int() | float():
            shown = numbers.hours(value) if key == "hours" else numbers.plain(value)
        case _:
            shown = str(value).replace("_", " ")
    return FACTS[key].format(value=shown)
