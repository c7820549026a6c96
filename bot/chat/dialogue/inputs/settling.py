"""Settle by a tap what a line leaves open, then run it: the meaning of a new name, an unusual amount.

A button carries it in lines of its own before the line itself:

    settle grapefruit = ugly grapefruit     another name of a known ingredient
    settle fruit kumquat                    a new fruit; 'settle ingredient' anything else
    settle spirit 75 neutral spirit 75 %    a new spirit of this strength
    settle strength 3 75                    the strength of spirit 3 has changed, which the line itself says
    settle sure                             the amount is meant
    waste 3 ugly grapefruits

Before all of it, 'instead 62 ' logs the line in the place of entry 62, and 'instead 62,63 ' of several.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from bot.chat.dialogue.registry import command_at_start
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.vocabulary import vocabulary_for
from bot.chat.i18n.language import _, tongue
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.formulas.kinds import IngredientKind
from bot.work.formulas import ingredients, other_names
from bot.work.log.chain import State

SETTLE = "settle"
SURE = "sure"
INSTEAD = "instead"
NOTHING = "nothing"  # none of what was offered: the line is not run
_NOT_INSTEAD = frozenset({"undo", "put back", "cancel"})
_SLASH = re.compile(r"^/([^\W\d]+)(?:@[A-Za-z0-9_]+)?")
_NEW = re.compile(r"(fruit|ingredient) (.+)")
_CALLED = re.compile(r"(.+?) = (.+)")
_SPIRIT = re.compile(r"spirit (\d{1,9}(?:/\d{1,9})?) (.+)", re.ASCII)
_STRENGTH = re.compile(r"strength (\d{1,9}) (\d{1,9}(?:/\d{1,9})?)", re.ASCII)


def settle_line(what: str, line: str) -> str:
    """Return the line that settles something and then says `line`."""
    return f"{SETTLE} {what}\n{line}"


def said_after(line: str) -> str:
    """Return what a line says after all that it settles, without a slash before it."""
    while line.startswith(f"{SETTLE} "):
        line = line.partition("\n")[2]
    return _SLASH.sub(lambda found: found[1].replace("_", " "), line.strip())


def in_place(answer: Reply, entries: Sequence[State]) -> Reply:
    """Return an answer whose buttons log their lines in the place of entries.

    Without the buttons that would ask for a new line.
    """
    numbers = ",".join(str(one.last.id) for one in entries)

    def instead(button: Button) -> Button | None:
        found = command_at_start(said_after(button.line))
        if found is None or not found[0].writes or found[0].name in _NOT_INSTEAD:
            return button
        return Button(button.label, f"{INSTEAD} {numbers} {button.line}") if found[1].strip() else None

    rows = (tuple(filter(None, map(instead, row))) for row in answer.buttons)
    return replace(answer, buttons=tuple(filter(None, rows)))


def command_word(line: str) -> str:
    """Return the first word of what a line says: the command, to be asked step by step."""
    return said_after(line).split(None, 1)[0]


def settle(turn: Turn, line: str) -> str:
    """Keep all that a line settles; return what it says after that."""
    rest = line
    while rest.startswith(f"{SETTLE} "):
        first, _break, rest = rest.partition("\n")
        _settle_one(turn, first.removeprefix(f"{SETTLE} ").strip())
    bar = turn.presence.bar
    if rest is not line and bar is not None:
        turn.vocabulary = vocabulary_for(turn.unit, bar, tongue().language)
    return said_after(rest)


def _settle_one(turn: Turn, what: str) -> None:
    if what == SURE:
        turn.sure = True
    elif (strength := _STRENGTH.fullmatch(what)) is not None:
        turn.changed_strengths[int(strength[1])] = Fraction(strength[2])
    elif (spirit := _SPIRIT.fullmatch(what)) is not None:
        other_names.add_new(turn.context, spirit[2], IngredientKind.SPIRIT, Fraction(spirit[1]))
    elif (new := _NEW.fullmatch(what)) is not None:
        kind = IngredientKind.FRUIT if new[1] == "fruit" else None
        other_names.add_new(turn.context, new[2], kind)
    elif (called := _CALLED.fullmatch(what)) is not None:
        known = ingredients.by_name(turn.context, called[1])
        if known is None:
            raise Say(
                reply(_("I know no {what} called “{name}”.").format(what=_("ingredient"), name=called[1]))
            )
        other_names.call(turn.context, known.id, called[2])
    else:
        raise Say(reply(_("That button is old.")))
