"""Commands for waste reports of a week, a month or any days, by fruit, reason and shift."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of, first_formula
from bot.chat.dialogue.inputs.day import read_span
from bot.chat.dialogue.inputs.shared_slots import MORE_DETAIL_SLOT, PICTURE_SLOT
from bot.chat.dialogue.slots import Given, Question, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.charts import charts
from bot.chat.features.fruit.service_words import event_lines, service_lines
from bot.chat.features.savings.savings_words import full_lines, short_lines
from bot.chat.grammar.syntax import DaySpan
from bot.chat.i18n.language import _, ngettext, show_day, show_full_day, show_money, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_ml, show_weight
from bot.trade.days import week_of
from bot.trade.words import N_
from bot.work.batches import bottles, moving
from bot.work.fruit import week
from bot.work.fruit.week import FruitSum, PartSum, WasteSummary
from bot.work.savings import before_after

_NUMBERED = re.compile(r"^(\d{4})-[Ww](\d{1,2})$")
_MOST_ROWS = 4


def _ask_span(turn: Turn, given: Given) -> Question:
    return Question(
        _("From which day to which? Such as: from 1 to 15 October"), hint=_("from 1 to 15 October")
    )


def _text(turn: Turn, given: Given, value: object) -> str:
    return str(value)


def _accept_span(turn: Turn, given: Given, value: DaySpan) -> tuple[date, date]:
    first, last = sorted(read_span(turn, value))
    if first > turn.context.today:
        raise Say(reply(_("{day} is still to come.").format(day=show_day(first))))
    if (last - first).days >= week.LONGEST_DAYS:
        raise Say(reply(_("That is more than ten years: please name fewer days.")))
    return first, last


def _accept_week(turn: Turn, given: Given, value: DaySpan) -> tuple[date, date]:
    span = _accept_span(turn, given, value)
    if value.first is not value.last:
        return span
    of_day = week_of(span[0])
    return of_day.first, of_day.last


# -- choosing days --------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class _ShownArguments(Arguments):
    """The options of a waste report."""

    more_detail: bool = False
    picture: bool = False


@dataclass(frozen=True, kw_only=True)
class WeekArguments(_ShownArguments):
    """A week, or any days; by default this week."""

    period: str = ""
    span: tuple[date, date] | None = None


@dataclass(frozen=True, kw_only=True)
class MonthArguments(_ShownArguments):
    """A month; by default this one."""

    month: str = ""


@dataclass(frozen=True, kw_only=True)
class ReportArguments(_ShownArguments):
    """Any days."""

    span: tuple[date, date]


def _week(turn: Turn, arguments: WeekArguments) -> Reply:
    asked = arguments.words_for(_PERIOD)
    numbered = _NUMBERED.match(asked)
    if arguments.span is not None:
        found = week.summary(turn.context, *arguments.span)
    elif numbered is not None:
        found = week.numbered_week(turn.context, int(numbered[1]), int(numbered[2]))
    else:
        found = week.this_week(turn.context, weeks_ago=1 if asked else 0)
    now = not asked and arguments.span is None
    return _shown(turn, arguments, found, Button(_("Last week"), "week last week") if now else None)


def _month(turn: Turn, arguments: MonthArguments) -> Reply:
    asked = arguments.words_for(_MONTH)
    if "-" in asked:
        year, number = (int(part) for part in asked.split("-"))
        if not (1 <= number <= 12 and year >= 1900):
            raise Say(reply(_("There is no month {month}.").format(month=asked)))
        found = week.month(turn.context, year, number)
    else:
        found = week.this_month(turn.context, months_ago=1 if asked else 0)
    return _shown(turn, arguments, found, None if asked else Button(_("Last month"), "month last month"))


def _report(turn: Turn, arguments: ReportArguments) -> Reply:
    return _shown(turn, arguments, week.summary(turn.context, *arguments.span), None)


def _shown(turn: Turn, how: _ShownArguments, found: WasteSummary, earlier: Button | None) -> Reply:
    if how.picture:
        return _picture(turn, found)
    if how.more_detail:
        return _details(turn, found)
    return _summary(turn, found, earlier)


# -- answer ---------------------------------------------------------------------------------


def _dates(turn: Turn, found: WasteSummary) -> str:
    ends = {"first": show_day(found.first), "last": show_day(found.last)}
    if found.first == found.last:
        return ends["first"]
    if found.first <= turn.context.today <= found.last:
        return _("{first} to {last}, still running").format(**ends)
    return _("{first} to {last}").format(**ends)


def _summary(turn: Turn, found: WasteSummary, earlier: Button | None) -> Reply:
    again = f"week {found.first} to {found.last}"
    buttons = (*([earlier] if earlier else []), Button(_("Log waste"), "waste"))
    if not found.fruit:
        texts = (_dates(turn, found), *_against(found), *service_lines(turn, found.first, found.last))
        blocks: tuple[Block, ...] = tuple(Text(line) for line in texts)
        return Reply((Text(_("No waste logged"), strong=True), *blocks), (buttons,))
    units = turn.context.bar.units
    fruit = [(one.name, *_part(one, units)) for one in _first_rows(found.fruit)]
    if len(found.fruit) > _MOST_ROWS:
        fruit.append(_rest(found.fruit[_MOST_ROWS - 1 :], units))
    reasons = _reason_rows(found, _MOST_ROWS - 1, units)  # the rest by [More]
    lines: list[Block] = [Text(_dates(turn, found)), Grid(tuple(fruit)), Grid(tuple(reasons))]
    lost = _gone_of_batches(turn, found)
    lines += [Text(line) for line in (*lost, *_unpriced(found, units), *_share(found), *_against(found))]
    lines += [Text(line) for line in short_lines(before_after.effects(turn.context, found.last))]
    lines += [Text(line) for line in event_lines(turn, found.first, found.last)]
    more = (Button(_("More"), f"{again} more"), Button(_("Picture"), f"{again} picture"))
    said = Reply((Text(_title(found), strong=True), *lines), (more, buttons))
    if not turn.context.bar.settings.week_picture:
        return said
    costs = week.by_week(turn.context, found.last)
    return replace(said, files=(charts.waste_picture(turn, costs, later=True),)) if costs.fruit else said


def _title(found: WasteSummary) -> str:
    priced = found.cost or not any(one.unpriced for one in found.fruit)
    return _("Waste: {money}").format(money=show_money(found.cost) if priced else _("no prices yet"))


def _first_rows(rows: Sequence[FruitSum]) -> Sequence[FruitSum]:
    """Return all rows if they are few; otherwise all but the last ones, which become one row."""
    return rows if len(rows) <= _MOST_ROWS else rows[: _MOST_ROWS - 1]


def _rest(rows: Sequence[FruitSum | PartSum], units: str) -> tuple[str, str, str]:
    count = sum((one.count for one in rows), Fraction(0))
    grams = sum((one.grams for one in rows), Fraction(0))
    ml = sum((one.ml for one in rows), Fraction(0))
    cost = sum((one.cost for one in rows), Decimal(0))
    name = ngettext("{count} other", "{count} others", len(rows)).format(count=len(rows))
    shown = show_money(cost) if cost or not any(one.unpriced for one in rows) else _("no price")
    return name, _amounts(count, grams, ml, units), shown


def _reason_rows(found: WasteSummary, most: int, units: str) -> list[tuple[str, str, str]]:
    kept = found.reasons if len(found.reasons) <= most else found.reasons[: most - 1]
    rows = [(reason_words(reason), *_part(one, units)) for reason, one in kept]
    if len(kept) < len(found.reasons):
        rows.append(_rest([one for _reason, one in found.reasons[len(kept) :]], units))
    return rows


def _part(one: FruitSum | PartSum, units: str) -> tuple[str, str]:
    cost = show_money(one.cost) if one.cost or not one.unpriced else _("no price")
    return _amounts(one.count, one.grams, one.ml, units), cost


def reason_words(reason: str) -> str:
    """Write a reason, or a note that there is none."""
    return _(reason) if reason else _("no reason given")


def _amounts(count: Fraction, grams: Fraction, ml: Fraction, units: str) -> str:
    """Write pieces, mass and volume."""
    parts = []
    if count:
        parts.append(show_number(count, 1))
    if grams:
        parts.append(show_weight(grams, units))
    if ml:
        parts.append(show_ml(ml, units))
    return " + ".join(parts) or "0"


def _gone_of_batches(turn: Turn, found: WasteSummary) -> list[str]:
    """Say what of batches was spilt, broken or moved between bars in these days: it is not in the sums."""
    context, days = turn.context, (found.first, found.last)
    gone = {
        N_("Lost of batches, besides: {amount}"): bottles.gone_between(context, bottles.LOST, *days),
        N_("Moved to other bars: {amount}"): bottles.gone_between(context, bottles.MOVED, *days),
        N_("Came from other bars: {amount}"): moving.came_between(context, *days),
    }
    units = context.bar.units
    return [
        _(said).format(amount=show_ml(ml, units)) + (f", {show_money(cost)}" if cost else "")
        for said, (ml, cost) in gone.items()
        if ml
    ]


def _unpriced(found: WasteSummary, units: str) -> list[str]:
    names = [_uncounted(one, units) for one in found.fruit if one.unpriced]
    if not names:
        return []
    return [_("Without a price, so not counted: {names}.").format(names=", ".join(names))]


def _uncounted(one: FruitSum, units: str) -> str:
    """Name a thing without a price, with the part of it that has none."""
    whole = one.count, one.grams, one.ml
    if one.uncounted == whole:
        return one.name
    part, all_of_it = _amounts(*one.uncounted, units), _amounts(*whole, units)
    return _("{name} ({part} of {all})").format(part=part, all=all_of_it, name=one.name)


def _share(found: WasteSummary) -> list[str]:
    shares = [one for one in _first_rows(found.fruit) if one.share is not None]
    if not shares:
        return []
    said = ", ".join(
        _("{name} {percent} %").format(name=one.name, percent=show_number((one.share or 0) * 100, 0))
        for one in shares
    )
    return [_("Of what was bought: {shares}").format(shares=said)]


def _against(found: WasteSummary) -> list[str]:
    length = (found.last - found.first).days + 1
    if not found.anything_before:
        first, last = show_day(found.before_first), show_day(found.before_last)
        days = first if first == last else _("{first} to {last}").format(first=first, last=last)
        return [_("Nothing logged to compare with: {days}.").format(days=days)]
    whole = found.days_so_far in {0, length}
    before = show_money(found.before)
    if not whole:
        text = ngettext(
            "First {count} day of the {stretch} before: {money}",
            "First {count} days of the {stretch} before: {money}",
            found.days_so_far,
        ).format(count=found.days_so_far, stretch=_stretch(found), money=before)
    elif length == 7:
        text = _("The week before: {money}").format(money=before)
    else:
        text = _("The {stretch} before: {money}").format(stretch=_stretch(found), money=before)
    if found.before and found.days_so_far and not found.comparable:
        text += ", " + _("too few nights to say")
    elif found.before and found.days_so_far:
        change = (found.cost / found.before - 1) * 100
        share = show_number(abs(change), 0)
        word = _("{percent} % less now") if change < 0 else _("{percent} % more now")
        text += ", " + word.format(percent=share)
    return [text]


def _stretch(found: WasteSummary) -> str:
    """Name a period: the week, the month, or a number of days."""
    length = (found.last - found.first).days + 1
    if length == 7 and found.first.weekday() == 0:
        return _("week")
    if found.first.day == 1 and found.before_first.day == 1:
        return _("month")
    return ngettext("{count} day", "{count} days", length).format(count=length)


# -- more -----------------------------------------------------------------------------------


def _details(turn: Turn, found: WasteSummary) -> Reply:
    lines: list[Block] = [Text(_dates(turn, found))]
    units = turn.context.bar.units
    if found.fruit:
        lines.append(Grid(tuple(_reason_rows(found, len(found.reasons), units))))
        lines.append(
            Grid(
                (
                    (_("early shift"), *_part(found.early, units)),
                    (_("late shift"), *_part(found.late, units)),
                )
            )
        )
    rows = [
        (one.name, f"{show_number((one.share or 0) * 100, 0)} %")
        for one in found.fruit
        if one.share is not None
    ]
    if rows:
        lines += [Text(_("Share of what was bought:")), Grid(tuple(rows))]
    elif found.fruit:
        lines.append(
            Text(example_of(turn, _("Log what comes in to see the share wasted: bought 80 oranges 34.00")))
        )
    lines += [Text(line) for line in service_lines(turn, found.first, found.last)]
    effects = before_after.effects(turn.context, found.last)
    lines += [Text(line) for one in effects for line in full_lines(one)]
    if not effects:
        lines.append(
            Text(
                example_of(
                    turn,
                    _("To compare with the time before the spray: spraying orange since 2026-10-20"),
                    first_formula(turn),
                )
            )
        )
    again = f"week {found.first} to {found.last} picture"
    return Reply((Text(_title(found), strong=True), *lines), ((Button(_("Picture"), again),),))


def _picture(turn: Turn, found: WasteSummary) -> Reply:
    costs = week.by_week(turn.context, found.last)
    if not costs.fruit:
        return reply(
            _("No waste with a price in the twelve weeks up to {day}.").format(day=show_day(found.last))
        )
    file = charts.waste_picture(turn, costs)
    first = _("Waste by week, up to {day}").format(day=show_full_day(found.last))
    return Reply((Text(first, strong=True),), files=(file,))


_SPAN = Slot("span", _accept_week)
_PERIOD = Slot("period", _text)
_MONTH = Slot("month", _text)
_DETAIL = (MORE_DETAIL_SLOT, PICTURE_SLOT)

COMMANDS = (
    Command(
        "week",
        N_("the week's waste and what it cost"),
        _week,
        words=(
            *("this week", "weekly", "how much waste", "how much waste?", "waste this week"),
            *("how much waste this week", "what did we waste"),
        ),
        examples=(N_("week 2026-W30"), N_("week last week")),
        slots=(_PERIOD, _SPAN, *_DETAIL),
        menu=30,
        wishes=(Wish("report", ("{week}", "{this_week?}")),),
    ),
    Command(
        "month",
        N_("the month's waste and what it cost"),
        _month,
        words=("this month", "monthly", "waste this month", "how much waste this month"),
        examples=(N_("month 2026-10"),),
        slots=(_MONTH, *_DETAIL),
        menu=31,
        wishes=(Wish("report", ("{month}", "{this_month}")),),
    ),
    Command(
        "report",
        N_("the waste of any days"),
        _report,
        words=("waste report",),
        examples=(
            N_("report from 1 to 15 October"),
            N_("report last two weeks"),
        ),
        slots=(Slot("span", _accept_span, _ask_span), *_DETAIL),
        wishes=(Wish("report", ("{span}",)),),
    ),
)
