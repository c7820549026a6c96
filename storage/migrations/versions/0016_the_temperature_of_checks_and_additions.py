"""the temperature of checks, and the mix before an addition.

Existing checks keep no temperature, which means the room's; nothing was added to existing batches.

Revision: 0016 After: 0014
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

from storage.types import Exact

revision = "0016"
down_revision = "0014"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("batch_event") as table:
        table.add_column(sa.Column("temperature_c", Exact(), nullable=True))
        table.add_column(sa.Column("mix_before", sa.JSON(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("batch_event") as table:
        table.drop_column("mix_before")
        table.drop_column("temperature_c")
