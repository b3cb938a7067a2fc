"""Questions that bring figures of their own: which sum they ask for. What is missing for it is asked by the talk.

The words of a line say what is wanted, by their likeness to the ways in which each sum is asked for
(`core/answers/asks/sums.toml`); its figures say which sums can be meant at all: no held temperature without a
temperature, no portions without people or meat. Between entries and sums the likelier one answers.
"""

import re
from collections.abc import Callable, Mapping
from functools import lru_cache
from itertools import pairwise
from typing import Final

from bot import measures
from bot.intents.context import Context
from bot.intents.conversions import converted
from bot.intents.cures import wanted_dose
from bot.intents.intents import Ask, Intent
from bot.intents.questions import is_question
from bot.intents.told import Told, told
from core.answers.find import sum_meant
from core.units import Kilograms

_OF_THE_FIRE: Final = frozenset({"cooling", "fire_out"})
_OF_ANY_FIRE: Final = frozenset({"lethality", *_OF_THE_FIRE})  # while ours is not lit they are about another
_HOT: Final = frozenset({"cooking", "resting", "chilling"})
_ONE: Final = re.compile(
    r"(?:\b(?:an?|one) |^)(?:level )?(?=(?:cup|gallon|quart|lit(?:er|re)|kilo|pound|(?:tea|table)spoon|tsp|tbsp"
    r"|minute|hour|week)\b)"
)
_LEVEL: Final = re.compile(r"\b(\d[\d./]*) (?:level|flat) (?=t(?:ea|able)?sp)")
_PER: Final = re.compile(r"\b(per|to the|each|every) (?=(?:lit(?:er|re)|gallon|quart|cup)\b)")
_TIMED: Final = re.compile(r"\b(?:since|left out|sat out|freezer|counter|power|room temp\w*|on the table)\b")
_READ_AND_ASKED: Final = re.compile(
    r"\d{2,3}(?:\.\d)?(?: ?[cf])?,? (?:and )?how (?:much )?long(?:er)?(?: (?:now|left|still|to go))?\s*\?*"
)
_WEEKDAYS: Final = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_WEEKDAY: Final = re.compile(r"\b(?:mon|tue|wed|thu|fri|sat|sun)(?:s|r|rs|nes|ur)?(?:day)?\b")
_KEPT: Final = re.compile(
    r"^(?!.*\b(?:fr[oe]ez|frozen)).*\b(?:ok|okay|safe|good|fine|eat|old|still|fridge|leftovers?)\b"
)
_COOLING: Final = re.compile(r"\b(?:cool\w*|chill\w*|overnight|next morning|took|down to)\b")
_FUEL: Final = re.compile(
    r"\b(?:charcoal|coals?|lump|briq\w*|propane|gas|pellets?|fuel|wood|bags?|sacks?|bottles?|tank|kwh)\b"
)
_RUBBED: Final = re.compile(r"\b(?:rub\w*|season\w*|pepper|coriander|crust|spic\w+|mix)\b")
_SLICE: Final = re.compile(r"\b(?:slices?|serving|portion|sandwich|plate)\b")
_NOT_OURS: Final = re.compile(
    r"[$€£]|\b(?:euros?|dollars?|bucks|costs?|price|cheap\w*|fever|bab(?:y|ies) weigh\w*|ibuprofen|paracetamol|medicine"
    r"|miles?|km|kilometres|calories|kcal|protein|carbs|(?:how (?:much|many)|boil|cook|bake) (?:\w+ ){0,3}"
    r"(?:beers?|wine|eggs?|potatoes|rice|pasta|noodles|bread|cake|salad|flour|beans|corn))\b"
)
_CURING: Final = re.compile(
    r"(?<!incl )(?<!including )(?<!including the )(?<!less the )(?<!in the )"
    r"\b(?:pink|nitrite|curing salt|prague|cure)\b(?!d)"
)
_REPLACED: Final = re.compile(
    r"\b(?:lost|leak\w*|spill\w*|spilt|top\w*|more|another|replace\w*|refill|dripped|make it up)\b"
)
_SALTED: Final = (0.005, 0.06)  # a share of salt that meat may have
COLDEST_PIT: Final = 80.0  # °C
SHORTEST: Final = 4  # words of a line that asks for a sum without a word of asking
_OF_HEAT: Final = frozenset({"lethality", "cooling", "fire_out", "eta"})  # no batch begins with a core
_OF_A_BATCH: Final = frozenset(
    {"keeps", "hold_for", "start_by", "light_by", "eta", "thaw"}
)  # of ours, where one is under way
# what asks without a question's words, and is said of no batch that begins
_WANTS: Final = re.compile(
    r"\b(?:what|when|how|times?|hours for|amount|dose|ppm|weigh|weight (?:of|after)|cooked weight|yield|shrink\w*"
    r"|thaw\w*|portions?|servings?|serves|feeds|defrost\w*|sodium|salometer|salinometer|boil\w*|altitude|convert|final"
    r"|left after|(?:rub|spice|salt|sugar|ice|charcoal|lump|fuel|cure|pellets|bag|tub|bucket|water)"
    r" (?:size |needed )?for|per (?:slice|portion|serving)|in (?:a|one|1) [\w .]{0,8}(?:slice|portion|serving)"
    r"|need \d[\d.]*(?![\d.]| ?(?:kg|kilo|lb|pound|g\b))|cure total|total cure|instead|only (?:got|shows|have)"
    r"|in (?:grams?|g|ml|spoons|tsp|teaspoons)|need for|needed for|will \d|recipe (?:is )?for)\b"
)
_OFTEN_BARE: Final = frozenset({"dose", "shopping", "days", "fuel", "thaw"})  # asked for without any figure
_LATER: Final = re.compile(
    r"\bfor (?:the |next )?(?:\w{3,6}day|tomorrow|tonight|\d{1,2}(?:th|st|nd|rd)\b|xmas|christmas"
    r"|\d{1,2} (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec))"
)


