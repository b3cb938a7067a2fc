"""A line of talk in, what is meant by it out: one intent, or several in their order; never an exception.

The order of the readers is the grammar: the answer to what was asked, second thoughts, settings, a meal that is moved, a question,
a new batch, then clause by clause what was done, read, changed or went wrong. What nobody knows is a question for the
entries; what may be several things is asked about.
"""

import re
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Final

from bot import measures
from bot.intents import questions
from bot.intents.asked import read_answer
from bot.intents.changes import read_change, read_move, read_word, to_batch
from bot.intents.context import Context
from bot.intents.corrections import read_correction
from bot.intents.german import english
from bot.intents.incidents import read_debrief, read_happened
from bot.intents.intents import (
    Ask, Cancel, Change, Choose, Correct, Debrief, Greet, Intent, Question, Reading, Settings, Snooze, Start, StepDone, Temperature, Unclear,
)  # fmt: skip
from bot.intents.readings import hot_words, read_reading
from bot.intents.settings import read_pause, read_settings
from bot.intents.start import read_start
from bot.intents.steps import read_step
from core.batch.events import Probe

LONGEST: Final = 500  # characters; a message of the trade has a tenth of it
_THUMBS: Final = re.compile("^[\U0001f44d\u2705\u2714\U0001f44c\U0001f197\U0001f3fb-\U0001f3ff\ufe0f\u200d ]+$")
_SILENT: Final = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]")
_APOSTROPHES: Final = str.maketrans(
    {"'": "", "’": "", "‘": "", "`": "", "´": "", "″": '"', "”": '"', "“": '"', "„": '"'}
)
_ANYTHING: Final = re.compile(r"[^\W_]")
_SENTENCE: Final = re.compile(r"(?<!\d)[.]+(?:\s|$)|(?<=\d)\.(?=\s|$)|[;!\n]+|(?<=\?)\s")
_CLAUSE: Final = re.compile(r",(?!\d\d?(?!\d))\s*|\s+(?:then|but|plus|also)\s+|,\s+")
_AND: Final = re.compile(r"\s+(?:and|&|n|und)\s+")
_HALF_HOUR: Final = re.compile(
    r"\b(?:half|halb) (?P<hour>1[0-2]|[1-9])\b(?! ?(?:kg|lb|kilo|pound|inch|cup|litre|liter|tsp|hour|min))"
)
_TAIL_ASKS: Final = re.compile(r",? ?\b(?:ok(?:ay)?|is that (?:ok|okay|safe|alright|fine|normal)|safe|right)\s*\?+$")
_COMMAND: Final = re.compile(r"^/(?P<word>[a-z_]{2,20})(?:@\w{1,40})?\b")
_MENTION: Final = re.compile(r"^@\w{2,40}[,: ]*|\s@\w{2,40}$")
_YES: Final = re.compile(r"^(?:yes|yep|yeah|yup|y|ja|aye)$")
_OK: Final = re.compile(r"^(?:ok(?:ay)?|k|sure|alright|right)$")
_SPOON_OF_CURE: Final = re.compile(
    r"^(?:\d[\d./ ]{0,6}|an?|half a?) ?(?:tsp|tbsp|teaspoons?|tablespoons?|cups?|spoons?|pinch(?:es)?)\b.{0,24}\b(?:pink|cure|salt)\b.{0,12}$"
)
_SET_UP: Final = ("none", "waiting", "curing")


def read(text: str, context: Context) -> list[Intent]:
    """What a line means.

    Parameters
    ----------
    text
        As typed: any characters, any length.
    context
        The time, the person, and where their batch stands.

    Returns
    -------
    At least one intent. Question or Unclear where nothing else fits.
    """
    if len(text) > LONGEST:
        return [Unclear("too_long", text[:80])]
    shown = text.strip()
    if not _SILENT.sub("", shown).strip():
        return [Unclear("empty")]
    if _THUMBS.match(shown):
        return [StepDone()]
    plain = normal(shown, context.language)
    if not _ANYTHING.search(plain):
        return [Unclear("other" if plain.strip("?! .") else "empty" if not plain else "word", shown[:60])]
    return _read(plain, shown, context)


