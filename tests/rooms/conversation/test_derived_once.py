"""What a turn works out: a batch once as it stands, again where the message changes it; what it asks of the store."""

from datetime import UTC, datetime, timedelta

import pytest
from sqlalchemy import event

from bot.assembly import Built, build, newcomer
from bot.reply import Message, Outgoing
from core.answers.find import find
from core.batch.assess import Assessment
from core.batch.batch import Batch
from core.person import Person
from core.service import record

MONDAY = datetime(2027, 3, 1, 8, tzinfo=UTC)
BEGUN = ("3.2 kg pork belly, smoked, for saturday 13 march at 18:00", "cure is 6.25 %", "weighed", "it is in the cure")


@pytest.fixture
def built() -> Built:
    async def send(_: Outgoing) -> str:
        return "1"

    find("how long does it keep")  # a turn that has to load the entries begins anew
    house = build("sqlite://", newcomer("Europe/Vienna"), send)
    for number, text in enumerate(BEGUN):
        say(house, number, text)
    return house


def say(built: Built, number: int, text: str) -> None:
    at = MONDAY + timedelta(minutes=number)
    assert built.receive(Message(str(number), "garden", "7", "Ada", at, text, ref=f"garden:{number}"), at)


@pytest.mark.parametrize(
    ("text", "times"),
    [
        ("what now", 1), ("plan", 1), ("help", 1), ("is it safe", 1), ("why these days", 1), ("thanks", 1),
        ("how long does bacon keep", 1), ("fridge 3 c", 2), ("flip done", 2), ("48 mm", 2), ("undo", 2),
    ],
)  # fmt: skip
def test_a_batch_is_worked_out_no_more_than_it_changes(
    built: Built, text: str, times: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A question once, whatever is changed twice: as it stood and as it stands. The same message later anew."""
    asked: list[tuple[int, datetime]] = []
    assess = record.assess

    def counted(batch: Batch, person: Person, now: datetime) -> Assessment:
        asked.append((len(batch.readings), now))
        return assess(batch, person, now)

    monkeypatch.setattr(record, "assess", counted)
    say(built, 10, text)
    assert len(asked) == times
    asked.clear()
    say(built, 11, text)
    assert {now for _, now in asked} == {MONDAY + timedelta(minutes=11)}
    built.close()


@pytest.mark.parametrize(
    ("text", "most"),
    [("what now", 10), ("plan", 10), ("help", 9), ("is it safe", 10), ("fridge 3 c", 12), ("48 mm", 14)],
)
def test_a_turn_asks_the_store_no_more_than_it_must(built: Built, text: str, most: int) -> None:
    """Statements of a whole turn, its begin among them: each costs as much as reading a line does.

    An answer about a batch is kept with its question in one of them, so that «why» and «wrong» can be said of it.
    """
    asked: list[str] = []
    event.listen(built.house.engine, "before_cursor_execute", lambda *of: asked.append(of[2]))
    say(built, 10, text)
    assert len(asked) <= most, asked
    assert len({one for one in asked if one.startswith("SELECT")}) == sum(one.startswith("SELECT") for one in asked)
    built.close()
