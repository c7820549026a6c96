"""wordings that a bar has confirmed.

Revision: 0013 After: 0012
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0013"
down_revision = "0012"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "wording",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("language", sa.String(length=8), nullable=False),
        sa.Column("shape", sa.String(length=200), nullable=False),
        sa.Column("wish", sa.String(length=40), nullable=False),
        sa.Column("made_at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_wording_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_wording")),
        sa.UniqueConstraint("bar_id", "language", "shape", name=op.f("uq_wording_bar_id_language_shape")),
    )


def downgrade() -> None:
    op.drop_table("wording")
