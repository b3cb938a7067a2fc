"""What the figures of a question allow: which sums can be meant by it at all, and what they take from it."""

from collections.abc import Callable, Mapping
from typing import Final

from bot import measures
from bot.intents.brinings import of_fish_hours
from bot.intents.pouring import part_ice, spoonful
from bot.intents.rates import PLAIN_ASKED, of_a_packet, rate, shares
from bot.intents.sums.mixtures import needled
from bot.intents.sums.of_days import A_DAY, EATEN_AT, START_ASKED, counted_back, dated, days_kept, is_span, use_by_asked
from bot.intents.sums.of_heat import TIMED, beside_a_cold_pit, climbs, cold_by, cools, falls, held, rises, went_out
from bot.intents.sums.pits import is_smoked, pits
from bot.intents.sums.told import Told
from bot.intents.sums.wanted import (
    bare_grams,
    by_unit,
    cost_each,
    height_asked,
    meat_asked,
    price,
    share_lost,
    weighed_instead,
    weights,
)
from bot.intents.sums.warmth import FROM_THE_COLD, HELD_IN, INTO_THE_COLD, KEPT_HOT, STAYS_HOT, TO_THE_COLD
from bot.intents.sums.words import LOST, REPLACED, SWEET, TANK
from core import patterns as re
from core.units import Kilograms

_BRINED: Final = re.compile(r"\b(?:brin\w*|salt\w*|cure|curing|soak\w*|water)\b")
_KEPT: Final = re.compile(
    r"^(?!.*\b(?:fr[oe]ez|frozen)).*\b(?:ok|okay|safe|good|fine|eat|old|still|fridge|leftovers?)\b"
)
_FUEL: Final = re.compile(
    r"\b(?:charcoal|coals?|lump|briq\w*|pellets?|propane|gas|fuel|wood|bags?|sacks?|bottles?|tank|kwh)\b"
)
_PELLETS_FOR: Final = re.compile(
    r"\bpellets?\b.*\b(?:for|do|does|last\w*|through|good for|enough for) (?:me )?(?:an? )?\d{1,2} ?(?:h|hrs?|hours?)\b"
    r"|\bhow (?:much|many) .*\bpellets\b"
)
_RUBBED: Final = re.compile(r"\b(?:rub\w*|season\w*|pepper|coriander|crust|spic\w+|mix)\b")
_SPICED: Final = re.compile(r"\b(?:\w*spic\w*|garlic|bay|juniper|mustard|coriander|pepper\w*|cloves?|seeds?)\b")
_LITRES: Final = re.compile(r"\b\d ?(?:l|lit(?:er|re)s?|gal|gallons?|qts?|quarts?)\b")
_WEIGHS_NOW: Final = re.compile(r"\bweighs? (?:only |about )?\d[^,;]{0,14}\bnow\b|\bnow (?:it )?weighs?\b")
_SLICE: Final = re.compile(r"\b(?:slices?|rashers?|strips?|serving|portion|sandwich|plate)\b")
_LIGHT_ASKED: Final = re.compile(
    r"\b(?:when|what time) (?:do|should|must|shall) (?:i|we) "
    r"(?:light|fire up|put (?:it|the \w+) on|start the (?:fire|smoker|pit|grill))\b"
)
_CURING: Final = re.compile(
    r"(?<!incl )(?<!including )(?<!including the )(?<!less the )(?<!in the )"
    r"\b(?:pink|nitrite|curing salt|prague|cure)\b(?!d)"
)
_NO_CURE: Final = re.compile(r"\b(?:no|without(?: any)?|not any) (?:cure|curing salt|pink(?: salt)?|nitrite|prague)\b")
_OF_CURE: Final = re.compile(r"\b(?:the )?cure (?:has|contains|brings|is mostly|already has) salt\b")
_IN_ALL: Final = re.compile(r"\b(?:total salt|salt in (?:total|all)|all the salt)\b")
_WEIGHED_OUT: Final = re.compile(
    r"\dppm\b|\b(?:cure|curing|pink|nitrite|dos\w+|ppm|prague|grams?|g|teaspoons?|tsps?|weigh|salt|mg"
    r"|(?:number|no) 1)\b|#|%"
)
_ON_THE_PIT: Final = re.compile(
    r"\b(?:smok\w+|pit|grill|cook\w*|oven|roast\w*|fire|on the|at \d{3}|at 9\d|at 1[0-5]\d)\b"
)
_IN_A_BRINE: Final = re.compile(r"\b(?:brin(?:e|es|ed|ing)|to cure|in (?:the )?(?:cure|salt|pickle)|dry[- ]?brin\w+)\b")
_JUDGED: Final = re.compile(r"\bsoak|\btoo (?:strong|weak|salty)\b")  # of a brine without its litres
_SPOONS: Final = re.compile(r"\bhow many (?:cups?|tbsps?|tablespoons?)\b")
_SALTED: Final = (0.005, 0.06)  # a share of salt that meat may have
SMALLEST_PIECE: Final[Kilograms] = 0.15


