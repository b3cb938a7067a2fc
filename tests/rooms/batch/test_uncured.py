"""What does not count as cured keeps like leftovers: under the floor, in plain salt, or with the cure forgotten."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.batch.assess import assess
from core.batch.batch import Batch, Reading
from core.batch.cured import counts_as_cured, storage_of
from core.batch.events import Incident, Probe, Sliced
from core.batch.material import dose_of
from core.batch.weighed import dose_in, is_told, most_in
from core.errors import OutOfRange
from core.person import Person
from core.plan.recipe import product
from core.plan.setup import Setup
from core.safety.findings import Outcome, Rule

NOW = datetime(2027, 3, 1, 12, tzinfo=UTC)


def setup(name: str = "bacon", **said: object) -> Setup:
    return product(name).setup({"mass": 2.0, "cure_nitrite_fraction": 0.0625} | said)


@pytest.mark.parametrize("place", ["US", "CA", "EU", "UK"])
@pytest.mark.parametrize("name", ["pastrami", "bacon", "ham", "duck"])
def test_the_house_s_own_dose_counts_as_cured(name: str, place: str) -> None:
    """By its defaults each is over the floor: US 120 (handbook p. 12), Canada 100, else the cooling rule's 100."""
    made = setup(name, mass=0.5 if name == "duck" else 2.0)
    assert counts_as_cured(dose_of(made, place))
    assert storage_of(made, dose_of(made, place), 100.0) == product(name).storage


@pytest.mark.parametrize(("nitrite", "line"), [(120.0, "bacon"), (119.0, "leftovers"), (60.0, "leftovers")])
def test_under_the_floor_bacon_keeps_like_leftovers(nitrite: float, line: str) -> None:
    """Seven days are for bacon that is cured (FSIS chart); under 120 mg/kg it has the three of cooked meat."""
    made = setup(nitrite_target=nitrite)
    assert storage_of(made, dose_of(made, "US"), nitrite) == line


@pytest.mark.parametrize(("days", "line", "keeps"), [(5.0, "leftovers", 3), (9.0, "bacon", 7)])
def test_bacon_that_is_cured_at_its_rim_alone_keeps_like_leftovers(days: float, line: str, keeps: int) -> None:
    """The middle has to hold 100 mg/kg at the slow end of the band, for keeping too; then the chart has seven days."""
    made = setup(thickness=0.042, cure_days=days)
    ida = Person("ida", "Ida", zone="Europe/Vienna")
    into, out = NOW - timedelta(days=days), NOW
    bag = Batch("b", "bacon", made, into, done={"into_cure": into, "out": out, "off": out + timedelta(days=1)})
    found = assess(bag, ida, out + timedelta(days=1, hours=1))
    assert found.ledger.record.product_class == line
    assert found.plan is not None
    use_by = found.plan.step("use_by")
    assert use_by is not None
    assert (use_by.due.date() - (out + timedelta(days=1)).date()).days == keeps


@pytest.mark.parametrize(
    ("seen", "line"),
    [
        (None, "bacon"),
        (Sliced(0.0, 0.042), "bacon"),
        (Sliced(0.006, 0.042), "leftovers"),
        (Sliced(None), "leftovers"),  # seen, and nobody measured it
    ],
)
def test_a_middle_that_was_seen_grey_counts_as_uncured(seen: Sliced | None, line: str) -> None:
    """What the slice showed counts more than what was modelled: it keeps, and cools, by the stricter rules."""
    made = setup(thickness=0.042, cure_days=9.0)
    into = NOW - timedelta(days=9)
    done = {"into_cure": into, "out": NOW, "off": NOW + timedelta(days=1)}
    bag = Batch("b", "bacon", made, into, done=done, sliced=seen)
    record = assess(bag, Person("ida", "Ida", zone="Europe/Vienna"), NOW + timedelta(days=1, hours=1)).ledger.record
    assert record.product_class == line
    assert (record.cured_centre_mg_kg == 0.0) is (line == "leftovers")


