"""A picture or a file that cannot be made: its words arrive all the same, a little later, and the talk goes on."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from signal import SIGKILL

import pytest

from bot import pictures
from bot.apart import apart
from bot.assembly import Built, build, newcomer
from bot.papers import forms
from bot.reply import Message, Outgoing

NOON = datetime(2027, 3, 1, 12, tzinfo=UTC)


@pytest.fixture
def sent() -> list[Outgoing]:
    return []


@pytest.fixture
def built(tmp_path: Path, sent: list[Outgoing]) -> Iterator[Built]:
    async def send(outgoing: Outgoing) -> str:
        sent.append(outgoing)
        return str(len(sent))

    house = build(f"sqlite:///{tmp_path / 'house.db'}", newcomer("Europe/Vienna"), send)
    for n, text in enumerate(("3.2 kg brisket flat for 14 march 13:00, 48 mm, cure is 6.25 %",)):
        house.receive(Message(f"m{n}", "7", "7", "Ida", NOON, text, ref=f"m{n}"), NOON)
    yield house
    house.close()


async def asked(built: Built, text: str, at: datetime = NOON) -> None:
    built.receive(Message(text, "7", "7", "Ida", at, text, ref=text), at)
    await built.postman.round(at)


async def test_a_record_is_made_when_it_goes_out(built: Built, sent: list[Outgoing]) -> None:
    """What waits in the outbox holds no file; what goes out holds all that was said till then."""
    built.receive(Message("r", "7", "7", "Ida", NOON, "record json", ref="r"), NOON)
    built.receive(Message("d", "7", "7", "Ida", NOON, "52 mm", ref="d"), NOON)
    await built.postman.round(NOON)
    (document,) = [one.document for one in sent if one.document]
    assert b'"thickness_m": 0.052' in document.content
    assert document.name == "record-flat-2027-03-01.json"


async def test_a_file_that_cannot_be_made_costs_only_itself(
    built: Built, sent: list[Outgoing], monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """Tried twice; then the words go without it and say so, the next line is answered, and the keeper has the trace."""

    def broken(_: object) -> bytes:
        raise MemoryError

    await built.postman.round(NOON)
    sent.clear()
    monkeypatch.setitem(forms.FORMS, "pdf", broken)
    await asked(built, "record")
    assert sent == []
    await built.postman.round(NOON + timedelta(seconds=5))
    assert [one.document for one in sent] == [None]
    assert sent[0].reply.text.endswith("(The picture or file could not be made; ask for it again.)")
    assert "Keep this record" in sent[0].reply.text
    assert sent[0].reply.buttons
    assert "encloses cannot be made" in caplog.text
    await asked(built, "record csv", NOON + timedelta(seconds=6))
    assert sent[-1].document is not None


async def test_a_picture_whose_process_dies_costs_only_itself(
    built: Built, sent: list[Outgoing], monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """As where there is no memory for it: the words go without it, and the keeper has a line."""
    await built.postman.round(NOON)
    sent.clear()
    monkeypatch.setattr(pictures, "apart", lambda *_: apart("signal:raise_signal", SIGKILL))
    await asked(built, "picture")
    await built.postman.round(NOON + timedelta(seconds=5))
    assert [one.picture for one in sent] == [None]
    assert sent[0].reply.text.endswith("(The picture or file could not be made; ask for it again.)")
    assert "broke off apart (-9)" in caplog.text


async def test_a_file_whose_batch_is_gone_leaves_its_words(built: Built, sent: list[Outgoing]) -> None:
    """Nothing to make a record of any more: the words go alone, and nothing breaks."""
    from bot.documents import made
    from bot.reply import DocumentWanted

    assert made(built.house, DocumentWanted("pdf", batch="nobodys1"), NOON) is None
