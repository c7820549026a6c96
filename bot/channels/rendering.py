"""Render replies as plain text and as Telegram's HTML."""

from __future__ import annotations

import re
import textwrap
from html import escape

from bot.chat.i18n.language import Tongue, _, speaking
from bot.chat.reply.layout import grid_lines
from bot.chat.reply.message import Caution, Grid, Reply, Text

_TEXT_WIDTH = 76
_GRID_WIDTH = 60
_TWO_STOPS = re.compile(r"(\b[ap]\.[\u00a0\u202f ]?m\.)\.(?!\.)")


def plain_lines(reply: Reply, width: int = _TEXT_WIDTH, grid_width: int = _GRID_WIDTH) -> list[str]:
    """Return a reply as lines of plain text for a terminal or a pipe, wrapped at `width` characters.

    A longer word, such as a link, stays whole.
    """
    lines: list[str] = []
    for block in reply.blocks:
        if isinstance(block, Grid):
            lines += ["  " + line for line in grid_lines(block.rows, grid_width)]
            continue
        text = _text_of(block, reply.language)
        for paragraph in text.split("\n"):
            lines += textwrap.wrap(paragraph, width, break_long_words=False) or [""]
    # No-break spaces have served their purpose by now; a search of plain text uses plain spaces.
    return [line.replace("\u00a0", " ").replace("\u202f", " ") for line in lines]


def caution_words(block: Caution, language: str) -> str:
    """Return a caution as a labelled sentence."""
    with speaking(Tongue(language)):
        return _("Caution: {text}").format(text=block.text)


def _text_of(block: Text | Caution, language: str) -> str:
    """Return the text of a block. The stop of 'p. m.' also ends its sentence."""
    text = caution_words(block, language) if isinstance(block, Caution) else block.text
    return _TWO_STOPS.sub(r"\1", text)


def html_parts(reply: Reply, longest: int = 4096) -> list[str]:
    """Return a reply as one or more messages of Telegram's HTML, each within the length limit.

    Telegram counts the text after parsing its markup, so lengths are measured before escaping.
    """
    parts: list[list[str]] = [[]]
    room = longest
    for block in reply.blocks:
        for text, html in _pieces(block, longest, reply.language):
            if len(text) + 1 > room and parts[-1]:
                parts.append([])
                room = longest
            parts[-1].append(html)
            room -= len(text) + 1
    return ["\n".join(part) for part in parts if part]


def _pieces(block: Text | Grid | Caution, longest: int, language: str) -> list[tuple[str, str]]:
    if isinstance(block, Grid):
        return _grid_pieces(grid_lines(block.rows), longest)
    text = _text_of(block, language)
    pieces = []
    for start in range(0, len(text), longest - 96):
        part = text[start : start + longest - 96]
        html = escape(part, quote=False)
        if isinstance(block, Text) and block.strong:
            html = f"<b>{html}</b>"
        elif isinstance(block, Caution):
            html = f"<i>{html}</i>"
        pieces.append((part, html))
    return pieces or [("", "")]


def _grid_pieces(lines: list[str], longest: int) -> list[tuple[str, str]]:
    pieces: list[tuple[str, str]] = []
    group: list[str] = []
    size = 0
    for line in lines:
        if size + len(line) + 1 > longest - 96 and group:
            pieces.append(_pre(group))
            group, size = [], 0
        group.append(line)
        size += len(line) + 1
    if group:
        pieces.append(_pre(group))
    return pieces


def _pre(lines: list[str]) -> tuple[str, str]:
    text = "\n".join(lines)
    return text, f"<pre>{escape(text, quote=False)}</pre>"
