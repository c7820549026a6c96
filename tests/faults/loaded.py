"""A process that has loaded the program and forks a new copy on request.

Loading takes two seconds, and some faults need a hundred starts. Each line on standard input is a JSON
object: `env` for the program, `output` a file for its output, `steps` where it must die (see
`tests.faults.steps`). The response is the id of the new process.
"""

from __future__ import annotations

import json
import os
import signal
import sys
import traceback
from pathlib import Path
from typing import Any

from bot.__main__ import main
from bot.channels.telegram import channel  # noqa: F401 - what `run` loads
from bot.chat.grammar.parser import warm_up
from tests.faults.steps import Steps


def _become(order: dict[str, Any]) -> None:
    """Run the program in this process. Never returns."""
    signal.signal(signal.SIGCHLD, signal.SIG_DFL)
    said = os.open(order["output"], os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    for number in (1, 2):
        os.dup2(said, number)
    sys.stdin = Path(os.devnull).open()  # noqa: SIM115 - it stays open as long as the program runs
    os.environ.update(order["env"])
    if order["steps"] is not None:
        Steps(**order["steps"]).watch()
    code = 1
    try:
        code = main(["run"])
    except BaseException:
        traceback.print_exc()
    sys.stdout.flush()
    sys.stderr.flush()
    os._exit(code)


def serve() -> None:
    """Start one program for each input line."""
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)  # not waited for here
    warm_up()
    print(json.dumps("ready"), flush=True)
    for line in sys.stdin:
        order = json.loads(line)
        Path(order["output"]).parent.mkdir(parents=True, exist_ok=True)
        process = os.fork()
        if process == 0:
            _become(order)
        print(json.dumps(process), flush=True)


if __name__ == "__main__":
    serve()
