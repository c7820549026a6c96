"""A short run of the fuzz in every suite; `python -m tests.fuzz 20000` is the long one."""

from __future__ import annotations

import pytest

from storage.store import Store
from tests.api import Server
from tests.fuzz.run import Fuzz

STEPS = 300


@pytest.mark.parametrize("seed", [1])
async def test_whatever_is_sent_breaks_nothing_and_shows_nobody_another_bar(
    api: Server, store: Store, seed: int
) -> None:
    fuzz = Fuzz(api, store, seed)
    await fuzz.start()
    try:
        found = await fuzz.run(STEPS)
    finally:
        await fuzz.stop()
    assert found.problems == []
    assert found.answers > STEPS // 3  # it was not simply silent


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
