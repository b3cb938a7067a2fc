"""core.safety.ledger: a week of a brisket, and what each thing that goes wrong makes of it."""

from datetime import timedelta

import pytest

from core.errors import Missing, OutOfRange
from core.safety.cook import cook_history, cook_lethality
from core.safety.findings import Outcome, Rule, Status, worst
from core.safety.ledger import verdict
from core.units import celsius_from_fahrenheit as c
from tests.records import BRISKET, CHILL, COOK, at, brisket, history

RAW = {"core": (), "meat_on_at": None, "off_at": None, "chill_started_at": None}
ON_FIRE = {"off_at": None, "chill_started_at": None}
BIRD = {"species": "turkey", "product_class": "poultry", "put_in_cure_at": None, "out_at": None, "fridge": ()}


def _stands(record, rule):
    (found,) = verdict(record).of(rule)
    return found.status, found.means


def test_the_week_is_safe():
    """Cold week, hot cook, quick chill: safe, with nothing missing, every finding passed, and a use-by."""
    found = verdict(BRISKET)
    assert (found.kind, found.missing) == (Outcome.SAFE, ())
    assert {f.status for f in found.because} == {Status.PASSED}
    assert found.use_by is not None
    assert found.use_by.at == at(10.2) + timedelta(days=3)
    assert found.cooling is not None
    assert found.lethality is not None
    assert found.lethality.met


@pytest.mark.parametrize("hours", [-160.0, -24.0, -0.1])
def test_raw_meat_is_not_yet(hours):
    """All through the cure: not yet, cook it."""
    found = verdict(brisket(now=at(hours), **RAW))
    assert (found.kind, found.deciding.missing, found.deciding.detail) == (Outcome.NOT_YET, "cook_it", "raw")


def test_every_finding_carries_its_source_and_edition():
    """Rule, source, edition: none is without."""
    for found in verdict(BRISKET).because:
        assert found.source.key
        assert found.edition == found.source.year


def test_the_core_decides_nothing_before_the_floor():
    """144.9 °F: not yet; 145 °F and three minutes: done, for people who are not at risk."""
    way = COOK[:4]
    for last, now, kind in ((144.9, 6.0, "not_yet"), (145.0, 5.04, "not_yet"), (145.0, 5.05, "safe")):
        found = verdict(brisket((*way, (5.0, last)), now=at(now), **ON_FIRE))
        assert found.kind.value == kind
    assert verdict(brisket((*way, (5.0, 145.0)), now=at(5.04), **ON_FIRE)).deciding.missing == "rest_3min"


def test_a_colder_spot_within_the_rest_undoes_it():
    """145 °F, and 140 °F two minutes later at another spot: that was not the coldest."""
    spots = (*COOK[:4], (5.0, 145.0), (5.0 + 2.0 / 60.0, 140.0))
    assert verdict(brisket(spots, now=at(5.1), **ON_FIRE)).kind is Outcome.NOT_YET
    at_once = (*COOK[:4], (5.0, 145.0), (5.0, 140.0))
    assert verdict(brisket(at_once, now=at(5.1), **ON_FIRE)).kind is Outcome.NOT_YET


@pytest.mark.parametrize("changes", [{"at_risk_eaters": True}, {"intact": False}, {"injected": True}])
def test_at_risk_or_not_intact_wants_the_table(changes):
    """One reading of 150 °F earns nothing by the table; held for 72 s (7 log) it does."""
    once = (*COOK[:3], (3.8, 129.0), (3.9, 150.0))
    held = (*once, (3.9 + 72.0 / 3600.0, 150.0))
    assert verdict(brisket(once, now=at(4.0), **ON_FIRE, **changes)).kind is Outcome.NOT_YET
    assert verdict(brisket(held, now=at(4.0), **ON_FIRE, **changes)).kind is Outcome.SAFE


