"""What a channel of one person's terminal is handed of the bot: a turn, a delivery round, the next due time."""

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from datetime import datetime

from bot.reply import Message


def _untold(_: datetime) -> None:
    """Nobody keeps a clock that wants to be told."""


@dataclass(frozen=True)
class Talk:
    """The bot as a terminal sees it; built once, in `bot/__main__`.

    `receive` takes one message at a time (aware UTC): the whole turn, its effect and its replies committed to
    the outbox; False for a message that had been received before. `round` sends whatever is due at a time
    through the channel and says how many that were. `next_due` is when the next thing falls due. `tell` is
    told the time whenever a scripted clock moves, before anything else happens at that time.
    """

    receive: Callable[[Message, datetime], bool]
    round: Callable[[datetime], Awaitable[int]]
    next_due: Callable[[], datetime | None]
    tell: Callable[[datetime], None] = _untold