def masses(text: str) -> list[Kilograms]:
    """All that is told by its weight."""
    return [abs(m.value) for m in measures.find(text) if m.kind == "mass"]  # «+-1 g»


def salt_share(line: Told) -> float | None:
    """The share of salt that is wanted, where it is one that meat may have."""
    return next((f for f in line.fractions if _SALTED[0] <= f <= _SALTED[1]), None)


def is_curing(text: str) -> bool:
    """Whether curing salt is what is spoken of."""
    return bool(_CURING.search(_NO_CURE.sub(" ", text))) and not re.search(r"\b(?:himalaya\w*|rock)\b", text)


def _has_cure(line: Told) -> bool:
    return line.has("cure") or line.has("spoons") or rate(line.text) is not None


def _is_mix(line: Told) -> bool:
    if ("recipe" in line.text and len(line.meats) > 1) or PLAIN_ASKED.search(line.text):
        return False  # of another weight than one's own, or the salt beside it is asked for
    return rate(line.text) is not None or (line.has("meat") and (_has_cure(line) or spoonful(line.text) is not None))


def _is_thinned(line: Told) -> bool:
    """All that lies in the salt by its weight, at a share over the one that is wanted, and water asked for."""
    return (
        len(line.fractions) > 1 and line.fractions[0] > line.fractions[1] and line.has("meat") and "water" in line.text
    )


def _is_shared(told: Mapping[str, float]) -> bool:
    """Curing salt by its share, or two shares beside one another."""
    return "cure" in told or len(told) > 1


def _salted(line: Told) -> bool:
    return line.has("salt") or (
        spoonful(line.text) is not None
        and bool(re.search(r"\b(?:salt|kosher|flakes?)\b", line.text))
        and not _CURING.search(line.text)
    )


def _is_salted(line: Told) -> bool:
    """Plain salt as a share of meat; never where curing salt is what is asked for."""
    named = "salt" in line.text or salt_share(line) is not None
    cured = _CURING.search(_OF_CURE.sub("", _NO_CURE.sub(" ", line.text))) and not _IN_ALL.search(line.text)
    of_cure = (line.nitrite or cured) and not PLAIN_ASKED.search(line.text)
    return named and line.has("meat") and not line.has("salt") and not of_cure


def _is_cooked(line: Told) -> bool:
    """A piece over a pit, and no tank of gas."""
    hot = not line.temperatures or bool(pits(line))
    if line.clocks and EATEN_AT.search(line.text):  # the hour to light it is wanted
        return False
    brined = _IN_A_BRINE.search(line.text) and not _ON_THE_PIT.search(line.text)
    other = TANK.search(line.text) or TO_THE_COLD.search(line.text) or _SPOONS.search(line.text)
    return _is_body(line) and hot and not (brined or other)


def _is_hot_brine(line: Told) -> bool:
    """So much of a brine that was heated, and no meat."""
    hot = re.search(r"\b(?:hot|heated|cool\w*)\b", line.text) and "brine" in line.text
    boiled = re.search(r"\b(?:boil(?:ed|ing)|simmer\w*)\b", line.text)
    return (
        bool(hot or boiled) and len(_LITRES.findall(line.text)) == 1 and not (line.has("meat") or line.has("fractions"))
    )


