"""source of an entry, and wrong codes.

Revision: 0004 After: 0003
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:

    with op.batch_alter_table("entry", schema=None) as batch_op:
        batch_op.add_column(sa.Column("source", sa.String(length=80), nullable=True))
        batch_op.add_column(sa.Column("corrects", sa.BigInteger(), nullable=True))
        batch_op.create_index(batch_op.f("ix_entry_bar_id_source"), ["bar_id", "source"], unique=False)

    with op.batch_alter_table("person", schema=None) as batch_op:
        batch_op.add_column(sa.Column("wrong_codes", sa.Integer(), server_default="0", nullable=False))
        batch_op.add_column(sa.Column("wrong_code_at", storage.types.Instant(), nullable=True))


def downgrade() -> None:

    with op.batch_alter_table("person", schema=None) as batch_op:
        batch_op.drop_column("wrong_code_at")
        batch_op.drop_column("wrong_codes")

    with op.batch_alter_table("entry", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_entry_bar_id_source"))
        batch_op.drop_column("corrects")
        batch_op.drop_column("source")
