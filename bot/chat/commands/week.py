"""The week's waste, by fruit and reason, against the week before."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any

from bot.chat.asking import Question, Slot
from bot.chat.asks import never
from bot.chat.language import _, ngettext, show_day, show_money, show_number
from bot.chat.message import Block, Button, Grid, Reply, Text
from bot.chat.talk import Command, Given, Talk
from bot.chat.units import show_weight
from bot.trade.words import N_
from bot.work import week
from bot.work.week import FruitSum, ReasonSum, WasteSummary

_NUMBERED = re.compile(r"^(\d{4})-[Ww](\d{1,2})$")


def _ask(talk: Talk, given: Given) -> Question:
    return Question(_("Which week? Such as 2026-W30, or last week."))


def _accept(talk: Talk, given: Given, value: Any) -> str:
    return str(value)


def _week(talk: Talk, given: Given) -> Reply:
    asked = given.texts.get("period", "")
    numbered = _NUMBERED.match(asked)
    if numbered is not None:
        found = week.numbered_week(talk.desk, int(numbered[1]), int(numbered[2]))
    else:
        found = week.this_week(talk.desk, weeks_ago=1 if asked else 0)
    return worded_summary(found, talk.desk.bar.units, asked)


def worded_summary(found: WasteSummary, units: str, asked: str = "") -> Reply:
    """Word a summary of waste: the cost first, then fruit, reasons and the stretch before."""
    dates = _("{first} to {last}").format(first=show_day(found.first), last=show_day(found.last))
    buttons: tuple[Button, ...] = (Button(_("Log waste"), "waste"),)
    if not asked:
        buttons = (Button(_("Last week"), "week last week"), *buttons)
    if not found.fruit:
        blocks: tuple[Block, ...] = (Text(dates), *(Text(line) for line in _against(found)))
        return Reply((Text(_("No waste logged"), strong=True), *blocks), (buttons,))
    priced = found.cost or not any(one.unpriced for one in found.fruit)
    first = _("Waste: {money}").format(money=show_money(found.cost) if priced else _("no prices yet"))
    rows = [(one.name, amount_words(one.count, one.grams, units), _cost_words(one)) for one in found.fruit]
    reasons = [
        (reason_words(one.reason), amount_words(one.count, one.grams, units), _cost_words(one))
        for one in found.reasons
    ]
    lines: list[Block] = [Text(dates), Grid(tuple(rows)), Grid(tuple(reasons))]
    lines += [Text(line) for line in (*_unpriced(found), *_against(found))]
    return Reply((Text(first, strong=True), *lines), (buttons,))


def reason_words(reason: str) -> str:
    """Write a reason, or that none was given."""
    return _(reason) if reason else _("no reason given")


def _cost_words(one: FruitSum | ReasonSum) -> str:
    return show_money(one.cost) if one.cost or not one.unpriced else _("no price")


def amount_words(count: Fraction, grams: Fraction, units: str) -> str:
    """Write pieces and mass of fruit."""
    parts = []
    if count:
        parts.append(show_number(count, 1))
    if grams:
        parts.append(show_weight(grams, units))
    return " + ".join(parts) or "0"


def _unpriced(found: WasteSummary) -> list[str]:
    names = [one.name for one in found.fruit if one.unpriced]
    if not names:
        return []
    return [_("Without a price, so not counted: {names}.").format(names=", ".join(names))]


def _against(found: WasteSummary) -> list[str]:
    length = (found.last - found.first).days + 1
    if not found.anything_before:
        return [_("Nothing was logged in the time before.")]
    whole = found.days_so_far in {0, length}
    before = show_money(found.before)
    if whole:
        text = _("The week before: {money}").format(money=before)
    else:
        text = ngettext(
            "First {count} day of the week before: {money}",
            "First {count} days of the week before: {money}",
            found.days_so_far,
        ).format(count=found.days_so_far, money=before)
    if found.before and found.days_so_far:
        change = (found.cost / found.before - 1) * 100
        share = show_number(abs(change), 0)
        word = _("{percent} % less now") if change < 0 else _("{percent} % more now")
        text += ", " + word.format(percent=share)
    return [text]


COMMANDS = (
    Command(
        "week",
        N_("the week's waste and what it cost"),
        _week,
        words=("this week", "weekly"),
        examples=(N_("week 2026-W30"), N_("week last week")),
        slots=(Slot("period", _ask, never, _accept),),
        menu=30,
    ),
)
