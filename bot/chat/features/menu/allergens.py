"""The command allergens: what the names in a formula, or in a drink of the list, point to."""

from __future__ import annotations

from dataclasses import dataclass, replace

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import FORMULA_SLOT
from bot.chat.dialogue.slots import Given, Slot
from bot.chat.dialogue.turn import Turn
from bot.chat.features.menu.menu_words import spec_reply
from bot.chat.features.safety.grade_words import allergen_line
from bot.chat.grammar.lexer import Noun
from bot.chat.i18n.language import _
from bot.chat.reply.message import Reply, reply
from bot.trade.safety.allergens import AllergenLine, Standing
from bot.trade.words import N_
from bot.work.formulas.formulas import FormulaView
from bot.work.menu import menu
from bot.work.menu.menu import MenuDrinkView
from bot.work.menu.spec import spec
from bot.work.safety import allergens as allergies


@dataclass(frozen=True, kw_only=True)
class AllergensArguments(Arguments):
    """A formula, or a drink of the list."""

    formula: FormulaView | None = None
    listed_drink: MenuDrinkView | None = None


def _accept_listed(turn: Turn, given: Given, value: Noun) -> MenuDrinkView:
    return menu.served(turn.context, int(value.id))


_LISTED = Slot("listed_drink", _accept_listed)
_FORMULA = replace(FORMULA_SLOT, wanted=lambda turn, given: _LISTED not in given)


def _allergens(turn: Turn, arguments: AllergensArguments) -> Reply:
    if arguments.listed_drink is not None:
        return spec_reply(turn, spec(turn.context, arguments.listed_drink))
    assert arguments.formula is not None  # noqa: S101 - it was asked for
    return _of_formula(turn, arguments.formula)


def _of_formula(turn: Turn, view: FormulaView) -> Reply:
    lines = allergies.lines_of(turn.context, view)
    if not lines:
        return reply(
            _("{name}: no word in it points to an allergen.").format(name=view.name),
            _("Only names were looked at: read the packaging of everything in it."),
        )
    named = allergies.named_in(turn.context, view)
    sources = dict.fromkeys(
        _("{source} ({how})").format(source=_(one.source.title), how=_(one.source.how_known))
        for one in lines
        if one.standing is not Standing.WORTH_SAYING
    )
    return reply(
        f"{view.name}: {allergen_line(named)}",
        *(_line(one) for one in lines),
        _("Only names were looked at: read the packaging of everything in it."),
        *sources,
    )


def _line(one: AllergenLine) -> str:
    what = _(one.allergen) if one.certain else _("perhaps {allergen}").format(allergen=_(one.allergen))
    text = _("{ingredient}: {allergen}").format(ingredient=one.ingredient, allergen=what)
    return f"{text}. {_(one.note)}" if one.note else text


COMMANDS = (
    Command(
        "allergens",
        N_("allergens that the names point to"),
        _allergens,
        words=("allergen", "allergies", "allergens in", "allergies in"),
        examples=(N_("allergens grapefruit mist"),),
        slots=(_LISTED, _FORMULA),
        quick=True,
        wishes=(Wish("allergens", ("{drink}", "{formula?}")),),
    ),
)
