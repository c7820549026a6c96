"""The owner's page: what the spray changed, in cash and apart in time, as a picture and a PDF."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.turn import Turn
from bot.chat.features.savings.savings_words import change, few_nights, meaning
from bot.chat.i18n.language import _, show_day, show_full_day, show_money, show_number
from bot.chat.reply.message import Button, File, Reply, Text, reply
from bot.documents.charts.canvas import Sheet
from bot.documents.charts.charts import Layer
from bot.documents.charts.owner_page import CashLine, Panel, Waste, owner_page
from bot.trade.days import Week
from bot.trade.money.money import minor_digits
from bot.trade.savings.before_after import Verdict
from bot.trade.words import N_
from bot.work.savings import owner
from bot.work.savings.owner import Cash, FruitWeeks, OwnerPage


def _owner(turn: Turn, arguments: Arguments) -> Reply:
    found = owner.page(turn.context)
    if found is None:
        return reply(
            _("No page yet: it takes a whole week before a spray and one since."),
            _("Log waste every night, and say when you switched: spraying orange since 2026-10-20"),
            buttons=((Button(_("Before deciding"), "switch"), Button(_("Week"), "week")),),
        )
    first = _cash_lines(turn, found.cash)
    sheet = _sheet(turn, found)
    from bot.documents.charts.page import a4  # noqa: PLC0415 - loads the drawing library

    name = f"owner-{turn.context.today}"
    files = (
        File(f"{name}.png", sheet.png(), picture=True, caption=_("The owner's page")),
        File(f"{name}.pdf", a4(sheet)),
    )
    time = _time_lines(found)
    lines = [*first[1:], *([_("Time, apart: {times}").format(times="; ".join(time))] if time else [])]
    lines += _effect_lines(found)
    return Reply((Text(first[0], strong=True), *(Text(line) for line in lines)), files=files)


def _cash_lines(turn: Turn, cash: Cash | None) -> list[str]:
    """Write the cash: the sum so far against what was spent once, then a week and its range."""
    if cash is None:
        return [_("Cash: not known yet")]
    saved = _money(cash.sums[-1] - cash.outlay)
    lines = [
        _("Cash: {money} ahead after {weeks} whole weeks").format(money=saved, weeks=len(cash.sums))
        if cash.sums[-1] >= cash.outlay
        else _("Cash: {money} still to earn back after {weeks} whole weeks").format(
            money=_money(cash.outlay - cash.sums[-1]), weeks=len(cash.sums)
        )
    ]
    week = _("A week: {money} less paid for fruit and spray").format(money=_money(cash.a_week))
    if cash.range is not None and not cash.range.is_exact:
        ends = {"low": _money(cash.range.low), "high": _money(cash.range.high)}
        week += " " + _("({low} to {high})").format(**ends)
    return [*lines, week]


def _time_lines(found: OwnerPage) -> list[str]:
    return [
        _("{low} to {high} min saved a week on {fruit}").format(
            low=show_number(round(minutes.usual.low)), high=show_number(round(minutes.usual.high)), fruit=name
        )
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


def _sheet(turn: Turn, found: OwnerPage) -> Sheet:
    cash = _cash_lines(turn, found.cash)
    time = _time_lines(found) or [_("Not known yet.")]
    others = _(" and ").join(one.fruit.name for one in found.others)
    effects = _effect_lines(found)
    return owner_page(
        turn.context.bar.name,
        _("Spray and fresh fruit, {day}").format(day=show_full_day(turn.context.today)),
        [
            (cash[0], cash[1:]),
            (_("Time, apart from the cash"), time),
            (_("Fruit thrown out, in whole weeks"), effects),
        ],
        Waste(
            tuple(
                Panel(heading, _layers(rows))
                for heading, rows in (
                    (_("Sprayed: pieces thrown out a week"), found.sprayed),
                    (_("Not sprayed, on the same scale"), found.others),
                )
                if rows
            ),
            tuple(_week(one) for one in found.weeks),
            tuple(_place(found.weeks, day) for day, _name in found.switches),
            found.running,
            _notes(found),
        ),
        _cash_chart(turn, found.cash),
        [
            (_("Not certain"), _uncertain(found, others)),
            (_("Not counted"), [_(one.value) for one in found.unknown] + _kept(found)),
        ],
        pieces=lambda value: show_number(Fraction(round(value)), 0),
        money=lambda value: _whole_money(turn, value),
        dark=turn.context.bar.settings.dark_pictures,
    )


def _notes(found: OwnerPage) -> tuple[str, ...]:
    switches = "; ".join(
        _("{name} sprayed since {day}").format(name=name, day=show_day(day)) for day, name in found.switches
    )
    dashed = _("Dashed: {switches}.").format(switches=switches)
    return (dashed, _("Hatched across: this week still runs.")) if found.running else (dashed,)


def _layers(rows: tuple[FruitWeeks, ...]) -> tuple[Layer, ...]:
    return tuple(Layer(place % 6, row.fruit.name, row.pieces, row.key) for place, row in enumerate(rows[:6]))


def _week(week: Week) -> str:
    return _("W{week}").format(week=week.number)


def _place(weeks: tuple[Week, ...], day: date) -> float:
    return (day - weeks[0].first).days / 7


def _cash_chart(turn: Turn, cash: Cash | None) -> CashLine | None:
    if cash is None:
        return None
    return CashLine(
        _("Cash saved so far, at the end of each week"),
        tuple(_week(one) for one in cash.weeks),
        cash.sums,
        cash.outlay,
        _("spent once: {money}").format(money=_whole_money(turn, cash.outlay)),
    )


def _uncertain(found: OwnerPage, others: str) -> list[str]:
    lines = [_("In brackets: where the true number lies, 95 times in 100.")]
    if others:
        text = _("{others} stand for what would have happened without the spray.")
        lines.append(text.format(others=others.capitalize()))
    else:
        lines.append(_("No unsprayed fruit is logged, so season and trade are in all of this."))
    return lines


def _kept(found: OwnerPage) -> list[str]:
    kept = sum(one.after.kept for one in found.effects)
    text = _("{count} pieces juiced or used after peeling: not waste")
    return [text.format(count=show_number(round(kept)))] if kept else []


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
