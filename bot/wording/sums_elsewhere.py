"""Units of other kitchens, in words."""

from bot.wording import numbers
from bot.wording.language import decimal, say
from core.units import Kilograms


def volume(many: str, litres: tuple[float, float], land: str) -> str:
    """So much of a unit in litres: of the one that is named first, and of the other beside it."""
    us, uk = (_litres(one) for one in litres)
    if land == "uk":
        return say("{many}, British, is {uk}; of the US kind it is {us}.", many=many, uk=uk, us=us)
    return say("{many} is {us} in the US; British it is {uk}. I count the US kind in a brine: tell me litres to be sure.", many=many, us=us, uk=uk)  # fmt: skip


def water(many: str, masses: tuple[Kilograms, Kilograms], land: str) -> str:
    """What so much water weighs; of a US and of a British measure, where both are called so."""
    us, uk = (_weight(one) for one in masses)
    if masses[0] == masses[1]:
        return say("{many} of water weigh {mass}: a litre is a kilo.", many=many, mass=us)
    if land == "uk":
        return say("{many} of water, British, weigh {uk}; of the US kind {us}.", many=many, uk=uk, us=us)
    return say("{many} of water weigh {us} in the US; British {uk}. A litre is a kilo.", many=many, us=us, uk=uk)


def gas_mark(mark: str, fahrenheit: float, celsius: float) -> str:
    """The oven of a gas mark."""
    return say(
        "Gas mark {mark} is about {f} °F ({c} °C). Ovens stray: an oven thermometer tells.",
        mark=mark,
        f=f"{fahrenheit:.0f}",
        c=f"{round(celsius / 5.0) * 5:.0f}",
    )


def rise(many: float, unit: str, others: float) -> str:
    """A difference of degrees in the other unit."""
    other = "f" if unit == "c" else "c"
    return say(
        "A difference of {many} °{unit} is one of {others} °{other}.",
        many=numbers.plain(many),
        unit=unit.upper(),
        others=numbers.plain(round(others, 1)),
        other=other.upper(),
    )


def _litres(litres: float) -> str:
    if litres < 1.0:
        return say("{ml} ml", ml=f"{litres * 1000.0:.0f}")
    return say("{litres} l", litres=decimal(litres, 2))


def _weight(mass: Kilograms) -> str:
    return say("{kg} kg ({lb} lb)", kg=decimal(mass, 2), lb=decimal(mass / 0.45359237, 2))  # exact, 1959