def read_sum(text: str, context: Context) -> Intent | None:
    """A question that a sum answers, where a plain text is one."""
    if context.phase in _HOT and _READ_AND_ASKED.fullmatch(text):
        return None  # «71 how long»: what was read, and the question when it will be ready
    kind = _elsewhere(text) if context.phase == "none" else _beside_a_batch(text, context.phase in _HOT)
    kind = _by_the_law(text, kind)
    return Ask("sum", kind, text) if kind else None


def _elsewhere(text: str) -> str | None:
    return sum_of(text) or (sum_of(text, unread=True) if len(text.split()) >= SHORTEST else None)


def _beside_a_batch(text: str, hot: bool) -> str | None:
    """A sum where a batch is under way: what is told without asking is about another only while ours is not lit."""
    kind = sum_of(text, elsewhere=False)
    if not is_question(text) and (hot or kind not in _OF_ANY_FIRE):
        return None
    recorded = hot and kind in _OF_THE_FIRE and len(told(text).clocks) > 1  # two readings with their hours
    return None if recorded else kind


def read_sum_first(text: str, context: Context) -> Intent | None:
    """A sum whose masses and percentages would else be taken for those of a new batch."""
    if context.phase != "none" or context.asked is not None or _LATER.search(text) or _THAWED.search(text):
        return None
    return Ask("sum", kind, text) if (kind := _by_the_law(text, sum_of(text))) else None


def _by_the_law(text: str, kind: str | None) -> str | None:
    """Nothing for a dose that names its own way, which is answered by the law of the place."""
    return None if kind == "dose" and wanted_dose(text) is not None else kind


_THAWED: Final = re.compile(r"\b(?:already|fully|its|is|all|now) (?:thawed|defrosted)\b")  # asks for no thawing


