"""The wishes of all commands, and their frames: typed pieces fill them to a line one could type."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.registry import all_commands
from bot.chat.i18n.keywords import keyword_for
from bot.chat.intent.reading.pieces import Typed
from bot.trade.formulas.kinds import IngredientKind, guess_kind

_PART = re.compile(r"\[[^\]]*\]|\{[a-z_]+\??\}|\S+")
# The kinds of pieces that a place in a frame takes, the usual one first.
_TAKES = {
    "quantity": ("amount", "number", "half", "cases"),
    "amount": ("amount", "packs"),
    "factor": ("factor", "half"),
    "pieces": ("number", "cents"),
    "batch": ("number",),
    "count": ("drinks", "number"),
    "past_day": ("day",),
    "whole_fruit": ("fruit",),
    "price": ("money", "cents", "number"),
    "level": ("level", "number"),
    "item": ("ingredient", "fruit"),
    "subject": ("formula", "ingredient"),
    "sold": ("drink", "unlisted"),
}
_AMOUNTS = {"amount", "number", "money", "cents", "half", "cases", "more"}
_BARE = frozenset({"count", "pieces"})  # places that take a number without its unit


@dataclass(frozen=True, slots=True)
class Filled:
    """A frame with its places filled: the words, and how many pieces stand in it."""

    words: str
    used: int


def fill(wish: Wish, pieces: Sequence[Typed]) -> Iterator[Filled]:
    """Yield the frames of a wish that the pieces fill, the fullest first.

    Last comes the empty one, unless the command would then do something else than show.
    """
    frames = wish.frames if wish.shows else (*wish.frames, "")
    found = [one for frame in frames if (one := _filled(frame, wish, pieces)) is not None]
    yield from sorted(found, key=lambda one: -one.used)


def _filled(frame: str, wish: Wish, pieces: Sequence[Typed]) -> Filled | None:
    left = list(pieces)
    words: list[str] = []
    for part in _PART.findall(frame):
        if part.startswith("["):
            groups = _repeated(part[1:-1], left)
            if not groups:
                return None
            words.append(wish.between.join(groups))
        elif part.startswith("{"):
            piece = _take(part.strip("{}?"), left)
            if piece is None and not part.endswith("?}"):
                return None
            if piece is not None and piece.text:
                words.append(_words_for(part.strip("{}?"), piece))
        else:
            words.append(keyword_for(part) if part.isupper() else part)
    return Filled(_tidy(" ".join(words)), len(pieces) - len(left))


def _words_for(place: str, piece: Typed) -> str:
    if place == "factor" and piece.kind == "half":
        return f"x{piece.text}"
    return piece.number if place in _BARE and piece.number else piece.text


def _take(place: str, left: list[Typed]) -> Typed | None:
    kinds = _TAKES.get(place, (place,))
    for group in (kinds,) if place in _BARE else ((kind,) for kind in kinds):
        found = next((one for one in left if one.kind in group and _fits(place, one)), None)
        if found is not None:
            left.remove(found)
            return found
    return None


def _fits(place: str, piece: Typed) -> bool:
    """Whether a piece of the right kind can stand in a place: 'two layers' names no batch."""
    if place == "past_day":
        day = piece.day
        return day is not None and (day.days_ago > 0 or (day.date or "").startswith("-P"))
    if place == "whole_fruit":
        return guess_kind(piece.text) is not IngredientKind.JUICE
    return place != "batch" or not piece.counts


def _repeated(frame: str, left: list[Typed]) -> list[str]:
    """Fill a part once for each thing named. Numbers stand before their things, or all after them."""
    places = [part.strip("{}") for part in _PART.findall(frame)]
    anchor = next(place for place in places if not place.endswith("?"))
    kinds = _TAKES.get(anchor, (anchor,))
    anchors = [one for one in left if one.kind in kinds]
    amounts = [one for one in left if one.kind in _AMOUNTS]
    if not anchors:
        return []
    before = bool(amounts) and amounts[0].at < anchors[0].at
    groups = []
    for number, one in enumerate(anchors):
        start = anchors[number - 1].at if number else -1
        end = anchors[number + 1].at if number + 1 < len(anchors) else len(left) + 10_000
        own = [
            piece
            for piece in left
            if (start < piece.at < end if len(anchors) == 1 else _is_near(piece, one.at, start, end, before))
        ]
        group = []
        for place in places:
            piece = one if place == anchor else _take(place.rstrip("?"), own)
            if piece is not None:
                group.append(piece)
                own = [other for other in own if other is not piece]
            elif not place.endswith("?"):
                break  # '46 negroni, 12 paloma' where the list has no paloma
        else:
            groups.append(" ".join(piece.text for piece in group))
            left[:] = [piece for piece in left if piece not in group]
    return groups


def _is_near(piece: Typed, at: int, start: int, end: int, before: bool) -> bool:
    """Whether a piece belongs to the thing at this place, between two others."""
    if piece.kind in _AMOUNTS and before:
        return start < piece.at < at
    return at < piece.at < end


def _tidy(words: str) -> str:
    return words.replace(" :", ":").replace(" ,", ",").strip()


@cache
def wishes() -> dict[str, tuple[tuple[Command, Wish], ...]]:
    """Return the commands that a wish may mean; a command without wishes of its own is one by its name."""
    found: dict[str, list[tuple[Command, Wish]]] = {}
    for command in all_commands().values():
        for wish in command.wishes or (Wish(command.name),):
            found.setdefault(wish.name, []).append((command, wish))
    return {name: tuple(those) for name, those in found.items()}


def wishes_of(command: Command) -> frozenset[str]:
    """Return the names of the wishes that a command serves."""
    return frozenset(wish.name for wish in command.wishes or (Wish(command.name),))
