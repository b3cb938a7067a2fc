"""What else a doubted number may be: the same in the other unit, or, beside the fire, of the pit."""

from bot.intents.temperatures.plausible import can_be, set_point
from bot.measures import to_house
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Probe, Read

FALLING = (Phase.RESTING, Phase.CHILLING)
CLIMBS_K = 40.0  # between two looks at most. Common practice, no source
DIPS_K = 3.0


def ways(a: Assessment, value: float, unit: str, why: str) -> tuple[str, ...]:
    """Each as "probe/unit", of a core that is far from what was expected; nothing where no other is likely."""
    last = a.batch.last(Probe.CORE)
    if why != "jump" or last is None:
        return ()
    other = "c" if unit == "f" else "f"
    pit = a.batch.phase is Phase.COOKING and unit in set_point(Probe.PIT, value) and can_be(Probe.PIT, unit, value)
    core = can_be(Probe.CORE, other, value) and _follows(a, last, to_house(value, other))
    both = ((Probe.CORE, other, core), (Probe.PIT, unit, pit))
    return tuple("/".join((probe.value, scale)) for probe, scale, likely in both if likely)


def _follows(a: Assessment, last: Read, core: float) -> bool:
    change = core - last.celsius
    return change <= DIPS_K if a.batch.phase in FALLING else -DIPS_K <= change <= CLIMBS_K
