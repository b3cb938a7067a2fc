"""A number with its unit, as typed, into the units of the house, and back into a person's units.

The only module that knows pint. Its registry holds the few units a kitchen needs, is built once, under a
lock, on first use, and never reads what a person typed: `5 F` is a farad to a unit parser, `2,5 kg` is
25 kg and `1 lb 4 oz` a product. Our own pattern reads the number and the unit; pint converts.

Factors: International Yard and Pound Agreement, 1959 (exact); US customary volumes, NIST Handbook 44,
Appendix C (US gallon 231 cubic inches, exact).
"""

import threading
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Final, Literal

from bot.numerals import digits
from core import patterns as re
from core.units import celsius_from_fahrenheit

if TYPE_CHECKING:
    from pint import Unit, UnitRegistry

Kind = Literal["mass", "length", "temperature", "volume", "duration", "fraction", "ppm"]

# kind -> (the unit of the house, {unit: the words people type for it})
_WORDS: Final[dict[Kind, tuple[str, dict[str, str]]]] = {
    "mass": ("kg", {
        "kg": "kgs?|kilos?|kilograms?|kilogramm", "g": "g|gr|grams?|gramm", "lb": "lbs?|pounds?", "oz": "oz|ounces?",
        "st": "stones?",
    }),
    "length": ("m", {"mm": "mm|millimet(?:er|re)s?", "cm": "cm|centimet(?:er|re)s?", "in": "inch(?:es)?|zoll|\"|''"}),
    "temperature": ("c", {
        "c": r"(?:degrees? |deg ?|grad )?\(?° ?c\)?|(?:degrees? |deg ?|grad )?\(?(?:c|celsius|centigrade)\b\)?",
        "f": r"(?:degrees? |deg ?|grad )?\(?° ?f\)?|(?:degrees? |deg ?|grad )?\(?(?:f|fahrenheit)\b\)?",
    }),
    "volume": ("l", {
        "ml": "ml|millilit(?:er|re)s?", "l": "l|lit(?:er|re)s?", "gal": "gal|gallons?", "qt": "qts?|quarts?",
        "pt": "pints?",
        "cup": "cups?", "tsp": "tsps?|teaspoons?", "tbsp": "tbsps?|tablespoons?",
    }),
    "duration": ("s", {
        "s": "secs?|seconds?|sekunden?",
        "min": "m?mins?|minutes?|minuten?", "h": "h|hrs?|hours?|stunden?", "d": "d|days?|tage?n?", "wk": "wks?|weeks?",
    }),
    "fraction": ("", {"%": "%|percent|per cent|pct|prozent"}),
    "ppm": ("", {"ppm": "ppm|mg/kg"}),
}  # fmt: skip
_HOUSE: Final = {kind: house for kind, (house, _) in _WORDS.items()}
_KIND: Final[dict[str, Kind]] = {unit: kind for kind, (_, words) in _WORDS.items() for unit in words}
# "in" is a word far more often than an inch: it counts at the end, or before what follows a thickness,
# the strength of a strong curing salt too
_INCH: Final = (
    r"in\.?(?=$|[,;.)]|\s+(?:thick|deep|wide|at|grey|gray|of|round|w/|with|x|brisket|flat|point|slab|loin|belly"
    r"|bacon|pastrami|ham|6\.25|5\.88)\b| to \d{1,2}(?:\.\d)? ?in\b)"
    # glued, or after a decimal point or a fraction, it is one wherever no place follows
    r"|(?:(?<=\d)|(?<=[./]\d )|(?<=[./]\d\d ))in\b(?! ?(?:the|a|an|my|our|fridge|brine|pit|cooler|smoker|grill|oven|bag"
    r"|cure(?! \d)|ice|foil|paper|there|here|core|middle|meat|total|all|half|one"
    r"|last|past|about|under|over|less)\b"
    # «2in 6.25%», «1.5in 5 lb»: a share or a weight is no number of something that it lies in
    r"| ?\d(?!\d{0,2}(?:\.\d{1,2})? ?(?:%|percent|pct|prozent|lbs?\b|pounds?\b|kgs?\b|kilos?\b)))"
)
_DEFINITIONS: Final = (
    "kilogram = [mass] = kg", "gram = kilogram / 1000 = g", "pound = 0.45359237 * kilogram = lb",
    "ounce = pound / 16 = oz", "stone = 14 * pound = st",
    "metre = [length] = m", "millimetre = metre / 1000 = mm", "centimetre = metre / 100 = cm",
    "inch = 0.0254 * metre = in",
    "kelvin = [temperature] = K", "degree_c = kelvin; offset: 273.15 = c",
    "degree_f = 5 / 9 * kelvin; offset: 255.37222222222222 = f",
    "litre = [volume] = l", "millilitre = litre / 1000 = ml", "gallon = 3.785411784 * litre = gal",
    "quart = gallon / 4 = qt", "pint = gallon / 8 = pt", "cup = gallon / 16 = cup_", "tablespoon = gallon / 256 = tbsp",
    "teaspoon = gallon / 768 = tsp",
    "second = [time] = s", "minute = 60 * second = min", "hour = 3600 * second = h", "day = 86400 * second = d",
    "week = 604800 * second = wk",
)  # fmt: skip
NUMBER: Final = r"\d{1,4}[ -]\d{1,2}/(?:16|[23458])(?!\d)|\d{1,2}/(?:16|[23458])(?!\d)|\d{1,6}(?:\.\d{1,6})?"
_UNIT: Final = "|".join(
    f"(?P<{kind}_{index}>{words}{'|' + _INCH if unit == 'in' else ''})"
    for kind, (_, by_unit) in _WORDS.items()
    for index, (unit, words) in enumerate(by_unit.items())
)
_BY_GROUP: Final = {
    f"{kind}_{index}": unit for kind, (_, by_unit) in _WORDS.items() for index, unit in enumerate(by_unit)
}
_MEASURE: Final = re.compile(
    rf"(?<![\w.,/])(?:(?P<low>\d{{1,4}}(?:\.\d{{1,4}})?) ?(?:-|to|or) ?)?(?P<sign>-)?(?P<number>{NUMBER}) ?(?:-(?=inch"
    rf"|pound))?"
    rf"(?:{_UNIT})(?![^\W\d_])"
)
_OUNCES: Final = re.compile(rf",? ?(?:and |& )?(?P<number>{NUMBER}) ?(?:oz|ounces?)\b")
_POUNDS: Final = re.compile(rf",? ?(?:and |& )?(?P<number>{NUMBER})(?: ?(?:lbs?|pounds?)\b|(?=$|[,;]| of\b))")
_ABOUT: Final = re.compile(r"(?<=\d)ish\b")  # «240ish»
_LOCK: Final = threading.Lock()


