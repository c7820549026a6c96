"""other names of ingredients, and the expiry of lots.

Revision: 0012 After: 0011
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

from storage.types import Day, Instant

revision = "0012"
down_revision = "0011"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "other_name",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("kind", sa.String(length=12), nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("match_key", sa.String(length=120), nullable=False),
        sa.Column("ingredient_id", sa.BigInteger(), nullable=False),
        sa.Column("at", Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_other_name_bar_id")),
        sa.ForeignKeyConstraint(
            ["bar_id", "ingredient_id"],
            ["ingredient.bar_id", "ingredient.id"],
            name=op.f("fk_other_name_bar_id_ingredient_id"),
        ),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_other_name")),
        sa.UniqueConstraint("bar_id", "kind", "match_key", name=op.f("uq_other_name_bar_id_kind_match_key")),
    )
    op.create_index(
        op.f("ix_other_name_bar_id_ingredient_id"), "other_name", ["bar_id", "ingredient_id"], unique=False
    )
    with op.batch_alter_table("batch_line") as table:
        table.add_column(sa.Column("best_before", Day(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("batch_line") as table:
        table.drop_column("best_before")
    op.drop_table("other_name")
