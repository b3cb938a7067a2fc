"""Temperatures as people report them: «158», «158/245», «70c pit 120», «was 82f at 9, 44 at 7am», «core 203 soft».

A line is a reading when nothing in it is foreign to one: numbers, units, hours, the words for thermometers,
and small talk. What each number means is settled in `plausible`; what stays open is asked about.
"""

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot import measures
from bot.intents.context import IN_THE_COLD, SET_UP, Context
from bot.intents.intents import Reading, Snooze, Temperature, Unclear
from bot.intents.lengths import THICK_AND_THIN
from bot.intents.rated import MARK
from bot.intents.temperatures.beside import without_beside
from bot.intents.temperatures.bounds import bounded, is_foreseen
from bot.intents.temperatures.cold_readings import (
    SPOTS,
    cooling,
    of_one_fridge,
    of_the_brine,
    of_the_meat,
    raw_sizes,
    several_days,
)
from bot.intents.temperatures.lids import grate_alone
from bot.intents.temperatures.pairs import by_piece
from bot.intents.temperatures.plausible import everything
from bot.intents.temperatures.set_points import WANTED
from bot.intents.temperatures.settled import EARLIER, Found, settled
from bot.intents.temperatures.swings import APART, swings
from bot.intents.temperatures.thermometers import TENDER, TOUGH, Line, labelled, taken_apart
from bot.intents.temperatures.timed import timed
from core import patterns as re
from core.batch.events import Probe

