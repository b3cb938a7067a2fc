"""Every answer about a batch can say why, and can be called wrong."""

import pytest

from bot.conversation import curing, of_batch, reasons
from bot.wording import sums_why, yard
from core.answers.entries import entry

TOPICS = {*of_batch.TOPICS, *yard.TOPICS, *curing.topics(), "day", "dose", "eta", "plan", "now", "safe", "log"}


@pytest.mark.parametrize("topic", [*reasons.ABOUT, *reasons.ENTRIES, *reasons.SUMS])
def test_a_reason_is_of_a_topic(topic: str) -> None:
    """No reason stands for a topic that nobody answers."""
    assert topic in TOPICS


def test_what_a_reason_rests_on_is_there() -> None:
    """An entry with a source, or a sum with its rule."""
    assert all(entry(name).sources for name in reasons.ENTRIES.values())
    assert all(sums_why.why(kind) for kind in reasons.SUMS.values())
