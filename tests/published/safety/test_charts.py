"""The consumer charts: safe minimum temperatures, cold storage, thawing (FSIS, FoodSafety.gov, FDA, extension)."""

import pytest

from core.errors import Missing, OutOfRange
from core.plan.recipe import product, products
from core.safety import after, done
from core.safety.done import floor_f
from core.safety.lethality import meat_table
from core.safety.storage import keeping, reheat, use_by
from core.safety.thaw import thaw
from core.units import KILOGRAMS_PER_POUND, celsius_from_fahrenheit
from tests.records import at, brisket, held, table

SAFE = {row["product"]: row for row in table("safe_temps")}
STORAGE = table("storage_times")
THAW = table("thaw_times")


def _f(product):
    return float(SAFE[product]["min_internal_F"])


@pytest.mark.parametrize(
    ("species", "product"),
    [
        ("beef", "beef pork veal lamb steaks chops roasts"),
        ("pork", "ham fresh or smoked uncooked"),
        ("fish", "fish and shellfish"),
        ("turkey", "all poultry any part"),
        ("chicken", "all poultry any part"),
        ("duck", "all poultry any part"),
    ],
)
def test_the_floor_is_the_chart(species, product):
    """No product is called done below the chart, whatever its own floor says."""
    assert floor_f(brisket(species=species, doneness_floor_c=None)) == _f(product)
    assert floor_f(brisket(species=species, doneness_floor_c=50.0)) == _f(product)
    assert floor_f(brisket(species=species, doneness_floor_c=celsius_from_fahrenheit(170.0))) == 170.0


def test_three_minutes_of_rest():
    """The chart's rest for whole cuts, 180 s."""
    row = SAFE["beef pork veal lamb steaks chops roasts"]
    assert float(row["hold_seconds"]) == done.REST_HOURS * 3600.0


def test_hot_smoked_fish_at_home():
    """PNW 238 and others: 160 °F for 30 min."""
    row = SAFE["hot-smoked fish home"]
    assert done.SMOKED_FISH.required_log == 1.0  # all of what it asks; no log is printed
    assert done.SMOKED_FISH.rows == ((float(row["min_internal_F"]), float(row["hold_seconds"])),)


def test_reheating():
    """165 °F for leftovers and every ham that is not as it came from an inspected plant; 140 °F for that one."""
    home = _f("fully cooked ham reheat, all other incl. home/repackaged/leftover")
    plant = _f("fully cooked ham reheat, plant-packed")
    assert _f("leftovers casseroles") == home
    for plant_packed, opened in ((False, False), (False, True), (True, True)):
        assert reheat(packed_in_a_plant=plant_packed, opened=opened).core_c == celsius_from_fahrenheit(home)
    assert reheat(packed_in_a_plant=True, opened=False).core_c == celsius_from_fahrenheit(plant)


@pytest.mark.parametrize(
    "product",
    ["injected, mechanically tenderized, comminuted meat/fish", *[p for p in SAFE if p.startswith("injected/")]],
)
def test_the_7_log_column_is_no_laxer_than_retail_for_injected_meat(product):
    """Food Code 3-401.11 for injected meat: holding by our 7 log column never asks for less than 145 °F for 3 min.

    At 155 °F retail asks for 17 s and the table for 23 s; at 150 °F 60 s and 72 s; at 158 °F both at once.
    """
    row = SAFE[product]
    dwell = meat_table(7.0).dwell(celsius_from_fahrenheit(float(row["min_internal_F"])))
    assert dwell is not None
    assert dwell >= float(row["hold_seconds"])


OURS = {
    "beef pork veal lamb steaks chops roasts": lambda: done.floor_f(brisket(species="beef", doneness_floor_c=None)),
    "ham fresh or smoked uncooked": lambda: done.floor_f(brisket(species="pork", doneness_floor_c=None)),
    "all poultry any part": lambda: done.floor_f(brisket(species="turkey", doneness_floor_c=None)),
    "poultry, stuffed, wild game": lambda: done.floor_f(brisket(species="duck", doneness_floor_c=None)),
    "cured smoked poultry (old processor rule)": lambda: done.floor_f(brisket(species="turkey", doneness_floor_c=60.0)),
    "uncured poultry (old processor rule)": lambda: done.floor_f(brisket(species="chicken", doneness_floor_c=60.0)),
    "fish and shellfish": lambda: done.floor_f(brisket(species="fish", doneness_floor_c=None)),
    "intact meat, fish, eggs to order": lambda: done.floor_f(brisket(species="beef", doneness_floor_c=None)),
    "hot-smoked fish home": lambda: done.SMOKED_FISH.rows[0][0],
    "hot-smoked fish regulated": lambda: done.SMOKED_FISH.rows[0][0],
    "fully cooked ham reheat, plant-packed": lambda: _shown(reheat(packed_in_a_plant=True, opened=False).core_c),
    "fully cooked ham reheat, all other incl. home/repackaged/leftover": lambda: _shown(
        reheat(packed_in_a_plant=False, opened=True).core_c
    ),
    "leftovers casseroles": lambda: _shown(reheat(packed_in_a_plant=False, opened=True).core_c),
    "reheat for hot holding": lambda: _shown(reheat(packed_in_a_plant=False, opened=True).core_c),
    "reheat commercially processed RTE": lambda: _shown(reheat(packed_in_a_plant=True, opened=False).core_c),
    "listeria risk groups: deli/cold cured meat": lambda: _shown(reheat(packed_in_a_plant=False, opened=True).core_c),
    "hot holding": lambda: after.HOT_F,
    "hot holding consumer": lambda: after.HOT_F,
}
BY_THE_TABLE = frozenset(  # held to the 7 log column, above; the first row is the Food Code's roast table
    p for p in SAFE if p.startswith(("injected", "whole meat roasts"))
)
NOT_OURS = {
    "ground meats": "no product of minced meat is offered",
    "ground poultry": "no product of minced meat is offered",
    "corned beef": "older advice, 160 °F; the chart of today: 145 °F and 3 min. Ours is cooked on to 195 °F",
    "microwave raw animal food": "nobody smokes in a microwave oven",
}


