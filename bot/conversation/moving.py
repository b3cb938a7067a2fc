"""What was said of one batch and belongs to another: it moves there, its steps to the steps of that one."""

from collections.abc import Sequence
from dataclasses import replace

from bot.facts import facts
from bot.reply import Reply
from bot.wording import batches as several_words
from bot.wording import mends
from core.batch.assess import Assessment
from core.batch.events import Done, Event, What
from core.service import batches, record, steps
from core.service.turn import Turn


def to_other(turn: Turn, batch: str, other: str) -> Sequence[Reply]:
    """«that was for the ham»: all that the last message said moves from one batch to another, its steps to its own."""
    last, elsewhere = batches.last_event(turn, batch), batches.look(turn, other)
    said = [e for e in batches.standing(turn, batch) if e.message == last.message]
    for event in said:
        batches.correct(turn, batch, event.number, None)
    done = record.add(turn, other, [(_there(turn, elsewhere, event), event.at) for event in said])
    return (Reply(mends.moved_over(said, done.after), facts=facts(done.after), about=other),)


def _there(turn: Turn, a: Assessment, event: Event) -> What:
    """The same in another batch: its flip of that hour has a number of its own."""
    if not isinstance(event.what, Done) or "/" not in event.what.step:
        return event.what
    return replace(event.what, step=steps.find(turn, a, event.what.step.split("/")[0], event.at).key)


def wrong_batch(turn: Turn, batch: str) -> Sequence[Reply]:
    """«wrong batch»: where it belongs is asked, each other batch a tap."""
    names = {row.id: row.name for row in sorted(batches.open_here(turn), key=lambda row: row.name)}
    others = tuple((key, name) for key, name in names.items() if key != batch)
    text, rows = several_words.wrong_one(names.get(batch, ""), batch, others)
    return (Reply(text, buttons=rows, facts={"answer_kind": "asked_back", "asked": "batch"}, about=batch),)
