"""bottles of a batch, and what was lost of it.

Old rows stay as they are: a batch without rows here was not bottled.

Revision: 0017 After: 0016
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0017"
down_revision = "0016"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "bottling",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("batch_id", sa.BigInteger(), nullable=False),
        sa.Column("what", sa.String(length=12), nullable=False),
        sa.Column("bottles", sa.BigInteger(), nullable=False),
        sa.Column("size_ml", storage.types.Exact(), nullable=True),
        sa.Column("lost_ml", storage.types.Exact(), nullable=True),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.Column("void", sa.Boolean(), nullable=False),
        sa.Column("corrects", sa.BigInteger(), nullable=True),
        sa.Column("first", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_bottling_bar_id")),
        sa.ForeignKeyConstraint(
            ["bar_id", "batch_id"],
            ["batch.bar_id", "batch.id"],
            name=op.f("fk_bottling_bar_id_batch_id"),
        ),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_bottling")),
    )
    op.create_index(op.f("ix_bottling_bar_id_batch_id"), "bottling", ["bar_id", "batch_id"])
    op.create_index(op.f("ix_bottling_corrects"), "bottling", ["corrects"])


def downgrade() -> None:
    op.drop_table("bottling")
