"""sprayers and their weighings.

Revision: 0002
After: 0001
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:

    op.create_table(
        "sprayer",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("match_key", sa.String(length=120), nullable=False),
        sa.Column("made_at", storage.types.Instant(), nullable=False),
        sa.Column("archived_at", storage.types.Instant(), nullable=True),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_sprayer_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_sprayer")),
        sa.UniqueConstraint("bar_id", "match_key", name=op.f("uq_sprayer_bar_id_match_key")),
    )
    op.create_table(
        "formula_sprayer",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("formula_id", sa.BigInteger(), nullable=False),
        sa.Column("sprayer_id", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "formula_id"],
            ["formula.bar_id", "formula.id"],
            name=op.f("fk_formula_sprayer_bar_id_formula_id"),
        ),
        sa.ForeignKeyConstraint(
            ["bar_id", "sprayer_id"],
            ["sprayer.bar_id", "sprayer.id"],
            name=op.f("fk_formula_sprayer_bar_id_sprayer_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_formula_sprayer_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "formula_id", name=op.f("pk_formula_sprayer")),
    )
    op.create_table(
        "sprayer_run",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("sprayer_id", sa.BigInteger(), nullable=False),
        sa.Column("formula_id", sa.BigInteger(), nullable=True),
        sa.Column("before_g", storage.types.Exact(length=80), nullable=False),
        sa.Column("after_g", storage.types.Exact(length=80), nullable=False),
        sa.Column("step_g", storage.types.Exact(length=80), nullable=False),
        sa.Column("sprays", sa.BigInteger(), nullable=False),
        sa.Column("density_g_per_ml", storage.types.Exact(length=80), nullable=False),
        sa.Column("priming", sa.Boolean(), nullable=False),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.Column("undone_at", storage.types.Instant(), nullable=True),
        sa.ForeignKeyConstraint(
            ["bar_id", "formula_id"],
            ["formula.bar_id", "formula.id"],
            name=op.f("fk_sprayer_run_bar_id_formula_id"),
        ),
        sa.ForeignKeyConstraint(
            ["bar_id", "sprayer_id"],
            ["sprayer.bar_id", "sprayer.id"],
            name=op.f("fk_sprayer_run_bar_id_sprayer_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_sprayer_run_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_sprayer_run")),
    )
    with op.batch_alter_table("sprayer_run", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_sprayer_run_bar_id_sprayer_id"), ["bar_id", "sprayer_id"], unique=False
        )


def downgrade() -> None:

    with op.batch_alter_table("sprayer_run", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_sprayer_run_bar_id_sprayer_id"))

    op.drop_table("sprayer_run")
    op.drop_table("formula_sprayer")
    op.drop_table("sprayer")
