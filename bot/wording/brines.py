"""Words for plain salt, and for a strong brine that is left by the clock."""

from bot.wording import numbers
from bot.wording.language import decimal, say
from core.batch.assess import Assessment
from core.batch.material import salt_taken
from core.cure.dose import Dose
from core.cure.gradient import Brining
from core.plan import setup as setups
from core.plan.setup import Setup
from core.units import Fraction, Hours, Kilograms

VERY_SALTY: Fraction = 0.035  # of raw fish or meat; dry cures are weighed for 2 to 2.5 %. Judgement


def salt_alone(d: Dose, setup: Setup) -> str:
    """What is weighed out where no nitrite goes in."""
    water = say("{water} kg water, ", water=decimal(d.water_kg, 2)) if d.water_kg else ""
    reached = say(" Salt {salt}.", salt=numbers.percent(d.salt_fraction)) if not setups.by_the_clock(setup) else ""
    return say(
        "Dose: {water}{salt} salt, {sugar} sugar, and no curing salt: "
        "it is salted, not cured, and cools and keeps by the stricter rules.{reached}",
        water=water,
        salt=numbers.grams(d.salt_kg),
        sugar=numbers.grams(d.sugar_kg),
        reached=reached,
    )


def taken(a: Assessment, weighed: Dose, hours: Hours) -> str:
    """What it took in the hours that it lay there, where those are not the ones that were planned."""
    salt = salt_taken(a.batch.setup, weighed, hours)
    then = (
        say("That is very salty: soak it in the fridge, and ask «how long to soak».")
        if salt.p90 > VERY_SALTY
        else say("Fry a small slice after the rinse.")
    )
    return say(
        "After {hours} it holds {low} to {high} salt at its thickest. {then}",
        hours=numbers.hours(round(hours * 4) / 4),
        low=numbers.percent(salt.p10, 1),
        high=numbers.percent(salt.p90, 1),
        then=then,
    )


def for_hours(a: Assessment, weighed: Dose, hours: Hours) -> str:
    """How long the cook wants it to lie in a strong brine, and the salt that it takes there."""
    setup = a.batch.setup
    salt = salt_taken(setup, weighed, hours)
    more = say(" Longer is saltier: type it like «15 % brine for 3 h».") if setup.brine_hours is None else ""
    taken = {"hours": numbers.hours(hours), "low": numbers.percent(salt.p10, 1), "high": numbers.percent(salt.p90, 1)}
    if salt.p90 > VERY_SALTY:
        return say(
            "In the brine for {hours}, by the clock: it takes {low} to {high} salt at its thickest, which is very salty. "
            "Fry a small slice after the rinse; too salty, soak it in cold water in the fridge.",
            **taken,
        )
    return say(
        "In the brine for {hours}, by the clock: it takes {low} to {high} salt at its thickest, thin ends more. "
        "It evens out in the fridge afterwards; fry a small slice after the rinse.{more}",
        **taken,
        more=more,
    )


def by_the_clock(a: Assessment, found: Brining) -> str:
    """How long it lies in a strong brine, and why on the hour."""
    hours, setup = found.hours, a.batch.setup
    return say(
        "In the brine for {p50} ({p10} to {p90} h in pieces like this), to {salt} salt on average.\n"
        "By the clock: left in, it would go to {salt_in_the_end}. It evens out in the fridge afterwards.",
        p50=numbers.hours(hours.p50),
        p10=f"{hours.p10:.0f}",
        p90=f"{hours.p90:.0f}",
        salt=numbers.percent(setup.salt_fraction),
        salt_in_the_end=numbers.percent(found.salt_in_the_end, 1),
    )


def no_bath(a: Assessment, kg: Kilograms) -> str:
    """So much water for meat that lies in no bath: what is made instead, and how a bath is asked for."""
    said = numbers.plain(kg)
    if a.batch.setup.method == "inject" and a.dose is not None:
        return say(
            "This one is injected with {pickle} of pickle: in {said} kg (l) of water its cure would be another, so that water is "
            "not noted.\nMake it as the plan says, anew if it is mixed already; for a bath, say «wet brine», and I work out the dose "
            "for that.",
            pickle=numbers.grams(a.dose.pickle_kg),
            said=said,
        )
    return say(
        "This one is cured dry, so no water goes in, and nothing is noted.\nFor a bath, say «wet brine», and I work out the "
        "dose for {said} kg (l) of water.",
        said=said,
    )


def raised(salt: Kilograms, of: tuple[Fraction, Fraction]) -> str:
    """Plain salt that makes a brine stronger; `of` are its strength and the one that is wanted."""
    was, wanted = of
    return say(
        "Stir in {salt} of plain salt to bring it from {was} to {wanted}.\nCuring salt is another matter: it stays as it was weighed.",
        salt=numbers.grams(salt),
        was=numbers.percent(was, 1),
        wanted=numbers.percent(wanted, 1),
    )
