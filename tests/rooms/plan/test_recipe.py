"""Products as files: what a cook writes is what is planned, and a slip is named with its place."""

import copy
import tomllib
from importlib import resources

import pytest

from core.errors import Gone, OutOfRange, Unreadable
from core.plan import recipe
from core.plan.recipe import product, product_of_cut, products

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


@pytest.mark.parametrize("target", [62.79, 100.1, -5.0])
def test_no_target_under_the_floor_or_over_boiling(target: float) -> None:
    """The floor is 145 °F and 3 minutes (USDA FSIS chart): nothing under it is planned, nothing clamped to it."""
    with pytest.raises(OutOfRange) as refused:
        product("pastrami").setup({"mass": 1.0, "target_c": target})
    assert (refused.value.low, refused.value.high) == (62.8, 100.0)


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


def test_every_product_is_named_for_its_file() -> None:
    """A product is found under the name of its file."""
    folder = resources.files("core.plan").joinpath("products")
    assert {f.name.removesuffix(".toml") for f in folder.iterdir() if f.name.endswith(".toml")} == set(products())
