from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from core.store.database import Database, open_database

MONDAY = datetime(2027, 3, 1, 8, tzinfo=UTC)
MINUTE = timedelta(minutes=1)
HOUR = timedelta(hours=1)


@pytest.fixture(params=["memory", "file"])
def database(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Database]:
    """A fresh store; every test of the room holds on each kind."""
    url = "sqlite://" if request.param == "memory" else f"sqlite:///{tmp_path / 'cellar.db'}"
    opened = open_database(url)
    yield opened
    opened.close()


@pytest.fixture
def now() -> datetime:
    return MONDAY
