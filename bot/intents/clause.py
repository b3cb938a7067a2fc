"""One clause: what it says by the first reader that knows it, about the batch that it names."""

from dataclasses import replace
from functools import lru_cache
from typing import Final

from bot import measures
from bot.intents import greetings, questions, when
from bot.intents.asides import read_aside
from bot.intents.asked import read_answer
from bot.intents.changes import how_eaten, read_change, wanted_temperature
from bot.intents.context import SET_UP, Context
from bot.intents.corrections import read_correction
from bot.intents.debriefs import read_debrief
from bot.intents.foretold import read_foretold
from bot.intents.guests import read_guests
from bot.intents.households import read_somebody_else
from bot.intents.incidents import read_happened
from bot.intents.intents import (
    Ask,
    Change,
    Greet,
    Intent,
    MoveDeadline,
    Reading,
    Snooze,
    StepDone,
    StepMissed,
    StepSkipped,
    Unclear,
)
from bot.intents.meats import as_meat
from bot.intents.moves import read_move, read_word
from bot.intents.pauses import AWAY_IN, busy_until, read_pause
from bot.intents.rewriting.plainer import plainer
from bot.intents.settings import read_city, read_settings
from bot.intents.start import read_start
from bot.intents.steps import read_step
from bot.intents.temperatures.readings import read_reading
from bot.intents.temperatures.since import read_warm_once, read_warm_since
from bot.intents.temperatures.started import read_started
from bot.intents.whereabouts import read_moved
from bot.intents.woods import read_wood, with_wood
from bot.intents.yard import read_yard
from core import patterns as re
from core.batch.events import Probe
from core.plan.steps import Kind

_AN_HOUR_LAST: Final = re.compile(
    r"\b(?:at|since|um|seit|around) (?:1?\d|2[0-4])(?:[:.]\d\d)?(?: oclock)?$"
    r"|(?<!core )(?<!pit )\b(?:1[0-2]|[1-9])(?:[:.][0-5]\d)? ?[ap]m$|\b(?:[01]?\d|2[0-3]):[0-5]\d$"
)
_HOW_COLD: Final = re.compile(  # «6 in the brine at 7:40», «checked the fridge 38 at 7»: read, and not put in
    r"\b\d{1,2}(?:\.\d)?(?: ?[cf])? in the (?:brine|fridge)\b|\b(?:checked|read) the (?:fridge|brine):? \d"
)
_IN_THE_COLD: Final = re.compile(
    r"^(?:(?:its|it|meat|all|put) )*in the (?:brine|fridge),? (?:at |@ ?|around |about |since |by )?"
    r"(?P<after>(?:1[0-2]|[1-9])(?:[.:][0-5]\d)?)$"
    r"|^(?:at |@ ?|around |about |since |by )(?P<before>(?:1[0-2]|[1-9])(?:[.:][0-5]\d)?),? in the (?:brine|fridge)$"
)
_FROM_TO: Final = re.compile(r"\b(?:from|between) \d{1,2}\b.{0,12}\b(?:to|until|till?|and)\b")  # hours, no degrees
_BUSY_UNTIL: Final = re.compile(
    r"^(?:(?:im|i am|we are|ill be|well be) )?(?:on|at|in|off|with|asleep|sleeping|driving|busy|flying|working|swimming"
    r"|shopping|gone|fishing|camping|hunting|hiking)"
    r"\b(?! the (?:fridge|brine|bag|cure|ice|foil|paper|grill|smoker|pit|rack|counter))[^\d,;]{0,44}\b"
    r"(?:til|till|until) (?=\d|noon|midnight|mon|tue|wed|thu|fri|sat|sun|tom|this|the|late)"
)
_MINDS: Final = (  # «jo takes the bacon», «turned the bacon»: what is done with it
    r"(?<!i )(?:has|takes(?: over)?|does|minds|watches|handles|looks after|flips|turns|flipped|turned|wrapped"
    r"|rinsed|soaked)"
)
_BESIDE_IT: Final = r"(?:(?:along|together) with|with|alongside|beside|next to|(?:but |and )?not)"
_NO_OTHER: Final = re.compile(r",? ?\b(?:but |and )?not (?:on |of )?(?:the )?other(?: one| bag| batch)?\b")
_TO_COME: Final = re.compile(r"(?<!for )(?<!till )(?<!until )(?<!by )\b(?:tomorrow(?! (?:its|is))|later)\b(?! today)")
_PART: Final = re.compile(r"[,;]\s*|\s+(?:and|but|then)\s+")
_DID: Final = re.compile(
    r"\b(?:flipped|turned|rinsed|soaked|wrapped|sliced|served|lit|took|pulled|dried|rubbed|made|did)\b"
)
_NOT_DONE: Final = re.compile(
    r"(?:(?:i|we|have|was|were|it|is) )*(?:not|havent|didnt|wasnt) (?:flipped|turned|done|rinsed|do|flip|turn)(?: it)?"
)
_SUBJECTS: Final = (
    (r"(?:(?:is|are|was|now|just|still|only) )*at \d", "meat"),
    (r"(?:is|are|was|has|went) (?:(?:now|just|been|all) )*(?:in|on|out|off)\b", "meat"),
    (r"(?:is|are|was|has|needs)\b", "it"),
)
_TOUGH: Final = re.compile(r"\b(?:tough|(?:still|too|very|is|its) (?:hard|firm|tight)|not (?:\w+ )?(?:tender|soft))\b")


