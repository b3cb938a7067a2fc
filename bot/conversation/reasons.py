"""Why an answer about a batch is as it is: by the sum that it rests on, an entry of the trade, or the record alone."""

from typing import Final

from bot.conversation.understand import Understood
from bot.wording import answers, sums_why, trade, unkept
from core.answers.entries import entry
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.service import batches
from core.service.turn import Turn

OF_BATCH: Final = "batch:"
DAYS, DOSE, HOURS, CHILL = "days", "dose", "hours", "chill"
ABOUT: Final = {
    **dict.fromkeys(("day", "out", "is_cured", "cured_yet", "earlier", "longer", "since", "begin", "earliest"), DAYS),
    **dict.fromkeys(
        ("dose", "grams", "reweighed", "cure_in", "less_water", "another_piece", "strength", "salty"), DOSE
    ),
    **dict.fromkeys(
        ("eta", "off", "in_time", "rate", "reaches", "hotter", "stall", "late", "sure", "meat_on", "light", "pull"),
        HOURS,
    ),
    "fire_hours": HOURS,
    **dict.fromkeys(("chill", "cooled"), CHILL),
}
ENTRIES: Final = {
    **dict.fromkeys(("flip_next", "flip_last", "flips_done", "skip_flip", "missed"), "flip-often"),
    **dict.fromkeys(("fridge_if", "fridge_log"), "fridge-temp"), "use_by": "store-cooked", "eat_cold": "eat-cold",
    "slice": "slice-thin", "warm_up": "steam", "rest": "rest-why", "hold": "hold", "wrap": "wrap-or-not",
    "fire": "vents", "pit_falls": "pit-drops", "bed": "night-cook", "at_core": "pull-temp", "pull_at": "pull-temp",
}  # fmt: skip
SUMS: Final = {
    "feed": "portions",
    "vessel": "brine_amount",
    "ice": "ice",
    "rub": "rub",
    "fuel": "fuel",
    "portion_salt": "sodium",
}
BY_PHASE: Final = {
    Phase.WAITING: DAYS, Phase.CURING: DAYS, Phase.DRYING: HOURS, Phase.COOKING: HOURS, Phase.RESTING: CHILL,
    Phase.CHILLING: CHILL, Phase.STORED: CHILL,
}  # fmt: skip


def of(turn: Turn, meant: Understood, topic: str) -> str:
    """The reason of an answer by its topic; of what only the record says, that, and what the plan rests on."""
    if topic in SUMS:
        return sums_why.why(SUMS[topic])
    if topic in ENTRIES:
        e = entry(ENTRIES[topic])
        return f"{trade.short(e, turn.person)[0]}\n{trade.sources(e)}"
    a = batches.look(turn, meant.of(None))
    if topic in ABOUT:
        return answers.why(a, ABOUT[topic])
    return f"{unkept.by_record()}\n{_plan(a)}".strip()


def _plan(a: Assessment) -> str:
    return answers.why(a, BY_PHASE.get(a.batch.phase, DAYS))
