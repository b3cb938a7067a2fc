"""What nobody understood, and could be of use: asked about by what is open, or by what it can be in this phase."""

from collections.abc import Sequence
from dataclasses import replace

from bot.conversation import starting
from bot.conversation.half import unpack
from bot.conversation.understand import Understood
from bot.reply import Reply
from bot.wording import asking, trade
from bot.wording import last_resort as words
from core.answers.entries import entry
from core.service import batches
from core.service.turn import Turn

MOST = 2  # entries below the things of the phase


def ask(turn: Turn, meant: Understood, typed: str, perhaps: Sequence[str] = ()) -> Sequence[Reply]:
    """A line that says nothing to anybody: the question that is open once more, else the things of the phase to tap.

    `perhaps` names the entries that are near it: the first are offered below.
    """
    asked, a = meant.asked or {}, meant.a
    text, rows = words.ask(typed, a)
    if asked.get("said") is not None:
        first, *rest = starting.begin(turn, dict(unpack(asked["said"])))
        return (replace(first, text=f"{words.not_that(typed)}\n{first.text}"), *rest)
    if asked.get("slot") == "cure" and a is not None:
        question, rows = asking.cure(a.batch.id)
        text = f"{words.not_that(typed)}\n{question}"
    near = list(perhaps[:MOST]) if a is not None else []
    rows = (*rows, *trade.perhaps([entry(name) for name in near])[1])
    body = {"answer_kind": "asked_back", "asked": "word"} | ({"offered": near} if near else {})
    return (Reply(text, buttons=rows, facts=body, about=meant.batch),)


def chosen(turn: Turn, meant: Understood, thing: str) -> Sequence[Reply]:
    """A thing that was tapped: what to type of it."""
    a = batches.look(turn, meant.batch) if meant.batch else None
    text, rows = words.asked(thing, a, turn.person)
    return (Reply(text, buttons=rows, facts={"answer_kind": "asked_back", "asked": thing}, about=meant.batch),)
