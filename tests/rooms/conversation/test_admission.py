"""Who is let in: the listed and those with the code where the bot is private, else everybody within a day's limits."""

import re
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.assembly import Built, build, newcomer
from bot.reply import Message, Outgoing
from core.service import people as settings
from core.service.admission import TRIES, Rules
from core.service.turn import Said, Turn
from core.store import batches, people, visits

NOON = datetime(2027, 3, 1, 12, tzinfo=UTC)
CODE = "supper-2027"
FLAT = "3.2 kg brisket flat"
Open = Callable[[Rules], "Home"]


class Home:
    """A house with rules at its door; what comes back is what would go out."""

    def __init__(self, folder: Path, rules: Rules) -> None:
        self.said: list[Outgoing] = []
        self.now = NOON
        self.built: Built = build(f"sqlite:///{folder / 'home.db'}", newcomer("Europe/Vienna"), self._send, rules)
        self._number = 0

    async def _send(self, outgoing: Outgoing) -> str:
        self.said.append(outgoing)
        return f"{outgoing.chat}:{len(self.said)}"

    async def hears(self, text: str, person: str = "7", chat: str | None = None, **more: object) -> list[str]:
        """One message; the texts that answer it."""
        self._number += 1
        key, before = f"m{self._number}", len(self.said)
        grouped = chat is not None
        said = Message(key, chat or person, person, "Eve", self.now, text, in_group=grouped, ref=key, **more)  # type: ignore[arg-type]
        self.built.receive(said, self.now)
        await self.built.postman.round(self.now)
        return [one.reply.text for one in self.said[before:]]

    def knows(self, person: str) -> bool:
        with self.built.house.reading() as tx:
            return people.load(tx, person) is not None

    def batches(self, chat: str) -> int:
        with self.built.house.reading() as tx:
            return len(batches.open_in(tx, chat))


@pytest.fixture
def opened(tmp_path: Path) -> Iterator[Open]:
    homes: list[Home] = []

    def door(rules: Rules) -> Home:
        homes.append(Home(tmp_path, rules))
        return homes[-1]

    yield door
    for home in homes:
        home.built.close()


async def test_a_stranger_learns_only_that_it_is_private(opened: Open) -> None:
    """Whatever is said or tapped: one sentence, the way in, their number; no batch begins and nobody is kept."""
    home = opened(Rules(code=CODE))
    for how in (
        {"text": FLAT},
        {"text": "", "pressed": "1|a||plan"},
        {"text": "", "other": "photo"},
        {"text": "/start"},
    ):
        (answer,) = await home.hears(**how)  # type: ignore[arg-type]
        assert answer.startswith("This bot is private.")
        assert "your number here is 7" in answer
        assert CODE not in answer
    assert (home.knows("7"), home.batches("7")) == (False, 0)


@pytest.mark.parametrize("said", [CODE, f"  {CODE}\n", f"/start {CODE}"])
async def test_the_code_lets_in_for_good(opened: Open, said: str) -> None:
    """Said alone or carried by a link; from then on everything works, for this person in every chat."""
    home = opened(Rules(code=CODE))
    (welcome,) = await home.hears(said)
    assert welcome.startswith("Come in, the code is right.")
    await home.hears(FLAT)
    assert (home.knows("7"), home.batches("7")) == (True, 1)
    assert (await home.hears("6.25 %"))[0].startswith("Make the brine")
    home.now += timedelta(days=300)
    assert not (await home.hears("hello"))[0].startswith("This bot is private")
    assert not (await home.hears("hello", chat="-5"))[0].startswith("This bot is private")
    assert (await home.hears("hello", person="8"))[0].startswith("This bot is private")


@pytest.mark.parametrize("said", ["supper-2028", CODE.upper(), f"{CODE} please", f"{CODE}{CODE}", "", "süpper-2027"])
async def test_a_wrong_code_lets_nobody_in(opened: Open, said: str) -> None:
    """Nearly right is wrong."""
    home = opened(Rules(code=CODE))
    assert (await home.hears(said))[0].startswith("This bot is private")
    assert not home.knows("7")


async def test_a_code_cannot_be_found_by_trying(opened: Open) -> None:
    """After five tries a day there is silence, for the right one too; the next day it may be said."""
    home = opened(Rules(code=CODE))
    for n in range(TRIES):
        assert len(await home.hears(f"guess-{n:04}")) == 1
    assert await home.hears("guess-9999") == []
    assert await home.hears(CODE) == []
    home.now += timedelta(days=1)
    assert (await home.hears(CODE))[0].startswith("Come in")


async def test_a_group_is_let_in_as_a_whole(opened: Open) -> None:
    """The code said in a group is for everybody there, and for nobody elsewhere."""
    home = opened(Rules(code=CODE))
    assert (await home.hears("hello", person="8", chat="-5"))[0].endswith("your number here is -5.")
    assert (await home.hears(CODE, person="7", chat="-5"))[0].startswith("Come in")
    assert not (await home.hears("hello", person="8", chat="-5"))[0].startswith("This bot is private")
    assert (await home.hears("hello", person="8"))[0].startswith("This bot is private")
    assert (await home.hears("hello", person="7"))[0].startswith("This bot is private")


async def test_an_invitation_to_a_batch_lets_in(opened: Open) -> None:
    """Whoever gave it was let in; it holds once, and a code that opens nothing lets nobody in."""
    home = opened(Rules(allowed=frozenset({"7"})))
    await home.hears(FLAT)
    await home.hears("6.25 %")
    (passed_on, *_) = await home.hears("invite")
    code = re.search(r"join (\w{10})", passed_on)[1]  # type: ignore[index]
    assert (await home.hears("join 2222222222", person="8"))[0].startswith("This bot is private")
    assert not any(text.startswith("This bot is private") for text in await home.hears(f"join {code}", person="8"))
    assert "brine" in (await home.hears("what now", person="8"))[-1].lower()
    assert (await home.hears(f"join {code}", person="9"))[0].startswith("This bot is private")


