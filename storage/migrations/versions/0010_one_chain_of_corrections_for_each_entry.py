"""one chain of corrections for each entry.

Revision: 0010 After: 0009
"""

from __future__ import annotations

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0010"
down_revision = "0009"
branch_labels = None
depends_on = None

_CORRECTED = (
    "price",
    "waste",
    "delivery",
    "stock_count",
    "juicing",
    "peeled_use",
    "drinks_count",
    "batch_event",
    "trial_score",
)
_ENTRY = sa.table(
    "entry",
    sa.column("bar_id", sa.BigInteger()),
    sa.column("id", sa.BigInteger()),
    sa.column("what", sa.String()),
    sa.column("details", sa.JSON()),
    sa.column("undo_of", sa.BigInteger()),
    sa.column("corrects", sa.BigInteger()),
    sa.column("chain", sa.BigInteger()),
    sa.column("follows", sa.BigInteger()),
)


def _corrected(name: str, *columns: str) -> sa.TableClause:
    """Return a table with corrections, with its numbers in these columns besides the common ones."""
    common = ("bar_id", "id", "corrects")
    return sa.table(name, *(sa.column(one, sa.BigInteger()) for one in (*common, *columns)))


_WASTE = _corrected("waste", "count_milli", "grams_milli")


def upgrade() -> None:
    for name in _CORRECTED:
        with op.batch_alter_table(name) as table:
            table.add_column(sa.Column("first", sa.BigInteger(), nullable=True))
            table.create_index(op.f(f"ix_{name}_corrects"), ["corrects"])
        _number_first(name)
        with op.batch_alter_table(name) as table:
            table.alter_column("first", existing_type=sa.BigInteger(), nullable=False)
    with op.batch_alter_table("entry") as table:
        table.add_column(sa.Column("chain", sa.BigInteger(), nullable=True))
        table.add_column(sa.Column("follows", sa.BigInteger(), nullable=True))
    _link_entries()
    with op.batch_alter_table("entry") as table:
        table.drop_constraint("uq_entry_bar_id_undo_of", type_="unique")
        table.drop_column("undo_of")
        table.drop_column("corrects")
        table.create_unique_constraint(op.f("uq_entry_bar_id_follows"), ["bar_id", "follows"])
        table.create_index(op.f("ix_entry_bar_id_chain"), ["bar_id", "chain"])


def _number_first(name: str) -> None:
    """Give each row the number of the row with which its corrections began."""
    rows = _corrected(name, "first")
    before = rows.alias()
    connection = op.get_bind()
    connection.execute(rows.update().where(rows.c.corrects.is_(None)).values(first=rows.c.id))
    found = (
        sa.select(before.c.first)
        .where(before.c.bar_id == rows.c.bar_id, before.c.id == rows.c.corrects)
        .scalar_subquery()
    )
    left = sa.select(sa.func.count()).select_from(rows).where(rows.c.first.is_(None))
    unnumbered = connection.scalar(left)
    while unnumbered:
        connection.execute(rows.update().where(rows.c.first.is_(None)).values(first=found))
        now = connection.scalar(left)
        if now == unnumbered:  # the row that it corrects is gone
            connection.execute(rows.update().where(rows.c.first.is_(None)).values(first=rows.c.id))
            return
        unnumbered = now


def _link_entries() -> None:
    connection = op.get_bind()
    for bar_id in connection.scalars(sa.select(_ENTRY.c.bar_id).distinct()).all():
        entries = (
            connection.execute(sa.select(_ENTRY).where(_ENTRY.c.bar_id == bar_id).order_by(_ENTRY.c.id))
            .mappings()
            .all()
        )
        for number, values in _links([dict(one) for one in entries], _standing(bar_id)).items():
            connection.execute(
                _ENTRY.update().where(_ENTRY.c.bar_id == bar_id, _ENTRY.c.id == number).values(**values)
            )


