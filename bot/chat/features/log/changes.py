"""Finish a correction, and say what it changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.fruit.waste import line_words, piece_words
from bot.chat.features.fruit.week import reason_words
from bot.chat.features.log.entries import thing_words
from bot.chat.i18n.language import _, show_day, show_number
from bot.chat.reply.message import Reply, Text, reply
from bot.trade.formulas.measures import Dimension
from bot.work.fruit.waste import WasteView
from bot.work.log import history
from bot.work.log.chain import State
from bot.work.log.edits import Edit


def finish(turn: Turn, edit: Edit, replies: list[Reply]) -> list[Reply]:
    """Say what the edit changed. Raises Say if the new words log nothing."""
    corrected = edit.finish()
    if not corrected and not edit.keeps:
        raise Say(reply(_("I couldn't read the edit.")))
    is_waste = all(one.before is None or one.before.what == one.after.what == "waste" for one in corrected)
    said = [
        Text(corrected_words(turn, one.before, one.after), strong=True)
        for one in corrected
        if one.before is not None
    ]
    if not said or not replies:
        return [Reply(tuple(said))] if said else replies
    first, *rest = replies
    blocks = first.blocks
    if isinstance(blocks[0], Text):
        # What waste was logged is said by the correction; of the other answers the first line stays.
        blocks = blocks[1:] if is_waste else (replace(blocks[0], strong=False), *blocks[1:])
    edits = first.edits or turn.message.tapped is not None
    return [replace(first, blocks=(*said, *blocks), edits=edits), *rest]


def corrected_words(turn: Turn, before: State, after: State) -> str:
    """Say what an edit changed: 'Corrected: 2 lemons instead of 3, still dried out'."""
    old = thing_words(turn, before)
    if not after.stands:
        return _("Undone: {thing}").format(thing=old)
    if before.what == after.what == "waste":
        said = _waste_changes(
            history.said_by(turn.context, before).wasted,
            history.said_by(turn.context, after).wasted,
            turn.context.bar.units,
        )
        what = "; ".join(said) if said else thing_words(turn, after)
        day = _other_day(turn, before, after)
        if day:
            return _("Corrected: {what}, for {day}").format(what=what, day=day)
        return _("Corrected: {what}").format(what=what)
    new = thing_words(turn, after)
    if new == old:
        return _("Corrected: {what}").format(what=new)
    return _("Corrected: {new} instead of {old}").format(new=new, old=old)


def _other_day(turn: Turn, before: State, after: State) -> str:
    """Return the day to which an edit moved waste, '' where it stayed."""
    was, now = ({one.day for one in history.said_by(turn.context, state).wasted} for state in (before, after))
    return show_day(min(now)) if now and now != was else ""


def _waste_changes(before: Sequence[WasteView], after: Sequence[WasteView], units: str) -> list[str]:
    rest, said = list(before), []
    for one in after:
        if not rest:
            said.append(_("{what} added").format(what=line_words(one, units)))
            continue
        old = next((old for old in rest if old.ingredient.id == one.ingredient.id), rest[0])
        rest.remove(old)
        words = _line_change(old, one, units)
        if words:
            said.append(words)
    return said + [_("{what} taken out").format(what=line_words(old, units)) for old in rest]


def _line_change(old: WasteView, new: WasteView, units: str) -> str:
    pieces, reason = piece_words(new, units), ""
    if new.reason == old.reason and new.reason:
        reason = ", " + _("still {reason}").format(reason=reason_words(new.reason))
    elif old.reason:
        reason = ", " + _("{new} instead of {old}").format(
            new=reason_words(new.reason), old=reason_words(old.reason)
        )
    elif new.reason:
        reason = f", {reason_words(new.reason)}"
    same_fruit = new.ingredient.id == old.ingredient.id
    if same_fruit and (new.amount, new.dimension) == (old.amount, old.dimension):
        return "" if new.reason == old.reason else pieces + reason
    was = piece_words(old, units)
    if same_fruit and old.dimension is new.dimension is Dimension.COUNT:
        was = show_number(old.amount, 2)
    return _("{new} instead of {old}").format(new=pieces, old=was) + reason
