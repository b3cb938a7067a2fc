"""Questions that bring figures of their own: which sum they ask for. What is missing for it is asked by the talk."""

import re
from typing import Final

from bot import measures
from bot.intents.context import Context
from bot.intents.cures import wanted_dose
from bot.intents.intents import Ask, Intent
from bot.intents.questions import is_question
from bot.intents.told import Told, told

UNITS: Final = {
    "c": r"c|celsius|centigrade|°c", "f": r"f|fahrenheit|°f", "kg": r"kg|kilos?|kilograms?", "g": r"g|grams?",
    "lb": r"lbs?|pounds?", "oz": r"oz|ounces?", "mm": r"mm|millimet\w+", "cm": r"cm|centimet\w+", "in": r"inch(?:es)?",
    "l": r"l|lit(?:er|re)s?", "ml": r"ml|millilit\w+", "gal": r"gal|gallons?", "qt": r"qts?|quarts?", "cup": r"cups?",
    "tbsp": r"tbsps?|tablespoons?", "tsp": r"tsps?|teaspoons?",
}  # fmt: skip
_WORD: Final = "|".join(f"(?P<{unit}>{words})" for unit, words in UNITS.items())
_INTO: Final = (
    re.compile(rf"\b(?:to|in|into|as|is)\s+(?:how many |what in )?(?:{_WORD})[ ?.]*$"),
    re.compile(rf"^(?:so )?how (?:many|much) (?:{_WORD}) (?:is|are|in|to|makes?|equals?) (?:an? )?\d"),
    re.compile(rf"\b(?:is|are|makes?) (?:that |it )?how many (?:{_WORD})\b"),
)
_OTHER: Final = {
    "c": "f", "f": "c", "kg": "lb", "lb": "kg", "g": "oz", "oz": "g", "mm": "in", "cm": "in", "in": "cm",
    "l": "qt", "qt": "l", "gal": "l", "ml": "cup", "cup": "ml", "tbsp": "ml", "tsp": "ml",
}  # fmt: skip
_CONVERT: Final = re.compile(
    r"^(?:please |can you |pls )*convert\b|\bin (?:metric|american|us units|imperial|british)\b"
)
_MEATY: Final = r"(?:meat|brisket|pastrami|ham|pork|beef|bacon|turkey|chicken|salmon|flat|packer)"
_CURE: Final = (
    r"(?:cure|curing salt|pink salt|pink curing salt|nitrite|nitrite salt|prague powder|cure ?#? ?1"
    r"|(?:number|no|nr|#) ?1|pink stuff)"
)
# sum -> (its words, what has to be told for it to be meant)
_WORDS: Final = (
    ("altitude", r"\bboil\w*|\baltitude\b|\belevation\b|\bsea level\b", ("height",)),
    ("salometer", r"\bsalometer\b|\bsalinometer\b", ()),
    ("dose", r"\b(?:how (?:much|many)|grams?|dose)\b.*\d ?(?:ppm\b|mg/kg\b)", ()),
    ("ppm", r"\bppm\b|\bmg/kg\b|\b(?:per|a) (?:kilo|kg)\b.*\bcure\b", ("mix",)),
    ("scale", r"\bscale\b", ("grams",)),
    ("thaw", r"\b(?:thaw|defrost)\w*\b|\b(?:frozen|turkey|chicken)\b.*\bin cold water\b.*\b(?:how long|time)\b",
     ("meat",)),
    ("sodium", r"\bsodium\b(?! nitr)|\bhow much salt (?:is|do i eat|am i eating)\b"
               r"|\bsalt (?:is )?(?:in|per|of) (?:a|an|one|each|my|1)? ?(?:\d+ ?g\w* )?(?:slice|serving|portion|plate)",
     ()),
    ("fish_brine", r"\bbrine\b|\bhow much salt\b", ("fish", "meat")),
    ("equilibrium", r"\bsalty\b|\bsalinity\b|\bpercent\b|\bhow strong\b|\bwhat strength\b|\bfinal\b|\bend\b|\bsalt"
                    r" (?:level|content|share|%|percentage|in the (?:end|meat))", ("salt", "water")),
    ("equilibrium", r"", ("salt", "water", "meat")),
    ("salt_for", r"^(?!.*\b(?:nitrite|cure|curing|pink|dose|inject\w*)\b).*\bsalt\b", ("share", "meat")),
    ("brine", r"\bhow much salt\b|\bsalt for\b|\bgrams of salt\b|\b% brine\b", ("fractions", "water")),
    ("dose", rf"\b(?:how much|how many (?:grams|g)|grams? of|dose|amount(?: of)?|need)\b.*(?<!\w){_CURE}(?!\w)"
             rf"|(?<!\w){_CURE}(?!\w).*\b(?:how (?:much|many)|dose|amount|grams)\b|\bhow many grams\b.*\b6\.25\b",
     ("meat",)),
    ("rub", r"\brub\b|\bpickling spice\b|\bhow much spice\b", ("meat",)),
    ("shopping", r"\bhow (?:much|big|heavy|large|many (?:kilos?|kg|pounds|lbs?))\b|\bbuy\b|\bfeed\b", ("people",)),
    ("portions", r"\bhow many (?:portions?|people|servings?|sandwiches|guests|will it feed)\b|\bfeeds? how many\b"
                 r"|\bserves?\b|\benough for how many\b",
     ("meat",)),
    ("yield", r"\bhow much (?:is|will be|meat is|do i have) left\b|\bleft (?:after|over)\b|\byield\b|\bshrink\w*\b"
              r"|\bweigh (?:after|when|cooked)\b|\bcooked weight\b|\bhow much (?:\w+ )?cooked\b"
              r"|\bonce (?:its )?cooked\b"
              r"|\bafter (?:the )?(?:smoking|cooking|smoke|cook)\b.*\bhow much\b", ("meat",)),
    ("fire_out", r"\bfire\b|\bwent out\b|\bdied\b|\bsmoker (?:is )?(?:off|cold|out)\b", ("lost",)),
    ("cooling", r"\bok\b|\bsafe\b|\btook\b|\bcool\w*\b|\bfast enough\b|\bat\b|\bdown to\b|\btoo slow\b|\bdropped\b",
     ("fall",)),
    ("chill", r"\bice bath\b|\bice water\b|\bcool\w*\b|\bchill\w*\b|\bget(?:s)? cold\b", ("body",)),
    ("lethality", r"\bok\b|\bsafe\b|\benough\b|\bhow long\b|\bfor \d+ ?min|\bheld\b|\bdone\b|\bkill\w*\b|\bsat at\b",
     ("held",)),
    ("fuel", r"\bcharcoal\b|\bfuel\b|\blump\b|\bbriquettes?\b|\bpropane\b|\bpellets?\b|\bcoal\b", ("hours",)),
    ("cook", r"\b(?:how long|how many hours|hours|when|time)\b.*\b(?:smok\w+|cook\w*|grill|pit|at \d{2,3})\b"
             r"|\b(?:smok\w+|cook\w*)\b.*\b(?:how long|hours|time)\b|\bat \d{2,3}\b.*\b(?:how long|how many hours)\b",
     ("body",)),
    ("days", r"\bhow (?:long|many days)\b|\bdays\b|\bcur(?:e|ing) time\b|\bwhen (?:do i |should i |must i |to )?start\b"
             r"|\bwhen (?:is it |will it be )?(?:done|ready)\b", ("body",)),
)  # fmt: skip
_COMPILED: Final = tuple((kind, re.compile(words), needs) for kind, words, needs in _WORDS)
# asked for without any figure, where no batch is under way: then the first of them is asked
_BARE: Final = (
    ("dose", re.compile(rf"^how (?:much|many grams of) {_CURE}"
                        r"(?: (?:do|should|must) (?:i|we) (?:need|use|add|take|put in))?[ ?]*$")),
    ("shopping", re.compile(rf"^how (?:much|many kilos of) (?:raw )?{_MEATY}"
                            r" (?:do|should) (?:i|we) (?:buy|need|get)[ ?]*$")),
    ("days", re.compile(r"^how (?:long|many days) (?:do i|should i|must i|to|does it take to|do we) (?:cure|brine)"
                        rf"(?: (?:a|an|the|my|it|pork|beef))*(?: {_MEATY})?[ ?]*$")),
    ("fuel", re.compile(r"^how much (?:charcoal|fuel|propane|coal) (?:do|will|should) (?:i|we) need[ ?]*$")),
    ("thaw", re.compile(rf"^how long (?:does|do|will) (?:it|a|my|the) ?{_MEATY}? ?(?:take )?"
                        r"(?:to )?(?:thaw|defrost)[ ?]*$")),
)  # fmt: skip
_OF_THE_FIRE: Final = frozenset({"cooling", "fire_out"})
_OF_ANY_FIRE: Final = frozenset({"lethality", *_OF_THE_FIRE})  # while ours is not lit they are about another
_HOT: Final = frozenset({"cooking", "resting", "chilling"})
_SPOON_OF_SALT: Final = re.compile(r"\b(?:salt|cure)\b")
_ONE: Final = re.compile(
    r"(?:\b(?:an?|one) |^)(?:level )?(?=(?:cup|gallon|quart|lit(?:er|re)|kilo|pound|(?:tea|table)spoon|tsp|tbsp"
    r"|minute|hour)\b)"
)
_LATER: Final = re.compile(
    r"\bfor (?:the |next )?(?:\w{3,6}day|tomorrow|tonight|\d{1,2}(?:th|st|nd|rd)? \w{3,9}|xmas|christmas)\b"
)
_TIME_OF: Final = re.compile(r"\b(?:smok|cook)\w* times?\b|\bhow many hours\b")
_FIRST: Final = frozenset({"altitude", "convert", "sodium", "thaw", "equilibrium", "salt_for", "spoons"})
_TIMED: Final = re.compile(
    r"\b(?:since|left out|sat out|fire|freezer|fridge|counter|power|room temp\w*|on the table)\b"
)


