"""What is written on pictures."""

from dataclasses import fields, replace
from datetime import date
from typing import TypeVar

from bot.labels import ChillWords, CookWords, CureWords
from bot.wording import language
from bot.wording.language import later, say
from core.batch.assess import Assessment

Written = TypeVar("Written", CookWords, CureWords, ChillWords)
NOTHING = later("Nothing to show yet")
COOK = CookWords(
    temperature=later("Temperature"),
    core=later("core, read"),
    pit=later("pit, read"),
    expected=later("core, expected"),
    band=later("8 of 10 cooks"),
    pit_set=later("pit as set"),
    target=later("off at"),
    ready=later("ready"),
    stall=later("stall"),
    wrap=later("wrapped"),
    now=later("now"),
    deadline=later("meal"),
)
CURE = CureWords(
    now=later("Slice now"),
    end=later("Slice when it comes out"),
    now_mark=later("now"),
    end_mark=later("out"),
    pink=later("pink"),
    perhaps=later("perhaps"),
    grey=later("grey"),
    all_pink=later("pink all through"),
    fat=later("fat or skin"),
    nitrite=later("Nitrite in the middle"),
    salt=later("Salt in the middle"),
    days=later("Days in the cure"),
    pink_from=later("pink from"),
    salt_wanted=later("wanted"),
    expected=later("expected"),
    band=later("8 of 10 pieces"),
)
CHILL = ChillWords(
    temperature=later("Temperature"),
    core=later("core, read"),
    expected=later("core, expected"),
    band=later("8 of 10"),
    too_warm=later("too warm"),
    now=later("now"),
)
# (hours since it fell below the first corner, °F): FSIS Appendix B option 1, and the Food Code
RULES = (
    (later("130-80-40 °F in 1.5 + 5 h"), ((0.0, 130.0), (1.5, 80.0), (6.5, 40.0))),
    (later("135-70-41 °F in 2 + 4 h"), ((0.0, 135.0), (2.0, 70.0), (6.0, 41.0))),
)


def said(words: Written) -> Written:
    """What is written on a picture, in the language of the turn."""
    return replace(words, **{field.name: say(getattr(words, field.name)) for field in fields(words)})


def days() -> tuple[str, ...]:
    """The short names of the days, Monday first."""
    return tuple(language.weekday(date(2024, 1, number)) for number in range(1, 8))  # a Monday began that year


def cook_title(a: Assessment) -> str:
    """The title of a cook."""
    return say("«{name}»: the cook so far and ahead", name=a.batch.name)


def chill_title(a: Assessment) -> str:
    """The title of a chill."""
    return say("«{name}»: the chill against the rule", name=a.batch.name)


def cure_title(a: Assessment) -> str:
    """The title of a cure."""
    return say("«{name}»: how far the cure has come", name=a.batch.name)
