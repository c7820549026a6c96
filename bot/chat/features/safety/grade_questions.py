"""Check food grade while a formula is written: stop at unlisted oils, ask about the rest."""

from __future__ import annotations

from collections.abc import Iterable

from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Detail, Hash, Unknown
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Text, reply
from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.safety.grade import GradeReason
from bot.work.formulas import ingredients
from bot.work.formulas.formulas import DraftLine, FormulaView
from bot.work.safety import grade as grades

# The words in a formula's lines that confirm the food papers of an ingredient.
GRADED_WORD = "food-grade"


def stop_at_unlisted(turn: Turn, lines: Iterable[DraftLine | Detail]) -> None:
    """Stop at an oil on no list, until a person confirms that it is sold for food."""
    known = list(lines)
    said = {plain_name(_name(turn, one)) for one in known if isinstance(one, Detail) and one.what == "graded"}
    for line in known:
        if not isinstance(line, DraftLine):
            continue
        item = line.ingredient
        ingredient = item if isinstance(item, str) else ingredients.get(turn.context, item)
        question = grades.question_about(ingredient)
        if question is None or not question.stop:
            continue
        name = ingredient if isinstance(ingredient, str) else ingredient.name
        first = f"{name}: {_(question.text)}"
        if question.reason is GradeReason.NOT_FOR_DRINKS:
            raise Say(reply(first, _("If its papers do say food, write it by the name that they use.")))
        if plain_name(name) in said:
            continue
        papers = _("It is sold for food, I saw the papers")
        if question.reason is GradeReason.HOLDS_POISON:
            papers = _("Its papers say FFPA, I saw them")
        go_on = Button(papers, f"{turn.line}\n{GRADED_WORD} {name}")
        raise Say(reply(first, _("Or write the formula without it."), buttons=((go_on,),)))


def _name(turn: Turn, one: Detail) -> str:
    value = one.value
    if isinstance(value, Noun):
        return value.name
    if isinstance(value, Unknown):
        return value.text
    return ingredients.get(turn.context, value.id).name if isinstance(value, Hash) else ""


def confirm_graded(turn: Turn, lines: Iterable[DraftLine | Detail]) -> None:
    """Record the person who confirmed that an ingredient of these lines is sold for food."""
    for line in lines:
        if isinstance(line, Detail) and line.what == "graded":
            ingredient = ingredients.add(turn.context, _name(turn, line))
            grades.confirm(turn.context, ingredient.id, confirmed=True)


def grade_notes(view: FormulaView) -> list[Text]:
    """Return the questions about the food grade of a formula's ingredients; the buttons answer them."""
    texts = dict.fromkeys(_(one.question.text) for one in grades.open_in_formula(view))
    return [Text(text) for text in list(texts)[:2]]
