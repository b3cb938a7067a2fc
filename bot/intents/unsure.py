"""What is asked of a line that was understood: which of two hours, which number, and whether it was read."""

from dataclasses import replace
from datetime import datetime
from typing import Final

from bot.intents.clock import came_twice
from bot.intents.context import SHOWN, Context
from bot.intents.intents import Intent, Reading, Unclear
from bot.intents.temperatures.bounds import not_read
from bot.intents.temperatures.guessed import guessed
from bot.measures import to_house
from core import patterns as re
from core.batch.events import Probe

_FELL: Final = re.compile(r"\b(?:drop(?:p?ed|s)?|f[ea]ll(?:en)?|crash\w*|sank|sunk|down|dipped) (?:back )?to \d")


def unsure(intent: Intent, plain: str, context: Context) -> Intent:
    """The intent, or the question for what nobody can take from the line: which of two hours, or which number."""
    intent = _fell_to(_of_one_hour(intent, plain, context), plain, context)
    return guessed(not_read(intent, plain, context), plain)


def _fell_to(intent: Intent, plain: str, context: Context) -> Intent:
    """«its dropped to 190», of a core that was at 150: no core falls so, it may be the pit."""
    one = intent.temperatures[0] if isinstance(intent, Reading) and len(intent.temperatures) == 1 else None
    if one is None or one.probe is not Probe.CORE or context.phase != "cooking" or not _FELL.search(plain):
        return intent
    if context.last_core_c is None or to_house(one.value, one.unit or context.units.temperature) <= context.last_core_c:
        return intent
    pit = replace(one, probe=Probe.PIT)
    return Unclear("number", plain[:SHOWN], (Reading((pit,)), intent))


def _of_one_hour(intent: Intent, plain: str, context: Context) -> Intent:
    """What was done or read at an hour that came twice, the night that the clocks went back, is asked about."""
    times = [t.at for t in intent.temperatures] if isinstance(intent, Reading) else [getattr(intent, "at", None)]
    twice = any(isinstance(at, datetime) and came_twice(at, context.now, context.zone) for at in times)
    return Unclear("twice", plain[:SHOWN]) if twice and "ago" not in plain.split() else intent
