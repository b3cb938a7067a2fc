"""What a batch is set up to be: everything a cook said or the bot assumed before the work begins."""

from dataclasses import dataclass, fields
from datetime import datetime
from typing import Any, Final

from core.but import but
from core.errors import Gone
from core.units import Celsius, Fraction, Hours, Kilograms, Metres, MilligramsPerKilogram

WOODS: Final = (
    "cherry", "apple", "hickory", "oak", "mesquite", "maple", "pecan", "alder", "beech", "walnut", "plum", "pear",
    "peach", "birch", "ash", "olive", "orange", "apricot", "almond", "chestnut",
)  # fmt: skip
"""Woods that people smoke over, as they name them; nothing is reckoned by them."""


@dataclass(frozen=True)
class Setup:
    """One batch as planned. `said` names the fields that the cook stated; the others are assumptions.

    `mass` is that of all the `pieces` together; the `heaviest` of them sets the days and the hours.
    `nitrite_target` 0 is plain salt: no curing salt is weighed, and nothing counts as cured.
    `method` is "brine" (equilibrium brine in a bag), "dry" (equilibrium, in a bag) or "inject".
    `soak_hours` in fresh water and `rest_days` sealed come between the rinse and the drying; 0 for none.
    `brine_strength` is the salt of a strong brine that is left by the clock, None for an equilibrium; `brine_hours` how
    long the cook wants it to lie there, None for as long as `salt_fraction` takes. `salting_hours` is how long it
    lies in plain salt that is rubbed on, None for as long as the product wants.
    `cover_share` is the water of the pickle that covers an injected piece, per kg of meat, 0 for none.
    `water_share` is the water of the brine per kg of meat. `cure_nitrite_fraction` is the strength printed
    on the packet, None while unknown, `cure_nitrate_fraction` the nitrate beside it. `pierced` meat is no longer
    intact, and cures no faster. `purpose` names how it will be eaten ("cold", "sliced", "pulled").
    `fridge_vouched` is the cook's word that the fridge stayed cold where nobody read it; `vacuum` is how the finished
    meat is packed.
    `lighter` is how a fire of coals is lit: "cubes", "chimney", "torch" or "wand"; `outside_c` and `wind_m_s` are the
    weather on the day of the fire. `wrap` is "none", "paper" or "foil"; `chill` is "foil", "rack", "fan" or "ice".
    `zone` is the clock of the place where the meat lies, "" for its owner's: who travels leaves what others have too.
    `law` is that of the place where what is in was weighed ("US"), "" for its owner's: another place changes no grams.
    `wood` names what the smoke is of, one of `WOODS` or several with «+» between them, "" for what the cook likes.
    """

    product: str
    cut: str
    mass: Kilograms
    thickness: Metres | None = None
    pieces: int = 1
    heaviest: Kilograms | None = None
    method: str = "brine"
    cure_nitrite_fraction: Fraction | None = None
    cure_nitrate_fraction: Fraction = 0.0
    salt_fraction: Fraction = 0.0225
    sugar_fraction: Fraction = 0.01
    nitrite_target: MilligramsPerKilogram = 150.0
    water_share: float = 0.5
    pump_fraction: Fraction = 0.10
    cover_share: float = 0.0
    brine_strength: Fraction | None = None
    brine_hours: Hours | None = None
    salting_hours: Hours | None = None
    soak_hours: float = 0.0
    rest_days: float = 0.0
    sealed_faces: int = 0
    skin_on: bool = False
    pierced: bool = False
    fridge_c: Celsius = 3.0
    deadline: datetime | None = None
    cooker: str = "ceramic"
    lighter: str = "cubes"
    outside_c: Celsius = 20.0
    wind_m_s: float = 0.0
    pit_c: Celsius = 121.0
    purpose: str = "cold"
    target_c: Celsius = 93.0
    wrap: str = "none"
    chill: str = "ice"
    frozen: bool = False
    at_risk_eaters: bool | None = None
    cure_days: float | None = None
    long_cure_confirmed: bool = False
    fridge_vouched: bool = False
    vacuum: bool = False
    zone: str = ""
    law: str = ""
    wood: str = ""
    said: frozenset[str] = frozenset()

    def change(self, changes: dict[str, Any]) -> "Setup":
        """The same batch with `changes` as the cook said them; raises Gone for a field there is not."""
        unknown = set(changes) - {f.name for f in fields(self)}
        if unknown:
            raise Gone(", ".join(sorted(unknown)))
        return but(self, **in_a_brine(changes, self.method), said=self.said | frozenset(changes))

    def assume(self, changes: dict[str, Any]) -> "Setup":
        """The same batch with `changes` as the house assumes them: they may be changed without a word."""
        return but(self.change(changes), said=self.said - frozenset(changes))


def in_a_brine(changes: dict[str, Any], method: str) -> dict[str, Any]:
    """What is said with what it implies: who tells how strong a brine is, or for how many hours, salts in one.

    An equilibrium has no hours of its own, and who asks for a salt takes the hours back that were said before.
    """
    even = "brine_strength" in changes and changes["brine_strength"] is None
    if even or ("salt_fraction" in changes and "brine_hours" not in changes):
        changes = changes | {"brine_hours": None}
    told = changes.get("brine_strength") is not None or changes.get("brine_hours") is not None
    wet = told and method == "dry" and "method" not in changes
    return changes | {"method": "brine"} if wet else changes


def covered(setup: Setup) -> bool:
    """Whether it is injected and lies in the rest of its pickle."""
    return setup.method == "inject" and setup.cover_share > 0.0


def by_the_clock(setup: Setup) -> bool:
    """Whether it lies in a strong brine that has to be left on the hour."""
    return setup.method == "brine" and setup.brine_strength is not None
