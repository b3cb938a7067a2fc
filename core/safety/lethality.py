"""How much of the required kill a temperature history has earned, by the published time-temperature tables.

The tables are those of the FSIS Cooking Guideline (Revised Appendix A, 2021): meat (Table 2, 6.5 or 7 log
of Salmonella), chicken and turkey by fat (Tables 3 and 4, 7 log), and a restricted 5 log table (Table 6)
that is kept to be explained and never credits. A row is the dwell at or above its temperature. Between
two rows the lower row counts; below the first row nothing counts; nothing is interpolated or clamped.
"""

from bisect import bisect_right
from dataclasses import dataclass
from datetime import datetime
from functools import cache, cached_property
from math import ceil, floor

from core.errors import Missing, OutOfRange
from core.safety.history import History, Reading, coldest_at_each_time, ordered, printed_f
from core.safety.rows import number, rows
from core.sources import CFR_9_318_10, FSIS_COOKING_2021, Source
from core.units import SECONDS_PER_MINUTE, Celsius, Fahrenheit, Fraction, Seconds

MEAT = frozenset({"beef", "pork"})
BIRDS = frozenset({"chicken", "turkey", "duck"})
POULTRY_LOG = 7.0
MEAT_LOGS = (6.5, 7.0)
FATTEST = 12  # percent of fat in the last column of the poultry tables
_MEAT_COLUMNS = {6.5: "seconds_6p5log", 7.0: "seconds_7log"}
_ENOUGH = 1.0 - 1e-9  # sums of binary fractions; a nanosecond, not a rounding


@dataclass(frozen=True)
class DwellTable:
    """One column of a published table: (°F, seconds at or above it), rising; 0 s is at once."""

    name: str
    required_log: float
    rows: tuple[tuple[Fahrenheit, Seconds], ...]
    source: Source

    def dwell(self, celsius: Celsius) -> Seconds | None:
        """Time that the row at or below this temperature asks for, None below the first row. [s]"""
        place = bisect_right(self._printed, printed_f(celsius))
        return self.rows[place - 1][1] if place else None

    @cached_property
    def _printed(self) -> tuple[Fahrenheit, ...]:
        return tuple(row_f for row_f, _ in self.rows)

    @cached_property
    def shortest(self) -> Seconds:
        """The shortest dwell that is printed as a time: what a row "at once" is counted by. [s]"""
        return min(seconds for _, seconds in self.rows if seconds)

    @property
    def first_f(self) -> Fahrenheit:
        """The first row, under which nothing is credited. [°F]"""
        return self.rows[0][0]


@dataclass(frozen=True)
class Lethality:
    """How far a history got. [-]

    `fraction` is the share of the required dwell, 1 when met; `log_reduction` the same in logs.
    `met_at` is the reading by which it was met, None before. `deciding` are the two readings (one, where a
    row asks for no time) that met it, or the latest two that count.
    """

    fraction: float
    met_at: datetime | None
    required_log: float
    log_reduction: float
    table: str
    source: Source
    deciding: tuple[Reading, ...]

    @property
    def met(self) -> bool:
        """Whether the table's requirement is met."""
        return self.met_at is not None


def lethality(
    history: History, species: str, fat_fraction: Fraction | None = None, required_log: float | None = None
) -> Lethality:
    """What the readings of the core have earned, the lower of each two neighbours counting for the time between.

    Parameters
    ----------
    history
        Readings of the coldest spot, or the low side of a modelled curve. [aware datetime, °C]
    species
        "beef", "pork", "chicken", "turkey" or "duck".
    fat_fraction
        Fat of a bird; None takes the 12 % column. [-]  0 to 0.12
    required_log
        6.5 or 7 for meat (None: 6.5); birds have 7 only.

    Raises
    ------
    Missing
        There is no table for this species.
    OutOfRange
        Fat past the last column, a log that is not printed, or a reading that cannot be.

    References
    ----------
    `sources.FSIS_COOKING_2021`, Tables 2, 3 and 4.
    """
    return earned(history, dwell_table(species, fat_fraction, required_log))


