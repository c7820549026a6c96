"""The phrasebooks beside the features, and the lines held out."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
HELD_OUT = Path(__file__).with_name("held_out")
LANGUAGES = ("en", "es")


@dataclass(frozen=True, slots=True)
class Phrase:
    """A line that a person would say, and the wish in it. Lines of one family share their sentence frame."""

    wish: str
    text: str
    family: str = ""

    @property
    def later(self) -> bool:
        """Whether a line was held out later than the first ones, for the wishes that came after them."""
        return self.family.startswith("later-")

    @property
    def by_stranger(self) -> bool:
        """Whether a line is by a writer of whom no phrasebook holds a line."""
        return self.family == "stranger"


def training(language: str) -> list[Phrase]:
    """Return the phrases beside the features."""
    books = sorted((ROOT / "bot/chat/features").glob(f"*/phrases/{language}.tsv"))
    rows = (line.split("\t") for book in books for line in book.read_text("utf-8").splitlines())
    return [Phrase(wish, text) for wish, text in rows]


def held_out(language: str) -> list[Phrase]:
    """Return the lines that no model has seen."""
    books = sorted(HELD_OUT.glob(f"{language}*.tsv"))
    rows = (line.split("\t") for book in books for line in book.read_text("utf-8").splitlines())
    return [Phrase(wish, text, family) for wish, family, text in rows]
