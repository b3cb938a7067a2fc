"""The entries are loaded once, by the first who asks, and nobody waits for the store meanwhile."""

import threading
import time
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from bot.assembly import Built, build, newcomer
from bot.reply import Message, Outgoing
from core.answers import likeness
from core.store import inbox

MONDAY = datetime(2027, 3, 1, 8, tzinfo=UTC)
PEOPLE = 12
SLOW = 5.0  # seconds that it takes at least
LESS = 4.0  # seconds that a turn waits for the store; a dozen turns take less on any machine


@pytest.fixture
def built(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Built:
    async def send(_: Outgoing) -> str:
        return "1"

    house = build(f"sqlite:///{tmp_path / 'house.db'}", newcomer("Europe/Vienna"), send)
    say(house, "0", "hello")  # what every line needs
    monkeypatch.setattr(house.house, "busy_seconds", LESS)
    likeness._index.forget()
    return house


@dataclass
class Loads:
    """Each time that they are loaded; it takes so many seconds, or until it is let go on."""

    began: list[str] = field(default_factory=list)
    seconds: float = SLOW
    go_on: threading.Event = field(default_factory=threading.Event)


@pytest.fixture
def loads(monkeypatch: pytest.MonkeyPatch) -> Loads:
    """They take longer to load than anybody waits for the store."""
    found, make = Loads(), likeness.indexed

    def slowly(*given: Any) -> likeness.Index:
        found.began.append(threading.current_thread().name)
        found.go_on.wait(found.seconds)
        return make(*given)

    monkeypatch.setattr(likeness, "indexed", slowly)
    return found


def say(built: Built, person: str, text: str) -> None:
    """Say a line; it is kept."""
    assert built.receive(Message(f"{person}:{text}", person, person, "Ada", MONDAY, text, ref=f"{person}:1"), MONDAY)


def test_many_ask_at_once_and_one_loads(built: Built, loads: Loads) -> None:
    """Each is kept and has an answer, though loading takes longer than anybody waits for the store."""
    with ThreadPoolExecutor(PEOPLE) as threads:
        list(threads.map(lambda n: say(built, str(n), "how long does bacon keep?"), range(1, PEOPLE + 1)))
    assert len(loads.began) == 1
    with built.house.reading() as tx:
        assert [inbox.first_time(tx, f"{n}:how long does bacon keep?", MONDAY) for n in (1, PEOPLE)] == [False, False]
    built.close()


def test_a_reading_is_kept_while_they_are_loaded(built: Built, loads: Loads) -> None:
    """Who asks nothing waits neither for the store nor for the entries."""
    loads.seconds = 60.0
    with ThreadPoolExecutor(2) as threads:
        asked = threads.submit(say, built, "1", "how long does bacon keep?")
        while not loads.began:
            time.sleep(0.01)
        say(built, "2", "thanks")
        assert not asked.done()
        loads.go_on.set()
        asked.result()
    built.close()


def test_what_broke_off_to_load_left_nothing_behind(built: Built, loads: Loads) -> None:
    """The turn that began anew is the only one: one answer."""
    say(built, "1", "how long does bacon keep?")
    with built.house.reading() as tx:
        count = tx.connection.exec_driver_sql("SELECT count(*) FROM outgoing WHERE chat = '1'").scalar()
    assert (count, len(loads.began)) == (1, 1)
    built.close()
