"""The command grade: which ingredients are food grade."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain
from bot.chat.dialogue.turn import Turn
from bot.chat.features.safety.grade_words import grade_buttons
from bot.chat.grammar.syntax import Named
from bot.chat.i18n.language import _, ngettext
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.safety.grade import LIST_SOURCE, oil_standing
from bot.trade.words import N_
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.safety import grade as grades


def _accept_item(turn: Turn, given: Given, value: Named) -> IngredientView:
    noun = turn.noun(value, "INGREDIENT", _("ingredient"))
    return ingredients.get(turn.context, int(noun.id))


def _wants_grade(turn: Turn, given: Given) -> bool:
    item = given.get(_ITEM)
    if not turn.context.role.manages:
        return False
    return item is not None and grades.question_about(item) is not None


def _ask_grade(turn: Turn, given: Given) -> Question:
    item = given[_ITEM]
    question = grades.question_about(item)
    text = _("Is {name} sold as food grade?").format(name=item.name)
    if question is not None:
        text = f"{item.name}: {_(question.text)}"
    choices = ((_("Yes, it is food grade"), "yes"), (_("Not sure"), "no"))
    return Question(text, columns(list(choices), 1), hint=_("yes or no"))


@dataclass(frozen=True, kw_only=True)
class GradeArguments(Arguments):
    """An ingredient and whether it is food grade, 'yes' or 'no'; nothing for the open questions."""

    item: IngredientView | None = None
    grade: str = ""


def _grade(turn: Turn, arguments: GradeArguments) -> Reply:
    item = arguments.item
    if item is None:
        return _open_ones(turn)
    if not arguments.grade:
        return _standing(turn, item)
    confirmed = arguments.grade == "yes"
    grades.confirm(turn.context, item.id, confirmed)
    undo: tuple[Button, ...] = (Button(_("Undo"), "undo"),)
    if not confirmed:
        return reply(
            _("{name} is marked: food grade not confirmed.").format(name=item.name),
            _("Every batch and label with it carries the mark until somebody confirms it."),
            buttons=((Button(_("It is food grade"), f"grade #{item.id} yes"), *undo),),
            edits=turn.message.tapped is not None,
        )
    still = grades.question_about(ingredients.get(turn.context, item.id))
    if still is not None:
        return reply(f"{item.name}: {_(still.text)}", buttons=(undo,))
    rest = grades.open_in_bar(turn.context)
    if oil_standing(item.name) is not None:
        undo = (*undo, Button(_("Sources"), f"grade #{item.id}"))
    return reply(
        _("{name}: food grade confirmed.").format(name=item.name),
        _("By {who}. The mark is gone from its batches.").format(who=turn.context.name),
        buttons=(*grade_buttons(turn.context, rest[:1]), undo),
        edits=turn.message.tapped is not None,
    )


def _standing(turn: Turn, item: IngredientView) -> Reply:
    question = grades.question_about(item)
    if question is not None:
        return reply(f"{item.name}: {_(question.text)}", _("A manager has to answer that."))
    manages = turn.context.role.manages and item.food_grade is not None
    listed = _("{source} ({how})").format(source=_(LIST_SOURCE.title), how=_(LIST_SOURCE.how_known))
    return reply(
        _("{name}: nothing to ask about its food grade.").format(name=item.name),
        *(() if oil_standing(item.name) is None else (listed,)),
        buttons=((Button(_("It is not sure"), f"grade #{item.id} no"),),) if manages else (),
    )


def _open_ones(turn: Turn) -> Reply:
    found = grades.open_in_bar(turn.context)
    if not found:
        return reply(_("Nothing here waits for a word on food grade."))
    first = ngettext(
        "{count} ingredient waits for a word on food grade",
        "{count} ingredients wait for a word on food grade",
        len(found),
    ).format(count=len(found))
    lines = [f"{one.ingredient.name}: {_(one.question.text)}" for one in found[:4]]
    return reply(first, *lines, buttons=grade_buttons(turn.context, found))


_ITEM = Slot("item", _accept_item)

COMMANDS = (
    Command(
        "grade",
        N_("which oils and glycols are food grade"),
        _grade,
        words=("food grade", "food grades", "grades"),
        examples=(N_("grade grapefruit oil yes"),),
        slots=(
            _ITEM,
            Slot("grade", plain(str), _ask_grade, _wants_grade),
        ),
        writes=True,
        manages_words=True,
        wishes=(Wish("grade", ("{item?}",), shows=True),),
    ),
)

LOG_WORDS = (LogWords("food grade", N_("food grade of {name}"), N_("food grade of {name}")),)
