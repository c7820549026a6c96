"""Before deciding: what a switch to spray may save in cash and apart in minutes, and how to find out."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.fruit import accept_fruit
from bot.chat.dialogue.slots import Given, Question, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.i18n.language import _, show_money, show_number
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.trade.days import EVERY_DAY
from bot.trade.numbers.uncertainty import Estimate
from bot.trade.savings.deciding import INPUT_NAMES, nights_to_show, plan
from bot.trade.words import N_
from bot.work.formulas.ingredients import IngredientView
from bot.work.savings.fresh_versus_spray import estimate_of

_DROPS = (Fraction(3, 10), Fraction(1, 2), Fraction(7, 10))
# Minutes: cutting a garnish, and making the week's batch. Common practice, no source.
_GARNISH_MINUTES, _BATCH_MINUTES = "1/5 3/10", "20 30"


def _ask_fruit(turn: Turn, given: Given) -> Question:
    return Question(_("Which fruit would you stop cutting?"), hint=_("orange"))


def _ask_price(turn: Turn, given: Given) -> Question:
    return Question(_("What does one {fruit} cost?").format(fruit=given[_FRUIT].name), hint="0.50")


def _ask_garnishes(turn: Turn, given: Given) -> Question:
    return Question(_("How many garnishes do you cut from one?"), hint="5")


def _ask_drinks(turn: Turn, given: Given) -> Question:
    return Question(_("How many drinks a week take it?"), hint="300")


def _ask_wasted(turn: Turn, given: Given) -> Question:
    name = counted_name(given[_FRUIT].name, Fraction(2))
    return Question(_("How many {fruit} do you throw out a week?").format(fruit=name), hint="20")


def _accept_positive(turn: Turn, given: Given, value: Fraction) -> Fraction:
    if not 0 < value <= 100_000:
        raise Say(reply(_("A number above 0, please.")))
    return value


@dataclass(frozen=True, kw_only=True)
class SwitchArguments(Arguments):
    """A fruit, its price each, garnishes from one, drinks a week, and pieces thrown out a week."""

    fruit: IngredientView
    switch_price: Fraction
    switch_garnishes: Fraction
    switch_drinks: Fraction
    switch_wasted: Fraction


def _switch(turn: Turn, arguments: SwitchArguments) -> Reply:
    fruit, wasted = arguments.fruit, arguments.switch_wasted
    found = plan(
        arguments.switch_price,
        Estimate.exactly(arguments.switch_garnishes),
        arguments.switch_drinks,
        wasted,
    )
    first = _("Cash: about {low} to {high} a week saved").format(
        low=_money(found.saved.low), high=_money(found.saved.high)
    )
    nights = bin(turn.context.bar.settings.service_days & EVERY_DAY).count("1") or 7
    a_night = float(wasted) / nights
    matters = _(" and ").join(_(INPUT_NAMES[name]) for name in found.matters[:2])
    most = show_money(Decimal(repr(round(found.most_a_drink, 4))), extra_places=1)
    rows = [
        (
            _("{percent} % less").format(percent=show_number(drop * 100)),
            _("{nights} nights").format(nights=show_number(nights_to_show(a_night, float(drop)))),
        )
        for drop in _DROPS
    ]
    lines = [
        _("Fresh {fruit} costs {money} a week now; a spray a quarter to a third of it, as a rule.").format(
            fruit=fruit.name, money=_money(found.fresh)
        ),
        _time(turn, arguments.switch_drinks),
        _("Nobody knows yet, and it matters most: {names}.").format(names=matters),
        _("To show a drop 8 times in 10, log as many nights before and again after:"),
    ]
    stop = _(
        "Stop if the spray costs over {money} a drink, if tasters can tell and mind, or if those nights show "
        "no drop."
    ).format(money=most)
    name = counted_name(fruit.name, Fraction(2))
    return Reply(
        (Text(first, strong=True), *(Text(line) for line in lines), Grid(tuple(rows)), Text(stop)),
        ((Button(_("Log waste"), f"waste {name}"), Button(_("New formula"), "new formula")),),
    )


def _time(turn: Turn, drinks: Fraction) -> str:
    settings = turn.context.bar.settings
    cut = estimate_of(settings.garnish_minutes or _GARNISH_MINUTES)
    batch = estimate_of(settings.batch_minutes or _BATCH_MINUTES)
    if cut is None or batch is None:
        raise ValueError("both have a usual value")
    low, high = drinks * cut.low - batch.high, drinks * cut.high - batch.low
    return _("Time, apart: about {low} to {high} min a week, cutting less mixing.").format(
        low=show_number(round(low)), high=show_number(round(high))
    )


def _money(value: float) -> str:
    money = Decimal(repr(round(value, 4)))
    return show_money(round(money, 1 - money.adjusted()) if money else money)  # two figures are known


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
            Slot("switch_wasted", _accept_positive, _ask_wasted),
        ),
        writes=True,
        wishes=(Wish("switch", ("{fruit?}",)),),
    ),
)
