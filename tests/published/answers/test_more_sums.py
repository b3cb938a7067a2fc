"""Sums that were read wrong once, each with its figure. Derived, unless a source stands beside it."""

from pathlib import Path

import pytest

from tests.published.answers.asked import asked


def test_half_an_hour_is_no_hour(tmp_path: Path) -> None:
    """135 °F asks 36 min of beef (FSIS 2021), so half an hour is short, three quarters of an hour are enough."""
    half, more, hour = asked(
        tmp_path,
        ["beef at 135 f half an hour safe", "beef 135 f for three quarters of an hour ok", "beef 135 f an hour ok"],
    )
    assert (half["enough"], more["enough"], hour["enough"]) == (False, True, True)


def test_curing_salt_of_another_strength(tmp_path: Path) -> None:
    """10 g of 6.25 % in 10.63 g of 5.88 %, 30 g of 0.5 % in 2.4 g of 6.25 %, 20 g of 0.6 % in 1.92 g."""
    lines = [
        "recipe is for 6.25 mine is 5.88 it says 10 g",
        "recipe says 30 g of 0.5% nitrite salt i only have the 6.25 stuff",
        "20 g of 0.6 percent salt equals how much cure 1",
        "german recipe 40 g curing salt 0.5% for 2kg, how much us cure",
        "uk recipe 8 g of 5.88 cure, ive 6.25, how much",
    ]
    found = asked(tmp_path, lines)
    assert [one["sum"] for one in found] == ["swap"] * 5
    assert [round(one["cure_kg"] * 1000.0, 2) for one in found] == [10.63, 2.4, 1.92, 3.2, 7.53]
    assert round(found[3]["nitrite_high_mg_kg"]) == 100


def test_curing_salt_in_water(tmp_path: Path) -> None:
    """6 g of 10 g in 90 g water are in 60 g of it; 8.5 g of a tenth are in 85 g."""
    found = asked(
        tmp_path,
        ["mixed 10g cure w 90g water need 6 g cure how much of it", "made a 10% cure solution need 8.5 g how much"],
    )
    assert [round(one["stock_kg"] * 1000.0, 1) for one in found] == [60.0, 85.0]


def test_a_share_behind_its_name_is_no_strength(tmp_path: Path) -> None:
    """0.25 % of curing salt is 156 mg/kg at 6.25 %; the 0.5 % before it is the sugar."""
    (mix,) = asked(tmp_path, ["salt 2% sugar 0.5% cure 0.25% for 2.2kg pls"])
    assert round(mix["nitrite_high_mg_kg"]) == 156
    assert round(mix["sugar_kg"] * 1000.0, 1) == 11.0


def test_what_was_put_in_is_judged_without_being_asked(tmp_path: Path) -> None:
    """«used 8 g», and a spoon taken for another: the level is said, and the strength asked."""
    lines = [
        "used 8g for 3 kg meat and a litre of water",
        "oops tablespoon not teaspoon on 5 lb",
        "whats my ingoing nitrite if 14 g went in 4 kilo pork and 2 l water",
    ]
    assert [(one["sum"], one["asked"]) for one in asked(tmp_path, lines)] == [("ppm", "strength")] * 3


def test_a_core_that_fell_and_stayed_hot(tmp_path: Path) -> None:
    """Never under 140 °F it goes on; an hour below at most is brought through; longer than two it is thrown away."""
    hot, short, back, long_ = asked(
        tmp_path,
        [
            "fire went out overnight core 165 at 2am and 144 at 6",
            "fell asleep core was 152 at 5 now 6 its 133 pit dead",
            "fire was out core 165 at 2am and back at 144 at 6",
            "fire out since 3am core 150 then, 6am now 121",
        ],
    )
    assert hot["case"] == "still_hot"
    assert short["case"] == "bring_through"
    assert back["case"] != "still_hot"
    assert long_["verdict"] == "throw_away"


def test_now_and_its_hour(tmp_path: Path) -> None:
    """140 °F at 6 and 90 at 8 are more than the hour and a half of plain meat (FSIS 1999)."""
    (found,) = asked(tmp_path, ["took it off at 5, 140 f at 6, now 8 its 90"])
    assert found["verdict"] == "cannot_say"