@dataclass(frozen=True)
class Measure:
    """A quantity as found in a text.

    `value` is in the unit of the house (kg, m, °C, l, s, a fraction, mg/kg); `typed` and `unit` are as the person
    wrote it. `low` is set for a range («3 to 4 kg»): its lower end in the house's unit. `start` and `end` are
    its place in the text that was searched.
    """

    kind: Kind
    value: float
    typed: float
    unit: str
    start: int
    end: int
    low: float | None = None


def plain(text: str) -> str:
    """The text as `find` wants it: lower case, single spaces, plain digits and inch signs."""
    text = text.lower().replace("″", '"').replace("”", '"').replace("“", '"').replace("º", "°")
    return digits(_ABOUT.sub("", " ".join(text.split())))


@lru_cache(maxsize=512)  # the readers of one line all ask for the same few texts
def find(text: str) -> tuple[Measure, ...]:
    """Every number with a unit in a `plain` text, from left to right; «7 lb 8 oz» is one."""
    out: list[Measure] = []
    place = 0
    while found := _MEASURE.search(text, place):
        measure = _measure(found)
        if measure.unit == "st" and (pounds := _POUNDS.match(text, measure.end)):
            measure = _with_pounds(measure, pounds)
        if measure.unit == "lb" and (ounces := _OUNCES.match(text, measure.end)):
            measure = _with_ounces(measure, ounces)
        out.append(measure)
        place = measure.end
    return tuple(out)


def of_kind(text: str, kind: Kind) -> tuple[Measure, ...]:
    """Every quantity of one kind in a `plain` text."""
    return tuple(m for m in find(text) if m.kind == kind)


