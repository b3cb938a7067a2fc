"""A sentence clause by clause: what was done, read, changed or went wrong, each in its order."""

from dataclasses import replace
from datetime import datetime
from typing import Final

from bot.intents import when
from bot.intents.asides import read_aside
from bot.intents.clause import clause, deed_at_an_hour, is_nothing, named_batch, to_batch
from bot.intents.context import IN_THE_COLD, Context
from bot.intents.deeds import DEEDS
from bot.intents.intents import (
    Ask,
    Change,
    Debrief,
    Greet,
    HandOver,
    Happened,
    Intent,
    Pause,
    Reading,
    Settings,
    Snooze,
    Start,
    StepDone,
    StepMissed,
    Unclear,
)
from bot.intents.meats import as_meat
from bot.intents.own_hours import is_read, own_hours, since_then
from bot.intents.rewriting.runon import halves
from bot.intents.steps import read_step
from bot.intents.temperatures.thermometers import taken_apart
from core import patterns as re
from core.batch.events import Probe
from core.plan.steps import Kind

_SENTENCE: Final = re.compile(
    r"(?<!\d)[.]+(?:\s|$)"
    r"|(?<=\d)\.(?=\s|$)(?!(?<=\d\.\d\.) (?:at |um |\d))(?!(?<=\d\.\d\d\.) (?:at |um |\d))|[;!\n]+|(?<=\?)\s"
)
_JUST_NOW: Final = re.compile(
    r"\bjust (?:now|did|done|flipped|turned)\b|\b(?:did|done|flipped|turned)(?: \w+){0,2} now\b"
)
_TODAYS: Final = re.compile(r"\bthis (?:morning|am|evening|pm)\b|\btoday\b")
_MAY_HIDE: Final = (Reading, StepDone, Change, type(None))
_LONE_HOUR: Final = re.compile(r"(?:at |around |about )?(?:1[0-2]|[1-9])")
_COMMA: Final = re.compile(r",(?!\d\d?(?!\d))\s*|\s+(?:then|but|plus|also)\s+")
_AND: Final = re.compile(r"\s+(?:and|&|n)\s+")
_THEN: Final = re.compile(r"\d(?: ?[cf])? then$")
_WAS_BY_THEN: Final = re.compile(r"\bago\b[^,;\d]* was \d{2,3}(?: ?[cf])?$")  # «wrapped it 10 min ago paper was 164»
_BACK_ON: Final = re.compile(
    r"\b(?<!heat )(?<!gas )(?<!power )(?<!lid )back on(?: now| already| again)?(?=$|[,;.]| (?:core|meat|pit|its|at)\b)"
)
_BACK_IN: Final = re.compile(
    r"\b(?:put|dropped|popped|stuck|shoved|chucked) (?:it|them|that) (?:(?:straight|right) )?back\b(?! on)"
    r"|\bback in (?:the )?(?:bag|brine|tub|cure)\b"
)
_FRIDGE_ALONE: Final = re.compile(  # «fridge door was open, 41»: a number beside it is of no brine
    r"^(?!.*\b(?:brine|pickle)\b).*(?<!in the )(?<!in )(?<!into the )\bfridge\b"
)
_BRINE: Final = next(words for words, kind in DEEDS if kind is Kind.BRINE)
_BRINE_COOLS: Final = re.compile(  # «brine made, it's in the fridge»: «it» is what was made, and cools first
    r"\bbrine\b[^,;.]*(?:[,;.]|\band|\bthen) ?(?:(?:its|it|is|i|we|ive|weve|put|and|now|has|gone|went|stands|sits|steht"
    r"|kühlt|cooling|chilling) )*(?:in|into) (?:the )?(?:fridge|cold|ice)\b"
)
_MEAT: Final = re.compile(
    r"\b(?:meat|bag|bags|bagged|everything|both|flats?|brisket|bell(?:y|ies)|ham|fish|trout|salmon|loin)\b"
)


