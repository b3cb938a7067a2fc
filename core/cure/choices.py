"""What a cook can buy with a day, a needle or a knife: one day longer, injected, or half the thickness."""

from dataclasses import dataclass, replace

from core.cure import nitrite
from core.cure.contents import SATURATED_BRINE, Contents
from core.cure.course import Immersion
from core.cure.penetration import After, Penetration, penetration
from core.units import Days, Fraction


@dataclass(frozen=True)
class Choices:
    """`now` and `one_more_day` as the middle would be; `injected` and `halved` as the days would be.

    `injected` is None where the curing salt is so weak that no pickle carries the dose. Piercing alone is not among
    them: holes close, so no credit is given (judgement).
    """

    now: After
    one_more_day: After
    injected: Penetration | None
    halved: Penetration


def choices(immersion: Immersion, days: Days) -> Choices:
    """What would change the middle after `days` in the cure.

    Parameters
    ----------
    immersion
        The piece in its cure.
    days
        Days that are planned or have passed. [d] > 0

    Raises
    ------
    OutOfRange
        No days at all, or more than a year.
    """
    as_it_is = penetration(immersion)
    pumped = injected(immersion)
    return Choices(
        now=as_it_is.after(days),
        one_more_day=as_it_is.after(days + 1.0),
        injected=penetration(pumped) if pumped.dose.brine_strength <= SATURATED_BRINE else None,
        halved=penetration(halved(immersion)),
    )


def injected(immersion: Immersion, pump: Fraction = 0.10) -> Immersion:
    """The same piece with the same ingoing nitrite pumped in instead, and no longer intact."""
    dose = immersion.dose
    meat = dose.counted_meat_kg
    cure = nitrite.cure_for_dry(dose.ingoing().nitrite, meat, dose.nitrite_fraction)
    pumped = Contents(
        method="inject",
        meat_kg=dose.meat_kg,
        cure_kg=cure,
        nitrite_fraction=dose.nitrite_fraction,
        water_kg=max(pump * meat - cure, 0.0),
        nitrate_fraction=dose.nitrate_fraction,
        pump_fraction=pump,
        skin_on=dose.skin_on,
        product_class=dose.product_class,
        jurisdiction=dose.jurisdiction,
    )
    return replace(immersion, dose=pumped, piece=replace(immersion.piece, intact=False))


def halved(immersion: Immersion) -> Immersion:
    """The same meat split into two of half the thickness, in the same cure; a sealed face stays sealed on one half.

    The half without the sealed face cures from both sides, so the half with it decides.
    """
    piece = immersion.piece
    return replace(immersion, piece=replace(piece, thickness=piece.thickness / 2.0, mass=piece.mass / 2.0))
