"""What alembic runs: the migrations, on the connection and in the transaction that it was handed."""

from alembic import context

from core.store.tables import metadata

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=metadata,
    # SQLite rolls back a CREATE TABLE as well as PostgreSQL does, once BEGIN was said by us
    transactional_ddl=True,
)
context.run_migrations()