def _is_plain(line: Told) -> bool:
    """Salt by its weight, or a strength of a brine without meat: plain salt, where no curing salt is named."""
    return line.salt is not None or (line.has("fractions") and "salt" in line.text and not line.has("meat"))


def _is_cooled(line: Told) -> bool:
    """A piece that goes into the cold."""
    colder = len(line.temperatures) > 1 and line.temperatures[0] > line.temperatures[-1]
    warmed = re.search(r"\b(?:steam\w*|reheat\w*|warm\w*|heat(?:ed|ing)? (?:it )?up)\b", line.text)
    warmed = warmed or STAYS_HOT.search(line.text)
    return _is_body(line) and not (warmed or is_smoked(line)) and (colder or bool(INTO_THE_COLD.search(line.text)))


def _is_lit(line: Told) -> bool:
    """An hour to be ready by; of two hours only where one of them is asked for. Nothing that is still frozen."""
    asked = len(line.clocks) == 1 or bool(re.search(r"\b(?:when|what time|how early)\b", line.text))
    thaws = re.search(r"\b(?:thaw\w*|defrost\w*|frozen)\b", line.text)
    cooks = line.has("hours") and (line.hours or 0.0) < A_DAY
    bare = _LIGHT_ASKED.search(line.text)
    return line.has("clocks") and asked and not thaws and bool(_is_body(line) or cooks or bare)


def _is_rubbed(line: Told) -> bool:
    """A rub for a piece, and no curing salt that went onto it."""
    cured = _CURING.search(re.sub(r"\b(?:no|not|without(?: any)?) cure\b", "", line.text))
    return line.has("meat") and bool(_RUBBED.search(line.text)) and not cured


def _is_piece(line: Told) -> bool:
    """A weight that meat has, and no spice."""
    return (line.heaviest or 0.0) >= SMALLEST_PIECE


def _is_little(line: Told) -> bool:
    """Something too light for a piece of meat, as a dose is."""
    return any(mass < SMALLEST_PIECE for mass in masses(line.text))


def _is_body(line: Told) -> bool:
    return line.has("meat") or line.has("length")


