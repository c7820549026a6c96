"""Connect Alembic to the tables, over a given connection or DATABASE_URL."""

from __future__ import annotations

import os

from alembic import context
from sqlalchemy import Connection, create_engine

from storage.store import read_url
from storage.tables import Base


def _run(connection: Connection) -> None:
    context.configure(
        connection=connection,
        target_metadata=Base.metadata,
        render_as_batch=connection.dialect.name == "sqlite",
        compare_type=True,
        user_module_prefix="storage.types.",
    )
    with context.begin_transaction():
        context.run_migrations()


handed: Connection | None = context.config.attributes.get("connection")
if handed is not None:
    _run(handed)
else:
    engine = create_engine(read_url(os.environ["DATABASE_URL"]))
    with engine.connect() as connection:
        _run(connection)
        connection.commit()
