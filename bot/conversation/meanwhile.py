"""What is told of a piece while a question about it is open: kept with its hour, and taken once the piece is begun."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any, Final

from bot.conversation import starting
from bot.conversation.as_planned import show
from bot.conversation.half import TOLD, unpack
from bot.conversation.meats_in_turn import AND_THEN
from bot.facts import facts
from bot.intents.context import SHOWN
from bot.intents.intents import Change, Happened, Intent, Reading, Snooze, StepDone, StepMissed, StepSkipped
from bot.reply import Message, Reply
from bot.wording import unbegun
from core.service import batches
from core.service.turn import Turn

KEPT: Final = (StepDone, StepMissed, StepSkipped, Snooze, Reading, Happened, Change)
MOST: Final = 40  # lines of one cook
Answer = Callable[[Turn, Message], Sequence[Reply]]


def keep(turn: Turn, message: Message, intent: Intent, half: dict[str, Any]) -> Sequence[Reply]:
    """A deed, a reading or a mishap of a half begun piece, kept with its hour; what is missing is asked again."""
    said, text = dict(half), ""
    if isinstance(intent, KEPT) and (typed := message.text or _spelled(intent)):
        line = {"line": typed, "at": message.said_at}
        said[TOLD] = [*(one for one in said.get(TOLD, []) if one != line), line][-MOST:]
        text = unbegun.waits(intent, typed.strip()[:SHOWN], (said, turn.person, message.said_at))
    first, *rest = starting.begin(turn, said)
    return (replace(first, text=f"{text}\n{first.text}"), *rest) if text else (first, *rest)


def _spelled(intent: Intent) -> str:
    """A reading that was tapped, as it would be typed; "" of anything else."""
    read = intent.temperatures if isinstance(intent, Reading) else ()
    return ", ".join(f"{t.probe.value} {t.value:g} {t.unit or ''}".strip() for t in read if t.probe)


def waiting(turn: Turn) -> list[dict[str, Any]]:
    """The lines that wait beside the open question, with when each was said."""
    return list(((unpack(turn.open_question()) or {}).get("said") or {}).get(TOLD, []))


def _of_those_behind(turn: Turn) -> list[dict[str, Any]]:
    """The lines that were told of a piece that waits behind the one asked about: they are none of the other."""
    question = unpack(turn.open_question()) or {}
    behind = [*(question.get("said") or {}).get(AND_THEN, []), *question.get(AND_THEN, [])]
    return [line for half in behind for line in half.get(TOLD, [])]


def taken(turn: Turn, message: Message, told: list[dict[str, Any]], answer: Answer) -> Sequence[Reply]:
    """Every line that waited, answered as of its own hour, and the plan behind them; nothing while the piece waits."""
    told = [one for one in told if one not in _of_those_behind(turn)]
    begun = next((row.id for row in reversed(batches.open_here(turn)) if row.owner == turn.person.id), None)
    if not told or waiting(turn) or begun is None:
        return ()
    turn.ask(None)
    meal = batches.look(turn, begun).batch.setup.deadline
    batches.change(turn, begun, {"deadline": None})  # till all is told: what is done already takes no days any more
    lines: list[str] = []
    for one in told:
        said = replace(message, text=one["line"], said_at=one["at"], pressed=None, answers=None, edits=None, other=None)
        done = answer(turn, said)
        lines += [reply.text.partition("\n")[0] for reply in done[:1]]
    if meal is not None and meal > turn.now and batches.change(turn, begun, {"deadline": meal}).after.refusal:
        batches.change(turn, begun, {"deadline": None})
    after = batches.look(turn, begun)
    last = done[0].text.partition("\n")[2] if done else ""
    text = unbegun.taken("\n".join(dict.fromkeys(lines)), last)
    return (Reply(text, facts=facts(after), about=begun), *show(turn, after))
