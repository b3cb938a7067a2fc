"""A small bot that is killed: takes the messages of a feed, keeps them, reminds, replies. Run as a program.

    worker.py FOLDER LIVE_SECONDS

What it does to the world it writes at once, a line each, into files of FOLDER: `confirmed` after a message was
committed, `street` when something was delivered. The feed repeats a message until it is confirmed.
"""

import asyncio
import os
import random
import sys
from datetime import UTC, datetime, timedelta
from pathlib import Path

from core.batch.events import Event, Probe, Read, Started
from core.plan.reminders import Wanted
from core.plan.steps import Urgency
from core.reminders.clock import Clock
from core.reminders.delivery import Postman
from core.store import batches, inbox, outbox
from core.store.database import Database, open_database
from core.store.outbox import Row

CHATS = 5
MESSAGES = 100_000


def now() -> datetime:
    return datetime.now(UTC)


def note(file: Path, line: str) -> None:
    """One line that is in the world once it is written, like a message that left."""
    handle = os.open(file, os.O_WRONLY | os.O_APPEND | os.O_CREAT)
    os.write(handle, f"{line}\n".encode())
    os.close(handle)


def take(database: Database, number: int) -> None:
    """One turn: the message's key, its event, its reply and its reminders, or nothing of them."""
    chat = f"chat{number % CHATS}"
    with database.transaction() as tx:
        if not inbox.first_time(tx, f"update/{number}", now()):
            return
        known = len(batches.events(tx, chat))
        if not known:
            batches.add(tx, chat, chat, "7", "flat", now())
        what = Read(Probe.CORE, float(number)) if known else Started("flat", {"mass": 3.2})
        batches.append(tx, chat, [Event(known + 1, now(), now(), "7", f"update/{number}", what)])
        outbox.put_reply(tx, chat, {"text": f"reply {number}"}, now())
        soon = now() + timedelta(milliseconds=random.randrange(0, 200))
        outbox.reconcile(tx, f"{number}", chat, [Wanted(f"{number}", "flip", soon, Urgency.QUIET)], now())


def render(row: Row, at: datetime) -> str:
    words = row.body["text"] if row.body else f"reminder {row.step}"
    return f"{row.chat} {words}{' repeat' if row.repeat else ''}"


async def run(folder: Path) -> None:
    database = open_database(f"sqlite:///{folder / 'cellar.db'}")
    outbox.give_back_all(database)

    async def send(words: str) -> str:
        await asyncio.sleep(random.random() * 0.004)
        note(folder / "street", words)
        await asyncio.sleep(random.random() * 0.004)
        return words

    clock = Clock(now)
    postman: Postman[str] = Postman(database, render, send, str(os.getpid()))
    delivering = asyncio.create_task(clock.run(postman))
    confirmed = folder / "confirmed"
    first = len(confirmed.read_text().splitlines()) if confirmed.exists() else 0
    note(folder / "lives", str(os.getpid()))
    until = now() + timedelta(seconds=float(sys.argv[2]))
    for number in range(first, MESSAGES):
        if now() > until:
            break
        await asyncio.to_thread(take, database, number)
        await asyncio.sleep(random.random() * 0.004)
        note(confirmed, str(number))
        clock.ring()
        await asyncio.sleep(random.random() * 0.03)
    while await postman.next_due() is not None or postman.busy:  # what is held is no more due, and not yet sent
        await asyncio.sleep(0.02)
    delivering.cancel()
    database.close()


if __name__ == "__main__":
    asyncio.run(run(Path(sys.argv[1])))
