"""Parts of a number and of a unit as figures: «2 and 3/4 inches», «inch and a half», «3/4 of an inch», «a kilo».

What is half understood here would be a thickness or a weight too small, so a part never stands without its whole.
Everything is linear in the length of the text.
"""

from fractions import Fraction
from typing import Final

from core import patterns as re

_DENOMINATORS: Final = {"hal": 2, "qua": 4, "qtr": 4, "thi": 3, "eig": 8, "six": 16}
_SHARE: Final = (
    r"(?:(?P<n>\d{1,2})/(?P<d>16|[23458])(?!\d)"
    r"|(?:(?P<many>\d|an?|one)[ -])?(?P<of>half|halves|quarters?|qtrs?|thirds?|eighths?|sixteenths?)\b)"
)
_UNIT: Final = (
    r"(?:inch(?:es)?|in|pounds?|lbs?|stones?|kilos?|kilograms?|kgs?|cm|lit(?:er|re)s?|quarts?|gallons?|cups?|hours?"
    r"|degrees?)"
)
_SOLID: Final = (
    r"(?:inch|pound|lb|ounce|oz|stone|kilo|kilogram|kg|lit(?:er|re)|quart|gallon|cup|tsp|teaspoon|tbsp|tablespoon)"
)
# «2 lb and half the ham», «2 kg and 1/2 cup salt»: the share is of something else
_OF_ANOTHER: Final = (
    r"(?! ?(?:past|to|the|of (?:the|my|it|that|them)|my|that|as|an?\b"
    r"|oz|ounces?|cups?|tsp|tbsp|teaspoons?|tablespoons?|gallons?|quarts?"
    r"|lit|inch|in\b|lb|pound|kg|kilo|g\b|grams?|hours?|h\b|days?|%|\"|\d|/))"
)
_NUMBER_AND: Final = re.compile(
    rf"(?<![\d./:])(?P<whole>\d{{1,4}}) (?:and|&|n) {_SHARE}(?! (?:past|to)\b)(?: of an?(?= {_SOLID}))?"
)
_UNIT_AND: Final = re.compile(
    rf"(?<![\d./:])(?:(?P<whole>\d{{1,4}}) ?|(?<!\d )\b(?:an? )?)(?P<unit>{_UNIT}) (?:and|an|&|n) {_SHARE}{_OF_ANOTHER}"
)
# «6.25 inch and 3 quarters»: the strength of a curing salt before a size that has no number of its own
_STRENGTH_FIRST: Final = re.compile(r"(?<![\d.])(6\.25|5\.88) (?=(?:an? )?inch(?:es)? (?:and|an|&|n) )")
_OF_A_UNIT: Final = re.compile(rf"(?<![\d./:])(?<!\d )\b{_SHARE} ?(?:of )?(?:an? )?(?={_SOLID}\b)")
_AN: Final = re.compile(rf"\ban? (?=(?:level )?{_SOLID}\b)")
_BARE: Final = re.compile(r"(?:^|(?<=[,;:] ))(?=(?:inch (?:thick|deep)|(?:kilo|pound|lb|kg) of [a-z]))")
# before «a kilo» it is a rate: «25 g a kilo», «days an inch», «how much salt a pound»
_WORD: Final = 14  # characters that the longest of them takes
_RATE: Final = re.compile(
    r"(?:\d|\b(?:g|grams?|oz|ounces?|kg|kilos?|ml|l|lit\w+|tsp|tbsp|\w*spoons?|cups?|h|hours?|hrs?|min\w*|days?|weeks?"
    r"|salt|cure|sugar|nitrite|water|spice|much|many|long|costs?|pays?|price|dollars?|euros?|bucks|quid|half|quarter"
    r"|per|ppm|%)) $"
)


def whole(text: str) -> str:
    """A text with every part joined to its whole, and «a kilo» with its 1.

    Parameters
    ----------
    text
        Lower case, number words and decimal commas already in digits.
    """
    text = _NUMBER_AND.sub(lambda found: _joined(found["whole"], found), _STRENGTH_FIRST.sub(r"\1, ", text))
    text = _UNIT_AND.sub(lambda found: f"{_joined(found['whole'] or '1', found)} {found['unit']}", text)
    text = _OF_A_UNIT.sub(lambda found: f"{_joined('0', found)} ", text)
    text = _AN.sub(
        lambda found: found[0] if _RATE.search(text[max(0, found.start() - _WORD) : found.start()]) else "1 ", text
    )
    return _BARE.sub("1 ", text)


def _joined(number: str, found: re.Match[str]) -> str:
    """The sum of a whole number and a share: as a decimal where it is one, else as «2 1/3»."""
    share = _share(found)
    if share.denominator == 3:  # a third has no last decimal
        return f"{number} {share}" if number != "0" else str(share)
    return f"{float(int(number) + share):g}"


def _share(found: re.Match[str]) -> Fraction:
    if found["n"]:
        return Fraction(int(found["n"]), int(found["d"]))
    many = int(found["many"]) if (found["many"] or "").isdigit() else 1
    return Fraction(many, _DENOMINATORS[found["of"][:3]])
