"""The wordings that a bar has confirmed: how its people say a wish, without the nouns and numbers."""

from __future__ import annotations

from dataclasses import dataclass

from bot.work.context import Context
from bot.work.errors import NotThereError
from storage.tables import Wording

MOST = 500  # more would only slow down the search
_LONGEST = 200


@dataclass(frozen=True, slots=True)
class WordingView:
    """One wording: its number, language, the line with kinds for nouns and numbers, and the wish."""

    id: int
    language: str
    shape: str
    wish: str


def known(context: Context) -> list[WordingView]:
    """Return the bar's wordings in the order of confirming."""
    return context.book.remembered(context.bar.revision, ("wordings",), lambda: _rows(context))


def _rows(context: Context) -> list[WordingView]:
    found = context.book.all(Wording, order=Wording.id)
    return [WordingView(one.id, one.language, one.shape, one.wish) for one in found]


def wish_of(context: Context, language: str, shape: str) -> str | None:
    """Return the wish that this bar has confirmed for a line, or None."""
    said = (language, shape[:_LONGEST])
    return next((one.wish for one in known(context) if (one.language, one.shape) == said), None)


def learn(context: Context, language: str, shape: str, wish: str) -> None:
    """Remember that a line of this shape means a wish."""
    shape = shape[:_LONGEST]
    row = context.book.one(Wording, Wording.language == language, Wording.shape == shape)
    if row is not None and row.wish == wish:
        return
    if row is not None:
        row.wish = wish
        context.book.session.flush()
    elif len(known(context)) < MOST:
        context.book.add(
            Wording(language=language, shape=shape, wish=wish, made_at=context.now, by=context.person_id)
        )
    context.book.touched()


def forget(context: Context, number: int) -> WordingView:
    """Forget a wording. Raises NotThereError."""
    row = context.book.get(Wording, number)
    if row is None:
        raise NotThereError("wording", str(number))
    view = WordingView(row.id, row.language, row.shape, row.wish)
    context.book.session.delete(row)
    context.book.session.flush()
    context.book.touched()
    return view
