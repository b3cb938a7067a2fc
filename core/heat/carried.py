"""What a cook teaches of its cooker: air at the meat, film, walls and wetness of the air, carried to the next cook.

These belong to the cooker and come again; thickness, bark and supply belong to the piece and do not. Each is carried
as the mean and the standard deviation of its standard normal number in the ensemble: of what the readings moved, the
lasting part; what changes from cook to cook (weather, load, where the meat lies) is new every time.
"""

from typing import Final

import numpy as np

from core.heat.cook import Cook, History
from core.heat.filter import fitted
from core.heat.prior import NAMES
from core.person import Habit

CARRIED: Final = ("film", "pit", "dew", "wall")
DRIFT: Final = 0.4  # from cook to cook on one cooker, in shares of the spread over cookers. Judgement
LEAST_READINGS: Final = 2  # of the core; one tells of the piece as much as of the cooker


def habits(cook: Cook, history: History) -> tuple[Habit, ...]:
    """What is known of the cooker after a cook; as before it where too little was read.

    Parameters
    ----------
    cook
        With the habits that were known before it.
    history
        The whole cook, to when it came off.
    """
    if len(history.of("core")) < LEAST_READINGS:
        return cook.habits
    points = dict(zip(NAMES, fitted(cook, history), strict=True))
    before = {habit.name: habit for habit in cook.habits}
    return tuple(_after(before.get(name, Habit(name)), points[name]) for name in CARRIED)


def _after(known: Habit, moved: np.ndarray) -> Habit:
    """What stays of one number: its lasting part is moved by its share of the variance, the rest is new every time."""
    before = known.sd**2
    stays = (before - DRIFT**2) / before
    gained = before * (1.0 - float(moved.var(ddof=1)))
    mean = known.mean + stays * known.sd * float(moved.mean())
    return Habit(known.name, mean, float(np.sqrt(before - stays**2 * max(gained, 0.0))))
