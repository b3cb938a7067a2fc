"""Sums of mixes and fires that somebody tells by their own figures: a pumped pickle, a soak, a tub to thin, fuel."""

from typing import Final

from bot.conversation.sums_cold import class_of
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import KITCHEN, need
from bot.intents.sums.mixtures import burns, of_pickle, soaked, thinned
from bot.intents.sums.told import Told
from bot.wording import sums, sums_told
from core.cure.contents import STRONG_CURES, WEAK_CURES, Contents
from core.cure.judgement import Judgement, judge
from core.errors import Missing
from core.service.turn import Turn
from core.units import Fraction

APART: Final = (STRONG_CURES[0], WEAK_CURES[0])


def _in_pickle(turn: Turn, line: Told) -> Answer:
    """The nitrite that the needles put in, of a pickle told by its parts; held to the limit."""
    if of_pickle(line.text) is None:
        raise Missing("pump")
    strength = need(line.strength or turn.person.cure_nitrite_fraction, "strength")
    made = _pumped(turn, line, strength)
    said = sums.ppm(made, made.ingoing.nitrite, strength)
    keys = (made.limit.source.key, "FSIS_HANDBOOK_1995")
    return said, keys, {"nitrite_high_mg_kg": made.ingoing.nitrite, "nitrite_limit_mg_kg": made.limit.max_mg_kg}


def usual_levels(turn: Turn, line: Told) -> tuple[tuple[Fraction, Judgement], ...]:
    """What a strong and a weak curing salt in such a pickle would come to, while the strength is not told."""
    return tuple((one, _pumped(turn, line, one)) for one in APART)


def _pumped(turn: Turn, line: Told, strength: Fraction) -> Judgement:
    return judge(
        Contents(
            method="inject",
            meat_kg=line.meat or 1.0,
            cure_kg=line.cure or 0.0,
            nitrite_fraction=strength,
            salt_kg=line.salt or 0.0,
            sugar_kg=line.sugar or 0.0,
            water_kg=line.water or 0.0,
            pump_fraction=line.pump or 0.0,
            product_class=class_of(line),
            jurisdiction=turn.person.jurisdiction,
        )
    )


def _soaked(turn: Turn, line: Told) -> Answer:
    found = soaked(line.text)
    if found is None:
        raise Missing("water")
    end = found.share * found.meat / (found.meat + found.water)
    return sums_told.soaked(found.share, end, found.water), KITCHEN, {"salt_fraction": end}


def _thinned(turn: Turn, line: Told) -> Answer:
    found = thinned(line.text)
    if found is None:
        raise Missing("meat")
    whole = found.salt / found.wanted
    more = (found.cure or 0.0) * (whole / found.whole - 1.0)
    shares = found.salt / found.whole, found.wanted
    said = sums_told.thinned(whole - found.whole, shares, (more, found.whole / whole))
    return said, KITCHEN, {"water_kg": whole - found.whole, "cure_kg": more}


def _burns(turn: Turn, line: Told) -> Answer:
    found = burns(line.text)
    if found is None:
        raise Missing("hours")
    if found.hours is None:
        lasts = (found.has or 0.0) / found.an_hour
        return sums_told.burns_for(lasts, found.has or 0.0, turn.person), KITCHEN, {"lasts_h": lasts}
    needed = found.an_hour * found.hours
    return sums_told.burnt(needed, found.hours, found.has, turn.person), KITCHEN, {"load_kg": needed}


SUMS = {"in_pickle": _in_pickle, "soaked": _soaked, "thinned_to": _thinned, "burns": _burns}
