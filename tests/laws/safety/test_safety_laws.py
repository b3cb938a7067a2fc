"""What holds of every record, whoever writes it and in whatever order. Hypothesis draws the cooks."""

from dataclasses import replace
from datetime import timedelta
from itertools import pairwise
from random import Random

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from core.safety.cooling import judge_cooling
from core.safety.cooling_rules import judged_rules
from core.safety.findings import Outcome, Status
from core.safety.history import Reading, coldest_at_each_time, ordered
from core.safety.ledger import verdict
from core.safety.lethality import BIRDS, MEAT, bird_table, dwell_table, earned, meat_table
from core.units import celsius_from_fahrenheit, fahrenheit_from_celsius
from tests.records import BRISKET, COLD_WEEK, at

FAR = timedelta(hours=200)
GRAVITY = list(Outcome)
TABLES = [meat_table(6.5), meat_table(7.0), bird_table("chicken"), bird_table("turkey"), bird_table("duck")]


def _rise(draw):
    """A core that rises while the fire burns, quickly or slowly: minutes and °F."""
    slow = draw(st.sampled_from([15, 25, 40, 120]))
    steps = draw(st.lists(st.tuples(st.integers(4, slow), st.floats(5.0, 60.0)), min_size=3, max_size=10))
    minutes, fahrenheit, points = 0, 38.0, [(0, 38.0)]
    for gap, gain in steps:
        minutes, fahrenheit = minutes + gap, min(fahrenheit + gain, 205.0)
        points.append((minutes, fahrenheit))
    return points


def _fall(draw, points):
    """The same core as it cools after it came off, in ice or in a drawer."""
    minutes, fahrenheit = points[-1]
    slow = draw(st.sampled_from([20, 45, 180]))
    for gap, share in draw(st.lists(st.tuples(st.integers(4, slow), st.floats(0.1, 0.8)), max_size=10)):
        minutes, fahrenheit = minutes + gap, 36.0 + (fahrenheit - 36.0) * (1.0 - share)
        points.append((minutes, fahrenheit))
    return points


def _readings(points):
    return tuple(Reading(at(minutes / 60.0), celsius_from_fahrenheit(f)) for minutes, f in points)


@st.composite
def cooks(draw):
    """A record of a cook whose fire burned: a rise, a fall, and any meat that the ledger knows."""
    rise = _rise(draw)
    off = rise[-1][0] / 60.0 + 0.02
    points = _fall(draw, list(rise))
    hours_after = draw(st.one_of(st.floats(0.0, 2.0), st.floats(2.0, 30.0)))
    return replace(
        BRISKET,
        species=draw(st.sampled_from(["beef", "pork", "turkey", "chicken", "duck", "fish"])),
        now=at(points[-1][0] / 60.0 + hours_after),
        core=_readings(points),
        off_at=at(off),
        chill_started_at=at(off + 0.5) if draw(st.booleans()) else None,
        intact=draw(st.booleans()),
        injected=draw(st.booleans()),
        at_risk_eaters=draw(st.sampled_from([None, False, True])),
        cured_centre_mg_kg=draw(st.sampled_from([None, 20.0, 150.0])),
        ascorbate_mg_kg=draw(st.sampled_from([None, 300.0])),
    )


HISTORIES = st.lists(
    st.tuples(st.integers(0, 2000), st.floats(-20.0, 100.0)), max_size=14, unique_by=lambda p: p[0]
).map(lambda points: tuple(Reading(at(m / 60.0), c) for m, c in points))


@settings(max_examples=300)
@given(cooks(), st.data())
def test_dropping_a_core_reading_never_turns_a_verdict_to_safe(record, data):
    """A reading that was never taken proves nothing: without it the verdict may become worse, but not safe.

    The fire burned in these cooks. A reading that shows that it went out is evidence of harm, and harm that
    nobody saw is known to nobody (docs/science/safety.md).
    """
    gone = data.draw(st.integers(0, len(record.core) - 1))
    less = replace(record, core=record.core[:gone] + record.core[gone + 1 :])
    before, after = verdict(record).kind, verdict(less).kind
    assert after is not Outcome.SAFE or before is Outcome.SAFE


@settings(max_examples=150)
@given(cooks())
def test_without_any_core_reading_nothing_is_safe(record):
    """However the rest of the record looks."""
    assert verdict(replace(record, core=())).kind is not Outcome.SAFE


