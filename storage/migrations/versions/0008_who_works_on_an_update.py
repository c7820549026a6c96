"""owner and lease of an update.

Revision: 0008 After: 0007
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("inbox") as table:
        table.add_column(sa.Column("chat", sa.String(length=40), server_default="", nullable=False))
        table.add_column(sa.Column("owner", sa.String(length=32), nullable=True))
        table.add_column(sa.Column("lease_until", storage.types.Instant(), nullable=True))
    op.create_index(
        "ix_inbox_unfinished",
        "inbox",
        ["channel", "chat", "update_id"],
        sqlite_where=sa.text("state < 2"),
        postgresql_where=sa.text("state < 2"),
    )


def downgrade() -> None:
    op.drop_index("ix_inbox_unfinished", table_name="inbox")
    with op.batch_alter_table("inbox") as table:
        table.drop_column("lease_until")
        table.drop_column("owner")
        table.drop_column("chat")
