"""batches between bars.

Old batches were made where they are: their new columns stay empty. Old rows of bottles stay as they are.

Revision: 0023 After: 0022
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

import storage.types

revision = "0023"
down_revision = "0022"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("batch", sa.Column("came_from", sa.String(length=80), nullable=True))
    op.add_column("batch", sa.Column("number_there", sa.BigInteger(), nullable=True))
    op.add_column("bottling", sa.Column("moved_ml", storage.types.Exact(), nullable=True))


def downgrade() -> None:
    op.drop_column("bottling", "moved_ml")
    op.drop_column("batch", "number_there")
    op.drop_column("batch", "came_from")
