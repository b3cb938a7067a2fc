"""The whole house over Telegram: what is said counts once, and its answer arrives, whatever the network does."""

import asyncio
import json
from collections.abc import AsyncIterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.channels.telegram import circuit
from core.batch.events import Probe
from core.service import record
from core.store import batches
from tests.telegram.conftest import running
from tests.telegram.loopback import PATIENCE, BotApi
from tests.telegram.real_house import RealHouse


@pytest.fixture
async def home(server: BotApi, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[RealHouse]:
    """The real house behind a door that polls, its clock and the phones' on one morning of the year."""
    house = RealHouse(server, tmp_path)
    house.standing = datetime(2027, 9, 23, 8, 0, tzinfo=UTC)
    monkeypatch.setattr("tests.telegram.loopback_chats.time.time", lambda: house.now().timestamp())
    async with running(house.channel, house.channel.run_polling(house.open)):
        yield house
    house.close()


def batch_ids(home: RealHouse, chat: int) -> list[str]:
    with home.built.house.reading() as tx:
        return [row.id for row in batches.open_in(tx, str(chat))]


def readings(home: RealHouse, chat: int, probe: Probe) -> list[float]:
    with home.built.house.reading() as tx:
        a = record.look(tx, batches.open_in(tx, str(chat))[0].id, home.now())
    return [round(r.celsius, 2) for r in a.batch.of_probe(probe)]


async def started(server: BotApi, home: RealHouse, text: str = "3.2 kg brisket flat"):  # type: ignore[no-untyped-def]
    """Somebody with a batch whose plan they have seen."""
    ida = server.person("Ida")
    ida.says(text)
    await server.reaches(ida.chat, 1)
    ida.taps("6.25 %")
    await server.reaches(ida.chat, 2)
    return ida


async def test_a_line_and_a_tap_make_a_plan(server: BotApi, home: RealHouse) -> None:
    """The strength is asked for with buttons; the tap brings the plan with its dose."""
    ida = await started(server, home)
    asked, plan = server.to(ida.chat)[:2]

    assert "6.25 %" in dict(asked.buttons)
    assert "11.9 g curing salt" in plan.text
    assert len(batch_ids(home, ida.chat)) == 1


async def test_a_button_pressed_twice_counts_once(server: BotApi, home: RealHouse) -> None:
    """The second tap is told that it was noted, and the log holds one «done»."""
    ida = await started(server, home)
    await home.move(days=1)
    await home.settled()
    for _ in range(2):
        ida.taps("Done")
    await home.settled()

    texts = [each.text for each in server.to(ida.chat)]
    assert sum("noted already" in text for text in texts) == 1


async def test_an_edited_message_corrects_its_reading(server: BotApi, home: RealHouse) -> None:
    """A fridge reading of 8 °C edited to 3 leaves one reading, the new one."""
    ida = await started(server, home)
    ida.says("fridge 8 c")
    await server.reaches(ida.chat, 3)
    ida.edits("fridge 3 c")
    await home.settled()

    assert readings(home, ida.chat, Probe.FRIDGE) == [3.0]


@pytest.mark.parametrize("send", ["photo", "sticker", "voice"])
async def test_what_cannot_be_read_gets_one_sentence(server: BotApi, home: RealHouse, send: str) -> None:
    """A picture nobody asked for, a sticker, a voice message: one sentence that says what to type."""
    ida = server.person("Ida")
    getattr(ida, send)()
    sent = await server.reaches(ida.chat, 1)
    await home.settled()

    assert len(server.to(ida.chat)) == 1
    assert "Type it in words" in sent[0].text


async def test_a_group_works_with_privacy_on(server: BotApi, home: RealHouse) -> None:
    """Commands and replies reach the bot; the first «done» closes the step for everybody."""
    group = server.group("Supper committee")
    ida, bo = server.person("Ida"), server.person("Bo")
    ida.says("/start@saltbell_test_bot 3.2 kg brisket flat", group=group)
    await home.settled()
    ida.says(f"@{server.me['username']} 3.2 kg brisket flat", group=group)
    await server.until(lambda: any("6.25 %" in dict(each.buttons) for each in server.to(group.id)))
    ida.taps("6.25 %", group=group)
    await server.until(lambda: any("Dose:" in each.text for each in server.to(group.id)))
    await home.move(hours=14)
    await home.settled()
    brine = next(each for each in server.to(group.id) if each.text.startswith(("Make the brine:", "This was due")))
    bo.says("done", group=group, answering=brine.message_id)
    await server.until(lambda: any("Make the brine: done" in each.text for each in server.to(group.id)))

    assert bo.says("just talking among ourselves", group=group) == 0


async def test_the_record_arrives_as_a_document(server: BotApi, home: RealHouse) -> None:
    """«record» brings a PDF with the name of the batch; a tap on a form brings that form."""
    ida = await started(server, home)
    ida.says("record")
    await server.until(lambda: any(each.document for each in server.to(ida.chat)))
    ida.taps("HTML")
    await server.until(lambda: sum(each.document is not None for each in server.to(ida.chat)) == 2)

    found = [each.document for each in server.to(ida.chat) if each.document]
    assert [each.name for each in found] == ["record-flat-2027-09-23.pdf", "record-flat-2027-09-23.html"]
    assert found[0].content.startswith(b"%PDF-")
    assert "Begun 2027-09-23 10:00 +02:00 by Ida" in found[1].content.decode()


async def test_the_export_arrives_where_nobody_else_reads(server: BotApi, home: RealHouse) -> None:
    """In the private chat a file with settings and batch; in a group only the word where to ask."""
    ida = await started(server, home)
    ida.says("export my data")
    await server.until(lambda: any(each.document for each in server.to(ida.chat)))

    file = next(each.document for each in server.to(ida.chat) if each.document)
    kept = json.loads(file.content)
    assert file.name == "my-data-2027-09-23.json"
    assert (kept["schema"]["version"], kept["person"]["name"]) == (1, "Ida")
    assert [one["what"]["kind"] for one in kept["batches"][0]["said_by_you"]] == ["started", "changed"]
    assert kept["batches"][0]["said_by_you"][0]["what"]["setup"]["mass_kg"] == 3.2
    assert "11.9 g curing salt" in "".join(one["text"] or "" for one in kept["said_to_you"])

    group = server.group("Allotments")
    server.person("Bo").says(f"@{server.me['username']} export my data", group=group)
    (answer,) = await server.reaches(group.id, 1)
    assert (answer.document, "private chat" in answer.text) == (None, True)


async def test_a_picture_arrives_as_a_photo(server: BotApi, home: RealHouse) -> None:
    """«picture» brings a photo whose caption says the same."""
    ida = await started(server, home)
    ida.says("picture")
    await server.until(lambda: any(each.photo for each in server.to(ida.chat)))

    photo = next(each for each in server.to(ida.chat) if each.photo)
    assert photo.photo is not None
    assert photo.photo.startswith(b"\x89PNG")
    assert "pink in the middle" in photo.text


@pytest.mark.parametrize(
    ("how", "details"),
    [
        ("status", {"status": 429, "description": "Too Many Requests", "extra": {"retry_after": 1}}),
        ("status", {"status": 500}),
        ("garbled", {}),
        ("cut", {}),
    ],
)
async def test_a_reply_arrives_in_the_end(server: BotApi, home: RealHouse, how: str, details: dict) -> None:  # type: ignore[type-arg]
    """Whatever the Bot API answers first, the reply arrives, and the batch was begun once."""
    ida = server.person("Ida")
    server.fail("sendMessage", how, **details)
    ida.says("3.2 kg brisket flat")
    await home.settled()
    async with asyncio.timeout(PATIENCE):
        while not server.to(ida.chat):
            await home.move(seconds=5)
            await asyncio.sleep(0.05)  # what the API asked to wait passes by the machine's own clock

    assert any("How strong" in each.text for each in server.to(ida.chat))
    assert len(batch_ids(home, ida.chat)) == 1


async def test_a_reminder_that_could_not_go_out_says_when_it_was_due(
    server: BotApi, home: RealHouse, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The API is down when the flip falls due; it goes out later and says so."""
    monkeypatch.setattr(circuit, "LONGEST_WAIT", 0.2)
    ida = await started(server, home)
    fault = server.fail("sendMessage", status=502, times=10_000)
    await home.move(hours=14)
    fault.times = 0
    async with asyncio.timeout(PATIENCE):
        while len(server.to(ida.chat)) < 3:  # the channel stays away for a while of the machine's own time
            await home.move(minutes=3)
            await asyncio.sleep(0.05)

    assert any("This was due" in each.text for each in server.to(ida.chat)[2:])


async def test_a_blocked_bot_keeps_the_batch(server: BotApi, home: RealHouse) -> None:
    """Reminders stop, the batch stays, and nothing is sent any more."""
    ida = await started(server, home)
    ida.blocks()
    await server.until(lambda: not server.pending)
    await home.settled()
    count = server.count("sendMessage")
    await home.move(days=3)

    assert server.count("sendMessage") == count
    assert len(batch_ids(home, ida.chat)) == 1


async def test_who_lets_the_bot_in_again_is_reminded_again(server: BotApi, home: RealHouse) -> None:
    """A day later the block is taken back, without a word: what is still ahead of the batch comes as before."""
    ida = await started(server, home)
    ida.says("it is in the brine")
    await home.settled()
    ida.blocks()
    await home.settled()
    await home.move(days=1)
    before = len(server.to(ida.chat))
    ida.unblocks()
    await home.settled()
    await home.move(days=1)

    said = [each.text for each in server.to(ida.chat)[before:]]
    assert any("flip" in text.lower() for text in said)


async def test_a_group_that_moves_takes_its_batch_along(server: BotApi, home: RealHouse) -> None:
    """A group becomes a supergroup: batch and reminders go on under the new number."""
    group = server.group("Supper committee")
    ida = server.person("Ida")
    ida.says(f"@{server.me['username']} 3.2 kg brisket flat", group=group)
    await server.until(lambda: any("6.25 %" in dict(each.buttons) for each in server.to(group.id)))
    ida.taps("6.25 %", group=group)
    await server.until(lambda: any("Dose:" in each.text for each in server.to(group.id)))
    bigger = ida.upgrades(group)
    await home.settled()
    await home.move(days=1)
    await home.settled()

    assert len(batch_ids(home, bigger.id)) == 1
    assert server.to(bigger.id)


async def test_two_people_at_once_keep_to_their_own(server: BotApi, home: RealHouse) -> None:
    """Two chats speak at the same moment; neither sees the other's meat."""
    ida, bo = server.person("Ida"), server.person("Bo")
    ida.says("3.2 kg brisket flat")
    bo.says("2 kg brisket point")
    for who in (ida, bo):
        await server.reaches(who.chat, 1)
        who.taps("6.25 %")
        await server.reaches(who.chat, 2)

    foreign = server.to(ida.chat)[1].payload("Why these days")
    bo.taps_payload(foreign, server.to(bo.chat)[0].message_id)
    answered = await server.reaches(bo.chat, 3)
    assert "brisket flat" not in answered[-1].text
    assert "gone" in answered[-1].text
