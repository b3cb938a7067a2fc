"""Who is called for what: every chat of a batch, or the one that has taken it over.

What is piercing (fire, chill, safety) and was not answered once goes to everybody when it is repeated.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime
from typing import Final

from core.batch.batch import Batch
from core.batch.events import Handed
from core.plan.reminders import Wanted
from core.plan.steps import Kind
from core.store.batches import Row
from core.store.members import Member

TASKS: Final = {
    "fire": frozenset({
        Kind.LIGHT, Kind.MEAT_ON, Kind.READING, Kind.WRAP, Kind.OFF, Kind.REST, Kind.CHILL, Kind.CHILL_CHECK,
    }),
    "flips": frozenset({Kind.FLIP, Kind.FRIDGE_CHECK}),
    "cure": frozenset({Kind.BRINE, Kind.INTO_CURE}),
}  # fmt: skip


def holder(handed: Sequence[Handed], kind: str, at: datetime) -> Handed | None:
    """Who answers for a kind of step at a time: the last to whom it was handed; None where it is everybody."""
    return next((one for one in reversed(handed) if one.since <= at and _covers(one.task, kind)), None)


def shared(asked: Sequence[Wanted], handed: Sequence[Handed], sharing: Sequence[Member]) -> tuple[Wanted, ...]:
    """The reminders of a batch, each once for every chat that it goes to."""
    return tuple(each for wish in asked for each in _to_chats(wish, handed, sharing))


def in_pause(
    free: Sequence[Wanted], held: Sequence[Wanted], batch: Batch, row: Row, sharing: Sequence[Member]
) -> tuple[Wanted, ...]:
    """The reminders while somebody is away: their own are `held`, what somebody else has taken over is `free`.

    `row` tells the chat in which the batch was begun, and its owner. In a group that is called together one guest who
    is away holds nothing up; where who is away has no chat of their own here otherwise, all are held.
    """
    home, away, chats = row.chat, batch.paused_by, {row.chat, *(member.chat for member in sharing)}
    a_guest = home != row.owner and away not in (row.owner, "") and away not in chats

    def rests(wish: Wanted) -> bool:
        one = holder(batch.handed, wish.step.partition("/")[0], wish.due_at)
        if one is not None and one.person != away:
            return False
        if a_guest and one is None:
            return False
        return away not in chats or (wish.chat or home) == away

    both = ((held, True), (free, False))
    return tuple(w for asked, still in both for w in shared(asked, batch.handed, sharing) if rests(w) is still)


def _to_chats(wish: Wanted, handed: Sequence[Handed], sharing: Sequence[Member]) -> Iterator[Wanted]:
    one = holder(handed, wish.step.partition("/")[0], wish.due_at)
    if one is not None and one.chat and not wish.occurrence:
        yield replace(wish, chat=one.chat)
        return
    yield wish
    yield from (replace(wish, chat=member.chat) for member in sharing if wish.due_at >= member.since)


def _covers(task: str, kind: str) -> bool:
    return task == "all" or kind in TASKS.get(task, frozenset())
