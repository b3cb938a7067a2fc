"""The language that somebody types is the one that they are answered in, and names their batches."""

from pathlib import Path

import pytest

from bot.intents.rewriting.tongue import given_away
from tests.talks.player import Player


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("hallo", "de"),
        ("der ofen hat 90, kern 12", "de"),
        ("schinken 3,2 kg für 6. november 13 uhr", "de"),
        ("kühlschrank 3", "de"),
        ("3.2 kg brisket flat for saturday 13:00", ""),
        ("the man den runs at 21 c", ""),
        ("lake 3 c", ""),
        ("48 mm", ""),
        ("", ""),
    ],
)
def test_a_line_gives_its_language_away(line: str, code: str) -> None:
    """Two words of a language, or half of all; one in a longer line is no proof."""
    assert given_away(line) == code


async def test_who_types_german_is_answered_in_german(tmp_path: Path) -> None:
    """Said once that it is so, kept from then on, and a language that somebody asked for is never taken away."""
    player = Player(tmp_path)
    (first,) = await player.play("hallo")
    (second,) = await player.play("3,2 kg rinderbrust flat für samstag 13 uhr")
    assert first["text"].startswith("Hallo.")
    assert "auf englisch" in first["text"]
    assert "auf englisch" not in second["text"]
    await player.play("auf englisch")
    (third,) = await player.play("der kühlschrank hat 3 grad")
    player.restart()
    assert "Kühlschrank" not in third["text"]


async def test_a_batch_is_called_by_its_name_in_the_persons_language_and_by_the_other(tmp_path: Path) -> None:
    """Begun in German it is «Schinken»; «ham» finds it too, «Speck» finds the «Bauchspeck», and never the other one."""
    player = Player(tmp_path)
    await player.play("auf deutsch", "schinken ohne knochen 3,2 kg für 9. oktober 13 uhr, pökelsalz hat 6,25 %")
    (speck,) = await player.play("bauchspeck 2,4 kg ohne schwarte, 45 mm, für den 9. oktober 18 uhr")
    assert speck["facts"]["batch_name"] == "Bauchspeck"
    names = [(await player.play(f"{name}: plan"))[0]["facts"]["batch_name"] for name in ("ham", "schinken", "speck")]
    player.restart()
    assert names == ["Schinken", "Schinken", "Bauchspeck"]
