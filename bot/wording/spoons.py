"""For who has no scale: the most curing salt that is never over the dose, and plain salt by the spoon where that is known.

A level teaspoon of fine table salt is 6.0 g (USDA SR28, NDB 02047, "1 tsp"). Coarse salt and flakes hold anything from
half of that on, so they are weighed or left out (common practice, no source).
"""

from math import floor
from typing import Final

from bot.wording import numbers
from bot.wording.language import decimal, say
from core.batch.assess import Assessment

FINE_SALT_KG: Final = 0.006  # a level teaspoon
QUARTER: Final = 4  # the smallest measure of a set is a quarter of a teaspoon


def without_scale(a: Assessment) -> str:
    """What spoons can do, rounded down so that it is never over the dose; nothing where there is a scale."""
    if a.person.scale or a.dose is None:
        return ""
    return "\n".join(line for line in (_cure(a), _salt(a)) if line)


def _cure(a: Assessment) -> str:
    if a.dose is None or a.dose.limit is None:
        return ""
    low, high = a.dose.teaspoons
    most = floor(low * QUARTER) / QUARTER
    if most == 0:
        return say(
            "You have no scale, and no spoon measures so little curing salt: let the butcher or a pharmacy weigh it."
        )
    return say(
        "You have no scale: {most} level teaspoons of curing salt are never over the dose, and may be as little as {share} of it. "
        "A spoon is out by a quarter, so a scale that shows 0.1 g is the better way.",
        most=decimal(most, 2),
        share=numbers.share(most / high),
    )


def _salt(a: Assessment) -> str:
    if a.dose is None or not a.dose.salt_kg:
        return ""
    if a.person.salt != "fine":
        return say("Coarse or flaked salt differs by half from packet to packet: weigh it.")
    return say(
        "Salt: {spoons} level teaspoons of fine table salt, at 6 g each.",
        spoons=decimal(a.dose.salt_kg / FINE_SALT_KG, 1),
    )