@pytest.mark.parametrize(
    ("changes", "log"),
    [
        ({"at_risk_eaters": False}, 6.5),
        ({"at_risk_eaters": None}, 7.0),
        ({"at_risk_eaters": True}, 7.0),
        ({"intact": False}, 7.0),
        ({"injected": True}, 7.0),
    ],
)
def test_which_column(changes, log):
    """6.5 log only for intact meat and eaters known not to be at risk."""
    kill = cook_lethality(brisket(**changes))
    assert kill is not None
    assert kill.required_log == log


def test_low_rows_are_pointed_out():
    """Met at 132 °F by the table: not done by the floor, and the caution says what was not shown."""
    slow = ((0.0, 39.0), (2.0, 132.0), (5.0, 132.0))
    found = verdict(brisket(slow, now=at(5.1), **ON_FIRE))
    assert found.kind is Outcome.NOT_YET
    assert found.lethality is not None
    assert found.lethality.met
    assert "low_rows_not_shown" in [k.key for k in found.cautions]
    high = verdict(brisket(((0.0, 39.0), (2.0, 135.0), (5.0, 135.0)), now=at(5.1), **ON_FIRE))
    assert "low_rows_not_shown" not in [k.key for k in high.cautions]


def test_come_up_of_intact_meat_is_a_doubt_only():
    """Over 6 h from 50 to 130 °F by the core: the rule looks at the surface of intact meat, so it cannot be said."""
    slow = ((0.0, 39.0), (1.0, 50.0), (7.5, 120.0), (8.0, 131.0), (9.0, 165.0))
    assert _stands(brisket(slow, now=at(9.1), **ON_FIRE), Rule.COME_UP) == (Status.FAILED, Outcome.CANNOT_SAY)
    assert _stands(brisket(slow, now=at(9.1), **ON_FIRE, intact=False), Rule.COME_UP) == (
        Status.FAILED,
        Outcome.THROW_AWAY,
    )


def test_injected_meat_reaches_140_in_4_h():
    """Not at 140 °F 4 h after going on: throw away; intact meat has no such clock."""
    slow = ((0.0, 39.0), (3.0, 125.0), (4.1, 135.0), (5.0, 141.0), (6.0, 165.0))
    assert verdict(brisket(slow, now=at(6.1), **ON_FIRE, injected=True)).kind is Outcome.THROW_AWAY
    assert verdict(brisket(slow, now=at(6.1), **ON_FIRE)).kind is Outcome.SAFE
    ahead = ((0.0, 39.0), (3.0, 125.0))
    found = verdict(brisket(ahead, now=at(3.1), **ON_FIRE, injected=True)).of(Rule.REACH_140)[0]
    assert (found.status, found.deadline) == (Status.OPEN, at(4.0))


def test_nobody_looked_for_the_night():
    """First reading after 9 h: whether it came up in 6 h a modelled low side can show of whole meat only."""
    night = ((0.0, 39.0), (9.0, 170.0))
    assert verdict(brisket(night, now=at(9.1), **ON_FIRE)).kind is Outcome.CANNOT_SAY
    model = history((0.0, 39.0), (4.0, 128.0), (5.0, 135.0), (9.0, 169.0))
    shown = verdict(brisket(night, now=at(9.1), **ON_FIRE, modelled_low=model))
    assert (shown.kind, shown.of(Rule.COME_UP)[0].value) == (Outcome.SAFE, 5.0)
    assert shown.of(Rule.COME_UP)[0].readings == history((0.0, 39.0))  # and no point of the model as if it were read
    rested = brisket((*night, (10.0, 120.0)), now=at(10.0), off_at=at(9.2), chill_started_at=None, modelled_low=model)
    assert verdict(rested).of(Rule.COME_UP)[0].value == 5.0  # what cools after the fire takes nothing up again
    opened = brisket(night, now=at(9.1), **ON_FIRE, modelled_low=model, intact=False, cured_centre_mg_kg=150.0)
    assert verdict(opened).kind is Outcome.CANNOT_SAY