def sole(text: str, kind: Kind) -> Measure | None:
    """The quantity that is the whole of a `plain` text, if it is one of that kind and no range."""
    measures = find(text.strip(" .!~"))
    if len(measures) == 1 and measures[0].kind == kind and measures[0].low is None:
        measure = measures[0]
        return measure if measure.start == 0 and measure.end == len(text.strip(" .!~")) else None
    return None


def number(text: str) -> float | None:
    """The number that is the whole of a `plain` text: «45», «1 3/4», «6.25»; None for anything else."""
    text = text.strip(" .!~")
    return _value(text) if re.fullmatch(f"-?(?:{NUMBER})", text) else None


def to_house(value: float, unit: str) -> float:
    """A quantity in the unit of the house, from any unit of this module ("lb", "in", "f", "gal", "h", "%")."""
    kind = _KIND[unit]
    if kind == "fraction":
        return value / 100
    if unit == "f":  # a limit that the core has in °F is read at that very figure
        return celsius_from_fahrenheit(value)
    return value if kind == "ppm" else _convert(value, unit, _HOUSE[kind])


def from_house(value: float, unit: str) -> float:
    """A quantity of the house in `unit`: kg to "lb", m to "in", °C to "f", l to "cup", s to "h", a fraction to "%"."""
    kind = _KIND[unit]
    if kind == "fraction":
        return value * 100
    return value if kind == "ppm" else _convert(value, _HOUSE[kind], unit)


def pounds_and_ounces(mass: float) -> tuple[int, float]:
    """A mass [kg] as whole pounds and the ounces that are left."""
    ounces = from_house(mass, "oz")
    pounds = int(ounces // 16)
    return pounds, ounces - 16 * pounds


def _measure(found: re.Match[str]) -> Measure:
    unit = next(unit for group, unit in _BY_GROUP.items() if found[group] is not None)
    typed = _value((found["sign"] or "") + found["number"])
    low = None if found["low"] is None else to_house(float(found["low"]), unit)
    return Measure(_KIND[unit], to_house(typed, unit), typed, unit, found.start(), found.end(), low)


def _with_ounces(pounds: Measure, ounces: re.Match[str]) -> Measure:
    more = _value(ounces["number"])
    return Measure(
        "mass",
        to_house(pounds.typed * 16 + more, "oz"),
        pounds.typed + more / 16,
        "lb",
        pounds.start,
        ounces.end(),
        pounds.low,
    )


def _with_pounds(stones: Measure, pounds: re.Match[str]) -> Measure:
    """«a stone and 3 lb» as pounds; 14 of them are a stone (Weights and Measures Act 1985, Schedule 1, of 1985)."""
    typed = stones.typed * 14 + _value(pounds["number"])
    return Measure("mass", to_house(typed, "lb"), typed, "lb", stones.start, pounds.end(), stones.low)


def _value(text: str) -> float:
    sign, text = (-1.0, text[1:]) if text.startswith("-") else (1.0, text)
    total = 0.0
    for part in re.split("[ -]", text):
        above, _, below = part.partition("/")
        total += float(above) / float(below or 1)
    return sign * total


@lru_cache(maxsize=512)  # the readers of one line all ask for the same few figures
def _convert(value: float, unit: str, wanted: str) -> float:
    registry, symbols = _registry()
    # 12 significant places: the noise of the offset units goes, every figure a person typed stays
    return float(f"{registry.Quantity(value, symbols[unit]).to(symbols[wanted]).magnitude:.12g}")


def _registry() -> "tuple[UnitRegistry[float], dict[str, Unit]]":
    """The registry and its units by our names; built whole under a lock, since pint is not safe while it is lazy."""
    with _LOCK:
        return _built()


@cache
def _built() -> "tuple[UnitRegistry[float], dict[str, Unit]]":
    from pint import UnitRegistry  # here, not above: half of the bot's start would be this import

    registry: UnitRegistry[float] = UnitRegistry(None)
    for line in _DEFINITIONS:
        registry.define(line)
    names = [unit for unit, kind in _KIND.items() if kind not in ("fraction", "ppm")]
    symbols: dict[str, Unit] = {unit: registry.Unit("cup_" if unit == "cup" else unit) for unit in (*names, "m", "s")}
    for kind, (house, words) in _WORDS.items():
        for unit in words if kind not in ("fraction", "ppm") else ():
            registry.Quantity(1.0, symbols[unit]).to(symbols[house])  # fills its caches before threads come
    return registry, symbols