def sentences(text: str, context: Context) -> list[Intent]:
    """The intents of a plain line in their order; a clause that is not understood is an Unclear word."""
    made = context.brine_made or (context.phase == "waiting" and bool(_BRINE.search(text)))
    context = replace(context, brine_made=made and not _FRIDGE_ALONE.search(text))
    parts = [part for part in (part.strip(" ,") for part in _SENTENCE.split(text)) if part]
    said = [_sentence(part, context) for part in parts]
    return [intent for one in _asked_beside(parts, said, context) for intent in one]


def several(text: str) -> bool:
    """Whether a plain line has more than one clause."""
    return bool(_COMMA.search(text))


def _names(text: str, context: Context) -> int:
    """How many batches a plain text names."""
    names = sorted({name.lower() for _, name in context.batches if name}, key=len, reverse=True)
    found = 0
    for name in names:  # the longest first, so that «flat 2» is not «flat» too
        text, hits = re.subn(rf"\b{re.escape(name)}\b", " ", text)
        found += bool(hits)
    return found


def as_it_happened(intents: list[Intent], text: str) -> list[Intent]:
    """«meat in, brine 38 f», «pulled at 201»: what was read comes before what was done upon it, however it is told."""
    if any(isinstance(i, StepDone) and i.step == Kind.THAW for i in intents):  # «was frozen, defrosted it yesterday»
        intents = [i for i in intents if not (isinstance(i, Change) and i.changes == {"frozen": True})]
    if any(isinstance(i, StepDone) and i.step == Kind.RUB for i in intents):  # «rub on, resting»: in its rub
        intents = [i for i in intents if not (isinstance(i, StepDone) and i.step == Kind.REST)]
    if _BRINE_COOLS.search(text) and not _MEAT.search(text):
        intents = [i for i in intents if not (isinstance(i, StepDone) and i.step == Kind.INTO_CURE)]
    if any(isinstance(i, Happened) and i.what == "lid" for i in intents):  # the lid tells what to do with the vents
        intents = [i for i in intents if not (isinstance(i, Unclear) and i.why == "fuelled")]
    if _BACK_IN.search(text):  # «took it out by mistake, put it back»: it goes on, and how long it lay there counts
        intents = [Happened("left_out") if isinstance(i, StepDone) and i.step == Kind.OUT else i for i in intents]
    if _BACK_ON.search(text):  # «took it off to fix the fire, back on now»: it never was off
        intents = [i for i in intents if not (isinstance(i, StepDone) and i.step == Kind.OFF)]
    intents = _done_after_all(_while_away(_beside_the_fire(intents)), text)
    at = next((i.at for i in intents if isinstance(i, StepDone) and i.at), None)
    if at is not None and (_THEN.search(text) or _WAS_BY_THEN.search(text)):  # «in the fridge since 4, was 30 then»
        intents = [_read_at(i, at) if isinstance(i, Reading) else i for i in intents]
    intents = [_off_when_read(i, intents) for i in intents]
    done = {i.step: i.at for i in intents if isinstance(i, StepDone)}
    return sorted(intents, key=lambda i: not (isinstance(i, Reading) and _was_acted_upon(i, done)))


def _beside_the_fire(intents: list[Intent]) -> list[Intent]:
    """«110, bird on»: beside a fire that is lit or meat that goes on, a number that a pit can have is the pit's."""
    if not any(isinstance(i, StepDone) and i.step in (Kind.LIGHT, Kind.MEAT_ON) for i in intents):
        return intents
    return [_as_pit(i) if isinstance(i, Unclear) and i.why == "number" else i for i in intents]


def _as_pit(number: Unclear) -> Intent:
    pits = [one for one in number.options if isinstance(one, Reading) and one.temperatures[0].probe is Probe.PIT]
    return pits[0] if len(pits) == 1 else number


def _done_after_all(intents: list[Intent], text: str) -> list[Intent]:
    """«forgot to flip this morning, just did it»: late, and not missed."""
    named = next((i.step for i in intents if isinstance(i, StepMissed) and i.step), None)
    intents = [replace(i, step=named) if named and isinstance(i, StepDone) and not i.step else i for i in intents]
    done = any(isinstance(i, StepDone) and i.step in (None, Kind.FLIP) and i.at is None for i in intents)
    if not (done and _JUST_NOW.search(text) and _TODAYS.search(text)):
        return intents
    return [i for i in intents if not (isinstance(i, StepMissed) and i.step in (None, Kind.FLIP) and not i.whole_day)]