def _shown(celsius):
    return round(celsius * 9.0 / 5.0 + 32.0, 6)


def test_every_row_of_the_temperatures_has_its_place():
    """Each is ours, held to the table, or named with the reason why it is not."""
    assert OURS.keys() | BY_THE_TABLE | NOT_OURS.keys() == set(SAFE)
    assert not OURS.keys() & (BY_THE_TABLE | NOT_OURS.keys())


@pytest.mark.parametrize("product", OURS)
def test_no_temperature_of_ours_is_laxer_than_printed(product):
    """Home charts, retail and old processors' rules: what we ask for is that or more."""
    assert OURS[product]() >= float(SAFE[product]["min_internal_F"])


KEPT = {
    ("bacon", "as listed (raw cured)"): ("bacon", "raw"),
    ("corned beef", "raw in pouch with pickling juices"): ("corned_beef", "raw"),
    ("corned beef", "cooked"): ("corned_beef", "cooked"),
    ("cooked meat leftovers", "cooked"): ("leftovers", "cooked"),
    ("ham", "fresh uncured uncooked"): ("fresh_ham", "raw"),
    ("ham", "fresh uncured cooked"): ("fresh_ham", "cooked"),
    ("ham", "cured cook-before-eating uncooked"): ("ham", "raw"),
    ("ham", "fully cooked vacuum sealed at plant unopened"): ("ham", "plant_sealed"),
    ("ham", "cooked store-wrapped whole"): ("ham", "store_whole"),
    ("ham", "cooked slices half or spiral"): ("ham", "cooked"),
    ("ham", "country ham cooked"): ("country_ham", "cooked"),
    ("ham", "canned keep-refrigerated unopened"): ("canned_ham", "plant_sealed"),
    ("ham", "canned shelf-stable opened"): ("canned_ham", "opened"),
    ("ham", "prosciutto/parma/serrano cut"): ("dry_ham", "cut"),
    ("luncheon meat", "opened or deli sliced"): ("luncheon_meat", "opened"),
    ("luncheon meat", "unopened"): ("luncheon_meat", "plant_sealed"),
    ("sausage", "raw"): ("sausage", "raw"),
    ("sausage", "fully cooked / smoked links"): ("sausage", "cooked"),
    ("beef pork lamb veal", "raw steaks chops roasts"): ("roast", "raw"),
    ("ground meat", "raw"): ("ground_meat", "raw"),
    ("poultry", "raw whole"): ("poultry", "raw"),
    ("poultry", "raw pieces"): ("poultry_pieces", "raw"),
    ("fish", "raw salted"): ("fish", "raw"),
    ("smoked fish", "home hot-smoked"): ("fish", "cooked"),
}


def test_every_line_of_the_storage_chart_is_tried():
    """The rows below are all that have days."""
    assert KEPT.keys() == {(r["food"], r["state"]) for r in STORAGE if r["fridge_min_days"]}


WITH_DAYS = [r for r in STORAGE if r["fridge_min_days"]]


@pytest.mark.parametrize("row", WITH_DAYS, ids=lambda r: f"{r['food']}, {r['state']}")
def test_the_shorter_end_of_the_storage_chart(row):
    """Each line keeps the shorter end of its printed days; freezer months the same."""
    kept = keeping(*KEPT[row["food"], row["state"]])
    assert (kept.days, kept.longest) == (float(row["fridge_min_days"]), float(row["fridge_max_days"]))
    assert kept.freezer_months == (float(row["freezer_min_months"]) if row["freezer_min_months"] else None)


