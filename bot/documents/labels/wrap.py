"""Break a text into lines: at spaces first, between ideographs, and inside a word only if necessary.

fpdf2 breaks lines at spaces only: it splits "cold-pressed" inside a word, begins a line with an ideographic
comma and ends one with an opening bracket.
"""

from __future__ import annotations

import unicodedata
from bisect import bisect_left
from collections.abc import Callable

_NOT_FIRST = frozenset(
    "、。，．！？）」』】〕》〉ー々゛゜：；・ぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮ)]},.;:!?"
)
_NOT_LAST = frozenset("（「『【〔《〈([{")
_ZERO_WIDTH_JOINER = "\u200d"


def _is_ideograph(character: str) -> bool:
    # Korean uses spaces between words, so its syllables stay together like letters.
    return unicodedata.east_asian_width(character) in "WF" and not "\uac00" <= character <= "\ud7a3"


def _may_break(before: str, after: str) -> bool:
    if before == " ":
        return True
    if after == " " or after in _NOT_FIRST or before in _NOT_LAST:
        return False
    if unicodedata.category(after).startswith("M"):
        return False
    if before == "-" and after.isalpha():
        return True
    return _is_ideograph(before) or (_is_ideograph(after) and before.isalnum())


def _is_character_start(text: str, index: int) -> bool:
    after, before = text[index], text[index - 1]
    return not (unicodedata.category(after).startswith("M") or _ZERO_WIDTH_JOINER in {after, before})


def _longest(text: str, ends: list[int], fits: Callable[[str], bool]) -> int:
    """Return the last of `ends` whose text fits, or 0. Width grows with length, so bisection finds it."""
    count = bisect_left(ends, True, key=lambda end: not fits(text[:end].rstrip(" ")))
    return ends[count - 1] if count else 0


def take_line(text: str, fits: Callable[[str], bool]) -> tuple[str, str]:
    """Split `text` into the line that fits and the rest, without spaces at the break.

    `fits` says whether a line is narrow enough. A word wider than the line breaks between characters, never
    between a letter and its accent; a line always takes at least one character, so that a caller's loop ends.
    """
    if fits(text):
        return text, ""
    breaks = [index for index in range(1, len(text)) if _may_break(text[index - 1], text[index])]
    end = _longest(text, breaks, fits)
    if not end:
        starts = [index for index in range(1, len(text)) if _is_character_start(text, index)]
        end = _longest(text, starts, fits) or (starts[0] if starts else len(text))
    return text[:end].rstrip(" "), text[end:].lstrip(" ")


def is_right_to_left(text: str) -> bool:
    """Whether the first letter with a direction is right-to-left."""
    for character in text:
        direction = unicodedata.bidirectional(character)
        if direction == "L":
            return False
        if direction in {"R", "AL"}:
            return True
    return False
