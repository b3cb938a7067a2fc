"""Which way of chilling passes which cooling rule, so that the plan can say how to pass before the cook begins."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from math import inf
from typing import Final

from core.heat.cooling import CHILL_FILM, Chill, ChillMethod, chill
from core.meat.piece import Piece
from core.safety.cooling_rules import CoolingRule, Use, judged_rules
from core.units import Celsius, Metres, celsius_from_fahrenheit

SURE: Final = 0.9  # a way passes a rule from this chance on
THIN: Final = 0.025  # slices that cool in time in most fridges. [m]


@dataclass(frozen=True)
class Way:
    """One way to chill: the method, and the thickness the piece is cut to first, None to leave it whole. [m]

    `chances` is the chance to keep each rule that grants safety, by the key of the rule.
    """

    method: ChillMethod
    cut_to: Metres | None
    chill: Chill
    chances: tuple[tuple[str, float], ...]

    @property
    def passes(self) -> bool:
        """Whether one of the rules is kept for sure enough."""
        return any(chance >= SURE for _, chance in self.chances)


@lru_cache(maxsize=32)  # a plan asks for it, and it is the same until the piece is another
def ways(piece: Piece, start_c: Celsius = 60.0, ambient_c: Celsius = 3.0) -> tuple[Way, ...]:
    """Every method for the whole piece, for its halves cut flat, and for 25 mm slices; the slowest first.

    Parameters
    ----------
    start_c
        Temperature of the middle when the chill begins. [°C]
    ambient_c
        Temperature of the fridge. [°C]
    """
    found = [
        _way(method, cut_to, chill(part, method, start_c, ambient_c))
        for cut_to, part in _parts(piece)
        for method in CHILL_FILM
    ]
    return tuple(sorted(found, key=_slowness, reverse=True))


def passes(found: Chill) -> bool:
    """Whether a chill from its start on keeps one of the rules that grant safety for sure enough."""
    return any(chance >= SURE for _, chance in _chances(found))


def _way(method: ChillMethod, cut_to: Metres | None, found: Chill) -> Way:
    return Way(method, cut_to, found, _chances(found))


def _chances(found: Chill) -> tuple[tuple[str, float], ...]:
    """The chance to keep each rule that grants safety, all its stages, by the key of the rule."""
    return tuple((rule.key, found.chance(_stages(rule))) for rule in judged_rules() if rule.use is Use.GRANTS)


def _stages(rule: CoolingRule) -> tuple[tuple[Celsius, Celsius, float], ...]:
    return tuple((celsius_from_fahrenheit(s.from_f), celsius_from_fahrenheit(s.to_f), s.max_h) for s in rule.stages)


def _parts(piece: Piece) -> Iterator[tuple[Metres | None, Piece]]:
    """The piece, and its layers cut flat: the footprint stays, the mass goes with the thickness."""
    yield None, piece
    for thickness in sorted({piece.thickness / 2, THIN}, reverse=True):
        if thickness < 0.9 * piece.thickness:
            yield thickness, replace(piece, thickness=thickness, mass=piece.mass * thickness / piece.thickness)


def _slowness(way: Way) -> float:
    cold = way.chill.to(7.2)
    return cold.p50 if cold else inf