@settings(max_examples=150)
@given(cooks())
def test_without_any_fridge_reading_nothing_is_safe(record):
    """A week of cure of which nobody read the fridge cannot be called safe."""
    assert verdict(replace(record, fridge=())).kind is not Outcome.SAFE


@settings(max_examples=150)
@given(cooks(), st.data())
def test_a_warm_fridge_never_makes_it_better(record, data):
    """One fridge reading more, above 40 °F, never lowers the gravity of the verdict."""
    hours, fahrenheit = data.draw(st.floats(-167.0, -1.0)), data.draw(st.floats(40.5, 95.0))
    warm = Reading(at(hours), celsius_from_fahrenheit(fahrenheit))
    assert _gravity(replace(record, fridge=(*COLD_WEEK, warm))) >= _gravity(record)


@settings(max_examples=150)
@given(cooks(), st.randoms(use_true_random=False))
def test_order_of_arrival_does_not_matter(record, shuffled: Random):
    """Readings that come late, or twice, give the same verdict with the same findings."""
    core, fridge = list(record.core) * 2, list(record.fridge)
    shuffled.shuffle(core)
    shuffled.shuffle(fridge)
    assert verdict(replace(record, core=tuple(core), fridge=tuple(fridge))) == verdict(record)


@settings(max_examples=150)
@given(cooks())
def test_stricter_facts_never_make_it_better(record):
    """Not intact, injected, eaters at risk: each can only make the verdict graver."""
    gentle = replace(record, intact=True, injected=False, at_risk_eaters=False)
    for change in ({"intact": False}, {"injected": True}, {"at_risk_eaters": True}, {"at_risk_eaters": None}):
        assert _gravity(replace(gentle, **change)) >= _gravity(gentle)


@settings(max_examples=150)
@given(cooks(), st.floats(0.0, 400.0), st.floats(0.0, 400.0))
def test_more_nitrite_in_the_tub_never_makes_it_better(record, one, other):
    """Of two doses the larger is never judged more kindly, whatever the centre holds."""
    less, more = sorted((one + 1.0, other + 1.0))
    assert _gravity(replace(record, ingoing_mg_kg=more)) >= _gravity(replace(record, ingoing_mg_kg=less))


@settings(max_examples=150)
@given(cooks(), st.floats(0.0, 60.0))
def test_waiting_never_makes_a_finished_chill_safe(record, hours):
    """Time alone proves nothing: what was not safe after the fire is not made safe by waiting without a reading."""
    assume(record.core[-1].celsius < 60.0)
    later = replace(record, now=record.now + timedelta(hours=hours))
    assert verdict(later).kind is not Outcome.SAFE or verdict(record).kind in (Outcome.SAFE, Outcome.NOT_YET)


def _gravity(record):
    return GRAVITY.index(verdict(record).kind)


@given(HISTORIES, st.sampled_from(TABLES), st.data())
def test_a_warmer_minute_never_earns_less(readings, table, data):
    """Any reading read warmer: the kill is never smaller."""
    assume(readings)
    place = data.draw(st.integers(0, len(readings) - 1))
    warmer = readings[place]._replace(celsius=readings[place].celsius + data.draw(st.floats(0.0, 4.9)))
    changed = (*readings[:place], warmer, *readings[place + 1 :])
    assert earned(changed, table).fraction >= earned(readings, table).fraction - 1e-12


@given(HISTORIES, st.sampled_from(TABLES), st.integers(1, 600), st.floats(30.0, 100.0))
def test_another_minute_never_takes_kill_away(readings, table, minutes, celsius):
    """What is read after the last reading adds or does nothing."""
    end = max((r.at for r in readings), default=at(0.0))
    more = (*readings, Reading(end + timedelta(minutes=minutes), celsius))
    assert earned(more, table).fraction >= earned(readings, table).fraction


@given(HISTORIES, st.sampled_from(TABLES))
def test_kill_is_never_more_than_by_the_coldest_table_row(readings, table):
    """The credit between two readings is at most the whole time at the lower of the two: checked by hand."""
    seen = coldest_at_each_time(ordered(readings))
    at_once = any(table.dwell(r.celsius) == 0.0 for r in seen)
    by_hand = 0.0
    for first, second in pairwise(seen):
        dwell = table.dwell(min(first.celsius, second.celsius))
        if dwell is not None:
            by_hand += (second.at - first.at).total_seconds() / max(dwell, table.shortest)
    found = earned(readings, table).fraction
    assert found <= by_hand + (1.0 if at_once else 0.0) + 1e-9
    assert at_once or found == pytest.approx(by_hand)


