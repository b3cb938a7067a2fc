"""«what is on tomorrow»: the steps of the day that a line names, of the batch in hand or of all."""

from collections.abc import Sequence
from datetime import date

from bot.intents.days import find_day
from bot.intents.normal import normal
from bot.wording import agenda
from core.batch.assess import Assessment
from core.person import Person
from core.service.turn import Turn


def on(turn: Turn, text: str, found: Sequence[Assessment]) -> str:
    """What stands on the day that is named, and today where none is."""
    today = turn.now.astimezone(turn.person.tz).date()
    return agenda.of_day(found, _named(text, turn.person, today))


def _named(text: str, person: Person, today: date) -> date:
    named = find_day(normal(text, person.language), today)
    return named.days[0] if named else today
