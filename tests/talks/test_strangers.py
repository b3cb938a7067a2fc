"""Nobody outside the chat of a batch sees or changes anything of it, nor learns that it is there."""

from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import pytest

from bot.intents.buttons import payload
from bot.intents.intents import Ask, Cancel, Change, Choose, Intent, StepDone, Undo
from core.store import batches
from tests.talks.player import Player

OURS = "ours0001"
NOBODYS = "nobodys1"
TAPS: tuple[Intent, ...] = (
    StepDone("brine", batch=OURS),
    Change({"thickness": 0.05}, batch=OURS),
    Ask("plan", batch=OURS),
    Ask("record", "csv", batch=OURS),
    Undo(batch=OURS),
    Cancel(batch=OURS, sure=True),
    Choose("batch", OURS, OURS),
    Choose("moved", OURS, OURS),
)


def elsewhere(intent: Intent) -> Any:
    """The same tap for a batch that there is not."""
    swapped = {**vars(intent), "batch": NOBODYS}
    return type(intent)(**{k: NOBODYS if v == OURS else v for k, v in swapped.items()})


@pytest.fixture
async def player(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[Player]:
    """A chat with one batch whose brine waits to be made."""
    monkeypatch.setattr(batches, "new_id", lambda _: OURS)
    found = Player(tmp_path)
    await found.play("3.2 kg brisket flat for 2 october 13:00, 48 mm, cure is 6.25 %")
    yield found
    found.restart()


@pytest.mark.parametrize("intent", TAPS, ids=lambda intent: type(intent).__name__)
async def test_a_tap_from_elsewhere(player: Player, intent: Intent) -> None:
    """A button of the batch, pressed in another chat, is answered as one of a batch that there is not."""
    eve = {"chat": "eve", "person": "eve", "name": "Eve"}
    (real,) = await player.send(**eve, pressed=payload(intent))
    (none,) = await player.send(**eve, pressed=payload(elsewhere(intent)))
    assert (real["text"], real["buttons"]) == (none["text"], none["buttons"])
    assert "brisket" not in real["text"]


async def test_nothing_was_changed(player: Player) -> None:
    """After all of that, and words of theirs, the batch stands as it stood."""
    for intent in TAPS:
        await player.send(chat="eve", person="eve", name="Eve", pressed=payload(intent))
    for line in ("done", "plan", "undo", "cancel", "that was for the flat", f"{OURS}"):
        for said in await player.send(chat="eve", person="eve", name="Eve", text=line):
            assert "brisket flat" not in said["text"].replace("«3.2 kg brisket flat for saturday 13:00»", "")
    (now,) = await player.play("what now")
    assert now["text"].startswith("Make the brine:")


async def test_a_reply_from_elsewhere(player: Player) -> None:
    """A reply to a message of the batch, sent from another chat, finds no batch."""
    for number in range(1, 4):
        found = await player.send(chat="eve", person="eve", name="Eve", text="done", answers=f"talk-bot-{number}")
        assert all("done" not in said["text"].split(":")[-1][:6] for said in found)
    (now,) = await player.play("what now")
    assert now["text"].startswith("Make the brine:")
