"""What was weighed out, told in bare numbers: «all weighed, 5.7 and 48 and 24 sugar»."""

from typing import Final

from bot.intents.context import Context
from core import patterns as re

_NAMED: Final = {"curing salt": "cure", "pink salt": "cure", "nitrite salt": "cure", "pink": "cure"}
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
    planned = dict(context.to_weigh)
    amounts = list(_AMOUNT.finditer(plain)) if planned else []
    numbers = re.findall(r"\d+(?:\.\d+)?", plain)
    least = 2 if _WEIGHED.search(plain) else 3  # fewer may be temperatures
    if not planned or len(amounts) != len(numbers) or not least <= len(amounts) <= len(planned):
        return plain
    names = [_name(m) or in_turn for m, in_turn in zip(amounts, planned, strict=False)]
    near = (abs(float(m["n"]) - planned.get(name, 0.0)) <= NEAR * planned.get(name, 0.0)
            for m, name in zip(amounts, names, strict=True))  # fmt: skip
    if len(set(names)) != len(names) or not all(near):
        return plain
    said = ", ".join(f"{m['n']} g {name}" for m, name in zip(amounts, names, strict=True))
    return f"{plain[: amounts[0].start()]}{said}{plain[amounts[-1].end() :]}"


def _name(amount: re.Match[str]) -> str:
    """What was said to have been weighed; "" where a number stands alone."""
    said = amount["name"] or amount["sugar"] or ""
    return _NAMED.get(said, said)