def test_plain_salt_keeps_like_leftovers_and_fish_by_its_own_line() -> None:
    """Without nitrite a ham is a roast; smoked fish has a line of its own."""
    roast = setup("ham", nitrite_target=0.0)
    assert storage_of(roast, dose_of(roast, "US"), None) == "leftovers"
    side = setup("salmon", mass=1.2)
    assert storage_of(side, dose_of(side, "EU"), None) == "salmon"


def test_a_cure_forgotten_in_the_bag_is_no_cure() -> None:
    """From then on nothing in the middle counts for cooling or keeping; before the meat was in, nothing was lost."""
    bag = Batch("b", "bacon", setup(cure_days=12.0), NOW, done={"into_cure": NOW})
    forgot = (NOW + timedelta(hours=30), Incident("forgot_cure", {}))
    ida = Person("ida", "Ida", zone="Europe/Vienna")
    later = NOW + timedelta(days=3)

    assert assess(bag, ida, later).ledger.record.product_class == "bacon"
    record = assess(replace(bag, incidents=(forgot,)), ida, later).ledger.record
    assert (record.product_class, record.cured_centre_mg_kg) == ("leftovers", 0.0)
    early = (NOW - timedelta(hours=1), Incident("forgot_cure", {}))
    assert assess(replace(bag, incidents=(early,)), ida, later).ledger.record.product_class == "bacon"


@pytest.mark.parametrize(
    ("days", "facts", "line", "without"),
    [
        (1.0, {"unknown": True}, "leftovers", True),  # no fresh dose may go in, so its raw days run from going in
        (4.0, {"lost_fraction": 0.5, "unnoticed_days": 0.5}, "leftovers", False),
        (4.0, {"lost_fraction": 0.05}, "bacon", False),
    ],
)
def test_a_cure_that_ran_out_counts_as_the_answer_to_the_leak_says(
    days: float, facts: dict[str, object], line: str, *, without: bool
) -> None:
    """«It counts as uncured from here»: then it cools, keeps and lies raw by those rules, in the record too."""
    into = NOW - timedelta(days=14)
    done = {"into_cure": into, "out": NOW}
    leak = (into + timedelta(days=days), Incident("leaked", facts))
    bag = Batch("b", "bacon", setup(thickness=0.042, cure_days=14.0, method="dry"), into, done=done, incidents=(leak,))
    found = assess(bag, Person("ida", "Ida", zone="Europe/Vienna"), NOW + timedelta(hours=1))
    record = found.ledger.record
    assert (record.product_class, record.without_cure) == (line, without)
    assert (record.cured_centre_mg_kg == 0.0) is (line == "leftovers")
    assert found.ledger.thrown is without  # two weeks raw without a cure


def test_meat_that_lay_without_its_cure_has_the_days_of_raw_meat() -> None:
    """Forgotten and found out at the rinse: three to five days are for raw meat in salt, from when it went in."""
    into = NOW - timedelta(days=9)
    bag = Batch("b", "bacon", setup(cure_days=9.0), into, done={"into_cure": into, "out": NOW})
    ida = Person("ida", "Ida", zone="Europe/Vienna")
    assert not assess(bag, ida, NOW).ledger.thrown
    forgot = (NOW, Incident("forgot_cure", {}))
    assert assess(replace(bag, incidents=(forgot,)), ida, NOW).ledger.thrown


def test_the_limit_of_canada_counts_the_nitrate_too() -> None:
    """200 mg/kg of both together: what is left of it for a brine that leaked is less by the nitrate."""
    made = setup("pastrami", cure_nitrate_fraction=0.01)
    bag = Batch("b", "flat", made, NOW, done={"into_cure": NOW})
    record = assess(bag, Person("ida", "Ida", zone="America/Toronto", jurisdiction="CA"), NOW).ledger.record
    assert record.nitrite_limit_mg_kg == pytest.approx(200.0)
    assert record.ingoing_mg_kg == pytest.approx(150.0 * (1.0 + 0.01 / 0.0625), rel=1e-6)


