"""A marker for translatable texts kept as data, so that the catalogue tool finds them."""

from __future__ import annotations


def N_(text: str) -> str:  # noqa: N802 - the name that gettext tools look for
    """Return `text` unchanged; it is translated where it is shown."""
    return text
