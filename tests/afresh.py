"""A line read as if it were the first: nothing is remembered of what its readers found in it before."""

from bot import measures
from bot.intents import clause, meats, normal
from bot.intents.context import Context
from bot.intents.intents import Intent
from bot.intents.read import read
from bot.intents.sums import told, which
from core import patterns
from core.answers import dangers, likeness

OF_A_LINE = (
    measures.find, measures._convert, clause.remembered, meats.meat, normal.normal, which.sum_of, told.told,
    dangers.grave, dangers.abroad, dangers._listed, dangers._spelled, likeness._likenesses,
)  # fmt: skip


def afresh(line: str, where: Context) -> list[Intent]:
    """What a line means, with every memory of single lines emptied before; words are remembered, as in a long run."""
    patterns.forget()
    for remembered in OF_A_LINE:
        remembered.cache_clear()
    return read(line, where)
