"""Before deciding: what a switch to spray may cost and save in cash, apart in minutes, and how to test it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import fruit_choices
from bot.chat.dialogue.inputs.fruit import accept_fruit
from bot.chat.dialogue.slots import DIGIT, Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.savings.fresh_versus_spray import small_money
from bot.chat.features.savings.savings_words import minutes_saved
from bot.chat.i18n.language import _, show_estimates, show_money, show_number
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.trade.days import EVERY_DAY
from bot.trade.numbers.uncertainty import Estimate
from bot.trade.savings.deciding import INPUT_NAMES, SCATTER, SPRAY_SHARE, Plan, nights_to_show, plan
from bot.trade.words import N_
from bot.work.formulas.ingredients import IngredientView
from bot.work.money import prices
from bot.work.savings import before_after
from bot.work.savings.deciding import OwnSpray, own_spray
from bot.work.savings.fresh_versus_spray import estimate_of, per_fruit

_DROPS = (Fraction(3, 10), Fraction(1, 2), Fraction(7, 10))
# Minutes: cutting a garnish, and making the week's batch. Common practice, no source.
_GARNISH_MINUTES, _BATCH_MINUTES = "1/5 3/10", "20 30"
_BY_CHANCE = 1.05  # times the scatter of chance, shown as 1
_DRINKS, _WASTED, _GARNISHES = (50, 100, 200, 300, 500, 800), (0, 5, 10, 20, 40, 80), (3, 4, 5, 6, 8, 10)


def _ask_fruit(turn: Turn, given: Given) -> Question:
    return Question(_("Which fruit would you stop cutting?"), fruit_choices(turn), hint=_("orange"))


def _ask_price(turn: Turn, given: Given) -> Question:
    fruit = given[_FRUIT]
    price = prices.in_force(turn.context, [fruit.id]).get(fruit.id)
    each = None if price is None else per_fruit(fruit, price)
    known = () if each is None else (((show_money(each), f"{float(each):.2f}"),),)
    return Question(_("What does one {fruit} cost?").format(fruit=fruit.name), known, hint="0.50")


def _ask_garnishes(turn: Turn, given: Given) -> Question:
    return Question(_("How many garnishes do you cut from one?"), _numbers(_GARNISHES), hint="5")


def _ask_drinks(turn: Turn, given: Given) -> Question:
    return Question(_("How many drinks a week take it?"), _numbers(_DRINKS), hint="300")


def _ask_wasted(turn: Turn, given: Given) -> Question:
    name = counted_name(given[_FRUIT].name, Fraction(2))
    text = _("How many {fruit} do you throw out a week?").format(fruit=name)
    return Question(text, _numbers(_WASTED), hint="20")


def _numbers(numbers: tuple[int, ...]) -> tuple[tuple[tuple[str, str], ...], ...]:
    choices = columns([(str(number), str(number)) for number in numbers], 3)
    return (*choices, ((_("Other number"), DIGIT),))


def _accept_positive(turn: Turn, given: Given, value: Fraction) -> Fraction:
    if not 0 < value <= 100_000:
        raise Say(reply(_("A number above 0, please.")))
    return value


def _accept_wasted(turn: Turn, given: Given, value: Fraction) -> Fraction:
    return value if value == 0 else _accept_positive(turn, given, value)


@dataclass(frozen=True, kw_only=True)
class SwitchArguments(Arguments):
    """A fruit, its price each, garnishes from one, drinks a week, and pieces thrown out a week."""

    fruit: IngredientView
    switch_price: Fraction
    switch_garnishes: Fraction
    switch_drinks: Fraction
    switch_wasted: Fraction


def _switch(turn: Turn, arguments: SwitchArguments) -> Reply:
    fruit = arguments.fruit
    own = own_spray(turn.context, fruit)
    found = plan(
        arguments.switch_price,
        Estimate.exactly(arguments.switch_garnishes),
        arguments.switch_drinks,
        arguments.switch_wasted,
        own.a_drink if own else None,
    )
    low, high = show_estimates(found.saved.low, found.saved.high)
    first = _("Cash: {low} to {high} a week saved, as a guess").format(low=low, high=high)
    low, high = show_estimates(found.spray.low, found.spray.high)
    cost = _("Fresh {fruit} costs {money} a week now, a spray about {low} to {high}.").format(
        fruit=fruit.name, money=show_money(Decimal(repr(round(found.fresh, 4)))), low=low, high=high
    )
    lines = [cost, _spray_basis(own), _time(turn, arguments.switch_drinks), _matters(found)]
    most = show_money(Decimal(repr(round(found.most_a_drink, 4))), extra_places=1)
    if arguments.switch_wasted:
        stop = _(
            "Stop if the spray costs over {money} a drink, if tasters can tell and mind, or if those nights "
            "show no drop."
        )
    else:
        stop = _(
            "Stop if the spray costs over {money} a drink, if tasters can tell and mind, or if you buy no "
            "less fruit."
        )
    name = counted_name(fruit.name, Fraction(2))
    return Reply(
        (
            Text(first, strong=True),
            *(Text(line) for line in lines),
            *_nights(turn, fruit, arguments.switch_wasted),
            Text(stop.format(money=most)),
        ),
        ((Button(_("Log waste"), f"waste {name}"), _own_button(own)),),
    )


def _spray_basis(own: OwnSpray | None) -> str:
    """Say where the cost of the spray comes from: the bar's own formula and prices, or a guess."""
    if own is not None and own.a_drink is not None:
        ends = Decimal(float(own.a_drink.low)), Decimal(float(own.a_drink.high))
        text = _("The spray is your {name} at your prices: {money} a drink.")
        return text.format(name=own.formula.name, money=small_money(ends))
    low, high = show_number(SPRAY_SHARE.low * 100), show_number(SPRAY_SHARE.high * 100)
    text = _("I took a drink's spray to cost {low} to {high} % of a cut garnish: a guess, no source.")
    guess = text.format(low=low, high=high)
    if own is None or not own.unpriced:
        return guess
    text = _("With a price for {names} I use your {name} instead.")
    return f"{guess} " + text.format(names=_(" and ").join(own.unpriced), name=own.formula.name)


