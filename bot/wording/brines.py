"""Words for plain salt, and for a strong brine that is left by the clock."""

from bot.wording import numbers
from core.batch.assess import Assessment
from core.cure.dose import Dose
from core.cure.gradient import Brining
from core.plan import setup as setups
from core.plan.setup import Setup


def salt_alone(d: Dose, setup: Setup) -> str:
    """What is weighed out where no nitrite goes in."""
    water = f"{d.water_kg:.2f} kg water, " if d.water_kg else ""
    reached = f" Salt {numbers.percent(d.salt_fraction)}." if not setups.by_the_clock(setup) else ""
    return (
        f"Dose: {water}{numbers.grams(d.salt_kg)} salt, {numbers.grams(d.sugar_kg)} sugar, and no curing salt: "
        f"it is salted, not cured, and cools and keeps by the stricter rules.{reached}"
    )


def by_the_clock(a: Assessment, found: Brining) -> str:
    """How long it lies in a strong brine, and why on the hour."""
    hours, setup = found.hours, a.batch.setup
    return (
        f"In the brine for {numbers.hours(hours.p50)} ({hours.p10:.0f} to {hours.p90:.0f} h in pieces like this), to {numbers.percent(setup.salt_fraction)} salt on average.\n"
        f"By the clock: left in, it would go to {numbers.percent(found.salt_in_the_end, 1)}. It evens out in the fridge afterwards."
    )
