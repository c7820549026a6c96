"""movements before a count.

Revision: 0007 After: 0006
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None

_COLUMNS = ("after_delivery", "after_batch", "after_waste")


def upgrade() -> None:
    with op.batch_alter_table("stock_count") as table:
        for name in _COLUMNS:
            table.add_column(sa.Column(name, sa.BigInteger(), server_default="0", nullable=False))


def downgrade() -> None:
    with op.batch_alter_table("stock_count") as table:
        for name in reversed(_COLUMNS):
            table.drop_column(name)
