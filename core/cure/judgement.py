"""What to think of a cure that is already put together: within the law, too weak, too strong, or to throw away."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from core.cure import nitrite
from core.cure.contents import Contents
from core.cure.dose import house_target
from core.cure.limits import Ingoing, Limit, limits_of
from core.safety.cautions import Caution, Severity
from core.safety.record import CURED_FROM
from core.sources import CFR_21_172, COMMON_PRACTICE, FSIS_COOLING_1999, FSIS_HANDBOOK_1995, JUDGEMENT, Source
from core.units import Hours, Kilograms, MilligramsPerKilogram

HOME_CEILING: Final[MilligramsPerKilogram] = 200.0  # 21 CFR 172.175(a)(3)
THROW_AWAY_ABOVE: Final[MilligramsPerKilogram] = 400.0  # owner's policy
POUR_OFF_WITHIN: Final[Hours] = 24.0  # common practice: little has gone in yet


class Verdict(StrEnum):
    """How it stands, from too weak to too strong."""

    UNDER_FLOOR = "under_floor"
    WITHIN = "within"
    OVER_LIMIT = "over_limit"
    CANNOT_CALL_SAFE = "cannot_call_safe"
    THROW_AWAY = "throw_away"


@dataclass(frozen=True)
class Judgement:
    """The verdict with its figures.

    `top_up_cure_kg` is the curing salt of the same kind that brings a too weak cure to the house target, None where
    there is nothing to top up. `pour_off` says that a wet cure may still be poured off and the meat rinsed, with no
    more curing salt after it: it was caught within a day, below the level at which everything is thrown away.
    """

    verdict: Verdict
    ingoing: Ingoing
    nitrite_by_pickup: MilligramsPerKilogram | None
    limit: Limit
    floor: MilligramsPerKilogram
    top_up_cure_kg: Kilograms | None
    pour_off: bool
    cautions: tuple[Caution, ...]
    sources: tuple[Source, ...]


def judge(contents: Contents, hours_in: Hours | None = None) -> Judgement:
    """Judge what was put together.

    Parameters
    ----------
    contents
        What went in, as the cook says; a spoon is judged by its heavy end (`dose.from_teaspoons`).
    hours_in
        How long the meat has been in it, None where that is unknown. [h]

    Raises
    ------
    Gone
        There is no limit known for this product there.
    """
    against = limits_of(contents.jurisdiction, contents.product_class, contents.method, covered=contents.covered)
    ingoing = contents.ingoing()
    least = floor_of(against[0])
    verdict = _verdict(ingoing, against, least)
    return Judgement(
        verdict=verdict,
        ingoing=ingoing,
        nitrite_by_pickup=contents.by_pickup(),
        limit=against[0],
        floor=least,
        top_up_cure_kg=_top_up(contents) if verdict is Verdict.UNDER_FLOOR else None,
        pour_off=_may_pour_off(contents, verdict, hours_in),
        cautions=tuple(_cautions(verdict, ingoing, against, least)),
        sources=(FSIS_HANDBOOK_1995, CFR_21_172, *dict.fromkeys(one.source for one in against)),
    )


def floor_of(limit: Limit) -> MilligramsPerKilogram:
    """The least that counts as cured: the rule's own floor, else the 100 of the cooling rule. [mg/kg]"""
    return CURED_FROM if limit.floor_mg_kg is None else limit.floor_mg_kg


def _verdict(ingoing: Ingoing, against: tuple[Limit, ...], least: MilligramsPerKilogram) -> Verdict:
    if ingoing.nitrite > THROW_AWAY_ABOVE:
        return Verdict.THROW_AWAY
    if ingoing.nitrite > HOME_CEILING * (1.0 + 1e-9):
        return Verdict.CANNOT_CALL_SAFE
    broken = [one for one in against if not one.passes(ingoing.counted(one))]
    if any("nitrate" in one.counts and one.status != "PRACTICE" for one in broken):
        return Verdict.CANNOT_CALL_SAFE  # over 500 mg/kg of nitrate, or any in bacon
    if broken:
        return Verdict.OVER_LIMIT
    return Verdict.WITHIN if ingoing.nitrite >= least else Verdict.UNDER_FLOOR


def _cautions(
    verdict: Verdict, ingoing: Ingoing, against: tuple[Limit, ...], least: MilligramsPerKilogram
) -> list[Caution]:
    facts = (("nitrite_mg_kg", ingoing.nitrite), ("limit_mg_kg", against[0].max_mg_kg))
    match verdict:
        case Verdict.THROW_AWAY:
            return [Caution("nitrite_throw_away", Severity.STOP, JUDGEMENT, facts)]
        case Verdict.CANNOT_CALL_SAFE:
            return [Caution("nitrite_cannot_call_safe", Severity.STOP, CFR_21_172, facts)]
        case Verdict.OVER_LIMIT:
            return [Caution("nitrite_over_limit", Severity.WARNING, against[0].source, facts)]
        case Verdict.UNDER_FLOOR:
            low = (("nitrite_mg_kg", ingoing.nitrite), ("floor_mg_kg", least))
            source = FSIS_COOLING_1999 if against[0].floor_mg_kg is None else against[0].source
            return [Caution("under_cured_floor", Severity.WARNING, source, low)]
        case _ if ingoing.nitrate > 0.0:
            return [
                Caution(
                    "nitrate_in_short_cure", Severity.WARNING, COMMON_PRACTICE, (("nitrate_mg_kg", ingoing.nitrate),)
                )
            ]
        case _:
            return []


def _top_up(contents: Contents) -> Kilograms | None:
    """What is missing to the house target, by the inverse of the formula; None for what cannot be topped up."""
    if contents.nitrite_fraction <= 0.0 or contents.method not in ("brine", "dry"):
        return None
    target = house_target(contents.jurisdiction, contents.product_class, contents.method)
    if contents.method == "dry":
        wanted = nitrite.cure_for_dry(target, contents.counted_meat_kg, contents.nitrite_fraction)
    else:
        others = contents.counted_meat_kg + contents.pickle_kg - contents.cure_kg
        wanted = nitrite.cure_for_equilibrium(target, others, contents.nitrite_fraction)
    return wanted - contents.cure_kg


def _may_pour_off(contents: Contents, verdict: Verdict, hours_in: Hours | None) -> bool:
    if contents.method != "brine" or hours_in is None or hours_in > POUR_OFF_WITHIN:
        return False
    return verdict in (Verdict.OVER_LIMIT, Verdict.CANNOT_CALL_SAFE)
