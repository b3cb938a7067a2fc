"""Curing salt told for each kilo or pound of meat, by weight or by the spoon."""

import re
from typing import Final

from bot import measures
from core.cure.dose import from_teaspoons

_FOR_EACH: Final = re.compile(  # of curing salt, or of what was spoken of; «15 g salt a kilo» is none
    r"\b(?P<number>\d+(?:\.\d+)?) ?(?P<unit>g|gr|grams?|oz|ounces?|tsps?|teaspoons?|tbsps?|tablespoons?)\b(?: of)?"
    r"(?: (?:(?:pink|curing|nitrite) salt|prague powder|cure|pink|it|that))?(?: (?:no ?|#)?[12])? ?"
    r"(?:\b(?:per|an?|for (?:each|every|an?)|each|every|to the) |/ ?)(?:1 )?(?P<meat>kg|kilo|lb|pound)"
)


def rate(text: str) -> tuple[float, float] | None:
    """Curing salt for each kilo of meat, as «25 g per kilo», «1 tbsp a lb»: the least and the most. [kg/kg]"""
    found = _FOR_EACH.search(text)
    if found is None:
        return None
    number, unit = float(found["number"]), found["unit"]
    meat = measures.to_house(1.0, "kg" if found["meat"].startswith("k") else "lb")
    if not unit.startswith("t"):
        one = measures.to_house(number, "oz" if unit.startswith("o") else "g") / meat
        return one, one
    low, high = from_teaspoons(number * (3.0 if unit.startswith(("tb", "ta")) else 1.0))
    return low / meat, high / meat