@pytest.mark.parametrize(
    ("core", "model", "hours"),
    [
        (((7.0, 150.0),), ((0.5, 45.0), (1.92, 50.0), (5.0, 131.0)), 5.0),  # cold by the model: that starts nothing
        (((4.0, 120.0), (7.0, 150.0)), ((4.0, 119.0), (5.0, 130.0), (6.0, 129.9), (6.5, 131.0)), 6.5),
        (((4.0, 120.0), (7.0, 150.0)), ((4.0, 119.0), (5.0, 130.0), (6.9, 135.0)), 5.0),
        (((4.0, 131.0), (5.0, 129.0), (7.0, 150.0)), ((4.5, 129.0), (5.0, 130.0), (6.0, 130.0)), 6.0),
        (((5.0, 129.0), (6.5, 129.5)), ((5.1, 130.0), (6.0, 130.5)), 7.0),  # not up by any reading
        (((7.0, 130.0),), ((5.0, 131.0), (7.0, 129.5)), 7.0),  # at the reading itself not up by the model
        (((4.0, 120.0), (7.0, 130.0)), ((4.0, 119.0), (5.0, 130.0)), 5.0),
    ],
)
def test_of_whole_meat_the_modelled_low_side_may_end_the_clock_before_a_reading_does(core, model, hours):
    """Only after the last reading that was too cold, where it stays up, and where a reading confirms it."""
    record = brisket(core, now=at(7.0), **ON_FIRE, modelled_low=history(*model))
    assert verdict(record).of(Rule.COME_UP)[0].value == hours


def test_a_model_above_a_reading_is_not_the_low_side():
    """The modelled low side stands over a reading by more than 1 °C: it is left out."""
    core = ((0.0, 39.0), (3.0, 100.0), (9.0, 170.0))
    model = history((0.0, 39.0), (2.9, 128.0), (3.1, 131.0), (9.0, 169.0))
    assert cook_history(brisket(core, **ON_FIRE, modelled_low=model)) == history(*core)
    below = history((0.0, 39.0), (2.9, 90.0), (3.1, 101.0), (9.0, 169.0))
    assert len(cook_history(brisket(core, **ON_FIRE, modelled_low=below))) == 5


def test_the_model_ends_at_the_last_reading():
    """A forecast is no evidence: points after the last reading do not count."""
    core = ((0.0, 39.0), (3.0, 100.0))
    model = history((0.0, 39.0), (3.0, 100.0), (6.0, 170.0))
    assert cook_history(brisket(core, **ON_FIRE, modelled_low=model))[-1] == history((3.0, 100.0))[0]


def test_the_model_alone_is_no_record():
    """Without any reading nothing was cooked, and nothing was shown of the way up."""
    record = brisket((), now=at(9.0), **ON_FIRE, modelled_low=history((0.0, 39.0), (8.0, 190.0)))
    found = verdict(record)
    assert (found.kind, found.of(Rule.DONENESS)[0].means) == (Outcome.CANNOT_SAY, Outcome.NOT_YET)


@pytest.mark.parametrize(
    ("core", "kind"),
    [(164.9, Outcome.NOT_YET), (165.0, Outcome.SAFE)],
)
def test_birds_go_to_165(core, kind):
    """The table is met long before; the advice stays 165 °F."""
    cook = ((0.0, 39.0), (2.0, 120.0), (3.9, 145.0), (5.0, 160.0), (5.5, core))
    found = verdict(brisket(cook, now=at(5.6), **ON_FIRE, **BIRD))
    assert found.kind is kind
    assert found.of(Rule.LETHALITY)[0].status is Status.PASSED
    assert "poultry_own_table" in [k.key for k in found.cautions]


def test_a_bird_of_unlisted_fat_goes_by_165_alone():
    """15 % fat is past the last column: there is no table, and 165 °F decides."""
    cook = ((0.0, 39.0), (2.0, 120.0), (3.9, 145.0), (5.5, 165.0))
    found = verdict(brisket(cook, now=at(5.6), **ON_FIRE, **BIRD, fat_fraction=0.15))
    assert (found.kind, found.lethality) == (Outcome.SAFE, None)


