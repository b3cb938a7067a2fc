"""Every published cooling option: FSIS Appendix B (1999, 2021), FDA Food Code 3-501.14, 3 CCR 910.15."""

import pytest

from core.safety.cooling import judge_cooling
from core.safety.cooling_rules import Use, cooling_rules, judged_rules
from core.safety.findings import Outcome, Status
from tests.records import at, history, table

ROWS = table("cooling_options")
MINUTE = 1.0 / 60.0
JUDGED = list(judged_rules())


def test_the_package_holds_every_row_as_printed():
    """The package's table is the published one with columns of its own in front: nothing was dropped or changed."""
    kept = {rule.option: rule for rule in cooling_rules()}
    assert kept.keys() == {row["option_id"] for row in ROWS}
    for row in ROWS:
        printed = [_stage(row, name) for name in ("s1", "s2") if row[f"{name}_from_F"] not in ("", "ambient")]
        found = [(s.from_f, s.to_f, s.max_h) for s in kept[row["option_id"]].stages]
        assert (found, kept[row["option_id"]].row_status) == (printed, row["status"])


def _stage(row, name):
    return tuple(float(row[f"{name}_{end}"]) for end in ("from_F", "to_F", "max_h"))


def _on_time(rule, late=0.0):
    """Readings exactly at the limits of a rule; its last one `late` hours after its limit."""
    hours, points = 0.0, [(0.0, rule.stages[0].from_f)]
    for stage in rule.stages:
        begins = 0.0 if stage.from_f == rule.stages[0].from_f else hours
        hours = begins + stage.max_h
        points.append((hours, stage.to_f))
    points[-1] = (points[-1][0] + late, points[-1][1])
    return history(*points)


@pytest.mark.parametrize("rule", JUDGED, ids=lambda r: r.key)
def test_met_at_the_limit(rule):
    """A record that reads each limit at the last minute meets the rule."""
    found = judge_cooling(_on_time(rule), 100.0, 250.0, at(48.0)).of(rule.key)
    assert found.clock is Status.PASSED


@pytest.mark.parametrize("rule", JUDGED, ids=lambda r: r.key)
def test_missed_a_minute_later(rule):
    """A minute later it is not met."""
    found = judge_cooling(_on_time(rule, late=MINUTE), 100.0, 250.0, at(48.0)).of(rule.key)
    assert found.clock in (Status.FAILED, Status.UNKNOWN)


@pytest.mark.parametrize("rule", JUDGED, ids=lambda r: r.key)
@pytest.mark.parametrize("place", [0, 1])
def test_each_stage_counts(rule, place):
    """Each stage alone, over its limit by a quarter of an hour while the other is quick, fails the rule."""
    first, second = rule.stages
    hours = [min(first.max_h, 0.5), min(first.max_h, 0.5) + 1.0]
    if place == 0:
        hours = [first.max_h + 0.25, first.max_h + 0.5]
    else:
        hours[1] = (0.0 if second.from_f == first.from_f else hours[0]) + second.max_h + 0.25
    record = history((0.0, first.from_f), (hours[0], first.to_f), (hours[1], second.to_f))
    judged = judge_cooling(record, 100.0, 250.0, at(48.0)).of(rule.key)
    assert judged.stages[place].status is Status.FAILED
    assert judged.stages[1 - place].status is Status.PASSED


@pytest.mark.parametrize("rule", JUDGED, ids=lambda r: r.key)
def test_every_deadline_counts_from_the_start_of_its_stage(rule):
    """While it is hot, each stage that starts now ends its hours from now."""
    record = history((0.0, rule.stages[0].from_f))
    judged = judge_cooling(record, 100.0, 250.0, at(0.1)).of(rule.key)
    assert [s.deadline for s in judged.stages] == [at(stage.max_h) for stage in rule.stages]
    assert [s.status for s in judged.stages] == [Status.OPEN, Status.OPEN]


def test_what_no_home_can_show_is_explained_only():
    """Rows that ask for brine strength, surface readings or partial cooking are kept, and judge nothing."""
    explained = {rule.option for rule in cooling_rules() if rule.use is Use.EXPLAINED}
    assert explained == {"CA-910.15-b", "FSIS2021-1.4", "FDA-3-501.14B", "FSIS2021-2.x"}


def test_the_2021_rows_repeat_those_of_1999():
    """FSIS2021-1.1 and 1.2 hold the figures of the 1999 rows that are judged: they need no judgement of their own."""
    by_option = {rule.option: rule.stages for rule in cooling_rules()}
    assert by_option["FSIS2021-1.1"] == by_option["FSIS1999-1"]
    assert by_option["FSIS2021-1.2"] == by_option["FSIS1999-2"]


def test_the_15_h_row_and_its_conditions():
    """1999: 100 mg/kg nitrite. 2021 (from memory): also 250 mg/kg ascorbate. Each is met at its limit, not below."""
    record = history((0.0, 130.0), (5.0, 80.0), (15.0, 45.0))
    kinds = {
        (100.0, 250.0): Outcome.SAFE,
        (100.0, 249.9): Outcome.CANNOT_SAY,
        (100.0, None): Outcome.CANNOT_SAY,
        (None, None): Outcome.CANNOT_SAY,
        (99.9, 250.0): Outcome.THROW_AWAY,
        (0.0, None): Outcome.THROW_AWAY,
    }
    for (nitrite, ascorbate), kind in kinds.items():
        assert judge_cooling(record, nitrite, ascorbate, at(16.0)).kind is kind
