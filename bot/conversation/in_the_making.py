"""What is weighed and made before the meat goes in."""

from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Probe
from core.units import Grams


def brine_cools(a: Assessment) -> bool:
    """A brine is made and not yet read cold, and the meat is in none."""
    made = "brine" in a.batch.done or a.batch.last(Probe.BRINE) is not None
    return a.batch.phase is Phase.WAITING and made and "brine_check" not in a.batch.done


def to_weigh(a: Assessment) -> tuple[tuple[str, Grams], ...]:
    """Curing salt, salt and sugar that are to be weighed out, without what there is none of; nothing once it is in."""
    if a.batch.phase is not Phase.WAITING or a.dose is None or not a.dose.cure_kg:
        return ()
    parts = {"cure": a.dose.cure_kg, "salt": a.dose.salt_kg, "sugar": a.dose.sugar_kg}
    return tuple((name, 1000.0 * kg) for name, kg in parts.items() if kg > 0)
