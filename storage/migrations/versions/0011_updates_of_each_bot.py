"""updates of each bot, and the parts of an answer that have left.

Revision: 0011 After: 0010
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0011"
down_revision = "0010"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("inbox") as table:
        table.alter_column("channel", existing_type=sa.String(length=12), type_=sa.String(length=40))
        table.add_column(sa.Column("sent_parts", sa.Integer(), server_default="0", nullable=False))


def downgrade() -> None:
    op.execute("UPDATE inbox SET channel = 'telegram' WHERE channel LIKE 'telegram:%'")
    with op.batch_alter_table("inbox") as table:
        table.drop_column("sent_parts")
        table.alter_column("channel", existing_type=sa.String(length=40), type_=sa.String(length=12))
