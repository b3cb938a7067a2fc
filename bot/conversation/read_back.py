"""Readings that are asked for again: the last of a thermometer, the one at an hour, a number, the span of them."""

import re
from collections.abc import Mapping
from datetime import timedelta
from typing import Final

from bot.conversation.around import Answer, Of
from bot.conversation.understand import Understood, context_of
from bot.intents import when
from bot.intents.normal import normal
from bot.wording import recalled
from core.batch.events import Probe
from core.service.turn import Turn

PROBES: Final = (
    (Probe.FRIDGE, r"\bfridge\b"),
    (Probe.PIT, r"\b(?:pit|smoker|grill|fire)\b"),
    (Probe.BRINE, r"\b(?:brine|pickle)\b"),
    (Probe.CORE, r"\b(?:core|middle|meat|internal|inside)\b"),
)
HALF_A_DAY: Final = timedelta(hours=12)
_OF_BOTH: Final = re.compile(  # «pit and core», «how is it pit wise and meat wise»
    r"\b(?:pit|smoker|grill|fire)\b.*\b(?:and|n|&|plus|or)\b.*\b(?:core|meat|middle|internal|inside)\b"
    r"|\b(?:core|meat|middle|internal|inside)\b.*\b(?:and|n|&|plus|or)\b.*\b(?:pit|smoker|grill|fire)\b"
    r"|\bboth (?:temps?|temperatures|readings|numbers|probes)\b"
)
_OPEN_HOUR: Final = re.compile(
    r"\bat (?:1[0-2]|[1-9])(?:[:.][0-5]\d)?\b(?! ?(?:am|pm))(?!.*\b(?:morning|last night|yesterday)\b)"
)


def _probe(text: str) -> Probe | None:
    """The thermometer that a line names."""
    return next((probe for probe, words in PROBES if re.search(words, text.lower())), None)


def _between(turn: Turn, meant: Understood, of: Of) -> str:
    at_hour = re.search(r"\bat (?:\d{1,2}\b|noon|midnight)", of[1].lower()) is not None
    return _reading(turn, meant, of) if at_hour else recalled.between(of[0], _probe(of[1]))


def _reading(turn: Turn, meant: Understood, of: Of) -> str:
    """The last reading, or the one nearest to an hour that is named."""
    a, text = of
    probe = _probe(text)
    said = when.past(normal(text, turn.person.language).strip(" ?"), context_of(turn, meant.message, None, a))
    if said is None or not said.hour_said:
        return recalled.last_of_both(a) if _OF_BOTH.search(text.lower()) else recalled.last_reading(a, probe)
    later = said.at + HALF_A_DAY  # «what was the core at 7», asked at eight in the evening
    open_ = _OPEN_HOUR.search(normal(text, turn.person.language)) is not None
    return recalled.reading_at(a, probe, later if open_ and later <= a.now else said.at)


def _got(turn: Turn, meant: Understood, of: Of) -> str:
    number = re.search(r"\d{2,3}(?:\.\d)?", of[1])
    return recalled.got(of[0], float(number[0])) if number else recalled.last_reading(of[0], None)


TOPICS: Final[Mapping[str, Answer]] = {"last_reading": _reading, "got": _got, "between": _between}
