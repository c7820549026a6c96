"""Provide a bar with the mixes for the tests of the chemistry."""

from __future__ import annotations

from bot.chat.intent.intent import REST
from bot.chat.reply.message import Caution, Grid, Reply
from tests.house import House, Person

MIST = """new formula Grapefruit mist
grapefruit oil 12 ml
propylene glycol 22 ml
neutral spirit 96 % 62 ml
kind aroma mist"""
# The mix of the trade: clear after a day, so the models must never call it 'will split'.
TRADE_MIX = """new formula House mist
orange oil 10 ml
propylene glycol 20 ml
neutral spirit 95 % 36.5 ml
kind aroma mist"""
CLEAR_MIX = """new formula Clear mist
orange oil 4 ml
neutral spirit 96 % 90 ml
kind aroma mist"""
SYRUP = """new formula House syrup
caster sugar 500 g
water 500 ml
kind syrup"""


def bar_with(house: House, *formulas: str, rules: str = "") -> Person:
    """Open a bar and store these formulas; `rules` sets its jurisdiction."""
    return house.open_bar(said=[*([f"bar rules {rules}"] if rules else []), *formulas])


def flat(replies: list[Reply]) -> str:
    """Return replies as text, unwrapped: a line for each paragraph and for each row of a grid."""
    lines: list[str] = []
    for one in replies:
        for block in one.blocks:
            if isinstance(block, Grid):
                lines += [" | ".join(row) for row in block.rows]
            else:
                lines.append(f"Caution: {block.text}" if isinstance(block, Caution) else block.text)
    return "\n".join(lines)


def said(person: Person, line: str) -> str:
    """Say a line; return the whole answer as one text."""
    return whole(person, person.says(line))


def tapped(person: Person, label: str) -> str:
    """Tap a button; return the whole answer as one text."""
    return whole(person, person.taps(label))


def whole(person: Person, replies: list[Reply]) -> str:
    """Return replies as text, with the folded part of a long one."""
    folded = [
        button.label
        for one in replies
        for row in one.buttons
        for button in row
        if button.line.startswith(REST)
    ]
    return flat([*replies, *(one for label in folded for one in person.taps(label))])


def labels(replies: list[Reply]) -> list[str]:
    """Return the labels of all buttons below the replies."""
    return [button.label for one in replies for row in one.buttons for button in row]
