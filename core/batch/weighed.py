"""What went into the cure: what is in stays in, whatever is planned since, and what nobody told is no evidence."""

from dataclasses import replace
from datetime import timedelta
from typing import Final

from core.batch.batch import Batch
from core.batch.material import dose_of
from core.cure.dose import Dose, teaspoons
from core.cure.limits import limits_of
from core.errors import Gone
from core.units import Kilograms

ROUNDLY: Final = timedelta(minutes=15)  # «in at six», of what began at five past. Judgement


def dose_in(batch: Batch, jurisdiction: str) -> Dose:
    """The dose that is to be weighed out, or what is in once it was: then the meat it went to decides the ppm.

    It is one packet whenever it was read: what is printed on it counts as it was told last. What was weighed by the
    law of one place stays in, whichever is told since, and is held to the limit of that one.
    """
    if batch.dosed is None:
        return dose_of(batch.setup, jurisdiction)
    packet = batch.dosed if batch.setup.cure_nitrite_fraction is None else batch.setup
    printed = (packet.cure_nitrite_fraction, packet.cure_nitrate_fraction)
    unread = batch.dosed.cure_nitrite_fraction is None
    dosed = replace(batch.dosed, cure_nitrite_fraction=printed[0], cure_nitrate_fraction=printed[1])
    weighed = dose_of(dosed if unread else batch.dosed, batch.setup.law or jurisdiction)
    put_in = {name: kg for name, kg in batch.put_in.items() if kg is not None}
    actual = replace(
        weighed,
        method=batch.setup.method if "put_in_water" in put_in else weighed.method,  # a dry cure that lies in water
        meat_kg=batch.setup.mass,
        water_kg=put_in.get("put_in_water", weighed.water_kg),
        salt_kg=put_in.get("put_in_salt", weighed.salt_kg),
        sugar_kg=put_in.get("put_in_sugar", weighed.sugar_kg),
        rubbed_salt_kg=min(weighed.rubbed_salt_kg, put_in.get("put_in_salt", weighed.salt_kg)),
        nitrite_fraction=printed[0] or 0.0,
        nitrate_fraction=printed[1],
    )
    return _held_to(jurisdiction, _of(actual, put_in.get("put_in_cure", weighed.cure_kg)))


def most_in(batch: Batch, dose: Dose) -> Dose:
    """The most that may be in: the heavy end of what a spoon measured, which a ceiling is held to; else the dose.

    The dose of such a batch is its light end, which is what counts for the cure.
    """
    most = batch.put_in.get("put_in_cure_most")
    return dose if most is None else _of(dose, most)


def _of(dose: Dose, cure_kg: Kilograms) -> Dose:
    """The same with so much curing salt, and what that makes. [kg]"""
    actual = replace(dose, cure_kg=cure_kg, teaspoons=teaspoons(cure_kg))
    ingoing = actual.ingoing()
    return replace(
        actual,
        nitrite_ingoing=ingoing.nitrite,
        nitrate_ingoing=ingoing.nitrate,
        nitrite_by_pickup=actual.by_pickup(),
    )


def _held_to(jurisdiction: str, actual: Dose) -> Dose:
    """The same, held to the limit of a place; a place that knows none for it leaves the one by which it was weighed."""
    if actual.limit is None or jurisdiction == actual.jurisdiction:
        return actual
    try:
        there = limits_of(jurisdiction, actual.product_class, actual.method, covered=actual.covered)[0]
    except Gone:
        return actual
    sources = tuple(dict.fromkeys((*actual.sources, there.source)))
    return replace(actual, jurisdiction=jurisdiction, limit=there, sources=sources)


def planned_now(batch: Batch, jurisdiction: str) -> Dose:
    """The dose that the meat and the water want as they are now, whatever was weighed out before."""
    water = batch.put_in.get("put_in_water")
    setup = batch.setup if water is None else replace(batch.setup, water_share=water / batch.setup.mass)
    return dose_of(setup, jurisdiction)


def is_told(batch: Batch) -> bool:
    """Whether what went in is known: by the dose that was told before it was weighed, or by the grams that went in.

    Salt that was weighed before its strength was told, or before the batch was begun here, went in by some other dose;
    and where plain salt was told without a word of the curing salt, nobody knows that it is in.
    """
    dosed, went_in = batch.dosed, [batch.done[step] for step in ("brine", "into_cure") if step in batch.done]
    if dosed is None or dosed.nitrite_target == 0.0:
        return True
    if "put_in_cure" in batch.put_in:
        return batch.put_in["put_in_cure"] is not None
    return dosed.cure_nitrite_fraction is not None and all(at >= batch.started - ROUNDLY for at in went_in)
