"""Words for what a person's cooks taught of their cooker: said with the plan that starts from it."""

from math import exp

from bot.wording import numbers
from bot.wording.language import Words, say, say_n
from core.batch.assess import Assessment
from core.heat.cooker import Cooker, cooker
from core.person import Habit, Person, Runs
from core.units import fahrenheit_from_celsius

WORTH_K = 1.0  # of the air at the meat against the pit's probe
WORTH = 0.06  # of the film
WORTH_SD = 0.35  # of the wetness: its figure says nothing to a cook
NAMED = Words(
    {
        "ceramic": "your ceramic cooker",
        "steel": "your steel smoker",
        "kettle": "your kettle",
        "offset": "your offset",
        "pellet": "your pellet cooker",
        "gas": "your gas cooker",
        "electric": "your electric smoker",
    }
)


def by_cooks(a: Assessment) -> str:
    """«By 2 cooks on your kettle: at the meat it is 4 °C cooler than the pit probe says; the air is wet.»"""
    runs = a.person.learned.of_cooker(a.batch.setup.cooker)
    if runs is None or a.batch.off_at is not None:
        return ""
    told = [words for words in _told(runs, cooker(runs.cooker), a.person) if words]
    return say_n(
        "By {cooks} cook on {cooker}: {told}. The hours count on that.",
        "By {cooks} cooks on {cooker}: {told}. The hours count on that.",
        runs.cooks,
        cooks=runs.cooks,
        cooker=NAMED[runs.cooker],
        told="; ".join(told) or say("it runs as such cookers do"),
    )


def _told(runs: Runs, kind: Cooker, person: Person) -> tuple[str, str, str]:
    known = {habit.name: habit for habit in runs.habits}
    none = Habit("")
    return (
        _offset(known.get("pit", none).mean * kind.pit_offset_sd, person),
        _film(exp(known.get("film", none).mean * kind.film.sd)),
        _wet(known.get("dew", none).mean),
    )


def _offset(kelvin: float, person: Person) -> str:
    if abs(kelvin) < WORTH_K:
        return ""
    apart = _degrees(abs(kelvin), person)
    if kelvin < 0.0:
        return say("at the meat it is about {apart} cooler than the pit probe says", apart=apart)
    return say("at the meat it is about {apart} hotter than the pit probe says", apart=apart)


def _degrees(kelvin: float, person: Person) -> str:
    if person.units.temperature == "f":
        return f"{fahrenheit_from_celsius(kelvin) - fahrenheit_from_celsius(0.0):.0f} °F"
    return f"{kelvin:.0f} °C"


def _film(factor: float) -> str:
    if abs(factor - 1.0) < WORTH:
        return ""
    if factor > 1.0:
        return say("its air heats {share} harder than usual", share=numbers.share(factor - 1.0))
    return say("its air heats {share} softer than usual", share=numbers.share(1.0 - factor))


def _wet(mean: float) -> str:
    if abs(mean) < WORTH_SD:
        return ""
    return say("its air is wetter than usual") if mean > 0.0 else say("its air is drier than usual")
