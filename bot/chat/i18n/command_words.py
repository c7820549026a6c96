"""More English ways to begin a command, as they are said over a bar."""

from __future__ import annotations

from typing import Final

ENGLISH: Final[dict[str, tuple[str, ...]]] = {
    "help": ("hi", "hello", "hey", "what can i do", "what can you do", "what can i say"),
    # Whoever is answered in a language they cannot read still finds the way to their own.
    "language": ("idioma", "speak"),
    "undo": ("take it back", "take back", "undo the last"),
    "cancel": ("never mind", "nevermind", "forget it", "stop"),
    "formulas": ("show formulas", "list formulas", "all formulas", "show recipes"),
    "formula": ("recipe for", "show recipe for", "formula for", "show me", "spec for"),
    "scale": (
        "scale up",
        "scale down",
        "how much oil for",
        "how much oil do i need for",
        "how much do i need for",
    ),
    "cost": ("what does", "how much does", "what do", "how much do"),
    "price": (
        *("what is the price of", "what's the price of", "whats the price of", "price for"),
        *("set price of", "set price", "set the price of"),
    ),
    "batch": ("how is batch", "show batch", "log a batch", "make a batch of", "batch up", "is batch"),
    "batches": (
        "show batches",
        "what's ready",
        "what is ready",
        "whats ready",
        "what's resting",
        "what is resting",
    ),
    "check": ("checked", "check on"),
    "open": ("open batch", "opened batch"),
    "used": ("batch used up", "finished batch", "used up batch"),
    "discard": ("bin batch", "throw out batch", "dump batch", "throw batch", "discarded"),
    "label": ("label for", "labels for", "print labels for", "print label for"),
    "waste": (
        *("bin", "toss", "tossed", "chuck", "chucked", "dump", "dumped", "trash", "trashed", "throw out"),
        *("throw away", "threw away", "thrown away", "we threw out", "we binned", "had to bin", "lost"),
    ),
    "week": ("waste this week", "how much waste this week", "what did we waste"),
    "month": ("waste this month", "how much waste this month"),
    "bought": ("received", "got in"),
    "bar": ("set", "change setting"),
}
