"""Readings that cannot be true: asked about, not swallowed.

A reading is compared with what the members expect at its time. What falls far outside is tried against
the slips that cooks make: °F for °C, a digit slipped, pit and meat swapped, a probe in the air, a wrong
time. The slip that brings it home is suggested; none is assumed. What no slip explains is doubted only
where meat cannot do it: a thick piece on a cool fire may be far behind what is expected, but it does not
leap, fall, or run ahead of every member.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import permutations
from typing import Final, Literal

import numpy as np

from core.heat.band import Band, band
from core.heat.cook import Cook, History, Probe, Seen
from core.heat.filter import STEP_S, fitted
from core.heat.pit import course
from core.heat.prior import members
from core.heat.smoking import Change, Run, simulate, wrappings
from core.units import Celsius, celsius_from_fahrenheit, fahrenheit_from_celsius

Reason = Literal["unit", "digits", "swapped", "air", "jump", "clock", "range"]

CORE_LOW_C, CORE_HIGH_C = -5.0, 101.0
PIT_SEEN_LOW_C, PIT_SEEN_HIGH_C = -20.0, 350.0
MARGIN_K: Final = 5.0  # ahead of the members' own spread before a slip of the hand is looked for
BEHIND_K: Final = 10.0  # the same behind it: a thick piece on a cool fire lags more often. Judgement
AHEAD_K: Final = 10.0  # the same where no slip explains it: nothing runs so far ahead. Judgement
FALL_K: Final = 8.0  # more than a stall's dip, an opened lid or another place takes from the middle. Judgement
LATER_K: Final = 5.0  # what two home thermometers, a stall's dip and another place make. Judgement
PIT_NEAR_K: Final = 12.0
UNDER_MEAT_K: Final = 20.0  # under the core: a pit that died hours ago, or a slip. Judgement
JUMP_K: Final = 5.6  # 10 °F within 10 minutes
JUMP_S: Final = 600.0
SAME_TIME_S: Final = 900.0
WHOLE: Final = 0.03  # of a degree, for what went through two units
SLIP_H: Final = (1.0, 2.0, 12.0)  # hours by which clocks and AM/PM slip


@dataclass(frozen=True)
class Doubt:
    """Why a reading is doubted, what was expected, and what was probably meant.

    `suggested_c` and `suggested_probe` are None where nothing fits: then it is asked again.
    """

    reason: Reason
    seen: Seen
    expected: Band
    suggested_c: Celsius | None = None
    suggested_probe: Probe | None = None
    suggested_seconds: float | None = None


def doubt(cook: Cook, history: History, new: Seen) -> Doubt | None:
    """The doubt about a new reading, or None where it may well be true."""
    if new.probe == "pit":
        return _pit_doubt(cook, history, new)
    expected = _expected(cook, history)
    here = _spread(expected, new.seconds)
    if new.seconds < 0 or _past_a_later_one(history, new):
        return Doubt("clock", new, here)
    jumped = _jump(history, new, expected)
    if not jumped and _may_well_be(new.celsius, here):
        return None
    explained = _explained(cook, history, new, here)
    if explained is None and not jumped and _between(_lowest(cook, history, new), new.celsius, _widest(here) + AHEAD_K):
        return None
    possible = CORE_LOW_C <= new.celsius <= CORE_HIGH_C
    return explained or (Doubt("jump", new, here) if jumped and possible else _left(new, here, expected))


def _past_a_later_one(history: History, new: Seen) -> bool:
    """Told afterwards, and warmer than what was read after it: meat on the fire does not cool."""
    later = [r for r in history.of("core") if r.seconds > new.seconds]
    apart = (FALL_K if r.seconds <= new.seconds + SAME_TIME_S else LATER_K for r in later)
    return any(new.celsius > r.celsius + k for r, k in zip(later, apart, strict=True))


def _lowest(cook: Cook, history: History, new: Seen) -> Celsius:
    """The coldest that a core can be though it is far behind: a little under what it was before. [°C]"""
    before = [r.celsius for r in history.of("core") if r.seconds <= new.seconds]
    return max(CORE_LOW_C, (before[-1] if before else cook.start_c) - FALL_K)


def _explained(cook: Cook, history: History, new: Seen, here: Band) -> Doubt | None:
    pit = _pit_near(cook, history, new)
    for reason, celsius in _other_units(new.celsius):
        if _may_well_be(celsius, here):  # what would not be doubted in the other unit
            return Doubt(reason, new, here, suggested_c=celsius)
    if abs(new.celsius - pit) < PIT_NEAR_K and not _close(new.celsius, here):
        swapped = any(_close(r.celsius, here) for r in _same_time(history, new, "pit"))
        return Doubt("swapped" if swapped else "air", new, here, suggested_probe="pit" if swapped else None)
    slips = sorted((c for c in _slips(new.celsius) if _close(c, here)), key=lambda c: abs(c - here.p50))
    return Doubt("digits", new, here, suggested_c=slips[0]) if slips else None


def _left(new: Seen, here: Band, expected: Run) -> Doubt:
    """What no slip of the hand explains: another time, or out of every range, or a moved probe."""
    if not CORE_LOW_C <= new.celsius <= CORE_HIGH_C:
        return Doubt("range", new, here)
    for hours in (sign * h for h in SLIP_H for sign in (-1, 1)):
        moved = new.seconds + hours * 3600.0
        if 0 <= moved <= (len(expected.core) - 1) * STEP_S and _close(new.celsius, _spread(expected, moved)):
            return Doubt("clock", new, here, suggested_seconds=moved)
    return Doubt("jump", new, here)


def _pit_doubt(cook: Cook, history: History, new: Seen) -> Doubt | None:
    pit = _pit_near(cook, history, new)
    here = Band(pit - 2 * PIT_NEAR_K, pit, pit + 2 * PIT_NEAR_K)
    if not PIT_SEEN_LOW_C <= new.celsius <= PIT_SEEN_HIGH_C:
        return _pit_slip(new, here) or Doubt("range", new, here)
    if _may_be_swapped(cook, history, new, pit):
        return Doubt("swapped", new, here, suggested_probe="core")
    if _far_under_the_meat(history, new):
        return _digit_lost(new, here)
    if abs(new.celsius - pit) < 45.0 or new.celsius < pit:
        return None  # a fire may be anywhere below its set point
    return _pit_slip(new, here)


def _may_be_swapped(cook: Cook, history: History, new: Seen, pit: Celsius) -> bool:
    """Whether a pit reading is what the core should be, and the core read with it what the pit should."""
    cores = _same_time(history, new, "core")
    if not cores or abs(cores[-1].celsius - pit) >= PIT_NEAR_K:
        return False  # before the members are run, which costs more than all the rest
    return _close(new.celsius, _spread(_expected(cook, _before(history, new, "core")), new.seconds))


def _far_under_the_meat(history: History, new: Seen) -> bool:
    """Whether the pit would be colder than meat that it warmed: of a fire long out, or a digit that was lost."""
    before = [r.celsius for r in history.of("core") if r.seconds <= new.seconds]
    return bool(before) and before[-1] - new.celsius > UNDER_MEAT_K


def _digit_lost(new: Seen, here: Band) -> Doubt | None:
    """«28» for 280, where that is about what the pit was."""
    whole = [(n, back) for n, back in _as_typed(new.celsius) if _whole(n) and 10 <= round(n) <= 99]
    longer = [(last > 0, back(round(n) * 10.0 + last)) for n, back in whole for last in range(10)]
    near = [(odd, abs(c - here.p50), c) for odd, c in longer if here.p10 <= c <= here.p90]
    return Doubt("digits", new, here, suggested_c=min(near)[2]) if near else None  # a round number first


def _as_typed(celsius: Celsius) -> tuple[tuple[float, Callable[[float], Celsius]], ...]:
    """A temperature as it stood on either scale, with the way back from there."""
    return (fahrenheit_from_celsius(celsius), celsius_from_fahrenheit), (celsius, Celsius)


def _pit_slip(new: Seen, here: Band) -> Doubt | None:
    for reason, celsius in _other_units(new.celsius):
        if here.p10 <= celsius <= here.p90:
            return Doubt(reason, new, here, suggested_c=celsius)
    return None


@lru_cache(maxsize=64)
def _expected(cook: Cook, history: History) -> Run:
    """The members' cores through the history and two hours on."""
    z = fitted(cook, history)
    pit = course(cook, history, STEP_S, int((history.now + 7200.0) // STEP_S) + 3)
    changes: list[Change] = [*wrappings(history, STEP_S, slice(None))]
    return simulate(members(cook, z), pit, changes)


def _spread(expected: Run, seconds: float) -> Band:
    row = expected.at(np.array([max(seconds, 0.0)]))[0]
    return band(row, np.ones(len(row)))


def _may_well_be(celsius: Celsius, here: Band) -> bool:
    return _between(2 * here.p10 - here.p50 - BEHIND_K, celsius, _widest(here) + MARGIN_K)


def _widest(here: Band) -> Celsius:
    """The upper end of the band widened by once more its own half: doubted readings are rare. [°C]"""
    return 2 * here.p90 - here.p50


def _between(low: Celsius, celsius: Celsius, high: Celsius) -> bool:
    """Whether a core can be so warm, and is within two bounds."""
    return max(low, CORE_LOW_C) <= celsius <= min(high, CORE_HIGH_C)


def _close(celsius: Celsius, here: Band) -> bool:
    return here.p10 - MARGIN_K <= celsius <= here.p90 + MARGIN_K


def _other_units(celsius: Celsius) -> Iterator[tuple[Reason, Celsius]]:
    yield "unit", celsius_from_fahrenheit(celsius)  # °F was typed and read as °C
    yield "unit", fahrenheit_from_celsius(celsius)  # °C was typed and read as °F


def _slips(celsius: Celsius) -> Iterator[Celsius]:
    """Numbers that a slip of the finger makes of this one, in the unit in which it was typed as a whole number. [°C]"""
    fahrenheit = fahrenheit_from_celsius(celsius)
    broken = not _whole(celsius) and not _whole(fahrenheit)
    in_f = _whole(fahrenheit) and celsius > CORE_HIGH_C  # 518 °F is 270 °C too, but nobody types that of meat
    if broken or (_whole(celsius) and not in_f):
        yield from _slipped(round(celsius))
    if broken or _whole(fahrenheit):
        yield from (celsius_from_fahrenheit(n) for n in _slipped(round(fahrenheit)))


def _whole(number: float) -> bool:
    return abs(number - round(number)) < WHOLE


def _slipped(number: int) -> Iterator[float]:
    text = str(abs(number))
    if 2 <= len(text) <= 4:
        yield from sorted({int("".join(p)) for p in permutations(text)} - {number})
        yield from sorted({int(text[:i] + text[i + 1 :]) for i in range(len(text))})
        yield from (int(d + text) for d in "12")
    if len(text) >= 3:
        yield number / 10  # the point was left out


def _same_time(history: History, new: Seen, probe: Probe) -> tuple[Seen, ...]:
    return tuple(r for r in history.of(probe) if abs(r.seconds - new.seconds) <= SAME_TIME_S)


def _jump(history: History, new: Seen, expected: Run) -> bool:
    """More than 10 °F in 10 minutes beyond what is expected: meat does not do that, a moved probe does."""
    before = [r for r in history.of("core") if r.seconds <= new.seconds]
    if not before:
        return False
    span = max(new.seconds - before[-1].seconds, 60.0)
    leap, beyond = new.celsius - before[-1].celsius, JUMP_K * max(1.0, span / JUMP_S)
    climb = _climb(expected, before[-1].seconds, new.seconds)
    return leap > max(climb, 0.0) + beyond or leap < min(climb, 0.0) - beyond


def _climb(expected: Run, since: float, until: float) -> float:
    """What the quickest tenth of the members climbs between two times. [K]"""
    rows = expected.at(np.array([since, max(until, since)]))
    return float(np.quantile(rows[1] - rows[0], 0.9))


def _before(history: History, new: Seen, probe: Probe) -> History:
    """The history without what that probe said at about this time: it may be the one that was swapped."""
    return replace(history, seen=tuple(s for s in history.seen if s not in _same_time(history, new, probe)))


def _pit_near(cook: Cook, history: History, new: Seen) -> Celsius:
    """The pit at the time of a reading, by its other readings and the set point. [°C]"""
    past = _before(history, new, "pit")
    pit = course(cook, past, STEP_S, int(max(new.seconds, 0.0) // STEP_S) + 2)
    return float(pit.celsius[-1])
