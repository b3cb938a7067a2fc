"""Temperatures that are wanted, as they are stated: of the pit, of the core when it comes off, of the fridge.

How it was read is another thing (`readings`): here stands only what somebody sets.
"""

from typing import Final

from bot import measures
from bot.intents.deeds import HEATS
from bot.intents.temperatures.plausible import set_point
from bot.measures import Measure
from core import patterns as re
from core.batch.events import Probe
from core.units import Celsius

_NEAR: Final = 22  # characters before a temperature in which its word must stand
_AFTER: Final = 12
_FRIDGE: Final = re.compile(
    r"\b(?:fridge|refrigerator|kühlschrank)\b.{0,16}\b(?:runs?|set|usually|always|normally|läuft)\b"
    r"|\b(?:set|turn|turned) (?:the |my )?(?:fridge|refrigerator)\b"
)  # how it runs; without such a word it is a reading
# «63 c in the middle is enough for me», «i like it at 63 c»: how it is wanted, and nothing that was read
WANTED: Final = re.compile(
    r"\b(?:is|are|would be|will be|thats?) (?:quite |well |more than )?(?:enough|plenty)\b|\benough for (?:me|us)\b"
    r"|\b(?:i|we)(?: only| just| really| would| d)* (?:like|want|prefer|love)"
    r" (?:it |them |mine |the \w+ )?(?:at|to|done at)\b"
)
_PIT: Final = re.compile(r"\b(?:pit|smoker|cooker|smoke it(?! to\b)|smoke at|cook at|grill|run it|run)\b")
_PIT_BARE: Final = re.compile(
    r"\b(?:(?:pit|smoker|grill)(?: is| at| to)?|(?:cook|smoke)(?: it"
    r"| them)?(?: at)?(?= [12]\d\d\b)) (?P<value>\d{2,3})(?![\d.:/])"
    r"(?! ?(?:°|degrees?|deg\b|c\b|f\b|%|h\b|hours?|hrs?\b|min|kg|kilos?|lbs?\b|pounds?|g\b|mm|cm|in\b|to\b|-))"
)
_TARGET: Final = re.compile(
    r"\b(?:target|smok(?:e|ing) (?:(?:it|them|the \w+) )?(?:up )?to|(?:core|inside|middle) (?:of|at|to)"
    r"|(?:pull|take|taking) (?:it |the meat )?(?:off )?(?:at|to)|off at|cook (?:it )?to|finish at|until it hits)\b"
)
_TARGET_BARE: Final = re.compile(
    r"(?:\b(?:pull|take) (?:it|them|the meat) (?:off )?at|^(?:pull|take)(?: it)? (?:(?:off )?at|to)"
    r"|\b(?:cook|smoke)(?: (?:it|them|the meat))? (?:up )?to) (?P<value>\d{2,3})(?![\d.:/]| ?(?:c|f|°|min|%)\b)"
)
_FRIDGE_BARE: Final = re.compile(
    r"\b(?:fridge|refrigerator)(?: (?:is|its|at|reads|temp))* (?P<value>\d{1,2}(?:\.\d)?)(?: ?°? ?(?P<unit>[cf])\b)?"
    r"(?![\d:/.]| ?(?:am|pm|h|hours?|days?|min|kg|lbs?|in|mm|cm)\b)"
)
HEATING: Final = re.compile(HEATS)
_HEATED_TO: Final = re.compile(
    r"\b(?:at|to|for|@) ?(?P<n>\d{3})(?: ?°? ?(?P<unit>[cf])\b)?(?![\d:]| ?(?:am|pm|min|h)\b)"
)
_BARE: Final = (("pit_c", Probe.PIT, _PIT_BARE), ("target_c", Probe.CORE, _TARGET_BARE))


def stated(text: str, found: tuple[Measure, ...]) -> dict[str, Celsius]:
    """The wanted temperatures of a plain text by their fields; `found` are its measures. [°C]"""
    fields: dict[str, Celsius] = {}
    for measure in found:
        if measure.kind == "temperature" and (name := _field(text, measure)):
            fields[name] = measure.value
    return {**_bare(text, fields), **fields}


def _field(text: str, measure: Measure) -> str:
    if WANTED.search(text) and not (_FRIDGE.search(text) or _PIT.search(text)):
        return "target_c"
    before = text[max(0, measure.start - _NEAR) : measure.start]
    after = text[measure.end : measure.end + _AFTER]
    for name, words in (("target_c", _TARGET), ("fridge_c", _FRIDGE), ("pit_c", _PIT)):
        if words.search(before) or (name == "pit_c" and words.search(after)):
            return name
    return ""


def heated_to(text: str) -> tuple[str, dict[str, Celsius]]:
    """«firing up the grill at 200»: a plain text without how hot it is to run, and that; no hour, and not read yet."""
    found = _HEATED_TO.search(text) if HEATING.search(text) else None
    units = (found["unit"],) if found and found["unit"] else set_point(Probe.PIT, float(found["n"])) if found else ()
    if found is None or len(units) != 1:
        return text, {}
    rest = " ".join((text[: found.start()] + text[found.end() :]).split())
    return rest, {"pit_c": measures.to_house(float(found["n"]), units[0])}


def of_the_fridge(text: str) -> dict[str, Celsius]:
    """«fridge 45 f», told with what is begun: how it runs, since there is no batch yet of which it would be read."""
    found = _FRIDGE_BARE.search(text)
    if found is None:
        return {}
    units = (found["unit"],) if found["unit"] else set_point(Probe.FRIDGE, float(found["value"]))
    return {"fridge_c": measures.to_house(float(found["value"]), units[0])} if len(units) == 1 else {}


def _bare(text: str, told: dict[str, Celsius]) -> dict[str, Celsius]:
    """«pulled, pit 110», «slice it cold, pull it at 155»: without a unit, where only one makes sense."""
    fields: dict[str, Celsius] = {}
    for name, probe, words in _BARE:
        hit = words.search(text) if name not in told else None
        units = set_point(probe, float(hit["value"])) if hit else ()
        if hit and len(units) == 1:
            fields[name] = measures.to_house(float(hit["value"]), units[0])
    return fields
