"""What holds of every mishap: a fire that is out, a power cut, a counter, a warm fridge, a leak, a doubled cure."""

from dataclasses import replace
from datetime import timedelta
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.safety.findings import Outcome
from core.safety.fire_out import FireOut, judge_fire_out
from core.safety.history import Reading
from core.safety.incidents import judge_incident, needed
from core.safety.ledger import verdict
from core.safety.left_out import (
    Counter,
    Leak,
    PowerCut,
    Twice,
    judge_leak,
    judge_left_out,
    judge_power_cut,
    judge_twice,
)
from core.safety.record import Incident
from core.units import celsius_from_fahrenheit, fahrenheit_from_celsius
from tests.records import BRISKET, at

GRAVITY = list(Outcome)
HOURS = st.floats(0.0, 60.0)
CORES = st.floats(20.0, 210.0).map(celsius_from_fahrenheit)
ROOMS = st.floats(0.0, 45.0)
MORE = st.floats(0.0, 30.0)
MAYBE = st.sampled_from([None, False, True])
WHERE = st.sampled_from(["fridge", "freezer_full", "freezer_half"])
FIRES = st.builds(
    FireOut,
    core=st.none() | CORES,
    hours_below=st.none() | st.floats(0.0, 8.0),
    reached=st.booleans(),
    hours_since_on=st.none() | st.floats(0.0, 10.0),
    hours_in_all=st.none() | st.floats(0.0, 10.0),
    delicate=st.booleans(),
    again=st.just(False),
)
CUTS = st.builds(PowerCut, st.none() | HOURS, WHERE, MAYBE, st.none() | CORES, MAYBE, st.none() | st.floats(-5.0, 40.0))
FACTS = {
    "power_cut": {"hours": HOURS, "door_shut": st.booleans(), "core_c": CORES, "where": WHERE, "room_c": ROOMS},
    "left_out": {"hours": HOURS, "room_c": ROOMS, "core_c": CORES},
    "warm_fridge": {"hours": HOURS, "room_c": st.floats(4.5, 45.0)},
    "warm_brine": {"hours": HOURS, "room_c": st.floats(4.5, 45.0)},
    "leaked": {"lost_fraction": st.floats(0.0, 1.0), "unnoticed_days": st.floats(0.0, 9.0)},
    "dosed_twice": {"mg_kg": st.floats(50.0, 600.0)},
}  # fmt: skip


def _grave(finding):
    return GRAVITY.index(finding.means)


@given(FIRES, MORE)
def test_a_longer_time_without_fire_is_never_kinder(fire, more):
    """Longer below, longer on, longer in the danger zone in all: each alone never makes it better."""
    for name in ("hours_below", "hours_since_on", "hours_in_all"):
        if getattr(fire, name) is not None:
            longer = replace(fire, **{name: getattr(fire, name) + more})
            assert _grave(judge_fire_out(longer)) >= _grave(judge_fire_out(fire))


@given(FIRES, MORE)
def test_a_core_that_fell_further_is_never_kinder(fire, more):
    """Once it was hot: found colder it is not better."""
    if fire.core is not None:
        hot = replace(fire, reached=True)
        assert _grave(judge_fire_out(replace(hot, core=hot.core - more))) >= _grave(judge_fire_out(hot))


@given(FIRES)
def test_what_nobody_knows_of_a_fire_is_never_kinder(fire):
    """Without the core, the hours, or wholeness of the meat, it is no better than the best that it can be."""
    best = replace(fire, hours_below=0.0, hours_since_on=0.0)
    assert _grave(judge_fire_out(replace(best, hours_below=None))) >= _grave(judge_fire_out(best))
    assert _grave(judge_fire_out(replace(best, hours_since_on=None))) >= _grave(judge_fire_out(best))
    assert _grave(judge_fire_out(replace(fire, delicate=True))) >= _grave(judge_fire_out(replace(fire, delicate=False)))
    assert judge_fire_out(replace(fire, core=None)).means is Outcome.CANNOT_SAY


@given(FIRES)
def test_a_fire_did_no_harm_only_where_the_core_is_still_hot_or_cold(fire):
    """Between 40 and 140 °F nothing that is told of it is safe before 140 °F was read again."""
    found = judge_fire_out(fire)
    assert found.means is not Outcome.SAFE or not 40.0 < fahrenheit_from_celsius(fire.core) < 139.999999