@pytest.mark.parametrize(
    ("line", "share"),
    [
        ("injected 380 g into 4 kg what percent is that", 0.095),
        ("ham was 5.0 kg now 5.4 after pumping is that 10%", 0.08),
    ],
)
def test_what_a_piece_took_up(line: str, share: float, tmp_path: Path) -> None:
    """By two weights, or by what was pumped and the piece."""
    assert asked(tmp_path, [line])[0]["pump"] == pytest.approx(share)


def test_a_recipe_in_ones_own_size(tmp_path: Path) -> None:
    """3 of 7.2 kg, 2.6 of 4 kg, 3.75 of 7.5 lb."""
    found = asked(
        tmp_path,
        [
            "halving the recipe its 18g cure for 7.2 kg i got 3",
            "its for 4 kg and 10 g cure, ive 2.6 kg how much",
            "half the recipe: 8.5 g cure for 7.5 lb, now 3.75 lb",
        ],
    )
    assert [round(one["factor"], 3) for one in found] == [0.417, 0.65, 0.5]


def test_whole_birds(tmp_path: Path) -> None:
    """A bird with its bones is bought by 0.45 to 0.68 kg a head (common practice: 1 to 1.5 lb)."""
    size, feeds = asked(tmp_path, ["turkey for 9 adults what size", "12 lb turkey feeds how many"])
    assert size["raw_kg"] == pytest.approx(9 * 0.57)
    assert int(feeds["portions"]) == 8


def test_days_of_the_calendar(tmp_path: Path) -> None:
    """On 1 March it is 16 days to the 17th; 0.25 % of 2268 g are 5.67 g; 8 % thinned to 5 % takes 1.9 l for 3 l."""
    days, part, thin = asked(
        tmp_path, ["how many days till march 17", "0.25 percent of 2268 g", "i have 3 l at 8 percent want 5, water?"]
    )
    assert days["days"] == 16
    assert part["value"] == pytest.approx(0.00567)
    assert 1.8 < thin["water_kg"] < 2.0


def test_what_came_of_a_piece_told_backwards(tmp_path: Path) -> None:
    """1.8 of 3.3 kg are 55 %; 70 °F three hours after 135 are too slow for plain meat (FSIS 1999, 1.5 h to 80 °F)."""
    left, slow, thin = asked(
        tmp_path,
        [
            "1.8 kg cooked out of 3.3 is that ok",
            "took 3 hours to get to 70 f from 135",
            "brine too strong 10% 2 gal want 6",
        ],
    )
    assert left["left"] == pytest.approx(1.8 / 3.3)
    assert slow["verdict"] == "cannot_say"
    assert 5.2 < thin["water_kg"] < 5.6


def test_the_sum_that_is_meant(tmp_path: Path) -> None:
    """No batch begun, and no other sum."""
    lines = {
        "8 lb 2 oz brisket dry cure pink salt amt": "dose",
        "ppm if 20 g in 5 kg meat n 3 l water": "ppm",
        "honey for 4 lb belly": "sugar",
        "salmon 2 lb at 200f till done": "cook",
        "core 110 f at 8 130 at 9 pit 250 eta 165": "eta",
        "1 cup fine sea salt g": "spoons",
        "30 g per kg is what percent": "convert",
        "pellets for a 12 hr brisket": "fuel",
        "$52 for 7 lb butt per serving": "price",
        "how long can 5 lb flat hold in cooler": "hold_for",
        "12 lb brisket frozen need it wed morning": "thaw",
        "3 tbsp light flake in table salt": "spoons",
        "1 cup light flake in a gallon what percent": "equilibrium",
        "12 day cure for thanksgiving the 26th when start": "start_by",
        "when do i light for 6 pm": "light_by",
        "is 10 lb ice enough to chill 5 lb brisket": "ice",
        "how much number one for a three kilo loin": "dose",
        "cure #1 per pound": "dose",
        "12g 5lb too strong?": "ppm",
        "half dose only 4g on 3.4 kg": "ppm",
        "flat 2 in days": "days",
        "brisket 3kg days in cure": "days",
        "is 0.3 percent pink salt over the limit": "ppm",
        "will 9 lb packer feed 14": "shopping",
        "day 5 of 8, how many to go": "out_on",
        "can i hold it in the oven till tomorrow at 150": "hold_for",
    }
    found = asked(tmp_path, list(lines))
    assert {line: one.get("sum") for line, one in zip(lines, found, strict=True)} == lines


