"""The keeper sees counts and health, is told when nothing is kept, and never reads what people say."""

import asyncio
import json
import logging
import re
import sqlite3
from collections.abc import AsyncIterator, Iterator
from contextlib import closing, suppress
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.assembly import Built, build, newcomer
from bot.keeper.alarm import Alarm
from bot.keeper.door import Door
from bot.logs import JsonLine, PlainLine
from bot.reply import Message, Outgoing
from core.errors import NotKept
from core.service.admission import Rules

NOW = datetime(2027, 3, 1, 8, tzinfo=UTC)
KEEPER = "700001"
METRIC = re.compile(r'(?:# (?:HELP|TYPE) saltbell_\w+ .+|saltbell_\w+(?:\{\w+="[^"]*"\})? [0-9.e+-]+)')


class Letterbox:
    """Where everything goes that is sent."""

    def __init__(self) -> None:
        self.sent: list[Outgoing] = []

    async def send(self, outgoing: Outgoing) -> str:
        self.sent.append(outgoing)
        return str(len(self.sent))


@pytest.fixture
def letterbox() -> Letterbox:
    return Letterbox()


@pytest.fixture
def built(tmp_path: Path, letterbox: Letterbox) -> Iterator[Built]:
    house = build(f"sqlite:///{tmp_path / 'house.db'}", newcomer("Europe/Vienna"), letterbox.send, Rules(keeper=KEEPER))
    yield house
    house.close()


def said(text: str, key: str, person: str = "7", now: datetime | None = None) -> tuple[Message, datetime]:
    at = now or datetime.now(UTC)
    return Message(key, person, person, "Ida", at, text, ref=key), at


@pytest.fixture
async def port(built: Built) -> AsyncIterator[int]:
    door = Door(built.report)
    yield await door.open("127.0.0.1", 0)
    await door.close()


async def ask(port: int, request: str) -> tuple[int, str]:
    reader, writer = await asyncio.open_connection("127.0.0.1", port)
    writer.write(f"{request} HTTP/1.1\r\nhost: x\r\n\r\n".encode())
    answer = (await asyncio.wait_for(reader.read(), 60)).decode()
    writer.close()
    head, _, body = answer.partition("\r\n\r\n")
    return int(head.split(" ")[1]), body


async def test_metrics_count_turns_and_sends(built: Built, port: int) -> None:
    """Two messages, one of them twice, and their answers: each is counted, in the published text format."""
    message, at = said("help", "1")
    assert built.receive(message, at)
    assert not built.receive(message, at)
    assert built.receive(*said("my secret brisket", "2"))
    await built.postman.round(datetime.now(UTC))
    status, body = await ask(port, "GET /metrics")

    assert status == 200
    assert [line for line in body.splitlines() if not METRIC.fullmatch(line)] == []
    assert 'saltbell_updates_total{result="kept"} 2' in body
    assert 'saltbell_updates_total{result="repeated"} 1' in body
    assert 'saltbell_sends_total{result="reply"} 2' in body
    assert "saltbell_turn_seconds_count 3" in body
    assert 'saltbell_outbox_due{sort="reply"} 0' in body
    assert "secret" not in body
    assert "saltbell_estimate_seconds_count 0" in body
    built.receive(*said("3.2 kg brisket flat, cure is 6.25 %", "3"))
    body = (await ask(port, "GET /metrics"))[1]
    assert [line for line in body.splitlines() if not METRIC.fullmatch(line)] == []
    assert "saltbell_estimate_seconds_count 0" not in body
    assert float(body.split("saltbell_estimate_seconds_sum ")[1].split()[0]) > 0.0


async def test_health_says_what_is_wrong(built: Built, port: int, tmp_path: Path) -> None:
    """All well; then what is due is not sent for an hour; then the store is no store any more."""
    assert await ask(port, "GET /healthz") == (200, "ok\n")
    hour_ago = datetime.now(UTC) - timedelta(hours=1)
    built.receive(*said("help", "1", now=hour_ago))
    status, body = await ask(port, "GET /healthz")
    assert status == 503
    assert "s late" in body
    with closing(sqlite3.connect(tmp_path / "house.db")) as store:
        store.execute("DROP TABLE outgoing")
    status, body = await ask(port, "GET /healthz")
    assert (status, body.split(":")[0]) == (503, "the store cannot be read")
    assert "saltbell_store_up 0" in (await ask(port, "GET /metrics"))[1]


