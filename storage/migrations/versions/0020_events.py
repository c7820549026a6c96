"""events.

Old rows stay as they are.

Revision: 0020 After: 0019
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0020"
down_revision = "0019"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "event",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("day", storage.types.Day(length=10), nullable=False),
        sa.Column("plan", sa.JSON(), nullable=False),
        sa.Column("back", sa.JSON(), nullable=True),
        sa.Column("made_at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.Column("cancelled_at", storage.types.Instant(), nullable=True),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_event_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_event")),
    )
    op.create_index(op.f("ix_event_bar_id_day"), "event", ["bar_id", "day"])


def downgrade() -> None:
    op.drop_index(op.f("ix_event_bar_id_day"), table_name="event")
    op.drop_table("event")
