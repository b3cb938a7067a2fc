"""A strong brine by the clock as it is stated in words: how strong it is, and how long the meat lies in it."""

from typing import Any, Final

from bot import measures
from bot.intents.context import Context
from bot.intents.intents import Ask, Intent
from core import patterns as re
from core.cure.contents import LEAFLET_BRINE, SATURATED_BRINE
from core.units import Hours

NIGHT: Final[Hours] = 12.0  # common practice
_SALT_OF_MEAT: Final = 0.06  # the most that meat is salted to; a brine is said to have more
_BRINE: Final = re.compile(r"\bbrin(?:e|ed|ing)\b")
_N: Final = measures.NUMBER
_SPAN: Final = (
    rf"(?P<n>{_N}|an?|half an) ?-?(?P<unit>h|hrs?|hours?|min|mins|minutes?)\b"
    r"(?! (?:ago|left|to go|now|already|so far|late))"
)
_SHARE: Final = rf"(?:{_N}) ?(?:%|percent|pct)"
_HOURS: Final = (
    re.compile(rf"\b(?:in|into)(?: \w+){{0,2}}? (?:{_SHARE} )?(?:salt )?brine,? (?:for )?(?:about )?{_SPAN}"),
    re.compile(
        rf"\bbrin(?:e|ing|ed)(?: (?:it|them|the \w+))?(?:(?: at| of| with| in)? {_SHARE}(?: salt)?)?(?: instead)?,? "
        rf"(?:for )?(?:about )?{_SPAN}"
    ),
    re.compile(rf"{_SPAN} (?:of |for |in |long )?(?:an? |the |that )?(?:{_SHARE} )?(?:salt )?(?:brine|brining)\b"),
)
_DRY: Final = re.compile(
    r"\b(?:dry[ -]?brin(?:e|ed|ing)|dry[ -]?salt(?:ed|ing)?|salt(?:ed|ing)|salt(?= (?:it|them|the)\b))"
    rf"(?: (?:it|them|the \w+))?(?: dry)?,? ?(?:for )?(?:about )?(?:{_SPAN}|overnight\b)"
)
_AT_THE_END: Final = re.compile(rf"(?:,|\bfor)(?: about)? {_SPAN}$")
_SAID: Final = rf"(?:{_SHARE} (?:salt )?brine|brine (?:of |at |with )?{_SHARE}(?: salt)?)(?: instead)?"
_APART: Final = re.compile(
    rf"\b(?P<brine>{_SAID}), (?:and )?(?:for )?(?=(?:{_N}|an?|half an) ?(?:h|hrs?|hours?|min\w*)\b)"
)
_BEHIND: Final = re.compile(
    rf"\bbrine (?:it |them )?for (?P<span>(?:{_N}|an?|half an) ?(?:h|hrs?|hours?|min\w*|days?)) "
    rf"(?:at|in) (?:a )?(?P<share>{_SHARE})(?! brine)"
)
_WISHED: Final = re.compile(
    r"^(?:make (?:it|that)|(?:i )?want|only|just|lets (?:do|say)|change (?:it |that )?to|leave (?:it|them) (?:for )?) "
    rf"(?P<span>(?:{_N}|an?|half an) ?(?:h|hrs?|hours?|min\w*)) in (?:the |its )?brine$"
)
_STRONG: Final = re.compile(r"\b(?:strong|strong wet|quick|fast) brin(?:e|ing)\b")
_DEGREES: Final = re.compile(
    rf"\b(?P<n>{_N}) ?(?:°|degrees?|deg)?,? ?(?:sal(?:ometer|inometer)?|brine ?ometer)\b(?: degrees?)?"
    rf"|\b(?P<of>{_N}) ?(?:°|degrees?|deg) (?:salt )?brine\b"
)
_PER_LITRE: Final = re.compile(
    rf"\b(?P<g>{_N}) ?(?:g|grams?)(?: of)?(?: \w+)? sal[tz] (?:per|pro|to (?:a|the|1|one)|in (?:a|1|one)|a|/) ?"
    r"(?:1 )?(?:l|lit(?:er|re))\b"
)
_PARTS: Final = re.compile(
    r"\b1 (?:part )?(?:of )?salt (?:to|in|:) ?(?P<n>\d{1,2}) (?:parts? )?(?:of )?water by weight\b"
)
_CUPS: Final = re.compile(
    rf"\b(?:{_N}) (?:cups?|parts?|tbsp|tablespoons?)(?: of)?(?: \w+)? salt (?:to|in|per|:) ?(?:{_N}) "
    r"(?:cups?|parts?|quarts?|gallons?|pints?)(?: of)? water\b(?! by weight)"
)
_STILL_IN: Final = re.compile(
    r"\bstill (?:lies |lying |sitting |is )?(?:in (?:the |its |a )?(?:brine|salt|cure|bag|tub|bucket)|in there)\b"
)
_LASTS: Final = re.compile(r"\bhow long\b|\bhow many (?:hours|minutes)\b|\bhours\b|\bat most\b|\btoo long\b|\blonger\b")
_WORDED: Final = {"a": 1.0, "an": 1.0, "half an": 0.5}
Found = tuple[str, dict[str, Any]]