SLOWLY = ((0.0, 90.0), (1.0, 60.0), (4.5, 26.0), (12.0, 6.0))  # inside the 15 h row for cured meat, and in no other


@pytest.mark.parametrize(
    ("said", "done", "seen", "means"),
    [
        ({}, ("into_cure", "out"), None, Outcome.CANNOT_SAY),  # 100 mg/kg of nitrite in the middle, and no ascorbate
        ({}, ("into_cure", "out"), Sliced(None), Outcome.THROW_AWAY),
        ({}, ("out",), None, Outcome.THROW_AWAY),  # nobody said that it went into a cure
        ({"nitrite_target": 0.0}, ("into_cure", "out"), None, Outcome.THROW_AWAY),
    ],
)
def test_what_is_no_cure_has_no_part_in_the_cooling_rule_for_cured_meat(
    said: dict[str, object], done: tuple[str, ...], seen: Sliced | None, means: Outcome
) -> None:
    """Its nitrite is none, not unknown: the rows of 15 h are not about it (FSIS Appendix B)."""
    went = {"into_cure": NOW - timedelta(days=12), "out": NOW - timedelta(hours=9)}
    times = {step: went[step] for step in done} | {"meat_on": NOW - timedelta(hours=8), "off": NOW, "chill": NOW}
    readings = tuple(Reading(NOW + timedelta(hours=h), Probe.CORE, c, n) for n, (h, c) in enumerate(SLOWLY))
    made = setup(thickness=0.042, cure_days=12.0, **said)
    bag = Batch("b", "bacon", made, went["into_cure"], done=times, readings=readings, sliced=seen)
    found = assess(bag, Person("ida", "Ida", zone="Europe/Vienna"), NOW + timedelta(hours=12))
    (cooled,) = (f for f in found.ledger.verdict.because if f.rule is Rule.COOLING)
    assert cooled.means is means


@pytest.mark.parametrize("mass", [1.0, 1.5, 2.0, 2.3, 3.0])
def test_a_dose_at_its_own_limit_is_within_it(mass: float) -> None:
    """Bacon in a brine is dosed at the limit itself (9 CFR 424.22(b): 120 mg/kg); computed back it is a hair over."""
    made = setup(mass=mass, method="brine", at_risk_eaters=True)
    bag = Batch("b", "bacon", made, NOW, done={"into_cure": NOW})
    found = assess(bag, Person("ida", "Ida", zone="Europe/Vienna"), NOW).ledger
    (ceiling,) = (f for f in found.verdict.because if f.rule is Rule.NITRITE_CEILING)
    assert ceiling.means is Outcome.SAFE


def test_a_strength_told_after_the_weighing_counts() -> None:
    """Weighed while its strength was unknown: what is told since decides; the salt that was weighed stays as it was."""
    unknown = setup(cure_nitrite_fraction=None)
    told = replace(unknown, cure_nitrite_fraction=0.0625, salt_fraction=0.03)
    batch = Batch("b", "bacon", told, NOW, done={"into_cure": NOW}, dosed=unknown)
    found = dose_in(batch, "US")
    assert found.cure_kg == pytest.approx(dose_of(setup(), "US").cure_kg)
    assert found.salt_kg == pytest.approx(dose_of(setup(), "US").salt_kg)


def test_plain_salt_that_is_in_stays_in() -> None:
    """Without nitrite no strength is ever told: another share of salt, wished later, changes nothing that went in."""
    weighed = product("salmon").setup({"mass": 1.4})
    batch = Batch("b", "salmon", replace(weighed, salt_fraction=0.05), NOW, done={"into_cure": NOW}, dosed=weighed)
    assert dose_in(batch, "US").salt_kg == pytest.approx(0.0225 * 1.4)


