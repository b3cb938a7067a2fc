"""A quantity that is wanted in another unit: «203 f to celsius», «how many pounds is 4.5 kilos»."""

from typing import Final

from bot import measures
from core import patterns as re

UNITS: Final = {
    "c": r"c|celsius|centigrade|°c", "f": r"f|fahrenheit|°f", "kg": r"kg|kilos?|kilograms?", "g": r"g|grams?",
    "lb": r"lbs?|pounds?", "oz": r"oz|ounces?", "mm": r"mm|millimet\w+", "cm": r"cm|centimet\w+", "in": r"inch(?:es)?",
    "l": r"l|lit(?:er|re)s?", "ml": r"ml|millilit\w+", "gal": r"gal|gallons?", "qt": r"qts?|quarts?", "cup": r"cups?",
    "pt": r"pints?",
    "tbsp": r"tbsps?|tablespoons?", "tsp": r"tsps?|teaspoons?",
}  # fmt: skip
_WORD: Final = "|".join(f"(?P<{unit}>{words})" for unit, words in UNITS.items())
_INTO: Final = (
    re.compile(rf"\b(?:to|in|into|as|is)\s+(?:how many |what in )?(?:{_WORD})[ ?.]*$"),
    re.compile(rf"^(?:so )?how (?:many|much) (?:{_WORD}) (?:is|are|in|to|makes?|equals?) (?:an? )?\d"),
    re.compile(rf"\b(?:is|are|makes?) (?:that |it )?how many (?:{_WORD})\b"),
    re.compile(rf"\bhow many (?:{_WORD}) (?:is|are|makes?) (?:that|it|this|those)[ ?.]*$"),
    re.compile(rf"\b(?:whats?|how many|how much)(?: (?:is|are))?(?: (?:that|it|this))?(?: in)? (?:{_WORD})[ ?.]*$"),
)
_ASKED_ALONE: Final = re.compile(  # «recipe says 110 celsius pit whats that»: what is left without the quantity
    r"^(?:(?:so|and|my|the|an?|this|recipe|book|label|packet|instructions?|video|dial|gauge|it|he|she|they|says?|said"
    r"|calls? for|wants?|reads?|is|at|of|pit|oven|smoker|fridge|grill|temp(?:erature)?) )*~"
    r"(?: (?:pit|oven|smoker|core|internal|fridge|grill|temp(?:erature)?|thick|long|water|meat|of|or so))*,?"
    r" (?:whats?|what is|how (?:much|hot|cold|big|thick|long|heavy) is)(?: (?:that|it|this))?"
    r"(?: (?:in|for) (?:real|normal|proper|american|us|imperial|metric|our|my|old)(?: (?:money|units?|numbers?|degrees?"
    r"|terms))?| for us| for me)?[ ?.]*$"
)
_BARE_DEGREES: Final = re.compile(  # «whats 195 in c»: then it is the other unit that it has
    r"^(?:so |and )?(?:(?:whats?|what is|how (?:hot|much) is) )?(?P<n>\d{2,3}) (?:in|to|as) "
    r"(?:(?P<c>c|celsius|centigrade)|f|fahrenheit)[ ?.]*$"
)
_INTO_BEHIND: Final = re.compile(rf" ?(?:to|in|into|as) (?:{_WORD})\b")  # «121 c in f for the pit»
_BARE_BEHIND: Final = re.compile(  # «68c fahrenheit?»
    r" (?:(?P<f>fahrenheit)|(?P<c>celsius|centigrade)|(?P<lb>pounds)|(?P<kg>kilos|kilograms)|(?P<in>inches))[ ?.]*$"
)
_BARE_UNITS: Final = (re.compile(rf"[ ,]*(?:{_WORD})[ ?.]*$"), re.compile(rf"^(?:{_WORD}) (?:in|of|for|is) $"))
_OTHER: Final = {
    "c": "f", "f": "c", "kg": "lb", "lb": "kg", "g": "oz", "oz": "g", "mm": "in", "cm": "in", "in": "cm",
    "l": "qt", "qt": "l", "gal": "l", "pt": "l", "ml": "cup", "cup": "ml", "tbsp": "ml", "tsp": "ml",
}  # fmt: skip
_CONVERT: Final = re.compile(
    r"^(?:please |can you |pls )*convert\b|\bin (?:metric|american|us units|imperial|british)\b"
)


