"""Which steps a product needs and how long each may take, read from `products/*.toml` beside this file."""

import tomllib
from dataclasses import dataclass, fields
from functools import cache
from importlib import resources
from typing import Any

from core.errors import Gone, OutOfRange, Unreadable
from core.plan.setup import Setup
from core.units import Celsius, Hours, celsius_from_fahrenheit

COLDEST_FRIDGE_C: Celsius = -1.0  # just above where cured meat freezes
WARMEST_FRIDGE_C: Celsius = celsius_from_fahrenheit(40.0) + 1e-9  # USDA FSIS, the danger zone begins at 40 °F


@dataclass(frozen=True)
class Purpose:
    """How the meat will be eaten: the core at which it comes off [°C], and whether it is chilled first."""

    name: str
    target_c: Celsius
    chilled: bool


@dataclass(frozen=True)
class StepHours:
    """How long the steps between cure and meal take. [h]"""

    brine_chill: Hours
    dry: Hours
    rub_rest: Hours
    set: Hours
    slice_before_meal: Hours
    hold_longest: Hours


@dataclass(frozen=True)
class Product:
    """One product of the trade, as its file describes it.

    `safety_floor_c` is the core below which it is never called done. [°C]
    """

    name: str
    cuts: tuple[str, ...]
    product_class: str
    storage: str
    safety_floor_c: Celsius
    defaults: tuple[tuple[str, Any], ...]
    purposes: tuple[Purpose, ...]
    hours: StepHours

    def purpose(self, name: str) -> Purpose:
        """The purpose of that name; raises Gone where the product has none."""
        found = next((p for p in self.purposes if p.name == name), None)
        if found is None:
            raise Gone(f"purpose {name}")
        return found

    def setup(self, said: dict[str, Any], assumed: frozenset[str] = frozenset()) -> Setup:
        """A batch of this product from what was said, the product's defaults and the house's.

        `assumed` names the fields among them that nobody said for this batch: they come from the person's past.

        Raises
        ------
        OutOfRange
            The target that was asked for lies under the product's safety floor, or above 100 °C; or no fridge that a
            cure may lie in is ever so cold or so warm.
        """
        cut = said.get("cut", self.cuts[0])
        base = {"product": self.name, "cut": cut, **dict(self.defaults)}
        unknown = said.keys() - {f.name for f in fields(Setup)}
        if unknown:
            raise Gone(", ".join(sorted(unknown)))
        chosen = Setup(**(base | said), said=frozenset(said) - assumed)
        return self.settle(chosen)

    def settle(self, setup: Setup) -> Setup:
        """The setup with its target taken from the purpose, unless the cook set a target of their own."""
        target = setup.target_c if "target_c" in setup.said else self.purpose(setup.purpose).target_c
        if not self.safety_floor_c <= target <= 100.0:
            raise OutOfRange("target", target, self.safety_floor_c, 100.0, "°C")
        if not COLDEST_FRIDGE_C <= setup.fridge_c <= WARMEST_FRIDGE_C:
            raise OutOfRange("fridge", setup.fridge_c, COLDEST_FRIDGE_C, WARMEST_FRIDGE_C, "°C")
        known = {f.name: getattr(setup, f.name) for f in fields(setup)}
        return Setup(**(known | {"target_c": target}))


@cache
def products() -> dict[str, Product]:
    """Every product by name; raises Unreadable, naming the file and the entry, where one is wrong."""
    folder = resources.files("core.plan").joinpath("products")
    files = sorted((f for f in folder.iterdir() if f.name.endswith(".toml")), key=lambda f: f.name)
    found = [_product(f.name, tomllib.loads(f.read_text("utf-8"))) for f in files]
    return {p.name: p for p in found}


def product(name: str) -> Product:
    """The product of that name; raises Gone where there is none."""
    try:
        return products()[name]
    except KeyError:
        raise Gone(f"product {name}") from None


def product_of_cut(cut: str) -> Product:
    """The first product made from a cut; raises Gone where there is none."""
    found = next((p for p in products().values() if cut in p.cuts), None)
    if found is None:
        raise Gone(f"product of {cut}")
    return found


def _product(file: str, table: dict[str, Any]) -> Product:
    try:
        return Product(
            name=table["name"],
            cuts=tuple(table["cuts"]),
            product_class=table["product_class"],
            storage=table["storage"],
            safety_floor_c=float(table["safety_floor_c"]),
            defaults=tuple(table["defaults"].items()),
            purposes=tuple(Purpose(n, float(p["target_c"]), p["chilled"]) for n, p in table["purposes"].items()),
            hours=StepHours(**table["hours"]),
        )
    except (KeyError, TypeError, ValueError) as trouble:
        raise Unreadable(file, table.get("name", "?"), str(trouble)) from trouble