def test_the_nitrate_of_a_packet_that_is_told_later_counts() -> None:
    """What is printed on the packet is of what is in, nitrate as well: Canada counts both, and 4 % of it is over."""
    packet = setup(cure_nitrate_fraction=0.04)
    bag = Batch("b", "bacon", packet, NOW, done={"into_cure": NOW}, dosed=setup())
    found = dose_in(bag, "CA")
    assert found.nitrate_ingoing == pytest.approx(found.nitrite_ingoing * 0.04 / 0.0625)
    verdict = assess(bag, Person("ida", "Ida", zone="America/Toronto", jurisdiction="CA"), NOW).ledger.verdict
    (ceiling,) = verdict.of(Rule.NITRITE_CEILING)
    assert (ceiling.means, ceiling.value) == (Outcome.CANNOT_SAY, pytest.approx(120.0 * (1.0 + 0.04 / 0.0625)))


@pytest.mark.parametrize("put_in", [{}, {"put_in_cure": 0.00384}])
def test_a_dose_that_nobody_told_is_no_cure_yet(put_in: dict[str, float]) -> None:
    """Weighed before its strength was told: what was planned is no evidence of what went in, until that is told."""
    unknown, on, off = setup(cure_nitrite_fraction=None), NOW + timedelta(days=12), NOW + timedelta(days=12, hours=6)
    done = {"into_cure": NOW, "out": NOW + timedelta(days=11), "meat_on": on, "off": off}
    bag = Batch("b", "bacon", setup(), NOW, done=done, dosed=unknown, put_in=put_in)
    record = assess(bag, Person("ida", "Ida", zone="Europe/Vienna"), off).ledger.record
    told = bool(put_in)
    assert record.product_class == ("bacon" if told else "leftovers")
    assert (record.ingoing_mg_kg is None, record.cured) == (not told, told)


def test_a_strength_that_nobody_told_is_no_cure() -> None:
    """Bacon from a bag of which nothing is known keeps as leftovers do, not for the seven days of cured bacon."""
    made = setup(cure_nitrite_fraction=None)
    assert storage_of(made, None, None) == "leftovers"


@pytest.mark.parametrize("strength", [0.002, 0.5, 1.0])
def test_what_is_no_curing_salt_is_refused_by_the_needle_too(strength: float) -> None:
    """Pure nitrite is refused with its range, and never divided by the salt that it does not hold."""
    ham = replace(product("ham").setup({"mass": 5.0, "method": "inject"}), cure_nitrite_fraction=strength)
    with pytest.raises(OutOfRange):
        dose_of(ham, "US")


@pytest.mark.parametrize(("before", "told"), [(0, True), (15, True), (16, False), (5000, False)])
def test_a_cure_that_was_in_before_the_batch_was_begun(before: int, told: bool) -> None:
    """What was in before this batch was begun went in by no dose of ours; an hour is told roundly."""
    into = NOW - timedelta(minutes=before)
    assert is_told(Batch("b", "bacon", setup(), NOW, done={"into_cure": into}, dosed=setup())) is told
    assert is_told(
        Batch("b", "bacon", setup(), NOW, done={"into_cure": into}, dosed=setup(), put_in={"put_in_cure": 0.004})
    )
    plain = setup(nitrite_target=0.0)
    assert is_told(Batch("b", "bacon", plain, NOW, done={"into_cure": into}, dosed=plain))


def test_a_spoon_counts_at_both_ends() -> None:
    """A ceiling is held to the most that may be in, the cure to the least; a scale ends it, and not the water."""
    put_in = {"put_in_cure": 0.003, "put_in_cure_most": 0.009}
    bag = Batch("b", "bacon", setup(), NOW, done={"into_cure": NOW}, dosed=setup(), put_in=put_in)
    light = dose_in(bag, "US")
    heavy = most_in(bag, light)
    assert (light.cure_kg, heavy.cure_kg) == (0.003, 0.009)
    assert heavy.nitrite_ingoing == pytest.approx(3.0 * light.nitrite_ingoing)
    record = assess(bag, Person("ida", "Ida", zone="Europe/Vienna", jurisdiction="US"), NOW).ledger.record
    assert record.ingoing_mg_kg == pytest.approx(heavy.nitrite_ingoing)
    assert most_in(replace(bag, put_in={"put_in_cure": 0.003}), light) is light
