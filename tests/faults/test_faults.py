"""Tests that faults lose nothing, double nothing and repeat nothing without its label.

The short part tries the most telling faults a few times, the long part tries each, and those of each step at
every third one; `python -m tests.faults` tries all of it.
"""

from __future__ import annotations

import pytest

from tests.conftest import need_postgres
from tests.examples import in_long_part
from tests.faults.program import Loaded
from tests.faults.running import FAULTS, POSTGRESQL, FaultToTry, run
from tests.faults.tally import Tally, repeated_unlabelled, table

_EVERY = 3  # of some fifty steps; each starts a program anew

_TRIED = [
    pytest.param(
        fault,
        database,
        id=f"{fault.name}, {database}",
        marks=[pytest.mark.first, *([] if database in fault.quick_databases else [pytest.mark.long])],
    )
    for fault in FAULTS
    for database in fault.databases
]


@pytest.mark.parametrize(("fault", "database"), _TRIED)
async def test_nothing_is_lost(loaded: Loaded, fault: FaultToTry, database: str) -> None:
    if database == POSTGRESQL:
        need_postgres()
    reason = fault.lacks()
    if reason:
        pytest.skip(reason)
    quick = database in fault.quick_databases and not in_long_part()
    tally = await run(loaded, fault, database, quick=quick, every=_EVERY)
    assert tally.tried
    assert tally.entries + tally.reminders
    assert tally.clean, dict(zip(table([])[0].split("|")[1:-1], tally.cells(), strict=True))


def test_a_repeat_counts_unless_it_says_so() -> None:
    note = "\n(This may be a repeat.)"
    assert repeated_unlabelled([("a", "a"), ("b", "b")]) == 0
    assert repeated_unlabelled([("a", "a"), ("a", "a" + note)]) == 0
    assert repeated_unlabelled([("a", "a" + note), ("a", "a")]) == 1
    assert repeated_unlabelled([("a", "a"), ("a", "a"), ("a", "a")]) == 2


def test_a_tally_is_clean_only_with_zeros() -> None:
    clean = Tally("f", "SQLite", 1, 9, 0, 0, 0, 0, 2, 0, 0)
    assert clean.clean
    for name in ("lost", "doubled", "unanswered", "refused", "reminders_lost", "unlabelled"):
        counts = {one: getattr(clean, one) for one in Tally.__dataclass_fields__}
        assert not Tally(**{**counts, name: 1}).clean
