"""Turn the typed lines of a formula into a draft of it."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.dialogue.inputs.shared_slots import is_liquid
from bot.chat.dialogue.inputs.strength import percent_of
from bot.chat.dialogue.slots import Given
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.formulas.confirming import confirm_new
from bot.chat.features.formulas.recipe_words import usual_unit, without_joining_word
from bot.chat.features.safety.grade_questions import stop_at_unlisted
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Detail, Duration, IngredientLine, Named, Span, Unknown
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, show_number, tongue
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import reply
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES, Preparation, guess_kind
from bot.trade.formulas.unit_words import AmbiguousUnit
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.formulas import Draft, DraftLine

FormulaLines = tuple[DraftLine | Detail, ...]


def accept_lines(turn: Turn, given: Given, value: object) -> FormulaLines:
    """Turn typed lines into lines of a draft. Raises Say for what must be asked first."""
    parts = value if isinstance(value, tuple) else (value,)
    lines: list[DraftLine | Detail] = []
    usual = usual_unit(turn, parts)
    for part in parts:
        if isinstance(part, IngredientLine):
            lines.append(draft_line(turn, part, usual))
        elif isinstance(part, Detail):
            lines.append(part)
    stop_at_unlisted(turn, lines)
    if not given.guided:  # with questions, each new line is shown with its mark
        confirm_new(turn, lines)
    return tuple(lines)


def draft_line(turn: Turn, line: IngredientLine, usual: str | AmbiguousUnit = "") -> DraftLine:
    """Turn a typed line into a draft's line, with its unit resolved and its ingredient known or new.

    A liquid without a unit is in the usual one. Raises Say for anything else without a unit.
    """
    if isinstance(line.item, Unknown):
        written = line.item.text if line.strength is None else without_joining_word(line.item.text)
        known = turn.vocabulary.named(written, "INGREDIENT")
        if known is None and stands_for(written.split(" ")[0], "ARTICLE", tongue().language):
            raise Say(reply(_("Is “{name}” an ingredient? Say its name alone.").format(name=written)))
        name: int | str = int(known.id) if known is not None else written
        kind = guess_kind(written)
        liquid = None if kind is None else INGREDIENT_PROPERTIES[kind].is_liquid
    else:
        noun = turn.noun(line.item, "INGREDIENT", _("ingredient"))
        view = ingredients.get(turn.context, int(noun.id))
        name, liquid = view.id, is_liquid(view)
    strength = None if line.strength is None else percent_of(turn, line.strength)
    amount = line.amount
    if not amount.unit and not (usual and liquid):
        named = name if isinstance(name, str) else ingredients.get(turn.context, name).name
        text = _("{number} what of {name}? Add a unit, such as {number} ml or {number} g.")
        raise Say(reply(text.format(number=show_number(amount.number), name=named)))
    amount = amount if amount.unit else replace(amount, unit=usual)
    return DraftLine(name, turn.quantity(amount, liquid), strength)


def apply_details(turn: Turn, draft: Draft, lines: FormulaLines) -> Draft:
    """Apply typed lines to a draft: ingredients and the other properties of a formula."""
    for line in lines:
        if isinstance(line, DraftLine):
            draft = formulas.with_line(draft, line)
        elif line.what == "remove":
            noun = turn.noun(line.value, "INGREDIENT", _("ingredient"))  # type: ignore[arg-type]
            draft = formulas.without_line(draft, int(noun.id))
        elif line.what == "kind" and isinstance(line.value, Noun):
            draft = replace(draft, preparation=Preparation(line.value.id))
        elif isinstance(line.value, Duration) and line.what == "rest":
            draft = replace(draft, rest_hours=line.value.hours)
        elif isinstance(line.value, Duration):
            draft = replace(draft, discard_days=max(1, round(line.value.hours / 24)))
        elif isinstance(line.value, Span):
            draft = replace(draft, sprays=(line.value.low, line.value.high))
        elif line.what == "replaces":
            draft = replace(draft, garnish=garnish_of(turn, line.value))
    return draft


def garnish_of(turn: Turn, named: Named) -> int | str:
    """Return the fruit that a formula stands in for: its number, or the name of a new one."""
    if isinstance(named, Unknown):
        known = turn.vocabulary.named(named.text, "INGREDIENT")
        return int(known.id) if known is not None else singular(named.text)
    return int(turn.noun(named, "INGREDIENT", _("fruit")).id)