def _standing(bar_id: int) -> set[int]:
    """Return the numbers of the lines of waste that stand."""
    later = _WASTE.alias()
    corrected = sa.exists().where(later.c.bar_id == _WASTE.c.bar_id, later.c.corrects == _WASTE.c.id)
    query = sa.select(_WASTE.c.id).where(
        _WASTE.c.bar_id == bar_id,
        sa.func.coalesce(_WASTE.c.count_milli, _WASTE.c.grams_milli, 0) > 0,
        ~corrected,
    )
    return set(op.get_bind().scalars(query))


def _links(entries: list[dict[str, Any]], standing: set[int]) -> dict[int, dict[str, Any]]:
    """Return the chain of each entry that belongs to one, and the entry that it follows."""
    links = _Links(standing)
    for entry in entries:
        links.add(entry["id"], entry["what"], entry["details"] or {}, entry["undo_of"], entry["corrects"])
    return links.found


class _Links:
    """The chains found so far, entry by entry."""

    def __init__(self, standing: set[int]) -> None:
        self.found: dict[int, dict[str, Any]] = {}
        self._standing = standing
        self._chain_of: dict[int, int] = {}
        self._last: dict[int, tuple[int, str]] = {}  # of each chain: its last entry and what that is
        self._rows: dict[int, set[int]] = {}  # of each chain of waste: the lines that it says stand
        self._chain_of_row: dict[int, int] = {}

    def add(
        self, number: int, what: str, details: dict[str, Any], undo_of: int | None, corrects: int | None
    ) -> None:
        chain = self._chain_of.get(undo_of or corrects or 0)
        if what == "waste reason":
            chain = self._chain_of_row.get(details.get("before", 0))
        elif chain is not None and not self._goes_on(chain, what):
            chain = None
        found = self.found.setdefault(number, {})
        if chain is not None:
            found |= {"chain": chain, "follows": self._last[chain][0]}
        own = self._chain_of[number] = number if chain is None else chain
        self._last[own] = (number, what)
        self._take_rows(own, what, details)
        if what == "waste reason":
            found["details"] = {**details, "rows": sorted(self._rows[own])}
        elif what == "density" and "source_before" in details:
            found["details"] = {**details, "before": [details["before"], details["source_before"]]}
        if not found:
            del self.found[number]

    def _goes_on(self, chain: int, what: str) -> bool:
        """Whether an undo or an edit really changed the chain that it names.

        An undo after a reason changed nothing: the line stood again with another reason. Of a message that was
        edited into several entries, only the first takes the place of the old one.
        """
        if what == "undo":
            return not self._rows.get(chain, set()) & self._standing
        return self._last[chain][1] == "undo"

    def _take_rows(self, chain: int, what: str, details: dict[str, Any]) -> None:
        named = set(details.get("rows", []))
        if what == "waste":
            self._rows[chain] = named
        elif what == "waste reason":
            self._rows[chain] = self._rows.get(chain, set()) - {details.get("before", 0)} | named
        self._chain_of_row |= dict.fromkeys(self._rows.get(chain, ()), chain)


def downgrade() -> None:
    with op.batch_alter_table("entry") as table:
        table.add_column(sa.Column("undo_of", sa.BigInteger(), nullable=True))
        table.add_column(sa.Column("corrects", sa.BigInteger(), nullable=True))
    connection = op.get_bind()
    undo = _ENTRY.c.what == "undo"
    connection.execute(_ENTRY.update().where(undo).values(undo_of=_ENTRY.c.follows))
    connection.execute(_ENTRY.update().where(~undo).values(corrects=_ENTRY.c.chain))
    with op.batch_alter_table("entry") as table:
        table.drop_index(op.f("ix_entry_bar_id_chain"))
        table.drop_constraint(op.f("uq_entry_bar_id_follows"), type_="unique")
        table.drop_column("follows")
        table.drop_column("chain")
        table.create_unique_constraint("uq_entry_bar_id_undo_of", ["bar_id", "undo_of"])
    for name in _CORRECTED:
        with op.batch_alter_table(name) as table:
            table.drop_index(op.f(f"ix_{name}_corrects"))
            table.drop_column("first")