def stated(text: str, rest: str) -> tuple[dict[str, Any], str]:
    """The strength and the hours of a brine that a plain text states, and what is left of it without their words."""
    fields: dict[str, Any] = {}
    strong = _strength(text)
    for words, found in (*strong, *_hours(text, bool(strong))):
        fields |= found
        rest = rest.replace(words, " brine ")
    return fields, rest


def joined(text: str) -> str:
    """«15 % brine, 3 hours», «make it 2 hours in the brine» in the one way in which a brine and its hours are read."""
    text = _BEHIND.sub(r"\g<share> brine for \g<span>", text)
    return _WISHED.sub(r"brine for \g<span>", _APART.sub(r"\g<brine> for ", text))


def by_the_cup(text: str) -> str:
    """«1 cup salt to 7 cups water»: how strong that is depends on the salt, so its words are given back to be asked."""
    said = _CUPS.search(text)
    return said[0] if said else ""


def read_still_in(text: str, context: Context) -> Intent | None:
    """«forgot it, still in the brine»: nothing was left out for good, and what is due is done now."""
    there = context.phase == "curing" and _STILL_IN.search(text) and not re.search(r"\d", text)
    return Ask("now", text=text) if there else None


def of_fish_hours(species: str, text: str) -> bool:
    """Whether a line asks how long fish lies in a brine: no salt is weighed for that."""
    return species == "fish" and bool(_LASTS.search(text))


def of_brine(fields: dict[str, Any], text: str) -> dict[str, Any]:
    """«brine with 20 % salt»: more than meat is ever salted to is the strength of the brine; its days are its hours."""
    salt = fields.get("salt_fraction", 0.0)
    if salt > _SALT_OF_MEAT and "brine_strength" not in fields and _BRINE.search(text):
        fields = {name: v for name, v in fields.items() if name != "salt_fraction"} | {"brine_strength": salt}
    if "brine_strength" in fields and "cure_days" in fields:
        fields = dict(fields)
        fields["brine_hours"] = 24.0 * fields.pop("cure_days")
    return fields


def _strength(text: str) -> list[Found]:
    if said := _PER_LITRE.search(text):
        grams = measures.number(said["g"]) or 0.0
        return [(said[0], {"brine_strength": grams / (1000.0 + grams)})]
    if said := _PARTS.search(text):
        return [(said[0], {"brine_strength": 1.0 / (1.0 + float(said["n"]))})]
    if (plain := _STRONG.search(text)) and not re.search(r"\d ?(?:%|percent|pct|°|sal)", text):
        return [(plain[0], {"brine_strength": LEAFLET_BRINE})]
    said = _DEGREES.search(text)
    degrees = measures.number(said["n"] or said["of"]) if said else None
    if said is None or degrees is None or not 10.0 <= degrees <= 100.0:
        return []
    return [(said[0], {"brine_strength": round(degrees / 100.0 * SATURATED_BRINE, 4)})]


def _hours(text: str, strong: bool) -> list[Found]:
    """The hours beside the word for a brine, or at the end of what tells its salt by the litre."""
    if dry := _DRY.search(text):
        return [(dry[0], {"method": "dry", "salting_hours": _long(dry)})]
    said = next((hit for words in (*_HOURS, *((_AT_THE_END,) if strong else ())) if (hit := words.search(text))), None)
    if said is None:
        return []
    words = said[0][said.start("n") - said.start() : said.end("unit") - said.start()]
    return [(words, {"brine_hours": _long(said)})]


def _long(said: re.Match[str]) -> Hours:
    """A span in hours; a night of salt is twelve."""
    if said["n"] is None:
        return NIGHT
    many = _WORDED.get(said["n"]) or measures.number(said["n"]) or 0.0
    return many / (60.0 if said["unit"].startswith("min") else 1.0)
