"""Build the grammar's LALR tables, or load them from where they were saved.

Building takes a second, loading a few hundredths. A saved file is used only if its first line names this
grammar, this lark and this Python, and its content is whole; otherwise the tables are built and saved anew.
"""

from __future__ import annotations

import io
import os
import sys
import tempfile
from collections.abc import Iterator
from contextlib import suppress
from hashlib import sha256
from pathlib import Path
from typing import Any, Final

import lark
from lark import Lark
from platformdirs import user_cache_path

GRAMMAR: Final = Path(__file__).with_name("grammar.lark")
FEATURES: Final = Path(__file__).parents[1] / "features"
SHIPPED: Final = GRAMMAR.with_suffix(".tables")
"""Written at packaging; what a checkout has not, the user's cache folder keeps."""

_OPTIONS: Final[dict[str, Any]] = {
    "parser": "lalr",
    "lexer": "basic",
    "propagate_positions": True,
    "maybe_placeholders": False,
    "keep_all_tokens": True,
}


def load() -> Lark:
    """Return the grammar's parser: from saved tables where they fit, else built and then saved."""
    text = grammar()
    key = _key(text)
    for path in _places():
        found = read(path, key)
        if found is not None:
            return found
    built = build(text)
    for path in _places():
        if path != SHIPPED:
            save(built, path, key)
    return built


def grammar() -> str:
    """Return the whole grammar: the rules that subjects share, then each feature's own."""
    return "\n".join(path.read_text("utf-8") for path in (GRAMMAR, *sorted(FEATURES.rglob("*.lark"))))


def build(text: str) -> Lark:
    """Build the parser; each command's rule and each slot's is a rule to start from."""
    names = [line.split(":")[0].strip() for line in text.splitlines() if ":" in line and line[0].isalpha()]
    starts = [name for name in names if name.endswith(("_cmd", "_slot"))]
    return Lark(text, start=starts, **_OPTIONS)


def save(parser: Lark, path: Path, key: str) -> bool:
    """Save the tables in one step, so that nobody reads half of them; False where nothing may be written."""
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


def _places() -> Iterator[Path]:
    yield SHIPPED
    with suppress(RuntimeError):  # a user without a home
        yield user_cache_path("peel-ledger") / SHIPPED.name


def _key(text: str) -> str:
    parts = (text, sorted(_OPTIONS.items()), lark.__version__, sys.version_info[:2])
    return sha256(repr(parts).encode()).hexdigest()


def _first_line(key: str, payload: bytes) -> bytes:
    return f"{key} {sha256(payload).hexdigest()}\n".encode()


def read(path: Path, key: str) -> Lark | None:
    """Return the saved parser, or None where there is none for this key or not all of it."""
    try:
        first, payload = path.read_bytes().split(b"\n", 1)
    except (OSError, ValueError):
        return None
    if first + b"\n" != _first_line(key, payload):
        return None
    return Lark.load(io.BytesIO(payload))


if __name__ == "__main__":
    sys.exit(0 if save_shipped() else 1)
