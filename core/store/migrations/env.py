"""What alembic runs: the migrations, on the connection and in the transaction that it was handed."""

from alembic import context

# No metadata is handed over: a migration spells every name itself, and today's naming rules stay out of it.
context.configure(
    connection=context.config.attributes["connection"],
    # SQLite rolls back a CREATE TABLE as well as PostgreSQL does, once BEGIN was said by us
    transactional_ddl=True,
)
context.run_migrations()
