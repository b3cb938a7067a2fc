"""A row of the outbox -> words -> what the channel is handed.

Replies were worded when they were made; reminders are worded when they go out.
"""

import logging
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta

from bot import documents
from bot.facts import facts, step_facts
from bot.pictures import drawn
from bot.reply import Document, Outgoing, Picture, Reply, from_body
from bot.wording import batches, gathered, general, households, language, numbers, reminders
from core.batch.assess import Assessment
from core.plan.hours import Wall, wall_of
from core.plan.steps import Kind, State, Step, Urgency
from core.reminders.delivery import Later, Together
from core.service import waiting
from core.service.turn import House
from core.service.waiting import Row

log = logging.getLogger(__name__)
FILE_TRIES = 2  # a picture or file that cannot be made twice will not be made
MOST_A_DAY = 6  # messages of reminders that a chat is sent, the piercing ones not counted
EVENING = time(20)  # when what stands after the fifth is said in one; judgement
MORNING = time(7)
STALE_FLIP = timedelta(hours=6)  # later than this a flip is merged into the next


class Notify:
    """Puts what waits in the outbox into words."""

    def __init__(self, house: House) -> None:
        self._house = house

    def render(self, row: Row, now: datetime) -> Outgoing | Together[Outgoing] | Later | None:
        """What the channel is handed for a row, with what stands beside it; or when, or None for nothing to say.

        Quiet reminders of several batches that stand at the same time are one message. A day has six messages at most:
        what comes after the fifth waits for the evening and is said in one. What is piercing, or was put off to an
        hour that somebody named, waits for nothing.
        """
        reply = self._reply(row, now)
        a = waiting.batch_of(self._house, row, now) if row.body is None else None
        if reply is None or a is None or row.urgency == Urgency.PIERCING or _put_off(row, a):
            return None if reply is None else self._handed(row, now, reply)
        if (until := self._night(row, a, now)) is not None:
            return Later(until)
        day = Day(self._house, row.chat, wall_of(a.person), now)
        if (until := day.wait()) is not None:
            return Later(until)
        standing = [(row, a, reply), *self._beside(row, now, everything=day.full)]
        if len(standing) == 1 or (not day.full and len({one.batch for one, _, _ in standing}) == 1):
            return self._handed(row, now, reply)
        with language.speaking(reply.language):
            called = {
                (one.batch, one.step): self._called(one, of) for one, of, _ in reversed(standing)
            }  # no step twice
            whole = gathered.say(list(reversed(called.values())))
        handed = self._handed(row, now, replace(whole, language=reply.language))
        return Together(handed, tuple(one.id for one, _, _ in standing[1:]))

    def _beside(self, row: Row, now: datetime, *, everything: bool) -> Iterator[tuple[Row, Assessment, Reply]]:
        """What stands beside a row: flips and fridge readings, or everything that is not piercing."""
        if row.urgency != Urgency.QUIET and not everything:
            return
        for other in waiting.beside(self._house, row, now):
            if everything or other.urgency == Urgency.QUIET:
                a, reply = waiting.batch_of(self._house, other, now), self._reply(other, now)
                if a is not None and reply is not None and not a.ledger.thrown:
                    yield other, a, reply

    def _handed(self, row: Row, now: datetime, reply: Reply) -> Outgoing:
        with language.speaking(reply.language):
            reply, picture, document = self._enclosed(row, reply, now)
        piercing = row.urgency == Urgency.PIERCING
        ours = {"piercing": piercing, "until": row.free_at}
        return Outgoing(row.id, row.chat, now, reply, picture, row.repeat, row.answering, document, **ours)

    def _enclosed(self, row: Row, reply: Reply, now: datetime) -> tuple[Reply, Picture | None, Document | None]:
        """The reply with what it encloses; what cannot be made, however often, costs only itself and not the words."""
        try:
            return reply, self._picture(reply, now), self._document(reply, now)
        except Exception:
            if row.attempts < FILE_TRIES:
                raise
            log.exception("what outbox row %s encloses cannot be made", row.id)
            return replace(reply, text=general.without_file(reply.text)), None, None

    def _reply(self, row: Row, now: datetime) -> Reply | None:
        if row.body is not None:
            kept = from_body(row.body)
            with language.speaking(kept.language):
                return replace(kept, text=general.repeat(kept.text)) if row.repeat else kept
        a = waiting.batch_of(self._house, row, now)
        if a is None:
            return None
        reader = waiting.reader(self._house, row) or a.person
        with language.speaking(reader.language):
            reply = self._reminder(row, a)
            if reply is None:
                return None
            return replace(reply, text=numbers.own_first(reply.text, a.person), language=language.spoken())

    def _reminder(self, row: Row, a: Assessment) -> Reply | None:
        step = a.plan.step(row.step or "") if a.plan is not None else None
        if step is None or not _still_wanted(step, a) or (row.occurrence and _asleep(step, a)):
            return None
        if a.ledger.thrown:
            return reminders.thrown(a) if step.urgency is Urgency.PIERCING and not row.occurrence else None
        reply = reminders.say(a, step, row.kind or "", (row.due_at, row.occurrence, row.repeat))
        if doser := waiting.doser(self._house, row, a):
            reply = replace(reply, text=f"{reply.text}\n{households.only_one(doser)}")
        if name := waiting.called(self._house, row, a):
            reply = replace(reply, text=households.called(name, reply.text))
        if waiting.has_others(self._house, row):
            reply = replace(reply, text=batches.with_name(a.batch.name, reply.text))
        body = {**facts(a), **step_facts(step), "reminder": row.kind, "due": row.due_at.isoformat()}
        return replace(reply, facts=body)

    def _night(self, row: Row, a: Assessment, now: datetime) -> datetime | None:
        """Until when it is night by the clock of the batch, where it comes late, or for whoever reads it."""
        own, person = wall_of(a.person), waiting.reader(self._house, row)
        walls = (own, wall_of(person)) if person else (own,)
        return next((wall.awake(now) for wall in walls if wall.quiet(now)), None)

    def _called(self, row: Row, a: Assessment) -> gathered.Called:
        return gathered.Called(row.step or "", row.kind or "", row.due_at, a, waiting.called(self._house, row, a))

    def _picture(self, reply: Reply, now: datetime) -> Picture | None:
        if reply.picture is None:
            return None
        a = waiting.batch_by_id(self._house, reply.picture.batch, now)
        return None if a is None else drawn(a, reply.picture.subject)

    def _document(self, reply: Reply, now: datetime) -> Document | None:
        return None if reply.document is None else documents.made(self._house, reply.document, now)


