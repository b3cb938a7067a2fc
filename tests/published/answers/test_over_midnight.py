"""A cooling that is told by its clocks, from an evening over midnight into the morning (FSIS Appendix B, 1999)."""

from pathlib import Path

import pytest

from tests.published.answers.asked import asked

TOLD = {
    # three and a half hours to 80 °F, nine and a half more
    "cured ham was 130 at 5pm, 80 at 8.30, and 46 now at 6am, in the rules?": (13.0, "cannot_say"),
    # the hour between is of the evening; from it to the morning it is fifteen, and 80 to 40 °F may take five
    "130 at 5pm, 80 at 6, 40 at 9am, in time?": (16.0, "throw_away"),
    # over midnight: the half that is told settles the one before it
    "130 at 10:35, 41 at 3am, ok?": (4.42, "cannot_say"),
    # five in the morning or in the evening: the longer counts
    "brisket 130 at 5, 41 at 7am, ok?": (14.0, "throw_away"),
}


@pytest.mark.parametrize("line", TOLD)
def test_each_clock_comes_after_the_one_before(line: str, tmp_path: Path) -> None:
    """No hour of the morning stands before one of the evening, and none is guessed to the unsafe side."""
    (facts,) = asked(tmp_path, [line])
    hours, verdict = TOLD[line]
    assert facts["hours"] == pytest.approx(hours, abs=0.01)
    assert facts["verdict"] == verdict