_OF_SOMETHING: Final = re.compile(
    r"\b(?:rub|salt|sugar|cure|curing|pink|prague|nitrite|spices?|pepper|coriander|dose|need|water|ice)\b"
)


_CURE_WANTED: Final = re.compile(  # «3 lb 4 oz of loin how much prague 1 in grams»: a dose
    r"\bhow (?:much|many g(?:rams?)? of) (?:of )?(?:the )?(?:cure|curing|pink|prague|nitrite)\b"
)
_COMPARED: Final = re.compile(  # «4c is that under 40»: held against a number of the other unit
    r"(?P<a>-?\d{1,3}(?:\.\d)?) ?°?(?P<unit>[cf])\b,? (?:is (?:that|it|this)|does that make it|so) "
    r"(?:still |already )?(?P<word>under|below|less than|colder than|over|above|more than|hotter than|warmer than) "
    r"(?P<b>\d{1,3})(?: ?°? ?(?P<other>[cf])| degrees)?[ ?.]*$"
)


def compared(text: str) -> tuple[float, str, float, bool] | None:
    """A temperature that is held against a bare number of the other unit: value, unit, number, whether it is below."""
    found = _COMPARED.search(text) if "is" in text or "so" in text else None
    if found is None or found["other"] == found["unit"]:
        return None
    return float(found["a"]), found["unit"], float(found["b"]), found["word"] in _BELOW


_SAME: Final = re.compile(r"\b(?:the )?same (?:as|thing as)\b|\bequals?\b|\bequal to\b|\bequivalent\b| = ")


def same(text: str) -> tuple[measures.Measure, str] | None:
    """«is 88 c the same as 190 f»: the first of two quantities of one kind, and the unit of the second."""
    found = measures.find(text) if _SAME.search(text) else []
    alike = len(found) == 2 and found[0].kind == found[1].kind and found[0].unit != found[1].unit
    return (found[0], found[1].unit) if alike else None


_BELOW: Final = ("under", "below", "less than", "colder than")


def _unit_alone(text: str, m: measures.Measure) -> str | None:
    """«325 f c», «lb in 2.75 kg»: a quantity, another unit, and nothing else."""
    before, behind = text[: m.start], text[m.end :]
    found = (not before and _BARE_UNITS[0].match(behind)) or (not behind.strip(" ?.") and _BARE_UNITS[1].match(before))
    return found.lastgroup if found else None


_EQUALS: Final = re.compile(r" ?= ?\?+ ?(?=[a-z])")  # «165 f = ?c»
_POUNDS_AND: Final = re.compile(r"(\d ?(?:lbs?|pounds?) (?:and )?\d{1,2})(?= (?:in|to|as) (?:g|grams?|kg|kilos?)\b)")
_STONE: Final = re.compile(r"(?<=\d) ?st\b(?=.*\b(?:kg|kilos?|lbs?|pounds?)\b)")  # «14 st pig is how many kg»
_IN_IN: Final = re.compile(r"(?<=\d )in(?= (?:in|to) (?:mm|cm)\b)")  # «2 in in mm»


