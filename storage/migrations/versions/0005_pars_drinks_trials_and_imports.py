"""pars drinks trials and imports.

Revision: 0005
After: 0004
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "imported",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("kind", sa.String(length=16), nullable=False),
        sa.Column("ref", sa.String(length=80), nullable=False),
        sa.Column("number", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_imported_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "kind", "ref", name=op.f("pk_imported")),
    )
    op.create_table(
        "upload",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("name", sa.String(length=120), nullable=False),
        sa.Column("content", sa.LargeBinary(), nullable=False),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_upload_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_upload")),
    )
    op.create_table(
        "drinks_count",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("business_day", storage.types.Day(length=10), nullable=False),
        sa.Column("formula_id", sa.BigInteger(), nullable=True),
        sa.Column("ingredient_id", sa.BigInteger(), nullable=True),
        sa.Column("drinks", sa.BigInteger(), nullable=False),
        sa.Column("ran_out", sa.Boolean(), nullable=False),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.Column("corrects", sa.BigInteger(), nullable=True),
        sa.Column("void", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "formula_id"],
            ["formula.bar_id", "formula.id"],
            name=op.f("fk_drinks_count_bar_id_formula_id"),
        ),
        sa.ForeignKeyConstraint(
            ["bar_id", "ingredient_id"],
            ["ingredient.bar_id", "ingredient.id"],
            name=op.f("fk_drinks_count_bar_id_ingredient_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_drinks_count_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_drinks_count")),
    )
    with op.batch_alter_table("drinks_count", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_drinks_count_bar_id_business_day"), ["bar_id", "business_day"], unique=False
        )

    op.create_table(
        "stock_par",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("ingredient_id", sa.BigInteger(), nullable=False),
        sa.Column("amount", storage.types.Exact(length=80), nullable=False),
        sa.Column("unit", sa.String(length=40), nullable=False),
        sa.Column("told", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "ingredient_id"],
            ["ingredient.bar_id", "ingredient.id"],
            name=op.f("fk_stock_par_bar_id_ingredient_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_stock_par_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "ingredient_id", name=op.f("pk_stock_par")),
    )
    op.create_table(
        "trial",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("formula_id", sa.BigInteger(), nullable=False),
        sa.Column("version", sa.BigInteger(), nullable=False),
        sa.Column("blind", sa.Boolean(), nullable=False),
        sa.Column("total_ml", storage.types.Exact(length=80), nullable=False),
        sa.Column("state", sa.String(length=12), nullable=False),
        sa.Column("seed", sa.BigInteger(), nullable=False),
        sa.Column("promoted", sa.BigInteger(), nullable=True),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("by", sa.BigInteger(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "formula_id", "version"],
            ["formula_version.bar_id", "formula_version.formula_id", "formula_version.number"],
            name=op.f("fk_trial_bar_id_formula_id_version"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_trial_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_trial")),
    )
    with op.batch_alter_table("trial", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_trial_bar_id_state"), ["bar_id", "state"], unique=False)

    op.create_table(
        "trial_variant",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("trial_id", sa.BigInteger(), nullable=False),
        sa.Column("number", sa.BigInteger(), nullable=False),
        sa.Column("code", sa.String(length=4), nullable=True),
        sa.Column("changed", sa.Text(), nullable=False),
        sa.Column("lines", sa.JSON(), nullable=False),
        sa.Column("batch_id", sa.BigInteger(), nullable=True),
        sa.Column("void", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "batch_id"],
            ["batch.bar_id", "batch.id"],
            name=op.f("fk_trial_variant_bar_id_batch_id"),
        ),
        sa.ForeignKeyConstraint(
            ["bar_id", "trial_id"],
            ["trial.bar_id", "trial.id"],
            name=op.f("fk_trial_variant_bar_id_trial_id"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_trial_variant_bar_id")),
        sa.PrimaryKeyConstraint("bar_id", "trial_id", "number", name=op.f("pk_trial_variant")),
        sa.UniqueConstraint("bar_id", "trial_id", "code", name=op.f("uq_trial_variant_bar_id_trial_id_code")),
    )
    op.create_table(
        "trial_score",
        sa.Column("bar_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.BigInteger(), autoincrement=False, nullable=False),
        sa.Column("trial_id", sa.BigInteger(), nullable=False),
        sa.Column("variant", sa.BigInteger(), nullable=False),
        sa.Column("person_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("given", sa.JSON(), nullable=False),
        sa.Column("at", storage.types.Instant(), nullable=False),
        sa.Column("corrects", sa.BigInteger(), nullable=True),
        sa.Column("void", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(
            ["bar_id", "trial_id", "variant"],
            ["trial_variant.bar_id", "trial_variant.trial_id", "trial_variant.number"],
            name=op.f("fk_trial_score_bar_id_trial_id_variant"),
        ),
        sa.ForeignKeyConstraint(["bar_id"], ["bar.id"], name=op.f("fk_trial_score_bar_id")),
        sa.ForeignKeyConstraint(["person_id"], ["person.id"], name=op.f("fk_trial_score_person_id")),
        sa.PrimaryKeyConstraint("bar_id", "id", name=op.f("pk_trial_score")),
    )
    with op.batch_alter_table("trial_score", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_trial_score_bar_id_trial_id"), ["bar_id", "trial_id"], unique=False
        )


def downgrade() -> None:
    with op.batch_alter_table("trial_score", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_trial_score_bar_id_trial_id"))

    op.drop_table("trial_score")
    op.drop_table("trial_variant")
    with op.batch_alter_table("trial", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_trial_bar_id_state"))

    op.drop_table("trial")
    op.drop_table("stock_par")
    with op.batch_alter_table("drinks_count", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_drinks_count_bar_id_business_day"))

    op.drop_table("drinks_count")
    op.drop_table("upload")
    op.drop_table("imported")