def clause(text: str, context: Context) -> list[Intent]:
    """What one clause says, by the first reader that knows it; nothing where none does."""
    named, rest = named_batch(text, context)
    here, rest = about(named, context), rest.strip(" ,")
    said = remembered(rest, here)
    if all(isinstance(one, Unclear | Greet) for one in said) and (again := plainer(rest)) != rest:
        said = remembered(again, here) or said  # the rules that look at the start of a line, for a clause of it
    return [to_batch(intent, named) for intent in said]


def named_batch(text: str, context: Context) -> tuple[str | None, str]:
    """The one batch that a plain text names, where there are several, and the text without its name."""
    hits = _called_in(text, context) if len(context.batches) > 1 else []
    text = _NO_OTHER.sub("", text) if hits else text
    if len(hits) > 1:  # «the bacon on with the flat», «the bacon, not the flat»: it is the bacon's
        beside = [rf"\b{_BESIDE_IT} (?:the |my )?{re.escape(hit[1])}\b" for hit in hits]
        hits = [hit for hit, words in zip(hits, beside, strict=True) if not re.search(words, text)]
        text = re.sub("|".join(beside), "", text) if len(hits) == 1 else text
    if len(hits) != 1:
        return None, text
    key, name = hits[0]
    if (spoken := as_meat(text)) != text:  # «the ham is on»
        return key, spoken
    text = re.sub(rf"\b({_MINDS}) (?:the )?{re.escape(name)}\b", r"\1 it", text)
    for does, subject in _SUBJECTS:  # «flat 2 is in» tells, and «is in» would ask
        text = re.sub(rf"^(?:the )?{re.escape(name)}(?= {does})", subject, text)
    rest = re.sub(rf"\b(?:(?:for|of|on) )?(?:the )?{re.escape(name)}\b[:,]?", " ", text, count=1)
    return key, re.sub(r"^(?:(?:i|we|just|only) )*did$", "done", " ".join(rest.split()))


def _called_in(text: str, context: Context) -> list[tuple[str, str]]:
    """The batches whose names stand in a plain text: «flat 2» is not «flat», and «flat and flat 2» are both."""
    hits = []
    for key, name in sorted(((key, name.lower()) for key, name in context.batches), key=lambda one: -len(one[1])):
        text, many = re.subn(rf"\b{re.escape(name)}\b", " ", text)
        hits += [(key, name)] if many else []
    return hits


def addressed(text: str, context: Context) -> tuple[str | None, str]:
    """The batch before whose name and colon a plain text stands, where there are several, and the text without it."""
    name, colon, rest = text.partition(": ")
    key = next((key for key, called in context.batches if called.lower() == name), None) if colon else None
    return (key, rest) if key is not None and len(context.batches) > 1 and rest else (None, text)


def about(named: str | None, context: Context) -> Context:
    """The context for a batch that was named: of another than the one in hand no more is known than where it stands."""
    if named is None or named == context.batch:
        return context
    there = next((one for one in context.elsewhere if one[0] == named), (named, "none", None, None))
    return replace(
        context, phase=there[1], last_core_c=there[2], last_pit_c=there[3], deadline=None, due_step=None, mass=None
    )


def to_batch(intent: Intent, batch: str | None) -> Intent:
    """The intent about a batch that was named, and with it every intent that it offers."""
    if batch is None:
        return intent
    if isinstance(intent, Unclear):
        return replace(intent, options=tuple(to_batch(option, batch) for option in intent.options))
    if hasattr(intent, "batch") and intent.batch is None:
        return replace(intent, batch=batch)  # type: ignore[arg-type]
    return intent


_ON_AT: Final = re.compile(r"^(?:(?:its|theyre|they are|it is|now|all|both),? )*on(?: now)? at \d{3}\b")


def is_nothing(intent: Intent) -> bool:
    """Whether an intent holds nothing to act on: a word that was not understood, or a greeting."""
    return (isinstance(intent, Unclear) and intent.why == "word" and not intent.options) or isinstance(intent, Greet)


@lru_cache(maxsize=64)  # a line is tried whole, by its commas and by its «and»: many of the parts are the same
def remembered(text: str, context: Context) -> tuple[Intent, ...]:
    """The intents of one clause without a batch's name."""
    return tuple(with_wood(_ahead(_said(text, context), text, context), text))


