"""Files that a person may have: the record of a batch, and everything that is kept of them."""

from collections.abc import Sequence
from typing import Final

from bot.conversation.understand import Understood
from bot.intents.intents import Ask
from bot.reply import DocumentWanted, Reply
from bot.wording import privacy, records
from core.service import batches, papers
from core.service.turn import Turn

TOPICS: Final = frozenset({"record", "export"})
USUAL: Final = "pdf"


def answer(turn: Turn, meant: Understood, intent: Ask) -> Sequence[Reply]:
    """The file, on its way: it is made when the reply goes out."""
    return _export(turn, meant) if intent.topic == "export" else _record(turn, meant, intent)


def _export(turn: Turn, meant: Understood) -> Sequence[Reply]:
    """Everything that is kept of who asks, and only where nobody else reads along."""
    body = {"answer_kind": "entry", "topic": "export"}
    if meant.message.in_group:
        return (Reply(privacy.not_in_a_group(), facts=body),)
    wanted = DocumentWanted("json", person=turn.person.id)
    return (Reply(privacy.exported(), document=wanted, facts=body),)


def _record(turn: Turn, meant: Understood, intent: Ask) -> Sequence[Reply]:
    """The record of the batch of the talk; where none is under way, of the one that was begun last."""
    latest = papers.latest(turn)
    found = intent.batch or meant.batch or (latest.id if latest else None)
    if found is None:
        return (Reply(records.nothing_yet(), facts={"answer_kind": "asked_back"}),)
    a, form = batches.look(turn, found), intent.about or USUAL
    wanted = DocumentWanted(form, batch=found)
    others = () if meant.sure else _others(turn, found)
    rows = records.forms(found, form) + records.of_others(others, form)
    body = {"answer_kind": "batch", "topic": "record", "form": form}
    return (Reply(records.said(a.batch.name, form), rows, document=wanted, facts=body, about=found),)


def _others(turn: Turn, found: str) -> tuple[tuple[str, str], ...]:
    """The other batches under way here, by id and name: which was meant is one tap away."""
    return tuple((row.id, row.name) for row in batches.open_here(turn) if row.id != found)
