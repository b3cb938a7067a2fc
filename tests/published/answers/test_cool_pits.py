"""A pit cooler than that of red meat is reckoned as it is told, or said to be too cool; never as if it were another."""

from pathlib import Path

from tests.published.answers.asked import asked


def test_a_cool_pit_is_reckoned_as_told(tmp_path: Path) -> None:
    """Cooler is longer, and bacon of no told pit goes by its own plan's 93 °C (core/plan/products/bacon.toml)."""
    at_a_pit = [f"belly 2 kg at {pit} c how many hours" for pit in (80, 107, 93)]
    lines = [*at_a_pit[:2], "belly 2 kg how long on the smoker", at_a_pit[2]]
    cool, warm, own, plan = (found["ready_h"] for found in asked(tmp_path, lines))
    assert cool > 1.5 * warm
    assert warm < own
    assert abs(own - plan) < 0.1 * plan


def test_a_pit_that_never_brings_it_there_is_refused(tmp_path: Path) -> None:
    """A core stays below its pit: neither brisket to 90 °C in a pit of 82 °C nor smoked fish to 73 °C in 66 °C."""
    lines = ["brisket flat 2.7 kg at 82 c how long on the smoker", "salmon 1.2 kg at 66 c pit how long"]
    assert [found["refused"] for found in asked(tmp_path, lines)] == ["OutOfRange", "OutOfRange"]


def test_a_told_core_is_the_end(tmp_path: Path) -> None:
    """«until 203» takes longer than «until 150» at the same pit."""
    soon, late = asked(tmp_path, ["3 kg flat at 250 until 150 how long", "3 kg flat at 250 until 203 how long"])
    assert late["ready_h"] > soon["ready_h"] + 1.0
