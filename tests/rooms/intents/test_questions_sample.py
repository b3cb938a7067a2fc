"""Which of the questions of the sample are about the batch in hand, and which go to the entries.

Nothing in them may be taken for a reading, a start or a change: that would be a dose or a record that nobody gave.
"""

import pytest

from bot.intents.context import Context
from bot.intents.intents import Ask, Happened, Intent, MoveDeadline, Question, Reading, Resume, Settings, Unclear
from bot.intents.read import read
from tests.talk_lines import context, rows

START = context("none")
CURE = context("curing", due_step="flip/3")
COOK = context("cooking", last_core_c=62.0, last_pit_c=121.0)
ABOUT_THE_BATCH: dict[str, tuple[type[Intent], str]] = {
    "Q140": (Ask, "log"),
    "Q143": (Ask, "eta"),
    "Q144": (Ask, "eta"),
    "Q145": (Ask, "pit"),
    "Q146": (MoveDeadline, ""),
    "Q147": (MoveDeadline, ""),
    "Q148": (Ask, "away"),
    "Q156": (Ask, "log"),
    "Q164": (Ask, "plan"),
    "Q167": (Settings, ""),
    "Q171": (Resume, ""),
    "Q177": (Ask, "thickness"),
    "Q183": (Ask, "yield"),
}
SUMS = {
    "Q092": "ppm", "Q095": "dose", "Q096": "ppm", "Q098": "days", "Q099": "start_by", "Q103": "portions",
    "Q110": "convert",
    "Q111": "lethality", "Q112": "lethality", "Q114": "lethality", "Q116": "fire_out", "Q119": "cooling",
    "Q120": "cooling", "Q121": "spoons", "Q125": "equilibrium", "Q128": "scale", "Q130": "rub", "Q132": "fish_brine",
    "Q133": "thaw", "Q137": "sodium",
}  # fmt: skip
# told while meat is on the fire these are a record and a cry for help in one: the readings are kept
AT_THE_FIRE = {"Q154": "wrap", "Q182": "chill"}  # beside the fire these are about the batch that is on it
TOLD = {"Q116": [Reading, Happened], "Q119": [Reading, Ask]}


@pytest.mark.parametrize("where", [START, CURE, COOK], ids=["none", "curing", "cooking"])
@pytest.mark.parametrize("row", rows("questions_sample.csv"), ids=lambda row: row["id"])
def test_a_question_is_taken_as_one(row: dict[str, str], where: Context) -> None:
    """A question goes to the batch's own record or to the entries, with its text as typed."""
    found = read(row["question"], where)
    if row["id"] in TOLD and where is COOK:
        assert [type(intent) for intent in found] == TOLD[row["id"]]
        return
    if row["id"] in AT_THE_FIRE and where is COOK:
        assert found == [Ask(AT_THE_FIRE[row["id"]], text=row["question"])]
        return
    if row["id"] in ABOUT_THE_BATCH:
        kind, topic = ABOUT_THE_BATCH[row["id"]]
        assert [type(intent) for intent in found] == [kind]
        assert getattr(found[0], "topic", "") == topic
        return
    if row["id"] in SUMS and (where is START or found != [Question(row["question"])]):
        assert found == [Ask("sum", SUMS[row["id"]], row["question"])]
        return
    assert found == [Question(row["question"])]


@pytest.mark.parametrize(
    "text", ["wet or dry?", "is that the pit or the meat?", "can i put 900 g of cure in", "how much cure for 3 kg"]
)
def test_a_question_with_a_number_sets_nothing(text: str) -> None:
    """A question never changes a dose, a start or a record."""
    assert {type(intent) for intent in read(text, CURE)} <= {Question, Unclear, Ask}
