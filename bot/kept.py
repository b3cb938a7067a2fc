"""Everything that is kept of a person, as plain data (JSON) for them: `schema` names the form and its version."""

import json
from typing import Any, Final

from bot.papers.plain import value
from bot.wording import privacy
from core.batch.events import Event
from core.service.papers import InBatch, Kept
from core.service.waiting import Row

SCHEMA: Final = {"name": "saltbell kept of a person", "version": 1}


def exported(kept: Kept) -> bytes:
    """The whole of it. [UTF-8]"""
    whole = {
        "schema": SCHEMA,
        "notice": privacy.what_is_in_it(),
        "number": kept.id,
        "person": None if kept.person is None else value(kept.person),
        "shared_with_you": [{"batch": m.batch, "chat": m.chat, "since": value(m.since)} for m in kept.shared],
        "open_questions": [{"chat": chat, "question": value(asked)} for chat, asked in kept.questions],
        "batches": [_batch(one) for one in kept.batches],
        "door": None if kept.door is None else dict(zip(("day", "messages", "let_in"), kept.door, strict=True)),
        "said_to_you": [_message(one) for one in kept.messages],
    }
    return json.dumps(whole, ensure_ascii=False, allow_nan=False, indent=1).encode()


def _batch(one: InBatch) -> dict[str, Any]:
    return {
        "batch": one.id,
        "yours": one.batch is not None,
        "name": one.batch.name if one.batch else None,
        "chat": one.batch.chat if one.batch else None,
        "begun_at": value(one.batch.made_at) if one.batch else None,
        "closed_at": value(one.batch.closed_at) if one.batch else None,
        "said_by_you": [_event(event) for event in one.said],
        "said_by_others": one.by_others,
    }


def _event(event: Event) -> dict[str, Any]:
    return {
        "number": event.number,
        "at": value(event.at),
        "said_at": value(event.said_at),
        "message": event.message,
        "what": value(event.what),
    }


def _message(one: Row) -> dict[str, Any]:
    """A message of ours: its words, or only what it called for where they may quote somebody else."""
    return {
        "sort": one.sort,
        "due_at": value(one.due_at),
        "sent_at": value(one.sent_at),
        "state": one.state,
        "batch": one.batch,
        "step": one.step,
        "text": one.body.get("text") if one.body else None,
    }
