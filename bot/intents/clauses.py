"""A sentence clause by clause: what was done, read, changed or went wrong, each in its order."""

import re
from dataclasses import replace
from functools import lru_cache
from typing import Final

from bot import measures
from bot.intents import questions
from bot.intents.asides import read_aside
from bot.intents.asked import read_answer
from bot.intents.changes import read_change, read_move, read_word
from bot.intents.context import Context
from bot.intents.corrections import read_correction
from bot.intents.households import read_somebody_else
from bot.intents.incidents import read_debrief, read_happened
from bot.intents.intents import (
    Ask,
    Change,
    Debrief,
    Greet,
    Intent,
    Reading,
    Settings,
    Snooze,
    Start,
    StepDone,
    StepMissed,
    StepSkipped,
    Temperature,
    Unclear,
)
from bot.intents.meats import as_meat
from bot.intents.readings import read_reading
from bot.intents.settings import read_city, read_pause, read_settings
from bot.intents.start import read_start
from bot.intents.started import read_started
from bot.intents.steps import read_step
from bot.intents.yard import read_yard
from core.batch.events import Probe
from core.plan.steps import Kind

_SENTENCE: Final = re.compile(
    r"(?<!\d)[.]+(?:\s|$)"
    r"|(?<=\d)\.(?=\s|$)(?!(?<=\d\.\d\.) (?:at |um |\d))(?!(?<=\d\.\d\d\.) (?:at |um |\d))|[;!\n]+|(?<=\?)\s"
)
_COMMA: Final = re.compile(r",(?!\d\d?(?!\d))\s*|\s+(?:then|but|plus|also)\s+")
_AND: Final = re.compile(r"\s+(?:and|&|n)\s+")
_AN_HOUR_LAST: Final = re.compile(r"\b(?:at|since|um|seit|around) (?:1?\d|2[0-4])(?:[:.]\d\d)?(?: oclock)?$")
_FROM_TO: Final = re.compile(r"\b(?:from|between) \d{1,2}\b.{0,12}\b(?:to|until|till?|and)\b")  # hours, no degrees
_NOT_DONE: Final = re.compile(
    r"(?:(?:i|we|have|was|were|it|is) )*(?:not|havent|didnt|wasnt) (?:flipped|turned|done|rinsed|do|flip|turn)(?: it)?"
)
_SET_UP: Final = ("none", "waiting", "curing")


def sentences(text: str, context: Context) -> list[Intent]:
    """The intents of a plain line in their order; a clause that is not understood is an Unclear word."""
    out: list[Intent] = []
    for sentence in filter(None, (part.strip(" ,") for part in _SENTENCE.split(text))):
        out.extend(_sentence(sentence, context))
    return out


def several(text: str) -> bool:
    """Whether a plain line has more than one clause."""
    return bool(_COMMA.search(text))


def clause(text: str, context: Context) -> list[Intent]:
    """What one clause says, by the first reader that knows it; nothing where none does."""
    named, rest = named_batch(text, context)
    here = about(named, context)
    return [to_batch(intent, named) for intent in remembered(rest.strip(" ,"), here)]


def named_batch(text: str, context: Context) -> tuple[str | None, str]:
    """The one batch that a plain text names, where there are several, and the text without its name."""
    names = [(key, name.lower()) for key, name in context.batches] if len(context.batches) > 1 else []
    hits = [(key, name) for key, name in names if re.search(rf"\b{re.escape(name)}\b", text)]
    hits = [
        hit for hit in hits if not any(hit[1] != name and hit[1] in name for _, name in hits)
    ]  # «flat 2», not «flat»
    if len(hits) != 1:
        return None, text
    key, name = hits[0]
    if (spoken := as_meat(text)) != text:  # «the ham is on»
        return key, spoken
    rest = re.sub(rf"\b(?:(?:for|of|on) )?(?:the )?{re.escape(name)}\b[:,]?", " ", text, count=1)
    return key, " ".join(rest.split())


def _names(text: str, context: Context) -> int:
    """How many batches a plain text names."""
    names = sorted({name.lower() for _, name in context.batches if name}, key=len, reverse=True)
    found = 0
    for name in names:  # the longest first, so that «flat 2» is not «flat» too
        text, hits = re.subn(rf"\b{re.escape(name)}\b", " ", text)
        found += bool(hits)
    return found