# what each sum cannot do without; the rest is asked for
FITS: Final[Mapping[str, Callable[[Told], bool]]] = {
    "dose": lambda line: (
        not _has_cure(line)
        and share_lost(line) is None
        and bool(_WEIGHED_OUT.search(line.text))
        and (is_curing(line.text) or not _NO_CURE.search(line.text))
        and not (_is_plain(line) and not is_curing(line.text))
    ),
    "ppm": _is_mix,
    "by_packet": lambda line: of_a_packet(line.text) is not None,
    "mix": lambda line: line.has("meat") and _is_shared(shares(line.text)),
    "nitrite_in": lambda line: line.has("cure") or line.has("spoons") or line.has("meat"),
    "salt_for": _is_salted,
    "sugar": lambda line: (
        bool(SWEET.search(line.text))
        and (line.has("meat") or (line.has("fractions") and bool(_SLICE.search(line.text))))
    ),
    "brine": lambda line: (
        line.has("fractions")
        and not (
            line.has("meat")
            or (line.water is None and _JUDGED.search(line.text))
            or is_curing(line.text)
            or of_fish_hours(line.species, line.text)
        )
    ),
    "salometer": lambda line: bool(re.search(r"\bsali?n?o|\d degrees? (?:pickle|brine)", line.text)),
    "equilibrium": lambda line: (
        _salted(line) and (line.has("water") or line.has("meat") or by_unit(line.text) is not None)
    ),
    "dilute": lambda line: (
        (line.has("water", "fractions") and len(line.fractions) + len(_LITRES.findall(line.text)) > 2)
        or _is_thinned(line)
    ),
    "topup": lambda line: line.has("water") and bool(REPLACED.search(line.text)),
    "fish_brine": lambda line: (
        line.species == "fish"
        and line.has("meat")
        and salt_share(line) is None
        and bool(_BRINED.search(line.text))
        and not re.search(r"\bdry\b", line.text)  # that is salt by its share
    ),
    "days": lambda line: (  # fish lies in salt alone, by the hour or a night
        _is_body(line) and line.species != "fish" and not (START_ASKED.search(line.text) or is_smoked(line))
    ),
    "fish_hours": lambda line: line.has("fractions") and of_fish_hours(line.species, line.text),
    "start_by": lambda line: _is_body(line) or counted_back(line) or dated(line),
    "cook": _is_cooked,
    "makes_it": lambda line: len(line.clocks) > 1 and _is_body(line),
    "out_on": is_span,
    "light_by": _is_lit,
    "eta": rises,
    "shopping": lambda line: line.has("people") or line.has("each") or _is_piece(line),
    "portions": _is_piece,
    "yield": lambda line: _is_piece(line) and not _WEIGHS_NOW.search(line.text),
    "loss": lambda line: weights(line) is not None or share_lost(line) is not None,
    "thaw": lambda line: line.has("meat"),
    "scale": lambda line: (
        (_is_little(line) and ("scale" in line.text or bare_grams(line.text) is not None))
        or weighed_instead(line.text) is not None
    ),
    "tsp_of": lambda line: (
        (_is_little(line) and not _is_piece(line)) or (line.salt is not None and bool(_SPOONS.search(line.text)))
    ),
    "spoons": lambda line: (
        spoonful(line.text) is not None
        and not (line.has("meat") or _LITRES.search(line.text) or rate(line.text) is not None)
        and not LOST.search(line.text)
    ),
    "recipe": lambda line: len(line.meats) >= 2,
    "rub": _is_rubbed,
    "spice": lambda line: line.has("meat") and bool(_SPICED.search(line.text)),
    "brine_amount": lambda line: line.has("meat") and not (line.water is not None and is_curing(line.text)),
    "inject": needled,
    "climb": climbs,
    "lethality": held,
    "cooling": lambda line: cools(line) and not TIMED.search(line.text),
    "cold_by": cold_by,
    "fire_out": lambda line: went_out(line) or beside_a_cold_pit(line) is not None,
    "chill": _is_cooled,
    "ice": lambda line: line.has("meat") and bool(re.search(r"\bice\b", line.text)) and not part_ice(line.text),
    "brine_ice": lambda line: (
        part_ice(line.text) or (len(_LITRES.findall(line.text)) > 1 and bool(re.search(r"\bice\b", line.text)))
    ),
    "brine_cools": _is_hot_brine,
    "price": lambda line: price(line.text) is not None or cost_each(line.text, line.people) is not None,
    "fuel": lambda line: (
        bool(_FUEL.search(line.text)) and ("pellet" not in line.text or bool(_PELLETS_FOR.search(line.text)))
    ),
    "altitude": lambda line: line.has("height") or height_asked(line),
    "meat_for": lambda line: _has_cure(line) and not line.has("meat") and meat_asked(line.text),
    "sodium": lambda line: (  # of what is eaten
        bool(_SLICE.search(line.text))
        or (bool(line.meat or "sodium" in line.text) and min(masses(line.text), default=1.0) <= 0.6)
    ),
    "steam": lambda line: (
        line.has("meat")
        and not (
            TO_THE_COLD.search(FROM_THE_COLD.sub(" ", line.text)) or _IN_A_BRINE.search(line.text) or is_smoked(line)
        )
    ),
    "keeps": lambda line: (
        (days_kept(line) is not None and not line.has("length") and bool(_KEPT.search(line.text)))
        or use_by_asked(line.text)
    ),
    "hold_for": lambda line: (
        bool(line.temperatures or line.durations or STAYS_HOT.search(line.text) or HELD_IN.search(line.text))
        and bool(KEPT_HOT.search(line.text) or "hold" in line.text or len(line.clocks) > 1)
        and not (held(line) and line.species and not KEPT_HOT.search(line.text))
        and not (falls(line) or TIMED.search(line.text) or re.search(r"\b(?:stuck|sat|sitting)\b", line.text))
    ),
}