@dataclass(frozen=True)
class Day:
    """The day of a chat: how many messages it had of reminders, and when one more may come."""

    house: House
    chat: str
    wall: Wall
    now: datetime

    @property
    def said(self) -> int:
        """How many went out since midnight, piercing ones left out."""
        midnight = self.wall.at(self.wall.day(self.now), time(0))
        return waiting.said_since(self.house, self.chat, midnight)

    @property
    def full(self) -> bool:
        """Whether the next one is the last of the day."""
        return self.said >= MOST_A_DAY - 1

    def wait(self) -> datetime | None:
        """Until when one more waits, None where it may come now."""
        if not self.full:
            return None
        today = self.wall.day(self.now)
        evening = self.wall.at(today, EVENING)
        if self.now < evening and not self.wall.quiet(evening):
            return evening
        tomorrow = self.wall.awake(self.wall.at(today + timedelta(days=1), MORNING))
        return tomorrow if self.said >= MOST_A_DAY else None


def stands(row: Row) -> bool:
    """Whether the words of a row were made before, and nothing has to be read or drawn for it."""
    return row.body is not None and not row.body["picture"] and not row.body.get("document")


def _put_off(row: Row, a: Assessment) -> bool:
    step = a.plan.step(row.step or "") if a.plan is not None else None
    return step is not None and step.put_off


def _asleep(step: Step, a: Assessment) -> bool:
    """Whether a repeat that was moved, since the first came late, would now break the quiet hours."""
    return step.urgency is not Urgency.PIERCING and wall_of(a.person).quiet(a.now)


def _still_wanted(step: Step, a: Assessment) -> bool:
    if step.state in (State.DONE, State.SKIPPED) or (step.within and not step.put_off):
        return False
    return step.kind is not Kind.FLIP or a.now - step.due <= STALE_FLIP
