"""A plan never leads into its own verdict: who does each step when it is due serves meat that the ledger calls safe."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from bot.wording import chilling, rises
from core.meat.cuts import cut
from core.plan.recipe import products
from core.safety.findings import Outcome
from tests.followed import WHO, Followed
from tests.weeks import MONDAY

IN_TWO_WEEKS = datetime(2027, 3, 14, 18, 0, tzinfo=ZoneInfo(WHO.zone)).astimezone(UTC)
LATE = datetime(2027, 3, 24, 13, 0, tzinfo=ZoneInfo(WHO.zone)).astimezone(UTC)
LARGE = ("ham_bone_in", "shoulder_bone_in", "turkey_whole", "goose_whole")
PORTION_KG = 1.5  # where the largest piece of a cut weighs no more, people take four
WEEKS = [
    pytest.param(name, of, purpose.name, plain, meal, id="-".join((of, purpose.name, *["plain"] * plain, said)))
    for name, made in products().items()
    for of in made.cuts
    for purpose in made.purposes
    for plain in (False, True)
    for said, meal in (("soonest", None), ("in two weeks", IN_TWO_WEEKS), ("late", LATE))
    if plain or meal is not LATE
]


@pytest.mark.parametrize(("name", "of", "purpose", "plain", "meal"), WEEKS)
def test_who_follows_the_plan_serves_safe_meat(
    name: str, of: str, purpose: str, plain: bool, meal: datetime | None
) -> None:
    """Cured and in salt alone, for a meal and without one; what is sure to be too slow is told with the plan."""
    known = cut(of)
    pieces = 4 if known.mass_high <= PORTION_KG else 1
    mass = pieces * max(known.mass_low * 1.2, 0.25 * known.mass_high)
    setup = {"product": name, "cut": of, "mass": mass, "pieces": pieces, "purpose": purpose, "deadline": meal}
    setup |= {"cure_nitrite_fraction": 0.0625} | ({"nitrite_target": 0.0} if plain else {})
    batch = Followed(setup, MONDAY)
    begun = batch.begun()
    told = rises.planned(begun) or chilling.planned(begun)
    if told:  # too thick to come up or to cool in time as it is, and its plan says so
        assert of in LARGE
        return
    found = batch.to_the_meal().ledger.verdict
    assert found.kind is Outcome.SAFE, [(f.rule, f.status, f.value, f.limit) for f in found.because]


def test_the_fridge_is_read_through_a_sealed_rest() -> None:
    """Two days sealed after the cure: the mornings between are read too, or it would go unread for three days."""
    setup = {"product": "bacon", "cut": "pork_belly", "mass": 2.3, "rest_days": 2.0, "cure_nitrite_fraction": 0.0625}
    batch = Followed(setup, MONDAY)
    batch.begun()
    assert batch.to_the_meal().ledger.verdict.kind is Outcome.SAFE


def test_a_brine_that_is_made_first_passes_over_no_thaw() -> None:
    """A small frozen side: its brine is chilled from the day before, and it is taken out of the freezer after that."""
    setup = {"product": "salmon", "cut": "salmon_side", "mass": 0.9, "purpose": "hot", "method": "inject"}
    batch = Followed(setup | {"frozen": True, "deadline": IN_TWO_WEEKS}, MONDAY)
    batch.begun()
    found = batch.to_the_meal()
    assert "thaw" in found.batch.done
    assert found.plan is not None
    assert found.plan.late <= timedelta(minutes=30)
    assert found.ledger.verdict.kind is Outcome.SAFE
