"""How long the finished meat keeps, how cold, and how hot it is heated again.

The cold storage chart prints ranges; a use-by date takes the shorter end and counts from the time at which
the meat left the heat. Freezing at 0 °F stops the clock: freezer months are quality, not safety.
"""

from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache
from typing import Final

from core.errors import Missing
from core.safety.lethality import BIRDS
from core.safety.rows import Row, number, optional_number, rows
from core.sources import FSIS_SAFE_TEMPERATURES, Source, every_source
from core.units import Celsius, Days, Fahrenheit, celsius_from_fahrenheit

REHEAT_F: Final = 165.0  # leftovers, and ham that was not packed in an inspected plant
REHEAT_PLANT_HAM_F: Final = 140.0  # only as it came from the plant
FRIDGE_F: Final = 40.0
VACUUM_FISH_F: Final = 38.0  # without air botulinum grows colder than the fridge line

# Which line of the chart stands for what is made at home; a name that is not here is a line of the chart itself.
# Home-made is never "store-wrapped" or "plant-sealed".
_COOKED_LINES: Final = {
    "pastrami": "corned_beef",
    "loin": "ham",
    "poultry": "leftovers",
    "turkey": "leftovers",
    "chicken": "leftovers",
    "duck": "leftovers",
    "roast": "leftovers",
    "salmon": "fish",
    "trout": "fish",
}


@dataclass(frozen=True)
class Keeping:
    """How long something keeps in a fridge at 40 °F or below (fish: 38 °F without air). [d], freezer [months]

    `days` is the shorter end of the printed range, `longest` the longer one.
    """

    line: str
    state: str
    days: Days
    longest: Days
    freezer_months: float | None
    fridge_c: Celsius
    source: Source


@dataclass(frozen=True)
class UseBy:
    """The last moment by the shorter end of the chart, and by its longer end. aware"""

    at: datetime
    latest: datetime
    keeping: Keeping


@dataclass(frozen=True)
class Reheat:
    """How hot the meat is heated again before it is eaten. [°C]"""

    core_c: Celsius
    source: Source


def keeping(product_class: str, state: str = "cooked") -> Keeping:
    """How long a product keeps in the fridge.

    Parameters
    ----------
    product_class
        "pastrami", "bacon", "ham", "poultry", "fish", "roast", … or a line of the chart itself.
    state
        "cooked" (home-made and finished) or "raw", by the chart's own lines; its other states by their names.
        Sealing without air buys no day.

    Raises
    ------
    Missing
        The chart has no line for it.

    References
    ----------
    `sources.FSIS_COLD_STORAGE`; fish `sources.HOT_SMOKED_FISH`.
    """
    line = product_class if state == "raw" else _COOKED_LINES.get(product_class, product_class)
    row = _chart().get((line, state))
    if row is None:
        raise Missing("storage_line")
    cold = VACUUM_FISH_F if line == "fish" else FRIDGE_F
    return Keeping(
        line=line,
        state=state,
        days=number(row, "fridge_min_days"),
        longest=number(row, "fridge_max_days"),
        freezer_months=optional_number(row, "freezer_min_months"),
        fridge_c=celsius_from_fahrenheit(cold),
        source=every_source()[row["source_key"]],
    )


def raw_line(species: str) -> str:
    """The line of the chart for a raw piece of an animal, by its name as in a record."""
    return "poultry" if species in BIRDS else "fish" if species == "fish" else "roast"


def use_by(product_class: str, finished: datetime, state: str = "cooked") -> UseBy:
    """The use-by time of something.

    Parameters
    ----------
    product_class, state
        As for `keeping`.
    finished
        When it left the heat; raw meat: when it was bought or thawed. aware

    Returns
    -------
    The last moment by the shorter end of the chart, and by its longer end.

    Raises
    ------
    Missing
        The chart has no line for it.
    """
    kept = keeping(product_class, state)
    return UseBy(finished + timedelta(days=kept.days), finished + timedelta(days=kept.longest), kept)


def reheat(*, packed_in_a_plant: bool, opened: bool) -> Reheat:
    """How hot leftovers and ham are heated again: 165 °F for all that was made, sliced or opened at home.

    Source: the chart of safe minimum temperatures, where 140 °F is for ham as it came from an inspected plant.
    """
    as_it_came = packed_in_a_plant and not opened
    limit_f: Fahrenheit = REHEAT_PLANT_HAM_F if as_it_came else REHEAT_F
    return Reheat(celsius_from_fahrenheit(limit_f), FSIS_SAFE_TEMPERATURES)


@cache
def _chart() -> dict[tuple[str, str], Row]:
    return {(row["keeps"], state): row for row in rows("storage_times") for state in row["as"].split()}
