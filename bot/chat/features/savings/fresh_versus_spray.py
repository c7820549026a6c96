"""Word fresh versus spray: each cost, the inputs that matter most, and the break-even points."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.examples import fruit_of
from bot.chat.dialogue.turn import Turn
from bot.chat.features.charts import charts
from bot.chat.i18n.language import (
    _,
    ngettext,
    show_day,
    show_estimates,
    show_full_day,
    show_money,
    show_number,
)
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.trade.money.cost import MoneyRange
from bot.trade.numbers.uncertainty import to_decimal
from bot.trade.savings.fresh_versus_spray import INPUT_NAMES, Answer, FreshAgainstSpray
from bot.work.formulas.formulas import FormulaView
from bot.work.money.cost import CostAnswer
from bot.work.savings import fresh_versus_spray
from bot.work.savings.fresh_versus_spray import Against, NotComparable, Uncounted

_SETTING_OF = {
    Uncounted.BATCH_MINUTES: "batch minutes 15-20",
    Uncounted.GARNISH_MINUTES: "garnish minutes 0.2-0.3",
    Uncounted.BOTTLE: "bottle price 1.20",
    Uncounted.LABEL: "label price 0.05",
}


def small_money(ends: MoneyRange) -> str:
    """Write a range of small amounts with one decimal more than the coins."""
    low, high = show_money(ends[0], extra_places=1), show_money(ends[1], extra_places=1)
    return low if low == high else _("{low} to {high}").format(low=low, high=high)


def rise_lines(turn: Turn, view: FormulaView) -> list[str]:
    """Name the prices that rose noticeably since the last batch of the formula, if any."""
    found = fresh_versus_spray.rises(turn.context, view)
    if found is None:
        return []
    said = ", ".join(
        _("{name} {percent} %").format(name=one.name, percent=show_number(one.share * 100, 0))
        for one in found.rises[:3]
    )
    return [
        _("Dearer since batch {number} ({day}): {names}").format(
            number=found.batch, day=show_day(found.made_on), names=said
        )
    ]


def tax_lines(turn: Turn) -> list[str]:
    """Describe the treatment of tax, if the bar adds or removes it."""
    settings = turn.context.bar.settings
    share = show_number(Fraction(settings.tax_percent))
    if settings.tax == "added":
        return [_("With {percent} % tax added to prices.").format(percent=share)]
    if settings.tax == "taken out":
        return [_("Without the {percent} % tax in prices.").format(percent=share)]
    return []


def against_reply(turn: Turn, costed: CostAnswer, asked: str, picture: bool) -> Reply:
    """Compare a costed formula with the fresh garnish, in numbers or as a picture of the main inputs."""
    view = costed.answer.formula
    found = fresh_versus_spray.against_fresh(turn.context, costed)
    again = f"cost #{view.id}.{view.version} {asked}"
    if isinstance(found, NotComparable):
        return _not_yet(turn, view, found, again)
    if picture:
        return _tornado(turn, view, found)
    result = found.result
    first = _verdict(view, found.fruit.name, result)
    lines: list[Block] = [Grid(_rows(result))]
    lines += [Text(line) for line in (*_saving(found), *time_lines(turn, result.minutes), *_level(result))]
    lines += [Text(line) for line in _basis(found)]
    buttons = [Button(_("Cost"), again)]
    if result.swings:
        buttons.insert(0, Button(_("What matters: picture"), f"{again} picture"))
    return Reply((Text(first, strong=True), *lines), (tuple(buttons),))


def _verdict(view: FormulaView, fruit: str, result: FreshAgainstSpray) -> str:
    saved = result.saving.per_week.likely
    if saved >= 0:
        return _("{name} saves {money} a week against fresh {fruit}").format(
            name=view.name, money=show_money(saved), fruit=fruit
        )
    return _("{name} costs {money} a week more than fresh {fruit}").format(
        name=view.name, money=show_money(-saved), fruit=fruit
    )


def _rows(result: FreshAgainstSpray) -> tuple[tuple[str, ...], ...]:
    fresh, spray = result.fresh, result.spray
    drink = (_("a drink"), *(show_money(one.per_drink.likely, extra_places=1) for one in (fresh, spray)))
    week = (_("a week"), *(show_money(one.per_week.likely) for one in (fresh, spray)))
    year = (_("a year"), *(_about(one.per_year) for one in (fresh, spray)))
    return ("", _("fresh"), _("spray")), drink, week, year


def _about(sum_: Answer) -> str:
    """Write a yearly sum, with the two digits that an estimate knows."""
    return show_money(sum_.likely) if sum_.whole.is_exact else show_estimates(float(sum_.likely))[0]


def _usual(answer: Answer) -> str:
    low, high = show_estimates(answer.usual.low, answer.usual.high)
    return low if low == high else _("{low} to {high}").format(low=low, high=high)


def _saving(found: Against) -> list[str]:
    result = found.result
    week = result.saving.per_week
    lines = []
    if not week.whole.is_exact:
        low, high = show_estimates(float(week.whole.low), float(week.whole.high))
        text = _("Saved: usually {usual}, at the extremes {low} to {high}")
        lines.append(text.format(usual=_usual(week), low=low, high=high))
    if result.matter_most:
        names = _(" and ").join(_(INPUT_NAMES[name]) for name in result.matter_most)
        lines.append(_("What matters most: {names}").format(names=names))
    if found.outlay:
        lines.append(_payback(found))
    return lines


def _payback(found: Against) -> str:
    weeks, spent = found.result.payback_weeks, show_money(found.outlay)
    if weeks.likely is None:
        return _("The {money} spent once are never earned back.").format(money=spent)
    text = ngettext(
        "{money} spent once: earned back in {weeks} week",
        "{money} spent once: earned back in {weeks} weeks",
        1 if round(weeks.likely, 1) == 1 else 2,
    ).format(money=spent, weeks=_weeks(weeks.likely))
    if weeks.soonest is not None and weeks.latest is not None and weeks.soonest != weeks.latest:
        text += " " + _("({low} to {high})").format(low=_weeks(weeks.soonest), high=_weeks(weeks.latest))
    return text


def _weeks(weeks: Decimal) -> str:
    return show_number(Fraction(round(weeks, 1)), 1)


def time_lines(turn: Turn, minutes: Answer) -> list[str]:
    """Say the minutes saved a week, and their worth at the bar's wage, which is in no sum of money."""
    if minutes.whole.low == minutes.whole.high == 0:
        return []
    low, high = round(minutes.usual.low), round(minutes.usual.high)
    if low < 0 < high:
        text = _("Time, apart: {less} min lost to {more} min saved a week").format(
            less=show_number(-low), more=show_number(high)
        )
    else:
        near, far = sorted((abs(low), abs(high)))
        said = _("{low} to {high}").format(low=show_number(near), high=show_number(far))
        text = (
            _("Time, apart: {minutes} min saved a week")
            if high > 0
            else _("Time, apart: {minutes} min more a week")
        )
        text = text.format(minutes=said if near != far else show_number(far))
    wage = fresh_versus_spray.estimate_of(turn.context.bar.settings.wage)
    if wage is None or not minutes.likely:
        return [text]
    worth = show_money(abs(minutes.likely) * to_decimal(wage.likely) / 60)
    return [text + _(", about {money} at your wage").format(money=worth)]