@pytest.mark.parametrize("limit", [40.0, 110.0, 140.0])
@given(FIRES, st.sampled_from([-0.01, 0.0, 0.01]))
def test_a_fire_is_judged_alike_in_fahrenheit_and_celsius(limit, fire, nudge):
    """On each boundary and beside it."""
    celsius = celsius_from_fahrenheit(limit + nudge)
    again = celsius_from_fahrenheit(fahrenheit_from_celsius(celsius))
    assert judge_fire_out(replace(fire, core=celsius)) == judge_fire_out(replace(fire, core=again))
    beside = {"hours_below": 1.0, "hours_since_on": 3.0, "hours_in_all": None, "delicate": False}
    for reached in (False, True):
        on, here = (
            judge_fire_out(replace(fire, core=celsius_from_fahrenheit(f), reached=reached, **beside)).detail
            for f in (limit, limit + nudge)
        )
        # 40 °F itself is cold, 110 and 140 °F themselves are warm
        assert (on == here) or (nudge > 0.0 if limit == 40.0 else nudge < 0.0)


@given(CUTS, MORE)
def test_a_worse_power_cut_is_never_kinder(cut, more):
    """Longer off, a door that was opened or that nobody watched, a warmer core, a warmer room."""
    found = _grave(judge_power_cut(cut))
    if cut.hours is not None:
        assert _grave(judge_power_cut(replace(cut, hours=cut.hours + more))) >= found
        assert _grave(judge_power_cut(replace(cut, hours=None))) >= found
    if cut.core is not None:
        assert _grave(judge_power_cut(replace(cut, core=cut.core + more))) >= found
    if cut.air is not None:
        assert _grave(judge_power_cut(replace(cut, air=cut.air + more))) >= found
    shut = _grave(judge_power_cut(replace(cut, door_shut=True)))
    for door in (None, False):
        assert _grave(judge_power_cut(replace(cut, door_shut=door))) >= shut


@given(st.none() | HOURS, st.none() | st.floats(-5.0, 40.0), st.none() | CORES, MORE)
def test_a_longer_or_warmer_counter_is_never_kinder(hours, air, core, more):
    """Each alone never makes it better."""
    told = Counter(hours, air, core)
    found = _grave(judge_left_out(told))
    worse = [replace(told, hours=None)]
    worse += [] if hours is None else [replace(told, hours=hours + more)]
    worse += [] if air is None else [replace(told, air=air + more)]
    worse += [] if core is None else [replace(told, core=core + more), replace(told, core=None)]
    assert all(_grave(judge_left_out(each)) >= found for each in worse)


@given(st.floats(0.0, 1.0), st.floats(0.0, 9.0), st.floats(0.0, 9.0), st.booleans(), MORE)
def test_a_leak_that_was_seen_later_is_never_kinder(lost, day, unnoticed, wet, more):
    """The longer nobody saw it, the graver."""
    seen = Leak(lost, day, unnoticed, wet)
    assert _grave(judge_leak(replace(seen, unnoticed_days=unnoticed + more))) >= _grave(judge_leak(seen))


@given(st.floats(0.0, 600.0), st.floats(0.0, 100.0), MORE, MAYBE)
def test_more_of_a_doubled_cure_is_never_kinder(ingoing, hours, more, at_risk):
    """More nitrite, longer in it, in a rub and not in a brine, eaters at risk."""
    twice = Twice(ingoing, hours, wet=True)
    found = _grave(judge_twice(twice, 200.0, at_risk))
    assert _grave(judge_twice(replace(twice, ingoing=ingoing + more), 200.0, at_risk)) >= found
    assert _grave(judge_twice(replace(twice, hours_in=hours + more), 200.0, at_risk)) >= found
    assert _grave(judge_twice(replace(twice, wet=False), 200.0, at_risk)) >= found
    assert _grave(judge_twice(twice, 200.0, True)) >= found


@st.composite
def _told(draw):
    what = draw(st.sampled_from(sorted(FACTS)))
    facts = {name: draw(values) for name, values in FACTS[what].items() if draw(st.booleans())}
    return Incident(what, at(-draw(st.floats(1.0, 160.0))), facts)


