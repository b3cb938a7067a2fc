"""Words for what the needle put in, where it is not what was planned."""

from typing import Any

from bot.wording import numbers
from bot.wording.language import say
from core.batch.assess import Assessment


def not_so_much(a: Assessment) -> str:
    """So much goes into no piece: what was planned, and how it is told."""
    return say(
        "No needle puts so much into this piece, so nothing is noted: {planned} of pickle were planned.\n"
        "Type what went in, like «pumped 0.5 kg», or the weight with it, like «weighs 5.5 kg after pumping».",
        planned=_planned(a),
    )


def otherwise(a: Assessment, changes: dict[str, Any]) -> str:
    """What less, or more, than planned counts for; "" where it is as planned."""
    if changes.get("put_in_pumped") is None or a.dose is None:
        return ""
    if changes.get("put_in_cure_most") is not None:
        return say(
            "Planned were {planned}: what stayed out counts for the limit, and not for the cure. Pump the rest in while all is "
            "cold, and tell me all of it, like «pumped 0.5 kg».",
            planned=_planned(a),
        )
    if changes.get("put_in_cure", "") is None:
        return say(
            "Only {planned} of pickle were planned, so I do not know how strong that was: how much curing salt was in what went in?",
            planned=_planned(a),
        )
    return ""


def _planned(a: Assessment) -> str:
    return numbers.mass(a.dose.pumped_kg if a.dose else 0.0, a.person)
