"""What somebody writes is never anything but words: no path, no statement, no format, no number of another's batch."""

import json
import string

import pytest
from sqlalchemy import text

from core.service import record
from core.store import batches
from tests.talks.player import Player

ILL = (
    "../../../../etc/passwd",
    "'; DROP TABLE batches; --",
    '" OR 1=1 --',
    "{0.__class__.__mro__} {name}",
    "%s%n%x %(a)s",
    "$(touch /tmp/cellar) `id`",
    "<b>bold</b> *bold* _x_ [a](tg://user?id=1)",
    "\u202eright to left\u2066",
    "a\u0000b",
    "\ud83d",
)
BEGUN = ("3.2 kg brisket flat for 2 october 13:00", "!6.25 %")


def tables(player: Player) -> list[str]:
    with player.house().house.reading() as tx:
        return sorted(tx.execute(text("SELECT name FROM sqlite_master WHERE type = 'table'")).scalars().all())


@pytest.mark.parametrize("ill", ILL)
async def test_a_name_is_only_a_name(player: Player, ill: str) -> None:
    """Somebody is called that, and says it, and taps it: the batch goes on, the store is whole, no file is astray."""
    before = tables(player)
    await player.play(*BEGUN)
    for what in (
        {"text": "plan"},
        {"text": ill},
        {"text": f"call it {ill}"},
        {"text": f"note {ill}"},
        {"pressed": ill},
    ):
        for said in await player.send(name=ill, **what):
            assert "Something went wrong" not in said["text"]
            assert not {"class", "__mro__"} & set(said["text"].split("'")), said["text"]
    assert tables(player) == before
    with player.house().house.reading() as tx:
        assert [batch.owner for batch in batches.open_in(tx, "you")] == ["you"]
        assert tx.execute(text("PRAGMA integrity_check")).scalar() == "ok"
    assert {path.relative_to(player.folder).parts[0].split(".")[0] for path in player.folder.rglob("*")} <= {
        "talk",
        "pictures",
    }


async def test_numbers_of_batches_cannot_be_guessed(player: Player) -> None:
    """The id of a batch is drawn by lot out of more than any limit of a day could try, and tells nothing of when."""
    with player.house().house.reading() as tx:
        ids = {batches.new_id(tx) for _ in range(500)}
    assert len(ids) == 500
    assert all(len(each) >= 8 and set(each) <= set(string.ascii_letters + string.digits + "-_") for each in ids)
    firsts = {each[0] for each in ids}
    assert len(firsts) >= 12


async def test_an_export_holds_what_was_written_as_it_was(player: Player) -> None:
    """Ill words come out of the store as they went in, as JSON that any reader takes."""
    await player.play(*BEGUN)
    said = await player.send(name=ILL[1], text="export my data")
    assert said
    assert json.loads(json.dumps(said)) == said


async def test_a_chat_keeps_no_more_batches_apart_than_it_can(player: Player, monkeypatch: pytest.MonkeyPatch) -> None:
    """One more is refused with what to do, an invitation too; where one is over there is room for it."""
    monkeypatch.setattr(record, "MOST_OPEN", 2)
    for meat in ("brisket flat", "pork belly"):
        await player.play(f"3.2 kg {meat}, cure is 6.25 %")
    (refused,) = await player.play("2 kg duck breast, cure is 6.25 %")
    assert refused["facts"]["refused"] == "TooMany"
    assert "2 batches" in refused["text"]
    with player.house().house.reading() as tx:
        assert tx.execute(text("SELECT count(*) FROM batches")).scalar() == 2
    await player.play("cancel the flat")
    with player.house().house.reading() as tx:
        rows = tx.execute(text("SELECT count(*) FROM batches WHERE closed_at IS NULL")).scalar()
    if rows == 2:
        await player.play("yes")
    (begun, *_) = await player.play("2 kg duck breast, cure is 6.25 %")
    assert "refused" not in begun["facts"]
