"""A store of every version that there was, with what people keep in it, goes forward to the newest, or stays."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest
from alembic.script import ScriptDirectory
from sqlalchemy import event, text

from core.store import migrations, outbox
from core.store.database import Database, open_database

SCRIPTS = ScriptDirectory(str(Path(migrations.__file__).parent))
OLDER = [script.revision for script in SCRIPTS.walk_revisions()][:0:-1]
# What every version since the first can hold. The columns are named, so that later ones take their defaults.
KEPT = {
    "people": [{"id": "7", "settings": '{"zone":"Europe/Vienna","language":null}'}],
    "asked": [{"chat": "garden", "person": "7", "question": '{"of":"weight"}'}],
    "seen": [{"key": f"tg:{number}", "at": 1_800_000_000_000_000 + number} for number in range(50)],
    "batches": [
        {"id": "ham1", "chat": "garden", "owner": "7", "name": "ham ’27", "made_at": 1, "closed_at": None},
        {"id": "ham0", "chat": "garden", "owner": "7", "name": "'; DROP TABLE x; --", "made_at": 0, "closed_at": 2},
    ],
    "events": [
        {"batch": "ham1", "number": n, "at": n, "said_at": n, "said_by": "7", "message": f"tg:{n}", "place": 0,
         "kind": "read", "body": f'{{"probe":"core","value":{n}}}'}
        for n in range(1, 40)
    ],
    "outgoing": [
        {"id": 10 * n, "chat": "garden", "sort": "reminder", "batch": "ham1", "step": f"flip{n}", "kind": "flip",
         "occurrence": n % 2, "urgency": "quiet", "made_at": 1, "due_at": n, "free_at": n + n % 3,
         "state": ("waiting", "sending", "sent", "withdrawn", "dead")[n % 5], "attempts": n % 4, "repeat": n % 3 == 0,
         "owner": "who" if n % 5 == 1 else None, "channel_key": f"garden:{n}" if n % 5 == 2 else None}
        for n in range(1, 60)
    ],
}  # fmt: skip


@pytest.fixture(params=OLDER)
def old(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Database]:
    """A store of an older version, with data."""
    database = Database(f"sqlite:///{tmp_path / 'cellar.db'}")
    with database.transaction() as tx:
        migrations.upgrade(tx.connection, request.param)
    with database.transaction() as tx:
        for table, rows in KEPT.items():
            names = ", ".join(rows[0])
            values = ", ".join(f":{name}" for name in rows[0])
            tx.execute(text(f"INSERT INTO {table} ({names}) VALUES ({values})"), rows)  # noqa: S608
    yield database
    database.close()


def dump(database: Database) -> list[str]:
    with closing(sqlite3.connect(database.url.database or "")) as store:
        return list(store.iterdump())


def test_what_was_kept_is_there_after_an_upgrade(old: Database) -> None:
    """Row by row and value by value; nothing points nowhere; the next id is none that was used."""
    open_database(str(old.url)).close()
    with old.reading() as tx:
        assert migrations.version(tx.connection) == migrations.HEAD
        for table, rows in KEPT.items():
            found = [dict(row) for row in tx.execute(text(f"SELECT {', '.join(rows[0])} FROM {table}")).mappings()]  # noqa: S608
            assert sorted(map(str, found)) == sorted(map(str, _as_kept(rows)))
        assert tx.execute(text("PRAGMA integrity_check")).scalar() == "ok"
        assert tx.execute(text("PRAGMA foreign_key_check")).all() == []
        used = max(row["id"] for row in KEPT["outgoing"])
    with old.transaction() as tx:
        assert int(outbox.put_reply(tx, "shed", {"text": "hello"}, datetime(2027, 3, 1, tzinfo=UTC))) > used


def break_off(store: Database) -> None:
    """An upgrade whose power goes at its very last statement."""

    def gone(_connection: object, _cursor: object, statement: str, *_: object) -> None:
        if statement.startswith("UPDATE alembic_version") and f"'{migrations.HEAD}'" in statement:
            raise OSError("the power is gone")

    event.listen(store.engine, "before_cursor_execute", gone)
    with pytest.raises(OSError, match="power"):
        migrations.migrate_if_needed(store.engine)
    event.remove(store.engine, "before_cursor_execute", gone)


def test_an_upgrade_that_fails_leaves_the_old_state(old: Database) -> None:
    """Broken off at its very last statement, the store is to the letter what it was; then it goes forward."""
    before = dump(old)

    break_off(old)
    assert dump(old) == before
    migrations.migrate_if_needed(old.engine)
    with old.reading() as tx:
        assert migrations.version(tx.connection) == migrations.HEAD


def _as_kept(rows: list[dict[str, object]]) -> list[dict[str, object]]:
    """As SQLite gives it back: a truth is 1 or 0."""
    return [{name: int(value) if isinstance(value, bool) else value for name, value in row.items()} for row in rows]
