"""The owner's page: what the spray changed, in cash and apart in time, as a picture and a PDF."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.turn import Turn
from bot.chat.features.savings.savings_words import change, few_nights, kept_lines, meaning, minutes_saved
from bot.chat.i18n.language import _, ngettext, show_day, show_full_day, show_money, show_number
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.message import Button, File, Reply, Text, reply
from bot.documents.charts.charts import Layer
from bot.documents.charts.owner_page import CashLine, OwnersPage, Panel, Waste, owner_card, owner_columns
from bot.trade.days import Week
from bot.trade.money.money import minor_digits
from bot.trade.numbers.ranges import Range
from bot.trade.savings.before_after import FEWEST_NIGHTS, Verdict
from bot.trade.words import N_
from bot.work.savings import before_after, owner, savings
from bot.work.savings.cash import Cash, PriceChange
from bot.work.savings.owner import FruitWeeks, OwnerPage

_MOST_FRUIT = 6  # in a chart; the smallest of more become one


def _owner(turn: Turn, arguments: Arguments) -> Reply:
    found = owner.page(turn.context)
    if found is None:
        return reply(
            _("No page yet: it takes a whole week before a spray and one since."),
            *_waiting_for(turn),
            buttons=((Button(_("Before deciding"), "switch"), Button(_("Week"), "week")),),
        )
    first = _cash_lines(found)
    page = _page(turn, found)
    from bot.documents.charts.page import landscape  # noqa: PLC0415 - loads the drawing library

    name = f"owner-{turn.context.today}"
    card = owner_card(page, turn.context.bar.settings.dark_pictures)
    files = (
        File(f"{name}.png", card.png(), picture=True, caption=_("The owner's page")),
        File(f"{name}.pdf", landscape(owner_columns(page), turn.context.bar.paper)),
    )
    time = _time_lines(found)
    lines = [*first[1:], *([_("Time, apart: {minutes}.").format(minutes="; ".join(time))] if time else [])]
    lines += _effect_lines(found)
    return Reply((Text(first[0], strong=True), *(Text(line) for line in lines)), files=files)


def _waiting_for(turn: Turn) -> list[str]:
    """Say what a page still takes: the day of the switch, or nights logged."""
    switches = savings.starts(turn.context)
    if not switches:
        return [_("Log waste every night, and say when you switched: spraying orange since 2026-10-20")]
    counted = before_after.effects(turn.context, turn.context.today)
    if counted:
        return [few_nights(one) for one in counted]
    text = _("{name}: sprayed since {day}.")
    said = [text.format(name=one.fruit.name.capitalize(), day=show_full_day(one.day)) for one in switches]
    return [*said, _("Log waste every night.")]


def _cash_lines(found: OwnerPage) -> list[str]:
    """Write the cash: the sum so far against what was spent once, a week with its range, and the others."""
    cash = found.cash
    if cash is None:
        return [_("Cash: not known yet")]
    return [_so_far(cash), _a_week(cash), *_others_paid(found, cash)]


def _so_far(cash: Cash) -> str:
    ahead, weeks = cash.sums[-1] - cash.outlay, len(cash.sums)
    if cash.a_week is None:
        text = _("Cash so far: {change}, {verdict}")
        return text.format(change=_less_or_more(cash.sums[-1]), verdict=_(Verdict.FEW_NIGHTS))
    if ahead >= 0:
        text = ngettext(
            "Cash: {money} ahead after {weeks} whole week",
            "Cash: {money} ahead after {weeks} whole weeks",
            weeks,
        )
    elif cash.sums[-1] > 0:
        text = ngettext(
            "Cash: {money} still to earn back after {weeks} whole week",
            "Cash: {money} still to earn back after {weeks} whole weeks",
            weeks,
        )
    else:
        text = ngettext(
            "Cash: {money} behind after {weeks} whole week",
            "Cash: {money} behind after {weeks} whole weeks",
            weeks,
        )
    return text.format(money=_money(abs(ahead)), weeks=weeks)


def _a_week(cash: Cash) -> str:
    if cash.a_week is None:
        return _(
            "It takes {least} nights logged in whole weeks, before any spray and with all of them."
        ).format(least=FEWEST_NIGHTS)
    if cash.made and cash.priced:
        text = _("A week: {change} for fruit and spray")
    else:
        text = _("A week: {change} for fruit, without all that the spray costs")
    text = text.format(change=_less_or_more(cash.a_week))
    if cash.range is None or cash.range.is_exact:
        return text
    text += f" ({_range(cash.range)})"
    return f"{text}, {_(Verdict.CHANCE)}" if cash.range.low < 0 < cash.range.high else text


def _less_or_more(saved: float) -> str:
    text = _("{money} less paid") if saved >= 0 else _("{money} more paid")
    return text.format(money=_money(abs(saved)))


def _range(ends: Range[float]) -> str:
    low, high = _money(abs(ends.low)), _money(abs(ends.high))
    if ends.low < 0 < ends.high:
        return _("{low} more to {high} less").format(low=low, high=high)
    near, far = (low, high) if ends.low >= 0 else (high, low)
    return _("{low} to {high}").format(low=near, high=far)


def _others_paid(found: OwnerPage, cash: Cash) -> list[str]:
    if cash.others is None:
        return []
    text = _("Not sprayed, {others}: {change} a week since then.")
    return [text.format(others=_names(found), change=_less_or_more(cash.others))]


def _names(found: OwnerPage) -> str:
    """Name the fruit that were not sprayed, in the plural."""
    names = [counted_name(one.fruit.name, Fraction(2)) for one in found.others]
    return _(" and ").join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)


def _time_lines(found: OwnerPage) -> list[str]:
    return [
        f"{name} {minutes_saved(round(minutes.usual.low), round(minutes.usual.high))}"
        for name, minutes in found.minutes
    ]


def _effect_lines(found: OwnerPage) -> list[str]:
    judged = [one for one in found.effects if one.effect.verdict is not Verdict.FEW_NIGHTS]
    lines = [
        _("{name}: {change}").format(name=one.since.fruit.name.capitalize(), change=change(one))
        if one in judged
        else few_nights(one)
        for one in found.effects
    ]
    return [*lines, *([meaning(judged)] if judged else [])]


def _money(value: float) -> str:
    return show_money(Decimal(repr(round(value, 2))))


def _whole_money(turn: Turn, value: float) -> str:
    return show_money(Decimal(round(value)), extra_places=-minor_digits(turn.context.bar.currency))


# -- the page ------------------------------------------------------------------------------------


def _page(turn: Turn, found: OwnerPage) -> OwnersPage:
    cash = _cash_lines(found)
    time = [f"{line.capitalize()}." for line in _time_lines(found)] or [_("Not known yet.")]
    panels = (
        (_("Sprayed: pieces thrown out a week"), found.sprayed),
        (_("Not sprayed, on the same scale"), found.others),
    )
    return OwnersPage(
        turn.context.bar.name,
        _("Spray and fresh fruit, {day}").format(day=show_full_day(turn.context.today)),
        [
            (cash[0], cash[1:]),
            (_("Time, apart from the cash"), time),
            (_("Fruit thrown out, in whole weeks"), _effect_lines(found)),
        ],
        Waste(
            tuple(Panel(heading, _layers(rows)) for heading, rows in panels if rows),
            tuple(_week(one) for one in found.weeks),
            tuple(_place(found.weeks, day) for day, _name in found.switches),
            found.running,
            _notes(found),
            found.unlogged,
        ),
        _cash_chart(turn, found.cash),
        [
            (_("Not certain"), _uncertain(found)),
            (
                _("Not counted"),
                [*(_(one.value).capitalize() + "." for one in found.unknown), *kept_lines(found.effects)],
            ),
        ],
        pieces=lambda value: show_number(Fraction(round(value)), 0),
        money=lambda value: _whole_money(turn, value),
    )


def _notes(found: OwnerPage) -> tuple[str, ...]:
    by_day: dict[date, list[str]] = {}
    for day, name in found.switches:
        by_day.setdefault(day, []).append(name)
    switches = "; ".join(
        _("{name} sprayed since {day}").format(name=_(" and ").join(names), day=show_day(day))
        for day, names in by_day.items()
    )
    notes = [_("Dashed: {switches}.").format(switches=switches)]
    notes += [_("Hatched across: this week still runs.")] if found.running else []
    notes += [_("–: nothing logged in that week.")] if found.unlogged else []
    return tuple(notes)


def _layers(rows: tuple[FruitWeeks, ...]) -> tuple[Layer, ...]:
    """Return a layer for each fruit; beyond _MOST_FRUIT the smallest become one."""
    shown = rows
    if len(rows) > _MOST_FRUIT:
        shown = tuple(sorted(rows, key=lambda row: -sum(row.pieces))[: _MOST_FRUIT - 1])
    # The first fill looks like an orange, so fruit without a colour of their own begin with the second.
    layers, keys = [], set()
    for place, row in enumerate(shown):
        key = None if row.key in keys else row.key  # two kinds of orange do not look the same
        keys.add(row.key)
        layers.append(Layer(1 + place % 5, row.fruit.name, row.pieces, key))
    rest = [row.pieces for row in rows if row not in shown]
    if rest:
        layers.append(Layer(None, _("other fruit"), tuple(map(sum, zip(*rest, strict=True)))))
    return tuple(layers)


def _week(week: Week) -> str:
    return _("W{week}").format(week=week.number)


def _place(weeks: tuple[Week, ...], day: date) -> float:
    return (day - weeks[0].first).days / 7


def _cash_chart(turn: Turn, cash: Cash | None) -> CashLine | None:
    if cash is None:
        return None
    return CashLine(
        _("Cash so far, at the end of each week"),
        tuple(_week(one) for one in cash.weeks),
        cash.sums,
        cash.outlay,
        _("spent once: {money}").format(money=_whole_money(turn, cash.outlay)),
    )


def _uncertain(found: OwnerPage) -> list[str]:
    lines = [_("In brackets: where the true number lies, 95 times in 100.")]
    if not found.others:
        lines.append(_("No unsprayed fruit is logged, so season and trade are in all of this."))
    else:
        text = _("The {others} stand for what would have happened without the spray.")
        lines.append(text.format(others=_names(found)))
        lines += (
            [_("The cash is not set beside them: a quieter season pays less as well.")] if found.cash else []
        )
    return [*lines, *(_price_line(one) for one in (found.cash.dearer if found.cash else ()))]


def _price_line(change: PriceChange) -> str:
    text = _("{name}: {before} each before, {since} since, and that is in the cash.")
    return text.format(
        name=change.fruit.name.capitalize(), before=_money(change.before), since=_money(change.since)
    )


COMMANDS = (
    Command(
        "owner",
        N_("the owner's page: what the spray saves, as a picture and a PDF"),
        _owner,
        words=("owner's page", "owners page", "is it paying", "does it pay", "does the spray pay"),
        manages=True,
        wishes=(Wish("owner", ("",), shows=True), Wish("savings", ("",), shows=True)),
    ),
)
