"""A store in which many people each have a batch in its cure: the plan, the log and the reminders of a real one."""

from datetime import UTC, datetime, timedelta

from sqlalchemy import text

from bot.assembly import build, newcomer
from bot.reply import Message, Outgoing
from core.store.database import open_database

# Person and chat n have batch n: copied from the one that was talked about.
COPIES = (
    "INSERT INTO people (id, settings) SELECT CAST(:chat + n AS TEXT),"
    " json_set(settings, '$.id', CAST(:chat + n AS TEXT)) FROM people, numbers WHERE id = :one",
    "INSERT INTO batches (id, chat, owner, name, made_at) SELECT printf('%08d', n), CAST(:chat + n AS TEXT),"
    " CAST(:chat + n AS TEXT), name, made_at FROM batches, numbers WHERE owner = :one",
    "INSERT INTO events (batch, number, at, said_at, said_by, message, place, kind, body)"
    " SELECT printf('%08d', n), number, at, said_at, CAST(:chat + n AS TEXT), printf('%d:%d', :chat + n, number),"
    " place, kind, body FROM events, numbers WHERE said_by = :one",
    "INSERT INTO outgoing (chat, sort, batch, step, kind, occurrence, urgency, made_at, due_at, free_at, state)"
    " SELECT CAST(:chat + n AS TEXT), sort, printf('%08d', n), step, kind, occurrence, urgency, made_at, due_at,"
    " free_at, state FROM numbers, outgoing WHERE sort = 'reminder' AND state = 'waiting' AND chat = :one",
)
NUMBERS = "WITH RECURSIVE numbers(n) AS (VALUES (0) UNION ALL SELECT n + 1 FROM numbers WHERE n + 1 < :count) "
ONE = "7"


async def _nowhere(_: Outgoing) -> str:
    return "1"


def begun(now: datetime) -> tuple[str, ...]:
    """What somebody says whose pork belly has just gone into its cure."""
    meal = now + timedelta(days=12)
    return (f"3.2 kg pork belly, smoked, for {meal:%d %B} at 18:00", "cure is 6.25 %", "weighed", "it is in the cure")


def fill(url: str, count: int, now: datetime, chat: int = 1_000) -> None:
    """Make a store with `count` batches, those of the people and chats from `chat` on."""
    built = build(url, newcomer("Europe/Vienna"), _nowhere)
    for number, line in enumerate(begun(now)):
        at = now + timedelta(seconds=number)
        assert built.receive(Message(f"first:{number}", ONE, ONE, "Ada", at, line, ref=f"{ONE}:{number}"), at)
    built.close()
    store = open_database(url)
    with store.transaction() as tx:
        for copy in COPIES:
            head, _, tail = copy.partition(" SELECT ")
            tx.execute(text(f"{head} {NUMBERS} SELECT {tail}"), {"one": ONE, "count": count, "chat": chat})
        for table, where in (("outgoing", "chat"), ("events", "said_by"), ("batches", "owner"), ("people", "id")):
            tx.execute(text(f"DELETE FROM {table} WHERE {where} = :one"), {"one": ONE})  # noqa: S608
    with store.reading() as tx:
        assert tx.execute(text("SELECT count(*) FROM batches WHERE closed_at IS NULL")).scalar() == count
    store.close()


def monday() -> datetime:
    """A morning at which nothing is due for hours."""
    return datetime(2027, 3, 1, 8, tzinfo=UTC)
