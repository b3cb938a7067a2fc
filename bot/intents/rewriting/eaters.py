"""How old they are who will eat it: told as years, they are no degrees; by the age, whether they are at risk."""

from typing import Final

from bot.intents.rewriting.words import rules
from core import patterns as re

OLD: Final = 65  # years; DESIGN.md, 5: over 65, and at 65 the stricter side
YOUNG: Final = 5  # years; under it
_GROWN: Final = 18
_LONGEST: Final = 115
_KIN: Final = (
    r"(?:mum|mom|mother|mam|ma|dad|father|pa|gran|grandma|granny|nan|nana|nanna|grandmother|grandpa|grandad|granddad"
    r"|grandfather|aunt|auntie|uncle|neighbou?r|husband|wife|brother|sister|son|daughter|baby|kid|child|toddler"
    r"|grandson|granddaughter|grandkid|niece|nephew|boy|girl|little one|youngest|oldest|guest)(?: in law|-in-law)?"
)
_THING: Final = (
    r"(?:pack|packet|bag|tub|cure|curing|pink|salt|spice|smoker|grill|probe|thermometer|ham|bacon|fridge|freezer)"
)


def _by_age(found: re.Match[str]) -> str:
    years, who = int(found["n"]), found["who"] or ""
    if years > _LONGEST:
        return found[0]
    if years >= OLD:
        return f"{who} is elderly" if who else "elderly"
    if years < YOUNG:
        return f"{who} is a toddler" if who else "toddler"
    return f"{who} is grown up" if years >= _GROWN and who else f"{who} is older" if who else "adult"


RULES: Final = rules(
    (rf"\b(?P<who>{_KIN})(?:s| is| has| just| now| only| already| nearly| almost| turn(?:ed|s|ing)| aged)* "
     r"(?P<n>\d{1,3})\b(?![.:/]\d| ?(?:f|c|lbs?|kg|g|oz|%|min\w*|h|hours?|pm|am|slices?|pieces?|months?)\b)"
     r"(?: ?(?:years?|yrs?|yo|y/o)(?: old)?)?", _by_age),
    (rf"(?P<who>)\b(?P<n>\d{{1,3}})[- ]?(?:year[- ]old|yr[- ]old|yo|y/o)\b(?! (?:\w+ )?{_THING}\b)", _by_age),
)  # fmt: skip
