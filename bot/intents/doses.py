"""The curing salt that a line tells: by its word, or as grams of nothing named where a dose is asked about."""

from typing import Final

from bot import measures
from bot.intents.cures import is_cure
from bot.intents.pouring import pours
from core import patterns as re
from core.units import Fraction, Kilograms

SUGAR: Final = re.compile(r"^ ?(?:of )?(?:(?:brown|white|cane|muscovado) )?(?:sugar|honey|syrup)\b")
BY_RATE: Final = re.compile(  # «1 oz treats 25 lb»: how a packet doses, and no strength
    r"\d ?(?:oz|g|grams?|tsp|teaspoons?|tbsp|tablespoons?)\b(?: of (?:it|cure|the \w+))? ?(?:per|to|for|treats|cures"
    r"|does|in|/|a|each|every)(?: each| every)? ?\d* ?(?:kg|kilos?|lbs?|pounds?)\b"
)
_PPM: Final = r"\b(?:what|how many|which|whats|the) (?:is the )?ppm\b|\bppm(?:\W*$| (?:is that|if|from|with|when)\b)"
_LEVEL_ASKED: Final = re.compile(_PPM)
_CURE_NAMED: Final = re.compile(r"\b(?:cure|curing salt|pink|prague)\b")
_DOSE_CHECKED: Final = re.compile(  # «is 7 g ok for 3 kg? its cure 1»
    r"\b(?:is|are|was|were|will|does|would|did) \d+(?:\.\d+)? ?(?:g|grams?)\b.*"
    r"\b(?:ok|okay|enough|too (?:much|little)|right|fine|good|safe|do)\b"
    rf"|{_PPM}"
)
_BARE_DOSE: Final = re.compile(  # «put 10 g on 2.5 kg, too much?»: so little of nothing named is curing salt
    r"^(?!.*\b(?:salt(?!y)|sugar|pepper|spices?|rub|garlic|paprika|mustard|coriander|honey|slices?|portions?|plates?|people"
    r"|each|protein|fat|ice|charcoal|scale|mg)\b)(?!.*\d ?g(?:rams?)? (?:of )?nitrite)"
    r"(?=.*\b(?:ok|okay|enough|too (?:much|little|strong|weak)|right|fine|good|safe|legal|bad|cured|over|under"
    r"|add|more|top(?:ped)?|rest|oops|mistake|wrong|come to|works? out|instead|used|put|went|added|weighed|round"
    r"|only)\b)"
    r".*?\b(?P<g>\d{1,2}(?:\.\d{1,2})?) ?(?:g|grams?|oz|ounces?) (?:(?:(?:way |far )?too (?:much|little|strong|weak)|ok"
    r"|okay|enough|fine|right|good|safe|instead of \d[\d.]*(?: ?g(?:rams?)?)?) )?"
    r"(?:(?:(?:went )?(?:on|in|into)|to|for|per|with|over) )?"
    r"(?:a |an |the |about |my )?(?P<n>\d{1,2}(?:\.\d{1,2})?) ?(?P<unit>kg|kilos?|lbs?|pounds?)\b"
)
MOST_UNNAMED: Final[Fraction] = 0.008  # of the meat; more is salt or sugar
MOST_DOSE: Final[Kilograms] = 0.1


def cure_told(text: str, found: list[measures.Measure]) -> measures.Measure | None:
    """Curing salt by its word, or grams of nothing named where a dose is checked."""
    checked = _DOSE_CHECKED if _CURE_NAMED.search(text) else _LEVEL_ASKED
    named = next((m for m in found if is_cure(text, m, found)), None)
    return named or small(text, found, checked, MOST_DOSE) or _unnamed(text, found)


def _unnamed(text: str, found: list[measures.Measure]) -> measures.Measure | None:
    """Grams of nothing named that are asked about beside the meat, few enough for curing salt."""
    bare = _BARE_DOSE.search(text)
    if bare is None:
        return None
    mass = measures.to_house(float(bare["n"]), "kg" if bare["unit"].startswith("k") else "lb")
    dose = next((m for m in found if m.start <= bare.start("g") < m.end), None)
    return dose if dose is not None and dose.value <= MOST_UNNAMED * mass else None


def small(text: str, found: list[measures.Measure], asked: re.Pattern, most: Kilograms) -> measures.Measure | None:
    """Grams of nothing named: curing salt where a level is asked for, salt where the strength of a brine is."""
    grams = [m for m in found if m.unit == "g" and m.value <= most and not SUGAR.match(text[m.end :])]
    other = any(m not in grams and (m.kind == "mass" or pours(m)) for m in found)
    return grams[0] if asked.search(text) and other and len(grams) == 1 else None