def test_smoked_fish_is_held_at_160_for_30_min():
    """160 °F once is not enough; half an hour is."""
    fish = {**BIRD, "species": "fish", "product_class": "fish"}
    once = ((0.0, 39.0), (1.0, 120.0), (1.5, 160.0))
    for cook, kind in (
        (once, Outcome.NOT_YET),
        ((*once, (1.99, 165.0)), Outcome.NOT_YET),
        ((*once, (2.0, 160.0)), Outcome.SAFE),
    ):
        assert verdict(brisket(cook, now=at(2.1), **ON_FIRE, **fish)).kind is kind


def test_the_half_hour_of_smoked_fish_is_one_stretch_that_begins_with_a_reading():
    """A colder reading starts it anew, a long gap vouches for nothing, and a model earns nothing before a reading."""
    fish = {**BIRD, "species": "fish", "product_class": "fish"}
    start = ((0.0, 39.0), (1.0, 120.0))
    dipped = (*start, (1.5, 161.0), (1.8, 161.0), (1.9, 150.0), (2.0, 161.0), (2.3, 161.0))
    gap = (*start, (1.5, 161.0), (2.4, 161.0))
    model = tuple((at(h), (f - 32.0) / 1.8) for h, f in ((1.2, 165.0), (1.6, 166.0), (2.0, 168.0), (2.2, 168.0)))
    late = {**fish, "modelled_low": model}
    for cook, kept in ((dipped, fish), (gap, fish), ((*start, (2.2, 170.0)), late)):
        found = verdict(brisket(cook, now=at(2.5), **ON_FIRE, **kept)).of(Rule.FISH_160)[0]
        assert found.status is Status.OPEN
    between = (*start, (1.5, 166.0), (2.2, 168.0))  # the model stands between two hot readings
    assert verdict(brisket(between, now=at(2.5), **ON_FIRE, **late)).of(Rule.FISH_160)[0].status is Status.PASSED


def test_pork_and_its_parasites():
    """Trichinae by the former table: dead at once from 144 °F."""
    found = verdict(brisket(species="pork")).of(Rule.PARASITES)[0]
    assert (found.status, found.limit) == (Status.PASSED, 1.0)
    assert verdict(BRISKET).of(Rule.PARASITES) == ()


def test_it_came_off_before_it_was_done():
    """Back on within two hours; later throw away where a reading shows it, cannot say where none does."""
    shown = ((0.0, 39.0), (3.0, 120.0), (4.0, 138.0))
    off = {"off_at": at(4.2), "chill_started_at": None}
    early = verdict(brisket(shown, now=at(6.2), **off))
    assert (early.kind, early.of(Rule.PARTIAL_COOK)[0].deadline) == (Outcome.NOT_YET, at(6.2))
    assert verdict(brisket(shown, now=at(6.3), **off)).kind is Outcome.THROW_AWAY
    blind = verdict(brisket(shown[:2], now=at(6.9), **{**off, "off_at": at(4.8)}))
    assert blind.of(Rule.PARTIAL_COOK)[0].means is Outcome.CANNOT_SAY


def test_bacon_is_raw_until_it_is_fried():
    """Cured bacon off at 130 °F: not yet, cook before eating; with a weak cure it is a partly cooked piece."""
    way = ((0.0, 39.0), (2.0, 110.0), (3.0, 130.0), (4.0, 79.0), (7.0, 39.0))
    off = {"species": "pork", "product_class": "bacon", "off_at": at(3.0), "chill_started_at": at(3.0), "now": at(10.0)}
    found = verdict(brisket(way, **off, cured_centre_mg_kg=110.0))
    assert (found.kind, found.of(Rule.PARTIAL_COOK)[0].advice) == (Outcome.NOT_YET, "raw_cook_before_eating")
    for weak in (99.9, None):
        assert verdict(brisket(way, **off, cured_centre_mg_kg=weak)).kind is Outcome.THROW_AWAY


