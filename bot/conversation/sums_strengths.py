"""Curing salt of another strength than a recipe's, held to the law; and a dose out of curing salt in water."""

from dataclasses import replace

from bot.conversation.sums_cold import judged
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import KITCHEN, need
from bot.intents.strengths import blended, stock, swapped
from bot.intents.sums.told import Told
from bot.wording import sums, sums_strengths
from core.errors import Missing
from core.service.turn import Turn


def _swap(turn: Turn, line: Told) -> Answer:
    """As much nitrite of one's own curing salt as the recipe's holds; against the limit, where the meat is told."""
    found = swapped(line.text)
    if found is None:
        raise Missing("strength")
    mass = found.mass * found.has / found.wanted
    salt = found.mass * (1.0 - found.has) - mass * (1.0 - found.wanted)
    said = sums_strengths.swapped((mass, found.wanted), (found.mass, found.has), salt, found.told)
    body: dict[str, object] = {"cure_kg": mass}
    if line.meat is None:
        return f"{said}\n{sums_strengths.tell_the_meat()}", ("FSIS_HANDBOOK_1995",), body
    own = replace(line, text="", cure=mass, spoons=None, nitrite=None)
    made = judged(turn, own, found.wanted)[-1]
    level = sums.ppm(made, made.ingoing.nitrite, found.wanted)
    lines = (said, level) if made.limit.passes(made.ingoing.nitrite) else (level, said)
    keys = ("FSIS_HANDBOOK_1995", made.limit.source.key)
    return "\n".join(lines), keys, body | {"nitrite_high_mg_kg": made.ingoing.nitrite}


def _stock(turn: Turn, line: Told) -> Answer:
    """How much of curing salt in water or in plain salt holds a dose."""
    found = stock(line.text)
    share, wanted = need(found and found.share, "meat"), need(found and found.wanted, "meat")
    mass = wanted / share
    said = (sums_strengths.of_the_mix if found and found.in_salt else sums_strengths.of_the_stock)(wanted, mass)
    return said, KITCHEN, {"stock_kg": mass}


def _blend(turn: Turn, line: Told) -> Answer:
    """The nitrite of curing salt that is mixed into plain salt: a weak curing salt of its own."""
    found = blended(line.text)
    cure, salt = need(found and found[0], "meat"), need(found and found[1], "meat")
    strength = need(line.strength or turn.person.cure_nitrite_fraction, "strength")
    share = strength * cure / (cure + salt)
    return sums_strengths.blend(share, cure + salt), KITCHEN, {"nitrite_fraction": share}


SUMS = {"blend": _blend, "swap": _swap, "stock": _stock}
