"""Tests of bottle checks in addition to the model."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from bot.work.batches.batches import Clarity
from bot.work.liquids.clearing import TIMES_TO_TRUST, Seen, Sighting

_looks = st.lists(
    st.tuples(st.integers(1, 5), st.sampled_from(list(Clarity)), st.integers(0, 200)), max_size=20
).map(lambda looks: Seen(tuple(Sighting(*look) for look in looks)))


@given(_looks)
def test_clear_here_takes_three_clear_looks_and_no_batch_left_otherwise(seen: Seen) -> None:
    last = {one.batch: one.clarity for one in seen.sightings}
    times = [one.clarity for one in seen.sightings].count(Clarity.CLEAR)
    expected = times >= TIMES_TO_TRUST and all(clarity is Clarity.CLEAR for clarity in last.values())
    assert seen.clear_here is expected


@given(_looks)
def test_the_worst_of_the_latest_looks_is_told(seen: Seen) -> None:
    last = {one.batch: one.clarity for one in seen.sightings}.values()
    if Clarity.SPLIT in last:
        assert seen.worst_last is not None
        assert seen.worst_last.clarity is Clarity.SPLIT
    elif Clarity.HAZY in last:
        assert seen.worst_last is not None
        assert seen.worst_last.clarity is Clarity.HAZY
    else:
        assert seen.worst_last is None
