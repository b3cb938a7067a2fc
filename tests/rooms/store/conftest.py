import os
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy import text

from core.store.database import Database, open_database

MONDAY = datetime(2027, 3, 1, 8, tzinfo=UTC)
# a PostgreSQL whose database may be emptied: with it the same suite holds the store on a server
SERVER = os.environ.get("SALTBELL_TEST_POSTGRES")


@pytest.fixture(params=["memory", "file", *(["server"] if SERVER else [])])
def database(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Database]:
    """A fresh store; every test of the room holds on each kind."""
    urls = {"memory": "sqlite://", "file": f"sqlite:///{tmp_path / 'cellar.db'}", "server": SERVER or ""}
    if request.param == "server":
        empty(Database(urls["server"]))
    opened = open_database(urls[request.param])
    yield opened
    opened.close()


@pytest.fixture
def now() -> datetime:
    return MONDAY


def empty(server: Database) -> None:
    with server.transaction() as tx:
        tx.execute(text("DROP SCHEMA public CASCADE"))
        tx.execute(text("CREATE SCHEMA public"))
    server.close()
