"""Readings as a cook takes and types them: every half hour to hour, with gaps, to whole °F, and now and then a slip.

A slip is held against `doubt`, as the chat does: what is asked about, the cook puts right; what is not, stays in.
"""

from collections.abc import Callable

import numpy as np

from core.heat.cook import Cook, History, Seen
from core.heat.doubt import doubt
from tests.laws.heat.finer_cook import Truth

EVERY_H = (0.5, 1.0)
GAP, GAP_H = 0.06, (2.0, 3.5)  # one look in sixteen is followed by a long one: asleep, away
SLIP = 0.04  # of the readings of the core are typed wrong
NOISE = {"core": 0.6, "pit": 0.5}  # [K] of a home thermometer

Draw = np.random.Generator


def readings(cook: Cook, truth: Truth, number: int, seed: int) -> tuple[Seen, ...]:
    """What is known of one cook of the finer model, from the first reading to the last before it is ready."""
    draw = np.random.default_rng(seed * 1000 + number)
    seen: list[Seen] = []
    hour = draw.uniform(0.4, 0.9)
    while hour < truth.ready[number]:
        both = [_read(truth, number, (hour, probe), draw) for probe in ("core", "pit")]
        if draw.random() < SLIP:
            both[0] = _slipped(cook, tuple(seen), both, draw)
        seen += both
        hour += draw.uniform(*EVERY_H) + (draw.uniform(*GAP_H) if draw.random() < GAP else 0.0)
    return tuple(seen)


def _read(truth: Truth, number: int, when: tuple[float, str], draw: Draw) -> Seen:
    hour, probe = when
    course = truth.core if probe == "core" else truth.pit
    celsius = float(np.interp(hour, truth.hours, course[:, number])) + draw.normal(0, NOISE[probe])
    return _typed(hour, probe, round(celsius * 1.8 + 32))


def _typed(hour: float, probe: str, fahrenheit: float) -> Seen:
    return Seen(round(hour * 3600.0), probe, round((fahrenheit - 32) / 1.8, 3))


def _slipped(cook: Cook, before: tuple[Seen, ...], both: list[Seen], draw: Draw) -> Seen:
    """The core as it stands in the log after a slip: wrong, or put right where it was asked about."""
    true, pit = both
    slips: tuple[Callable[[int], float], ...] = (
        lambda f: int(str(f)[::-1]),  # all digits the other way round
        lambda f: int(str(f)[:-2] + str(f)[:-3:-1]),  # the last two swapped
        lambda f: int(str(f)[:-1]),  # one left out
        lambda f: f + 10,  # a neighbouring tenth
        lambda f: (f - 32) / 1.8,  # °C, taken for °F
        lambda f: pit.celsius * 1.8 + 32,  # the pit's figure
    )
    wrong = slips[int(draw.integers(len(slips)))](round(true.celsius * 1.8 + 32))
    typed = _typed(true.seconds / 3600.0, "core", wrong)
    asked = doubt(cook, History((*before, pit), now_s=true.seconds), typed) is not None
    return true if asked else typed
