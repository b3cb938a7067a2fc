"""What is asked of a line that was understood: which of two hours, which number, and whether it was read."""

from datetime import datetime

from bot.intents.bounds import not_read
from bot.intents.clock import came_twice
from bot.intents.context import SHOWN, Context
from bot.intents.guessed import guessed
from bot.intents.intents import Intent, Reading, Unclear


def unsure(intent: Intent, plain: str, context: Context) -> Intent:
    """The intent, or the question for what nobody can take from the line: which of two hours, or which number."""
    return guessed(not_read(_of_one_hour(intent, plain, context), plain, context), plain)


def _of_one_hour(intent: Intent, plain: str, context: Context) -> Intent:
    """What was done or read at an hour that came twice, the night that the clocks went back, is asked about."""
    times = [t.at for t in intent.temperatures] if isinstance(intent, Reading) else [getattr(intent, "at", None)]
    twice = any(isinstance(at, datetime) and came_twice(at, context.now, context.zone) for at in times)
    return Unclear("twice", plain[:SHOWN]) if twice and "ago" not in plain.split() else intent
