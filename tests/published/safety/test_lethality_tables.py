"""Every row of the published time-temperature tables: FSIS Cooking Guideline (Revised Appendix A), 2021."""

import pytest

from core.errors import Missing, OutOfRange
from core.safety.done import SMOKED_FISH
from core.safety.history import printed_f
from core.safety.lethality import (
    bird_table,
    dwell_table,
    earned,
    lethality,
    meat_table,
    restricted_meat_table,
    trichinella_table,
)
from core.units import celsius_from_fahrenheit
from tests.records import held, table

MEAT = table("lethality_meat")
RESTRICTED = table("lethality_meat_5log")
BIRDS = table("lethality_chicken") + table("lethality_turkey")
JUST_UNDER = 0.001  # °F


@pytest.mark.parametrize(("log", "column"), [(6.5, "seconds_6p5log"), (7.0, "seconds_7log")])
@pytest.mark.parametrize("row", MEAT, ids=lambda r: r["temp_F"])
def test_meat_rows(row, log, column):
    """Each row of Table 2 asks for its printed dwell: that time meets it, a second less does not."""
    _meets_exactly(float(row["temp_F"]), float(row[column]), lambda h: lethality(h, "beef", required_log=log))


@pytest.mark.parametrize("row", RESTRICTED, ids=lambda r: r["temp_F"])
def test_restricted_rows_are_kept_and_never_credit(row):
    """Table 6 (5 log, restricted) is there to be explained; no meat is judged by it."""
    dwell = restricted_meat_table().dwell(celsius_from_fahrenheit(float(row["temp_F"])))
    assert dwell == float(row["seconds_5log"])
    assert restricted_meat_table() not in (meat_table(6.5), meat_table(7.0), dwell_table("beef"))


@pytest.mark.parametrize("row", BIRDS, ids=lambda r: f"{r['species']}-{r['temp_F']}-{r['fat_pct']}")
def test_poultry_rows(row):
    """Each cell of Tables 3 and 4 (7 log, by fat) asks for its printed dwell."""
    fat = int(row["fat_pct"]) / 100.0
    _meets_exactly(
        float(row["temp_F"]), float(row["seconds_7log"]), lambda h: lethality(h, row["species"], fat_fraction=fat)
    )


@pytest.mark.parametrize("row", table("trichinella_heat"), ids=lambda r: r["temp_F"])
def test_trichinella_rows(row):
    """Each row of the former 9 CFR 318.10(c)(1)."""
    dwell = trichinella_table().dwell(celsius_from_fahrenheit(float(row["temp_F"])))
    assert dwell == 60.0 * float(row["minutes"])
    assert trichinella_table().required_log == 1.0  # all of what it asks; no log is printed


def _meets_exactly(fahrenheit, seconds, judge):
    """The dwell of a row meets it, one second less does not; a row at once is met by one reading."""
    if seconds == 0:
        found = judge(held(fahrenheit, 0.0)[:1])
        assert (found.fraction, found.met) == (1.0, True)
        return
    assert judge(held(fahrenheit, seconds)).met
    assert judge(held(fahrenheit, seconds)).fraction == pytest.approx(1.0, abs=1e-9)
    assert not judge(held(fahrenheit, seconds - 1.0)).met


@pytest.mark.parametrize("row", MEAT[1:], ids=lambda r: r["temp_F"])
def test_between_two_rows_the_lower_counts(row):
    """A thousandth of a degree under a row, the dwell is that of the row below: no interpolation."""
    columns = meat_table(6.5)
    fahrenheit = float(row["temp_F"])
    assert columns.dwell(celsius_from_fahrenheit(fahrenheit - JUST_UNDER)) == columns.dwell(
        celsius_from_fahrenheit(fahrenheit - 1.0)
    )


FIRST_ROWS = [("beef", 130.0), ("pork", 130.0), ("turkey", 136.0), ("chicken", 136.0)]


@pytest.mark.parametrize(("species", "first"), FIRST_ROWS)
def test_nothing_is_credited_under_the_first_row(species, first):
    """A day just under the first row earns nothing; at the row it earns much."""
    day = 86400.0
    assert lethality(held(first - JUST_UNDER, day), species).fraction == 0.0
    assert lethality(held(first, day), species).fraction > 10.0


def test_137f_is_not_the_printed_58_4c():
    """137 °F is 58.333 °C; the table prints 58.4 °C. 58.35 °C is over 137 °F and counts as its row (1,380 s)."""
    assert printed_f(celsius_from_fahrenheit(137.0)) == 137.0
    assert meat_table(6.5).dwell(58.35) == 1380.0
    assert meat_table(6.5).dwell(58.33) == 1680.0  # 136.994 °F


