"""tasters and known keys of trials from a file.

Revision: 0022 After: 0020

Old scores are those of their person (`taster` 0), and old trials have not come from a file (`known` false).
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0022"
down_revision = "0020"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("trial") as batch:
        batch.add_column(sa.Column("known", sa.Boolean(), nullable=False, server_default=sa.false()))
    with op.batch_alter_table("trial") as batch:
        batch.alter_column("known", existing_type=sa.Boolean(), server_default=None)
    with op.batch_alter_table("trial_score") as batch:
        batch.add_column(sa.Column("taster", sa.BigInteger(), nullable=False, server_default="0"))
    with op.batch_alter_table("trial_score") as batch:
        batch.alter_column("taster", existing_type=sa.BigInteger(), server_default=None)


def downgrade() -> None:
    with op.batch_alter_table("trial_score") as batch:
        batch.drop_column("taster")
    with op.batch_alter_table("trial") as batch:
        batch.drop_column("known")