def _own_button(own: OwnSpray | None) -> Button:
    if own is None:
        return Button(_("New formula"), "new formula")
    return Button(_("What {name} costs").format(name=own.formula.name), f"cost #{own.formula.id} x1")


def _time(turn: Turn, drinks: Fraction) -> str:
    settings = turn.context.bar.settings
    cut = estimate_of(settings.garnish_minutes or _GARNISH_MINUTES)
    batch = estimate_of(settings.batch_minutes or _BATCH_MINUTES)
    if cut is None or batch is None:
        raise ValueError("both have a usual value")
    low, high = round(drinks * cut.low - batch.high), round(drinks * cut.high - batch.low)
    return _("Time, apart: {minutes}.").format(minutes=minutes_saved(low, high))


def _matters(found: Plan) -> str:
    """Name the two unknown numbers that move the answer most, and by how much."""
    names = _(" and ").join(
        _("{name} (moves it by {money})").format(name=_(INPUT_NAMES[name]), money=show_estimates(width)[0])
        for name, width in found.matters[:2]
    )
    return _("Nobody knows yet, and it matters most: {names}.").format(names=names)


def _nights(turn: Turn, fruit: IngredientView, wasted: Fraction) -> list[Block]:
    """Write the nights that would show each drop, and where the scatter comes from."""
    if not wasted:
        return [Text(_("Nothing thrown out, so no waste can drop: only the deliveries will show it."))]
    nights = (turn.context.bar.settings.service_days & EVERY_DAY).bit_count() or 7
    own = before_after.own_scatter(turn.context, fruit.id)
    scatter = SCATTER if own is None else own[0]
    needed = [nights_to_show(float(wasted) / nights, float(drop), scatter) for drop in _DROPS]
    rows = [
        (
            _("{percent} % less").format(percent=show_number(drop * 100)),
            _("{nights} nights").format(nights=show_number(number)),
            _("{weeks} weeks").format(weeks=show_number(ceil(number / nights))),
        )
        for drop, number in zip(_DROPS, needed, strict=True)
    ]
    if own is None:
        source = _("I took counts to vary {times} times as much as by chance: common practice, no source.")
    elif own[0] < _BY_CHANCE:
        source = _("Your counts varied no more than by chance in the last {weeks} weeks.")
    else:
        source = _("Your counts varied {times} times as much as by chance in the last {weeks} weeks.")
    return [
        Text(_("To show a drop 8 times in 10, beside another fruit, log so long before and again after:")),
        Grid(tuple(rows)),
        Text(source.format(times=show_number(Fraction(round(scatter, 1)), 1), weeks=own[1] if own else 0)),
    ]


_FRUIT = Slot("fruit", accept_fruit, _ask_fruit)

COMMANDS = (
    Command(
        "switch",
        N_("what a spray instead of a fruit's garnish may save, before you decide"),
        _switch,
        words=("before deciding", "should we switch"),
        examples=(N_("switch orange: 0.50, 5, 300, 20"),),
        slots=(
            _FRUIT,
            Slot("switch_price", _accept_positive, _ask_price),
            Slot("switch_garnishes", _accept_positive, _ask_garnishes),
            Slot("switch_drinks", _accept_positive, _ask_drinks),
            Slot("switch_wasted", _accept_wasted, _ask_wasted),
        ),
        writes=True,
        wishes=(Wish("switch", ("{fruit?}",)),),
    ),
)