_FROM: Final = re.compile(r"(?<![\w.])(?P<from>\d{2,3})(?: ?°?(?:f|c)\b)? ?(?:-|–|to|up to|and|through) ?(?=\d{2,3}\b)")
_NO_DEGREES: Final = (
    r"(?![\w.:%]| ?(?:am|pm|oclock|min\w*|h|hrs?|hours?|g|grams?|kg|kilos?|lbs?|pounds?|oz|mm|cm|people|days?)\b)"
)
_TWO: Final = re.compile(  # «pit at 275 and pull at 195, whats that in celsius»
    rf"(?<![\w.])(?P<a>\d{{2,3}})(?: ?°? ?(?P<ua>[cf]))?\b{_NO_DEGREES}[^\d]{{3,34}}?(?<![\w.])"
    rf"(?P<b>\d{{2,3}})(?: ?°? ?(?P<ub>[cf]))?\b{_NO_DEGREES}[^\d]*?"
    r"\b(?:whats?|what (?:is|are)|how (?:hot|much) is)\b"
    r"(?:,? (?:that|it|they|those|both|these|is|are|in|for|real|proper|normal|old|new|money|our|my|us|american|british"
    r"|degrees|temps?|well|to|as))*"
    r"(?:,? ?\b(?:(?P<c>c|celsius|centigrade)|(?P<f>f|fahrenheit)))?(?: i mean| please|[ ?.!])*$"
)
_LEAST_F, _MOST_C = 130, 180  # two bare degrees of a cook are °F from here on, °C up to here


_AND_ANOTHER: Final = re.compile(  # «107c in f? and 63c»
    r"(?<![\w.])(?P<a>\d{2,3}) ?°?(?P<ua>[cf]) (?:in|to|as) (?:f|c|fahrenheit|celsius)[ ?,.]*(?:and|n|also|plus|&) "
    r"(?P<b>\d{2,3}) ?°?(?P=ua)?[ ?.]*$"
)


_WANTED: Final = re.compile(r"\b(?:in|to|into|as) (?:(?P<c>c|celsius|centigrade)|f|fahrenheit)\b")


def _marked_pair(text: str, wanted: str) -> str:
    """«107c whats that in f, and the pull 68 c»: two of the other unit and no figure else, as a spread; else ""."""
    found = [m for m in measures.find(text) if m.kind == "temperature"]
    alike = len(found) == 2 and {m.unit for m in found} == {_OTHER[wanted]}
    if not alike or len(re.findall(r"\d+(?:\.\d+)?", text)) != 2:
        return ""
    return f"{found[0].typed:g} to {found[1].typed:g} {_OTHER[wanted]} in {wanted}"


_TWO_BEHIND: Final = re.compile(  # «what is 275 f and 225»
    r"\b(?:whats|what is|what are|convert) (?P<a>\d{2,3}) ?°?(?P<ua>[cf])?(?: pit)?,? (?:and|n|&|or|to) "
    r"(?P<b>\d{2,3}) ?°?(?P<ub>[cf])?(?: (?:in|to) (?:(?P<c>c|celsius|centigrade)|(?P<f>f|fahrenheit)))?[ ?.]*$"
)


def _two_degrees(text: str) -> str:
    """Two temperatures of one line that are wanted in the other unit, as a spread of them."""
    if another := _AND_ANOTHER.search(text):
        return f"{another['a']} to {another['b']} {another['ua']} in {_OTHER[another['ua']]}"
    if (wanted := _WANTED.search(text)) and (pair := _marked_pair(text, "c" if wanted["c"] else "f")):
        return pair
    found = (_TWO.search(text) or _TWO_BEHIND.search(text)) if "in" in text or "what" in text else None
    if found is None:
        return text
    a, b = int(found["a"]), int(found["b"])
    told = found["ua"] or found["ub"] or ("f" if found["c"] else "c" if found["f"] else None)
    unit = told or ("f" if min(a, b) >= _LEAST_F else "c" if max(a, b) <= _MOST_C and min(a, b) < 100 else None)
    return f"{a} to {b} {unit} in {_OTHER[unit]}" if unit else text


_PLEASE: Final = re.compile(r",? (?:please|pls|plz|thanks|thx)[ .!]*$")


def spread_from(text: str) -> float | None:
    """The lower end of a spread of degrees that is wanted in the other unit: «235 to 270 in celsius»."""
    found = _FROM.search(_two_degrees(text))
    return float(found["from"]) if found else None


