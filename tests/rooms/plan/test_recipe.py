"""Products as files: what a cook writes is what is planned, and a slip is named with its place."""

import copy
import tomllib
from importlib import resources

import pytest

from core.batch.material import in_the_cure
from core.errors import Gone, Missing, OtherWay, OutOfRange, Unreadable
from core.plan import recipe
from core.plan.recipe import product, product_of_cut, products
from core.plan.setup import by_the_clock

PASTRAMI = tomllib.loads(resources.files("core.plan").joinpath("products", "pastrami.toml").read_text("utf-8"))


def test_a_product_is_found_by_its_name_and_by_its_cut() -> None:
    """Both brisket cuts make pastrami where nothing else was said."""
    assert product_of_cut("brisket_flat") is product_of_cut("brisket_point") is product("pastrami")


@pytest.mark.parametrize("look_up", [lambda: product("moon"), lambda: product_of_cut("moon")])
def test_what_there_is_not_is_gone(look_up: object) -> None:
    """A product or a cut that nobody has written is gone, by name."""
    with pytest.raises(Gone, match="moon"):
        look_up()  # type: ignore[operator]


def test_a_purpose_that_there_is_not_is_gone() -> None:
    """So is a way to eat it that the product does not have."""
    with pytest.raises(Gone, match="raw"):
        product("pastrami").setup({"mass": 1.0, "purpose": "raw"})


@pytest.mark.parametrize("target", [62.77, 100.1, -5.0])
def test_no_target_under_the_floor_or_over_boiling(target: float) -> None:
    """The floor is 145 °F and 3 minutes (USDA FSIS chart): nothing under it is planned, nothing clamped to it."""
    with pytest.raises(OutOfRange) as refused:
        product("pastrami").setup({"mass": 1.0, "target_c": target})
    assert (refused.value.low, refused.value.high) == (pytest.approx((145 - 32) / 1.8), 100.0)


def test_what_the_past_says_is_not_the_cooks_word() -> None:
    """A habit sets a field and leaves it an assumption."""
    setup = product("pastrami").setup({"mass": 1.0, "cooker": "kettle"}, frozenset({"cooker"}))
    assert (setup.cooker, setup.said) == ("kettle", {"mass"})


@pytest.mark.parametrize(
    ("where", "value"),
    [
        (("name",), None),
        (("cuts",), 7),
        (("safety_floor_c",), "warm"),
        (("purposes", "cold", "target_c"), "hot"),
        (("purposes", "cold", "chilled"), None),
        (("hours", "dry"), None),
        (("hours", "nap"), 3.0),
        (("defaults",), None),
        (("salt_free_rub",), True),
        (("defaults", "nitrit_target"), 150.0),
        (("defaults", "purpose"), "raw"),
        (("defaults", "method"), "smoke"),
        (("purposes", "cold", "target_c"), 50.0),
        (("purposes", "brunch"), {"target_c": 70.0, "chilled": True}),
        (("by_cut", "beef_round", "pitt_c"), 100.0),
        (("by_cut", "pork_belly"), {"method": "dry"}),
        (("least_days", "beef_round", "soak"), 3.0),
        (("only_methods",), {"beef_round": ["brine"]}),
    ],
)
def test_a_slip_in_a_file_is_named(where: tuple[str, ...], value: object) -> None:
    """A missing entry, a wrong kind of value, an entry too many: the error names the file."""
    table = copy.deepcopy(PASTRAMI)
    place = table
    for key in where[:-1]:
        place = place[key]
    if value is None:
        del place[where[-1]]
    else:
        place[where[-1]] = value
    with pytest.raises(Unreadable) as refused:
        recipe._product("pastrami.toml", table)
    assert refused.value.file == "pastrami.toml"
    entries = (*where, *(value if isinstance(value, dict) else ()))
    assert any(entry in refused.value.why for entry in entries) or str(value) in refused.value.why


def test_a_leg_with_its_bone_is_injected_and_no_other_way() -> None:
    """A soak reaches the bone too late: refused, with the way that will do."""
    made = product("ham")
    assert made.setup({"mass": 8.0, "cut": "ham_bone_in"}).method == "inject"
    with pytest.raises(OtherWay) as refused:
        made.setup({"mass": 8.0, "cut": "ham_bone_in", "method": "brine"})
    assert refused.value.ways == ("inject",)


