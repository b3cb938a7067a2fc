"""After an outage of the Bot API what waits comes back at its pace, in no herd: in simulated time."""

import asyncio
import random
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from types import SimpleNamespace
from typing import Any, cast

import httpx
import pytest
from sqlalchemy import insert
from telegram.error import NetworkError

from bot.channels.telegram.account import ServerTrouble, Wire
from bot.channels.telegram.circuit import FAILURES_TO_OPEN, LONGEST_WAIT, Circuit
from bot.channels.telegram.pacer import Pacer
from bot.channels.telegram.sending import Sender
from bot.reply import Outgoing, Reply
from core.reminders import delivery
from core.reminders.delivery import LONGEST, Postman
from core.store import outbox
from core.store.database import Database, open_database
from core.store.outbox import Row
from core.store.tables import outgoing
from tests.benchmark.simulated import inline, simulate
from tests.telegram.loopback_chats import Limits

START = datetime(2027, 3, 1, 8, tzinfo=UTC)
REMINDERS, REPLIES = 950, 50
OUTAGE = 240.0  # seconds
WAY = 0.05


def bad_gateway() -> Exception:
    return ServerTrouble(502)


def nobody_there() -> Exception:
    trouble = NetworkError("refused")
    trouble.__cause__ = httpx.ConnectError("refused")
    return trouble


class Api:
    """The Bot API by its published limit of 30 a second, which fails until it is back."""

    def __init__(self, now: Callable[[], float], fails: Callable[[], Exception]) -> None:
        self.now, self.fails = now, fails
        self.tried: list[float] = []
        self.arrived: list[tuple[float, str]] = []

    async def send_message(self, *, chat_id: str, **_: object) -> SimpleNamespace:
        await asyncio.sleep(WAY / 2)
        if self.now() < OUTAGE:
            self.tried.append(self.now())
            raise self.fails()
        self.arrived.append((self.now(), chat_id))
        await asyncio.sleep(WAY / 2)
        return SimpleNamespace(chat_id=chat_id, message_id=len(self.arrived))


def waiting() -> Database:
    """A store with a message for each of a thousand chats, all of them due."""
    store = open_database("sqlite://")
    due = {"made_at": START, "due_at": START, "free_at": START, "state": "waiting", "kind": "flip", "urgency": "quiet"}
    rows: list[dict[str, Any]] = [
        due | {"batch": f"b{number}", "chat": str(number), "sort": "reminder", "step": "flip"}
        for number in range(REMINDERS)
    ]
    with store.transaction() as tx:
        tx.execute(insert(outgoing), rows)
        for number in range(REMINDERS, REMINDERS + REPLIES):
            outbox.put_reply(tx, str(number), {"text": "hello"}, START)
    return store


def worded(row: Row, now: datetime) -> Outgoing:
    return Outgoing(row.id, row.chat, now, Reply("Flip it.", kind="reply" if row.sort == "reply" else "reminder"))


async def deliver(store: Database, api: Api) -> None:
    """As the alarm clock does: when something is due, a round; until nothing is left."""
    sender = Sender(cast(Wire, api), Pacer(time=api.now), Circuit(api.now), lambda _: True)
    postman: Postman[Outgoing] = Postman(store, worded, sender.send, "me")
    postman.marked = sender.marked
    while (due := await postman.next_due()) is not None:
        await asyncio.sleep(max(0.001, (due - START).total_seconds() - api.now()))
        await postman.storm(lambda: START + timedelta(seconds=api.now()))


@pytest.mark.slow
@pytest.mark.parametrize("fails", [bad_gateway, nobody_there])
def test_no_herd_after_an_outage(fails: Callable[[], Exception], monkeypatch: pytest.MonkeyPatch) -> None:
    """Four minutes of 502, or of nobody there, a thousand messages waiting: few tries meanwhile, then one by one."""
    monkeypatch.setattr(delivery.asyncio, "to_thread", inline)
    monkeypatch.setattr(random, "uniform", random.Random(1611).uniform)
    store = waiting()

    async def outage(now: Callable[[], float]) -> None:
        api = Api(now, fails)
        await deliver(store, api)

        times = [at for at, _ in api.arrived]
        overall, second = Limits().overall
        assert sorted(chat for _, chat in api.arrived) == sorted(str(chat) for chat in range(REMINDERS + REPLIES))
        assert len(api.tried) <= 2 * FAILURES_TO_OPEN + OUTAGE / 20
        # the API counts in any second, not in those of a clock
        assert all(later - at >= second for at, later in zip(times, times[overall:], strict=False))
        # replies wait for no more than the longest wait of the circuit, reminders for no more than that of the outbox
        replied = [at for at, chat in api.arrived if int(chat) >= REMINDERS]
        assert max(replied) - OUTAGE <= 1.5 * LONGEST_WAIT + 1
        assert times[-1] - OUTAGE <= LONGEST.total_seconds() + len(times) / overall

    simulate(outage)
    store.close()


def test_many_programs_do_not_come_back_in_step() -> None:
    """A thousand that failed at the same moments try again at moments of their own, spread over half the wait."""
    waits: list[float] = []
    for _ in range(1000):
        circuit = Circuit(lambda: 0.0)
        for _ in range(FAILURES_TO_OPEN):
            wait = circuit.failed(circuit.begins())
        waits.append(wait.total_seconds())

    assert (min(waits) >= 4.0, max(waits) <= 8.0) == (True, True)  # 1 s, doubled three times; its upper half
    tenths = [sum(4.0 + 0.4 * tenth <= wait < 4.4 + 0.4 * tenth for wait in waits) for tenth in range(10)]
    assert all(50 <= count <= 150 for count in tenths)  # 100 each, give or take five standard deviations
