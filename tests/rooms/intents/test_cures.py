"""Questions about the cure: a mix that is told, what a day or a needle would buy, a soak, the law, poison."""

import pytest

from bot.intents.cures import mixture, wanted_dose
from bot.intents.intents import Ask, Change, Happened, Question
from bot.intents.normal import normal
from bot.intents.read import read
from core.units import KILOGRAMS_PER_POUND, LITRES_PER_US_GALLON
from tests.talk_lines import context

WAITING = context("waiting")
LB, GALLON = KILOGRAMS_PER_POUND, LITRES_PER_US_GALLON


@pytest.mark.parametrize(
    ("text", "cure", "water", "meat", "strength"),
    [
        ("5 tsp in 1 gal water for 5 lb", (0.028, 0.0355), GALLON, 5 * LB, None),
        ("i put 5 teaspoons of pink salt in a gallon of water for 5 lb of meat", (0.028, 0.0355), GALLON, 5 * LB, None),
        ("12 g cure in 1.6 l water for 3.2 kg", (0.012, 0.012), 1.6, 3.2, None),
        ("3 g cure for 1 kg", (0.003, 0.003), None, 1.0, None),
        ("2 tsp cure for 2 kg dry", (0.0112, 0.0142), None, 2.0, None),
        ("8 g of 5.88 % cure in 1 l water and 60 g salt for 2 kg pork", (0.008, 0.008), 1.0, 2.0, 0.0588),
        ("1 tbsp pink salt in 2 quarts water for 1 kg", (0.0168, 0.0213), GALLON / 2, 1.0, None),
    ],
)
def test_a_mix_is_read(
    text: str, cure: tuple[float, float], water: float | None, meat: float, strength: float | None
) -> None:
    """Cure as weighed, or as a spoon may weigh it (5.6 to 7.1 g a level teaspoon); a litre of water is a kilo."""
    found = mixture(normal(text))
    assert found is not None
    assert found.cure == pytest.approx(cure)
    assert (found.water, found.meat, found.strength) == (
        None if water is None else pytest.approx(water),
        pytest.approx(meat),
        strength,
    )


@pytest.mark.parametrize(
    ("text", "method", "pump", "covered"),
    [
        ("20 g of 6.25 % cure in 1 l water, inject 10 %, for 3 kg", "inject", 0.10, False),
        ("20 g of 6.25 % cure in 1 l water, pumped 12 %, for 3 kg", "inject", 0.12, False),
        ("20 g cure in 1 l water, injected, for 3 kg", "inject", 1.0, False),  # how much is not said: all of it
        ("20 g of 6.25 % cure in 1 l water, inject 10 % and cover with the rest, for 3 kg", "inject", 0.10, True),
        ("20 g of 6.25 % cure in 1 l water for 3 kg", "brine", None, False),
        ("5 g of 6.25 % cure for 2 kg ground pork", "comminuted", None, False),
        ("5 g of 6.25 % cure for 2 kg of sausage", "comminuted", None, False),
        ("5 g of 6.25 % cure for 2 kg pork", "dry", None, False),
    ],
)
def test_the_way_of_a_mix_is_read(text: str, method: str, pump: float | None, covered: bool) -> None:
    """A needle, a cover brine and mince each have their own formula; the pump's percentage is no strength."""
    found = mixture(normal(text))
    assert found is not None
    assert (found.method, found.pump, found.covered) == (method, pump, covered)
    assert found.strength == (0.0625 if "6.25" in text else None)


@pytest.mark.parametrize(
    ("text", "meat", "method", "product", "strength"),
    [
        ("how much cure for 2 kg minced", 2.0, "comminuted", "", None),
        ("how much pink salt per kg of sausage, 6.25 %", 1.0, "comminuted", "sausage", 0.0625),
        ("how many grams of curing salt for 5 lb of pork belly", 5 * LB, "", "bacon", None),
        ("how much cure for 3 kg in 2 l of water", 3.0, "brine", "", None),
        ("how much 0.5 % cure for 2 kg dry", 2.0, "dry", "", 0.005),
    ],
)
def test_a_dose_is_asked_for(text: str, meat: float, method: str, product: str, strength: float | None) -> None:
    """So much curing salt for so much meat, without a batch; no word for the way leaves it to the product."""
    found = wanted_dose(normal(text))
    assert found is not None
    assert (found.meat, found.method, found.product, found.strength) == (pytest.approx(meat), method, product, strength)
    assert read(text, context("none")) == [Question(text)]


@pytest.mark.parametrize("text", ["how much cure", "how much salt for 2 kg", "how much cure for 900 kg"])
def test_what_asks_for_no_dose_of_so_much_meat(text: str) -> None:
    """No weight, no curing salt, or more meat than a kitchen holds."""
    assert wanted_dose(normal(text)) is None


@pytest.mark.parametrize("text", ["cover brine", "with a cover brine", "cover it with the rest", "lay it in the rest"])
def test_a_cover_brine_is_a_change_of_the_batch(text: str) -> None:
    """It says that it is injected too."""
    assert read(text, WAITING) == [Change({"cover_share": 0.5, "method": "inject"})]
    assert read("no cover brine", WAITING) == [Change({"cover_share": 0.0})]