def _while_away(intents: list[Intent]) -> list[Intent]:
    """«away thu to sat, tom does it»: he has it for that long, and nothing is silent."""
    away = next((i for i in intents if isinstance(i, Pause)), None)
    handed = next((i for i in intents if isinstance(i, HandOver) and i.at is None), None)
    if away is not None and handed is not None and handed.until is None and (away.since or away.until):
        intents[intents.index(handed)] = replace(handed, at=away.since, until=away.until)
        intents = [i for i in intents if i is not away or handed.task != "all"]
    return intents


def _off_when_read(intent: Intent, intents: list[Intent]) -> Intent:
    """«pulled 203 at 4.50»: the hour is that of both."""
    read = {t.at for i in intents if isinstance(i, Reading) for t in i.temperatures}
    off = isinstance(intent, StepDone) and intent.step == Kind.OFF and intent.at is None and len(read) == 1
    return replace(intent, at=next(iter(read))) if off else intent


def _was_acted_upon(reading: Reading, done: dict[str | None, datetime | None]) -> bool:
    """Whether a deed of the line was done upon a reading: into the brine at 38, off at 201."""
    probes = {t.probe for t in reading.temperatures}
    off = Kind.OFF in done and all(t.at == done[Kind.OFF] for t in reading.temperatures)
    return (off and Probe.CORE in probes) or (Kind.INTO_CURE in done and Probe.BRINE in probes)


def _read_at(reading: Reading, at: datetime) -> Reading:
    return replace(reading, temperatures=tuple(replace(t, at=t.at or at) for t in reading.temperatures))


def without_plans(intents: list[Intent]) -> list[Intent]:
    """«hit 165, going to wrap»: what is planned beside a reading puts nothing off; «tender, off» is off."""
    if any(isinstance(intent, StepDone) and intent.step == Kind.OFF for intent in intents):
        intents = [i for i in intents if not (isinstance(i, Ask) and i.topic == "tender")]
    read = any(isinstance(intent, Reading) for intent in intents)
    intents = [i for i in intents if not (read and isinstance(i, Ask) and i.topic == "wrap")]
    plans = (Kind.WRAP, Kind.OFF, Kind.REST)
    return [i for i in intents if not (read and isinstance(i, Snooze) and i.step in plans and not (i.until or i.by))]


def _sentence(sentence: str, context: Context) -> list[Intent]:
    """A sentence as a whole, or by its clauses where these say more."""
    whole = clause(sentence, context) if _names(sentence, context) < 2 else []
    if whole and isinstance(whole[0], Reading | Start | Debrief) and not _has_aside(sentence, context):
        return since_then(sentence, context) or _two_in_one(sentence, whole, context) or whole
    for cut in (_COMMA, _AND):
        parts = [p for p in cut.split(sentence) if p and p.strip()]
        if len(parts) < 2:
            continue
        said = [_halves(part, context) if cut is _COMMA else clause(part, context) for part in parts]
        said = _asked_beside(parts, said, context)
        flat = [intent for part in said for intent in (part or [Unclear("word", sentence[:60])])]
        begins = not whole and bool(said[0]) and not is_nothing(said[0][0])
        complete = cut is _COMMA or begins or not any(map(is_nothing, flat))
        if complete and (_weight(flat) > _weight(whole) or own_hours(flat, whole)):
            return flat
    return _two_in_one(sentence, whole, context) or whole or [Unclear("word", sentence[:60])]


def _asked_beside(parts: list[str], said: list[list[Intent]], context: Context) -> list[list[Intent]]:
    """«at work, 6», «the butcher trimmed it, 2.85»: beside words that nobody knows, a number without a thermometer is
    asked about."""
    mixed = any(isinstance(intent, StepDone) and intent.step == Kind.BRINE for one in said for intent in one)
    if not mixed and all(one and not all(map(is_nothing, one)) for one in said):
        return said
    acted = 1 if mixed else sum(isinstance(i, Reading | StepDone) for one in said for i in one)
    return [_asked_of(part, one, context, acted) for part, one in zip(parts, said, strict=True)]


