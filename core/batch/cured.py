"""What counts as cured, by what was put in and by what came into the middle; and how long it keeps for that."""

from core.cure.dose import Dose
from core.cure.judgement import floor_of
from core.cure.limits import ROUNDING
from core.cure.penetration import Penetration
from core.meat.cuts import cut
from core.meat.piece import Species
from core.plan.recipe import product
from core.plan.setup import Setup
from core.safety.record import CURED_FROM
from core.units import Days, MilligramsPerKilogram

LEFTOVERS = "leftovers"  # line of the storage chart
LONGEST_COMPUTED: Days = 366.0


def storage_of(setup: Setup, weighed: Dose | None, cured_centre: MilligramsPerKilogram | None) -> str:
    """The line of the storage chart: the product's own, or that of leftovers for meat that does not count as cured.

    Cured is what had enough put in, and whose middle holds the rule's nitrite at the slow end of the band:
    `cured_centre`, what has come in there by the end of the cure [mg/kg], None where that is not known.
    """
    line = product(setup.product).storage
    if cut(setup.cut).species is Species.FISH:
        return line
    through = cured_centre is not None and cured_centre >= CURED_FROM
    return line if weighed is not None and through and counts_as_cured(weighed) else LEFTOVERS


def come_in(cure: Penetration, days: Days) -> MilligramsPerKilogram:
    """Nitrite that has come into the middle after so many days, at the slow end of the band. [mg/kg]"""
    return cure.after(min(days, LONGEST_COMPUTED)).ingoing_centre.p10


def counts_as_cured(weighed: Dose) -> bool:
    """Whether as much nitrite went in as the place, or else the cooling rule, calls cured."""
    if weighed.limit is None:
        return False
    return weighed.nitrite_ingoing >= floor_of(weighed.limit) * (1.0 - ROUNDING)