async def test_the_listed_and_the_keeper_come_in_without_a_code(opened: Open) -> None:
    """People and groups of the list, and whoever keeps the bot; nobody else, and no word is a code there."""
    home = opened(Rules(allowed=frozenset({"7", "-5"}), keeper="1"))
    for person, chat in (("7", None), ("9", "-5"), ("1", None)):
        assert not (await home.hears("hello", person, chat))[0].startswith("This bot is private")
    assert (await home.hears("", person="9"))[0].startswith("This bot is private")
    assert (await home.hears(CODE, person="9"))[0].startswith("This bot is private")


async def test_a_list_may_grow_without_an_end_to_what_is_under_way(opened: Open) -> None:
    """A bot that becomes private keeps its batches: whoever is let in goes on where they were."""
    first = opened(Rules())
    await first.hears(FLAT)
    await first.hears("6.25 %")
    later = opened(Rules(allowed=frozenset({"7"})))
    later._number = 100
    assert later.batches("7") == 1
    assert "brine" in (await later.hears("what now"))[0].lower()


async def test_who_is_forgotten_is_a_stranger_again(opened: Open) -> None:
    """«forget me» takes the admission too."""
    home = opened(Rules(code=CODE))
    await home.hears(CODE)
    await home.hears("forget me")
    assert (await home.hears("yes"))[0].startswith("Forgotten")
    assert (await home.hears("hello"))[0].startswith("This bot is private")


async def test_a_chat_has_so_many_messages_a_day(opened: Open) -> None:
    """The limit is told once, with the hour from which the bot listens again; then silence till the day is over. UTC"""
    home = opened(Rules(messages=3))
    for _ in range(3):
        assert (await home.hears("hello"))[0].startswith("Hello")
    (told,) = await home.hears("hello")
    assert told.startswith("That is all that I can take from this chat today; I listen again tomorrow 01:00.")
    assert await home.hears("hello") == []
    assert (await home.hears("hello", person="8"))[0].startswith("Hello")
    home.now = NOON + timedelta(hours=12)
    assert (await home.hears("hello"))[0].startswith("Hello")


async def test_reminders_come_over_the_limit(opened: Open) -> None:
    """What is under way is looked after, however much was said."""
    home = opened(Rules(messages=3))
    await home.hears("3.2 kg brisket flat for 9 march 13:00, 48 mm, cure is 6.25 %")
    await home.hears("done")
    for _ in range(3):
        await home.hears("hello")
    before = len(home.said)
    home.now += timedelta(hours=20)
    await home.built.postman.round(home.now)
    assert len(home.said) > before
    assert home.said[-1].reply.kind in ("reminder", "alert")


async def test_a_day_takes_so_many_new_chats(opened: Open) -> None:
    """The third newcomer is asked to come tomorrow, and comes in then; who was here before is not counted."""
    home = opened(Rules(new_chats=2))
    for person in ("7", "8"):
        assert (await home.hears("hello", person))[0].startswith("Hello")
    for _ in range(2):
        assert (await home.hears("hello", "9"))[0].startswith("I cannot take in anybody new today")
    assert not home.knows("9")
    assert (await home.hears("hello", "7"))[0].startswith("Hello")
    home.now += timedelta(days=1)
    assert (await home.hears("hello", "9"))[0].startswith("Hello")


async def test_a_message_that_comes_again_is_counted_once(opened: Open) -> None:
    """A repeated update is no second message."""
    home = opened(Rules(messages=1))
    said = Message("same", "7", "7", "Eve", NOON, "hello", ref="same")
    assert [home.built.receive(said, NOON) for _ in range(3)] == [True, False, False]
    with home.built.house.transaction() as tx:
        assert visits.of_chat(tx, "7") == ("2027-03-01", 1, False)


async def test_a_chat_that_moves_or_goes_is_heard_of_any(opened: Open) -> None:
    """The other number of a group takes its admission along; that a stranger blocks the bot needs no code."""
    home = opened(Rules(code=CODE))
    await home.hears(CODE, person="7", chat="-5")
    assert await home.hears("-6", person="9", chat="-5", other="moved") == []
    assert not (await home.hears("hello", person="8", chat="-6"))[0].startswith("This bot is private")
    assert (await home.hears("hello", person="8", chat="-5"))[0].startswith("This bot is private")
    assert await home.hears("", person="9", other="blocked") == []


def test_strangers_are_forgotten_after_a_month(opened: Open) -> None:
    """Of a chat that was not let in nothing is kept for longer; an admission stays."""
    home = opened(Rules(code=CODE))
    with home.built.house.transaction() as tx:
        for chat in ("let in", "stranger"):
            visits.count(tx, chat, NOON.date())
        visits.admit(tx, "let in")
        assert visits.prune(tx, NOON.date() + timedelta(days=30)) == 0
        assert visits.prune(tx, NOON.date() + timedelta(days=31)) == 1
        assert visits.admitted(tx, "let in")


def test_forgetting_keeps_the_count_of_the_day(opened: Open) -> None:
    """Else a limit could be begun anew at will."""
    home = opened(Rules(messages=3))
    with home.built.house.transaction() as tx:
        visits.count(tx, "7", NOON.date())
        person = newcomer("Europe/Vienna")
        turn = Turn(tx, Said("k", "7", "7", "Eve", NOON, NOON), person)
        turn.keep_person(id="7")
        settings.forget(turn)
        assert visits.of_chat(tx, "7") == ("2027-03-01", 1, False)