@pytest.mark.parametrize(
    "text",
    [
        "3.2 kg brisket flat for saturday 13:00",
        "1 tsp pink",
        "5 tsp cure in water for 5 lb",  # how much water is not said: a dry mix it is not
        "2 tsp pepper in 1 l water for 2 kg",
        "80 g salt for 3 kg",
        "half a cup of salt",
    ],
)
def test_what_is_no_mix_is_none(text: str) -> None:
    """A weight, a spoon of nothing, salt alone, water without its measure: nothing is judged by guess."""
    assert mixture(normal(text)) is None


@pytest.mark.parametrize(
    ("text", "topic", "about"),
    [
        ("what would one more day do", "what_if", "day"),
        ("What if I leave it another day?", "what_if", "day"),
        ("what if i inject it", "what_if", "inject"),
        ("would piercing help", "what_if", "pierce"),
        ("what if we split it in two", "what_if", "split"),
        ("should i butterfly it", "what_if", "split"),
        ("what are my options", "what_if", ""),
        ("how long should i soak it", "soak", ""),
        ("soak to 1.5 %", "soak", ""),
        ("what does the law say", "law", ""),
        ("whats the nitrite limit", "law", ""),
        ("5 tsp of pink salt in 1 gal water for 5 lb", "judge", ""),
        ("my brother ate the curing salt", "poison", ""),
        ("blue lips", "poison", ""),
    ],
)
def test_a_question_about_the_cure_is_asked(text: str, topic: str, about: str) -> None:
    """Each is a question with its subject, and nothing is changed by it."""
    (intent,) = read(text, WAITING)
    assert isinstance(intent, Ask), intent
    assert (intent.topic, intent.about) == (topic, about)


@pytest.mark.parametrize(
    ("text", "what", "salt"),
    [
        ("i forgot the cure", "forgot_cure", None),
        ("i used himalayan salt", "wrong_salt", "no_cure"),
        ("used pink sea salt", "wrong_salt", "no_cure"),
        ("i used cure #2", "wrong_salt", "nitrate"),
        ("i used saltpetre", "wrong_salt", "nitrate"),
        ("i used the cure like table salt", "cure_as_salt", None),
        ("i put cure in the rub", "cure_in_rub", None),
        ("i doubled the cure", "dosed_twice", None),
    ],
)
def test_a_wrong_salt_is_told_apart(text: str, what: str, salt: str | None) -> None:
    """Which salt, and where it went, decides what to do."""
    (intent,) = read(text, WAITING)
    assert isinstance(intent, Happened), intent
    assert (intent.what, intent.facts.get("salt")) == (what, salt)


def test_nitrate_on_the_packet_and_pierced_meat_are_kept() -> None:
    """«4 % nitrate» is the nitrate, not the strength; pierced meat is a fact of the batch."""
    (intent,) = read("cure is 6.25 % nitrite and 4 % nitrate", WAITING)
    assert intent == Change({"cure_nitrite_fraction": 0.0625, "cure_nitrate_fraction": 0.04})
    assert read("i pierced it", WAITING) == [Change({"pierced": True})]


def test_drying_too_salty_is_a_question_of_soaking() -> None:
    """The fry test after the rinse is no debrief: it asks for the hours in fresh water."""
    (intent,) = read("too salty", context("drying"))
    assert isinstance(intent, Ask)
    assert intent.topic == "soak"


def test_a_product_that_a_cook_added_is_understood_by_its_name(monkeypatch: pytest.MonkeyPatch) -> None:
    """A file is enough: its name, as it is spoken, begins a batch of it."""
    from bot.intents import meats
    from core.plan.recipe import products

    known = products() | {"cured_navel": products()["pastrami"]}
    monkeypatch.setattr(meats, "products", lambda: known)
    assert meats.meat("2 kg cured navel for sunday") == meats.Meat("cured_navel", "")
    assert meats.meat("2 kg brisket flat as cured navel") == meats.Meat("cured_navel", "brisket_flat")


def test_the_name_of_a_product_is_no_slip_of_another_word(monkeypatch: pytest.MonkeyPatch) -> None:
    """«spiced» stays «spiced» where a cook's file is called so, and is not taken for «sliced»."""
    from bot.intents.rewriting import slips
    from core.plan.recipe import products

    known = products() | {"spiced_beef": products()["pastrami"]}
    monkeypatch.setattr(slips, "products", lambda: known)
    slips.lexicon.cache_clear()
    try:
        assert slips.mended("3 kg spiced beef") == "3 kg spiced beef"
    finally:
        slips.lexicon.cache_clear()


@pytest.mark.parametrize("text", ["i put 8 g cure in and so did i, 3.2 kg dry", "8 g of cure twice in 3.2 kg"])
def test_a_dose_that_went_in_twice_counts_twice(text: str) -> None:
    """Two who dosed are two doses: the mixture is judged by both."""
    found = mixture(text)
    assert found is not None
    assert found.cure == pytest.approx((0.016, 0.016))


def test_a_bag_that_is_turned_twice_a_day_holds_one_dose() -> None:
    """Only what is said of the dose doubles it."""
    found = mixture("8 g cure in 3.2 kg dry, flipped twice a day")
    assert found is not None
    assert found.cure == pytest.approx((0.008, 0.008))