_READ_AND_ASKED: Final = re.compile(
    r"\d{2,3}(?:\.\d)?(?: ?[cf])?,? (?:and )?how (?:much )?long(?:er)?(?: (?:now|left|still|to go))?\s*\?*"
)


def read_sum(text: str, context: Context) -> Intent | None:
    """A question that a sum answers, where a plain text is one."""
    if context.phase in _HOT and _READ_AND_ASKED.fullmatch(text):
        return None  # «71 how long»: what was read, and the question when it will be ready
    kind = sum_of(text)
    if context.phase != "none" and not is_question(text) and (context.phase in _HOT or kind not in _OF_ANY_FIRE):
        kind = None
    if kind in _OF_THE_FIRE and context.phase in _HOT and len(told(text).clocks) > 1:
        return None  # two readings with their hours are the record of the batch
    if kind == "dose" and wanted_dose(text) is not None:
        return None  # it names its own way, and is answered by the law of the place
    if kind is None and context.phase == "none":
        kind = next((name for name, words in _BARE if words.search(text)), None)
    return Ask("sum", kind, text) if kind else None


def read_sum_first(text: str, context: Context) -> Intent | None:
    """A sum whose masses and percentages would else be taken for those of a new batch."""
    if context.phase != "none" or context.asked is not None or _LATER.search(text):
        return None
    kind = sum_of(text)
    timed = kind == "cook" and _TIME_OF.search(text)
    return Ask("sum", kind, text) if kind in _FIRST or timed else None


