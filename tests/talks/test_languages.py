"""Each member is spoken to in their own language: by Telegram's code at first, by what they say from then on."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.assembly import Built, build, newcomer
from bot.reply import Message, Outgoing

NOON = datetime(2027, 9, 23, 16, tzinfo=UTC)


class Chats:
    """A house and what it sent to each chat."""

    def __init__(self, folder: Path) -> None:
        self.sent: dict[str, list[Outgoing]] = {}
        self.house: Built = build(f"sqlite:///{folder / 'talk.db'}", newcomer("Europe/Vienna"), self._send)
        self.now = NOON

    async def _send(self, outgoing: Outgoing) -> str:
        self.sent.setdefault(outgoing.chat, []).append(outgoing)
        return f"{outgoing.chat}:{len(self.sent[outgoing.chat])}"

    async def say(self, chat: str, text: str, language: str | None) -> str:
        """What somebody is answered last."""
        self.now += timedelta(minutes=1)
        key = f"{chat}-{self.now.isoformat()}"
        self.house.receive(Message(key, chat, chat, chat, self.now, text, language=language), self.now)
        await self.house.postman.round(self.now)
        return self.sent[chat][-1].reply.text

    async def later(self, **by: int) -> None:
        """The clock moves, and what falls due goes out."""
        self.now += timedelta(**by)
        await self.house.postman.round(self.now)


@pytest.mark.parametrize(("code", "hello"), [("de", "Hallo."), ("de-AT", "Hallo."), ("en", "Hello."), ("fr", "Hello.")])
async def test_the_first_word_is_in_the_language_of_the_account(tmp_path: Path, code: str, hello: str) -> None:
    """A language that is not spoken gets English."""
    chats = Chats(tmp_path)
    assert (await chats.say("ida", "hello", code)).startswith(hello)
    chats.house.close()


@pytest.mark.parametrize(
    ("code", "units"),
    [("en-US", "lb, in and °F"), ("es-US", "lb, in and °F"), ("en-GB", "kg, mm and °C"), ("de", "kg, mm und °C")],
)
async def test_the_country_of_a_language_is_the_first_guess_of_the_units(tmp_path: Path, code: str, units: str) -> None:
    """A code without a country guesses nothing; what is said afterwards stands, whatever the account speaks."""
    chats = Chats(tmp_path)
    assert units in await chats.say("ida", "settings", code)
    assert "kg, mm" in await chats.say("ida", "only kg and c", code)
    assert "kg, mm" in await chats.say("ida", "settings", code)
    chats.house.close()


async def test_neighbours_keep_their_languages(tmp_path: Path) -> None:
    """Two chats of one house, turn about; and one changes over in the middle."""
    chats = Chats(tmp_path)
    assert (await chats.say("ida", "hallo", "de")).startswith("Hallo.")
    assert (await chats.say("bo", "hello", "en")).startswith("Hello.")
    assert "Rinderbrust" in await chats.say("ida", "3,2 kg rinderbrust flat für 2. oktober 13 uhr", "de")
    assert "brisket flat" in await chats.say("bo", "3.2 kg brisket flat for 2 october 13:00", "en")
    assert (await chats.say("bo", "auf deutsch", "en")).startswith("Notiert")
    assert (await chats.say("bo", "help", "en")).startswith("Jetzt kannst du")
    assert (await chats.say("bo", "in english", "en")).startswith("Noted")
    chats.house.close()


async def test_a_reminder_is_in_the_language_of_its_owner(tmp_path: Path) -> None:
    """Nobody speaks when it goes out."""
    chats = Chats(tmp_path)
    await chats.say("ida", "3,2 kg rinderbrust flat für 2. oktober 13 uhr, 48 mm, pökelsalz hat 6,25 %", "de")
    await chats.say("bo", "3.2 kg brisket flat for 2 october 13:00, 48 mm, cure is 6.25 %", "en")
    await chats.later(hours=1)
    first = {chat: next(o.reply.text for o in sent if o.reply.kind == "reminder") for chat, sent in chats.sent.items()}
    assert first["ida"].startswith("Lake ansetzen: 1,6")
    assert first["bo"].startswith("Make the brine: 1.6")
    chats.house.close()
