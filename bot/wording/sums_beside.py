"""Two ways beside one another, in words: two pits, two thicknesses, several pieces, an hour that is wanted."""

from datetime import datetime
from math import ceil, floor

from bot.wording import numbers
from bot.wording.language import decimal, say
from core.heat.band import Band
from core.person import Person
from core.units import Celsius, Days, Hours, Metres


def two_pits(one: tuple[Band, Celsius], other: tuple[Band, Celsius], target: Celsius, person: Person) -> str:
    """Hours at one pit and at another, and what the hotter one saves."""
    cooler, hotter = sorted((one, other), key=lambda of: of[1])
    return say(
        "At {hot} about {quick}, at {low} about {slow}, until the core is {target}: some {saved} less.\n"
        "Between {hot_low} and {hot_high}, and between {low_low} and {low_high}. Hotter costs a little crust; the core that "
        "it has to reach stays.",
        hot=numbers.both(hotter[1], person),
        low=numbers.both(cooler[1], person),
        quick=numbers.hours(numbers.half(hotter[0].p50)),
        slow=numbers.hours(numbers.half(cooler[0].p50)),
        saved=numbers.hours(numbers.half(max(0.0, cooler[0].p50 - hotter[0].p50))),
        target=numbers.both(target, person),
        hot_low=numbers.hours(numbers.half_down(hotter[0].p10)),
        hot_high=numbers.hours(numbers.half_up(hotter[0].p90)),
        low_low=numbers.hours(numbers.half_down(cooler[0].p10)),
        low_high=numbers.hours(numbers.half_up(cooler[0].p90)),
    )


def side_by_side() -> str:
    """Several pieces over one fire."""
    return say("Side by side they take as long as the heaviest one alone, with air around each; read them all.")


def two_thick(one: tuple[Metres, Days], other: tuple[Metres, Days], rule: tuple[Days, Days], person: Person) -> str:
    """Days of one thickness and of another."""
    thin, thick = sorted((one, other))
    quick, slow = sorted(rule)
    return say(
        "{thin} takes {few}, {thick} takes {many}, until 9 in 10 are pink in the middle: {times} times as long.\n"
        "By the trade's rule, mm squared over 200, {quick} and {slow}. In one tub the thickest piece says when.",
        thin=numbers.length(thin[0], person),
        thick=numbers.length(thick[0], person),
        few=numbers.days(thin[1]),
        many=numbers.days(thick[1]),
        times=decimal(thick[1] / thin[1], 1),
        quick=numbers.days(ceil(quick)),
        slow=numbers.days(ceil(slow)),
    )


def in_time(hours: tuple[Hours, Hours], ready: Band, at: tuple[datetime, datetime], person: Person) -> str:
    """Whether the hours between going on and the rest before the meal are enough; so many, and those of the rest."""
    has, rests = hours
    if has >= ready.p90:
        first = say("Yes, most likely.")
    elif has >= ready.p50:
        first = say("Perhaps: it is likelier than not, and no more.")
    elif has >= ready.p10:
        first = say("Rather not: it is in time in fewer than half of such cooks.")
    else:
        first = say("No: that is too short.")
    on, eat = at
    return (
        first
        + "\n"
        + say(
            "On at {on} it has {has} before {rests} of rest and the meal at {eat}; such a piece takes about {usual}, up to {slow}.\n"
            "Foil and a hotter pit gain hours; ready early it is held at {hot} or above.",
            on=numbers.clock(on, person),
            eat=numbers.clock(eat, person),
            has=numbers.hours(floor(has * 4) / 4),
            rests=numbers.hours(rests),
            usual=numbers.hours(numbers.half(ready.p50)),
            slow=numbers.hours(numbers.half_up(ready.p90)),
            hot=numbers.both(60.0, person),
        )
    )
