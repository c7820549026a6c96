"""Fold long replies: what does not fit a phone's screen is behind a [More] button."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from bot.chat.i18n.language import _
from bot.chat.intent.intent import REST
from bot.chat.reply import layout
from bot.chat.reply.message import Block, Button, Caution, Grid, Reply, Text

LONGEST = 20  # lines; a longer reply is folded
_LONGEST_PAGE = 30
_KEPT = 12


def folded(replies: list[Reply], line: str, rest: bool) -> list[Reply]:
    """Fold a single long answer to a line, or return only the rest of it.

    Cautions stay in the first part.
    """
    if len(replies) != 1 or replies[0].choosing or replies[0].ask is not None:
        return replies
    answer = replies[0]
    pieces = [piece for block in answer.blocks for piece in _pieces(block)]
    taken = {button.label for row in answer.buttons for button in row}
    paged = bool(taken & {_("More"), _("Older"), _("Newest")})  # it has pages of its own
    if sum(map(height, pieces)) <= (_LONGEST_PAGE if paged else LONGEST):
        return replies
    first, later = _parts(pieces)
    if rest:
        return [replace(answer, blocks=(pieces[0], *later), edits=False)]
    label = _("The rest") if _("More") in taken else _("More")
    return [replace(answer, blocks=first).with_buttons((Button(label, REST + line),))]


def height(block: Block) -> int:
    """Return the lines of a block on a small phone."""
    if isinstance(block, Grid):
        return len(layout.grid_lines(block.rows, layout.PHONE_WIDTH - 2))
    return layout.height(block.text)


def _pieces(block: Block) -> Iterator[Block]:
    """Split a paragraph of several lines into one for each."""
    if isinstance(block, Text):
        yield from (replace(block, text=line) for line in block.text.split("\n"))
    else:
        yield block


def _parts(pieces: list[Block]) -> tuple[tuple[Block, ...], tuple[Block, ...]]:
    room = _KEPT - sum(height(one) for one in pieces if isinstance(one, Caution))
    first: list[Block] = []
    rest: list[Block] = []
    for one in pieces:
        room -= 0 if isinstance(one, Caution) else height(one)
        kept = isinstance(one, Caution) or not first or (room >= 0 and not rest)
        (first if kept else rest).append(one)
    return tuple(first), tuple(rest)
