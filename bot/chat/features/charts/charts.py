"""Draw the bar's numbers as charts, with its words, money and colours.

Drawing takes a few tenths of a second, and the first call loads the drawing library. Pictures are therefore
drawn on request and never delay an answer. A chat does not tell whether a screen is light or dark: the
picture has its own background, readable on either, and the bar chooses which.
"""

from __future__ import annotations

from collections.abc import Sequence
from contextvars import copy_context
from datetime import date
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _, show_full_day, show_money, tongue
from bot.chat.reply.message import File
from bot.trade.days import week_of
from bot.trade.money.money import minor_digits
from bot.trade.numbers.uncertainty import Swing
from bot.trade.savings.fresh_versus_spray import INPUT_NAMES
from bot.work.formulas.ingredients import handbook_key
from bot.work.fruit.week import WeekCosts


def _money(value: float) -> str:
    return show_money(Decimal(repr(round(value, 6))))


def _dark(turn: Turn) -> bool:
    return turn.context.bar.settings.dark_pictures


def waste_picture(turn: Turn, costs: WeekCosts, later: bool = False) -> File:
    """Draw the weekly cost of waste, one layer for each fruit; `later` leaves the drawing to the channel."""
    dearest = max(_week_total(week) for week in zip(*costs.fruit.values(), strict=True))
    labels = [_("W{week}").format(week=week_of(one).number) for one in costs.weeks]
    unit = _("{currency} a week; weeks by ISO number").format(currency=turn.context.bar.currency)
    values = {name: [float(one) for one in costs_of] for name, costs_of in costs.fruit.items()}
    dark = _dark(turn)
    fruit = {name: handbook_key(name, turn.context.bar.language) for name in values}
    running = week_of(turn.context.today).first == costs.weeks[-1]
    unit += "; " + _("hatched across: still running") if running else ""

    def draw() -> bytes:
        from bot.documents.charts import charts  # noqa: PLC0415 - loads the drawing library

        return charts.waste_by_week(
            _("Waste by week"),
            unit,
            labels,
            values,
            rest_word=_("other fruit"),
            number=_rounded_money if dearest >= 20 else _money,
            dark=dark,
            fruit=fruit,
            running=running,
        ).png()

    name = f"waste-{week_of(costs.weeks[-1]).year}-W{week_of(costs.weeks[-1]).number:02}.png"
    if not later:
        return File(name, draw(), picture=True, caption=_("Waste by week"))
    # Keep the current language for the channel's thread.
    spoken = copy_context()
    return File(name, b"", picture=True, caption=_("Waste by week"), draw=lambda: spoken.run(draw))


def _week_total(values: Sequence[Decimal]) -> Decimal:
    return sum(values, Decimal(0))


def _rounded_money(value: float) -> str:
    """Write money without decimals where space is short."""
    return show_money(Decimal(round(value)), extra_places=-minor_digits(tongue().currency))


def price_picture(turn: Turn, name: str, unit: str, points: Sequence[tuple[date, Fraction]]) -> File:
    """Draw the cost of one unit of an ingredient over time."""
    from bot.documents.charts import charts  # noqa: PLC0415 - see waste_picture

    bar = turn.context.bar
    today = turn.context.today
    sheet = charts.price_history(
        _("Price of {name}").format(name=name),
        _("{currency} {unit}").format(currency=bar.currency, unit=unit),
        {name: [(day, float(price)) for day, price in points]},
        until=max(today, points[-1][0]),
        day=show_full_day,
        number=_money,
        dark=_dark(turn),
    )
    return File("price.png", sheet.png(), picture=True, caption=_("Price of {name}").format(name=name))


def tornado_picture(turn: Turn, name: str, likely: Decimal, swings: Sequence[Swing]) -> File:
    """Draw the effect of each input on the weekly saving."""
    from bot.documents.charts import charts  # noqa: PLC0415 - see waste_picture

    sheet = charts.tornado(
        _("What matters most: {name}").format(name=name),
        _("{currency} saved a week, spray against fresh").format(currency=turn.context.bar.currency),
        float(likely),
        [charts.Swing(_(INPUT_NAMES[one.name]), float(one.at_low), float(one.at_high)) for one in swings[:6]],
        low_word=_("input at its low end"),
        high_word=_("at its high end"),
        likely_word=_("Likely:"),
        number=_money,
        dark=_dark(turn),
    )
    return File("tornado.png", sheet.png(), picture=True, caption=_("What matters most"))
