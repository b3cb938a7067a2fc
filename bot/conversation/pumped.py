"""So much pickle as the needle put in: what that makes of the curing salt that was weighed for it."""

from typing import Any, Final

from bot.facts import facts
from bot.reply import Reply
from bot.wording import pumped
from core.batch.assess import Assessment
from core.cure.dose import Dose
from core.units import Fraction, Kilograms

SAID: Final = ("put_in_pumped", "pumped_to")
MOST_TAKEN: Final[Fraction] = 0.4  # of its weight; more goes into no piece, as in bot/conversation/sums_pumped.py
AS_PLANNED: Final = 0.05  # of what was planned: a syringe and a kitchen scale are no finer. Judgement


def other_way(a: Assessment, changes: dict[str, Any]) -> dict[str, Any]:
    """What is told of a piece that was not to be injected: that way, and no amount."""
    if a.batch.setup.method == "inject" or not changes.keys() & set(SAID):
        return changes
    return {**{name: value for name, value in changes.items() if name not in SAID}, "method": "inject"}


def refused(a: Assessment, changes: dict[str, Any]) -> Reply | None:
    """The question for what was meant, where no needle put in so much; nothing is noted of it then."""
    kg = _pumped(a, changes)
    if kg is None or a.dose is None or 0.0 < kg <= MOST_TAKEN * a.batch.setup.mass:
        return None
    return Reply(pumped.not_so_much(a), facts=facts(a) | {"answer_kind": "asked_back"}, about=a.batch.id)


def settled(a: Assessment, changes: dict[str, Any]) -> dict[str, Any]:
    """The curing salt that so much pickle brought in: for the cure what the needle put in, for the limit all of it.

    Of more than was planned to be made nobody knows how strong it is: then its curing salt is not told.
    """
    kg = _pumped(a, changes)
    if kg is None or a.dose is None:
        return _behind_the_needle(a, changes)
    share, whole = kg / a.dose.pumped_kg, _weighed(a, a.dose)
    others = {name: value for name, value in changes.items() if name not in SAID}
    told: dict[str, Any] = {"put_in_pumped": round(kg, 4)}
    if share > 1.0 and a.dose.covered:  # out of what lies about it: stronger by the needle than was planned
        return {**others, **told, "put_in_cure": whole, "put_in_cure_most": round(share * whole, 6)}
    if share > 1.0 + AS_PLANNED:
        return {**others, **told, "put_in_cure": None}
    return {**others, **told, **_of(share, whole)}


def _behind_the_needle(a: Assessment, changes: dict[str, Any]) -> dict[str, Any]:
    """Curing salt that is told of a pickle of which a part was pumped."""
    told, before = changes.get("put_in_cure"), a.batch.put_in.get("put_in_pumped")
    if told is None or before is None or a.dose is None or "put_in_cure_most" in changes:
        return changes
    return {**changes, **_of(before / a.dose.pumped_kg, told)}


def _of(share: float, whole: Kilograms) -> dict[str, Any]:
    if share >= 1.0 - AS_PLANNED:
        return {"put_in_cure": round(whole, 6)}
    return {"put_in_cure": round(share * whole, 6), "put_in_cure_most": round(whole, 6)}


def _weighed(a: Assessment, d: Dose) -> Kilograms:
    """All the curing salt of the pickle, whatever was told of the needle before."""
    most = a.batch.put_in.get("put_in_cure_most")
    return most if most is not None and a.batch.put_in.get("put_in_pumped") is not None else d.cure_kg


def _pumped(a: Assessment, changes: dict[str, Any]) -> Kilograms | None:
    """What the needle put in; a weight above that of the piece is the one after it. [kg]"""
    if "pumped_to" in changes:
        return float(changes["pumped_to"]) - a.batch.setup.mass
    kg = changes.get("put_in_pumped")
    return None if kg is None else float(kg) - (a.batch.setup.mass if kg > a.batch.setup.mass else 0.0)
