"""What was weighed out, told in bare numbers: «all weighed, 5.7 and 48 and 24 sugar»."""

from typing import Final

from bot.intents.context import Context
from core import patterns as re

_NAMES: Final = ("cure", "salt", "sugar")
_NAMED: Final = {"curing salt": 0, "pink salt": 0, "cure": 0, "pink": 0, "nitrite salt": 0, "salt": 1, "sugar": 2}
_AMOUNT: Final = re.compile(
    r"(?<![\d.:/#])\b(?P<n>\d{1,4}(?:\.\d{1,2})?)(?: ?(?:g|gr|grams?)\b)?(?: (?:of )?(?:the )?"
    r"(?:(?P<name>curing salt|pink salt|nitrite salt|cure|pink|salt)\b|(?:brown |white |cane )?(?P<sugar>sugar)\b))?"
    r"(?! ?(?:%|percent|c\b|f\b|deg|°|kg|lb|oz|tsp|tbsp|h\b|hours?|min|days?|in\b|inch|mm|cm|l\b|ml\b|people|[:/.]\d))"
)
_WEIGHED: Final = re.compile(r"\bweigh(?:ed|t|s)?\b|\b(?:scaled|measured) (?:it |them |all |everything )*out\b")
NEAR: Final = 0.1  # of the planned amount: so near it is no other thing


def weighed_out(plain: str, context: Context) -> str:
    """A line with its bare numbers as grams of what was to be weighed, where each of them is near its amount.

    Nothing is guessed: with a number that is not near, or another kind of figure beside them, the line stays.
    """
    if not context.to_weigh:
        return plain
    amounts = list(_AMOUNT.finditer(plain))
    numbers = re.findall(r"\d+(?:\.\d+)?", plain)
    least = 2 if _WEIGHED.search(plain) else len(context.to_weigh)
    if len(amounts) != len(numbers) or not least <= len(amounts) <= len(context.to_weigh):
        return plain
    which = [_NAMED.get(m["name"] or m["sugar"] or "", place) for place, m in enumerate(amounts)]
    if which != sorted(set(which)) or not all(
        abs(float(m["n"]) - context.to_weigh[n]) <= NEAR * context.to_weigh[n]
        for n, m in zip(which, amounts, strict=True)
        if n < len(context.to_weigh)
    ):
        return plain
    said = ", ".join(f"{m['n']} g {_NAMES[n]}" for n, m in zip(which, amounts, strict=True))
    return f"{plain[: amounts[0].start()]}{said}{plain[amounts[-1].end() :]}"
