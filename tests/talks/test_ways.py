"""A meal that comes too soon: what is offered instead is computed, and pressing it gives just that."""

from datetime import datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.talks.player import Player

ZONE = ZoneInfo("Europe/Vienna")
START = datetime(2027, 9, 23, 18, 0, tzinfo=ZONE)
PIECES = ("3.2 kg brisket flat, 48 mm", "2.5 kg brisket point, 70 mm")


async def asked_too_soon(folder: Path, piece: str, meal: datetime) -> tuple[Player, dict[str, Any]]:
    """A chat in which a brine was asked for, and the answer to it."""
    player = Player(folder)
    heard = await player.play(f"{piece}, in a brine, for {meal.day} {meal:%B} {meal:%H:%M}, cure 6.25 %")
    return player, heard[0]


@pytest.mark.parametrize("piece", PIECES, ids=["flat", "point"])
@pytest.mark.parametrize("days", [1, 2, 4, 6, 8])
async def test_every_way_that_is_offered_is_real(tmp_path: Path, piece: str, days: int) -> None:
    """Each button gives a plan without a word more, for the meal that it names, the cure long enough for the middle."""
    meal = START.replace(hour=13) + timedelta(days=days)
    player, answer = await asked_too_soon(tmp_path / "asked", piece, meal)
    player.restart()
    if "refused" not in answer["facts"]:
        assert datetime.fromisoformat(answer["facts"]["serve_at"]) == meal  # it can be had: nothing is offered
        return
    assert answer["facts"]["refused"] == "TooSoon"
    assert "too soon" in answer["text"]
    assert len(answer["buttons"]) == len(answer["facts"]["ways"]) > 0

    for number, label in enumerate(answer["buttons"]):
        player, _ = await asked_too_soon(tmp_path / f"way{number}", piece, meal)
        pressed = await player.play(f"!{label}")
        player.restart()
        facts = pressed[0]["facts"]
        served = datetime.fromisoformat(facts["serve_at"]).astimezone(ZONE)
        assert "refused" not in facts, label
        assert f"{served:%a} {served.day} {served:%b %H:%M}" in label
        assert served >= meal
        assert facts["cure_days_planned"] >= facts["cure_days_advice"], label


async def test_the_first_way_that_cannot_be_had_in_time_is_said(tmp_path: Path) -> None:
    """The earliest meal that is named can be had: asked for, it gives a plan."""
    player, answer = await asked_too_soon(tmp_path, PIECES[0], START.replace(hour=13) + timedelta(days=2))
    earliest = answer["text"].split("the earliest meal is ")[1].split(".")[0]

    heard = await player.play(f"dinner moved to {earliest}")
    player.restart()
    assert "refused" not in heard[0]["facts"]
    assert heard[0]["facts"]["plan"]
