"""The command for fruit used, wasted and lost between counts."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.slots import Given, Slot, columns
from bot.chat.dialogue.turn import Turn
from bot.chat.features.fruit.balance_words import named_amount, used_blocks, used_row
from bot.chat.grammar.syntax import Named
from bot.chat.i18n.language import _
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.words import N_
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import balance


def _accept_known(turn: Turn, given: Given, value: Named) -> IngredientView:
    """Turn a name into an item of the bar's book; a question about a fruit does not add it."""
    noun = turn.noun(value, "INGREDIENT", _("ingredient"))
    return ingredients.get(turn.context, int(noun.id))


@dataclass(frozen=True, kw_only=True)
class FruitArguments(Arguments):
    """A fruit, or None for all counted fruit."""

    item: IngredientView | None = None


def _fruit(turn: Turn, arguments: FruitArguments) -> Reply:
    if arguments.item is not None:
        item = arguments.item
        used = balance.used(turn.context, item.id)
        if used is None:
            return reply(
                _("{name} was not counted twice yet.").format(name=item.name),
                _("Count it at close: count {name} 24").format(name=counted_name(item.name, Fraction(2))),
                buttons=((Button(_("Count"), f"count #{item.id}"),),),
            )
        first = _("{name}: {amount} used").format(
            name=item.name, amount=named_amount(Fraction(used.use.used), used.dimension, item, turn)
        )
        return Reply(
            (Text(first, strong=True), *used_blocks(turn, used)),
            ((Button(_("Count"), f"count #{item.id}"), Button(_("Bought"), f"bought #{item.id}")),),
        )
    numbers = balance.counted_fruit(turn.context)
    found = [used for number in numbers if (used := balance.used(turn.context, number)) is not None]
    found = [used for used in found if used.ingredient.kind is IngredientKind.FRUIT][:8]
    if not found:
        return reply(
            _("No fruit was counted twice yet."),
            example_of(
                turn, _("Log what comes in and count at close: bought 80 oranges 34.00, count oranges 24")
            ),
            buttons=((Button(_("Bought"), "bought"), Button(_("Count"), "count")),),
        )
    rows = [(_("fruit"), _("used"), _("wasted"), _("lost"))]
    rows += [used_row(turn, used) for used in found]
    buttons = columns([(used.ingredient.name, f"fruit #{used.ingredient.id}") for used in found], 3)
    return Reply(
        (
            Text(_("Between the last two counts of each"), strong=True),
            Grid(tuple(rows)),
            Text(_("“Lost” is used and not explained by what was logged; “?” where nothing was.")),
        ),
        tuple(tuple(Button(*one) for one in row) for row in buttons),
    )


COMMANDS = (
    Command(
        "fruit",
        N_("fruit used, wasted and lost between counts"),
        _fruit,
        words=("fruit use", "used fruit"),
        examples=(N_("fruit orange"),),
        slots=(Slot("item", _accept_known),),
        menu=39,
        wishes=(Wish("fruit", ("{fruit?}",)),),
    ),
)
