"""trials that are triangle tests.

Revision: 0019 After: 0018

Old trials keep their scores: they become the kind 'scores'.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0019"
down_revision = "0018"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("trial") as batch:
        batch.add_column(sa.Column("kind", sa.String(length=12), nullable=False, server_default="scores"))
    with op.batch_alter_table("trial") as batch:
        batch.alter_column("kind", existing_type=sa.String(length=12), server_default=None)


def downgrade() -> None:
    with op.batch_alter_table("trial") as batch:
        batch.drop_column("kind")