@lru_cache(maxsize=64)  # the readers of one line ask again
def sum_of(text: str, elsewhere: bool = True, unread: bool = False) -> str | None:
    """The sum that a plain text asks for.

    `elsewhere` says that no batch is under way that the line may be about, `unread` that it begins none either.
    """
    text = figured(text)
    if converted(text) is not None:
        return "convert"
    line, asks = told(text), is_question(text)
    bare = not re.search(r"\d", text) and days_kept(line) is None
    if bare and not (asks and elsewhere):
        return None
    if _NOT_OURS.search(text):
        return None
    possible = [kind for kind, fits in _FITS.items() if (kind in _OFTEN_BARE if bare else fits(line))]
    if not (asks or unread or _WANTS.search(text)):
        possible = [kind for kind in possible if kind in _OF_HEAT]
    if not elsewhere:
        possible = [kind for kind in possible if kind not in _OF_A_BATCH]
    return sum_meant(text, possible, asks, surely=bare) if possible else None


def figured(text: str) -> str:
    """«a level tablespoon of salt», «80 g per litre» with their figures."""
    return _LEVEL.sub(r"\1 ", _PER.sub(r"\1 1 ", _ONE.sub("1 ", text)))


def spoonful(text: str) -> measures.Measure | None:
    """What is told by the cup or the spoon."""
    found = [m for m in measures.find(text) if m.unit in ("tsp", "tbsp", "cup")]
    return found[0] if found else None


def masses(text: str) -> list[Kilograms]:
    """All that is told by its weight."""
    return [m.value for m in measures.find(text) if m.kind == "mass"]


def salt_share(line: Told) -> float | None:
    """The share of salt that is wanted, where it is one that meat may have."""
    return next((f for f in line.fractions if _SALTED[0] <= f <= _SALTED[1]), None)


def rate(text: str) -> float | None:
    """Curing salt for a kilo of meat, as «25 g per kilo». [kg/kg]"""
    found = re.search(r"\b(\d+(?:\.\d+)?) ?g(?:rams?)? (?:per|a|for each|to the|/) ?(?:kg|kilo)", text)
    return float(found[1]) / 1000.0 if found else None


def bare_grams(text: str) -> float | None:
    """A dose without its unit, as «need 4.3». [g]"""
    found = re.search(r"\bneed (\d{1,3}(?:\.\d{1,2})?)(?![\d ]*(?:kg|lb))", text)
    return float(found[1]) if found else None


def days_kept(line: Told) -> float | None:
    """How many days something has been kept: told, or from one day of the week to a later one."""
    told_ = [hours / 24.0 for hours in line.durations if hours >= 24.0]
    named = [_WEEKDAYS.index(found[0][:3]) for found in _WEEKDAY.finditer(line.text)]
    if told_ or len(named) < 2:
        return next(iter(told_), None)
    return float((named[1] - named[0]) % 7 or 7)


def between(line: Told) -> float | None:
    """The hours from the first hour of the day that is told to the last, else the time that is told. [h]"""
    if len(line.clocks) < 2:
        return line.hours
    round_ = 12.0 if line.half_told else 24.0
    return (line.clocks[-1] - line.clocks[0]) % round_


def _has_cure(line: Told) -> bool:
    return line.has("cure") or line.has("spoons") or rate(line.text) is not None


def _is_mix(line: Told) -> bool:
    return rate(line.text) is not None or (line.has("meat") and (_has_cure(line) or spoonful(line.text) is not None))


def _falls(line: Told) -> bool:
    """Temperatures of which each is colder than the one before, with how long it took."""
    hot = line.temperatures
    falls = len(hot) > 1 and all(a > b for a, b in pairwise(hot))
    return falls and (len(line.clocks) > 1 or line.has("hours")) and hot[0] <= 105.0


def _cools(line: Told) -> bool:
    """A fall, or one reading that is colder than hot meat, hours after a first clock."""
    one = len(line.temperatures) == 1 and line.temperatures[0] < 45.0
    timed = len(line.clocks) > 1 or (line.has("hours") and bool(_COOLING.search(line.text)))
    return _falls(line) or (one and timed)


