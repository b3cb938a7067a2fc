"""A row of the outbox -> words -> what the channel is handed.

Replies were worded when they were made; reminders are worded when they go out.
"""

import logging
from dataclasses import replace
from datetime import datetime, timedelta

from bot import documents
from bot.facts import facts, step_facts
from bot.pictures import drawn
from bot.reply import Document, Outgoing, Picture, Reply, from_body
from bot.wording import batches, general, households, language, reminders
from core.batch.assess import Assessment
from core.plan.hours import wall_of
from core.plan.steps import Kind, State, Step, Urgency
from core.service import waiting
from core.service.turn import House
from core.service.waiting import Row

log = logging.getLogger(__name__)
FILE_TRIES = 2  # a picture or file that cannot be made twice will not be made
STALE_FLIP = timedelta(hours=6)  # later than this a flip is merged into the next


class Notify:
    """Puts what waits in the outbox into words."""

    def __init__(self, house: House) -> None:
        self._house = house

    def render(self, row: Row, now: datetime) -> Outgoing | None:
        """What the channel is handed for a row, or None where there is nothing to say any more."""
        reply = self._reply(row, now)
        if reply is None:
            return None
        with language.speaking(reply.language):
            reply, picture, document = self._enclosed(row, reply, now)
        return Outgoing(row.id, row.chat, now, reply, picture, row.repeat, row.answering, document)

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
        with language.speaking(a.person.language):
            reply = self._reminder(row, a)
            return None if reply is None else replace(reply, language=language.spoken())

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

    def _picture(self, reply: Reply, now: datetime) -> Picture | None:
        if reply.picture is None:
            return None
        a = waiting.batch_by_id(self._house, reply.picture.batch, now)
        return None if a is None else drawn(a, reply.picture.subject)

    def _document(self, reply: Reply, now: datetime) -> Document | None:
        return None if reply.document is None else documents.made(self._house, reply.document, now)


def _asleep(step: Step, a: Assessment) -> bool:
    """Whether a repeat that was moved, since the first came late, would now break the quiet hours."""
    return step.urgency is not Urgency.PIERCING and wall_of(a.person).quiet(a.now)


def _still_wanted(step: Step, a: Assessment) -> bool:
    if step.state in (State.DONE, State.SKIPPED) or (step.within and not step.put_off):
        return False
    return step.kind is not Kind.FLIP or a.now - step.due <= STALE_FLIP