@given(st.sampled_from(sorted(MEAT | BIRDS)), st.floats(0.0, 0.12), st.floats(20.0, 100.0), st.floats(0.0, 5.0))
def test_the_dwell_never_grows_with_the_temperature(species, fat, celsius, more):
    """Warmer asks for less time, or the same; under the first row there is no time that is enough."""
    table = dwell_table(species, fat if species in BIRDS else None)
    cooler, warmer = table.dwell(celsius), table.dwell(celsius + more)
    assert warmer is not None or cooler is None
    assert cooler is None or (warmer is not None and warmer <= cooler)


@given(st.sampled_from(["chicken", "turkey"]), st.floats(0.0, 0.12), st.floats(57.0, 80.0))
def test_unknown_fat_is_never_kinder(species, fat, celsius):
    """The 12 % column asks for the longest time of all, at every temperature."""
    known, unknown = bird_table(species, fat).dwell(celsius), bird_table(species).dwell(celsius)
    assert (known is None) == (unknown is None)
    assert known is None or (unknown is not None and unknown >= known)


@given(HISTORIES, st.data())
def test_cooling_later_is_never_judged_more_kindly(readings, data):
    """Every reading but the first taken later, by the same factor: no stage that failed passes."""
    assume(len(readings) >= 2)
    falling = _falling(readings)
    slower = data.draw(st.floats(1.0, 3.0))
    stretched = tuple(Reading(falling[0].at + (r.at - falling[0].at) * slower, r.celsius) for r in falling)
    before, after = (judge_cooling(h, 150.0, None, at(40.0) + FAR) for h in (falling, stretched))
    for quick, slow in zip(before.rules, after.rules, strict=True):
        assert not (slow.clock is Status.PASSED and quick.clock is not Status.PASSED)


LIMITS = sorted({edge for rule in judged_rules() for stage in rule.stages for edge in (stage.from_f, stage.to_f)})


@given(HISTORIES, st.data())
def test_a_warmer_core_is_never_judged_more_kindly(readings, data):
    """A reading of a cooling core read warmer, up to the next limit of a rule: no rule passes that did not.

    Across a limit it is another matter: meat that was held at 130 °F or at 80 °F began that stage later.
    """
    assume(len(readings) >= 3)
    falling = list(_falling(readings))
    place = data.draw(st.integers(1, len(falling) - 1))
    next_limit = min((c for c in map(celsius_from_fahrenheit, LIMITS) if c > falling[place].celsius), default=100.0)
    ceiling = min(falling[place - 1].celsius, next_limit - 1e-3)
    assume(ceiling >= falling[place].celsius)
    warmer = [*falling]
    warmer[place] = falling[place]._replace(celsius=data.draw(st.floats(falling[place].celsius, ceiling)))
    before, after = (judge_cooling(h, 150.0, None, at(40.0) + FAR) for h in (falling, warmer))
    for cold, warm in zip(before.rules, after.rules, strict=True):
        assert not (warm.clock is Status.PASSED and cold.clock is not Status.PASSED)


def _falling(readings):
    """The same times with the temperatures in falling order: a core that cools."""
    times = sorted(r.at for r in readings)
    warm_first = sorted((r.celsius for r in readings), reverse=True)
    return tuple(Reading(t, c) for t, c in zip(times, warm_first, strict=True))


@pytest.mark.parametrize("limit", [*range(130, 166), *LIMITS, 110.0, 140.0])
@given(nudge=st.sampled_from([0.0, 0.01, -0.01]))
def test_fahrenheit_and_celsius_give_the_same_verdict_at_every_boundary(limit, nudge):
    """A limit typed in °F, stored in °C, shown in °F and typed again judges the same, on it and beside it."""
    typed = limit + nudge
    celsius = celsius_from_fahrenheit(typed)
    again = celsius_from_fahrenheit(fahrenheit_from_celsius(celsius))
    for table in TABLES:
        assert table.dwell(celsius) == table.dwell(again)
    meat = meat_table(6.5)
    row = meat.dwell(celsius_from_fahrenheit(float(limit)))
    assert (meat.dwell(celsius) == row) == (nudge >= 0.0 or row == meat.dwell(celsius_from_fahrenheit(limit - 1.0)))
    records = [
        replace(BRISKET, core=(*BRISKET.core[:5], Reading(at(10.0), c)), off_at=None, now=at(10.1))
        for c in (celsius, again)
    ]
    assert verdict(records[0]).kind is verdict(records[1]).kind
