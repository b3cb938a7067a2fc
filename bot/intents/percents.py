"""A percentage as it is stated: what it is a share of, and how strong a curing salt can be by what packets hold.

The strength of a curing salt is only ever what was typed with a percent sign: «cure #1» alone is no strength.
"""

from typing import Any, Final

from bot import measures
from bot.intents.intents import Change, Unclear
from bot.measures import Measure
from core import patterns as re
from core.plan.setup import Setup

_STRENGTH: Final = "cure_nitrite_fraction"
_CURE: Final = re.compile(r"\b(?:cure|curing|pink|nitrite|prague|pökelsalz|nps|packet|label)\b|#1\b")
_NO_STRENGTH: Final = re.compile(
    r"\b(?:cure ?#? ?[12]|pink (?:curing )?salt|prague powder|curing salt|pökelsalz)(?!\w)|#1\b"
)
# and none is told of
_LACKING: Final = re.compile(r"\b(?:find|where|buy|order|out of|lost|no more|need (?:more|some))\b")
_BARE_STRENGTH: Final = re.compile(
    r"\b(?:cure|pink salt|curing salt)(?: (?:is|at|of|says|=))? \d{1,2}(?:\.\d{1,3})?(?![\d.])"
    r"(?! ?(?:%|percent|pct|prozent|days?|d\b|g\b|gr|kg|kilos?|lbs?|pounds?|hours?|h\b|weeks?|ppm|mm|cm|in\b|of\b))"
)
_SHARES: Final = (
    ("cure_nitrate_fraction", re.compile(r"\bnitrate\b|\bsaltpet\w{1,3}\b")),
    (_STRENGTH, _CURE),
    ("salt_fraction", re.compile(r"\bsalt\b(?! (?:brine|water|solution))|\bsalz\b")),
    ("sugar_fraction", re.compile(r"\bsugar\b|\bzucker\b")),
    ("brine_strength", re.compile(r"\b(?:gradient )?brine\b")),
    ("pump_fraction", re.compile(r"\bpump(?:ed)?\b|\binject(?:ed|ion)?\b")),
)
# curing salts hold 0.4 to 6.25 % nitrite; what is said to be over 10 % is a slip, or no salt for a kitchen
_STRONGEST_CURE: Final = 0.10
# what packets of curing salt hold of nitrite: continental salts, the pink ones, and the strongest sold to butchers
_USUAL_CURE: Final = ((0.004, 0.010), (0.05, 0.065), (0.095, 0.105))
_CURE_ALONE: Final = (0.055, 0.065)  # a bare percentage in here is no salt, sugar or pump
_PUMPED: Final = (0.08, 0.2)  # of the green weight; common practice round the 10 % that 9 CFR 424.21(c) counts with
_OF_SALT: Final = re.compile(r"\bsalt\b|\d ?(?:h|hrs?|hours?)\b")  # of a brine by the clock
_NEAR: Final = 22  # characters on either side in which the word for a percentage must stand


def usual_cure(fraction: float) -> bool:
    """Whether some usual packet has such a strength: one that none has is asked about, never dosed by unasked."""
    printed = fraction >= 0.01 or abs(fraction * 1e4 - round(fraction * 1e4)) < 1e-6  # «0.625 %» is a slip of the point
    return printed and any(low - 1e-9 <= fraction <= high + 1e-9 for low, high in _USUAL_CURE)


def odd_strength(fraction: float) -> Unclear:
    """A strength that no usual packet has: asked about; by a tap the cook insists on what the packet says."""
    if not 0 < fraction <= _STRONGEST_CURE:
        return shared(fraction)
    return Unclear("strength", f"{100 * fraction:g} %", (Change({"cure_nitrite_fraction": fraction}),))


def shared(fraction: float) -> Unclear:
    """A share of which nobody said of what: nothing is taken, and what it can be is offered."""
    cure = (Change({"cure_nitrite_fraction": fraction}),) if _CURE_ALONE[0] <= fraction <= _CURE_ALONE[1] else ()
    offered = (*cure, *_pumped(fraction))
    return Unclear("share" if offered else "unit", f"{100 * fraction:g} %", offered)


def _pumped(fraction: float) -> tuple[Change, ...]:
    """«used 10 %»: no strength of a salt, but the share of the weight that is usually injected as pickle."""
    usual = abs(fraction - Setup.pump_fraction) < 1e-6
    way: dict[str, Any] = {"method": "inject"} if usual else {"pump_fraction": fraction}
    return (Change(way),) if _PUMPED[0] <= fraction <= _PUMPED[1] else ()


def open_strength(text: str) -> str:
    """The words for a curing salt that is named without a percentage («cure #1», «cure 6.25»), or ""."""
    said = any(m.kind == "fraction" and _role(text, m) == _STRENGTH for m in measures.find(text))
    found = None if said or _LACKING.search(text) else _BARE_STRENGTH.search(text) or _NO_STRENGTH.search(text)
    return found[0] if found else ""


def shares(text: str, found: tuple[Measure, ...]) -> tuple[dict[str, float], dict[str, str]]:
    """The shares that a plain text states, by their fields, and by slot what was typed and could not be taken.

    `found` are its measures. [- of the mass; `nitrite_target` mg/kg]
    """
    fields: dict[str, float] = {}
    unclear: dict[str, str] = {}
    for measure in found:
        if measure.kind == "ppm":
            fields["nitrite_target"] = measure.value
        if measure.kind != "fraction":
            continue
        role = _of_what(text, measure)
        cure = role == _STRENGTH
        odd = cure and 0 < measure.value <= _STRONGEST_CURE and not usual_cure(measure.value)
        if role and not odd and measure.low is None and 0 < measure.value <= (_STRONGEST_CURE if cure else 0.5):
            fields[role] = measure.value
        else:
            unclear["strength" if odd else "percent"] = text[measure.start : measure.end]
    return fields, unclear


def _of_what(text: str, measure: Measure) -> str:
    """The field of a percentage, or ""; one that packets of curing salt have is theirs, or open."""
    role = _role(text, measure)
    if not _CURE_ALONE[0] <= measure.value <= _CURE_ALONE[1]:
        return role
    if role == "brine_strength":  # what a packet says, or how strong the brine is
        return role if _OF_SALT.search(text) else ""
    if role == "salt_fraction":  # nobody salts so much: a packet holds it, «cure 6.25 % salt 2.5 %»
        return _STRENGTH if _CURE.search(re.split(r"[,;.]|\d", text[: measure.start])[-1]) else ""
    return role or _STRENGTH


def _role(text: str, measure: Measure) -> str:
    """The field of a percentage by the nearest word on either side, the following one first."""
    after, before = text[measure.end : measure.end + _NEAR], text[max(0, measure.start - _NEAR) : measure.start]
    after = re.split(r"[,;.]|\d", after)[0]
    before = re.split(r"[,;.]|\d", before)[-1]
    for side in (after, before):
        for name, words in _SHARES:
            if words.search(side):
                return name
    return ""
