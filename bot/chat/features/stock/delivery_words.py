"""Word what a delivery brought and cost."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from bot.chat.i18n.language import ngettext, show_number
from bot.chat.i18n.plurals import counted_name, pieces
from bot.chat.reply.units import show_quantity
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Quantity
from bot.work.formulas.ingredients import IngredientView


def typed(content: Quantity) -> str:
    """Return a pack's content as a line types it."""
    return str(content.number) if content.unit == "each" else show_quantity(content)


def paid_words(paid: Decimal) -> str:
    """Return an amount of money as a line types it."""
    return show_number(Fraction(paid), 4)


def per_pack(in_all: bool, packs: Fraction, paid: Decimal | None) -> Decimal | None:
    """Return the cost of one pack: as typed for each, or a share of the total."""
    if paid is None:
        return None
    if in_all:
        return paid * packs.denominator / packs.numerator
    return paid


def delivery_line(item: IngredientView, packs: Fraction, content: Quantity, amount: Fraction) -> str:
    """Write a delivered item: '160 oranges (2 packs of 80)'."""
    if content.unit == "each":
        text = pieces(item.name, amount)
        inside = show_number(content.number)
    else:
        inside = show_quantity(content)
        name = counted_name(item.name, Fraction(2)) if item.kind is IngredientKind.FRUIT else item.name
        text = f"{show_quantity(Quantity(content.number * packs, content.unit))} {name}"
    if packs == 1 or content == Quantity(Fraction(1), "each"):
        return text
    count = ngettext("{count} pack of {size}", "{count} packs of {size}", int(packs)).format(
        count=show_number(packs), size=inside
    )
    return f"{text} ({count})"