def _contradicts(incident, record):
    """A leak that is told to be older than the cure: then the record is doubted, and the telling counts."""
    days = (incident.at - record.put_in_cure_at) / timedelta(days=1)
    return incident.facts.get("unnoticed_days", 0.0) > days


@settings(max_examples=300)
@given(_told(), st.booleans())
def test_a_fact_that_was_not_told_never_makes_it_safe(incident, wet):
    """Without any one of its facts a mishap may be a doubt, or graver, but it is not safe where it was not."""
    record = replace(BRISKET, wet=wet)
    before = judge_incident(incident, record)
    for gone in incident.facts:
        less = replace(incident, facts={name: value for name, value in incident.facts.items() if name != gone})
        clears = gone in ("core_c", "where")  # what only the thing itself, read, can say
        if not clears and not _contradicts(incident, record):
            assert judge_incident(less, record).means is not Outcome.SAFE or before.means is Outcome.SAFE


@settings(max_examples=300)
@given(_told(), st.booleans())
def test_every_dialogue_ends_in_a_verdict(incident, wet):
    """Answer «no idea» to all that is still asked, and nothing is asked any more; what is a doubt then is no «safe»."""
    record = replace(BRISKET, wet=wet)
    for _ in range(4):
        if not needed(incident, record):
            break
        incident = replace(
            incident, facts={**incident.facts, **dict.fromkeys(needed(incident, record)), "unknown": True}
        )
    assert needed(incident, record) == ()


@st.composite
def _fires(draw):
    """A cook whose fire went out somewhere on its way, with readings of core and pit."""
    hours = sorted(draw(st.lists(st.integers(1, 90), min_size=3, max_size=9, unique=True)))
    core = [Reading(at(0.0), 3.9)]
    for h in hours:
        core.append(Reading(at(h / 10.0), max(0.0, min(core[-1].celsius + draw(st.floats(-25.0, 30.0)), 95.0))))
    pit = [Reading(at(h / 10.0), draw(st.floats(40.0, 130.0))) for h in hours if draw(st.booleans())]
    out = Incident(
        "fire_out", at(draw(st.floats(0.1, 9.0))), {"hours": draw(st.floats(0.0, 4.0))} if draw(st.booleans()) else {}
    )
    return replace(
        BRISKET, core=tuple(core), pit=tuple(pit), off_at=None, chill_started_at=None, incidents=(out,),
        now=at(hours[-1] / 10.0) + timedelta(minutes=draw(st.integers(5, 120))),  # past the three minutes of rest
        intact=draw(st.booleans()),
    )  # fmt: skip


@settings(max_examples=200)
@given(_fires(), st.randoms(use_true_random=False))
def test_late_readings_of_a_fire_may_come_in_any_order(record, shuffled: Random):
    """Core and pit, shuffled and told twice: the same verdict with the same findings."""
    core, pit = list(record.core) * 2, list(record.pit) * 2
    shuffled.shuffle(core)
    shuffled.shuffle(pit)
    assert verdict(replace(record, core=tuple(core), pit=tuple(pit))) == verdict(record)


@settings(max_examples=200)
@given(_fires(), st.data())
def test_a_good_reading_that_was_not_taken_never_helps_a_fire(record, data):
    """Without a hot pit, or without a core at 140 °F, a fire is judged as gravely or more gravely; never as safe.

    A core after which it fell is left out here: it is what shows the fall, and a fall that nobody read is not judged.
    """
    fell = max((r.at for r in record.core if fahrenheit_from_celsius(r.celsius) < 130.0), default=record.now)
    good = [r for r in record.core if fahrenheit_from_celsius(r.celsius) >= 140.0 and r.at > fell]
    pits = [r for r in record.pit if fahrenheit_from_celsius(r.celsius) >= 200.0]
    gone = data.draw(st.sampled_from(good + pits)) if good + pits else None
    less = replace(
        record, core=tuple(r for r in record.core if r is not gone), pit=tuple(r for r in record.pit if r is not gone)
    )
    assert verdict(less).kind is not Outcome.SAFE or verdict(record).kind is Outcome.SAFE


@settings(max_examples=200)
@given(_fires())
def test_an_hour_more_never_makes_a_fire_safe(record):
    """Waiting without a reading proves nothing."""
    later = replace(record, now=record.now + timedelta(hours=1))
    assert verdict(later).kind is not Outcome.SAFE or verdict(record).kind is Outcome.SAFE
