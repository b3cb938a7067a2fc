"""Numbers as people type them, turned into plain digits: words, fraction signs, decimal commas.

«one fifty eight» is 158, «two and a half» 2.5, «1½» 1 1/2, «3,4» 3.4, «3,400 g» 3400 g. Everything here is
linear in the length of the text; what is no number is left as it is.
"""

from typing import Final

from bot.fractions import whole
from core import patterns as re

_UNITS: Final = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "zwei": 2, "drei": 3, "vier": 4, "fünf": 5, "sechs": 6, "sieben": 7, "acht": 8, "neun": 9,
}  # fmt: skip
_TEENS: Final = {
    "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
    "seventeen": 17, "eighteen": 18, "nineteen": 19, "zehn": 10, "elf": 11, "zwölf": 12,
}  # fmt: skip
_TENS: Final = {
    "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70,
    "eighty": 80, "ninety": 90,
}  # fmt: skip
_NAUGHT: Final = ("zero", "oh", "null")
_WORD: Final = "(?:" + "|".join((*_UNITS, *_TEENS, *_TENS, *_NAUGHT, "hundred")) + ")"
_RUN: Final = re.compile(rf"\b{_WORD}(?:[ -](?:point )?{_WORD}|(?<=hundred) and {_WORD})*\b")
# «that one», «wrong one»: a lone "one" counts only before a unit or an hour
_LONE: Final = re.compile(
    r" ?(?:kg|kilo|lb|pound|oz|ounce|inch|in thick|mm|cm|litre|liter|gal|quart|cup|tsp|tbsp|teaspoon|tablespoon|"
    r"percent|%|am\b|pm\b|oclock|and a (?:half|quarter))"
)
_HOUR_ENDS: Final = re.compile(
    r"(?: (?:instead|please|pls|sharp|then|today|tomorrow|tonight|on (?:mon|tue|wed|thu|fri|sat|sun)[a-z]*))*"
    r"(?:$|[,;.!?])"
)
_VULGAR: Final = {
    "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8",
}  # fmt: skip
_SIGNS: Final = str.maketrans({**_VULGAR, "⁄": "/", "−": "-", "–": "-", "—": "-"})
_MINUS: Final = re.compile(r"\bminus (?=\d)")
# «3,400 g» is three thousand four hundred; «3,400 kg» can only be a decimal
_THOUSANDS: Final = re.compile(r"(?<![\d.,])(\d{1,3}),(\d{3})(?= ?(?:g|gr|grams?|ml|mm)\b)")
_DECIMAL_KILOS: Final = re.compile(r"(?<![\d.,])(\d{1,2}),(\d{3})(?= ?(?:kg|kilos?|l|lit(?:er|re)s?)\b)")
_SPOKEN_POINT: Final = re.compile(r"(?<![\d.,])(\d{1,3}) point (\d{1,2})(?![\d.,])")  # «3 point 5», half in words
_NAUGHT_LEFT_OUT: Final = re.compile(  # «.5 %» is half a percent, and no five; «done .38 in the fridge» ends a sentence
    r"(?<![^\s(])(?:\.(?=\d(?![\d.])|\d{2} ?(?:%|percent|pct|prozent|lbs?|pounds?|kg|kilos?|oz|ounces?|g|grams?|in"
    r"|inch\w*|cups?|tsp|tbsp|l|lit\w+|gal\w*)(?!\w))|,(?=\d{1,2} ?(?:%|percent|pct|prozent)(?!\w)))"
)
_DECIMAL: Final = re.compile(r"(?<![\d.,])(\d{1,3}),(\d{1,2})(?![\d,])")


def digits(text: str) -> str:
    """The text with every number in plain digits: a point for decimals, n/d for fractions.

    Parameters
    ----------
    text
        Lower case.
    """
    text = text.translate(_SIGNS)
    text = _NAUGHT_LEFT_OUT.sub("0.", _MINUS.sub("-", text))
    text = _THOUSANDS.sub(r"\1\2", text)
    text = _DECIMAL_KILOS.sub(r"\1.\2", text)
    text = _DECIMAL.sub(r"\1.\2", text)
    text = _SPOKEN_POINT.sub(r"\1.\2", _RUN.sub(_spell_out, text))
    return whole(text)


def _spell_out(found: re.Match[str]) -> str:
    words = re.split(r"[ -]", found[0])
    if words[0] in _NAUGHT and len(words) == 1 and words[0] != "zero":
        return found[0]
    if words == ["one"] and not _LONE.match(found.string, found.end()) and not _is_an_hour(found):
        return found[0]
    return " ".join(_numbers(words))


def _is_an_hour(found: re.Match[str]) -> bool:
    """«dinner at one», «saturday at one instead»: before a unit it counts, and at the end of what is done at it."""
    text = found.string
    return text[: found.start()].endswith(" at ") and bool(_HOUR_ENDS.match(text, found.end()))


def _numbers(words: list[str]) -> list[str]:
    """The numbers of a run of number words, one after another: «one fifty eight two forty» is 158 and 240."""
    out: list[str] = []
    while words:
        if words[0] == "point":
            decimals, words = _decimals(words[1:])
            out[-1] = f"{out[-1]}.{decimals}"
            continue
        number, words = _one_number(words)
        out.append(number)
    return out


def _decimals(words: list[str]) -> tuple[str, list[str]]:
    """The digits after a spoken point, and what is left: «two five» is 25, «seventy five» is 75."""
    out = ""
    while words and (words[0] in _UNITS or words[0] in _NAUGHT):
        out += str(_UNITS.get(words[0], 0))
        words = words[1:]
    if out:
        return out, words
    value, words = _below_hundred(words)
    return str(value), words


def _one_number(words: list[str]) -> tuple[str, list[str]]:
    first, rest = words[0], words[1:]
    if first == "hundred":
        value, rest = _after_hundred(rest)
        return str(100 + value), rest
    if first in _UNITS and rest:
        return _from_unit(_UNITS[first], rest)
    value, rest = _below_hundred(words)
    if first in _TEENS and rest and rest[0] in _TENS:  # «twelve thirty» is a time of day
        minutes, rest = _below_hundred(rest)
        return f"{value}:{minutes:02d}", rest
    if rest and rest[0] == "hundred":
        more, rest = _after_hundred(rest[1:])
        return str(value * 100 + more), rest
    return str(value), rest


def _from_unit(unit: int, rest: list[str]) -> tuple[str, list[str]]:
    """A number that begins with one digit: «one fifty eight», «two oh three», «one hundred and six»."""
    if rest[0] == "hundred":
        value, rest = _after_hundred(rest[1:])
        return str(100 * unit + value), rest
    if rest[0] in _NAUGHT and len(rest) > 1 and rest[1] in _UNITS:
        return str(100 * unit + _UNITS[rest[1]]), rest[2:]
    if rest[0] in _TENS or rest[0] in _TEENS:
        value, rest = _below_hundred(rest)
        return str(100 * unit + value), rest
    return str(unit), rest


def _after_hundred(words: list[str]) -> tuple[int, list[str]]:
    if words and words[0] == "and":
        words = words[1:]
    if words and words[0] not in ("hundred", "point"):
        return _below_hundred(words)
    return 0, words


def _below_hundred(words: list[str]) -> tuple[int, list[str]]:
    first, rest = words[0], words[1:]
    if first in _TENS:
        if rest and rest[0] in _UNITS:
            return _TENS[first] + _UNITS[rest[0]], rest[1:]
        return _TENS[first], rest
    return _UNITS.get(first, _TEENS.get(first, 0)), rest