def normal(text: str, language: str = "en") -> str:
    """A line as the readers want it: lower case, plain digits, straight quotes, one space, English words."""
    text = _SILENT.sub(" ", text).replace("\n", " ; ")
    for fraction in "½¼¾⅓⅔⅛⅜⅝⅞":  # before the fold below, which would make 1½ an eleven
        text = text.replace(fraction, f" {unicodedata.normalize('NFKC', fraction)}")
    text = unicodedata.normalize("NFKC", text.translate(_APOSTROPHES)).translate(_APOSTROPHES)
    plain = measures.plain(text)
    plain = _MENTION.sub("", plain).strip()
    command = _COMMAND.match(plain)
    if command and command["word"] != "start":
        plain = f"{command['word'].replace('_', ' ')} {plain[command.end() :].strip()}".strip()
    return english(plain, language)


def _read(plain: str, shown: str, context: Context) -> list[Intent]:
    if half := _HALF_HOUR.search(plain):
        return _half_hours(half, plain, shown, context)
    if answer := read_answer(plain, context):
        return [answer]
    for reader in _WHOLE:
        if found := reader(plain, context):
            return [found]
    return _parts(plain, shown, context)


def _half_hours(half: re.Match[str], plain: str, shown: str, context: Context) -> list[Intent]:
    """«half 8» is 7:30 to some and 8:30 to others."""
    hour = int(half["hour"])
    ways = [f"{plain[: half.start()]}{h}:30{plain[half.end() :]}" for h in ((hour - 1) or 12, hour)]
    options = tuple(_read(way, shown, context)[0] for way in ways)
    if any(isinstance(option, Question | Unclear) for option in options):
        return [Question(shown)] if questions.is_question(plain) else [Unclear("number", shown[:60])]
    return [Unclear("number", half[0], options)]


def _correction(plain: str, context: Context) -> Intent | None:
    found = read_correction(plain, context)
    return found if found is None or not plain.rstrip().endswith("?") else None


def _move(plain: str, context: Context) -> Intent | None:
    """A meal that is moved, where that is all that was said."""
    return read_move(plain, context) if not _CLAUSE.search(plain) else None


def _start(plain: str, context: Context) -> Intent | None:
    asks = questions.is_question(plain) and not re.search(
        r"^(?:can|could) (?:you|u|we) (?:please )?(?:plan|start|do|make)\b", plain
    )
    return None if asks else read_start(plain, context)


def _ambiguous(plain: str, context: Context) -> Intent | None:
    bare = plain.strip(" .!?")
    if hot_words(bare):
        return Unclear("number", bare)
    if _SPOON_OF_CURE.match(bare):
        return Unclear("unit", bare)
    if _YES.match(bare) and context.due_step:
        return StepDone()
    if _OK.match(bare) and context.due_step:
        return Unclear("word", bare, (StepDone(), Snooze()))
    return None


def _tells(plain: str, context: Context) -> Intent | None:
    """Settings, and a talk that is paused or handed over, where it is no question."""
    if plain.rstrip().endswith("?"):
        return None
    return read_settings(plain, context) or (None if questions.is_question(plain) else read_pause(plain, context))


_WHOLE: Final[tuple[Callable[[str, Context], Intent | None], ...]] = (
    _ambiguous, questions.read_plain, _correction, _tells, _move, questions.read_topic, _start,
)  # fmt: skip


def _parts(plain: str, shown: str, context: Context) -> list[Intent]:
    """The intents of each sentence and clause; the whole line is a question where no part of it is clear."""
    named, rest = _about_batch(plain, context)
    if questions.is_question(rest):
        return _asking(rest, shown, context, named)
    out: list[Intent] = []
    for sentence in filter(None, (s.strip(" ,") for s in _SENTENCE.split(rest))):
        out.extend(_sentence(sentence, context))
    found = _merged([to_batch(i, named) for i in out if not _is_nothing(i)])
    return found or _nothing(plain, shown, context, out)


def _asking(plain: str, shown: str, context: Context, named: str | None) -> list[Intent]:
    """A line that asks: «flipped, what now?» does and asks, «fridge 46, ok?» reads and asks whether it is safe."""
    tail = _TAIL_ASKS.search(plain)
    reading = read_reading(plain[: tail.start()], context) if tail else None
    if isinstance(reading, Reading):
        return [to_batch(reading, named), Ask("safe", text=shown[:60], batch=named)]
    out: list[Intent] = []
    for clause in filter(None, (c.strip(" ,") for c in re.split(r"[,;.!?](?:\s|$)+|\s+(?:and|then|so)\s+", plain))):
        found = questions.read_topic(clause, context) or questions.read_plain(clause, context)
        out.extend(
            [found] if found else [] if questions.is_question(clause) else _clause(clause, context) or [Unclear("word")]
        )
        if not out or isinstance(out[-1], Unclear) or (questions.is_question(clause) and not found):
            return [Question(shown)]
    asks = [i for i in out if isinstance(i, Ask)]
    return _merged([to_batch(i, named) for i in out]) if asks else [Question(shown)]