def converted(text: str) -> tuple[measures.Measure, str] | None:
    """A quantity and the unit that is wanted of it: «203 f to celsius», «how many pounds is 4.5 kilos».

    Of a spread the upper end; `spread_from` has the other.
    """
    text = _PLEASE.sub("", _FROM.sub("", _two_degrees(text)))
    if _CURE_WANTED.search(text):
        return None
    if held_against := same(text):
        return held_against
    text = _POUNDS_AND.sub(r"\1 oz", text)
    text = _IN_IN.sub("inch", _STONE.sub(" stone", _EQUALS.sub(" in ", text)))
    text = _BARE_DEGREES.sub(lambda m: f"{m['n']} {'f in c' if m['c'] else 'c in f'}", text)
    found = measures.find(text)
    into = _INTO if _OF_SOMETHING.search(text) is None else _INTO[:-1]  # «rub for 3.5 kg how many grams»
    wanted = next(
        (unit for words in into for m in words.finditer(text) for unit, word in m.groupdict().items() if word), None
    )
    if wanted is None and len(found) == 1:
        behind = _INTO_BEHIND.match(text, found[0].end) or _BARE_BEHIND.match(text, found[0].end)
        wanted = behind.lastgroup if behind else _OTHER.get(found[0].unit) if _wants_the_other(text, found[0]) else None
    if wanted is None and len(found) == 1:
        wanted = _unit_alone(text, found[0])
    if wanted is None or len(found) != 1 or found[0].unit == wanted:
        return None
    return (found[0], wanted) if _kind(wanted) == found[0].kind else None


_PER_KILO: Final = re.compile(  # «30 g per kg is what percent»
    r"^(?:(?:whats?|what is|how much is) )?(?P<n>\d{1,3}(?:\.\d{1,2})?) ?g(?:rams?)? ?(?:per|a|/|to the|each) ?"
    r"(?:kg|kilo)\b.{0,8}(?:what|how many|in) (?:%|percent|pct)\W*$"
)


def per_kilo(text: str) -> float | None:
    """Grams for a kilo, where they are wanted in percent."""
    found = _PER_KILO.match(text) if "k" in text else None
    return float(found["n"]) if found else None


_SHARE_OF: Final = re.compile(  # «0.25 % of 2268 g»: so little is no plain salt
    r"^(?:(?:so )?(?:whats?|what is|how (?:much|many grams?) is|calculate) )?"
    r"(?P<n>0?\.\d{1,3}) ?(?:%|percent|pct) of (?=\d)"
)


_IN_GRAMS: Final = re.compile(r"^ (?:in|as) (?:g|grams)\b")


def share_of(text: str) -> tuple[float, measures.Measure] | None:
    """A small share of one mass, and nothing else: «0.25 % of 2268 g». [%]"""
    found = _SHARE_OF.match(text) if " of " in text else None
    masses = [m for m in measures.find(text) if m.kind == "mass"] if found else []
    alone = len(masses) == 1 and not _IN_GRAMS.sub("", text[masses[0].end :]).strip(" ?.!")
    return (float(found["n"]), masses[0]) if found and alone else None


def _wants_the_other(text: str, told: measures.Measure) -> bool:
    """Whether a quantity is wanted in the units of elsewhere, without a name for them."""
    return bool(_CONVERT.search(text) or _ASKED_ALONE.match(f"{text[: told.start]}~{text[told.end :]}"))


def in_pounds_and_ounces(text: str) -> measures.Measure | None:
    """A mass that is wanted as pounds and ounces together."""
    found = measures.find(text)
    wanted = re.search(r"(?:\b(?:in|to|into)|^[\d.]+ ?kg) (?:lbs?|pounds?) (?:(?:and|n|&) )?(?:oz|ounces?)\b", text)
    return found[0] if wanted and len(found) == 1 and found[0].kind == "mass" else None


def _kind(unit: str) -> str:
    return measures.find("1 pint" if unit == "pt" else f"1 {unit}")[0].kind
