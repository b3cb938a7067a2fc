"""Numbers with units as typed: the traps of unit parsers, and the factors against their definitions."""

import subprocess
import sys
import threading

import pytest

from bot import measures
from bot.measures import find, number, of_kind, plain, pounds_and_ounces, sole, to_house
from core.units import celsius_from_fahrenheit


def one(text: str) -> measures.Measure:
    """The only quantity of a text."""
    (measure,) = find(plain(text))
    return measure


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("5 F", "temperature", -15.0),  # a farad to a unit parser
        ("5 C", "temperature", 5.0),  # a coulomb
        ("2,5 kg", "mass", 2.5),  # 25 kg
        ("1 lb 4 oz", "mass", 1.25 * 0.45359237),  # a product
        ("7 lb 8 oz", "mass", 7.5 * 0.45359237),
        ("7lb8oz", "mass", 7.5 * 0.45359237),
        ("7 pounds and 8 ounces", "mass", 7.5 * 0.45359237),
        ("3,4 kilos", "mass", 3.4),
        ("3,400 g", "mass", 3.4),
        ("3,400 kg", "mass", 3.4),
        ("two kilos", "mass", 2.0),
        ("two and a half pounds", "mass", 2.5 * 0.45359237),
        ("seven point five lb", "mass", 7.5 * 0.45359237),
        ("half a kilo", "mass", 0.5),
        ("-3 kg", "mass", -3.0),
        ("minus 3 kg", "mass", -3.0),
        ("1 3/4 in", "length", 0.04445),
        ("1¾ inches", "length", 0.04445),
        ("1½ in thick", "length", 0.0381),
        ('2"', "length", 0.0508),
        ("2″", "length", 0.0508),
        ("45mm", "length", 0.045),
        ("4.5 cm", "length", 0.045),
        ("70°C", "temperature", 70.0),
        ("93 (c)", "temperature", 93.0),
        ("158 degrees f", "temperature", 70.0),
        ("one hundred and six f", "temperature", (106 - 32) / 1.8),
        ("1 gal", "volume", 3.785411784),
        ("4 cups", "volume", 3.785411784 / 4),
        ("1 tsp", "volume", 3.785411784 / 768),
        ("2 tbsp", "volume", 3.785411784 / 128),
        ("1,5 l", "volume", 1.5),
        ("20 min", "duration", 1200.0),
        ("2 hrs", "duration", 7200.0),
        ("3 days", "duration", 259200.0),
        ("6,25 %", "fraction", 0.0625),
        ("six point two five percent", "fraction", 0.0625),
        ("150 ppm", "ppm", 150.0),
    ],
)
def test_a_quantity_is_read_as_typed(text: str, kind: str, value: float) -> None:
    """Number and unit as people write them, in the unit of the house."""
    measure = one(text)
    assert (measure.kind, measure.value) == (kind, pytest.approx(value, rel=1e-12))


@pytest.mark.parametrize(
    "text",
    [
        "its 38 in the fridge",
        "flipped at 8 in the morning",
        "wrong one",
        "1e5 kg",
        "point not flat",
        "12.3.4 kg",
        "in 20",
    ],
)
def test_what_is_no_quantity_is_none(text: str) -> None:
    """«38 in the fridge» is no length; a lone «one» no number; nothing is evaluated."""
    assert find(plain(text)) == ()


def test_a_range_says_so() -> None:
    """«3 to 4 kg» is one quantity with its lower end, never silently the upper."""
    assert one("3-4 kg").low == 3.0
    assert one("3 to 4 kg").low == 3.0
    assert sole(plain("3-4 kg"), "mass") is None


def test_the_whole_of_a_line() -> None:
    """`sole` and `number` take a line only when nothing else is in it."""
    assert sole("45 mm", "length") is not None
    assert sole("45 mm thick", "length") is None
    assert number("1 3/4") == 1.75
    assert number("6.25") == 6.25
    assert number("45 mm") is None


def test_quantities_keep_their_place() -> None:
    """Each quantity knows where it stood, so that it can be taken out of the text."""
    text = plain("7.5 lb flat, 2 in thick, cure 6.25 %")
    assert [text[m.start : m.end] for m in find(text)] == ["7.5 lb", "2 in", "6.25 %"]
    assert [m.unit for m in of_kind(text, "mass")] == ["lb"]


@pytest.mark.parametrize(
    ("value", "unit", "house"),
    [
        (1.0, "lb", 0.45359237),  # International Yard and Pound Agreement, 1959
        (1.0, "oz", 0.028349523125),  # a sixteenth of it
        (1.0, "in", 0.0254),  # the same
        (1.0, "gal", 3.785411784),  # 231 cubic inches, NIST Handbook 44, Appendix C
        (1.0, "cup", 0.2365882365),  # a sixteenth of a gallon
        (1.0, "tsp", 0.00492892159375),  # a 768th
        (212.0, "f", 100.0),
        (32.0, "f", 0.0),
        (-40.0, "f", -40.0),
        (100.0, "c", 100.0),
    ],
)
def test_factors_are_those_of_their_definitions(value: float, unit: str, house: float) -> None:
    """Conversions against the legal definitions, to twelve places."""
    assert to_house(value, unit) == pytest.approx(house, rel=1e-11, abs=1e-11)


def test_pounds_and_ounces_of_a_mass() -> None:
    """3.402 kg is seven pounds and a half."""
    pounds, ounces = pounds_and_ounces(7.5 * 0.45359237)
    assert (pounds, ounces) == (7, pytest.approx(8.0, abs=1e-6))


def test_the_registry_is_not_loaded_on_import() -> None:
    """The bot starts without pint: it is imported on the first conversion."""
    code = "import sys, bot.measures, bot.intents.read; print('pint' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_many_threads_may_be_the_first() -> None:
    """Eight threads convert at once on a fresh registry; none fails and all agree."""
    measures._built.cache_clear()
    found: list[float] = []

    def convert() -> None:
        found.extend(to_house(float(n), "f") for n in range(50))

    threads = [threading.Thread(target=convert) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(found) == 400
    assert sorted(set(found)) == sorted({to_house(float(n), "f") for n in range(50)})


@pytest.mark.parametrize("fahrenheit", [38.0, 40.0, 44.6, 80.0, 130.0, 140.0, 145.0, 160.0, 165.0])
def test_a_limit_in_fahrenheit_is_read_at_that_very_figure(fahrenheit: float) -> None:
    """A core of 80 °F is at the 80 °F of its rule: to twelve places it lay a hair above it."""
    assert to_house(fahrenheit, "f") == celsius_from_fahrenheit(fahrenheit)