def test_hot_off_the_fire_it_may_be_eaten():
    """For two hours after the last reading at 140 °F; then somebody must look."""
    hot = {"core": history(*COOK), "chill_started_at": None}
    assert verdict(brisket(**hot, now=at(12.0))).kind is Outcome.SAFE
    late = verdict(brisket(**hot, now=at(12.1)))
    assert late.kind is Outcome.CANNOT_SAY
    assert "cooling_reading" in [w.what for w in late.missing]
    held = {**hot, "core": history(*COOK, (13.0, 150.0))}
    assert verdict(brisket(**held, now=at(15.0))).kind is Outcome.SAFE


def test_the_chill_runs():
    """Two hours after it was hot, on its way down in time: not yet, with the next limit and its deadline."""
    found = verdict(brisket((*COOK, *CHILL[:3]), now=at(13.5)))
    (cooling,) = found.of(Rule.COOLING)
    assert (found.kind, cooling.status, cooling.deadline) == (Outcome.NOT_YET, Status.OPEN, at(17.5))
    assert [w.what for w in found.missing] == ["cooling_reading"]


@pytest.mark.parametrize(
    ("centre", "ascorbate", "kind", "advice"),
    [
        (30.0, None, Outcome.THROW_AWAY, ""),
        (100.0, None, Outcome.CANNOT_SAY, "reheat_165_today"),
        (100.0, 250.0, Outcome.SAFE, ""),
    ],
)
def test_a_slow_chill(centre, ascorbate, kind, advice):
    """3 h from 130 to 80 °F: the modelled centre decides, not the dose of the tub (150 mg/kg here)."""
    slow = (*COOK, (11.0, 140.0), (12.0, 130.0), (15.0, 80.0), (24.0, 44.0))
    found = verdict(brisket(slow, now=at(25.0), cured_centre_mg_kg=centre, ascorbate_mg_kg=ascorbate))
    assert (found.kind, found.of(Rule.COOLING)[0].advice) == (kind, advice)


def test_one_reading_short():
    """The reading at 80 °F is gone: whether it was in time cannot be said."""
    assert verdict(brisket((*COOK, CHILL[0], CHILL[1], CHILL[3]))).kind in (Outcome.CANNOT_SAY, Outcome.THROW_AWAY)


@pytest.mark.parametrize(
    ("hours", "at_risk", "kind"),
    [
        (72.0, False, Outcome.SAFE),
        (72.1, False, Outcome.EAT_NOW),
        (96.0, False, Outcome.EAT_NOW),
        (96.1, False, Outcome.THROW_AWAY),
        (72.1, True, Outcome.THROW_AWAY),
    ],
)
def test_use_by(hours, at_risk, kind):
    """The shorter end is the date; to the longer end it is eaten now, by nobody at risk; then it is thrown away."""
    assert verdict(brisket(now=at(10.2 + hours), at_risk_eaters=at_risk)).kind is kind


def test_frozen_in_time():
    """Frozen before its date it keeps; frozen after it, it does not get better."""
    months = 24.0 * 60
    assert verdict(brisket(now=at(months), frozen_at=at(40.0))).kind is Outcome.SAFE
    assert verdict(brisket(now=at(months), frozen_at=at(120.0))).kind is Outcome.THROW_AWAY


def test_an_unlisted_product_keeps_as_leftovers():
    """No line on the chart: 3 days."""
    found = verdict(brisket(product_class="something_new"))
    assert found.use_by is not None
    assert (found.use_by.keeping.line, found.use_by.keeping.days) == ("leftovers", 3.0)


def test_a_warm_fridge_while_it_is_kept():
    """50 °F for three hours in the fridge of the finished meat: throw away."""
    warm = history((20.0, 38.0), (24.0, 50.0), (27.0, 50.0), (28.0, 38.0))
    assert verdict(brisket(now=at(30.0), fridge=(*BRISKET.fridge, *warm))).kind is Outcome.THROW_AWAY


