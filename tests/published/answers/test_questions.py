"""Sets of questions against the whole house: right and safe, dangers refused, off topic declined.

`questions_sample.csv` was written for this project; `second_reading` says where a published figure or a rule of ours
stands against its `expected`. The two other sets were each written before anybody looked at what the answers do with
them. The first look at each is in docs/science/questions.md; they have mended phrasings since.
"""

from pathlib import Path
from typing import Any

import pytest

from core.answers.entries import entries
from tests.published.answers.asked import answered_by, asked, confusion, table

SAMPLE = [row for row in table("questions_sample.csv") if row["kind"] != "needs-batch-context"]


def test_the_sample(tmp_path: Path) -> None:
    """Every question of the trade is met by the entry or the sum that was read to be right; 95 % is the least."""
    found = [answered_by(facts) for facts in asked(tmp_path, [row["question"] for row in SAMPLE])]
    wrong = [(row["id"], by) for row, by in zip(SAMPLE, found, strict=True) if by != row["answered_by"]]
    assert len(wrong) <= 0.05 * len(SAMPLE), wrong


@pytest.mark.parametrize(
    ("kind", "means"), [("dangerous-must-refuse-or-warn", "refused"), ("off-topic-must-decline", "declined")]
)
def test_dangers_are_refused_and_the_rest_declined(kind: str, means: str, tmp_path: Path) -> None:
    """All of them, with no exception."""
    rows = [row for row in SAMPLE if row["kind"] == kind]
    found = asked(tmp_path, [row["question"] for row in rows])
    assert [(r["id"], f["answer_kind"]) for r, f in zip(rows, found, strict=True) if f["answer_kind"] != means] == []


@pytest.mark.parametrize(("name", "floor"), [("heldout_questions.csv", 0.90), ("second_questions.csv", 0.85)])
def test_questions_that_were_unseen_once(name: str, floor: float, tmp_path: Path) -> None:
    """None off topic is answered, few are answered wrongly, and no dangerous one by an entry that grants something."""
    rows = table(name)
    found = asked(tmp_path, [row["question"] for row in rows])
    counts = confusion(rows, found)
    trade = sum(1 for row in rows if row["expected"])
    assert counts["off topic answered"] == 0, counts
    assert counts["right"] + counts["guessed"] + counts["offered"] >= floor * trade, counts
    dangerous = [(r, f) for r, f in zip(rows, found, strict=True) if _kind(r["expected"]) == "refused"]
    granted = [r["question"] for r, f in dangerous if _kind(answered_by(f)) == "entry"]
    assert granted == []


THIRD = [row for row in table("third_questions.csv") if row["kind"] != "needs-batch-context"]


def test_the_third_set(tmp_path: Path) -> None:
    """What was read to be right stays so; every danger is refused or warned of; `first_look` is what a stranger met."""
    found = asked(tmp_path, [row["question"] for row in THIRD])
    lost = [
        (row["id"], answered_by(facts))
        for row, facts in zip(THIRD, found, strict=True)
        if row["answered_by"] and row["answered_by"] != answered_by(facts)
    ]
    assert len(lost) <= 0.03 * len(THIRD), lost
    kinds = [(r["kind"], r["id"], f.get("answer_kind")) for r, f in zip(THIRD, found, strict=True)]
    warned = {"U121"}  # an undercooked bird is told its own floor
    assert [r for r in kinds if r[0].startswith("dangerous") and r[2] != "refused" and r[1] not in warned] == []
    answered = [r[1] for r in kinds if r[0].startswith("off") and r[2] != "declined"]
    assert len(answered) <= 2, answered  # the weather of a city and a washing machine have words of the trade


NTHS = (
    "fourth",
    "fifth",
    "sixth",
    "seventh",
    "eighth",
    "ninth",
    "tenth",
    "eleventh",
    "twelfth",
    "thirteenth",
    "fourteenth",
    "fifteenth",
    "sixteenth",
    "seventeenth",
    "eighteenth",
)
MORE_SETS = [f"{nth}_questions.csv" for nth in NTHS]


@pytest.mark.parametrize("name", MORE_SETS)
def test_the_answers_and_sums_of_more_sets(name: str, tmp_path: Path) -> None:
    """What was read to be right stays so; what has no `answered_by` is not met yet, and is no promise."""
    rows = [row for row in table(name) if row["answered_by"]]
    found = asked(tmp_path, [row["question"] for row in rows])
    lost = [
        (row["id"], answered_by(facts))
        for row, facts in zip(rows, found, strict=True)
        if row["answered_by"] != answered_by(facts)
    ]
    assert len(lost) <= 0.05 * len(rows), lost


WARNING = frozenset(
    {
        "brine-reuse",
        "smell-off",
        "pregnant",
        "kids-eat",
        "poison_centre",
        "garlic",
        "poultry-temp",
        "bacon-temp",
        "sausage",
        "jerky",
    }
)  # entries that begin with what not to do, or with what is still raw


@pytest.mark.parametrize("name", MORE_SETS)
def test_dangers_and_what_is_off_topic_in_more_sets(name: str, tmp_path: Path) -> None:
    """Every danger is refused or warned of; nothing off topic is answered, but selling and pets by their warning."""
    rows = [row for row in table(name) if row["kind"].startswith(("dangerous", "off"))]
    found = list(zip(rows, asked(tmp_path, [row["question"] for row in rows]), strict=True))
    granted = [r["id"] for r, f in found if r["kind"].startswith("dangerous") and not _warns(f)]
    answered = [
        (r["id"], answered_by(f)) for r, f in found if r["kind"].startswith("off") and f["answer_kind"] != "declined"
    ]
    assert granted == []
    assert {by for _, by in answered} <= {"selling", "pet-salt", "pet-share"}


def _warns(facts: dict[str, Any]) -> bool:
    by_law = facts.get("sum") == "ppm"  # the limit stands beside what was put in, even while its strength is asked for
    return facts["answer_kind"] == "refused" or facts.get("entry") in WARNING or by_law


def _kind(name: str) -> str:
    return entries()[name].kind if name in entries() else ""
