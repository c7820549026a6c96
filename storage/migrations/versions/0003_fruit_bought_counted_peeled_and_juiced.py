"""fruit bought counted peeled and juiced.

Revision: 0003
After: 0002
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "delivery",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("ingredient_id", sa.BigInteger(), nullable=False),
        sa.Column("dimension", sa.String(length=8), nullable=False),
        sa.Column("amount_milli", sa.BigInteger(), nullable=False),
        sa.Column("cost_minor", sa.BigInteger(), nullable=True),
        sa.Column("price_id", sa.BigInteger(), nullable=True),
        sa.Column("business_day", storage.types.Day(length=10), nullable=False),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.Column("corrects", sa.BigInteger(), nullable=True),
        sa.Column("source", sa.String(length=80), nullable=False),
        sa.Column("line", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "ingredient_id"],
            ["ingredient.bar_id", "ingredient.id"],
            name=op.f("fk_delivery_bar_id_ingredient_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_delivery_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_delivery")),
        sa.UniqueConstraint("bar_id", "source", "line", name=op.f("uq_delivery_bar_id_source_line")),
    )
    with op.batch_alter_table("delivery", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_delivery_bar_id_business_day"), ["bar_id", "business_day"], unique=False
        )
        batch_op.create_index(
            batch_op.f("ix_delivery_bar_id_ingredient_id_business_day"),
            ["bar_id", "ingredient_id", "business_day"],
            unique=False,
        )

    op.create_table(
        "juicing",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("ingredient_id", sa.BigInteger(), nullable=False),
        sa.Column("count_milli", sa.BigInteger(), nullable=False),
        sa.Column("volume_ml", storage.types.Exact(length=80), nullable=False),
        sa.Column("business_day", storage.types.Day(length=10), nullable=False),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.Column("corrects", sa.BigInteger(), nullable=True),
        sa.Column("void", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "ingredient_id"],
            ["ingredient.bar_id", "ingredient.id"],
            name=op.f("fk_juicing_bar_id_ingredient_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_juicing_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_juicing")),
    )
    with op.batch_alter_table("juicing", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_juicing_bar_id_ingredient_id_id"), ["bar_id", "ingredient_id", "id"], unique=False
        )

    op.create_table(
        "peeled_fruit",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("ingredient_id", sa.BigInteger(), nullable=False),
        sa.Column("count_milli", sa.BigInteger(), nullable=False),
        sa.Column("business_day", storage.types.Day(length=10), nullable=False),
        sa.Column("lost_at", storage.types.Instant(), nullable=False),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "ingredient_id"],
            ["ingredient.bar_id", "ingredient.id"],
            name=op.f("fk_peeled_fruit_bar_id_ingredient_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_peeled_fruit_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_peeled_fruit")),
    )
    with op.batch_alter_table("peeled_fruit", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_peeled_fruit_bar_id_ingredient_id_lost_at"),
            ["bar_id", "ingredient_id", "lost_at"],
            unique=False,
        )
        batch_op.create_index(
            batch_op.f("ix_peeled_fruit_bar_id_lost_at"), ["bar_id", "lost_at"], unique=False
        )

    op.create_table(
        "stock_count",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("ingredient_id", sa.BigInteger(), nullable=False),
        sa.Column("dimension", sa.String(length=8), nullable=False),
        sa.Column("amount_milli", sa.BigInteger(), nullable=False),
        sa.Column("business_day", storage.types.Day(length=10), nullable=False),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.Column("corrects", sa.BigInteger(), nullable=True),
        sa.Column("void", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "ingredient_id"],
            ["ingredient.bar_id", "ingredient.id"],
            name=op.f("fk_stock_count_bar_id_ingredient_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_stock_count_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_stock_count")),
    )
    with op.batch_alter_table("stock_count", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_stock_count_bar_id_ingredient_id_id"),
            ["bar_id", "ingredient_id", "id"],
            unique=False,
        )

    op.create_table(
        "peeled_use",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("peeled_id", sa.BigInteger(), nullable=False),
        sa.Column("what", sa.String(length=12), nullable=False),
        sa.Column("count_milli", sa.BigInteger(), nullable=False),
        sa.Column("waste_id", sa.BigInteger(), nullable=True),
        sa.Column("juicing_id", sa.BigInteger(), nullable=True),
        sa.Column("batch_id", sa.BigInteger(), nullable=True),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.Column("corrects", sa.BigInteger(), nullable=True),
        sa.ForeignKeyConstraint(
            ["bar_id", "batch_id"], ["batch.bar_id", "batch.id"], name=op.f("fk_peeled_use_bar_id_batch_id")
        ),
        sa.ForeignKeyConstraint(
            ["bar_id", "juicing_id"],
            ["juicing.bar_id", "juicing.id"],
            name=op.f("fk_peeled_use_bar_id_juicing_id"),
        ),
        sa.ForeignKeyConstraint(
            ["bar_id", "peeled_id"],
            ["peeled_fruit.bar_id", "peeled_fruit.id"],
            name=op.f("fk_peeled_use_bar_id_peeled_id"),
        ),
        sa.ForeignKeyConstraint(
            ["bar_id", "waste_id"], ["waste.bar_id", "waste.id"], name=op.f("fk_peeled_use_bar_id_waste_id")
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_peeled_use_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_peeled_use")),
    )
    with op.batch_alter_table("peeled_use", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_peeled_use_bar_id_peeled_id"), ["bar_id", "peeled_id"], unique=False
        )
        batch_op.create_index(
            batch_op.f("ix_peeled_use_bar_id_waste_id"), ["bar_id", "waste_id"], unique=False
        )

    with op.batch_alter_table("waste", schema=None) as batch_op:
        batch_op.add_column(sa.Column("late", sa.Boolean(), server_default=sa.false(), nullable=False))


def downgrade() -> None:
    with op.batch_alter_table("waste", schema=None) as batch_op:
        batch_op.drop_column("late")

    with op.batch_alter_table("peeled_use", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_peeled_use_bar_id_waste_id"))
        batch_op.drop_index(batch_op.f("ix_peeled_use_bar_id_peeled_id"))

    op.drop_table("peeled_use")
    with op.batch_alter_table("stock_count", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_stock_count_bar_id_ingredient_id_id"))

    op.drop_table("stock_count")
    with op.batch_alter_table("peeled_fruit", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_peeled_fruit_bar_id_lost_at"))
        batch_op.drop_index(batch_op.f("ix_peeled_fruit_bar_id_ingredient_id_lost_at"))

    op.drop_table("peeled_fruit")
    with op.batch_alter_table("juicing", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_juicing_bar_id_ingredient_id_id"))

    op.drop_table("juicing")
    with op.batch_alter_table("delivery", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_delivery_bar_id_ingredient_id_business_day"))
        batch_op.drop_index(batch_op.f("ix_delivery_bar_id_business_day"))

    op.drop_table("delivery")
