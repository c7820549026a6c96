"""reminders in delivery.

Revision: 0009 After: 0008
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0009"
down_revision = "0008"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_index(
        "ix_reminder_sending",
        "reminder",
        ["channel", "lease_until"],
        sqlite_where=sa.text("state = 'sending'"),
        postgresql_where=sa.text("state = 'sending'"),
    )


def downgrade() -> None:
    op.drop_index("ix_reminder_sending", table_name="reminder")
