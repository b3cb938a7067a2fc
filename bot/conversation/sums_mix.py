"""Salt, sugar and curing salt of a piece by their shares, all that a line names at once."""

from typing import Final

from bot.conversation.sums_cold import APART, judged, usual_doses
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import KITCHEN, counted
from bot.intents.fitting import is_curing
from bot.intents.rates import shares
from bot.intents.told import Told
from bot.wording import sums, sums_mixed, sums_packet
from core.errors import Missing
from core.service.turn import Turn

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
    known = line.strength or turn.person.cure_nitrite_fraction
    strength = known or APART[0]  # no weaker kind is weighed by so small a share
    low, high = judged(turn, line, strength)
    if known is None and not high.limit.passes(high.ingoing.nitrite):
        raise Missing("strength")
    body |= {"nitrite_high_mg_kg": high.ingoing.nitrite, "nitrite_limit_mg_kg": high.limit.max_mg_kg}
    level = sums.ppm(high, low.ingoing.nitrite, strength)
    level = level if known else f"{level.splitlines()[0]}\n{sums_packet.see_the_packet()}"
    lines = (said, level) if high.limit.passes(high.ingoing.nitrite) else (level, said)
    return "\n".join(lines), (high.limit.source.key, *LAW), body


SUMS = {"mix": _mix}