def test_duck_and_unknown_fat_take_the_longest():
    """Duck has no table: at each row the longer of both birds at 12 % fat; unknown fat takes the 12 % column."""
    chicken = {(r["temp_F"], r["fat_pct"]): float(r["seconds_7log"]) for r in table("lethality_chicken")}
    turkey = {(r["temp_F"], r["fat_pct"]): float(r["seconds_7log"]) for r in table("lethality_turkey")}
    for fahrenheit, seconds in bird_table("duck").rows:
        key = (f"{fahrenheit:.0f}", "12")
        assert seconds == max(chicken[key], turkey[key])
    assert bird_table("chicken", None).rows == bird_table("chicken", 0.12).rows


def test_a_lean_duck_is_no_exception():
    """Its fat is known, its table is not: the longest of both birds at 12 % still counts."""
    assert bird_table("duck", 0.01).rows == bird_table("duck").rows
    assert lethality(held(150.0, 200.0), "duck", 0.01).fraction == lethality(held(150.0, 200.0), "duck").fraction


def test_every_table_by_its_name_and_what_it_asks():
    """The name stands in the record beside the verdict: meat by its logs, birds by their columns of fat."""
    named = {
        ("meat_6.5log", 6.5): meat_table(6.5),
        ("meat_7log", 7.0): meat_table(7.0),
        ("meat_5log", 5.0): restricted_meat_table(),
        ("trichinae", 1.0): trichinella_table(),
        ("turkey_1pct_2pct", 7.0): bird_table("turkey", 0.015),
        ("chicken_12pct", 7.0): bird_table("chicken"),
        ("duck_12pct", 7.0): bird_table("duck", 0.01),
        ("fish_160f_30min", 1.0): SMOKED_FISH,
    }
    assert {(t.name, t.required_log) for t in named.values()} == named.keys()
    assert [t.first_f for t in named.values()] == [130.0, 130.0, 130.0, 120.0, 136.0, 136.0, 136.0, 160.0]


def test_a_column_of_fat_is_found_to_a_millionth_of_a_percent():
    """Noise of binary fractions is undone (0.07 times 100), a real hundredth more takes the next column as well."""
    assert bird_table("turkey", 0.07).name == "turkey_7pct"
    assert bird_table("turkey", 0.01 + 4e-9).name == "turkey_1pct"
    assert bird_table("turkey", 0.01 + 6e-9).name == "turkey_1pct_2pct"


def test_between_two_columns_of_fat_the_longer_counts():
    """Turkey at 150 °F is printed 228 s at 1 % and 222 s at 2 %: 1.5 % takes 228 s."""
    assert bird_table("turkey", 0.015).dwell(celsius_from_fahrenheit(150.0)) == 228.0
    assert bird_table("turkey", 0.0).rows == bird_table("turkey", 0.001).rows == bird_table("turkey", 0.01).rows


@pytest.mark.parametrize("fat", [-0.001, 0.1201, 0.3])
def test_fat_past_the_last_column_is_refused(fat):
    """The tables end at 12 %: fatter birds are refused and not read off the last column."""
    with pytest.raises(OutOfRange) as refused:
        bird_table("chicken", fat)
    assert (refused.value.value, refused.value.low, refused.value.high) == (fat, 0.0, 0.12)


@pytest.mark.parametrize("species", ["fish", "goose", "boar", ""])
def test_no_table_no_credit(species):
    """A species without a table has no lethality."""
    with pytest.raises(Missing):
        dwell_table(species)


def test_logs_that_are_not_printed_are_refused():
    """Meat has 6.5 and 7 log, birds 7; 5 log is no choice."""
    for species, log in (("beef", 5.0), ("turkey", 6.5)):
        with pytest.raises(OutOfRange):
            dwell_table(species, None, log)


# FDA Food Code 3-401.11(B)(2), roasts held at a temperature: from memory but for the first row, which
# reference/safe_temps.csv prints (CONFIRMED). It is the 6.5 log column of the FSIS table, row for row.
FOOD_CODE_ROASTS = {
    130: 112 * 60, 131: 89 * 60, 133: 56 * 60, 135: 36 * 60, 136: 28 * 60, 138: 18 * 60, 140: 12 * 60,
    142: 8 * 60, 144: 5 * 60, 145: 4 * 60, 147: 134, 149: 85, 151: 54, 153: 34, 155: 22, 157: 14, 158: 0,
}  # fmt: skip


@pytest.mark.parametrize(("fahrenheit", "seconds"), FOOD_CODE_ROASTS.items())
def test_food_code_roasts_are_the_6_5_log_column(fahrenheit, seconds):
    """Two bodies, one table."""
    assert meat_table(6.5).dwell(celsius_from_fahrenheit(fahrenheit)) == seconds


def test_food_code_first_row_as_printed():
    """safe_temps.csv: whole meat roasts, 130 °F for 112 min."""
    row = next(r for r in table("safe_temps") if r["product"].startswith("whole meat roasts"))
    assert earned(held(float(row["min_internal_F"]), float(row["hold_seconds"])), meat_table(6.5)).met
