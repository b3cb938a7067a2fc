"""Which steps a product needs and how long each may take, read from `products/*.toml` beside this file."""

import tomllib
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field, fields
from datetime import datetime, timedelta
from functools import cache
from importlib import resources
from typing import Any, Final

from core.but import but
from core.errors import Gone, Missing, OtherWay, OutOfRange, Unreadable
from core.meat.cuts import cut
from core.plan.setup import Setup, by_the_clock, in_a_brine
from core.safety.history import printed_f
from core.safety.storage import keeping, raw_line
from core.units import Celsius, Days, Hours, Kilograms, celsius_from_fahrenheit

METHODS: Final = ("brine", "dry", "inject")
PURPOSES: Final = ("thin", "cold", "hot", "pulled")
ENTRIES: Final = frozenset(
    {"name", "cuts", "product_class", "storage", "rub_g_per_kg", "safety_floor_c", "cooked_from_c", "defaults",
     "purposes", "hours", "by_cut", "only_methods", "least_days", "only_by_name", "heavier"}
)  # fmt: skip
SETTINGS: Final = frozenset(f.name for f in fields(Setup)) - {"product", "cut", "mass", "deadline", "said"}
WATER_BY_THE_CLOCK: Final = 1.5  # kg for a kg of meat: a strong brine is hardly weakened by it. Common practice
LONGEST_SOAK: Hours = 48.0  # a cure that wants more was no cure to begin with. Judgement
SHORTEST_BRINING: Hours = 0.1
SHORTEST_SALTING: Hours = 0.5
LONGEST_BRINING: Hours = 96.0  # as far as the hours of a strong brine are computed
LONGEST_REST: Days = 4.0  # with a night of drying within the 5 days that raw cured meat keeps, FSIS storage chart
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
    """How long the steps between cure and meal take. [h]

    `hold_at_target` is how long it stays on once its core is there; `salting` how long meat lies in plain salt,
    `brining` in a strong brine where nobody says for how long, 0 for as long as its salt takes.
    `least_rest` is how long what is eaten hot rests at least; ready sooner, it is held warm.
    """

    brine_chill: Hours
    dry: Hours
    rub_rest: Hours
    set: Hours
    slice_before_meal: Hours
    hold_longest: Hours
    hold_at_target: Hours = 0.0
    salting: Hours = 24.0
    brining: Hours = 0.0
    least_rest: Hours = 0.75