def earned(history: History, table: DwellTable) -> Lethality:
    """What a history has earned by one table.

    Parameters
    ----------
    history
        Readings of the coldest spot, in any order. [aware datetime, °C]
    table
        The column to earn by; a row of 0 s is met by one reading.

    Returns
    -------
    The sum of (time between two readings) / (dwell of the row of the lower of them). A row "at once" counts
    1 at its reading, and time spent there by the shortest printed dwell.

    Raises
    ------
    Missing, OutOfRange
        A reading without a zone, or one that cannot be.
    """
    readings = coldest_at_each_time(ordered(history))
    fraction, met_at, deciding = 0.0, None, readings[:1]
    for first, second in zip(readings[:1] + readings, readings, strict=False):
        gain = _gain(table, first, second)
        fraction = max(fraction + gain, _at_once(table, second))
        if met_at is None and (gain > 0 or fraction >= _ENOUGH):
            deciding = (second,) if _at_once(table, second) else (first, second)
            met_at = second.at if fraction >= _ENOUGH else None
    log = fraction * table.required_log
    return Lethality(fraction, met_at, table.required_log, log, table.name, table.source, deciding)


def _gain(table: DwellTable, first: Reading, second: Reading) -> float:
    """Share of the requirement earned between two readings, at the lower of the two."""
    dwell = table.dwell(min(first.celsius, second.celsius))
    if dwell is None:
        return 0.0
    return (second.at - first.at).total_seconds() / max(dwell, table.shortest)


def _at_once(table: DwellTable, reading: Reading) -> float:
    """1 where the reading alone meets the table."""
    return 1.0 if table.dwell(reading.celsius) == 0.0 else 0.0


@cache
def dwell_table(species: str, fat_fraction: Fraction | None = None, required_log: float | None = None) -> DwellTable:
    """The column that counts for this meat; see `lethality` for the parameters and errors."""
    if species in MEAT:
        return meat_table(6.5 if required_log is None else required_log)
    if species not in BIRDS:
        raise Missing("lethality_table")
    if required_log not in (None, POULTRY_LOG):
        raise OutOfRange("required_log", required_log or 0.0, POULTRY_LOG, POULTRY_LOG, "log")
    return bird_table(species, fat_fraction)


@cache
def meat_table(required_log: float) -> DwellTable:
    """Table 2, for 6.5 or 7 log."""
    if required_log not in MEAT_LOGS:
        raise OutOfRange("required_log", required_log, *MEAT_LOGS, "log")
    column = _MEAT_COLUMNS[required_log]
    return DwellTable(f"meat_{required_log:g}log", required_log, _column("lethality_meat", column), FSIS_COOKING_2021)


@cache
def restricted_meat_table() -> DwellTable:
    """Table 6, 5 log: needs support that no home has, so it is explained and never credits."""
    return DwellTable("meat_5log", 5.0, _column("lethality_meat_5log", "seconds_5log"), FSIS_COOKING_2021)


@cache
def trichinella_table() -> DwellTable:
    """The former 9 CFR 318.10(c)(1) for trichinae in pork: science, no law since 2018. 1 is all of what it asks."""
    column = tuple((number(r, "temp_F"), SECONDS_PER_MINUTE * number(r, "minutes")) for r in rows("trichinella_heat"))
    return DwellTable("trichinae", 1.0, column, CFR_9_318_10)


@cache
def bird_table(species: str, fat_fraction: Fraction | None = None) -> DwellTable:
    """Tables 3 and 4. Between two columns the longer counts; duck has no table and takes the longest of both birds."""
    kinds = ("chicken", "turkey") if species == "duck" else (species,)
    percents = (FATTEST,) if species == "duck" else _columns(fat_fraction)
    columns = [_bird_column(kind, percent) for kind in kinds for percent in percents]
    longest = tuple((rows_at[0][0], max(seconds for _, seconds in rows_at)) for rows_at in zip(*columns, strict=True))
    name = f"{species}_" + "_".join(f"{p}pct" for p in percents)
    return DwellTable(name, POULTRY_LOG, longest, FSIS_COOKING_2021)


def _columns(fat_fraction: Fraction | None) -> tuple[int, ...]:
    if fat_fraction is None:
        return (FATTEST,)
    percent = round(100 * fat_fraction, 6)
    if not 0 <= percent <= FATTEST:
        raise OutOfRange("fat_fraction", fat_fraction, 0.0, FATTEST / 100, "-")
    return tuple(sorted({max(1, floor(percent)), max(1, ceil(percent))}))


def _bird_column(kind: str, percent: int) -> tuple[tuple[Fahrenheit, Seconds], ...]:
    wanted = [row for row in rows(f"lethality_{kind}") if int(row["fat_pct"]) == percent]
    return tuple((number(row, "temp_F"), number(row, "seconds_7log")) for row in wanted)


def _column(table: str, column: str) -> tuple[tuple[Fahrenheit, Seconds], ...]:
    return tuple((number(row, "temp_F"), number(row, column)) for row in rows(table))
