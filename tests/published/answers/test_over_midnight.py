"""A cooling that is told by its clocks, from an evening over midnight into the morning (FSIS Appendix B, 1999)."""

from pathlib import Path

from tests.published.answers.asked import asked

FALLS = "cured ham was 130 at 5pm, 80 at 8.30, and 46 now at 6am, in the rules?"


def test_each_clock_comes_after_the_one_before(tmp_path: Path) -> None:
    """Thirteen hours, of which three and a half to 80 °F: no hour of the morning stands before one of the evening."""
    (facts,) = asked(tmp_path, [FALLS])
    assert facts["hours"] == 13.0
    assert facts["verdict"] == "cannot_say"
