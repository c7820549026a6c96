"""drink list, waste by volume, and the cost of what is lost of a batch.

Old rows stay as they are: their waste has no volume, their counts of drinks name no drink of the list.

Revision: 0018 After: 0017
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0018"
down_revision = "0017"
branch_labels = None
depends_on = None


def _bar_id() -> sa.Column[int]:
    return sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False)


def upgrade() -> None:
    op.create_table(
        "menu_drink",
        _bar_id(),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("name", sa.String(length=80), nullable=False),
        sa.Column("match_key", sa.String(length=120), nullable=False),
        sa.Column("glass_ml", storage.types.Exact(), nullable=True),
        sa.Column("made_at", storage.types.Instant(), nullable=False),
        sa.Column("archived_at", storage.types.Instant(), nullable=True),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_menu_drink_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_menu_drink")),
        sa.UniqueConstraint("bar_id", "match_key", name=op.f("uq_menu_drink_bar_id_match_key")),
    )
    op.create_table(
        "menu_line",
        _bar_id(),
        sa.Column("menu_id", sa.BigInteger(), nullable=False),
        sa.Column("position", sa.BigInteger(), nullable=False),
        sa.Column("formula_id", sa.BigInteger(), nullable=False),
        sa.Column("sprays_low", storage.types.Exact(), nullable=True),
        sa.Column("sprays_high", storage.types.Exact(), nullable=True),
        sa.Column("ml", storage.types.Exact(), nullable=True),
        sa.ForeignKeyConstraint(
            ["bar_id", "menu_id"],
            ["menu_drink.bar_id", "menu_drink.id"],
            name=op.f("fk_menu_line_bar_id_menu_id"),
        ),
        sa.ForeignKeyConstraint(
            ["bar_id", "formula_id"],
            ["formula.bar_id", "formula.id"],
            name=op.f("fk_menu_line_bar_id_formula_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_menu_line_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "menu_id", "position", name=op.f("pk_menu_line")),
    )
    with op.batch_alter_table("drinks_count") as batch_op:
        batch_op.add_column(sa.Column("menu_id", sa.BigInteger(), nullable=True))
        batch_op.create_foreign_key(
            batch_op.f("fk_drinks_count_bar_id_menu_id"),
            "menu_drink",
            ["bar_id", "menu_id"],
            ["bar_id", "id"],
        )
    with op.batch_alter_table("bottling") as batch_op:
        batch_op.add_column(sa.Column("cost_minor", sa.BigInteger(), nullable=True))
    with op.batch_alter_table("waste") as batch_op:
        batch_op.add_column(sa.Column("volume_milli", sa.BigInteger(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("waste") as batch_op:
        batch_op.drop_column("volume_milli")
    with op.batch_alter_table("bottling") as batch_op:
        batch_op.drop_column("cost_minor")
    with op.batch_alter_table("drinks_count") as batch_op:
        batch_op.drop_constraint(batch_op.f("fk_drinks_count_bar_id_menu_id"), type_="foreignkey")
        batch_op.drop_column("menu_id")
    for table in ("menu_line", "menu_drink"):
        op.drop_table(table)
