"""Words for a pickle that is injected, with a cover brine or without."""

from bot.wording import meats, numbers
from bot.wording.language import decimal, say
from core.batch.assess import Assessment
from core.cure.dose import Dose


def weighed(dose: Dose) -> str:
    """«11.9 g curing salt (6.25 % nitrite), 96 g salt, 48 g sugar»; without the first where no nitrite goes in."""
    return say(
        "{cure}{salt} salt, {sugar} sugar",
        cure=_cure(dose),
        salt=numbers.grams(dose.salt_kg),
        sugar=numbers.grams(dose.sugar_kg),
    )


def to_make(dose: Dose, a: Assessment) -> str:
    """What is injected, and what no pickle of that size can carry and goes on from outside."""
    if dose.covered:
        return _one_for_both(dose, a)
    return say(
        "Make the pickle to inject: {water} g water, {cure}"
        "{dissolved} salt.\nIt goes cold, at {limit} or less.\n"
        "All of it is injected, {share} of the weight, a needle every 25 mm{get}. Weigh {rubbed_salt} "
        "salt and {sugar} sugar apart: they are rubbed on afterwards.",
        water=f"{dose.water_kg * 1000:.0f}",
        cure=_cure(dose),
        dissolved=numbers.grams(dose.salt_kg - dose.rubbed_salt_kg),
        limit=numbers.both(4.4, a.person),
        share=_share(a),
        get=_where(a),
        rubbed_salt=numbers.grams(dose.rubbed_salt_kg),
        sugar=numbers.grams(dose.sugar_kg),
    )


def to_inject(a: Assessment, days: float) -> str:
    """The needle, and what comes after it, with the days that it stays in."""
    if a.dose is not None and a.dose.covered:
        return say(
            "Inject {pumped} of the pickle, a needle every 25 mm{get}; the rest goes over the meat.\n"
            "Into the bag or tub, all of it under the pickle, lowest shelf. Write today's date on it; it stays in for {days}.",
            pumped=numbers.grams(a.dose.pumped_kg),
            get=_where(a),
            days=numbers.days(days),
        )
    return say(
        "Inject all of the pickle, then rub on the salt and sugar that are left.\n"
        "Into the bag, air out, lowest shelf. Write today's date on it; it stays in for {days}.",
        days=numbers.days(days),
    )


def parted(a: Assessment) -> str:
    """How a pickle is parted between the needle and the cover; empty where there is no cover brine."""
    if a.dose is None or not a.dose.covered:
        return ""
    return say(
        "{pumped} of the pickle are injected, {share} of the weight; the rest covers the meat. Nothing is rubbed on.",
        pumped=numbers.grams(a.dose.pumped_kg),
        share=_share(a),
    )


def creeping_in(a: Assessment) -> str:
    """What a cover brine leaves in the middle, where that counts as no cure for the cooling rule; else empty."""
    after = a.after_cure()
    if a.dose is None or not a.dose.covered or after is None or after.counts_as_cured:
        return ""
    return say(
        "The needles bring a part and the cover brine creeps in: {centre} nitrite in the middle by then, too little for the "
        "longer cooling rule of cured meat. Without a cover brine it would hold all of it.",
        centre=numbers.ppm(after.ingoing_centre.p10),
    )


def _one_for_both(dose: Dose, a: Assessment) -> str:
    made = say(
        "Make the pickle: {water} kg water, {parts}. It goes cold, at {limit} or less.",
        water=decimal(dose.water_kg, 2),
        parts=weighed(dose),
        limit=numbers.both(4.4, a.person),
    )
    return f"{made}\n{parted(a)}"


def _cure(dose: Dose) -> str:
    if not dose.cure_kg:
        return ""
    return say(
        "{cure} curing salt ({nitrite} nitrite), ",
        cure=numbers.grams(dose.cure_kg),
        nitrite=numbers.percent(dose.nitrite_fraction),
    )


def _share(a: Assessment) -> str:
    return numbers.percent(a.batch.setup.pump_fraction if a.dose is None else a.dose.pump_fraction, 0)


def _where(a: Assessment) -> str:
    if meats.whole_bird(a):
        return say(" into breast, thighs and legs, from inside the skin")
    if meats.has_bone(a):
        return say(", first at the joints, at the shank and along the bone")
    return say(" from both faces")