def _rises(line: Told) -> bool:
    hot = line.temperatures
    return len(hot) > 2 and hot[0] < hot[1] < hot[-1]


def _held(line: Told) -> bool:
    """One temperature of a core, for a time or to ask for how long."""
    one = len(line.temperatures) == 1 and 45.0 <= line.temperatures[0] <= 80.0
    timed = line.has("hours") or "how long" in line.text or "how many min" in line.text
    return one and timed and not _TIMED.search(line.text) and not line.has("meat")


def _is_salted(line: Told) -> bool:
    """Plain salt as a share of meat; never where curing salt is what is asked for."""
    named = "salt" in line.text or salt_share(line) is not None
    return named and line.has("meat") and not line.has("salt") and not _CURING.search(line.text)


def _is_body(line: Told) -> bool:
    return line.has("meat") or line.has("length")


# what each sum cannot do without; the rest is asked for
_FITS: Final[Mapping[str, Callable[[Told], bool]]] = {
    "dose": lambda line: not _has_cure(line),
    "ppm": _is_mix,
    "nitrite_in": lambda line: line.has("cure") or line.has("spoons") or line.has("meat"),
    "salt_for": _is_salted,
    "sugar": lambda line: line.has("meat"),
    "brine": lambda line: line.has("fractions") and not line.has("meat"),
    "salometer": lambda line: bool(re.search(r"\bsali?n?o", line.text)),
    "equilibrium": lambda line: line.has("salt") and (line.has("water") or line.has("meat")),
    "dilute": lambda line: line.has("water", "fractions"),
    "topup": lambda line: line.has("water") and bool(_REPLACED.search(line.text)),
    "fish_brine": lambda line: line.species == "fish" and line.has("meat"),
    "days": _is_body,
    "start_by": _is_body,
    "cook": lambda line: _is_body(line) and (not line.temperatures or max(line.temperatures) >= COLDEST_PIT),
    "light_by": lambda line: line.has("clocks") and (_is_body(line) or line.has("hours")),
    "eta": _rises,
    "shopping": lambda line: line.has("people") or line.has("each") or line.has("meat"),
    "portions": lambda line: line.has("meat"),
    "yield": lambda line: line.has("meat"),
    "loss": lambda line: len(line.meats) == 2,
    "thaw": lambda line: line.has("meat"),
    "scale": lambda line: len(masses(line.text)) + (bare_grams(line.text) is not None) >= 2,
    "tsp_of": lambda line: any(m < 0.1 for m in masses(line.text)) and not line.has("meat"),
    "spoons": lambda line: spoonful(line.text) is not None and not line.has("meat"),
    "recipe": lambda line: len(line.meats) >= 2,
    "rub": lambda line: line.has("meat") and bool(_RUBBED.search(line.text)),
    "spice": lambda line: line.has("meat"),
    "brine_amount": lambda line: line.has("meat"),
    "inject": lambda line: line.has("meat") and "days" not in line.text,
    "lethality": _held,
    "cooling": lambda line: _cools(line) and not _TIMED.search(line.text),
    "fire_out": lambda line: len(line.temperatures) > 1 and (len(line.clocks) > 1 or line.has("hours")),
    "chill": _is_body,
    "ice": lambda line: line.has("meat"),
    "fuel": lambda line: bool(_FUEL.search(line.text)),
    "altitude": lambda line: line.has("height"),
    "sodium": lambda line: line.has("meat") or bool(_SLICE.search(line.text)),
    "steam": lambda line: line.has("meat"),
    "keeps": lambda line: days_kept(line) is not None and bool(_KEPT.search(line.text)),
    "hold_for": lambda line: (
        (line.has("temperatures") or line.has("hours")) and not (_falls(line) or _TIMED.search(line.text))
    ),
}
