"""A short run of the fuzz in the short part, longer ones in the long part; see `python -m tests.fuzz`."""

from __future__ import annotations

import pytest

from storage.store import Store
from tests.api import Server
from tests.examples import in_long_part
from tests.fuzz.run import Fuzz

SHORT, LONG = 100, 1_200
_IN_LONG = [pytest.param(seed, marks=pytest.mark.long) for seed in (2, 3)]


@pytest.mark.parametrize("seed", [1, *_IN_LONG])
async def test_whatever_is_sent_breaks_nothing_and_shows_nobody_another_bar(
    api: Server, store: Store, seed: int
) -> None:
    fuzz = Fuzz(api, store, seed)
    steps = LONG if in_long_part() else SHORT
    await fuzz.start()
    try:
        found = await fuzz.run(steps)
    finally:
        await fuzz.stop()
    assert found.problems == []
    assert found.answers > steps // 3  # it was not just silent


async def test_the_fuzz_sees_a_leak_and_an_error(api: Server, store: Store) -> None:
    fuzz = Fuzz(api, store, seed=2)
    await fuzz.start()
    try:
        fuzz._look_at(fuzz.sides[0].owner.id, "Mumblethorpe")
        fuzz._look_at(fuzz.stranger.id, "quarkbane mist")
        fuzz._look_at(fuzz.sides[0].owner.id, "Quarkbane mist")
    finally:
        await fuzz.stop()
    assert len(fuzz.found.problems) == 2
