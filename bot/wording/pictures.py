"""What is written on pictures."""

from dataclasses import fields, replace
from datetime import date
from math import floor
from typing import TypeVar

from bot.labels import ChillWords, CookWords, CureWords
from bot.wording import language, numbers
from bot.wording.language import later, say
from core.batch.assess import Assessment
from core.units import celsius_from_fahrenheit

Written = TypeVar("Written", CookWords, CureWords, ChillWords)
Stages = tuple[tuple[float, float], ...]  # hours since it fell below the first corner, °F
NOTHING = later("Nothing to show yet")
COOK = CookWords(
    temperature=later("Temperature"),
    core=later("core"),
    pit=later("pit"),
    expected=later("expected"),
    band=later("8 of 10"),
    pit_set=later("pit as set"),
    target=later("off at"),
    ready=later("ready about"),
    stall=later("stall"),
    wrap=later("wrapped"),
    wrap_by=later("wrap by"),
    now=later("now"),
    deadline=later("off by"),
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
    core=later("core"),
    expected=later("expected"),
    band=later("8 of 10"),
    too_warm=later("too warm"),
    now=later("now"),
)
# FSIS Appendix B option 1, and the Food Code
RULES = (
    (later("in 1.5 + 5 h"), ((0.0, 130.0), (1.5, 80.0), (6.5, 40.0))),
    (later("in 2 + 4 h"), ((0.0, 135.0), (2.0, 70.0), (6.0, 41.0))),
)


def said(words: Written) -> Written:
    """What is written on a picture, in the language of the turn."""
    return replace(words, **{field.name: say(getattr(words, field.name)) for field in fields(words)})


def days() -> tuple[str, ...]:
    """The short names of the days, Monday first."""
    return tuple(language.weekday(date(2024, 1, number)) for number in range(1, 8))  # a Monday began that year


def cook_words(a: Assessment) -> CookWords:
    """The words of a cook, with the target as it is told everywhere."""
    words = said(COOK)
    return replace(words, target=f"{words.target} {numbers.temperature(a.batch.setup.target_c, a.person)}")


def cook_title(a: Assessment) -> str:
    """The title of a cook."""
    return say("«{name}»: the cook so far and ahead", name=a.batch.name)


def rules(a: Assessment) -> tuple[tuple[str, Stages], ...]:
    """The rules, each named by its corners in the person's unit."""
    return tuple((f"{_corners(stages, a)} {say(hours)}", stages) for hours, stages in RULES)


def _corners(stages: Stages, a: Assessment) -> str:
    """«54-26-4 °C», no corner above itself, or «130-80-40 °F» as the rule is printed."""
    if a.person.units.temperature == "f":
        return "-".join(f"{f:.0f}" for _, f in stages) + " °F"
    return "-".join(f"{floor(celsius_from_fahrenheit(f) + numbers.WITHIN_K):.0f}" for _, f in stages) + " °C"


def chill_title(a: Assessment) -> str:
    """The title of a chill."""
    return say("«{name}»: the chill against the rule", name=a.batch.name)


def cure_title(a: Assessment) -> str:
    """The title of a cure."""
    return say("«{name}»: how far the cure has come", name=a.batch.name)