def _ahead(found: list[Intent], text: str, context: Context) -> list[Intent]:
    """«meat in tomorrow», «brine 38, put it in later»: a deed that is to come is put off, and not noted as done."""
    part = next((part for part in _PART.split(text) if _TO_COME.search(part)), "")
    if not part or _DID.search(part):
        return found
    deeds = {one.step for one in read_step(part, context) if isinstance(one, StepDone)}
    said = when.future(part, context)
    until = said.at if said else None
    return [Snooze(until, step=i.step) if isinstance(i, StepDone) and i.step in deeds else i for i in found]


def _said(text: str, context: Context) -> list[Intent]:
    if not text:
        return []
    if found := read_answer(text, context) or read_correction(text, context):
        return [found]
    if eaters := read_guests(text, context):
        return [eaters]
    if aside := read_aside(text, context) or read_yard(text, context) or read_wood(text, context):
        return [aside]
    if context.phase == "chilling" and (moved := read_moved(text, context)):
        return moved  # «in the fridge since 7» begins no second chill
    if deed := deed_at_an_hour(text, context):
        return deed
    if started := read_started(text, context):
        return [started]
    if asked := _hour_or_cold(text, context):
        return [asked]
    if planned := read_foretold(text, context):
        return [planned]
    if found_all := read_warm_since(text, context) or read_warm_once(text, context):
        return found_all
    if moved := read_moved(text, context):
        return moved
    if text.startswith("run the pit at ") and (wanted := wanted_temperature(text)):
        return [wanted]
    if reading := read_reading(text, context):
        return [*_put_on(text, context), *_pit_wanted(reading, context), *_not_tender(text, context)]
    if told := _happened(text, context):
        return told
    if found := read_debrief(text, context):
        return [found]
    if handed := read_somebody_else(text, context):
        return [handed]
    if AWAY_IN.search(text) and (away := read_pause(text, context)):
        return [away]
    if steps := read_step(text, context):
        return steps
    for reader in (read_settings, read_pause, read_move, read_start):
        if found := reader(text, context):
            return [replace(found, eaten=how_eaten(text)) if isinstance(found, MoveDeadline) else found]
    return read_change(text, context) or _rest(text, context)


def _put_on(text: str, context: Context) -> list[Intent]:
    """«on at 275», once the fire burns and the meat is what it waits for."""
    waits = context.phase == "drying" and (context.due_step or context.soon_step or "").startswith(Kind.MEAT_ON)
    return [StepDone(str(Kind.MEAT_ON))] if waits and _ON_AT.match(text) else []


def _hour_or_cold(text: str, context: Context) -> Unclear | None:
    """«in the brine 8»: put in at eight, or eight degrees in there."""
    found = _IN_THE_COLD.match(text)
    reading = read_reading(text, context) if found else None
    if found is None or not isinstance(reading, Reading):
        return None
    step = Kind.INTO_CURE if context.phase == "waiting" else Kind.CHILL
    said = when.past(f"at {found['after'] or found['before']}", context)
    return Unclear("at", text[:60], (reading, StepDone(str(step), said.at if said else None)))


def deed_at_an_hour(text: str, context: Context) -> list[Intent]:
    """«brisket went on at 8»: what was done, with a number that is an hour and no temperature."""
    if not _AN_HOUR_LAST.search(text) or _HOW_COLD.search(text):
        return []
    said = read_step(text, context)
    deed = said[0] if said else None
    return said if isinstance(deed, StepDone) and deed.step and deed.at else []


def _rest(text: str, context: Context) -> list[Intent]:
    if context.due_step and _NOT_DONE.fullmatch(text):
        return [Unclear("word", text, (Snooze(), StepMissed(), StepSkipped()))]
    if text in ("ready", "safe", "now"):  # half of a clause («seasoned and ready») asks nothing
        return []
    if _BUSY_UNTIL.match(text):  # «on a plane til 9»
        return [busy_until(text, context)]
    for reader in (read_word, greetings.read_plain, questions.read_topic, read_city):
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


def _not_tender(text: str, context: Context) -> list[Ask]:
    """«198 but still tough»: what the probe felt is answered too, whatever the number says."""
    return [Ask("tough", text=text)] if context.phase == "cooking" and _TOUGH.search(text) else []


def _pit_wanted(reading: Reading | Unclear, context: Context) -> list[Intent]:
    """«pit 110 c» before there is a fire is how hot it shall run, whatever was read beside it."""
    if isinstance(reading, Unclear) or context.phase not in SET_UP:
        return [reading]
    pit = next((t for t in reading.temperatures if t.probe is Probe.PIT and t.unit), None)
    if pit is None:
        return [reading]
    wanted = Change({"pit_c": measures.to_house(pit.value, pit.unit or "")})
    rest = tuple(t for t in reading.temperatures if t.probe is not Probe.PIT)
    return [*([replace(reading, temperatures=rest)] if rest else []), wanted]
