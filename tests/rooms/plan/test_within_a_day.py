"""Birds in salt alone: salted overnight, dried in the morning and on the fire within the raw days of the chart."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from core.batch.assess import assess
from core.batch.batch import fold
from core.batch.events import Event, Started
from core.errors import TooSoon
from core.meat.cuts import cut
from core.meat.piece import Species
from core.person import Person
from core.plan.recipe import product, products
from core.safety.storage import keeping
from tests.weeks import MONDAY

WHO = Person("hedda", zone="Europe/Vienna", jurisdiction="EU")
MEALS = ((3, 20), (4, 9), (4, 18), (6, 13), (6, 20))
POULTRY = (Species.TURKEY, Species.CHICKEN, Species.DUCK)
BIRDS = sorted(name for name, made in products().items() if cut(made.cuts[0]).species in POULTRY)


@pytest.mark.parametrize("name", BIRDS)
@pytest.mark.parametrize("purpose", ["hot", "cold"])
@pytest.mark.parametrize("meal", MEALS)
def test_the_plan_keeps_the_raw_days_of_the_chart(name: str, purpose: str, meal: tuple[int, int]) -> None:
    """FoodSafety.gov, Cold Food Storage Chart: raw poultry 1 to 2 days; the shorter, with an hour to spare."""
    cut_ = cut(product(name).cuts[0])
    deadline = datetime(2027, 3, *meal, tzinfo=ZoneInfo(WHO.zone)).astimezone(UTC)
    setup = {"product": name, "cut": cut_.name, "mass": (cut_.mass_low + cut_.mass_high) / 2, "nitrite_target": 0.0}
    begun = Started("bird", setup | {"deadline": deadline, "purpose": purpose})
    found = assess(fold("b", [Event(1, MONDAY, MONDAY, "hedda", "m", begun)]), WHO, MONDAY)
    if found.plan is None:
        assert isinstance(found.refusal, TooSoon)
        return
    due = {step.key: step.due for step in found.plan.steps}
    assert due["meat_on"] - due["into_cure"] <= timedelta(days=keeping("poultry", "raw").days, hours=-1)
    assert due["into_cure"] + timedelta(hours=12) <= due["out"]
    assert due["out"] + timedelta(hours=1) <= due["meat_on"]
    assert found.plan.late == timedelta(0)
