"""A cover brine, a soak and a sealed rest, and the heaviest of several pieces, as they are stated in words."""

from typing import Any, Final

from bot import measures
from core import patterns as re

_COVER: Final = re.compile(
    r"\bcover(?:ing)?[ -](?:brine|pickle)\b|\bcover(?:ed)? (?:it |the meat |them )?(?:with|by|in) (?:the |a |its )?"
    r"(?:rest(?: of (?:it|the (?:brine|pickle)))?|same (?:brine|pickle)|brine|pickle)\b"
    r"|\b(?:lay|put|leave|keep) (?:it|them|the meat) in the rest(?: of (?:it|the (?:brine|pickle)))?\b"
)
_NO_COVER: Final = re.compile(r"\b(?:no|without|skip|drop)(?: the| a| any)? cover(?:ing)?(?:[ -](?:brine|pickle))?\b")
COVER_SHARE: Final = 0.5  # kg of water about a kg of meat: enough to lie under in a bag. Common practice
_SPAN: Final = r"(?:for |another )?(?P<n>\d{1,2}(?:\.\d{1,2})?) ?(?P<unit>h|hrs?|hours?|d|days?|nights?)\b"
_REST: Final = (
    re.compile(
        rf"\b(?:equali[sz]e|even (?:it )?out|rest (?:it |them )?(?:sealed|in (?:a|its|the) (?:bag|pouch)))\b"
        rf".{{0,24}}?{_SPAN}"
    ),
    re.compile(rf"\b(?:let it |let them )?(?:rest|mellow) (?:it |them |sealed )*{_SPAN}(?: sealed)?"),
    re.compile(rf"{_SPAN} (?:of )?(?:sealed rest|rest(?:ing)? sealed|equali[sz]\w{{2,5}}|(?:to )?equali[sz]e)\b"),
)
_NO_REST: Final = re.compile(
    r"\b(?:no|without|skip|drop)(?: the| a| any)? (?:sealed rest|rest(?:ing)? sealed|equali[sz]\w{2,5})\b"
)
_SOAK: Final = re.compile(
    rf"\bsoak(?:ing)? (?:it |them |the meat )?(?:now )?(?:in (?:fresh |cold |ice )?water )?{_SPAN}"
)
_NO_SOAK: Final = re.compile(r"\b(?:no|without|skip|drop|dont)(?: the| a| any)? soak(?:ing)?\b")
_HEAVIEST: Final = re.compile(
    r"\b(?:the )?(?:biggest|heaviest|largest)(?: (?:one|piece|of them))?(?: is| weighs| has)?(?: about)? $"
)


def stated(text: str, rest: str) -> tuple[dict[str, Any], str]:
    """The fields that a plain text states, and what is left of the text without their words."""
    fields: dict[str, Any] = {}
    for words, found in (*_cover(text), *_after(text), *_heaviest(text)):
        fields |= found
        rest = rest.replace(words, " ")
    return fields, rest


def covers(text: str) -> bool:
    """Whether the rest of the pickle covers what was injected."""
    return bool(_COVER.search(text)) and not _NO_COVER.search(text)


def heaviest(text: str) -> measures.Measure | None:
    """The mass that is said of the heaviest piece alone."""
    masses = (m for m in measures.of_kind(text, "mass") if m.low is None)
    return next((m for m in masses if _HEAVIEST.search(text[: m.start])), None)


Found = tuple[str, dict[str, Any]]


def _cover(text: str) -> list[Found]:
    """A cover brine goes about what is injected, so it says that too."""
    if denied := _NO_COVER.search(text):
        return [(denied[0], {"cover_share": 0.0})]
    said = _COVER.search(text)
    return [(said[0], {"cover_share": COVER_SHARE, "method": "inject"})] if said else []


def _after(text: str) -> list[Found]:
    """A soak in fresh water and a sealed rest after the cure; a rest of hours alone is that of the cooked meat."""
    out: list[Found] = []
    for denial, words, name in ((_NO_REST, _rested, "rest_days"), (_NO_SOAK, _SOAK.search, "soak_hours")):
        denied, said = denial.search(text), words(text)
        if denied:
            out.append((denied[0], {name: 0.0}))
        elif said:
            out.append((said[0], {name: _hours(said) / (24.0 if name == "rest_days" else 1.0)}))
    return out


def _rested(text: str) -> re.Match[str] | None:
    said = next((hit for words in _REST if (hit := words.search(text))), None)
    if said is None or (said["unit"][0] not in "dn" and not re.search(r"equali|even|seal|bag|pouch", said[0])):
        return None
    return said


def _heaviest(text: str) -> list[Found]:
    said = heaviest(text)
    return [] if said is None else [(text[said.start : said.end], {"heaviest": said.value})]


def _hours(said: re.Match[str]) -> float:
    return float(said["n"]) * (24.0 if said["unit"][0] in "dn" else 1.0)
