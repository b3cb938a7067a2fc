"""Somebody whose zone nobody knows yet: it is asked for once, and nothing that was typed before moves by it."""

from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.assembly import Built, build, newcomer
from bot.reply import Message, Outgoing

NOW = datetime(2027, 3, 1, 9, 0, tzinfo=UTC)


async def said_to(folder: Path, lines: tuple[str, ...]) -> list[str]:
    """What somebody new is answered, line by line."""
    sent: list[Outgoing] = []

    async def send(outgoing: Outgoing) -> str:
        sent.append(outgoing)
        return f"c:{len(sent)}"

    house: Built = build(f"sqlite:///{folder / 'new' / 'home.db'}", newcomer(None), send)
    for number, text in enumerate(lines):
        house.receive(Message(f"u{number}", "c", "ida", "Ida", NOW, text), NOW)
        await house.postman.round(NOW)
    house.close()
    return [outgoing.reply.text for outgoing in sent]


@pytest.mark.parametrize("city", ["Vienna", "Chicago", "Auckland", "Kathmandu"])
async def test_the_meal_keeps_its_hour(tmp_path: Path, city: str) -> None:
    """One o'clock on the day that was said is one o'clock there, over the clock changes that lie between."""
    asked, planned, *_ = await said_to(tmp_path, ("3.2 kg brisket flat for 3 april 13:00, cure 6.25 %", city))
    assert asked.startswith("In which city's time do you live?")
    assert "meal Sat 3 Apr 13:00" in planned


@pytest.mark.parametrize(
    ("typed", "city", "shown"),
    [
        ("7 lb", "Chicago", ("7.0 lb", "°F;")),
        ("7 lb", "Vienna", ("7.0 lb", "°C;")),
        ("3.2 kg", "Chicago", ("3.2 kg", "°F;")),
        ("3.2 kg", "Vienna", ("3.2 kg", "°C;")),
    ],
)
async def test_the_first_zone_brings_units(tmp_path: Path, typed: str, city: str, shown: tuple[str, str]) -> None:
    """°F in America, as a first guess; weights as the first was typed; «only kg and c» says otherwise."""
    planned = (await said_to(tmp_path, (f"{typed} brisket flat for 3 april 13:00, cure 6.25 %", city)))[1]
    assert all(words in planned for words in shown)


@pytest.mark.parametrize(
    ("city", "law"),
    [("Chicago", "(US, "), ("Vienna", "(EU, "), ("London", "(UK, "), ("Toronto", "(CA, ")],
)
async def test_the_first_zone_brings_the_law(tmp_path: Path, city: str, law: str) -> None:
    """The limit of the dose is that of the country, and the plan says whose law it goes by."""
    planned = (await said_to(tmp_path, ("3.2 kg brisket flat for 3 april 13:00, cure 6.25 %", city)))[1]
    assert law in planned
    assert "nitrite by the law of" in planned


async def test_a_language_that_shows_moves_no_gram_that_is_in(tmp_path: Path) -> None:
    """The law that goes with German is guessed when the cure has been weighed by that of the US: it stays weighed."""
    began = ("7.5 lb brisket flat, no date, cure is 6.25 %", "Vienna", "use US rules")
    said = await said_to(tmp_path, (*began, "brine done", "brine 3 c", "der kühlschrank hat 3 grad", "dosis"))
    assert any("12.6 g curing salt" in line for line in said)
    assert "12,6 g Pökelsalz" in said[-1]
