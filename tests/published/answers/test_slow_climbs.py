"""A core that climbs slowly, asked about by a stranger: 6 h from 50 to 130 °F for whole meat (FSIS Cooking Guideline of
2021, come-up time), 140 °F within 4 h for birds and opened meat (common practice, no source)."""

from pathlib import Path

import pytest

from bot.intents.sums.of_heat import between
from bot.intents.sums.told import told
from tests.published.answers.asked import answered_by, asked

CLIMBS = {
    "on since 7am now 1pm only 128 inside": ("failed", 6.0),
    "been smoking 5 hours and its 122 in the middle should i be worried": ("open", 5.0),
    "brisket took 7 hours to get to 130": ("failed", 7.0),
    "whole chicken on since noon its 4:30 and still 131": ("failed", 4.5),
    "injected butt 4.5 hrs on core 133 ok?": ("failed", 4.5),
    "5 h on the smoker and the middle is 132 f is that too slow": ("passed", 5.0),
}


def test_a_slow_climb_is_judged_by_its_clock(tmp_path: Path) -> None:
    """At the limit and not there yet is too late; what was opened or flies has the shorter clock."""
    found = asked(tmp_path, list(CLIMBS))
    assert [answered_by(facts) for facts in found] == ["sum:climb"] * len(CLIMBS)
    assert [(facts["status"], facts["hours"]) for facts in found] == list(CLIMBS.values())


def test_hours_of_a_night_are_not_cut_short() -> None:
    """«8 last night», and 9 of this morning: thirteen hours, not one; by the halves of the day where they are told."""
    assert between(told("sat out since 8 last night its now 55 f at 9")) == 13.0
    assert between(told("fire went out around 11 last night, found it at 6")) == 7.0
    assert between(told("on at 11:30, now 2:00")) == 2.5
    assert between(told("on at 23:00, now 9:00")) == 10.0


def test_bare_degrees_are_read_as_somebody_reads_them() -> None:
    """95 of who reads °F is 35 °C, and no finished meat; who weighs in kilos means °C; 135 is no core in °C."""
    line = "came off at 10:15, its now 12:45 and core is 95"
    assert told(line, reads_f=True).temperatures == pytest.approx((35.0,))
    assert told(line).temperatures == (95.0,)
    assert told("3 kg flat held at 65 for 2 min", reads_f=True).temperatures == (65.0,)
    assert told("135 at noon 70 at 1:45 pm").temperatures == pytest.approx((57.2, 21.1), abs=0.1)


def test_a_whole_bird_is_asked_about_in_its_skin(tmp_path: Path) -> None:
    """USDA FSIS, Let's Talk Turkey, roasting chart (CONFIRMED): 12 to 14 lb take 3 to 3.75 h at 325 °F, unstuffed."""
    whole, bare = asked(tmp_path, ["13 lb turkey at 325 how many hours", "13 lb turkey skinless at 325 how many hours"])
    assert whole["ready_h"] == pytest.approx(3.375, rel=1 / 7)
    assert bare["ready_h"] > 1.2 * whole["ready_h"]  # wet flesh sweats


def test_no_reading_without_its_time_makes_a_fall_quick(tmp_path: Path) -> None:
    """130 to 80 °F in 2 h breaks the 1.5 h (FSIS Appendix B, 1999), however cold it is «later»."""
    lines = ["140 at 1 pm, 70 at 3:30 pm and 40 later, ok?", "130 to 80 took 2 hours, then 40 in 3 more"]
    for facts in asked(tmp_path, lines):
        assert (answered_by(facts), facts["verdict"]) == ("sum:cooling", "cannot_say")
