"""The cuts, read from `cuts.toml` beside this file, which a cook can read and mend."""

import tomllib
from functools import cache
from importlib import resources
from typing import Any

from core.errors import Gone, Unreadable
from core.meat.piece import Composition, Cut, Shape, Species

FILE = "cuts.toml"
COMPOSITION_SOURCE = "USDA SR28"


@cache
def cuts() -> dict[str, Cut]:
    """Every cut by name.

    Raises
    ------
    Unreadable
        The file is not as it should be; the error names the cut and the entry.
    """
    table = tomllib.loads(resources.files("core.meat").joinpath(FILE).read_text("utf-8"))
    return {name: _cut(name, row) for name, row in table.items()}


def cut(name: str) -> Cut:
    """The cut of that name; raises Gone where there is none."""
    try:
        return cuts()[name]
    except KeyError:
        raise Gone(f"cut {name}") from None


def _cut(name: str, row: dict[str, Any]) -> Cut:
    try:
        share = row["composition"]
        low, high = row["mass_kg"]
        return Cut(
            name=name,
            species=Species(row["species"]),
            shape=Shape(row["shape"]),
            composition=Composition(
                share["water"] / 100, share["protein"] / 100, share["fat"] / 100, share["ash"] / 100
            ),
            thickness_scale=row["thickness_scale_mm"] / 1000,
            thickness_log_sd=row["thickness_log_sd"],
            mass_low=low,
            mass_high=high,
            pink_from=row["pink_from_mg_kg"],
            composition_source=f"{COMPOSITION_SOURCE} {share['ndb']}",
            thickness_source=row["thickness_source"],
            portion=row.get("portion", False),
        )
    except (KeyError, ValueError, TypeError) as trouble:
        raise Unreadable(FILE, name, str(trouble)) from trouble