@dataclass(frozen=True)
class Product:
    """One product of the trade, as its file describes it.

    `safety_floor_c` is the core below which it is never called done [°C], `rub_g_per_kg` 0 where none is rubbed on.
    `cooked_from_c` is a core under that floor at which it is cooked all the same, though it keeps as leftovers do, 0
    for none. `only_by_name` says that its cuts are made into something else where nobody names it; `heavier` is the
    product that its name stands for where a piece weighs as much as that one does, "" for none.
    `by_cut` holds the defaults that a cut has of its own, `only_methods` the ways that a cut may be cured where not
    every one will do, `least_days` the days below which a cut does not come out, by method. [d]
    """

    name: str
    cuts: tuple[str, ...]
    product_class: str
    storage: str
    safety_floor_c: Celsius
    defaults: tuple[tuple[str, Any], ...]
    purposes: tuple[Purpose, ...]
    hours: StepHours
    rub_g_per_kg: float = 0.0
    cooked_from_c: Celsius = 0.0
    only_by_name: bool = False
    heavier: str = ""
    by_cut: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    only_methods: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    least_days: Mapping[str, Mapping[str, Days]] = field(default_factory=dict)

    def defaults_of(self, cut: str) -> dict[str, Any]:
        """What a batch of that cut is set up to be where nobody says otherwise."""
        return dict(self.defaults) | dict(self.by_cut.get(cut, {}))

    def floor_of(self, setup: Setup) -> Celsius:
        """The core below which that batch is never called done: a target under the floor of the product has its own."""
        return self.safety_floor_c if setup.target_c >= self.safety_floor_c else self.cooked_from_c

    def brining(self, setup: Setup) -> Hours | None:
        """Hours in a strong brine: as said, else those of the product; None where they follow from the salt wanted."""
        if setup.brine_hours is not None or "salt_fraction" in setup.said:
            return setup.brine_hours
        return self.hours.brining or None

    def raw_within(self, setup: Setup) -> Hours | None:
        """How soon after the salt it is on the fire where salt alone goes in, by the raw days of the chart; else None.

        Source: FoodSafety.gov and USDA FSIS, Cold Food Storage Chart, the shorter end.
        """
        if setup.nitrite_target > 0.0:
            return None
        return keeping(raw_line(cut(setup.cut).species.value), "raw").days * 24.0

    def raw_until(self, setup: Setup, into: datetime | None) -> datetime | None:
        """When meat that went in then has to be on the fire; None for cured meat, and for what is not in yet."""
        within = self.raw_within(setup)
        return None if into is None or within is None else into + timedelta(hours=within)

    def methods(self, cut: str) -> tuple[str, ...]:
        """The ways in which that cut may be cured."""
        return self.only_methods.get(cut, METHODS)

    def least(self, setup: Setup) -> Days:
        """Days below which it does not come out, however soon the middle is reached. [d]"""
        return self.least_days.get(setup.cut, {}).get(setup.method, 0.0)

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
        if cut not in self.cuts:
            raise Gone(f"{self.name.replace('_', ' ')} from {cut.replace('_', ' ')}")
        base = {"product": self.name, "cut": cut, **self.defaults_of(cut)}
        unknown = said.keys() - {f.name for f in fields(Setup)}
        if unknown:
            raise Gone(", ".join(sorted(unknown)))
        told = in_a_brine(said, str(base.get("method", Setup.method)))
        chosen = Setup(**(base | told), said=frozenset(said) - assumed)
        return self.settle(chosen)

    def settle(self, setup: Setup) -> Setup:
        """The setup with its target taken from the purpose, unless the cook set a target of their own.

        Raises what `setup` raises, and OtherWay where the cut may not be cured so. Salt alone goes in by any
        way: it is for the taste, and need not reach the middle.
        """
        if setup.nitrite_target > 0.0 and setup.method not in self.methods(setup.cut):
            raise OtherWay(setup.cut, setup.method, self.methods(setup.cut))
        target = setup.target_c if "target_c" in setup.said else self.purpose(setup.purpose).target_c
        lowest = self.cooked_from_c or self.safety_floor_c
        if printed_f(target) < printed_f(lowest) or target > 100.0:
            raise OutOfRange("target", target, lowest, 100.0, "°C")
        _check_waits(setup)
        if not COLDEST_FRIDGE_C <= setup.fridge_c <= WARMEST_FRIDGE_C:
            raise OutOfRange("fridge", setup.fridge_c, COLDEST_FRIDGE_C, WARMEST_FRIDGE_C, "°C")
        return but(setup, target_c=target, water_share=self._water(setup), pit_c=self._pit(setup))

    def _pit(self, setup: Setup) -> Celsius:
        """The pit: as said, else that of the product; on another cooker than its own, the house's."""
        own = self.defaults_of(setup.cut)
        if "pit_c" in setup.said or setup.cooker == own.get("cooker", setup.cooker):
            return setup.pit_c
        return Setup.pit_c

    def _water(self, setup: Setup) -> float:
        """Water of the brine for a kg of meat: as said, else enough that a strong one stays strong, or the default."""
        if "water_share" in setup.said:
            return setup.water_share
        usual: float = self.defaults_of(setup.cut).get("water_share", Setup.water_share)
        return WATER_BY_THE_CLOCK if by_the_clock(setup) else usual