def _level(result: FreshAgainstSpray) -> list[str]:
    even = result.break_evens
    parts = [_("{price} a fruit").format(price=show_money(even.fruit_price))]
    if even.sprays_per_drink is not None:
        parts.append(_("{sprays} sprays").format(sprays=show_number(Fraction(even.sprays_per_drink), 1)))
    if even.drinks_per_week is not None:
        number = round(even.drinks_per_week)
        parts.append(
            ngettext("{drinks} drink a week", "{drinks} drinks a week", number).format(
                drinks=show_number(number)
            )
        )
    return [_("Breaks even at {points}").format(points=_(", or ").join(parts))]


def _basis(found: Against) -> list[str]:
    number = show_number(found.drinks.number.likely, 0)
    parts = [_("{count} drinks a week {how}").format(count=number, how=_(found.drinks.basis.value))]
    if found.wasted is not None:
        parts.append(
            _("{percent} % of the fruit wasted (12 weeks to {last})").format(
                percent=show_number(found.wasted.share * 100, 0),
                last=show_full_day(found.wasted.last),
            )
        )
    if found.wasted is not None and found.wasted.kept:
        share = show_number(found.wasted.kept * 100, 0)
        parts.append(_("{percent} % juiced or used after peeling, and credited").format(percent=share))
    lines = ["; ".join(parts) + "."]
    if found.uncounted:
        names = ", ".join(_(one.value) for one in found.uncounted)
        way = next((_SETTING_OF[one] for one in found.uncounted if one in _SETTING_OF), "")
        if way:
            lines.append(_("Not counted: {names}. Such as: bar {setting}").format(names=names, setting=way))
        else:
            fruit = counted_name(found.fruit.name, Fraction(2))
            lines.append(
                _("Not counted: {names}. Log: bought 80 {fruit} 34.00").format(names=names, fruit=fruit)
            )
    return lines


def _not_yet(turn: Turn, view: FormulaView, found: NotComparable, again: str) -> Reply:
    first = _("Can't compare {name} with fresh yet.").format(name=view.name)
    fruit = fruit_of(turn, view) if found.fruit is None else found.fruit.name
    buttons = [(Button(_("Cost"), again),)]
    if found.missing == "garnish":
        replaces = Button(_("Replaces {fruit}").format(fruit=fruit), f"change #{view.id}: replaces {fruit}")
        buttons.insert(0, (replaces,))
    ways = {
        "garnish": _("Say what it replaces: change {name}: replaces {fruit}").format(
            name=view.name, fruit=fruit
        ),
        "sprays": _("Say how it is used: change {name}: sprays 2-3").format(name=view.name),
        "price": _("Price the fruit: price {fruit} 0.60 each, 5 garnishes each").format(fruit=fruit),
        "prices of ingredients": _("An ingredient has no price: tap Cost to see which."),
        "drinks": _("Say how many drinks a week take it: bar drinks a week 300"),
    }
    return reply(first, ways[found.missing], buttons=tuple(buttons))


def _tornado(turn: Turn, view: FormulaView, found: Against) -> Reply:
    result = found.result
    if not result.swings:
        return reply(_("Every number is known, so there is nothing to draw."))
    file = charts.tornado_picture(turn, view.name, result.saving.per_week.likely, result.swings)
    return Reply(
        (Text(_("What matters most for {name}").format(name=view.name), strong=True),), files=(file,)
    )