def _sentence(sentence: str, context: Context) -> list[Intent]:
    """A sentence as a whole where one reader takes all of it, else clause by clause."""
    whole = _clause(sentence, context)
    clauses = [c for c in _CLAUSE.split(sentence) if c and c.strip()]
    if len(clauses) < 2 or (whole and isinstance(whole[0], Reading | Start | Settings | Debrief)):
        return whole or _clauses(_AND.split(sentence), context)
    parts = _clauses(clauses, context)
    return parts if not all(map(_is_nothing, parts)) or not whole else whole


def _clauses(clauses: list[str], context: Context) -> list[Intent]:
    out: list[Intent] = []
    for clause in clauses:
        found = _clause(clause.strip(" ,"), context)
        if not found and (halves := _AND.split(clause))[1:]:
            found = [i for half in halves for i in _clause(half.strip(" ,"), context)]
        out.extend(found or [Unclear("word", clause[:60])])
    return out


def _clause(clause: str, context: Context) -> list[Intent]:
    """What one clause says, by the first reader that knows it."""
    if not clause:
        return []
    correction = read_correction(clause, context)
    if correction:
        return [correction]
    reading = read_reading(clause, context)
    if isinstance(reading, Reading) and (setting := _pit_wanted(reading, clause, context)):
        return [setting]
    if reading:
        return [reading]
    for reader in (read_happened, read_debrief):
        if found := reader(clause, context):
            return [found]
    steps = read_step(clause, context)
    if steps:
        return steps
    for reader in (
        read_settings,
        read_pause,
        read_move,
        read_start,
        read_change,
        read_word,
        questions.read_plain,
        questions.read_topic,
    ):
        if found := reader(clause, context):
            return [found]
    return []


def _pit_wanted(reading: Reading, clause: str, context: Context) -> Change | None:
    """«pit 110 c» before there is a fire is how hot it shall run."""
    temperatures = reading.temperatures
    if context.phase not in _SET_UP or [t.probe for t in temperatures] != [Probe.PIT] or not temperatures[0].unit:
        return None
    return Change({"pit_c": measures.to_house(temperatures[0].value, temperatures[0].unit)})


def _about_batch(plain: str, context: Context) -> tuple[str | None, str]:
    """The batch that a line names, and the line without its name."""
    if len(context.batches) < 2:
        return None, plain
    hits = [(key, name.lower()) for key, name in context.batches if re.search(rf"\b{re.escape(name.lower())}\b", plain)]
    if len(hits) != 1:
        return None, plain
    key, name = hits[0]
    rest = re.sub(rf"\b(?:(?:for|of|on) )?(?:the )?{re.escape(name)}\b[:,]?", " ", plain, count=1)
    return key, " ".join(rest.split())


def _is_nothing(intent: Intent) -> bool:
    return intent == Unclear("word", getattr(intent, "text", "")) or isinstance(intent, Greet)


def _merged(intents: list[Intent]) -> list[Intent]:
    """Readings, changes and settings that follow each other, as one each."""
    out: list[Intent] = []
    for intent in intents:
        joined = _joined(out[-1], intent) if out else None
        if joined is None:
            out.append(intent)
        else:
            out[-1] = joined
    return out


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
        case StepDone(), StepDone() if one == two:
            return one
        case _:
            return None


def _nothing(plain: str, shown: str, context: Context, out: list[Intent]) -> list[Intent]:
    """Nothing was understood: a greeting, a bare word or number to ask about, or a question for the entries."""
    greeting = next((i for i in out if isinstance(i, Greet)), None)
    if greeting:
        return [greeting]
    if measures.number(plain) is not None:
        return [Unclear("number", shown[:60])]
    return [Unclear("word", shown[:60])] if len(plain.split()) == 1 else [Question(shown)]


def kinds(intents: list[Intent]) -> Iterator[str]:
    """The names of the intents, for a log without contents."""
    return (type(intent).__name__ for intent in intents)


__all__ = ["LONGEST", "Cancel", "Choose", "Correct", "normal", "read"]
