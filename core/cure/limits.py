"""The legal limits of nitrite and nitrate, read from `limits.toml` beside this file, and the check of a dose.

A limit is compared as sodium nitrite (or sodium nitrate) going in. Where the law speaks of the finished product,
ingoing is held to it, which is the strict reading: meat loses nitrite from the first hour.
"""

import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any, cast, get_args

from core.cure.nitrite import sodium_from_ion
from core.errors import Gone, OverLimit, Unreadable
from core.sources import Source, Status, every_source
from core.units import Kilograms, MilligramsPerKilogram

FILE = "limits.toml"
ANY = "*"
ROUNDING = 1e-9  # a dose computed from the limit itself may come back a few units of the last binary digit above it
SUBSTANCES = ("nitrite", "nitrate")
METHODS = ("brine", "dry", "inject", "comminuted")


@dataclass(frozen=True)
class Limit:
    """One limit, as printed and as it is compared.

    `printed_mg_kg` is in the substance of `expressed_as`; `max_mg_kg` in sodium nitrite or sodium nitrate. `counts`
    names what is added up against it. `floor_mg_kg` is what a rule wants at the least of a product called cured.
    """

    jurisdiction: str
    product_class: str
    methods: tuple[str, ...]
    counts: tuple[str, ...]
    printed_mg_kg: MilligramsPerKilogram
    max_mg_kg: MilligramsPerKilogram
    floor_mg_kg: MilligramsPerKilogram | None
    expressed_as: str
    basis: str
    source: Source
    where: str
    status: Status
    note: str = ""

    def passes(self, found: MilligramsPerKilogram) -> bool:
        """Whether that much going in is within the limit."""
        return found <= self.max_mg_kg * (1.0 + ROUNDING)


@dataclass(frozen=True)
class Ingoing:
    """What goes in, by the method's formula: sodium nitrite and sodium nitrate. [mg/kg]"""

    nitrite: MilligramsPerKilogram
    nitrate: MilligramsPerKilogram = 0.0

    def counted(self, limit: Limit) -> MilligramsPerKilogram:
        """The sum of what a limit counts. [mg/kg]"""
        amounts = {"nitrite": self.nitrite, "nitrate": self.nitrate}
        return sum(amounts[substance] for substance in limit.counts)


@cache
def limits() -> tuple[Limit, ...]:
    """Every limit of the file; raises Unreadable, naming the entry, where one is wrong."""
    try:
        rows = tomllib.loads(resources.files("core.cure").joinpath(FILE).read_text("utf-8"))["limit"]
    except (tomllib.TOMLDecodeError, KeyError) as trouble:
        raise Unreadable(FILE, "the file", repr(trouble)) from trouble
    return tuple(_limit(number, row) for number, row in enumerate(rows, 1))


def limit(jurisdiction: str, product_class: str, method: str) -> Limit:
    """The nitrite limit of a product.

    Parameters
    ----------
    jurisdiction
        "US", "CA", "EU" or "UK".
    product_class
        "whole_muscle", "bacon", or another class of the file.
    method
        "brine", "dry", "inject" or "comminuted".

    Raises
    ------
    Gone
        The file knows no such limit, so no dose is computed.
    """
    return _of(jurisdiction, product_class, method, "nitrite")


def limits_of(jurisdiction: str, product_class: str, method: str, *, covered: bool = False) -> tuple[Limit, ...]:
    """The nitrite limit and the nitrate limit of a product, once where one rule counts both. Raises as `limit`.

    What is `covered` is injected and lies in a cover brine: it is held to the limits of both.
    """
    found = [_of(jurisdiction, product_class, method, substance) for substance in SUBSTANCES]
    if covered:
        found += limits_of(jurisdiction, product_class, "brine")
    return tuple(dict.fromkeys(found))


def jurisdictions() -> tuple[str, ...]:
    """Every jurisdiction that the file knows, in its order."""
    return tuple(dict.fromkeys(one.jurisdiction for one in limits()))


def check(ingoing: Ingoing, against: Iterable[Limit], passing_cure: Kilograms | None = None) -> None:
    """Refuse what is over a limit.

    Parameters
    ----------
    ingoing
        What goes in by the method's formula.
    against
        The limits to hold it to.
    passing_cure
        Curing salt of the same kind that would pass, for the refusal to say. [kg]

    Raises
    ------
    OverLimit
        With what was found, the limit, its source and its status.
    """
    for one in against:
        found = ingoing.counted(one)
        if not one.passes(found):
            raise OverLimit(
                substance="+".join(one.counts),
                found_mg_kg=found,
                limit_mg_kg=one.max_mg_kg,
                jurisdiction=one.jurisdiction,
                source=one.source.key,
                status=one.status,
                passing_cure_kg=passing_cure,
            )


def _of(jurisdiction: str, product_class: str, method: str, substance: str) -> Limit:
    for one in limits():
        fits = one.product_class in (product_class, ANY) and method in one.methods
        if one.jurisdiction == jurisdiction and fits and substance in one.counts:
            return one
    raise Gone(f"{substance} limit {jurisdiction} {product_class} {method}")


def _limit(number: int, row: dict[str, Any]) -> Limit:
    try:
        printed = float(row["max_mg_kg"])
        return Limit(
            jurisdiction=row["jurisdiction"],
            product_class=row["product_class"],
            methods=tuple(_known(method, METHODS) for method in row["methods"]),
            counts=tuple(_known(substance, ("nitrite", "nitrate")) for substance in row["counts"]),
            printed_mg_kg=printed,
            max_mg_kg=_as_salt(printed, row["expressed_as"]),
            floor_mg_kg=row.get("floor_mg_kg"),
            expressed_as=row["expressed_as"],
            basis=row["basis"],
            source=every_source()[row["source"]],
            where=row["where"],
            status=cast(Status, _known(row["status"], get_args(Status))),
            note=row.get("note", ""),
        )
    except (KeyError, ValueError, TypeError) as trouble:
        raise Unreadable(FILE, f"limit {number}", repr(trouble)) from trouble


def _as_salt(printed: MilligramsPerKilogram, expressed_as: str) -> MilligramsPerKilogram:
    if _known(expressed_as, ("NaNO2", "NaNO3", "NO2")) == "NO2":
        return sodium_from_ion(printed)
    return printed


def _known(word: str, words: tuple[str, ...]) -> str:
    if word not in words:
        raise ValueError(f"{word} is none of {', '.join(words)}")
    return word