@pytest.mark.parametrize(
    ("request_", "status"), [("GET /", 404), ("GET /metrics/../x", 404), ("POST /metrics", 405), ("nonsense", 405)]
)
async def test_nothing_else_is_there(port: int, request_: str, status: int) -> None:
    """Two pages, to be read; anything else is refused, and the next caller is served."""
    assert (await ask(port, request_))[0] == status
    assert (await ask(port, "GET /healthz"))[0] == 200


def test_the_keeper_asks_in_the_chat(built: Built, letterbox: Letterbox) -> None:
    """«bot status» from the keeper is answered with counts; from anybody else it is a line like any other."""
    built.receive(*said("bot status", "1", person="7"))
    built.receive(*said("Bot status", "2", person=KEEPER))
    asyncio.run(built.postman.round(datetime.now(UTC)))

    other, keeper = (each.reply.text for each in letterbox.sent)
    assert keeper.startswith("All is kept.")
    assert "1 message taken" in keeper
    assert "taken and" not in other


def test_the_keeper_reads_what_was_called_wrong(built: Built, letterbox: Letterbox) -> None:
    """«wrong» keeps the question without a name; the keeper, and nobody else, lists it and takes it off the list."""
    lines = [
        ("best wood for pastrami", "7"),
        ("wrong", "7"),
        ("bot wrong", KEEPER),
        ("bot mended", KEEPER),
        ("bot wrong", KEEPER),
    ]
    for number, (text, person) in enumerate(lines):
        built.receive(*said(text, str(number), person=person))
    asyncio.run(built.postman.round(datetime.now(UTC)))

    texts = [each.reply.text for each in letterbox.sent]
    assert texts[1].startswith("Thank you")
    assert texts[2].startswith("Mend these entries")
    assert texts[2].endswith("wood: best wood for pastrami")
    assert texts[3:] == ["1 question is taken off the list.", "Nobody called an answer wrong."]


async def test_who_speaks_is_told_once_that_nothing_is_kept(letterbox: Letterbox) -> None:
    """The store is full: each chat is told once, the keeper with the reason; once it keeps again, the next time too."""
    full = [True]

    def receive(message: Message, now: datetime) -> bool:
        if full[0]:
            raise NotKept("database or disk is full")
        return True

    alarm = Alarm(letterbox.send, KEEPER)
    watched = alarm.receiving(receive)

    async def says(chat: str) -> None:
        message, _ = said("158", "1", person=chat)
        with suppress(NotKept):
            await asyncio.to_thread(watched, message, NOW)
        for _ in range(5):
            await asyncio.sleep(0)

    for chat in ("7", "7", "8"):
        await says(chat)
    assert [each.chat for each in letterbox.sent] == ["7", KEEPER, "8"]
    assert letterbox.sent[0].reply.text.startswith("Not kept yet")
    assert "disk is full" in letterbox.sent[1].reply.text
    assert "disk" not in letterbox.sent[0].reply.text
    full[0] = False
    await says("7")
    full[0] = True
    await says("7")
    assert [each.chat for each in letterbox.sent[3:]] == ["7", KEEPER]


@pytest.mark.parametrize("formatter", [PlainLine(), JsonLine()])
def test_a_log_line_tells_a_fault_without_its_words(formatter: logging.Formatter) -> None:
    """Kind and place of a fault and of its cause are in the line; what a person said is not."""
    try:
        try:
            raise KeyError("my secret brisket")
        except KeyError as cause:
            raise ValueError("could not read 'my secret brisket'") from cause
    except ValueError as trouble:
        info = (type(trouble), trouble, trouble.__traceback__)
    record = logging.LogRecord("bot.room", logging.ERROR, "x", 1, "a turn failed", (), info)
    line = formatter.format(record)

    assert "secret" not in line
    assert line.index("KeyError") < line.index("ValueError")
    assert "test_keeper.py" in line


def test_a_json_line_is_one_object() -> None:
    """Whatever is in a record, the line is one JSON object with its time, level, room and text."""
    record = logging.LogRecord("bot.room", logging.WARNING, "x", 1, "two\nlines %s", ("here",), None)
    line = JsonLine().format(record)

    assert "\n" not in line
    assert {**json.loads(line), "at": ""} == {
        "at": "",
        "level": "warning",
        "room": "bot.room",
        "text": "two\nlines here",
    }
