"""What the rate of a packet comes to for one's own meat, held to the law, and a small dose on a coarse scale."""

import re
from dataclasses import replace

from bot import measures
from bot.conversation.sums_cold import APART, class_of, judged, right_dose
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import KITCHEN
from bot.intents.rates import MOST_OF_STRONG, PacketRate, at_rate, of_a_packet
from bot.intents.sums.fitting import masses
from bot.intents.sums.told import Told
from bot.intents.sums.wanted import bare_grams, weighed_instead
from bot.wording import sums_hot, sums_packet
from core.answers import amounts
from core.cure.dose import house_target
from core.cure.judgement import Judgement
from core.errors import Missing
from core.service.turn import Turn
from core.units import Fraction, Kilograms

TENTH = 0.1  # oz, the step of a common scale in ounces. Common practice
_IN_OUNCES = re.compile(r"\b(?:oz|ounces?)\b")
_OUNCES = re.compile(r"(?<![\d.])(0?\.\d{1,3}|1) ?(?:oz|ounces?)\b")
COARSE_STEP = 0.001  # kg, a common kitchen scale
_OFF_BY = re.compile(
    r"\b(?:off|out|wrong|errors?|drifts?|varies)(?: is)?(?: by)?(?: about)? (?P<n>\d?\.\d+|\d)\b(?! ?(?:%|kg|oz))"
)
_STEPS = re.compile(
    r"\b(?:jumps?|goes(?: up)?|moves?|rounds?|steps?|counts?|increments?|resolution|nearest|reads|shows)(?: only)?"
    r"(?: (?:in|by|of|to|up|is|are|the|every|nearest|steps?|whole))* (?P<n>\d{1,2}(?:\.\d)?)(?: ?g| ?grams?|s)?\b"
    r"|\b(?P<m>\d{1,2}(?:\.\d)?) ?(?:g|grams?)? (?:steps?|increments?|jumps?|resolution|at a time)\b"
)


def _by_packet(turn: Turn, line: Told) -> Answer:
    """The dose of a packet's rate, with the nitrite that it makes; where no strength is told, by the strong kind."""
    rate = of_a_packet(line.text)
    if rate is None:
        raise Missing("meat")
    strength = line.strength or turn.person.cure_nitrite_fraction
    if strength is None and rate.high > MOST_OF_STRONG:  # of a weak kind it is right, of a strong one it is poison
        raise Missing("strength")
    strength = strength or APART[0]
    own = replace(line, text="", meats=(rate.mine,), cure=rate.high * rate.mine, water=None, pump=None)
    made = judged(turn, own, strength)[-1]
    dose = (rate.low * rate.mine, rate.high * rate.mine)
    right = right_dose(turn, own, strength)
    said = sums_packet.by_packet(dose, made, (strength, right), rate.mine, turn.person)
    body = {"cure_kg": dose[1], "nitrite_high_mg_kg": made.ingoing.nitrite}
    return said, (made.limit.source.key, "FSIS_HANDBOOK_1995"), body


def usual_levels(turn: Turn, line: Told) -> tuple[PacketRate, tuple[tuple[Fraction, Judgement], ...]] | None:
    """The packet's rate, and what it makes with a strong and with a weak curing salt."""
    rate = of_a_packet(line.text)
    if rate is None:
        return None
    own = replace(line, text="", meats=(rate.mine,), cure=rate.high * rate.mine, water=None, pump=None)
    return rate, tuple((one, judged(turn, own, one)[-1]) for one in APART)


def _at_rate(turn: Turn, line: Told) -> Answer:
    """A seasoning by its rate."""
    rate = at_rate(line.text)
    if rate is None:
        raise Missing("meat")
    mass = rate.high * rate.mine
    said = (
        sums_packet.at_rate_poured(mass, rate.mine)
        if rate.poured
        else sums_packet.at_rate(mass, rate.mine, turn.person)
    )
    return said, KITCHEN, {"mass_kg": mass}


def _scale(turn: Turn, line: Told) -> Answer:
    if instead := weighed_instead(line.text):
        target = house_target(turn.person.jurisdiction, class_of(line), "dry")
        return sums_packet.instead(*instead, target), KITCHEN, {"share": instead[1] / instead[0]}
    weighed = masses(line.text)
    bare = bare_grams(line.text)
    small = bare / 1000.0 if bare is not None else max(weighed)
    if off := _OFF_BY.search(line.text):
        out = float(off["n"]) / 1000.0
        target = house_target(turn.person.jurisdiction, class_of(line), "dry")
        return sums_packet.out_by(small, out, target), KITCHEN, {"error": out / small}
    if "scale" in line.text and _IN_OUNCES.search(line.text):
        ounce = _OUNCES.search(line.text)
        error = amounts.coarse(small, measures.to_house(float(ounce[1]) if ounce else TENTH, "oz"))
        return (
            sums_packet.in_ounces(small, float(ounce[1]) if ounce else TENTH, error),
            KITCHEN,
            {"error": error.error_high},
        )
    step = _step(line.text) or (min(weighed) if len(weighed) > 1 and min(weighed) <= 0.01 else COARSE_STEP)
    found = amounts.coarse(small, step)
    return sums_hot.coarse(small, found), KITCHEN, {"stock_kg": found.stock}


def _step(text: str) -> Kilograms | None:
    """What a scale shows at least, told with its gram or without: «jumps by 5», «in 2 g steps». [kg]"""
    found = _STEPS.search(text)
    return float(found["n"] or found["m"]) / 1000.0 if found else None


SUMS = {"by_packet": _by_packet, "at_rate": _at_rate, "scale": _scale}
