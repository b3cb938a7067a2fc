"""A store of every version on a real PostgreSQL, with what people keep in it, goes forward to the newest, or stays."""

from collections.abc import Iterator
from typing import Any

import pytest
from sqlalchemy import text

from core.store import migrations
from core.store.database import Database, open_database
from tests.house.test_upgrades import KEPT, OLDER, break_off
from tests.postgres import cluster

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def server() -> Iterator[str]:
    with cluster() as url:
        yield url


@pytest.fixture(params=OLDER)
def old(request: pytest.FixtureRequest, server: str) -> Iterator[Database]:
    """A store of an older version, with data."""
    database = Database(server)
    with database.transaction() as tx:
        tx.execute(text("DROP SCHEMA public CASCADE"))
        tx.execute(text("CREATE SCHEMA public"))
        migrations.upgrade(tx.connection, request.param)
    with database.transaction() as tx:
        for table, rows in KEPT.items():
            names, values = ", ".join(rows[0]), ", ".join(f":{name}" for name in rows[0])
            tx.execute(text(f"INSERT INTO {table} ({names}) VALUES ({values})"), rows)  # noqa: S608
    yield database
    database.close()


def kept(database: Database) -> dict[str, list[Any]]:
    """Every row that was put in, in some order that stays."""
    with database.reading() as tx:
        return {
            table: sorted(map(str, tx.execute(text(f"SELECT {', '.join(rows[0])} FROM {table}")).mappings()))  # noqa: S608
            for table, rows in KEPT.items()
        }


def columns(database: Database) -> list[Any]:
    """Every table with its columns and their types."""
    of = "SELECT table_name, column_name, data_type, is_nullable FROM information_schema.columns"
    with database.reading() as tx:
        return sorted(map(str, tx.execute(text(f"{of} WHERE table_schema = 'public'"))))


def test_what_was_kept_is_there_after_an_upgrade(old: Database) -> None:
    """Row by row and value by value."""
    before = kept(old)
    assert {table: len(rows) for table, rows in before.items()} == {table: len(rows) for table, rows in KEPT.items()}
    open_database(str(old.url)).close()
    with old.reading() as tx:
        assert migrations.version(tx.connection) == migrations.HEAD
    assert kept(old) == before


def test_an_upgrade_that_fails_leaves_the_old_state(old: Database) -> None:
    """Broken off at its very last statement, tables and rows are what they were; then it goes forward."""
    before = kept(old), columns(old)

    break_off(old)
    assert (kept(old), columns(old)) == before
    migrations.migrate_if_needed(old.engine)
    with old.reading() as tx:
        assert migrations.version(tx.connection) == migrations.HEAD
