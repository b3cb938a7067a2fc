"""What is answered to a number that may be several things, or to a reading that cannot be."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from bot.conversation import marking, reading, righting
from bot.conversation.guesses import with_degrees
from bot.facts import facts
from bot.intents.intents import Correct, Temperature
from bot.measures import to_house
from bot.reply import Reply
from bot.wording import general
from core.batch.events import Probe
from core.service import batches
from core.service.turn import Turn


def probe(turn: Turn, asked: dict[str, Any], place: str) -> Sequence[Reply]:
    """The number that was asked about, kept as "probe/unit"."""
    probe, unit = place.split("/")
    at = asked.get("at") or turn.said.said_at
    a = batches.look(turn, asked["batch"])
    scale = with_degrees(turn, [Temperature(float(asked["value"]), unit, Probe(probe))])
    return _and(scale, reading.keep(turn, a, [(Probe(probe), to_house(float(asked["value"]), unit), at)]))


def _and(scale: str, replies: Sequence[Reply]) -> Sequence[Reply]:
    """What a reading says, and that bare numbers are read in another scale from now on."""
    first, *rest = replies
    return (replace(first, text=f"{first.text}\n{scale}") if scale else first, *rest)


def settle(turn: Turn, asked: dict[str, Any], answer: str) -> Sequence[Reply]:
    """The doubted reading kept, kept as suggested, or forgotten; the others of the same message are kept."""
    if asked.get("instead_of") is not None:
        return righting.settle_doubt(turn, asked, answer)
    place, _, unit = answer.partition("/")
    if unit:
        return reading.mended(turn, asked, Correct(probe=Probe(place), unit=unit))
    listed = reading.waiting(asked)
    which = int(asked["which"])
    there, celsius, at = listed[which]
    scale = ""
    match answer:
        case "suggested":
            at = asked.get("suggested_at") or at
            listed[which] = (Probe(asked.get("suggested_probe") or there), float(asked["suggested"] or celsius), at)
            if asked.get("why") == "unit":
                other = "f" if asked["unit"] == "c" else "c"
                scale = with_degrees(turn, [Temperature(float(asked["typed"]), other, listed[which][0])])
        case "drop":
            listed.pop(which)
        case "off":
            marking.off_before(turn, asked["batch"])
    a = batches.look(turn, asked["batch"])
    if not listed:
        turn.ask(None)
        return (Reply(general.forgotten(), facts=facts(a), about=a.batch.id),)
    return _and(scale, reading.keep(turn, a, listed))
