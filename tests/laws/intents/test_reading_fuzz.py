"""Fifty thousand lines that nobody typed, by night a million: none raises or runs away, every offer fits a button."""

import os
import random
import time
from typing import get_args

import pytest

from bot.intents.buttons import carried
from bot.intents.context import Context, Phase
from bot.intents.intents import Intent, Unclear
from bot.intents.read import read
from tests.talk_lines import KILOS, POUNDS, context, rows

LINES = int(os.environ.get("SALTBELL_FUZZ_LINES", "50000"))  # by night a million
SLOWEST_S = 0.5
WORDS = [word for name in ("messages_sample.csv", "questions_sample.csv") for row in rows(name)
         for word in (row.get("message") or row["question"]).split()]  # fmt: skip
GLUE = (" ", " ", " ", " ", ", ", " and ", "", ". ", "\n", "/", " - ", "?! ")
ODD = "½¾°″'\"%#@*\u200b\u202e👍🏽٣１５８äöüß\x00\t(){}[]\\|"


def contexts(chance: random.Random) -> list[Context]:
    """A few dozen contexts, every phase among them."""
    slots = (None, "cure", "thickness", "mass", "deadline", "probe", "zone", "grey", "confirm", "batch", "when")
    return [
        context(
            phase,
            units,
            asked=chance.choice(slots),
            asked_value=chance.choice((None, 95.0)),
            last_core_c=chance.choice((None, 62.0)),
            due_step=chance.choice((None, "flip/3", "chill_check/1")),
            batches=chance.choice(((), (("b1", "flat 1"), ("b2", "ham")))),
        )
        for phase in get_args(Phase)
        for units in (POUNDS, KILOS)
        for _ in range(4)
    ]


def line(chance: random.Random) -> str:
    """Words of real lines in no order, numbers, odd characters, slips of the finger."""
    parts = [
        chance.choice((chance.choice(WORDS), str(chance.randint(-5, 400)), f"{chance.uniform(0, 12):.2f}"))
        for _ in range(chance.randint(1, 12))
    ]
    text = "".join(part + chance.choice(GLUE) for part in parts)
    if chance.random() < 0.3:
        place = chance.randrange(len(text) + 1)
        text = text[:place] + chance.choice(ODD) + text[place + chance.randint(0, 2) :]
    return text


@pytest.mark.slow
def test_fifty_thousand_lines() -> None:
    """Every line gives known intents in time, and offers only what a button can carry."""
    chance = random.Random(20270301)
    where = contexts(chance)
    kinds = set(get_args(Intent))
    for _ in range(100):  # what is built at the first line is built before the clock runs
        read(line(chance), chance.choice(where))
    for _ in range(LINES):
        text, here = line(chance), chance.choice(where)
        begun = time.thread_time()
        found = read(text, here)
        assert time.thread_time() - begun < SLOWEST_S, text
        assert found, text
        assert {type(intent) for intent in found} <= kinds, text
        offers = [option for intent in found if isinstance(intent, Unclear) for option in intent.options]
        assert all(map(carried, offers)), text
