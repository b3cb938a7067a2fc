"""What a question asks for by its noun: «how much water …» wants no salt, whatever else its figures allow."""

from collections.abc import Sequence
from typing import Final

from core import patterns as re

_NOUNS: Final = (
    r"(?P<{0}cure>(?:pink|nitrite|curing|prague)(?: (?:curing )?(?:salt|powder|stuff))?|cure|(?:# ?|number |no )1)"
    r"(?! sugar)"
    r"|(?P<{0}salt>salt)|(?P<{0}sugar>sugar|honey|syrup)|(?P<{0}water>water|brine|pickle)|(?P<{0}rub>rub|spices?|pepper|coriander)"
    r"|(?P<{0}ice>ice)|(?P<{0}fuel>charcoal|coals?|lump|briquettes?|propane|fuel)"
)
_AMOUNT: Final = (
    r"(?:(?:g|grams?|tsps?|teaspoons?|tbsps?|tablespoons?|spoons?|cups?|oz|ounces?|ml|l|lit(?:er|re)s?|kg|kilos?|lbs?"
    r"|pounds?|bags?|sacks?)(?: of)? )?(?:(?:the|my|more|extra|plain|kosher|table|sea|coarse|brown|white|cold|pickling"
    r"|total|lump) ){0,2}"
)
_ASKED: Final = re.compile(
    rf"(?:\bhow (?:much|many) {_AMOUNT}|\b(?:amount|grams|weight) of {_AMOUNT}|^(?:the )?(?:grams (?:of )?)?)"
    rf"(?:{_NOUNS.format('')})\b(?:,? (?:and|plus|&) (?:the |of )?(?:{_NOUNS.format('more_')})\b)?"
)
_A_NAME: Final = re.compile(r"(?:how|amount|grams|weight)\b")
_LED: Final = re.compile(r" (?:needed|amount|weight|for|to|in|on)\b")  # «charcoal for 8 h», and no «cure 5 days»
_TIMED: Final = re.compile(r"\b(?:how long|how many (?:hours|hrs|days|min\w*)|hours|hrs)\b")
_AMOUNTS: Final = frozenset(
    {
        "ice",
        "shopping",
        "portions",
        "yield",
        "dose",
        "salt_for",
        "sugar",
        "rub",
        "spice",
        "sodium",
        "brine_amount",
        "price",
    }
)  # what is weighed or counted, and no time
_DOSE_LAST: Final = re.compile(r"\b(?:dose|dosage|cure amount|(?<!the )(?<!in )(?<!to )cure)\W*$|^(?:the )?dose for\b")
_GOES: Final = re.compile(r"\b(?:los[et]|loss|shr[aiu]nk|left|drawn|gone|leak\w*)\b")
OF_CURE: Final = frozenset(
    {"dose", "ppm", "mix", "meat_for", "nitrite_in", "topup", "scale", "recipe", "spoons", "tsp_of", "inject"}
)
_KINDS: Final = {
    "cure": OF_CURE,
    "salt": {
        "salt_for", "brine", "fish_brine", "equilibrium", "mix", "topup", "recipe", "spoons", "tsp_of", "dilute",
        "sodium", "salometer",
    },
    "sugar": {"sugar", "mix", "recipe", "spoons", "tsp_of"},
    "water": {"brine", "brine_amount", "inject", "dilute", "topup", "recipe", "brine_ice", "fish_brine"},
    "rub": {"rub", "spice", "spoons", "tsp_of"},
    "ice": {"ice", "brine_ice", "brine_cools"},
    "fuel": {"fuel"},
}  # fmt: skip


def asked_for(text: str, possible: Sequence[str]) -> list[str]:
    """Of the sums that the figures allow those for the noun that is asked for; all of them where none of those is."""
    if _DOSE_LAST.search(text):
        return [kind for kind in possible if kind in OF_CURE] or list(possible)
    found = None if _GOES.search(text) else _ASKED.search(text)
    if found is None or not (_A_NAME.match(found[0].strip()) or _LED.match(text, found.end())):
        return [kind for kind in possible if kind not in _AMOUNTS] if _TIMED.search(text) else list(possible)
    nouns = [name.removeprefix("more_") for name, word in found.groupdict().items() if word]
    wanted = set().union(*(_KINDS[noun] for noun in nouns))
    return [kind for kind in possible if kind in wanted] or list(possible)
