"""Sums of the clock and the calendar: when to begin, when to light, how long it still takes, how long it stays hot."""

import re
from dataclasses import replace
from datetime import datetime, time
from typing import Final

from bot import measures
from bot.conversation.sums_dates import comes_out, is_enough
from bot.conversation.sums_hot import NEEDLED, Answer, piece_of, setup_of, until_ready
from bot.conversation.sums_low_bird import too_low
from bot.conversation.sums_salt import KITCHEN, need
from bot.intents.clock import instant, wall_of
from bot.intents.pouring import as_ice, poured_of
from bot.intents.sums.of_days import EATEN_AT
from bot.intents.sums.of_heat import RATE, between, in_time
from bot.intents.sums.told import THINNEST, Told, told
from bot.wording import sums, sums_beside, sums_hot, sums_time
from core.answers import mixing
from core.answers.amounts import Span
from core.batch import material
from core.cure.thumb import square_rule
from core.errors import Missing
from core.heat.band import Band
from core.heat.brine_pot import hours_to, ice_into, with_ice
from core.heat.cooling import rest
from core.meat.piece import Piece
from core.service.turn import Turn
from core.units import Celsius, Days, Hours

HOT_C: Final[Celsius] = 60.0  # 140 °F; sources.FSIS_DANGER_ZONE
WARM_C: Final[Celsius] = 20.0
ROOM_C: Final[Celsius] = 20.0
SCALDING_C: Final[Celsius] = 45.0  # cooler than that no brine is called hot: it is what is wanted of it. Judgement
LUKEWARM_C: Final[Celsius] = 30.0  # from where a pot may go into the fridge without warming it much. Judgement
BRINE_COLD_C: Final[Celsius] = 4.4  # 40 °F; sources.FSIS_DANGER_ZONE
OFF_THE_FIRE: Final[Celsius] = 93.0  # where no core is told: tender
_ICE_ASKED: Final = re.compile(r"\bhow much ice\b")
USUAL: Final = "3 kg brisket flat"
REST: Final[Hours] = 1.0
STALL_ENDS_C: Final[Celsius] = 76.7  # 170 °F. Common practice
STALL_BEGINS_C: Final[Celsius] = 65.6  # 150 °F. Common practice
STALLED: Final = 3.0  # K in an hour: half of what meat without a wrap climbs before it, and less. Judgement
STALL_K: Final = 9.0  # from there on the worst of it lies behind. Judgement
STANDS: Final = (2.0, 3.5, 5.0)  # h that meat without a wrap stands in its stall. Common practice
_AN_HOUR_AGO: Final = re.compile(r"\b(?:an?|1) h(?:ou)?r ago\b")
_ICE_HAD: Final = re.compile(r"\d ?(?:kg|kilos?|lbs?|pounds?) (?:bags? )?(?:of )?ice\b.*\b(?:enough|do|ok)\b")
TWICE: Final = 2.0  # what melts, so that ice is left in the water. Common practice
_OVEN: Final = re.compile(r"\b(?:oven|warmer|warming drawer|holding cabinet|proofer)\b")
HOTTEST_HOLD_C: Final[Celsius] = 95.0  # hotter it cooks on. Judgement
_LIT_THEN_ON: Final = re.compile(r"\b(?:light|lit|lighting|fire)\b.*\b(?:goes|go|going|is|meat|it) on\b")
_ON_AT: Final = re.compile(
    r"\b(?:on|start(?:s|ed|ing)?|goes on|went on|put (?:it )?on)\b(?: \w+){0,2}? (?:at )?\d{1,2}(?::\d\d)?"
    r"(?! ?(?:h|hrs?|hours?)\b) ?(?:am|pm)?\b"
    r"(?=.*\b(?:done|ready|finish\w*|off|when (?:can|do|will|could) (?:i|we) (?:expect to )?eat)\b)"
    r"|\b(?:done|ready|finish\w*|off)\b.*\bif (?:i|we|it) (?:starts?|puts? (?:it )?on|go(?:es)? on)\b(?: \w+){0,2}? \d"
)
_TONIGHT: Final = re.compile(r"\b(?:tonight|this evening|at night)\b")
_WHEN_EAT: Final = re.compile(r"\bwhen (?:can|do|will|could) (?:i|we) (?:expect to )?eat\b")
_WRAPPED: Final = re.compile(r"\b(?:wrap\w*|foil\w*|paper)\b")
_BESIDE: Final = re.compile(r"\b(?:vs|versus|than|instead|compared|against|or|double|half|and|to)\b")
LIGHTING: Final[Hours] = 1.0
SHORTEST_COOK: Final[Hours] = 3.0  # «on at 10 am, eat by 7» is the evening, «on at 6, eat at 7» too. Judgement
WORTH_SAYING: Final[Hours] = 1.0  # between the hours that are sure and the likelier ones. Judgement
HALF_A_DAY: Final[Hours] = 12.0
_REST: Final = re.compile(r"^ ?(?:of )?(?:rest\w*|hold\w*|to rest)\b")
_RESTS: Final = re.compile(r"\b(?:rest|hold)\w*(?: (?:it|for|of|about|another))* $")
_LIT: Final = re.compile(r"\b(?:lit|light|lighting)\b(?!.*\b(?:meat|on|in)\b)")
LATE_MORNING: Final[Hours] = 11.0  # nobody has dinner or guests before, where its half of the day is not told
_EVENING: Final = re.compile(r"\b(?:dinner|supper|guests?|party|evening|tonight)\b")
DAWN: Final[Hours] = 7.0  # a meal at an hour below that, without its half of the day, is of the afternoon


