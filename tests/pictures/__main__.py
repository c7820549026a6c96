"""Command line: python -m tests.pictures [--write]."""

from __future__ import annotations

import argparse
import sys

from tests.pictures.draw import FOLDER, difference, drawn


def main() -> int:
    """Draw the pictures, or report the outdated ones."""
    parser = argparse.ArgumentParser(prog="python -m tests.pictures")
    parser.add_argument("--write", action="store_true", help=f"put them into {FOLDER.name}/")
    write = parser.parse_args().write
    old = 0
    for place, png in drawn():
        apart = difference(png, place.read_bytes()) if place.exists() else 255.0
        if write:
            place.write_bytes(png)
        old += apart > 0
        print(f"{place.name}: {len(png):,} bytes, {apart:.2f} from what lay there")
    return 0 if write or not old else 1


if __name__ == "__main__":
    sys.exit(main())
