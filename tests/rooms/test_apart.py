"""Pictures and PDFs are made in a process of their own: the bot stays small, whatever befalls the other."""

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from bot import apart as room
from bot.apart import NotMade, apart
from tests.rooms.test_charts import ALL, COOK_WORDS, FRAME, FULL_COOK

ROOT = Path(__file__).parents[2]
HERE = """
import sys
from datetime import UTC, datetime
from tests.rooms.test_pictures import on_the_fire
from bot import pictures
from bot.paper import Paper
from bot.papers import forms
assert pictures.drawn(on_the_fire(9.0), "cook").png.startswith(b"\\x89PNG")
assert forms.apart("bot.papers.sheet:sheet", Paper("Ham", (), (), (), datetime.now(UTC), "{page}")).startswith(b"%PDF")
print([name for name in sys.modules if name in ("matplotlib", "fpdf")])
"""


def test_a_picture_is_the_same_as_drawn_here() -> None:
    """Every byte of it: nothing is lost on the way there and back."""
    assert apart("bot.charts.cook:draw", FULL_COOK, COOK_WORDS, FRAME) == ALL["a cook"](FRAME)


def test_nothing_that_draws_is_loaded_here(tmp_path: Path) -> None:
    """A process that draws a picture, started elsewhere, has not loaded the drawing library afterwards."""
    env = os.environ | {"PYTHONPATH": str(ROOT)}
    ran = subprocess.run(
        [sys.executable, "-c", HERE], env=env, cwd=tmp_path, capture_output=True, text=True, check=True
    )
    assert ran.stdout.strip() == "[]"


def test_a_process_that_is_killed_costs_the_file_alone(caplog: pytest.LogCaptureFixture) -> None:
    """As where the system ends it for want of memory: an error here, and a line for the keeper."""
    with pytest.raises(NotMade):
        apart("signal:raise_signal", signal.SIGKILL)
    assert "broke off apart (-9)" in caplog.text


def test_a_fault_is_told_without_its_words(caplog: pytest.LogCaptureFixture) -> None:
    """The keeper reads its kind and place, and nothing that somebody wrote."""
    with pytest.raises(NotMade):
        apart("fractions:Fraction", "the salami of Ida")
    assert "ValueError" in caplog.text
    assert "fractions.py" in caplog.text
    assert "salami" not in caplog.text


def test_what_hangs_is_ended(monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture) -> None:
    """After its time it is over, and the next may begin."""
    monkeypatch.setattr(room, "PATIENCE", 0.3)
    with pytest.raises(NotMade):
        apart("time:sleep", 3600)
    assert "took longer" in caplog.text
    monkeypatch.setattr(room, "PATIENCE", 30.0)
    assert apart("builtins:bytes", 3) == b"\0\0\0"
