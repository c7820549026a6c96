"""The command price: the price of a pack, and its history."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.inputs.fruit import new_fruit
from bot.chat.dialogue.inputs.money import as_money
from bot.chat.dialogue.inputs.names import known_ingredient, words_of
from bot.chat.dialogue.inputs.naming import what_is
from bot.chat.dialogue.inputs.shared_slots import PICTURE_SLOT, is_liquid, undo_button
from bot.chat.dialogue.log_words import LogWords, Retold
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.charts import charts
from bot.chat.grammar.syntax import Named, PackPrice, Span
from bot.chat.i18n.language import _, decimal_mark, local, show_full_day, show_money, show_number, tongue
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.chat.reply.units import show_quantity, show_range, sizes_offered
from bot.trade.formulas.kinds import IngredientKind, guess_kind
from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.money.money import minor_digits
from bot.trade.words import N_
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import waste
from bot.work.log.chain import State
from bot.work.log.history import LogLine
from bot.work.money import prices
from bot.work.money.prices import PriceView

_MOST_SHOWN = 8


def _ask_item(turn: Turn, given: Given) -> Question:
    known = ingredients.all_of(turn.context)
    priced = prices.in_force(turn.context)
    order = sorted(known, key=lambda one: (one.id in priced, one.name))
    choices = [(one.name, f"#{one.id}") for one in order[:12]]
    return Question(
        example_of(turn, _("The price of what? Tap it, or type: lime oil 10 ml 7.90")),
        columns(choices, 2),
        hint=_("Ingredient"),
    )


def _accept_item(turn: Turn, given: Given, value: Named) -> IngredientView:
    known = known_ingredient(turn, value)
    if known is None:
        name = words_of(value)
        if guess_kind(singular(name)) is IngredientKind.FRUIT:
            return new_fruit(turn, name)
        raise what_is(turn, name, fruit=False)
    return known


def _ask_pack_price(turn: Turn, given: Given) -> Question:
    item = given[_ITEM]
    name = item.name
    if item.kind is IngredientKind.FRUIT:
        return Question(_("What does {name} cost? Such as: 0.60 each").format(name=name), hint=_("0.60 each"))
    return Question(
        _("What does a pack of {name} hold and cost? Such as: 10 ml 7.90").format(name=name),
        hint="10 ml 7.90",
    )


def _accept_pack_price(turn: Turn, given: Given, value: PackPrice) -> tuple[Quantity, Decimal]:
    item = given[_ITEM]
    money = as_money(value.price, turn.context.bar.currency)
    pack = value.pack
    if pack is None:
        before = prices.in_force(turn.context, [item.id]).get(item.id)
        if before is not None:
            return before.pack, money
        if item.kind is IngredientKind.FRUIT:
            return Quantity(Fraction(1), "each"), money
        said = given.words.get("pack_price") or turn.line
        sizes = sizes_offered(_usual_packs(turn, item), turn.context.bar.units)
        packs = [(label, turn.line_with(said, f"{size} {said}")) for label, size in sizes]
        raise Say(
            reply(
                _("How much is in the pack for {price}? Tap it, or write it before the price.").format(
                    price=show_money(money)
                ),
                buttons=tuple(tuple(Button(*one) for one in row) for row in columns(packs, 3)),
            )
        )
    return turn.quantity(pack, is_liquid(item)), money


def _usual_packs(turn: Turn, item: IngredientView) -> tuple[str, ...]:
    liquid = is_liquid(item)
    volumes: tuple[str, ...]
    if turn.context.bar.units == "us":
        volumes, masses = (
            ("1 oz", "4 oz", "16 oz", "750 ml", "1 l"),
            ("1 lb", "5 lb", "1 kg"),
        )
    else:
        volumes, masses = ("10 ml", "50 ml", "100 ml", "500 ml", "700 ml", "1 l"), ("100 g", "500 g", "1 kg")
    if liquid is None:
        return (*volumes[-3:], *masses)
    return volumes if liquid else masses


def _wants_price(turn: Turn, given: Given) -> bool:
    if PICTURE_SLOT in given:
        return False
    item = given.get(_ITEM)
    if item is None:
        return True
    # 'price oranges' shows the price; its button asks for a new one.
    return given.guided or item.id not in prices.in_force(turn.context, [item.id])


def _wants_garnishes(turn: Turn, given: Given) -> bool:
    item = given.get(_ITEM)
    if item is None or not given.guided or item.kind is not IngredientKind.FRUIT:
        return False
    known = prices.in_force(turn.context, [item.id]).get(item.id)
    return known is None or known.garnishes is None


def _ask_garnishes(turn: Turn, given: Given) -> Question:
    choices = columns([(str(n), f"{n} garnishes each") for n in (4, 5, 6, 8, 10, 12)], 3)
    return Question(_("How many garnishes per fruit?"), choices, hint=_("5 garnishes each"))


def _accept_garnishes(turn: Turn, given: Given, value: Span) -> tuple[Fraction, Fraction]:
    if value.low <= 0:
        raise Say(reply(_("At least one garnish, please.")))
    return value.low, value.high


@dataclass(frozen=True, kw_only=True)
class PriceArguments(Arguments):
    """An ingredient; a pack with its price, and the garnishes from one piece."""

    item: IngredientView
    pack_price: tuple[Quantity, Decimal] | None = None
    garnish: tuple[Fraction, Fraction] | None = None
    picture: bool = False


def _price(turn: Turn, arguments: PriceArguments) -> Reply:
    item = arguments.item
    if arguments.picture:
        return _picture(turn, item)
    if arguments.pack_price is None:
        return _known(turn, item)
    pack, money = arguments.pack_price
    before = prices.in_force(turn.context, [item.id]).get(item.id)
    price = prices.set_price(turn.context, item.id, pack, money, arguments.garnish)
    lines = []
    if before is not None and before.dimension is price.dimension:
        lines.append(change_words(before, price))
    if price.garnishes is not None and price.dimension is Dimension.COUNT:
        lines.append(garnish_line(price))
    earlier = waste.without_price(turn.context, item.id) if before is None else 0
    if earlier:
        text = _("It counts from now on: the {count} thrown out before stay without a price.")
        lines.append(text.format(count=show_number(earlier, 1)))
    return reply(
        f"{item.name}: {pack_words(price)}",
        *lines,
        buttons=((undo_button(turn), Button(_("Another price"), "price")),),
    )


def garnish_line(price: PriceView) -> str:
    """Write the garnishes from a piece of fruit and the cost of one."""
    assert price.garnishes is not None  # noqa: S101 - checked by the caller
    low, high = price.garnishes
    return _("{count} garnishes each: {cost} a garnish before waste").format(
        count=show_range(low, high),
        cost=show_money(price.per_base / low, extra_places=1),
    )


def change_words(before: PriceView, now: PriceView) -> str:
    """Write the price change in percent, by the cost of one mL, g or piece."""
    if not before.per_base:
        return _("Before: {price}").format(price=show_money(before.price))
    percent = (now.per_base / before.per_base - 1) * 100
    if percent == 0:
        return _("The same as before.")
    share = show_number(abs(percent), 1)
    if percent > 0:
        return _("{percent} % more than before.").format(percent=share)
    return _("{percent} % less than before.").format(percent=share)


def pack_words(price: PriceView) -> str:
    """Write a price with its pack: '€7.90 for 10 ml', '€0.60 each'."""
    money = show_money(price.price, tongue().currency)
    if price.dimension is Dimension.COUNT and price.pack_amount == 1:
        return _("{money} each").format(money=money)
    pack = show_quantity(price.pack)
    if price.pack.unit == "each":
        pack = _("{count} pieces").format(count=pack)
    return _("{money} for {pack}").format(money=money, pack=pack)


def _as_typed(price: PriceView) -> str:
    """Write a price as typed: '1 kg 3.20', '0.60 each'."""
    money = _money(price)
    if price.pack == Quantity(Fraction(1), "each"):
        return _("{price} each").format(price=money)
    pack = show_quantity(price.pack)
    if price.pack.unit == "each":
        pack = _("{count} pieces").format(count=pack)
    return f"{pack} {money}"


def _money(price: PriceView) -> str:
    return f"{price.price:.{minor_digits(tongue().currency)}f}".replace(".", decimal_mark())


def _known(turn: Turn, item: IngredientView) -> Reply:
    known = prices.history(turn.context, item.id)
    if not known:
        return reply(
            _("{name} has no price yet.").format(name=item.name),
            buttons=((Button(_("Set a price"), f"price #{item.id}"),),),
        )
    latest = known[-1]
    # No grid: the two columns together are wider than a phone.
    rows = [
        _("{day}: {price}").format(day=show_full_day(local(one.at).date()), price=pack_words(one))
        for one in reversed(known[-_MOST_SHOWN:])
    ]
    return reply(
        f"{item.name}: {pack_words(latest)}",
        "\n".join(rows),
        *([garnish_line(latest)] if latest.garnishes else []),
        _("A new price: price {name} {pack}").format(name=item.name, pack=_as_typed(latest)),
        buttons=((Button(_("Picture"), f"price #{item.id} picture"),),)
        if len(_comparable(known)) > 1
        else (),
    )


def _comparable(known: list[PriceView]) -> list[PriceView]:
    """Return the prices in the unit of the latest one."""
    return [one for one in known if one.dimension is known[-1].dimension]


_PER = {
    Dimension.COUNT: (Fraction(1), N_("each")),
    Dimension.MASS: (Fraction(1000), N_("a kilogram")),
    Dimension.VOLUME: (Fraction(1000), N_("a litre")),
}


def _picture(turn: Turn, item: IngredientView) -> Reply:
    known = _comparable(prices.history(turn.context, item.id))
    if len(known) < 2:
        return reply(_("I need two prices for a picture."))
    times, unit = _PER[known[-1].dimension]
    bar = turn.context.bar
    points = [(bar.day_of(one.at), one.typed_per_base * times) for one in known]
    file = charts.price_picture(turn, item.name, _(unit), points)
    return Reply((Text(_("Price of {name}").format(name=item.name), strong=True),), files=(file,))


def _ask_picture(turn: Turn, given: Given) -> Question:
    return Question(_("The price of what?"))


def _price_values(line: LogLine, units: str) -> dict[str, str]:
    return {} if line.price is None else {"price": pack_words(line.price)}


def _retold(turn: Turn, found: State) -> Retold | None:
    price = prices.logged_in(turn.context, found.details)
    if price is None:
        return None
    pack = f"{price.pack.number} each" if price.pack.unit == "each" else show_quantity(price.pack)
    return Retold("price", ({"item": f"#{price.ingredient_id}", "pack": pack, "pack_price": _money(price)},))


_ITEM = Slot("item", _accept_item, _ask_item)


def _price_now(turn: Turn, after: State) -> list[str]:
    """Return the price in force after an undo."""
    number = after.details["ingredient"]
    price = prices.in_force(turn.context, [number]).get(number)
    return [_("It has no price now.") if price is None else _("Now: {value}").format(value=pack_words(price))]


COMMANDS = (
    Command(
        "price",
        N_("set or see what a pack costs"),
        _price,
        words=(
            *("prices", "price of", "price history", "price history of"),
            *("what is the price of", "what's the price of", "whats the price of", "price for"),
            *("set price of", "set price", "set the price of"),
        ),
        examples=(N_("price grapefruit oil 10 ml 7.90"), N_("price oranges 0.60 each, 5 garnishes each")),
        slots=(
            _ITEM,
            Slot("pack_price", _accept_pack_price, _ask_pack_price, _wants_price),
            Slot("garnish", _accept_garnishes, _ask_garnishes, _wants_garnishes),
            PICTURE_SLOT,
        ),
        writes=True,
        menu=50,
        wishes=(
            Wish("price", ("{item} {amount} {price}", "{item} {pieces} FOR {price}", "{item} {price}")),
            Wish("price", ("{item}", ""), shows=True),
        ),
    ),
)

LOG_WORDS = (
    LogWords(
        "price",
        N_("price of {name}, {price}"),
        N_("price of {name}, {price}"),
        values=_price_values,
        now=_price_now,
        retold=_retold,
    ),
)
