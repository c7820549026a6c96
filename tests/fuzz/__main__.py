"""python -m tests.fuzz [steps] [--seed N]: run the fuzz test for long, on its own database."""

from __future__ import annotations

import argparse
import asyncio
import logging
import sys
import tempfile
import time
from pathlib import Path

from storage import migrate
from storage.store import Store
from tests.api import Server
from tests.fuzz.run import Found, Fuzz


async def _run(steps: int, seed: int, url: str) -> Found:
    store = Store(url)
    migrate.upgrade(store)
    async with Server() as server:
        fuzz = Fuzz(server, store, seed)
        await fuzz.start()
        try:
            return await fuzz.run(steps)
        finally:
            await fuzz.stop()
            store.close()


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    parser.add_argument("steps", nargs="?", type=int, default=20_000)
    parser.add_argument("--seed", type=int, default=1)
    chosen = parser.parse_args()
    logging.basicConfig(level=logging.WARNING, handlers=[logging.NullHandler()])
    began = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        url = f"sqlite:///{Path(folder) / 'fuzz.sqlite'}"
        found = asyncio.run(_run(chosen.steps, chosen.seed, url))
    took = time.monotonic() - began
    sent = ", ".join(f"{count} {name}" for name, count in sorted(found.sent.items()))
    print(f"{chosen.steps} steps with seed {chosen.seed} in {took:.0f} s: {sent}")
    print(f"{found.answers} answers seen, {found.not_understood} of them 'I did not understand'")
    for number, problem in enumerate(found.problems[:40], start=1):
        print(f"\n{number}. {problem}")
    print(f"{len(found.problems)} problems")
    return 1 if found.problems else 0


if __name__ == "__main__":
    sys.exit(main())
