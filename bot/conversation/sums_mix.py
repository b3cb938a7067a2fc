"""Salt, sugar and curing salt by their shares of a piece, all that a line names; and a recipe in another size."""

import re
from dataclasses import replace
from typing import Final

from bot import measures
from bot.conversation.sums_cold import APART, judged, mixed, usual_doses
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import KITCHEN, counted, need
from bot.intents.cures import is_cure
from bot.intents.pouring import poured_of, spoons
from bot.intents.rates import shares
from bot.intents.sums.fitting import is_curing, masses
from bot.intents.sums.told import Told
from bot.wording import sums, sums_mixed, sums_packet, sums_salt
from core.answers import mixing
from core.cure.contents import STRONG_CURES
from core.cure.judgement import judge
from core.errors import Missing
from core.service.turn import Turn
from core.units import Kilograms

_FITS: Final = re.compile(r"\b(?:fits?|enough|hold|takes?|big|room|go in|goes in)\b")
PLAIN_SALT: Final = 0.02  # of meat and water together: not salty, and what a bird bears too. Common practice
LAW: Final = ("FSIS_HANDBOOK_1995", *KITCHEN)


def _mix(turn: Turn, line: Told) -> Answer:
    """Grams of each share; the nitrite of the curing salt against the limit."""
    all_, told = counted(line), shares(line.text)
    grams = {name: share * all_ for name, share in told.items()}
    body: dict[str, object] = {f"{name}_kg": mass for name, mass in grams.items()}
    said = sums_mixed.of_each(grams, all_, turn.person)
    if "cure" not in grams:
        doses = usual_doses(turn, line) if is_curing(line.text) else None
        return (f"{said}\n{sums_mixed.cure_beside(doses)}" if doses else said), KITCHEN, body
    of_packet = None if line.strength == told["cure"] else line.strength  # «cure 0.25%» is the share, and no packet's
    known = of_packet or turn.person.cure_nitrite_fraction
    strength = known or APART[0]  # no weaker kind is weighed by so small a share
    low, high = judged(turn, line, strength)
    if known is None and not high.limit.passes(high.ingoing.nitrite):
        raise Missing("strength")
    body |= {"nitrite_high_mg_kg": high.ingoing.nitrite, "nitrite_limit_mg_kg": high.limit.max_mg_kg}
    level = sums.ppm(high, low.ingoing.nitrite, strength)
    level = level if known else f"{level.splitlines()[0]}\n{sums_packet.see_the_packet()}"
    lines = (said, level) if high.limit.passes(high.ingoing.nitrite) else (level, said)
    return "\n".join(lines), (high.limit.source.key, *LAW), body


def _recipe(turn: Turn, line: Told) -> Answer:
    """A recipe in another size; its curing salt is held to the law as it stands."""
    base, mine = _sizes(line)
    cure = line.cure or 0.0
    others = [m for m in masses(line.text) if m not in line.meats]
    waters = [m.value for m in poured_of(line.text)]
    water, my_water = waters if len(waters) == 2 else (0.0, 0.0)  # of the recipe, and one's own
    found = mixing.scaled(base + water, mine + my_water, tuple(others))
    made = judge(mixed(turn, replace(line, water=water or None), base, (cure, STRONG_CURES[0]))) if cure else None
    doses = usual_doses(turn, replace(line, meats=(mine,))) if made is None and is_curing(line.text) else None
    of_cure = sums_mixed.cure_beside(doses) if doses else sums_salt.held_to_the_limit(made)
    if spooned := [m for m in spoons(line.text) if not is_cure(line.text, m, [])]:
        of_cure = f"{sums_mixed.spooned(spooned, found.factor)}\n{of_cure}"
    sizes = base + water, mine + my_water
    said = sums_salt.scaled(found, sizes, tuple(others), of_cure, turn.person)
    return said, KITCHEN if made is None else LAW, {"factor": found.factor}


def _sizes(line: Told) -> tuple[Kilograms, Kilograms]:
    """The recipe's meat and one's own: the first that is told is the recipe's, unless it is said of the second."""
    first, second = line.meats[0], line.meats[1]
    own_first = re.search(
        r"^[^,.;]{0,12}\b(?:i have|ive got|i got|my(?! (?:recipe|book|card|notes?|sheet))|mine)\b", line.text
    )
    return (second, first) if own_first else (first, second)


def _brine_amount(turn: Turn, line: Told) -> Answer:
    """Water that covers a piece, the size of bag and tub, and the plain salt for it where that is asked for too."""
    mass = need(line.meat, "meat")
    share = next((f for f in line.fractions if f > 0.2), None)
    if share is not None:
        return sums_salt.water_of(share * mass, share), KITCHEN, {"water_kg": share * mass}
    tub = mixing.vessel(mass)
    said = sums_salt.water(mass, tub, turn.person)
    if "salt" in line.text and not is_curing(line.text):
        salt = [
            PLAIN_SALT * (1.0 + water) * mass for water in (mixing.IN_A_BAG[0], mixing.IN_A_BAG[1], *mixing.IN_A_TUB)
        ]
        lead, rest = said.split("\n", 1)
        said = f"{lead}\n{sums_mixed.salt_of_all(PLAIN_SALT, salt)}\n{rest}"
    held = line.water or next((m.value for m in measures.of_kind(line.text, "volume")), None)
    if held is not None and _FITS.search(line.text):
        said = f"{sums_mixed.fits(held, tub)}\n{said}"
    return said, KITCHEN, {"tub_l": tub.high}


SUMS = {"mix": _mix, "recipe": _recipe, "brine_amount": _brine_amount}
