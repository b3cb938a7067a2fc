"""The pages for cooks: everything that they say one may type is understood."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from bot.intents.intents import Question, Unclear
from bot.intents.read import read
from core.batch.batch import Phase
from tests.talk_lines import context

DOCS = Path(__file__).parents[2] / "docs"
PAGE, GERMAN_PAGE = ((DOCS / name).read_text("utf-8") for name in ("using.md", "using.de.md"))


def phrases(page: str) -> list[str]:
    """What a page says that one may type."""
    return sorted({said for said in re.findall(r"`([^`]+)`", page) if not said.endswith("…") and said != "9 of 10"})


PHRASES, GERMAN_PHRASES = phrases(PAGE), phrases(GERMAN_PAGE)


def understood(text: str, phase: str, language: str = "en") -> bool:
    """Whether every part of a line means something in that part of the week."""
    meant = read(text, replace(context(phase), language=language))
    return bool(meant) and not any(isinstance(intent, Question | Unclear) for intent in meant)


def test_the_page_gives_examples() -> None:
    """The page is read by this test: it gives dozens of phrases."""
    assert len(PHRASES) > 50


@pytest.mark.parametrize("text", PHRASES)
def test_what_the_page_says_is_understood(text: str) -> None:
    """Each phrase means something to the bot somewhere in the week."""
    assert any(understood(text, phase) for phase in ("none", *Phase))


@pytest.mark.parametrize("text", GERMAN_PHRASES)
def test_what_the_german_page_says_is_understood(text: str) -> None:
    """The same, by somebody who is spoken to in German."""
    assert any(understood(text, phase, "de") for phase in ("none", *Phase))