# words with which a number is a wish, a rule or a plan: no reading
WISHES: Final = re.compile(
    r"\b(?:under|below|above|keep|target|until|till|want|should|need|max|min|between|set|if|when|will|aim|pull at"
    r"|runs?"
    r"|always|never|wont|not|instead|typo|meant|i said|moved?|dinner|lunch|eat|remind|cook at|smoke at|smoke to"
    r"|more|add)\b"
)
_LONGEST: Final = 1.5  # m; «154 in flat, 158 in point» are no inches
_LASTING: Final = frozenset(("been", "stuck", "stalled", "holding", "sitting", "steady"))
_FOR_A_WHILE: Final = re.compile(r"\b(?:for|at) \d+ ?(?:min|h)")
_NO_DEGREES: Final = re.compile(  # asked, or a number of something else: «fridge no 2», «on level 5», «3 years old»
    r"\b(?:shall|can|could|may|do|does) (?:i|we|it|the)\b|\b(?:no|nr|number|level|setting|stage|notch|shelf) \d"
    r"|\d (?:years?|yrs?|months?|old)\b"
)
_PROBED: Final = frozenset(
    ("meat", "meats", "core", "internal", "inside", "int", "probe", "middle", "center", "centre")
)
_NOT_YET: Final = frozenset(("not", "yet", "enough"))
_NOT_QUITE: Final = frozenset(("not", "nearly", "almost", "getting", "fast", "bald", "nicht"))  # and so not tender
_AS_IT_IS: Final = frozenset(("cold", "cool", "warm", "hot", "there"))  # «not cold yet, 46»
_LOOSE_WORDS: Final = 3  # foreign words that a line with a named thermometer and one number may hold
_BETWEEN: Final = re.compile(
    r"(?:its |it is |the |about |somewhere )*(?P<of>fridge|brine|core|pit|meat)?(?: is| at"
    r"|s)* ?between (?P<low>-?\d{1,3}(?:\.\d)?)"
    r"(?: ?[cf])? and (?P<high>-?\d{1,3}(?:\.\d)?(?: ?[cf])?)"
)
_FRACTION: Final = re.compile(r"(?<![\d/])[1-9]/(?:2|3|4|5|8|16)(?![\d/])")
_MINUTES: Final = ("30", "45", "60", "90")  # alone, and not called for, they may be a reminder
_COUNTED: Final = re.compile(  # «11 bags», «2 chunks», «5 days», «day 3»: no temperatures, but «pit 95 fish 48»
    r"(?<![\d.])[2-9] (?:breasts|legs|thighs|wings|drumsticks|chickens|ducks|turkeys|hams|loins|halves)\b|"
    r"\b\d{1,3} ?-?(?:days?|nights?|weeks?|months?)\b(?: old)?"
    r"|\b(?<!last )(?<!all )(?<!every )(?<!the )(?<!one )(?:day|night|week) \d{1,2}\b"
    r"|(?<![\d.])\b\d{1,2} (?:fill?ets?|sides?|fish|trouts?|birds?)\b(?! (?:is |was |at |now )?\d)"
    r"|(?<![\d.])\b\d{1,2} (?:bags?|packs?"
    r"|packets?|parcels?|pieces?|pcs|slices?|chunks?|people|guests?|probes?|thermometers?|sensors?|flips?|turns?"
    r"|spots|places"
    r"|tubs?|scoops?|bottles?|times"
    r"|readings?|sandwich(?:es)?|plates?|portions?|servings?|briquettes?|coals|logs|years?)\b"
)
_SINCE_A_MEAL: Final = re.compile(
    r" (?:since|after|before|from|at) (?:about )?(?:breakfast|brunch|lunch|tea|dinner|supper)(?: ?time)?\b"
)
_RESTS_IN: Final = re.compile(  # where it rests, beside what it reads: «down to 172 in the cooler»
    r"\b(?:still )?(?:resting |wrapped |up )?(?:in|under) (?:the |a |its |some )?(?:cooler|esky|cool ?box|towels?"
    r"|foil|blankets?|box)\b|\bstill resting\b"
)
_OUT_OF_ICE: Final = re.compile(r",? ?\b(?:after|out of|from|since) (?:the |an )?ice(?: ?bath| ?water)?\b")
# «pit 120 meat 66 in c», «core 58 pit 107 both celcius»: said once for every number
_ALL_IN: Final = re.compile(
    r"(?<=\d),? \(?(?:(?:both|all|its|thats|which|theyre|are|is|in|degrees?|deg) )+"
    r"(?P<unit>c|f|cel[sc]ius|centigrade|fahrenheit)\)?$"
)
_MIXED: Final = re.compile(r"\d{1,3} [1-9]/[2-8](?= ?(?:c|f|h|hrs?|hours?|degrees?)\b)")
_WEIGHED: Final = re.compile(r"\b(?:weigh(?:s|ed|t)?|heavy)\b")
_GOES_IN_AT: Final = re.compile(
    r"(?:the )?(?:meat|brisket|flat|belly|fish)s? (?:(?:is|are|went|goes|gone|going|now) )*in(?: the \w+)? at \d{2}\b"
)
_IN_A_WHILE: Final = re.compile(r"(?:(?:ok|yes|sure|maybe|later|ill do it|doing it) )*in \d{1,3}")  # minutes
_THICK: Final = re.compile(
    rf"{THICK_AND_THIN.pattern}|\b(?:middle|ends?|edges?)\b|\b(?:thick\w*|fat (?:end|side|part"
    rf"|bit))\b"
)
_COLD: Final = re.compile(r"\b(?:fridge|brine|pickle)\b")
_AIR_PROBE: Final = re.compile(r"\b(?:air|ambient|pit|grate|grill|lid|chamber|cooker|smoker) probe\b")
_MEAT: Final = re.compile(r"\b(?:meat|core|brisket|flat|point|ham|belly|inside|middle|internal|thick)\b")


def read_reading(text: str, context: Context, *, loose: bool = False) -> Reading | Unclear | None:
    """The temperatures of a plain line; Unclear with the readings it may be; None where it is something else.

    With `loose`, one number beside a named thermometer is taken out of a few foreign words too.
    """
    plain, unsure = bounded(text, context)
    found = _read(plain, context, loose=loose)
    return Unclear("bound", text[:60]) if unsure and found is not None else found