def test_what_a_cut_has_of_its_own_stands_before_the_product() -> None:
    """Round is injected and sliced thin, where brisket is brined and tender; what the cook says stands before both."""
    made = product("pastrami")
    own = made.setup({"mass": 2.0, "cut": "beef_round"})
    assert (own.method, own.purpose, made.least(own)) == ("inject", "thin", 6.0)
    assert made.setup({"mass": 2.0, "cut": "beef_round", "method": "dry"}).method == "dry"
    assert made.setup({"mass": 2.0, "cut": "brisket_flat"}).method == "brine"


def test_corned_beef_on_a_smoker_is_not_smoked_at_a_simmer() -> None:
    """The 96 °C of its pot are those of water: on another cooker the pit is the usual one, unless the cook says."""
    made = product("corned_beef")
    pot = made.setup({"mass": 2.0})
    assert (pot.cooker, pot.pit_c) == ("pot", 96.0)
    assert made.settle(pot.change({"cooker": "kettle"})).pit_c == 121.0
    assert made.settle(pot.change({"cooker": "kettle", "pit_c": 110.0})).pit_c == 110.0
    assert product("bacon").setup({"mass": 2.0, "cooker": "gas"}).pit_c == 93.2


def test_who_says_how_strong_a_brine_is_salts_in_one() -> None:
    """Salmon is planned dry; a strength makes it a brine, a way that is named stays, an equilibrium has no hours."""
    side = product("salmon").setup({"mass": 1.2, "brine_strength": 0.15, "brine_hours": 3.0})
    assert (side.method, by_the_clock(side)) == ("brine", True)
    assert side.change({"method": "dry"}).change({"brine_hours": 2.0}).method == "brine"
    assert side.change({"brine_strength": 0.2, "method": "dry"}).method == "dry"
    assert side.change({"brine_strength": None}).brine_hours is None


def test_the_hours_of_a_brine_are_said_or_the_leaflet_s_or_follow_from_a_salt() -> None:
    """WSU and PNW 238: an hour for small fish, two for a thick side; a salt that is asked for has its own hours."""
    made, strong = product("salmon"), {"mass": 1.2, "brine_strength": 0.15}
    assert made.brining(made.setup(strong)) == 2.0
    assert product("trout").brining(product("trout").setup({"mass": 0.4, "brine_strength": 0.15})) == 1.0
    three = made.setup({**strong, "brine_hours": 3.0})
    assert made.brining(three) == 3.0
    assert made.brining(three.change({"salt_fraction": 0.02})) is None
    assert made.brining(three.change({"salt_fraction": 0.02}).change({"brine_hours": 4.0})) == 4.0


def test_hours_in_a_brine_want_its_strength() -> None:
    """How much salt goes in depends on both: an hour alone plans nothing."""
    with pytest.raises(Missing, match="brine_strength"):
        product("salmon").setup({"mass": 1.2, "brine_hours": 3.0})
    with pytest.raises(OutOfRange, match="hours in the brine"):
        product("salmon").setup({"mass": 1.2, "brine_strength": 0.15, "brine_hours": 97.0})


def test_hours_in_plain_salt_are_the_cook_s_or_the_product_s() -> None:
    """As said; and none that salts nothing, nor any that keeps raw fish for days."""
    said = {"mass": 1.2, "method": "dry"}
    made = product("salmon")
    asked, usual = (in_the_cure(made.setup({**said, **more}), None, None) for more in ({"salting_hours": 4.0}, {}))
    assert asked is not None
    assert usual is not None
    assert asked.p50 * 24.0 == pytest.approx(4.0)
    assert usual.p50 * 24.0 == pytest.approx(made.hours.salting)
    for hours in (0.2, 60.0):
        with pytest.raises(OutOfRange, match="hours in the salt"):
            made.setup({**said, "salting_hours": hours})


def test_a_product_is_made_of_its_own_cuts() -> None:
    """No bacon from brisket."""
    with pytest.raises(Gone, match="bacon from brisket flat"):
        product("bacon").setup({"mass": 2.0, "cut": "brisket_flat"})


def test_every_product_is_named_for_its_file() -> None:
    """A product is found under the name of its file."""
    folder = resources.files("core.plan").joinpath("products")
    assert {f.name.removesuffix(".toml") for f in folder.iterdir() if f.name.endswith(".toml")} == set(products())