def cure_days(turn: Turn, line: Told) -> tuple[Days, Days]:
    """Days in the cure as they are planned for such a piece: for half of them, and for nine in ten. [d]"""
    setup = setup_of(line)
    found = material.days_of(setup, turn.person)
    band, refusal = material.planned_days(setup, (found, found.immersion.dose), None)
    if band is None:
        raise refusal or Missing("body")
    return band.p50, band.p90


def _days(turn: Turn, line: Told) -> Answer:
    """Days as a plan would have them, the product's own way and no fewer than it wants; and by the trade's rule."""
    setup = setup_of(line)
    found = material.days_of(setup, turn.person)
    band, refusal = material.planned_days(setup, (found, found.immersion.dose), None)
    if refusal is not None or band is None:
        raise refusal or Missing("body")
    keys = [source.key for source in found.sources]
    if other := _other_thickness(turn, line):
        one = (found.immersion.piece.thickness, band.p90)
        rules = square_rule(found.immersion.piece), square_rule(other[0])
        said = sums_beside.two_thick(one, (other[0].thickness, other[1]), rules, turn.person)
        return said, keys, {"cure_days": band.p90, "other_days": other[1]}
    by_rule = None if setup.method == "inject" else square_rule(found.immersion.piece)
    said = sums.days((band, by_rule), setup.method, found.immersion.piece, turn.person)
    if setup.method == "inject" and not NEEDLED.search(line.text):
        said = f"{said}\n{sums.not_injected(square_rule(found.immersion.piece))}"
    took = (band.p90, by_rule)
    said = "\n".join(filter(None, (is_enough(line, took), comes_out(turn, line, took), said)))
    return said, keys, {"cure_days": band.p90, "by_rule": by_rule or -1.0}


def _other_thickness(turn: Turn, line: Told) -> tuple[Piece, Days] | None:
    """The second of two thicknesses that are compared, with its days."""
    lengths = [m.value for m in measures.find(line.text) if m.kind == "length" and m.value >= THINNEST]
    if len(set(lengths)) != 2 or not _BESIDE.search(line.text):
        return None
    setup = setup_of(replace(line, length=lengths[1]))
    found = material.days_of(setup, turn.person)
    band, _ = material.planned_days(setup, (found, found.immersion.dose), None)
    return None if band is None else (found.immersion.piece, band.p90)


