"""The published cooling options, one a row of `tables/cooling_options.csv`, with what each is good for at home."""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from core.safety.rows import Row, number, optional_number, rows
from core.sources import Source, every_source
from core.units import Fahrenheit, Hours, MilligramsPerKilogram


class Use(StrEnum):
    """What a row is good for in a home kitchen."""

    GRANTS = "grants"  # met, it makes the meat safe to keep
    CURED = "cured"  # the 15 h rows, each with its conditions
    SUPPORTS = "supports"  # judged and shown, does not grant alone
    SAME = "same"  # another edition of a row that is judged already
    EXPLAINED = "explained"  # asks for what no home can show (water activity, surface readings)


@dataclass(frozen=True)
class Stage:
    """From one temperature to another within some hours. [°F, °F, h]"""

    from_f: Fahrenheit
    to_f: Fahrenheit
    max_h: Hours


@dataclass(frozen=True)
class CoolingRule:
    """One row of the published options, with the conditions that can be shown at home."""

    key: str
    option: str
    use: Use
    stages: tuple[Stage, ...]
    min_nitrite: MilligramsPerKilogram | None
    min_ascorbate: MilligramsPerKilogram | None
    start_within: Hours | None
    source: Source
    row_status: str


@cache
def cooling_rules() -> tuple[CoolingRule, ...]:
    """Every published option, one a row."""
    return tuple(_rule(row) for row in rows("cooling_options"))


@cache
def judged_rules() -> tuple[CoolingRule, ...]:
    """The options that a record of core readings can be held against."""
    return tuple(rule for rule in cooling_rules() if rule.use in (Use.GRANTS, Use.CURED, Use.SUPPORTS))


def _rule(row: Row) -> CoolingRule:
    return CoolingRule(
        key=row["key"],
        option=row["option_id"],
        use=Use(row["use"]),
        stages=tuple(s for s in (_stage(row, "s1"), _stage(row, "s2")) if s is not None),
        min_nitrite=optional_number(row, "min_nitrite_mg_kg"),
        min_ascorbate=optional_number(row, "min_ascorbate_mg_kg"),
        start_within=optional_number(row, "start_within_h"),
        source=every_source()[row["source_key"]],
        row_status=row["status"],
    )


def _stage(row: Row, name: str) -> Stage | None:
    """One stage of a row; None where the row has none, or starts from the air of the room."""
    if not row[f"{name}_to_F"] or row[f"{name}_from_F"] == "ambient":
        return None
    return Stage(number(row, f"{name}_from_F"), number(row, f"{name}_to_F"), number(row, f"{name}_max_h"))