HOME_MADE = {
    "pastrami": ("corned beef", "cooked"),
    "corned_beef": ("corned beef", "cooked"),
    "bacon": ("bacon", "as listed (raw cured)"),
    "ham": ("ham", "cooked slices half or spiral"),
    "loin": ("ham", "cooked slices half or spiral"),
    "poultry": ("cooked meat leftovers", "cooked"),
    "turkey": ("cooked meat leftovers", "cooked"),
    "chicken": ("cooked meat leftovers", "cooked"),
    "duck": ("cooked meat leftovers", "cooked"),
    "roast": ("cooked meat leftovers", "cooked"),
    "fish": ("smoked fish", "home hot-smoked"),
    "salmon": ("smoked fish", "home hot-smoked"),
    "trout": ("smoked fish", "home hot-smoked"),
}


@pytest.mark.parametrize("product_class", HOME_MADE)
def test_what_is_made_at_home_keeps_by_its_line_of_the_chart(product_class):
    """Finished at home: the days and the cold of the line that is printed for it; a bird keeps as leftovers do."""
    row = next(r for r in WITH_DAYS if (r["food"], r["state"]) == HOME_MADE[product_class])
    kept = keeping(product_class)
    assert (kept.days, kept.longest) == (float(row["fridge_min_days"]), float(row["fridge_max_days"]))
    assert kept.fridge_c == celsius_from_fahrenheit(38.0 if row["food"] == "smoked fish" else 40.0)


def test_every_product_is_on_a_line_of_the_chart():
    """What a cook can choose is tried above."""
    assert {product(key).storage for key in products()} <= HOME_MADE.keys()


def test_use_by_counts_from_the_heat():
    """Pastrami that came off at 18:00 is good for 3 days to the minute, and never for the longer end."""
    dates = use_by("pastrami", at(10.0))
    assert (dates.at, dates.latest) == (at(10.0 + 72.0), at(10.0 + 96.0))


def test_home_made_is_never_store_wrapped():
    """A home-cured ham takes the 3 days of slices, not the 7 of a store-wrapped whole one nor 14 of a plant's."""
    assert keeping("ham").days == 3.0
    assert keeping("loin").days == 3.0


def test_fish_is_kept_colder():
    """Vacuum or not, smoked fish goes by 38 °F; everything else by 40 °F."""
    assert keeping("salmon").fridge_c == celsius_from_fahrenheit(38.0)
    assert keeping("bacon").fridge_c == celsius_from_fahrenheit(40.0)


def test_no_line_no_days():
    """What the chart does not print has no days."""
    for line, state in (("unicorn", "cooked"), ("pastrami", "dried"), ("sausage", "plant_sealed")):
        with pytest.raises(Missing):
            keeping(line, state)


BY_WEIGHT = [r for r in THAW if r["time_max_h"] and r["weight_max_lb"]]


@pytest.mark.parametrize("row", BY_WEIGHT, ids=lambda r: f"{r['method']} {r['weight_max_lb']} lb")
def test_thawing_times(row):
    """Each row's longest time for its heaviest piece is the longer end that the plan takes."""
    pounds, where = float(row["weight_max_lb"]), "water" if row["method"] == "cold water" else "fridge"
    found = thaw(pounds * KILOGRAMS_PER_POUND, where, bird="turkey" in row["item"])
    assert found.high == pytest.approx(float(row["time_max_h"]), rel=1e-12)


def test_thawing_in_the_fridge_by_the_rule():
    """«At least 24 h per 5 lb»: 5 lb take 24 h at the least; red meat keeps 3 days after, a bird 1."""
    five = 5.0 * KILOGRAMS_PER_POUND
    assert thaw(five, "fridge").low == pytest.approx(24.0, rel=1e-12)
    assert (thaw(five, "fridge").keeps, thaw(five, "fridge", bird=True).keeps, thaw(five, "water").keeps) == (
        3.0,
        1.0,
        0.0,
    )


@pytest.mark.parametrize("mass", [0.0, 0.099, 15.01])
def test_no_piece_no_thaw(mass):
    """A mass that is no piece of meat is refused."""
    with pytest.raises(OutOfRange):
        thaw(mass, "fridge")


def test_the_smallest_and_the_heaviest_piece():
    """100 g and 15 kg are pieces of meat."""
    assert thaw(0.1, "fridge").low < thaw(15.0, "fridge").low


UNTIMED = {"large meat or poultry": "by weight, above", "any": "cooked at once", "TCS food": "a rule for retail, 4 h"}


def test_every_row_of_the_thaw_chart_has_its_place():
    """A row with its weights and hours is tried; the others have no time of their own."""
    assert {r["item"] for r in THAW if r not in BY_WEIGHT} == UNTIMED.keys()


def test_held_is_what_the_tables_mean():
    """The helper of these tests holds one temperature for the time it says."""
    first, second = held(150.0, 67.0)
    assert (second.at - first.at).total_seconds() == 67.0
