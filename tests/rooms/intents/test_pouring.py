"""A cup of what is dry is no water, whose weight would raise the dose; a spoon of what is named is no curing salt."""

import pytest

from bot.intents.pouring import is_other, poured_of, spoonful
from bot.intents.sums.told import told


@pytest.mark.parametrize(
    ("text", "litres"),
    [
        ("3 lb brisket with 1 cup sugar", 0),
        ("5 lb belly, half a cup of brown sugar, 1 cup kosher salt", 0),
        ("1 cup of honey and 2 cups water", 1),
        ("water 3 qts salt 180 g", 1),
        ("2 cups of salt water", 1),
        ("1 gallon of brine, 1 cup pickling salt", 1),
    ],
)
def test_what_is_poured(text: str, litres: int) -> None:
    """Water and brine; never a cup of salt, sugar or honey."""
    assert len(poured_of(text)) == litres


def test_no_water_in_a_dose() -> None:
    """The sugar of a dry mix is none of its water."""
    assert told("how much pink salt for 3 lb brisket with 1 cup sugar").water is None


def test_the_spoon_that_is_meant() -> None:
    """Of water and salt by the cup the salt is asked about; sugar and plain salt by the spoon are no dose."""
    salt = spoonful("2 cups water 1 cup salt")
    assert salt is not None
    assert salt.typed == 1
    spoon = spoonful("2 tbsp brown sugar")
    assert spoon is not None
    assert is_other("2 tbsp brown sugar", spoon)
    cure = spoonful("2 tsp of pink salt")
    assert cure is not None
    assert not is_other("2 tsp of pink salt", cure)
