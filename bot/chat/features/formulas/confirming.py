"""Ask before a formula adds ingredients or changes a known strength."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction

from bot.chat.dialogue.inputs.names import spelt_alike
from bot.chat.dialogue.inputs.naming import cancel_button, nearest
from bot.chat.dialogue.inputs.settling import SURE, settle_line
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Detail, Unknown
from bot.chat.i18n.language import _, show_number
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import Button, reply
from bot.trade.formulas.kinds import IngredientKind, guess_kind, is_fruit_name
from bot.trade.liquids.strength import is_same_label
from bot.work.formulas import ingredients
from bot.work.formulas.formulas import Draft, DraftLine

_MOST_NEAR = 3


def confirm_new(turn: Turn, lines: Iterable[DraftLine | Detail]) -> None:
    """Ask once about new ingredients of no known kind or spelt like another. Raises Say."""
    if turn.sure:
        return
    named = [_new_name(turn, line) for line in lines]
    alike = {name: _spelt_like(turn, name) for name in named if name}
    new = [name for name, near in alike.items() if near is not None or guess_kind(name) is None]
    if not new:
        return
    rows = [(Button(_("Yes, new"), settle_line(SURE, turn.line)),)]
    for name in new:
        near = alike[name]
        if near is not None and len(rows) <= _MOST_NEAR:
            label = _("{name} is {known}").format(name=name, known=near)
            rows.append((Button(label, settle_line(f"{near} = {name}", turn.line)),))
    rows.append((cancel_button(),))
    raise Say(reply(_("New here: {names}. Right?").format(names=", ".join(new)), buttons=tuple(rows)))


def _spelt_like(turn: Turn, name: str) -> str | None:
    return next((one for one in turn.near(name, "INGREDIENT") if spelt_alike(one, name)), None)


def _new_name(turn: Turn, line: DraftLine | Detail) -> str:
    """Return the name that a line would make an ingredient of, '' where it makes none."""
    if isinstance(line, DraftLine):
        name = line.ingredient if isinstance(line.ingredient, str) else ""
        return "" if guess_kind(name) is IngredientKind.WATER else name
    named = line.value
    if line.what != "replaces" or not isinstance(named, Unknown):
        return ""
    if turn.vocabulary.named(named.text, "INGREDIENT") is not None:
        return ""
    ordinary = is_fruit_name(singular(named.text)) and not nearest(turn, named.text, fruit=True)
    return "" if ordinary else named.text


def confirm_strengths(turn: Turn, said: str, draft: Draft) -> None:
    """Ask whether another strength means another spirit or a change of the known one. Raises Say."""
    for line in draft.lines:
        percent = line.strength_percent
        if isinstance(line.ingredient, str) or percent is None:
            continue
        known = ingredients.get(turn.context, line.ingredient)
        before = known.strength_percent
        if before is None or is_same_label(before, percent):
            continue
        if turn.changed_strengths.get(known.id) == percent:
            continue
        other = f"{known.name} {show_number(percent)} %"
        first = _("Your {name} is {before} %. Another spirit, or has it changed?")
        another = _("Another spirit: {name}").format(name=other)
        now = _("It is {percent} % now").format(percent=show_number(percent))
        rows = (
            (Button(another, _as_another(said, known.name, other, percent)),),
            (Button(now, settle_line(f"strength {known.id} {percent}", said)),),
            (cancel_button(),),
        )
        raise Say(reply(first.format(name=known.name, before=show_number(before)), buttons=rows))


def _as_another(said: str, name: str, other: str, percent: Fraction) -> str:
    """Return the line with the spirit and its strength as the name of another spirit, which is settled."""
    strength = r"\d[\d.,/ ]*?\s*(?:%|percent|pct|por ?ciento)?\s*(?:vol|abv|proof)?\b\.?"
    end = r"(?=\s+\d|\s*[\n,;]|\s*$)"
    written = re.compile(rf"{re.escape(name)}s?\s*{strength}{end}", re.IGNORECASE)
    return settle_line(f"spirit {percent} {other}", written.sub(other, said, count=1))