def _read(text: str, context: Context, *, loose: bool) -> Reading | Unclear | None:
    if _is_none(text, context):
        return None
    if swung := swings(text, context):
        return _of_a_swing(*swung, context)
    if context.phase in SET_UP and (several := several_days(text, context)):
        return several
    text = MARK.sub(" ", _COUNTED.sub(" ", _SINCE_A_MEAL.sub("", text)))
    text, lid = grate_alone(of_the_brine(text, context), context)
    if context.phase == "chilling":
        if text in _MINUTES and not (context.due_step or context.soon_step or "").startswith("chill_check"):
            by = Snooze(by=timedelta(minutes=int(text)))
            return Unclear("number", text, (*(Reading((t,)) for t in everything(float(text), context)[:2]), by))
        text = of_the_meat(_OUT_OF_ICE.sub(" ", text)).strip()
        if there := cooling(text, context):
            return there
    if context.phase == "resting":
        text = _RESTS_IN.sub(" ", text).strip()
    text = without_beside(_ALL_IN.sub(r" \g<unit>", text), context.phase)
    text = _MIXED.sub(lambda mixed: f"{measures.number(mixed[0]):g}", text)
    if _FRACTION.search(text) or (context.phase in SET_UP and _THICK.search(text) and not _COLD.search(text)):
        return None  # «thick end 2.5 thin end 1.5», «2 1/4»: how thick it is
    if between := _BETWEEN.fullmatch(text):
        return _either(between, context)
    if context.phase in IN_THE_COLD and not _MEAT.search(text):
        text = re.sub(r"\bprobes?\b", "display", text)  # a probe in the fridge, as long as there is no meat to stand in
    text = by_piece(of_one_fridge(text, context), context)
    line = taken_apart(_AIR_PROBE.sub("pit", text) if context.phase in ("drying", "cooking") else text)
    if not line.items or not (_is_loose(line, text) if loose else _is_strict(line, text)):
        return None
    if Probe.FRIDGE in line.labels and Probe.BRINE not in line.labels:
        context = replace(context, brine_made=False)  # «fridge 38 to 41»: no brine stands beside it
    asked = None if line.words & _PROBED else raw_sizes(labelled(line), context)
    found = asked or settled(labelled(line), line, context)
    if isinstance(found, list) and len(found) == 1 and is_foreseen(text):
        return Unclear("number", text[:60], (Reading((found[0][1],)),))  # «40 in 3 hours»: to come, or how long it took
    if isinstance(found, Unclear):
        return replace(found, text=text[:60])
    if _at_odds(found, line):
        return Unclear("number", text[:60], tuple(Reading((t,)) for _, t in found))
    return Reading(timed(found, line, context), tender=_tender(line), beside=lid)


def _is_none(text: str, context: Context) -> bool:
    """Whether a line with numbers tells what is wanted, in how many minutes, how far apart, or another quantity."""
    if WANTED.search(text) or _IN_A_WHILE.fullmatch(text) or APART.search(text) or _WEIGHED.search(text):
        return True
    goes_in = context.brine_made and _GOES_IN_AT.match(text)  # «meat in at 38»: put in, and how cold the brine is
    return bool(goes_in) or any(
        m.kind not in ("temperature", "duration") and (m.kind != "length" or m.value < _LONGEST)
        for m in measures.find(text)
    )


def _of_a_swing(rest: str, ends: tuple[Temperature, ...], context: Context) -> Unclear:
    """«158, pit 230 to 280»: what the pit reads now is asked, and what was read beside it is not lost."""
    beside = read_reading(rest, context) if re.search(r"\d", rest) else None
    read = beside.temperatures if isinstance(beside, Reading) else ()
    return Unclear("swings", rest[:60], tuple(Reading((*read, end)) for end in ends))


def _either(between: re.Match[str], context: Context) -> Unclear:
    """«between 3 and 4»: which of the two is the cook's to say."""
    ways = (read_reading(f"{between['of'] or ''} {between[end]}".strip(), context) for end in ("low", "high"))
    return Unclear("number", between[0][:60], tuple(way for way in ways if isinstance(way, Reading)))


def _at_odds(found: Found, line: Line) -> bool:
    """«the display says 5 but the probe 3.8»: two numbers for the same cold place at the same time."""
    cold = [t.probe for _, t in found if t.probe in (Probe.FRIDGE, Probe.BRINE)]
    if line.words & SPOTS and set(cold) == {Probe.FRIDGE}:
        return False  # «37 at the back 41 at the front»: two places, of which the warmer counts
    at_once = not any(item.time or item.ago for item, _ in found) and not line.over and not line.words & EARLIER
    return at_once and len(cold) == len(found) and len(cold) > len(set(cold))


def _is_strict(line: Line, text: str) -> bool:
    if line.foreign and not ({*line.foreign} <= _NOT_YET and line.words & (TENDER | _AS_IT_IS)):
        return False
    return not _FOR_A_WHILE.search(text) or bool(line.words & _LASTING)


def _is_loose(line: Line, text: str) -> bool:
    few = len(line.foreign) <= _LOOSE_WORDS and 1 <= len(line.items) <= len(line.labels or [1])
    return few and bool(line.labels) and not WISHES.search(text) and not _NO_DEGREES.search(text)


def _tender(line: Line) -> bool:
    return bool(line.words & TENDER) and not line.words & (_NOT_QUITE | TOUGH)
