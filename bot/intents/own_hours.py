"""The hours of a line of several clauses: whose each is."""

from typing import Final

from bot.intents.clause import clause
from bot.intents.context import Context
from bot.intents.intents import Intent, Reading, StepDone, StepMissed, Unclear
from core import patterns as re
from core.batch.events import Probe
from core.plan.steps import Kind

_COMMA: Final = re.compile(r",(?!\d\d?(?!\d))\s*")
_SINCE_OF_ONE: Final = re.compile(
    r"^[^,;]*\d[^,;]*\bsince [^,;]+, (?:the |and |but )?(?:core|meats?|internal|pit|smoker|grill|fridge|brine"
    r"|probe)\b[^,;]*\d"
)


def since_then(sentence: str, context: Context) -> list[Intent]:
    """«pit 310 since noon, meat 152»: the hour is that of what stands before it, and the other is read now."""
    if not _SINCE_OF_ONE.search(sentence):
        return []
    said = [clause(part, context) for part in _COMMA.split(sentence) if part and part.strip()]
    return [one for each in said for one in each] if all(said) and all(is_read(one[0]) for one in said) else []


def own_hours(flat: list[Intent], whole: list[Intent]) -> bool:
    """«rub on at 6:40, meat on at 7»: by its parts each deed has its own hour, and the whole gave one to both."""
    hours = [{i.at for i in those if isinstance(i, StepDone)} for those in (flat, whole)]
    return len(flat) == len(whole) > 1 and None not in hours[0] and len(hours[0]) > len(hours[1])


def is_read(intent: Intent) -> bool:
    """A reading, or the question which reading it is."""
    asks = isinstance(intent, Unclear) and any(isinstance(option, Reading) for option in intent.options)
    return asks or isinstance(intent, Reading)


def caught_up(found: list[Intent]) -> list[Intent]:
    """«missed the 12 check, its 157 now»: what was missed is read now, and there is no more to it."""
    if not any(isinstance(one, Reading) and Probe.CORE in {t.probe for t in one.temperatures} for one in found):
        return found
    late = (Kind.READING, Kind.CHILL_CHECK)
    return [one for one in found if not (isinstance(one, StepMissed) and (one.step or "").startswith(late))]
