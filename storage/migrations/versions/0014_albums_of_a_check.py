"""room for the photos of an album in one event of a batch.

Revision: 0014 After: 0013

Old rows keep their one photo.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0014"
down_revision = "0013"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("batch_event") as table:
        table.alter_column("photo", existing_type=sa.String(length=200), type_=sa.Text())


def downgrade() -> None:
    op.execute("UPDATE batch_event SET photo = NULL WHERE length(photo) > 200")
    with op.batch_alter_table("batch_event") as table:
        table.alter_column("photo", existing_type=sa.Text(), type_=sa.String(length=200))