def _light_by(turn: Turn, line: Told) -> Answer:
    alone, lit_before = len(line.clocks) == 1, len(line.clocks) == 2 and _LIT_THEN_ON.search(line.text)
    eaten = EATEN_AT.search(_WHEN_EAT.sub("", line.text))
    if (lit_before or (alone and _ON_AT.search(line.text))) and not eaten:
        ready, on = until_ready(turn, line)[0], line.clocks[-1]
        on += HALF_A_DAY if on < HALF_A_DAY and line.half_told and _TONIGHT.search(line.text) else 0.0
        at = tuple(_clock(turn, on + hours) for hours in (ready.p10, ready.p50, ready.p90))
        return (
            sums_time.done_at(_clock(turn, on), at, ready, turn.person),
            ("COOK_CASE", *KITCHEN),
            {"hours": ready.p50},
        )
    cooks, rests = _cooks_and_rests(line)
    found = until_ready(turn, line) if cooks is None else None
    ready = found[0] if found else Band(cooks or 0.0, cooks or 0.0, cooks or 0.0)
    low = too_low(piece_of(line), found[1], turn.person) if found else ""
    eat = _awake(line)
    off = eat - rests
    lit = off - ready.p90 - LIGHTING
    at = tuple(_clock(turn, hour) for hour in (lit, off - ready.p90, eat))
    before = -int(lit // 24.0)  # how many days before the meal
    said = sums_time.light_by(at, before, (ready, rests), turn.person)
    if ready.p90 - ready.p50 >= WORTH_SAYING:
        said = f"{said}\n{sums_time.likelier(_clock(turn, off - ready.p50), turn.person)}"
    return f"{low}\n{said}".strip(), ("COOK_CASE", *KITCHEN), {"hours": ready.p90}


def _cooks_and_rests(line: Told) -> tuple[Hours | None, Hours]:
    """So long it cooks, where that is told, and rests: «4 hr rest», «rests 4 hours», else the usual hour. [h]"""
    spans = [m for m in measures.find(line.text) if m.kind == "duration"]
    rests = [m for m in spans if _REST.match(line.text[m.end :]) or _RESTS.search(line.text[: m.start])]
    cooks = next((m.value / 3600.0 for m in spans if m not in rests), None)
    return cooks, rests[0].value / 3600.0 if rests else REST


def _makes_it(turn: Turn, line: Told) -> Answer:
    """Whether a piece that goes on at one hour is ready for a meal at another."""
    eat, on = _awake(line), line.clocks[-2]
    if _LIT.search(line.text) and len(line.clocks) == 2:
        on += LIGHTING
    rests = _cooks_and_rests(line)[1]
    if line.open_halves[-1] and eat == line.clocks[-1] and (eat - on) % 24.0 >= HALF_A_DAY + SHORTEST_COOK:
        eat += HALF_A_DAY
    has = (eat - on) % 24.0 - rests
    ready = until_ready(turn, line)[0]
    said = sums_beside.in_time((has, rests), ready, (_clock(turn, on), _clock(turn, eat)), turn.person)
    return said, ("COOK_CASE", *KITCHEN), {"has_h": has, "ready_h": ready.p50}


def _awake(line: Told) -> Hours:
    """The last hour that is told; of the afternoon, where it is early and its half of the day is not told."""
    hour = line.clocks[-1]
    latest = LATE_MORNING if _EVENING.search(line.text) else DAWN
    return hour + HALF_A_DAY if line.half_told and hour < latest else hour


def _clock(turn: Turn, hour: Hours) -> datetime:
    """An hour of a day, to the quarter before it."""
    minutes = int(hour * 4 // 1) * 15 % (24 * 60)
    return instant(wall_of(turn.now, turn.person.zone).date(), time(*divmod(minutes, 60)), turn.person.zone).at


def _eta(turn: Turn, line: Told) -> Answer:
    if pace := RATE.search(line.text):
        last, target = told(RATE.sub(" ", line.text), line.reads_f).temperatures
        first, hours = last - float(pace[1] or pace[2]) * (1.0 / 1.8 if _in_fahrenheit(line) else 1.0), 1.0
    else:
        first, last, target = in_time(line)[-3:]
        hours = need(between(line) or (1.0 if _AN_HOUR_AGO.search(line.text) else None), "hours")
    left = mixing.straight_on(first, last, hours, target)
    at = _clock(turn, _awake(line) + left.usual) if line.clocks else None
    body = {"left_h": left.usual}
    if _stall_lies_ahead(line, last, target):
        return sums_time.past_the_stall(left.usual, Span(*(left.usual + h for h in STANDS))), KITCHEN, body
    if _in_the_stall(line, (first, last), hours, target):
        return sums_time.in_the_stall(left.usual), KITCHEN, body
    return sums_time.straight_on(left, at, turn.person), KITCHEN, body


def _in_the_stall(line: Told, readings: tuple[Celsius, Celsius], hours: Hours, target: Celsius) -> bool:
    """Whether both readings lie where red meat without a wrap stands, and it hardly rises."""
    first, last = readings
    bird = line.species in ("turkey", "chicken", "duck", "fish")
    slow = (last - first) / hours <= STALLED
    return (
        slow and first >= STALL_BEGINS_C and last < STALL_ENDS_C < target and not (bird or _WRAPPED.search(line.text))
    )


def _stall_lies_ahead(line: Told, last: Celsius, target: Celsius) -> bool:
    """Whether red meat without a wrap is still before its stall, on its way to be tender."""
    bird = line.species in ("turkey", "chicken", "duck", "fish")
    return last < STALL_ENDS_C - STALL_K and target > STALL_ENDS_C and not (bird or _WRAPPED.search(line.text))


def _in_fahrenheit(line: Told) -> bool:
    """Whether the figures of a line are °F: no core is told so hot in °C."""
    bare = [float(n) for n in re.findall(r"(?<![\d.])\d{3}(?![\d.])", line.text)]
    return any(n > 105.0 for n in bare) or bool(re.search(r"\d ?f\b", line.text))


def _hold_for(turn: Turn, line: Told) -> Answer:
    """How long a piece, or a usual flat, stays above 60 °C in a box with towels, and whether that is enough."""
    if any(WARM_C < t < HOT_C for t in line.temperatures):
        return sums_time.too_cool(turn.person), ("FSIS_DANGER_ZONE",), {"stays_h": 0.0}
    if _OVEN.search(line.text) and any(HOT_C <= t <= HOTTEST_HOLD_C for t in line.temperatures):
        return sums_time.in_an_oven(turn.person), ("FSIS_DANGER_ZONE", *KITCHEN), {"wanted_h": between(line) or -1.0}
    piece = piece_of(line if line.meat or line.length else told(USUAL))
    start = next((t for t in line.temperatures if HOT_C < t <= 100.0), OFF_THE_FIRE)
    stays = rest(piece, "box", start).to(HOT_C)
    if stays is None:
        raise Missing("body")
    wanted = between(line)
    body = {"stays_h": stays.p10, "wanted_h": wanted or -1.0}
    return sums_time.stays_hot(stays, wanted, turn.person), ("INCROPERA", "FSIS_DANGER_ZONE"), body


def _ice(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    start = next((t for t in line.temperatures if 30.0 <= t <= 100.0), OFF_THE_FIRE)
    found = mixing.ice(mass, start, mass)
    said = sums_time.ice(mass, found, turn.person)
    if line.water is not None and _ICE_HAD.search(line.text):
        said = f"{sums_hot.goes_round(line.water >= TWICE * found)}\n{said}"
    return said, ("INCROPERA", "CHOI_OKOS_1986"), {"ice_kg": found}


def _brine_ice(turn: Turn, line: Told) -> Answer:
    """Ice for the part of a brine that was boiled, to have the whole of it cold."""
    poured = sorted(m.value for m in poured_of(line.text))
    if (frozen := as_ice(line.text)) and len(poured) == 1 and frozen < poured[0]:
        poured = [poured[0] - frozen, poured[0]]
    if len(set(poured)) < 2:
        raise Missing("water")
    melted, water = mixing.ice_in_brine(poured[0], poured[-1])
    said = sums_time.brine_ice((poured[0], poured[-1]), melted, water, turn.person)
    if frozen:
        said = f"{sums_time.left_to_heat(poured[0], poured[-1])}\n{said}"
    return said, ("INCROPERA", *KITCHEN), {"ice_kg": melted}


def _brine_cools(turn: Turn, line: Told) -> Answer:
    """How long a boiled brine stands until it is cold, and what ice does instead."""
    litres = need(line.water, "water")
    hot = next((t for t in line.temperatures if t >= SCALDING_C), mixing.BOILING)
    fridge = hours_to(litres, hot, turn.person.fridge_c, BRINE_COLD_C)
    room = hours_to(litres, hot, ROOM_C, LUKEWARM_C)
    ice = with_ice(litres, hot).ice, ice_into(litres, hot)
    said = sums_time.brine_cools(litres, (room, LUKEWARM_C), fridge, ice, turn.person)
    if _ICE_ASKED.search(line.text):  # that first
        said = "\n".join(reversed(said.split("\n")))
    body = {"fridge_h": fridge.p90 if fridge else -1.0, "ice_kg": ice[0], "ice_into_kg": ice[1]}
    return said, ("INCROPERA", "FSIS_DANGER_ZONE"), body


SUMS = {
    "days": _days, "light_by": _light_by, "makes_it": _makes_it, "eta": _eta,
    "hold_for": _hold_for, "ice": _ice, "brine_ice": _brine_ice, "brine_cools": _brine_cools,
}  # fmt: skip