def about(named: str | None, context: Context) -> Context:
    """The context for a batch that was named: of another than the one in hand, neither phase nor readings are known."""
    if named is None or named == context.batch:
        return context
    return replace(context, phase="none", last_core_c=None, last_pit_c=None, deadline=None, due_step=None, mass=None)


def to_batch(intent: Intent, batch: str | None) -> Intent:
    """The intent about a batch that was named, and with it every intent that it offers."""
    if batch is None:
        return intent
    if isinstance(intent, Unclear):
        return replace(intent, options=tuple(to_batch(option, batch) for option in intent.options))
    if hasattr(intent, "batch") and intent.batch is None:
        return replace(intent, batch=batch)  # type: ignore[arg-type]
    return intent


def is_nothing(intent: Intent) -> bool:
    """Whether an intent holds nothing to act on: a word that was not understood, or a greeting."""
    return (isinstance(intent, Unclear) and intent.why == "word" and not intent.options) or isinstance(intent, Greet)


def merged(intents: list[Intent]) -> list[Intent]:
    """Readings, changes and settings that follow each other, as one each."""
    out: list[Intent] = []
    for intent in intents:
        joined = _joined(out[-1], intent) if out else None
        if joined is None:
            out.append(intent)
        else:
            out[-1] = joined
    return out


def without_plans(intents: list[Intent]) -> list[Intent]:
    """«hit 165, going to wrap»: what is planned beside a reading puts nothing off; «tender, off» is off."""
    if any(isinstance(intent, StepDone) and intent.step == Kind.OFF for intent in intents):
        intents = [i for i in intents if not (isinstance(i, Ask) and i.topic == "tender")]
    read = any(isinstance(intent, Reading) for intent in intents)
    plans = (Kind.WRAP, Kind.OFF, Kind.REST)
    return [i for i in intents if not (read and isinstance(i, Snooze) and i.step in plans and not (i.until or i.by))]


def _sentence(sentence: str, context: Context) -> list[Intent]:
    """A sentence as a whole, or by its clauses where these say more."""
    whole = clause(sentence, context) if _names(sentence, context) < 2 else []
    if whole and isinstance(whole[0], Reading | Start | Debrief) and not _has_aside(sentence, context):
        return whole
    for cut in (_COMMA, _AND):
        parts = [p for p in cut.split(sentence) if p and p.strip()]
        if len(parts) < 2:
            continue
        said = [_halves(part, context) if cut is _COMMA else clause(part, context) for part in parts]
        flat = [intent for part in said for intent in (part or [Unclear("word", sentence[:60])])]
        begins = not whole and bool(said[0]) and not is_nothing(said[0][0])
        complete = cut is _COMMA or begins or not any(map(is_nothing, flat))
        if complete and _weight(flat) > _weight(whole):
            return flat
    return whole or [Unclear("word", sentence[:60])]


def _has_aside(sentence: str, context: Context) -> bool:
    """Whether one part of a sentence is more than a reading: a remark, or what was done at an hour."""
    parts = [part.strip() for part in _COMMA.split(sentence) if part]
    told = (read_aside(part, context) or (len(parts) > 1 and _plain_deed(part, context)) for part in parts)
    return any(told)


def _plain_deed(part: str, context: Context) -> bool:
    """«meat is on», without a number, or with one that is an hour: beside a reading it is said as well."""
    if re.search(r"\d", part):
        return bool(_deed_at_an_hour(part, context))
    return any(isinstance(intent, StepDone) and intent.step for intent in read_step(part, context))


def _halves(part: str, context: Context) -> list[Intent]:
    """A clause, or both halves round its «and» where each says something and together they say more."""
    whole = clause(part, context)
    halves = [clause(half, context) for half in _AND.split(part)]
    flat = [intent for half in halves for intent in half]
    if len(halves) > 1 and all(halves) and not any(map(is_nothing, flat)) and _weight(flat) > _weight(whole):
        return flat
    return whole