def test_water_that_came_to_a_mix_counts(tmp_path: Path) -> None:
    """15 g of 6.25 % in 4 kg and 2 l are 156 mg/kg; with a litre more 134, and what would be right for all is said."""
    lines = ["4kg meat 2L water 15g of 6.25% cure then i added 1 L", "15 g of 6.25% cure in 4 kg with 2 l water ok"]
    more, less = asked(tmp_path, lines)
    assert [round(one["nitrite_high_mg_kg"]) for one in (more, less)] == [134, 156]
    (open_,) = asked(tmp_path / "open", ["4kg meat 2L water 15g cure then i added 1 L"])
    assert "With 6.25 % nitrite that is 134 mg/kg" in open_["said"]
    assert "Right for all of it would be" in open_["said"]


def test_days_are_held_against_those_that_are_told(tmp_path: Path) -> None:
    """Less than pink wants is too few, less than the trade's rule no even salt, more than 21 days too long."""
    told = {
        "2.5 inch flat is 6 days enough": "No: 6 days are too few",
        "1.75 inch flat is 4 days enough": "Enough for a pink middle",
        "2 inch flat 14 days too long?": "Long enough, and not too long",
        "would 25 days be ok for a 2 inch flat": "Too long: 25 days",
    }
    for found, start in zip(asked(tmp_path, [*told]), told.values(), strict=True):
        assert found["said"].startswith(start), found["said"]


def test_a_cure_that_begins_on_a_day_comes_out_on_days(tmp_path: Path) -> None:
    """«in today, when out»: the day by our least and by the trade's rule, said first."""
    (found,) = asked(tmp_path, ["belly 1.5 inch in today when out"])
    first = found["said"].splitlines()[0]
    assert first.startswith("Begun ")
    assert first.endswith("to be sure.")


def test_a_rind_is_no_bacon(tmp_path: Path) -> None:
    """Skin is a tenth of a belly (house figure of the dose), in what is left of it too."""
    on, off = asked(tmp_path, ["5 kg belly skin on how much bacon", "5 kg belly how much bacon"])
    assert on["left_kg"] == pytest.approx(0.9 * off["left_kg"])


def test_a_dose_in_ounces(tmp_path: Path) -> None:
    """5.4 g are 0.19 oz (28.35 g, exact by the pound of 1959); a weight of meat in ounces asks for none."""
    wants, not_ = asked(tmp_path, ["scale only does oz how much cure for 5 lb", "4 lb 6 oz flat how much cure 1"])
    assert "0.19 oz" in wants["said"]
    assert "In ounces" not in not_["said"]


def test_shares_of_plain_salt_and_sugar_begin_no_batch(tmp_path: Path) -> None:
    """2.5 % and 1 % of 2.8 kg."""
    (found,) = asked(tmp_path, ["salt 2.5% and sugar 1% for 2.8 kg loin"])
    assert [round(found[f"{name}_kg"] * 1000.0) for name in ("salt", "sugar")] == [70, 28]


def test_what_was_pulled_is_kept_for_the_table(tmp_path: Path) -> None:
    """203 °F at two and 145 °F at half past three: it is at 140 °F within minutes, and no fire went out."""
    (found,) = asked(tmp_path, ["pulled at 203 at 2pm its 3.30 and 145 can it wait til 5"])
    assert found["sum"] == "cooling"
    assert found["wanted_h"] == pytest.approx(1.5)
    assert found["stays_h"] < 0.3


def test_salt_beside_the_water_that_is_asked_for(tmp_path: Path) -> None:
    """2 % of 6.35 kg and of the water with it, from a bag with little to a tub with much."""
    (found,) = asked(tmp_path, ["turkey 14 lb brine how much water n salt"])
    assert "165 g to 191 g in the bag, 203 g to 254 g in the tub" in found["said"]


def test_plain_salt_is_asked_for_beside_a_weighed_dose(tmp_path: Path) -> None:
    """2.25 % of 2 kg, less what 5 g of curing salt bring; no judgement of the dose."""
    (found,) = asked(tmp_path, ["want 2.25% salt on 4.4 lb with 5 g cure how much salt"])
    assert found["sum"] == "salt_for"
    assert "40.2 g of plain salt" in found["said"]