def _check_waits(setup: Setup) -> None:
    """Raise OutOfRange for a soak or a sealed rest that keeps raw meat too long, and a piece heavier than them all."""
    if setup.heaviest is not None and not setup.heaviest <= setup.mass * 1.001:
        raise OutOfRange("heaviest piece", setup.heaviest, setup.mass / setup.pieces, setup.mass, "kg")
    if setup.brine_hours is not None and setup.brine_strength is None:
        raise Missing("brine_strength")
    brining = SHORTEST_BRINING if setup.brine_hours is None else setup.brine_hours
    waits = (
        ("soak", setup.soak_hours, 0.0, LONGEST_SOAK, "h"),
        ("sealed rest", setup.rest_days, 0.0, LONGEST_REST, "d"),
        ("hours in the brine", brining, SHORTEST_BRINING, LONGEST_BRINING, "h"),
        ("hours in the salt", setup.salting_hours or SHORTEST_SALTING, SHORTEST_SALTING, LONGEST_SOAK, "h"),
    )
    for name, value, shortest, longest, unit in waits:
        if not shortest <= value <= longest:
            raise OutOfRange(name, value, shortest, longest, unit)


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


def called_by_weight(name: str, each: Kilograms) -> str:
    """The product that a name stands for where its cut was left open, by the heaviest piece: «duck» of 2 kg is a bird.

    Raises Gone where there is no product of that name.
    """
    other = product(name).heavier
    return other if other and each >= min(cut(of).mass_low for of in product(other).cuts) else name


def product_of_cut(cut: str) -> Product:
    """What a cut is made into where nobody says otherwise; raises Gone where there is nothing."""
    found = next((p for p in products().values() if cut in p.cuts and not p.only_by_name), None)
    if found is None:
        raise Gone(f"product of {cut}")
    return found


def _product(file: str, table: dict[str, Any]) -> Product:
    try:
        _known(table, ENTRIES)
        if not isinstance(table["cuts"], list):
            raise ValueError(f"cuts: {table['cuts']} is no list of cuts")
        _known(table["defaults"], SETTINGS)
        made = Product(
            name=table["name"],
            cuts=tuple(table["cuts"]),
            product_class=table["product_class"],
            storage=table["storage"],
            safety_floor_c=float(table["safety_floor_c"]),
            defaults=tuple(table["defaults"].items()),
            purposes=tuple(Purpose(n, float(p["target_c"]), p["chilled"]) for n, p in table["purposes"].items()),
            hours=StepHours(**table["hours"]),
            rub_g_per_kg=float(table["rub_g_per_kg"]),
            cooked_from_c=float(table.get("cooked_from_c", 0.0)),
            only_by_name=table.get("only_by_name", False),
            heavier=table.get("heavier", ""),
            by_cut=table.get("by_cut", {}),
            only_methods={cut: tuple(ways) for cut, ways in table.get("only_methods", {}).items()},
            least_days=table.get("least_days", {}),
        )
        _check(made)
    except (AttributeError, KeyError, TypeError, ValueError) as trouble:
        raise Unreadable(file, table.get("name", "?"), str(trouble)) from trouble
    return made


def _check(made: Product) -> None:
    """Raise ValueError, naming the entry, where two entries of a file do not fit together."""
    for name, by_cut in (("by_cut", made.by_cut), ("only_methods", made.only_methods), ("least_days", made.least_days)):
        _known(by_cut, made.cuts, name)
    for of, settings in made.by_cut.items():
        _known(settings, SETTINGS, f"by_cut.{of}")
    for of, ways in (*made.only_methods.items(), *made.least_days.items()):
        _known(ways, METHODS, of)
    _known([p.name for p in made.purposes], PURPOSES, "purposes")
    for of in made.cuts:
        own = made.defaults_of(of)
        _known([own.get("purpose", "cold")], [p.name for p in made.purposes], "purpose")
        _known([own.get("method", "brine")], made.methods(of), f"method of {of}")
    for purpose in made.purposes:
        if not made.safety_floor_c <= purpose.target_c <= 100.0:
            raise ValueError(f"purposes.{purpose.name}: target_c {purpose.target_c} is under the floor or over boiling")


def _known(entries: Iterable[str], known: Collection[str], where: str = "") -> None:
    wrong = [entry for entry in entries if entry not in known]
    if wrong:
        raise ValueError(f"{where}: {', '.join(map(str, wrong))} is none of {', '.join(sorted(known))}".lstrip(": "))
