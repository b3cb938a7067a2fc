"""The page for cooks: everything that it says one may type is understood."""

import re
from pathlib import Path

import pytest

from bot.intents.intents import Question, Unclear
from bot.intents.read import read
from core.batch.batch import Phase
from tests.talk_lines import context

PAGE = (Path(__file__).parents[2] / "docs/using.md").read_text("utf-8")
PHRASES = sorted(
    {said for said in re.findall(r"`([^`]+)`", PAGE) if not said.endswith("…") and said != "9 of 10"},
)


def understood(text: str, phase: str) -> bool:
    """Whether every part of a line means something in that part of the week."""
    meant = read(text, context(phase))
    return bool(meant) and not any(isinstance(intent, Question | Unclear) for intent in meant)


def test_the_page_gives_examples() -> None:
    """The page is read by this test: it gives dozens of phrases."""
    assert len(PHRASES) > 50


@pytest.mark.parametrize("text", PHRASES)
def test_what_the_page_says_is_understood(text: str) -> None:
    """Each phrase means something to the bot somewhere in the week."""
    assert any(understood(text, phase) for phase in ("none", *Phase))
