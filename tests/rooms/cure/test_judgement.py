"""What is said of a cure that is already in the tub."""

from dataclasses import replace

import pytest

from core.cure.contents import Contents
from core.cure.dose import Recipe, dose, from_teaspoons
from core.cure.judgement import Verdict, judge
from core.safety.cautions import Severity
from core.units import KILOGRAMS_PER_POUND, LITRES_PER_US_GALLON


def dry(mg_kg: float, **changes) -> Contents:
    """A kg of meat with that much nitrite, dry."""
    return replace(Contents("dry", 1.0, mg_kg / 62500, 0.0625), **changes)


@pytest.mark.parametrize(
    ("nitrite", "verdict"),
    [
        (0.0, Verdict.UNDER_FLOOR),
        (119.9, Verdict.UNDER_FLOOR),
        (120.0, Verdict.WITHIN),
        (156.0, Verdict.WITHIN),
        (200.0, Verdict.WITHIN),
        (200.1, Verdict.CANNOT_CALL_SAFE),
        (400.0, Verdict.CANNOT_CALL_SAFE),
        (400.1, Verdict.THROW_AWAY),
        (1562.5, Verdict.THROW_AWAY),
    ],
)
def test_verdicts_by_policy(nitrite: float, verdict: Verdict):
    """Owner's policy: under 120 not called cured, to 200 within, to 400 cannot be called safe, above it thrown away."""
    assert judge(dry(nitrite)).verdict is verdict


@pytest.mark.parametrize("end", [0, 1])
def test_five_teaspoons_in_a_gallon_for_five_pounds(end: int):
    """A recipe of a public thread, by either weight of a spoon: cannot be called safe, though pick-up says 46 to 58."""
    tub = Contents("brine", 5 * KILOGRAMS_PER_POUND, from_teaspoons(5)[end], 0.0625, water_kg=LITRES_PER_US_GALLON)
    found = judge(tub)
    assert found.verdict is Verdict.CANNOT_CALL_SAFE
    assert 280 < found.ingoing.nitrite < 370
    assert found.nitrite_by_pickup < 60
    assert [c.severity for c in found.cautions] == [Severity.STOP]


def test_pure_nitrite_or_cure_for_salt_is_thrown_away():
    """25 g/kg of 6.25 % as if it were salt, and 10 g of the pure stuff: thrown away, whatever the hour."""
    for tub in (Contents("dry", 1.0, 0.025, 0.0625), Contents("brine", 1.0, 0.010, 0.99, water_kg=1.0)):
        found = judge(tub, hours_in=0.5)
        assert found.verdict is Verdict.THROW_AWAY
        assert not found.pour_off


def test_a_wet_mistake_caught_within_a_day_may_be_poured_off():
    """Common practice: pour off, rinse, new brine; not dry, not after a day, not at an unknown hour, not above 400."""
    tub = Contents("brine", 2.0, 0.016, 0.0625, water_kg=1.5)
    assert judge(tub).verdict is Verdict.CANNOT_CALL_SAFE
    assert judge(tub, hours_in=20).pour_off
    assert not judge(tub, hours_in=25).pour_off
    assert not judge(tub).pour_off
    assert not judge(dry(300.0), hours_in=1).pour_off
    assert not judge(replace(tub, cure_kg=0.03), hours_in=1).pour_off


def test_a_weak_cure_is_topped_up_to_the_house_target():
    """What is missing, weighed in, gives 150 by the formula; a good one has nothing to top up."""
    for weak in (dry(80.0), Contents("brine", 3.2, 0.005, 0.0625, salt_kg=0.1, water_kg=1.6)):
        found = judge(weak)
        assert found.top_up_cure_kg > 0
        mended = replace(weak, cure_kg=weak.cure_kg + found.top_up_cure_kg)
        assert mended.ingoing().nitrite == pytest.approx(150)
        assert judge(mended).verdict is Verdict.WITHIN
    assert judge(dry(150.0)).top_up_cure_kg is None
    assert judge(Contents("dry", 1.0, 0.0, 0.0)).top_up_cure_kg is None


def test_over_the_law_of_the_place_but_under_200():
    """Bacon in brine at 150 and a UK ham at 160: over the limit, and no more than that."""
    bacon = replace(dose(Recipe("brine", 2.0, 0.0625)), product_class="bacon")
    assert judge(bacon).verdict is Verdict.OVER_LIMIT
    assert judge(dry(160.0, jurisdiction="UK")).verdict is Verdict.OVER_LIMIT


def test_nitrate_is_judged_too():
    """Over 500 of nitrate, and any in bacon, cannot be called safe; a little in a ham is named."""
    assert judge(dry(150.0, nitrate_fraction=0.3)).verdict is Verdict.CANNOT_CALL_SAFE
    assert judge(dry(120.0, nitrate_fraction=0.04, product_class="bacon")).verdict is Verdict.CANNOT_CALL_SAFE
    named = judge(dry(150.0, nitrate_fraction=0.04))
    assert named.verdict is Verdict.WITHIN
    assert [c.key for c in named.cautions] == ["nitrate_in_short_cure"]


def test_where_no_floor_is_printed_the_cooling_rule_gives_it():
    """EU and UK print none: the 100 mg/kg of the cooling rule for cured meat is taken."""
    assert judge(dry(99.0, jurisdiction="UK")).verdict is Verdict.UNDER_FLOOR
    assert judge(dry(100.0, jurisdiction="UK")).verdict is Verdict.WITHIN


def test_a_skin_makes_a_judgement_stricter():
    """190 on the whole belly is 211 on the meat: over the home ceiling."""
    assert judge(dry(190.0, product_class="bacon")).verdict is Verdict.WITHIN
    assert judge(dry(190.0, product_class="bacon", skin_on=True)).verdict is Verdict.CANNOT_CALL_SAFE
