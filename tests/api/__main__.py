"""Run the server in its own process: print port and token as JSON, then serve until stopped."""

from __future__ import annotations

import argparse
import asyncio
import json
import signal

from tests.api.server import Server


async def _serve(port: int) -> None:
    server = Server()
    await server.start(port)
    print(json.dumps({"port": server.wire.port, "token": server.token}), flush=True)
    ended = asyncio.Event()
    for number in (signal.SIGINT, signal.SIGTERM):
        asyncio.get_running_loop().add_signal_handler(number, ended.set)
    await ended.wait()
    for violation in await server.stop():
        print(json.dumps({"violation": violation}), flush=True)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--port", type=int, default=0, help="0 takes any free port")
    asyncio.run(_serve(parser.parse_args().port))
