"""A core temperature that was held: what the published table asks for there, and whether the time was enough."""

from dataclasses import dataclass

from core.safety.lethality import BIRDS, MEAT, bird_table, meat_table
from core.sources import Source
from core.units import Celsius, Seconds

LEAN = 0.05  # of a skinless breast; the other end is the table's fattest column


@dataclass(frozen=True)
class Held:
    """What a table asks for at a temperature. [s]

    `asked` is the longest that any column asks for, `lean` that of a lean bird; None below the first row, where no
    time is enough. `first` is that row [°F].
    """

    celsius: Celsius
    asked: Seconds | None
    lean: Seconds | None
    first: float
    species: str
    source: Source

    def enough(self, held_s: Seconds | None) -> bool | None:
        """Whether a time meets the table; None where no time was told."""
        if held_s is None:
            return None
        return self.asked is not None and held_s >= self.asked


def held(species: str, celsius: Celsius) -> Held | None:
    """What the table for that animal asks for at a temperature; None where there is no table (fish)."""
    if species in MEAT:
        table = meat_table(6.5)
        return Held(celsius, table.dwell(celsius), None, table.first_f, species, table.source)
    if species in BIRDS:
        fattest = bird_table(species)
        lean = None if species == "duck" else bird_table(species, LEAN).dwell(celsius)
        return Held(celsius, fattest.dwell(celsius), lean, fattest.first_f, species, fattest.source)
    return None
