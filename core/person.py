"""Who is spoken to: zone, hours, units, jurisdiction, cooker, and what past batches taught."""

from dataclasses import dataclass, field
from datetime import time
from zoneinfo import ZoneInfo

from core.units import Celsius, Fraction, Metres


@dataclass(frozen=True)
class Units:
    """The units a person reads; the house computes in its own."""

    mass: str = "kg"  # "kg" or "lb"
    length: str = "mm"  # "mm" or "in"
    temperature: str = "c"  # "c" or "f"


@dataclass(frozen=True)
class Habit:
    """How one cooker differs from its kind in one parameter of the cook: mean and standard deviation. [-]

    In standard deviations over cookers of that kind, so 0 and 1 where nothing is known.
    """

    name: str
    mean: float = 0.0
    sd: float = 1.0


@dataclass(frozen=True)
class Runs:
    """One cooker of a person, by its kind: its habits, and the cooks that taught them."""

    cooker: str
    habits: tuple[Habit, ...]
    cooks: int = 1


@dataclass(frozen=True)
class Learned:
    """What the slices and the cooks of this person say, as updates of the house defaults.

    `diffusivity_log_shift` and `diffusivity_log_sd` are the posterior of ln(D / default D);
    `cook_log_shift` and `cook_log_sd` that of ln(true hours / predicted hours) of this cooker;
    `cookers` are the habits of each cooker, from cooks with readings; the other two are from cooks without.
    `salt_shift` moves the wanted salt fraction. `batches` counts the batches that taught.
    """

    diffusivity_log_shift: float = 0.0
    diffusivity_log_sd: float = 0.35
    cook_log_shift: float = 0.0
    cook_log_sd: float = 0.0  # nothing learned yet: the model's own band stands
    salt_shift: Fraction = 0.0
    batches: int = 0
    cookers: tuple[Runs, ...] = ()

    def of_cooker(self, name: str) -> Runs | None:
        """What is known of a cooker."""
        return next((runs for runs in self.cookers if runs.cooker == name), None)


@dataclass(frozen=True)
class Person:
    """One member of a chat, with everything that a plan needs to know of them."""

    id: str
    name: str = ""
    zone: str = "UTC"
    zone_known: bool = False
    home_zone: str = ""  # the clock that they left for a journey, "" at home
    home_law: str = ""  # the jurisdiction that was theirs there
    language: str = "en"
    language_known: bool = False  # whether they said it
    units: Units = field(default_factory=Units)
    units_known: bool = False
    degrees_known: bool = False  # whether they said in which scale they read temperatures
    quiet_from: time = time(22, 0)
    quiet_to: time = time(7, 0)
    flip_hours: tuple[time, ...] = (time(8, 0), time(20, 0))
    jurisdiction: str = "US"
    cooker: str = "ceramic"
    altitude_m: Metres = 0.0
    fridge_c: Celsius = 3.0
    scale: bool = True  # whether they can weigh to a tenth of a gram
    salt: str = (
        "fine"  # their plain salt: "fine" or "coarse" (flakes and crystals, of which a spoon holds what it likes)
    )
    cure_nitrite_fraction: Fraction | None = None
    learned: Learned = field(default_factory=Learned)

    @property
    def tz(self) -> ZoneInfo:
        """The person's zone."""
        return ZoneInfo(self.zone)
