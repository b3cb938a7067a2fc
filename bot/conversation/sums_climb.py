"""A core that climbs slowly: whether it passes its mark within the hours that the rules leave it."""

import re
from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import need
from bot.intents.sums.of_heat import between
from bot.intents.sums.told import Told
from bot.wording import sums_climb
from core.safety.come_up import COME_UP, REACH_140, Climb, ClimbJudgement, judge_climb
from core.safety.findings import Status
from core.service.turn import Turn
from core.units import Celsius, Hours

_OPENED: Final = re.compile(r"\b(?:inject\w*|pump(?:ed|ing)|rolled|minced|ground|stuffed|boned)\b")
_BIRDS: Final = frozenset({"turkey", "chicken", "duck"})
_REACHED: Final = re.compile(r"\b(?:took|needed)\b.*\b(?:to|until|till?|before)\b")  # so long, and not a minute sooner


def _climb(turn: Turn, line: Told) -> Answer:
    """By the clock of whole meat and by that of birds and opened meat; by the second alone where it is one of them."""
    core, hours = min(line.temperatures), need(between(line), "hours")
    opened = bool(_OPENED.search(line.text)) or line.species in _BIRDS
    climbs = (REACH_140,) if opened else (COME_UP, REACH_140)
    judged = tuple(_judged(turn, climb, core, hours, bool(_REACHED.search(line.text))) for climb in climbs)
    body = {"status": judged[0].status.value, "hours": hours}
    keys = ("COMMON_PRACTICE",) if opened else ("FSIS_COOKING_2021", "COMMON_PRACTICE")
    return sums_climb.climbing(judged, core, hours, turn.person), keys, body


def _judged(turn: Turn, climb: Climb, core: Celsius, hours: Hours, reached: bool) -> ClimbJudgement:
    """One reading, so many hours after it went on; at the limit and not there yet, or there only then, it is late."""
    found = judge_climb(climb, ((turn.now, core),), turn.now - timedelta(hours=hours), turn.now)
    late = hours > climb.max_h if reached else found.ended is None and hours >= climb.max_h
    return replace(found, status=Status.FAILED) if late else found


SUMS = {"climb": _climb}
