"""What is pumped into a piece, and what a piece took up by its weight before and after."""

from dataclasses import replace

from bot.conversation.sums_cold import LAW, weighed
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import KITCHEN, need
from bot.intents.sums.told import Told
from bot.intents.sums.wanted import weights
from bot.wording import sums_pumped
from core.answers import mixing
from core.cure.contents import STRONG_CURES
from core.service.turn import Turn
from core.units import Fraction, Kilograms

MOST_TAKEN: Fraction = 0.4  # of its weight; more goes into no piece, so it is another pair of weights. Judgement


def _inject(turn: Turn, line: Told) -> Answer:
    """How much is pumped in, and the curing salt that it holds; of what was pumped, the share that it is."""
    if taken := _taken_up(line):
        pickle, before = taken
        return sums_pumped.taken_up(pickle, before, turn.person), KITCHEN, {"pump": pickle / before}
    mass, pump = need(line.meat, "meat"), line.pump or next((f for f in line.fractions if f < 0.3), mixing.PUMP)
    injected = replace(line, pump=pump, water=None)
    doses = tuple((one, weighed(turn, injected, mass, one).cure_kg) for one in STRONG_CURES)
    return sums_pumped.inject(mass, pump, doses, turn.person), LAW, {"pickle_kg": pump * mass}


def _taken_up(line: Told) -> tuple[Kilograms, Kilograms] | None:
    """The pickle that went in and the weight before it: of two weights, or of what was pumped and the piece. [kg]"""
    pair = weights(line)
    if pair is None:
        return None
    first, second = pair
    if first < second <= (1.0 + MOST_TAKEN) * first:
        return second - first, first
    pickle, before = min(pair), max(pair)
    return (pickle, before) if pickle <= MOST_TAKEN * before and line.pump is None else None


SUMS = {"inject": _inject}
