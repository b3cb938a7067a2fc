"""Three replicas of the whole bot behind one webhook, on one PostgreSQL, killed or frozen at random moments.

Counted at the loopback Bot API and in the store. SALTBELL_KILLS says how often.
"""

import asyncio
import os
import random
import signal
from collections.abc import AsyncIterator

import pytest
from sqlalchemy import select

from core.store.database import Database
from core.store.tables import seen
from tests.durability.cellar import Cellar, Replica, begun, fall_due, running, states, talking, undone
from tests.durability.tally import Tally
from tests.postgres import cluster
from tests.telegram.loopback import BotApi

KILLS = int(os.environ.get("SALTBELL_KILLS", "8"))
REPLICAS, TALKERS, FROZEN_FIRST = 3, 6, 0.2

pytestmark = pytest.mark.durability


@pytest.fixture
async def cellar() -> AsyncIterator[Cellar]:
    """Three replicas that run; they are ended with the test."""
    async with BotApi() as server:
        with cluster() as url:
            async with running(server, url, (0.0,) * REPLICAS) as cellar:
                yield cellar


async def freeze(victim: Replica) -> None:
    """It stands still while the others go on, and then goes on itself for a moment."""
    victim.send(signal.SIGSTOP)
    await asyncio.sleep(random.uniform(0.5, 5.0))
    victim.send(signal.SIGCONT)
    await asyncio.sleep(random.uniform(0.0, 0.3))


def keys(store: Database) -> list[str]:
    """The keys of the messages that the house took."""
    with store.reading() as tx:
        return list(tx.execute(select(seen.c.key)).scalars())


def counted(cellar: Cellar, said: list[int]) -> dict[str, int]:
    """How many messages were said, how many of those that the server need not bring again are not kept, or twice."""
    pending, kept = {update["update_id"] for update in cellar.server.pending}, keys(cellar.store)
    lost = {f"tg:{number}" for number in said if number not in pending} - set(kept)
    return {"messages": len(said), "lost": len(lost), "twice": len(kept) - len(set(kept))}


async def test_replicas_are_killed_and_frozen(cellar: Cellar) -> None:
    """Every message is taken once and answered, every reminder goes out; little is repeated, and says so."""
    server, store, frozen = cellar.server, cellar.store, 0
    tally = Tally("replicas", KILLS)
    people = [server.person(f"P{number}") for number in range(TALKERS + KILLS // 12)]
    first = await begun(server, people)
    async with talking(server, people[:TALKERS]) as said:
        for number in range(KILLS):
            fall_due(store, 1)
            victim = random.choice(cellar.replicas)
            await asyncio.sleep(random.uniform(0.0, 0.6))
            if random.random() < FROZEN_FIRST:
                frozen += 1
                await freeze(victim)
            await victim.kill()
            await victim.begin()
            tally.after(number + 1, frozen=frozen, **counted(cellar, first + said))
    await server.until(lambda: not server.pending, 600)
    await server.until(lambda: undone(store) == 0, 300)

    kept, found = keys(store), states(store)
    repeats = len(server.sent) - found["sent"]
    tally.after(KILLS, frozen=frozen, **counted(cellar, first + said), repeated=repeats)
    # nothing lost, nothing taken twice
    assert sorted(kept) == sorted(f"tg:{number}" for number in first + said)
    # nothing given up, nothing forgotten
    assert set(found) <= {"sent", "withdrawn"}
    # what is in flight when a replica dies: a reply of each chat, and one reminder
    assert 0 <= repeats <= (KILLS + frozen) * (TALKERS + 1)
    # who was frozen with a message in hand does not know that it is the second
    assert sum("(Again" not in each.text for each in server.sent) <= found["sent"] + frozen