def test_vacuum_fish_at_38():
    """Every reading at 38 °F or below; one above, or none, and nothing can be said."""
    cook = ((0.0, 39.0), (1.0, 120.0), (1.5, 160.0), (2.1, 161.0), (3.0, 79.0), (6.0, 38.0))
    fish = {
        **BIRD, "species": "fish", "product_class": "fish", "vacuum": True,
        "off_at": at(2.2), "chill_started_at": at(2.2),
    }  # fmt: skip
    for points, status in (
        (((20.0, 38.0),), Status.PASSED),
        (((20.0, 36.0), (24.0, 38.1)), Status.FAILED),
        ((), Status.UNKNOWN),
    ):
        record = brisket(cook, now=at(30.0), **{**fish, "fridge": history(*points)})
        assert _stands(record, Rule.VACUUM_FISH)[0] is status
        assert verdict(record).kind is (Outcome.SAFE if status is Status.PASSED else Outcome.CANNOT_SAY)


@pytest.mark.parametrize(
    ("days", "status"), [(5.0, Status.PASSED), (5.1, Status.UNKNOWN), (7.0, Status.UNKNOWN), (7.1, Status.FAILED)]
)
def test_held_too_long_between_cure_and_fire(days, status):
    """Cured and raw it keeps as raw corned beef does: 5 days, 7 at the longest."""
    record = brisket(now=at(-1.0), **{**RAW, "out_at": at(-1.0 - 24.0 * days)})
    assert _stands(record, Rule.RAW_KEEPING)[0] is status


@pytest.mark.parametrize(("days", "status"), [(2.0, Status.PASSED), (2.1, Status.UNKNOWN), (3.1, Status.FAILED)])
def test_fish_out_of_its_cure_keeps_as_raw_fish(days, status):
    """Two days, three at the longest (judgement on two charts, from memory): a cure of hours is none to keep it by."""
    record = brisket(now=at(-1.0), species="fish", **{**RAW, "out_at": at(-1.0 - 24.0 * days)})
    assert _stands(record, Rule.RAW_KEEPING)[0] is status


RAW_DAYS = [
    ("beef", 3.0, "safe"),
    ("beef", 3.1, "cannot_say"),
    ("beef", 5.1, "throw_away"),
    ("turkey", 1.1, "cannot_say"),
    ("turkey", 2.1, "throw_away"),
    ("fish", 2.0, "safe"),
    ("fish", 2.1, "cannot_say"),
    ("fish", 3.1, "throw_away"),
]


@pytest.mark.parametrize(("species", "days", "means"), RAW_DAYS)
def test_salted_without_cure(species, days, means):
    """No nitrite at all: it is raw meat, and keeps as raw meat does."""
    raw = {**RAW, "put_in_cure_at": at(-24.0 * days), "out_at": None}
    record = brisket(now=at(0.0), species=species, ingoing_mg_kg=0.0, **raw)
    assert _stands(record, Rule.RAW_KEEPING)[1].value == means


def test_over_four_weeks_in_the_cure():
    """Past 28 days certainty goes (common practice): cannot say."""
    for days, kind in ((28.0, Outcome.NOT_YET), (28.1, Outcome.CANNOT_SAY)):
        fridge = history(*((-24.0 * d, 38.0) for d in range(30)))
        record = brisket(now=at(0.0), fridge=fridge, **{**RAW, "put_in_cure_at": at(-24.0 * days), "out_at": None})
        assert verdict(record).kind is kind


def test_a_core_that_cannot_be():
    """250 °F in the meat is the pit: it earns nothing, and until it is corrected nothing can be said."""
    found = verdict(brisket((*COOK, (10.1, 250.0), *CHILL)))
    assert (found.kind, found.deciding.missing) == (Outcome.CANNOT_SAY, "corrected_reading")
    assert found.lethality == verdict(BRISKET).lethality
    boiling = (*COOK[:4], (6.0, 221.0))
    assert verdict(brisket(boiling, now=at(6.1), **ON_FIRE)).of(Rule.CORE_POSSIBLE) == ()


