"""Words for how cold the fridge of a cure has to be."""

from bot.wording import numbers, recalled
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.safety.fridge import MENDED_F
from core.units import celsius_from_fahrenheit


def how_cold(a: Assessment) -> str:
    """How cold it has to be, and what a warm one would mean."""
    last = a.batch.last(Probe.FRIDGE)
    cold = last is not None and last.celsius <= recalled.COLD
    said = say(
        "{low} to {high} is right for meat in its cure.\n"
        "Above that turn it down, shut the door, and send me the number with since when: up to 2 h does no harm.\n"
        "Up to {mended} part of a day is mended; warmer for longer, or nobody knows how long: it is thrown away. {last}",
        low=numbers.temperature(2.0, a.person),
        high=numbers.both(recalled.COLD, a.person),
        mended=numbers.at_most(celsius_from_fahrenheit(MENDED_F), a.person),
        last=recalled.fridge(a).split("\n", 1)[0],
    )
    return say("As it was read it is cold enough.") + f"\n{said}" if cold else said
