"""A mishap is one however its length or its reason is told, in both languages; a wish and a question are none."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from bot.intents.context import Context
from bot.intents.intents import Happened
from bot.intents.read import read

UNDER_WAY = Context(
    now=datetime(2027, 9, 23, 16, tzinfo=UTC), zone="Europe/Vienna", batch="b", batches=(("b", "flat"),), mass=3.0
)


def _happened(text: str, phase: str, language: str) -> list[Happened]:
    intents = read(text, replace(UNDER_WAY, phase=phase, language=language))
    return [one for one in intents if isinstance(one, Happened)]


@pytest.mark.parametrize(
    ("text", "phase", "what", "facts"),
    [
        ("kids left the fridge open, no idea how long, shows 9C", "curing", "warm_fridge", {"unknown", "room_c"}),
        ("fridge was open, not sure how long", "curing", "warm_fridge", {"unknown"}),
        ("fire was out, half an hour", "cooking", "fire_out", {"hours"}),
        ("fire went out, about an hour", "cooking", "fire_out", {"hours"}),
        ("i put 2 heaped tsp of pink salt extra to be safe", "curing", "dosed_twice", set[str]()),
        ("i added a bit more cure to be sure", "curing", "dosed_twice", set[str]()),
        ("my husband added cure again", "curing", "dosed_twice", set[str]()),
        ("my husband put the cure in a second time", "curing", "dosed_twice", set[str]()),
        ("fridge stopped working, 49 inside, dont know since when", "curing", "power_cut", {"unknown"}),
        ("meat was left out, no idea how long", "curing", "left_out", {"unknown"}),
        ("it lay on the side since like 9pm, cured so its alright eh", "stored", "left_out", {"hours"}),
    ],
)
def test_a_mishap_in_english(text: str, phase: str, what: str, facts: set[str]) -> None:
    (found,) = _happened(text, phase, "en")
    assert (found.what, set(found.facts)) == (what, facts)


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("kinder haben den kühlschrank offen gelassen, keine ahnung wie lange, zeigt 9 grad", "warm_fridge"),
        ("kühlschrank stand offen, weiß nicht wie lange", "warm_fridge"),
        ("hab 2 teelöffel pökelsalz extra reingetan, sicher ist sicher", "dosed_twice"),
        ("habe noch etwas mehr pökelsalz dazu", "dosed_twice"),
        ("mein mann hat das pökelsalz nochmal rein", "dosed_twice"),
        ("tür war einen spalt offen, 8 grad", "warm_fridge"),
        ("reste stehen noch auf dem tisch", "left_out"),
    ],
)
def test_a_mishap_in_german(text: str, what: str) -> None:
    (found,) = _happened(text, "curing", "de")
    assert found.what == what


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("off to bed, will let the fire go out and relight at 6", "en"),
        ("can i add more cure", "en"),
        ("should i put some more cure in", "en"),
        ("i want to add more cure to be safe", "en"),
        ("will add another spoon of cure", "en"),
        ("kann ich mehr pökelsalz nehmen", "de"),
        ("soll ich extra pökelsalz dazu geben?", "de"),
    ],
)
def test_a_wish_is_no_mishap(text: str, language: str) -> None:
    assert _happened(text, "cooking" if "fire" in text else "curing", language) == []