def _asked_of(part: str, said: list[Intent], context: Context, acted: int) -> list[Intent]:
    reading = said[0] if len(said) == 1 else None
    lone = bool(_LONE_HOUR.fullmatch(part))
    alone = acted == 1 and context.phase in IN_THE_COLD and _is_bare(part)
    if not isinstance(reading, Reading) or not (lone or alone):
        return said
    hour = when.future(part if "at" in part else f"at {part}", context) if lone else None
    waits = (Snooze(until=hour.at),) if hour and context.due_step else ()
    return [Unclear("number", part, (*waits, reading))]


def _is_bare(part: str) -> bool:
    """Whether a part has a number and neither a thermometer nor a unit."""
    return not (line := taken_apart(part)).labels and not any(item.number.unit for item in line.items)


def _two_in_one(sentence: str, whole: list[Intent], context: Context) -> list[Intent]:
    """«brine at 36 meat in»: a reading beside a deed or the weather without a comma; nothing where it is one."""
    if _COMMA.search(sentence) or _AND.search(sentence) or not isinstance(next(iter(whole), None), _MAY_HIDE):
        return []
    for pair in halves(as_meat(sentence)):
        sure = [_is_sure(half) for half in pair]
        said = [clause(half, context) for half in pair] if any(sure) else [[], []]
        for place, beside in ((0, said[1]), (1, said[0])):
            reads = said[place] if sure[place] else []
            deed = all(isinstance(intent, StepDone) for intent in beside) or (place == 0 and _is_weather(beside))
            if reads and beside and deed and is_read(reads[0]) and _weight([*reads, *beside]) > _weight(whole):
                return [*said[0], *said[1]]
    return []


def _is_sure(half: str) -> bool:
    """Whether a half is a reading by itself: a thermometer is named, or the number can be no hour and no minutes."""
    an_hour = re.search(r"\b(?:at|since|by|around) (?:1?\d|2[0-4])$", half)
    return not an_hour and bool(re.search(r"[a-z]{3}.*\d|\d ?[cf]\b|\d{3}", half))


def _is_weather(intents: list[Intent]) -> bool:
    return all(isinstance(one, Change) and one.changes.keys() == {"wind_m_s"} for one in intents)


def _has_aside(sentence: str, context: Context) -> bool:
    """Whether one part of a sentence is more than a reading: a remark, or what was done at an hour."""
    parts = [part.strip() for half in _COMMA.split(sentence) if half for part in _AND.split(half)]
    told = (read_aside(part, context) or (len(parts) > 1 and _plain_deed(part, context)) for part in parts)
    return any(told)


def _plain_deed(part: str, context: Context) -> bool:
    """«meat is on», without a number, or with one that is an hour: beside a reading it is said as well."""
    if re.search(r"\d", part) and not part.endswith(" ago"):
        return bool(deed_at_an_hour(part, context))
    return any(isinstance(intent, StepDone) and intent.step for intent in read_step(part, context))


def _halves(part: str, context: Context) -> list[Intent]:
    """A clause, or both halves round its «and» where each says something and together they say more."""
    whole = clause(part, context)
    halves = [clause(half, context) for half in _AND.split(part)]
    named, _ = named_batch(part, context)  # «flat out and rinsed»: both are said of it
    flat = [to_batch(intent, named) for half in halves for intent in half]
    if len(halves) > 1 and all(halves) and not any(map(is_nothing, flat)) and _weight(flat) > _weight(whole):
        return flat
    return whole


def _weight(intents: list[Intent]) -> tuple[int, int]:
    """How many things are said that can be acted on, and how many that can be asked about."""
    open_ones = sum(isinstance(intent, Unclear) and not is_nothing(intent) for intent in intents)
    settings = {name for intent in intents if isinstance(intent, Settings) for name in intent.changes}  # units once
    return sum(map(_things, intents)) + len(settings), open_ones


def _things(intent: Intent) -> int:
    match intent:
        case Change(changes=changes):
            return len(changes)
        case Reading(temperatures=temperatures):
            return len(temperatures)
        case Unclear() | Greet() | Settings():
            return 0
        case _:
            return 1
