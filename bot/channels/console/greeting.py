"""The greeting at a terminal, in a module that imports nothing slow."""

from __future__ import annotations

import textwrap


def greeting(demo: bool) -> str:
    """Return the greeting at a terminal."""
    text = "Peel Ledger. Type what you want to do, or the sign in brackets for a button; 'quit' ends."
    if demo:
        text += " This is a throw-away copy of the demo bar."
    return textwrap.fill(text + " End a line with \\ to go on in the next.", 76)
