"""Word the use between two counts, with its calculation and the unexplained rest."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _, show_day, show_number
from bot.chat.i18n.plurals import pieces
from bot.chat.reply.message import Block, Grid, Text
from bot.chat.reply.units import show_amount
from bot.trade.formulas.measures import Dimension
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit.balance import Used


def plain_amount(amount: Fraction, dimension: Dimension, turn: Turn) -> str:
    """Write an amount without the item's name."""
    if dimension is Dimension.COUNT:
        return show_number(amount, 1)
    return show_amount(amount, dimension, turn.context.bar.units)


def named_amount(amount: Fraction, dimension: Dimension, item: IngredientView, turn: Turn) -> str:
    """Write an amount with the item's name: '12 oranges', '1.2 kg sugar'."""
    if dimension is Dimension.COUNT:
        return pieces(item.name, amount, 1)
    return f"{plain_amount(amount, dimension, turn)} {item.name}"


def used_blocks(turn: Turn, used: Used) -> list[Block]:
    """Word the use between two counts, with its calculation and the unexplained rest."""

    def shown(amount: Decimal | Fraction) -> str:
        return plain_amount(Fraction(amount), used.dimension, turn)

    rows = [
        (_("before, {day}").format(day=show_day(used.before.day)), shown(used.before.amount)),
        (_("+ bought"), shown(used.bought)),
        (_("- wasted"), shown(used.wasted)),
        (_("- on hand"), shown(used.now.amount)),
        (_("= used"), shown(used.use.used)),
    ]
    lines: list[Block] = [Grid(tuple(rows))]
    if used.use.surplus:
        lines.append(
            Text(
                _("{amount} more than there can be: a delivery or a count is missing.").format(
                    amount=shown(used.use.surplus)
                )
            )
        )
    if used.use.unexplained is None:
        lines.append(Text(_("Nothing says where it went: log peeled and juiced fruit to see losses.")))
    elif used.use.accounted is not None:
        if used.use.unexplained:
            lines.append(
                Text(
                    _("The log explains {known} of it; unexplained loss: {unknown}.").format(
                        known=shown(used.use.accounted), unknown=shown(used.use.unexplained)
                    )
                )
            )
        elif not used.use.surplus:
            lines.append(Text(_("The log explains all of it.")))
    if used.left_out:
        lines.append(Text(_("Some of it was logged in another measure and is not in here.")))
    return lines


def used_row(turn: Turn, used: Used) -> tuple[str, str, str, str]:
    """Write one line of several: the name, use, waste, and loss ('?' if unknown)."""
    units = turn.context.bar.units

    def shown(amount: Decimal | Fraction) -> str:
        if used.dimension is Dimension.COUNT:
            return show_number(Fraction(amount), 0)
        return show_amount(Fraction(amount), used.dimension, units)

    lost = "?" if used.use.unexplained is None else shown(used.use.unexplained)
    return used.ingredient.name, shown(used.use.used), shown(used.wasted), lost
