"""What was said of one batch and belongs to another: it moves there, its steps to the steps of that one."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from bot.facts import facts
from bot.reply import Reply
from bot.wording import batches as several_words
from bot.wording import mends
from core.batch.assess import Assessment
from core.batch.events import Done, Event, Started, What
from core.service import batches, record, steps
from core.service.turn import Turn

A_WHILE = timedelta(minutes=45)  # what was said longer ago is meant by nobody who says «that was for the ham»


def to_other(turn: Turn, batch: str, other: str) -> Sequence[Reply]:
    """«that was for the ham»: all that the last message said moves from one batch to another, its steps to its own."""
    if other == batch:  # the talk is of that one already: what was said before it is meant
        before = _said_before(turn, other)
        if before is None:
            return (Reply(several_words.has_it(batches.look(turn, other).batch.name), about=other),)
        batch = before
    last, elsewhere = batches.last_event(turn, batch), batches.look(turn, other)
    if turn.now - last.said_at > A_WHILE:  # of what was said since nothing was noted
        return (Reply(several_words.nothing_to_move(elsewhere.batch.name), about=other),)
    said = [e for e in batches.standing(turn, batch) if e.message == last.message]
    for event in said:
        batches.correct(turn, batch, event.number, None)
    done = record.add(turn, other, [(_there(turn, elsewhere, event), event.at) for event in said])
    return (Reply(mends.moved_over(said, done.after), facts=facts(done.after), about=other),)


def _said_before(turn: Turn, other: str) -> str | None:
    """The one other batch of which this person said something last, and lately; None where it is of several."""
    here = [row.id for row in batches.open_here(turn) if row.id != other]
    said = [(e[-1], key) for key in here if (e := batches.standing(turn, key)) and turn.now - e[-1].said_at <= A_WHILE]
    own = [(event, key) for event, key in said if event.by == turn.person.id and not isinstance(event.what, Started)]
    latest = max(own, key=lambda one: one[0].said_at, default=None)
    if latest is None or sum(event.message == latest[0].message for event, _ in own) > 1:
        return None
    return latest[1]


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
