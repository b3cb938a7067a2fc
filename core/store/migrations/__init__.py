"""Migrations: one file a change under `versions/`, in order; the tables are only ever made by running them.

A start that finds the store at `HEAD` reads one row and imports nothing: alembic is loaded only when there
is work. Everything runs in one transaction, so a change that fails leaves the store as it was.
"""

from importlib import import_module
from pathlib import Path
from typing import Final

from sqlalchemy import Connection, Engine, inspect, text

from core.errors import NotKept

HEAD: Final = "0007"
LOCK: Final = 7_258_371  # any number: the name of our advisory lock


def migrate_if_needed(engine: Engine) -> None:
    """Bring the store up to date; one plain query where it is so already. Raises NotKept for a newer store."""
    with engine.connect() as connection, connection.begin():
        if version(connection) == HEAD:
            return
    import_module("alembic.command")  # before the store is held: others that start wait for it no longer than they must
    with engine.begin() as connection:
        if connection.dialect.name == "postgresql":
            connection.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": LOCK})
        if version(connection) != HEAD:  # another process may have been quicker
            upgrade(connection)


def version(connection: Connection) -> str | None:
    """The revision of the store, None for an empty one."""
    if not inspect(connection).has_table("alembic_version"):
        return None
    found: str | None = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
    return found


def upgrade(connection: Connection, revision: str = HEAD) -> None:
    """Run the migrations up to `revision` in the transaction of this connection."""
    from alembic import command
    from alembic.config import Config
    from alembic.util import CommandError

    config = Config(attributes={"connection": connection})
    config.set_main_option("script_location", str(Path(__file__).parent).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    try:
        command.upgrade(config, revision)
    except CommandError as trouble:
        raise NotKept(f"the store is of a version that this one does not know: {trouble}") from trouble
