"""Print a generated document, or write it beside the code that makes it."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path


def print_or_write(command: str, path: Path, make: Callable[[], str]) -> None:
    """Run `python -m <command> [--write]`: the document is made after the options are read."""
    parser = argparse.ArgumentParser(prog=f"python -m {command}")
    parser.add_argument("--write", action="store_true", help=f"renew {path.name}")
    write = parser.parse_args().write
    text = make()
    if write:
        path.write_text(text, "utf-8")
    else:
        print(text, end="")
