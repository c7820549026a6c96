"""Build the grammar's LALR tables, or load saved ones.

Building takes a second, loading a few hundredths. The first line of a saved file holds a key of grammar, lark
and Python version, and a digest of the rest. If either differs, the tables are built and saved again.
"""

from __future__ import annotations

import io
import os
import sys
import tempfile
from contextlib import suppress
from hashlib import sha256
from pathlib import Path
from typing import Any, Final

import lark
from lark import Lark

GRAMMAR: Final = Path(__file__).with_name("grammar.lark")
FEATURES: Final = Path(__file__).parents[1] / "features"
SHIPPED: Final = GRAMMAR.with_suffix(".tables")
"""Written during packaging. A checkout has none and uses the user's cache folder."""

_MOST_KEPT = 16
_OPTIONS: Final[dict[str, Any]] = {
    "parser": "lalr",
    "lexer": "basic",
    "propagate_positions": True,
    "maybe_placeholders": False,
    "keep_all_tokens": True,
}


def load() -> Lark:
    """Return the parser, from saved tables if they match; otherwise build and save them."""
    text = grammar()
    key = _key(text)
    kept = _kept(key)
    for path in (SHIPPED, kept):
        found = None if path is None else read(path, key)
        if found is not None:
            return found
    built = build(text)
    if kept is not None and save(built, kept, key):
        _forget_oldest(kept.parent)
    return built


def grammar() -> str:
    """Return the whole grammar: the shared rules, then each feature's own."""
    return "\n".join(path.read_text("utf-8") for path in (GRAMMAR, *sorted(FEATURES.rglob("*.lark"))))


def build(text: str) -> Lark:
    """Build the parser; the start rules are those of commands and slots."""
    names = [line.split(":")[0].strip() for line in text.splitlines() if ":" in line and line[0].isalpha()]
    starts = [name for name in names if name.endswith(("_cmd", "_slot", "_said"))]
    return Lark(text, start=starts, **_OPTIONS)


def save(parser: Lark, path: Path, key: str) -> bool:
    """Save the tables atomically; return False if the folder is not writable."""
    content = io.BytesIO()
    parser.save(content)
    payload = content.getvalue()
    with suppress(OSError):
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=path.name)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(_first_line(key, payload) + payload)
            Path(name).replace(path)
        except OSError:
            Path(name).unlink()
            raise
        return True
    return False


def save_shipped(path: Path = SHIPPED) -> bool:
    """Build the tables and save them beside the grammar, for a package or an image."""
    text = grammar()
    return save(build(text), path, _key(text))


def _kept(key: str) -> Path | None:
    """Return the file in the user's cache folder, or None for a user without a home."""
    from platformdirs import user_cache_path  # noqa: PLC0415 - not needed when building a package

    try:
        return user_cache_path("peel-ledger") / f"grammar-{key[:16]}.tables"
    except RuntimeError:
        return None


def _forget_oldest(folder: Path) -> None:
    """Delete all but the latest files; each version of the grammar has its own."""
    with suppress(OSError):
        files = sorted(folder.glob("grammar-*.tables"), key=lambda path: path.stat().st_mtime, reverse=True)
        for path in files[_MOST_KEPT:]:
            path.unlink()


def _key(text: str) -> str:
    parts = (text, sorted(_OPTIONS.items()), lark.__version__, sys.version_info[:2])
    return sha256(repr(parts).encode()).hexdigest()


def _first_line(key: str, payload: bytes) -> bytes:
    return f"{key} {sha256(payload).hexdigest()}\n".encode()


def read(path: Path, key: str) -> Lark | None:
    """Return the saved parser, or None if the file is missing, damaged or has another key."""
    try:
        first, payload = path.read_bytes().split(b"\n", 1)
    except (OSError, ValueError):
        return None
    if first + b"\n" != _first_line(key, payload):
        return None
    return Lark.load(io.BytesIO(payload))


if __name__ == "__main__":
    sys.exit(0 if save_shipped() else 1)