def sum_of(text: str) -> str | None:
    """The sum that a plain text with figures asks for."""
    text = figured(text)
    if not re.search(r"\d", text):
        return None
    if converted(text) is not None:
        return "convert"
    line = told(text)
    if _spoonful(text):
        return "spoons"
    return next(
        (kind for kind, words, needs in _COMPILED if words.search(text) and all(_is(line, n) for n in needs)), None
    )


def figured(text: str) -> str:
    """«a tablespoon of salt» with its figure."""
    return _ONE.sub("1 ", text)


def converted(text: str) -> tuple[measures.Measure, str] | None:
    """A quantity and the unit that is wanted of it: «203 f to celsius», «how many pounds is 4.5 kilos»."""
    found = measures.find(text)
    wanted = next(
        (unit for words in _INTO for m in words.finditer(text) for unit, word in m.groupdict().items() if word), None
    )
    if wanted is None and len(found) == 1 and _CONVERT.search(text):
        wanted = _OTHER.get(found[0].unit)
    if wanted is None or len(found) != 1 or found[0].unit == wanted:
        return None
    return (found[0], wanted) if _kind(wanted) == found[0].kind else None


def _kind(unit: str) -> str:
    return measures.find(f"1 {unit}")[0].kind


def _spoonful(text: str) -> bool:
    """Salt by the cup or spoon that is wanted by weight or as another salt."""
    found = measures.find(text)
    of_salt = _SPOON_OF_SALT.search(text) and len(found) == 1 and found[0].unit in ("tsp", "tbsp", "cup")
    return bool(of_salt and re.search(r"\b(?:grams?|g|weigh\w*|table|instead|flake|only got|convert)\b", text))


def _is(line: Told, need: str) -> bool:
    match need:
        case "mix":
            return (line.has("meat") and (line.has("cure") or "tsp" in line.text)) or rate(line.text) is not None
        case "grams":
            return (
                len([m for m in measures.find(line.text) if m.kind == "mass"]) + (bare_grams(line.text) is not None)
                >= 2
            )
        case "share":
            return len([f for f in line.fractions if 0.005 <= f <= 0.06]) == 1
        case "fish":
            return line.species == "fish"
        case "fall":
            return _falls(line) and not _TIMED.search(line.text)
        case "lost":
            return _falls(line)
        case "body":
            return line.has("meat") or line.has("length")
        case "held":
            return _held(line)
        case _:
            return line.has(need)


def rate(text: str) -> float | None:
    """Curing salt for a kilo of meat, as «25 g per kilo». [kg/kg]"""
    found = re.search(r"\b(\d+(?:\.\d+)?) ?g(?:rams?)? (?:per|a|for each|to the|/) ?(?:kg|kilo)", text)
    return float(found[1]) / 1000.0 if found else None


def bare_grams(text: str) -> float | None:
    """A dose without its unit, as «need 4.3». [g]"""
    found = re.search(r"\bneed (\d{1,3}(?:\.\d{1,2})?)(?![\d ]*(?:kg|lb))", text)
    return float(found[1]) if found else None


def _falls(line: Told) -> bool:
    """Two temperatures, the later the colder, with how long it took."""
    if len(line.temperatures) != 2:
        return False
    timed = len(line.clocks) == 2 or line.has("hours")
    return timed and line.temperatures[0] > line.temperatures[1] and line.temperatures[0] <= 105.0


def _held(line: Told) -> bool:
    """One temperature of a core, for a time or to ask for how long."""
    one = len(line.temperatures) == 1 and 45.0 <= line.temperatures[0] <= 80.0
    timed = line.has("hours") or "how long" in line.text
    return one and timed and not _TIMED.search(line.text) and not line.has("meat")
