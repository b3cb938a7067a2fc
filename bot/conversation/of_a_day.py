"""«what is on tomorrow»: the steps of the day that a line names, or of a weekend, of the batch in hand or of all."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Final

from bot.intents.days import find_day
from bot.intents.normal import normal
from bot.wording import agenda
from core.batch.assess import Assessment
from core.service.turn import Turn

SATURDAY: Final = 5
A_WEEK: Final = timedelta(days=7)


def on(turn: Turn, text: str, found: Sequence[Assessment]) -> str:
    """What stands on the day that is named, on both of a weekend, and today where none is."""
    days = named(turn, text) or (turn.now.astimezone(turn.person.tz).date(),)
    return "\n".join(agenda.of_day(found, day) for day in days)


def named(turn: Turn, text: str) -> tuple[date, ...]:
    """The days to come that a line names: one, both of a weekend; «thursday» on a Thursday is this one or the next."""
    plain, today = normal(text, turn.person.language), turn.now.astimezone(turn.person.tz).date()
    if "weekend" in plain:
        saturday = today + timedelta(days=(SATURDAY - today.weekday()) % 7)
        return (saturday, saturday + timedelta(days=1))
    found = find_day(plain, today)
    if found is None:
        return ()
    day = found.days[0]
    return (day, day + A_WEEK) if day == today and found.weekday is not None else (day,)
