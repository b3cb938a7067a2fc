"""The topics of a batch: each phrasing leads to its own, each topic has an answer, and what is told apart stays so."""

import pytest

from bot.conversation.closer import ABOUT, BESIDE_A_SUM, EXACT, ONLY_WITH
from bot.conversation.of_batch import OF_ONES_OWN, TOPICS
from bot.intents.filing import TOPICS as FILED
from bot.wording.yard import TOPICS as BESIDE_THE_FIRE
from core.answers.entries import OF_BATCH, asked_in, asked_of_batch
from core.answers.find import closer_than, of_batch

LOGGED = {"now", "plan", "log", "eta", "safe", "dose", "thickness", "pit", "yield", "who", "batches"}
ANSWERED = {*TOPICS, *ABOUT, *FILED, *BESIDE_THE_FIRE, *LOGGED}
# worded otherwise than the phrasings, invented; the topic, or None for a question of the trade
OTHERWISE = [
    ("which day is today in the brine", "day"),
    ("hows about getting it out a day or two sooner", "earlier"),
    ("was the bag flipped by anybody this evening", "flip_last"),
    ("at what oclock is the next turning", "flip_next"),
    ("tell me all fridge temps we have had", "fridge_log"),
    ("how many folks can eat from this one", "feed"),
    ("what hour did i tell you for dinner", "meal"),
    ("has the curing salt been added by anyone", "cure_in"),
    ("give me a summary of where we stand", "catch_up"),
    ("do i need to soak the wood", None),
    ("is a grey middle safe", None),
    ("why is my bacon green", None),
    ("can i cure with sea salt", None),
]


def test_each_topic_has_an_answer() -> None:
    """Of the batch in hand, or by the closer word for a broad one."""
    topics = {name.removeprefix(OF_BATCH) for name in asked_of_batch()}
    assert topics - ANSWERED == set()
    assert (BESIDE_A_SUM | OF_ONES_OWN | ONLY_WITH.keys()) - topics == set()


def test_each_phrasing_is_asked_for_once() -> None:
    """A phrasing leads to one topic, and to no entry beside it."""
    asked = [ask.lower() for asks in asked_of_batch().values() for ask in asks]
    of_entries = {ask.lower() for asks in asked_in("en").values() for ask in asks}
    assert len(asked) == len(set(asked))
    assert set(asked) & of_entries == set()


@pytest.mark.parametrize(("question", "topic"), OTHERWISE)
def test_other_words_lead_there_too(question: str, topic: str | None) -> None:
    """What was worded otherwise finds its topic; what is of the trade finds none."""
    assert of_batch(question) == topic


@pytest.mark.parametrize(
    ("taken_for", "question", "closer"),
    [
        ("plan", "when can i slice it", "slice"),
        ("plan", "show me the plan", None),
        ("plan", "days left", "day"),
        ("now", "whens the next flip", "flip_next"),
        ("safe", "did it cool fast enough", "cooled"),
        ("eta", "when is it ready", None),
    ],
)
def test_what_the_words_made_of_a_line_gives_way_to_what_is_plainly_meant(
    taken_for: str, question: str, closer: str | None
) -> None:
    """Only where that is likelier by far: a whole plan stays one, and no wish is read into a deed."""
    topics = frozenset(name.removeprefix(OF_BATCH) for name in asked_of_batch()) - EXACT
    assert closer_than(taken_for, question, topics) == closer
