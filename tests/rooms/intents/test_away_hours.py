"""Who is away from one hour to another, and who takes over for which days."""

import pytest

from bot.intents.intents import HandOver, Pause
from bot.intents.read import read
from tests.talk_lines import context, wall

CURE = context("curing")


@pytest.mark.parametrize(
    ("text", "since", "until"),
    [
        ("at work tomorrow 7 to 5", wall(3, 2, 7), wall(3, 2, 17)),
        ("im working 8 to 6 tomorrow", wall(3, 2, 8), wall(3, 2, 18)),
        ("out tomorrow 9 to 3", wall(3, 2, 9), wall(3, 2, 15)),
        ("working saturday 7-4", wall(3, 6, 7), wall(3, 6, 16)),
        ("busy tomorrow from 7 to 5", wall(3, 2, 7), wall(3, 2, 17)),
        ("at my moms sunday 10 to 8", wall(3, 7, 10), wall(3, 7, 20)),
        ("tomorrow im at work 7 till 5", wall(3, 2, 7), wall(3, 2, 17)),
        ("on shift 7pm to 7am", wall(3, 1, 19), wall(3, 2, 7)),
        ("im out tonight 7 to 10", wall(3, 1, 19), wall(3, 1, 22)),
        ("in a meeting 2 to 4", wall(3, 1, 14), wall(3, 1, 16)),
        ("not home tomorrow between 6 and 10pm", wall(3, 2, 18), wall(3, 2, 22)),
        ("away 8 to 6", None, wall(3, 1, 18)),
    ],
)
def test_hours_of_absence(text: str, since: object, until: object) -> None:
    """They are quiet hours of that day: no degrees, and no meal."""
    assert read(text, CURE) == [Pause(until, since=since)]  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "text", ["fridge was off 3 to 5", "gone 3 to 4 days", "work 9 to 5 every day", "out 2 to 3 in thick"]
)
def test_other_spans_are_no_absence(text: str) -> None:
    """A thing that was off, days, and what is so every day."""
    assert not any(isinstance(found, Pause) for found in read(text, CURE))


@pytest.mark.parametrize(
    ("text", "who", "at", "until"),
    [
        ("tell my wife to do wed and thu", "wife", wall(3, 3, 0), wall(3, 5, 0)),
        ("my son does mon and tue", "son", None, wall(3, 3, 0)),
        ("jo has the flips wed to fri", "jo", wall(3, 3, 0), wall(3, 6, 0)),
        ("ask jo to do sat and sun", "jo", wall(3, 6, 0), wall(3, 8, 0)),
        ("get my brother to cover the weekend", "brother", None, wall(3, 8, 0)),
    ],
)
def test_days_are_handed_over(text: str, who: str, at: object, until: object) -> None:
    """From the first of the days to the end of the last."""
    (found,) = read(text, CURE)
    assert isinstance(found, HandOver)
    assert (found.to, found.at, found.until) == (who, at, until)


@pytest.mark.parametrize(
    ("text", "at", "until"),
    [
        ("jen watches it 2 to 4", wall(3, 1, 14), wall(3, 1, 16)),
        ("jo has the fire from 6 to 8", wall(3, 1, 18), wall(3, 1, 20)),
        ("my son has the flips tomorrow 7 to 9", wall(3, 2, 7), wall(3, 2, 9)),
        ("dave minds the smoker 8pm to 10pm", wall(3, 1, 20), wall(3, 1, 22)),
    ],
)
def test_hours_are_handed_over(text: str, at: object, until: object) -> None:
    """From the first to the second."""
    (found,) = read(text, CURE)
    assert isinstance(found, HandOver)
    assert (found.at, found.until) == (at, until)