def test_readings_of_tomorrow_do_not_count():
    """What is said for later than now is no reading yet."""
    assert verdict(brisket(now=at(4.5), **ON_FIRE)).kind is Outcome.NOT_YET


def test_who_eats_is_asked():
    """Not known: it is missing, the stricter column counts, and the caution is given."""
    found = verdict(brisket(at_risk_eaters=None))
    assert [w.what for w in found.missing] == ["at_risk_eaters"]
    assert "at_risk_reheat" in [k.key for k in found.cautions]
    assert "at_risk_reheat" not in [k.key for k in verdict(BRISKET).cautions]


def test_the_gravest_comes_first():
    """The findings are in order of gravity and the first decides."""
    found = verdict(brisket(now=at(200.0), ingoing_mg_kg=250.0))
    order = [list(Outcome).index(f.means) for f in found.because]
    assert order == sorted(order, reverse=True)
    assert found.deciding.means is found.kind is Outcome.THROW_AWAY


def test_over_the_limit():
    """250 mg/kg cannot be called safe; nobody's word changes it."""
    found = verdict(brisket(ingoing_mg_kg=250.0, vouched=frozenset({"i_know_what_i_am_doing"})))
    assert (found.kind, found.deciding.rule) == (Outcome.CANNOT_SAY, Rule.NITRITE_CEILING)


def test_a_record_that_cannot_be_is_refused():
    """A time without zone, a reading that is no number."""
    with pytest.raises(Missing):
        verdict(brisket(core=[(at(0.0).replace(tzinfo=None), 60.0)]))
    with pytest.raises(OutOfRange):
        verdict(brisket(fridge=[(at(-1.0), float("nan"))]))


def test_worst():
    """From the best to the worst; what is not done yet is worse than what is to be eaten now."""
    assert worst([]) is Outcome.SAFE
    assert worst([Outcome.EAT_NOW, Outcome.NOT_YET]) is Outcome.NOT_YET
    assert worst(Outcome) is Outcome.THROW_AWAY
    assert worst([Outcome.SAFE, Outcome.CANNOT_SAY, Outcome.NOT_YET]) is Outcome.CANNOT_SAY


def test_a_floor_of_the_product():
    """The product's own floor counts where it is above the chart."""
    way = (*COOK[:5], (7.0, 158.0))
    assert verdict(brisket(way, now=at(7.1), **ON_FIRE, doneness_floor_c=c(160.0))).kind is Outcome.NOT_YET
    assert verdict(brisket(way, now=at(7.1), **ON_FIRE, doneness_floor_c=c(158.0))).kind is Outcome.SAFE


def test_cold_slices_are_warned_of_once_there_are_slices():
    """Heat them for anybody at risk: said from when it came off, unless nobody at risk eats."""
    for at_risk, off, said in (
        (None, at(10.2), True),
        (True, at(10.2), True),
        (False, at(10.2), False),
        (None, None, False),
    ):
        found = verdict(brisket(at_risk_eaters=at_risk, off_at=off, chill_started_at=None))
        assert ("at_risk_reheat" in [k.key for k in found.cautions]) is said


def test_the_lower_of_two_readings_says_which_rows_it_rests_on():
    """Met between 134 and 136 °F: it rests on the row of 134 °F, and that is pointed out."""
    met = ((0.0, 39.0), (2.0, 134.0), (2.01, 136.0), (2.02, 134.0), (5.0, 136.0))
    found = verdict(brisket(met, now=at(5.1), **ON_FIRE))
    assert found.lethality is not None
    assert found.lethality.deciding == history((2.02, 134.0), (5.0, 136.0))
    assert "low_rows_not_shown" in [k.key for k in found.cautions]


def test_who_eats_is_asked_with_what_is_missing():
    """Asked once, last, by its own name, and not where it is known."""
    assert [w.what for w in verdict(brisket(at_risk_eaters=None)).missing] == ["at_risk_eaters"]
    assert verdict(brisket(at_risk_eaters=True)).missing == ()
