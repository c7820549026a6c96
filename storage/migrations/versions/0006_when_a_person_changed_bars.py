"""time of a person's change of bar.

Revision: 0006 After: 0005
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:

    with op.batch_alter_table("person", schema=None) as batch_op:
        batch_op.add_column(sa.Column("bar_since", sa.BigInteger(), nullable=True))


def downgrade() -> None:

    with op.batch_alter_table("person", schema=None) as batch_op:
        batch_op.drop_column("bar_since")
