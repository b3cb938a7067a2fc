"""What is said at the door: to strangers, to whoever has just been let in, and where a day's limit is reached."""

from collections.abc import Sequence
from datetime import UTC, datetime, time, timedelta

from bot.reply import Message, Reply
from bot.wording import admission as words
from core.service.entry import Entry
from core.service.turn import Turn


def answer(turn: Turn, message: Message) -> Sequence[Reply]:
    """The one sentence that fits, or silence."""
    match turn.entry:
        case Entry.WELCOME:
            text = words.welcome(turn.person)
        case Entry.STRANGER:
            text = words.private(message.chat if message.in_group else message.person)
        case Entry.FULL:
            text = words.full()
        case Entry.ENOUGH:
            text = words.enough(turn.person, _tomorrow(turn.now), turn.now)
        case _:
            return ()
    return (Reply(text, facts={"answer_kind": "entry", "entry": turn.entry.value}),)


def _tomorrow(now: datetime) -> datetime:
    """When the next day begins. UTC"""
    return datetime.combine(now.astimezone(UTC).date() + timedelta(days=1), time(0, 0), UTC)
