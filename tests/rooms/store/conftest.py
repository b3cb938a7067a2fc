from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy import text

from core.store.database import Database, open_database
from tests.postgres import cluster

MONDAY = datetime(2027, 3, 1, 8, tzinfo=UTC)


@pytest.fixture(scope="session")
def server() -> Iterator[str]:
    """A PostgreSQL of our own; its URL."""
    with cluster() as url:
        yield url


@pytest.fixture(params=["memory", "file", pytest.param("server", marks=pytest.mark.slow)])
def database(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Database]:
    """A fresh store; every test of the room holds on each kind."""
    urls = {"memory": "sqlite://", "file": f"sqlite:///{tmp_path / 'cellar.db'}"}
    if request.param == "server":
        urls["server"] = request.getfixturevalue("server")
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
