"""What a line of talk is read against: the time, the person, and where their batch stands."""

from dataclasses import dataclass, field
from datetime import datetime, time
from typing import Final, Literal

from core.batch.events import Probe
from core.person import Units
from core.units import Celsius, Grams, Kilograms

Phase = Literal["none", "waiting", "curing", "drying", "cooking", "resting", "chilling", "stored"]

# phases by what the meat is in them
RAW: Final = ("waiting", "curing")
SET_UP: Final = ("none", *RAW)  # its size and its cure may still be told
UNCOOKED: Final = (*RAW, "drying")
HOT: Final = ("cooking", "resting", "chilling")
FALLING: Final = ("resting", "chilling")  # off the fire, and not cold yet
COOKED: Final = (*FALLING, "stored")
IN_THE_COLD: Final = (*UNCOOKED, "stored")

SHOWN: Final = 60  # characters of what was typed that are quoted where it stays open


@dataclass(frozen=True)
class Context:
    """Everything that the reading of a line may depend on, and nothing else.

    `now` and `deadline` are aware UTC; `zone` names the person's zone. `asked` is the slot of the open question: cure,
    thickness, mass, mass_unit, share, cut, method, purpose, wrap, chill, cooker, pit_c, fridge_c, probe, doubt,
    deadline, batch, eaters, weight_after, grey, salty, zone, when, confirm; `asked_value` is the number that it was
    about, `asked_probe` the only thermometer that was offered for it, `asked_of_start` says that it belongs to a start
    that is half said, and to no batch yet.
    `batch` is the id of the batch that the rest describes; `batches` are the (id, name) of the batches that the person
    may mean, the latest first; `of_what` are their (name, product, cut), where the line has a word for meat.
    `due_step` is the key of the step that was last called for, `soon_step` of the next, due or all but due.
    `target_c` is the core at which it shall come off. `mass` is that of the batch in hand, which tells pounds from
    kilos in «trimmed is 6.9». `on_at` is when the meat went on the fire, `out_due` when the plan has it out of the
    cure, until it is. `brine_made`: it cools, and the meat is not in it yet; `dry`: there is none, and the cure is
    rubbed on. `to_weigh` are the grams of cure, salt and sugar that are planned and not in yet. `probe_asked`
    is the thermometer, of fridge or brine, that was called for lately and was not read since. `elsewhere` holds
    (id, phase, last core, last pit) of the other batches that a line names beside that in
    hand. `core_at` is when the last core was read. `home_zone` is the clock that they left for a journey, "" at
    home. `flip_hours` are those at which this person is reminded, on their own clock.
    """

    now: datetime
    zone: str = "UTC"
    units: Units = field(default_factory=Units)
    language: str = "en"
    phase: str = "none"
    asked: str | None = None
    asked_value: float | None = None
    asked_of_start: bool = False
    asked_probe: Probe | None = None
    last_core_c: Celsius | None = None
    last_pit_c: Celsius | None = None
    core_at: datetime | None = None
    target_c: Celsius | None = None
    deadline: datetime | None = None
    batch: str | None = None
    batches: tuple[tuple[str, str], ...] = ()
    of_what: tuple[tuple[str, str, str], ...] = ()
    due_step: str | None = None
    soon_step: str | None = None
    mass: Kilograms | None = None
    on_at: datetime | None = None
    out_due: datetime | None = None
    brine_made: bool = False
    probe_asked: Probe | None = None
    dry: bool = False
    to_weigh: tuple[tuple[str, Grams], ...] = ()
    home_zone: str = ""
    elsewhere: tuple[tuple[str, str, Celsius | None, Celsius | None], ...] = ()
    flip_hours: tuple[time, ...] = (time(8), time(20))

    @property
    def unnoted(self) -> bool:
        """Whether the last numbers were asked about, what, which or of what they are, and none of them was noted."""
        return self.asked in ("probe", "pair", "batch")

    @property
    def free(self) -> bool:
        """Whether nothing is asked; «why» and «wrong» of an answer, or how it smells, may be said, and need not."""
        return self.asked in (None, "answered", "smell", "pair")