def _weight(intents: list[Intent]) -> tuple[int, int]:
    """How many things are said that can be acted on, and how many that can be asked about."""
    open_ones = sum(isinstance(intent, Unclear) and not is_nothing(intent) for intent in intents)
    return sum(map(_things, intents)), open_ones


def _things(intent: Intent) -> int:
    match intent:
        case Change(changes=changes) | Settings(changes=changes):
            return len(changes)
        case Reading(temperatures=temperatures):
            return len(temperatures)
        case Unclear() | Greet():
            return 0
        case _:
            return 1


@lru_cache(maxsize=64)  # a line is tried whole, by its commas and by its «and»: many of the parts are the same
def remembered(text: str, context: Context) -> tuple[Intent, ...]:
    """The intents of one clause without a batch's name."""
    return tuple(_said(text, context))


def _said(text: str, context: Context) -> list[Intent]:
    if not text:
        return []
    if found := read_answer(text, context) or read_correction(text, context):
        return [found]
    if aside := read_aside(text, context) or read_yard(text, context):
        return [aside]
    if deed := _deed_at_an_hour(text, context):
        return deed
    if started := read_started(text, context):
        return [started]
    if reading := read_reading(text, context):
        return [_pit_wanted(reading, context) or reading]
    if told := _happened(text, context):
        return told
    if found := read_debrief(text, context):
        return [found]
    if handed := read_somebody_else(text, context):
        return [handed]
    if steps := read_step(text, context):
        return steps
    for reader in (read_settings, read_pause, read_move, read_start):
        if found := reader(text, context):
            return [found]
    return read_change(text, context) or _rest(text, context)


def _deed_at_an_hour(text: str, context: Context) -> list[Intent]:
    """«brisket went on at 8»: what was done, with a number that is an hour and no temperature."""
    if not _AN_HOUR_LAST.search(text):
        return []
    said = read_step(text, context)
    deed = said[0] if said else None
    return said if isinstance(deed, StepDone) and deed.step and deed.at else []


def _rest(text: str, context: Context) -> list[Intent]:
    if context.due_step and _NOT_DONE.fullmatch(text):
        return [Unclear("word", text, (Snooze(), StepMissed(), StepSkipped()))]
    if text in ("ready", "safe", "now"):  # half of a clause («seasoned and ready») asks nothing
        return []
    for reader in (read_word, questions.read_plain, questions.read_topic, read_city):
        if found := reader(text, context):
            return [found]
    loose = read_reading(text, context, loose=True)
    return [loose] if loose else []


def _happened(text: str, context: Context) -> list[Intent]:
    """An incident, with the temperatures that were told along with it."""
    found = read_happened(text, context)
    if found is None or context.phase == "none":
        return []
    degrees = re.search(r"\d", found.rest) and not _FROM_TO.search(found.rest)
    reading = read_reading(found.rest, context) if degrees else None
    happened = found.happened
    if not isinstance(reading, Reading):
        return [happened]
    return [reading, happened if "ago" in text.split() else replace(happened, at=None)]


def _pit_wanted(reading: Reading | Unclear, context: Context) -> Change | None:
    """«pit 110 c» before there is a fire is how hot it shall run."""
    if isinstance(reading, Unclear) or context.phase not in _SET_UP:
        return None
    temperatures = reading.temperatures
    if [t.probe for t in temperatures] != [Probe.PIT] or not temperatures[0].unit:
        return None
    return Change({"pit_c": measures.to_house(temperatures[0].value, temperatures[0].unit)})


def _joined(one: Intent, two: Intent) -> Intent | None:
    match one, two:
        case Reading(temperatures=a, tender=ta, batch=ba), Reading(temperatures=b, tender=tb, batch=bb) if ba == bb:
            both: tuple[Temperature, ...] = (*a, *b)
            return Reading(both, ta or tb, ba)
        case Change(changes=a, batch=ba), Change(changes=b, batch=bb) if ba == bb:
            return Change({**a, **b}, ba)
        case Settings(changes=a, unclear=ua), Settings(changes=b, unclear=ub):
            return Settings({**a, **b}, ua or ub)
        case Start(), Change(changes=b):
            return replace(one, said={**one.said, **b})
        case Snooze(until=None, by=None), Snooze():
            return two
        case StepDone(), StepDone() if one == two:
            return one
        case _:
            return None
