"""A piece that shall be smoked cold: refused with the reason, kept as it was said, and planned hot by one tap."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.conversation import starting, trade
from bot.conversation.half import pack
from bot.conversation.understand import Understood
from bot.intents.cold_smoked import COLD_SMOKED
from bot.intents.dangers import COLD_SMOKE
from bot.intents.intents import Start
from bot.intents.severally import said_of
from bot.reply import Reply
from bot.wording import taken
from core.service.turn import Turn

SLOT: Final = "hot_instead"


def begin(turn: Turn, meant: Understood, intent: Start) -> Sequence[Reply]:
    """A start; of one that was wished cold the refusal, with what is noted of the piece and the way out."""
    if COLD_SMOKED not in intent.assumed:
        return starting.start(turn, meant, intent)
    (refused,) = trade.told(turn, COLD_SMOKE, meant.message.text)
    said = said_of(intent)
    turn.ask({"slot": SLOT, "said": pack(said)})
    text, rows = taken.hot_instead(refused.text, said, turn.person, turn.now)
    return (replace(refused, text=text, buttons=rows),)