def test_a_strength_a_weight_and_water_are_a_dose(tmp_path: Path) -> None:
    """150 mg/kg of meat, water and salt with 6.25 %; no batch begins."""
    (found,) = asked(tmp_path, ["6.25 cure 2.5 kg in 1.2 l"])
    assert found["sum"] == "dose"
    assert found["nitrite_ingoing_mg_kg"] == pytest.approx(150.0)


def test_so_much_for_each_is_raw(tmp_path: Path) -> None:
    """Nobody eats 2 lb of cooked ribs; half a pound is a cooked portion still."""
    raw, cooked = asked(
        tmp_path, ["2 lb of ribs per person for 9 how many lb", "half a pound each for 10 people brisket?"]
    )
    assert raw["raw_kg"] == pytest.approx(9 * 2 * 0.45359237)
    assert cooked["raw_kg"] > 10 * 0.5 * 0.45359237


def test_pulled_pork_leaves_what_tender_meat_leaves(tmp_path: Path) -> None:
    """Cooked until it falls apart it loses as much as a soft brisket, and more than a roast of pork."""
    pulled, roast = asked(tmp_path, ["how many kg raw for 2 kg pulled pork", "how many kg raw for 2 kg pork loin"])
    assert [one["sum"] for one in (pulled, roast)] == ["shopping"] * 2
    assert pulled["raw_kg"] > 1.15 * roast["raw_kg"]


def test_three_shares_of_a_cut_are_grams(tmp_path: Path) -> None:
    """3, 1 and 0.25 % of 2 kg; no batch begins."""
    (found,) = asked(tmp_path, ["pork belly 3% salt 1% sugar 0.25% cure 2 kg"])
    assert [round(found[f"{name}_kg"] * 1000.0) for name in ("salt", "sugar", "cure")] == [60, 20, 5]


def test_cure_that_is_asked_for_each_is_of_a_weight_that_is_divided(tmp_path: Path) -> None:
    """«10 lb belly 2 pieces how much cure each»: 10 lb in all, and no 20; «5 lb each» weighs each."""
    lines = [
        "10 lb belly 2 pieces how much cure each",
        "8 lb brisket cut in half how much cure per piece",
        "2 bellies 5 lb each how much cure",
        "how much cure for 2 bellies 5 lb each",
    ]
    said = [one["said"] for one in asked(tmp_path, lines)]
    assert all("With 6.25 % nitrite it takes 8.7 g" in one for one in said), said
    assert all("4.3 g / 4.6 g for each of 2 pieces" in one for one in said[:2]), said  # rounded down, as every dose is
    assert not any("for each of" in one for one in said[2:])


def test_a_share_of_a_weight_in_grams(tmp_path: Path) -> None:
    """0.25 % of 7 lb (0.45359237 kg a pound) is 7.94 g."""
    (found,) = asked(tmp_path, ["what is 0.25% of 7 lb in grams"])
    assert found["said"].startswith("0.25 % of 7 lb is 7.94 g")


def test_what_is_wanted_cooked_is_bought_raw(tmp_path: Path) -> None:
    """A belly keeps 85 to 95 %, so 15 lb of bacon want more than that raw."""
    (found,) = asked(tmp_path, ["want 15 lb of finished bacon how much belly"])
    assert found["raw_kg"] == pytest.approx(15 * 0.45359237 / 0.9)


def test_dry_is_heard_behind_the_meat(tmp_path: Path) -> None:
    """«3 inch pork loin dry» lies in no brine, which would be slower."""
    dry, brine = asked(tmp_path, ["how many days for 3 inch pork loin dry", "how many days for 3 inch pork loin brine"])
    assert "dry, in a bag" in dry["said"]
    assert dry["cure_days"] < brine["cure_days"]


def test_sandwiches_are_counted(tmp_path: Path) -> None:
    """Two of 100 g each are 200 g a head: 15 times that is 3 kg cooked, and 5.3 kg raw at a yield of 57 %."""
    found = asked(tmp_path, ["15 people 2 sandwiches each 100g how much raw", "15 people 200 g each how much raw"])
    assert [round(one["raw_kg"], 2) for one in found] == [5.26, 5.26]
