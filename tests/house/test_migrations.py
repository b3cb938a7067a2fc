"""The tables that the migrations make are the tables that the code uses."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import create_engine, text

from core.errors import NotKept
from core.store import migrations
from core.store.database import Database, open_database
from core.store.tables import metadata

FOLDER = Path(migrations.__file__).parent


@pytest.fixture
def migrated() -> Iterator[Database]:
    opened = open_database("sqlite://")
    yield opened
    opened.close()


def revisions() -> list[str]:
    """Every revision, the oldest first."""
    scripts = ScriptDirectory(str(FOLDER))
    return [script.revision for script in reversed(list(scripts.walk_revisions()))]


def spelled(sql: str) -> str:
    """A table or index as SQLite keeps it, without the accidents of spacing and the order of constraints."""
    parts = re.split(r",\s*\n", re.sub(r"[ \t]+", " ", sql.replace('"', "")))
    return "\n".join(sorted(part.strip(" \n)(") for part in parts))


def schema(connection: object) -> dict[str, str]:
    found = connection.execute(text("SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL"))  # type: ignore[attr-defined]
    return {name: spelled(sql) for name, sql in found if name not in ("alembic_version", "sqlite_sequence")}


def test_the_migrated_store_is_the_store_of_the_code(migrated: Database) -> None:
    """Table by table, column by column, constraint by constraint, index by index, as SQLite itself spells them."""
    fresh = create_engine("sqlite://")
    with fresh.begin() as made, migrated.reading() as tx:
        metadata.create_all(made)
        assert schema(tx.connection) == schema(made)
        assert len(schema(made)) == len(metadata.tables) + sum(len(table.indexes) for table in metadata.tables.values())
    fresh.dispose()


def test_the_migration_tool_finds_nothing_to_do(migrated: Database) -> None:
    """Alembic's own comparison of the migrated store with the tables of the code is empty."""
    with migrated.reading() as tx:
        context = MigrationContext.configure(tx.connection, opts={"compare_type": True, "compare_server_default": True})
        assert compare_metadata(context, metadata) == []


def test_the_head_is_the_newest_revision() -> None:
    """The quick start compares with a constant: the end of the one line of revisions, with no file beside it."""
    assert ScriptDirectory(str(FOLDER)).get_heads() == [migrations.HEAD]
    assert len(revisions()) == len(list((FOLDER / "versions").glob("r*.py")))


def test_a_store_is_of_the_newest_version(migrated: Database) -> None:
    """Opening brings a store to the head."""
    with migrated.reading() as tx:
        assert migrations.version(tx.connection) == migrations.HEAD


def test_a_migration_that_fails_leaves_the_store_as_it_was(tmp_path: Path) -> None:
    """Everything runs in one transaction: when the last statement fails, the first table is not there either."""
    url = f"sqlite:///{tmp_path / 'cellar.db'}"
    database = Database(url)
    with database.transaction() as tx:
        tx.execute(text("CREATE TABLE outgoing (potatoes TEXT)"))  # in the way of the last table of all
    with pytest.raises(NotKept, match="already exists"):
        open_database(url)
    with database.reading() as tx:
        names = tx.execute(text("SELECT name FROM sqlite_master WHERE type = 'table'")).scalars().all()
        assert names == ["outgoing"]
    with database.transaction() as tx:
        tx.execute(text("DROP TABLE outgoing"))
    open_database(url).close()
    with database.reading() as tx:
        assert migrations.version(tx.connection) == migrations.HEAD
    database.close()


def test_the_migrations_spell_their_types_themselves() -> None:
    """A migration that imported today's tables would change with them: none imports from the core."""
    for file in (FOLDER / "versions").glob("r*.py"):
        assert not re.search(r"^(from|import) core", file.read_text("utf-8"), re.MULTILINE), file.name


def test_what_waits_is_kept_when_the_outbox_is_made_anew(tmp_path: Path) -> None:
    """From the first version to the second every row stays as it was, and no id is given out a second time."""
    url = f"sqlite:///{tmp_path / 'cellar.db'}"
    engine = create_engine(url)
    with engine.begin() as old:
        migrations.upgrade(old, "0001")
        for number in (1, 2, 3):
            old.execute(
                text(
                    "INSERT INTO outgoing (chat, sort, batch, step, kind, made_at, due_at, free_at, state)"
                    " VALUES ('garden', 'reminder', 'abc', :step, 'flip', 1, 2, 3, 'waiting')"
                ),
                {"step": f"flip/{number}"},
            )
        old.execute(text("DELETE FROM outgoing WHERE id = 3"))
        before = old.execute(text("SELECT * FROM outgoing ORDER BY id")).all()
    engine.dispose()
    database = open_database(url)
    with database.transaction() as tx:
        assert tx.execute(text("SELECT * FROM outgoing ORDER BY id")).all() == before
        tx.execute(
            text(
                "INSERT INTO outgoing (chat, sort, made_at, due_at, free_at, state)"
                " VALUES ('garden', 'reply', 1, 2, 3, 'waiting')"
            )
        )
        assert tx.execute(text("SELECT max(id) FROM outgoing")).scalar() == 4
    database.close()
