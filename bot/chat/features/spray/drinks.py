"""Drinks: how many were poured, on which night, with what."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.shared_slots import never, undo_button
from bot.chat.dialogue.slots import Question, Slot
from bot.chat.dialogue.turn import Given, Say, Turn
from bot.chat.features.people.setting_values import day_names
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Day, Unknown
from bot.chat.i18n.language import _, ngettext, show_day, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.trade.words import N_
from bot.work.formulas import formulas, ingredients
from bot.work.spray import drinks


def _ask(turn: Turn, given: Given) -> Question:
    return Question(_("How many drinks?"), hint="140")


def _accept_count(turn: Turn, given: Given, value: Any) -> int:
    if value.denominator != 1 or not 0 <= value <= drinks.MOST_DRINKS:
        raise Say(reply(_("Please write a whole number of drinks.")))
    return int(value)


def accept_day(turn: Turn, given: Given, value: Day) -> date:
    """Turn a day as typed into a business day of the bar; no day to come."""
    this_day = drinks.today(turn.context)
    try:
        day = date.fromisoformat(value.date) if value.date else this_day - timedelta(days=int(value.days_ago))
    except (ValueError, OverflowError):
        raise Say(reply(_("“{day}” is no day of the calendar.").format(day=value.date))) from None
    if day > this_day:
        raise Say(reply(_("{day} is still to come.").format(day=show_day(day))))
    return day


def accept_subject(turn: Turn, given: Given, value: Any) -> Noun:
    """Turn a name into the formula or the fruit that the drinks were counted with."""
    if isinstance(value, Noun):
        return value
    if isinstance(value, Unknown):
        for kind in ("FORMULA", "INGREDIENT"):
            known = turn.vocabulary.named(value.text, kind)
            if known is not None:
                return known
        raise Say(turn.not_known(value, "FORMULA", _("formula or fruit")))
    return turn.noun(value, "FORMULA", _("formula"))


def _drinks(turn: Turn, given: Given) -> Reply:
    if "drinks_count" not in given:
        return _table(turn)
    subject: Noun | None = given.get("subject")
    formula_id = int(subject.id) if subject is not None and subject.kind == "FORMULA" else None
    ingredient_id = int(subject.id) if subject is not None and subject.kind == "INGREDIENT" else None
    logged = drinks.log(
        turn.context, given["drinks_count"], given.get("day"), formula_id, ingredient_id, "ran_out" in given
    )
    day, count = logged.day, logged.day.drinks
    said = ngettext("{day}: {count} drink", "{day}: {count} drinks", count)
    if subject is not None:
        said = ngettext("{day}: {count} drink with {name}", "{day}: {count} drinks with {name}", count)
    first = said.format(
        day=show_day(day.day), count=show_number(count, 0), name=_name(turn, formula_id, ingredient_id)
    )
    lines = []
    if day.ran_out:
        lines.append(_("It ran out: more might have been wanted."))
    if logged.before is not None:
        lines.append(_("Before, it said {count}.").format(count=show_number(logged.before, 0)))
    return reply(
        first + ".",
        *lines,
        buttons=((undo_button(turn), Button(_("By weekday"), "drinks"), Button(_("Plan"), "plan")),),
    )


def _name(turn: Turn, formula_id: int | None, ingredient_id: int | None) -> str:
    if formula_id is not None:
        return formulas.get(turn.context, formula_id).name
    return ingredients.get(turn.context, ingredient_id).name if ingredient_id is not None else ""


def _table(turn: Turn) -> Reply:
    known = drinks.lately(turn.context)
    whole = [one for one in known if one.subject == (None, None)]
    if not known:
        return reply(
            _("No drinks were counted yet."),
            _("At close: drinks 140. Or for the night before: drinks 140 yesterday"),
            _("With one formula or garnish: drinks 60 grapefruit mist"),
        )
    blocks: list[Block] = []
    subjects = sorted({one.subject for one in known if one.subject != (None, None)}, key=str)
    if whole:
        first = _("Drinks a night, by weekday")
        blocks.append(_weekdays(whole))
    else:
        first = _("Drinks a night, as far as counted")
    for formula_id, ingredient_id in subjects[:4]:
        own = [one for one in known if one.subject == (formula_id, ingredient_id)]
        mean = sum(one.drinks for one in own) / len(own)
        text = ngettext(
            "With {name}: {mean} a night ({count} night)",
            "With {name}: {mean} a night ({count} nights)",
            len(own),
        )
        blocks.append(
            Text(
                text.format(
                    name=_name(turn, formula_id, ingredient_id),
                    mean=show_number(round(mean), 0),
                    count=len(own),
                )
            )
        )
    blocks.append(
        Text(
            _("Last: {day}, {count}").format(
                day=show_day(known[-1].day), count=show_number(known[-1].drinks, 0)
            )
        )
    )
    return Reply((Text(first, strong=True), *blocks), ((Button(_("Plan"), "plan"),),))


def _weekdays(whole: list[drinks.DrinksDay]) -> Grid:
    names = day_names()
    rows: list[tuple[str, ...]] = [("", _("mean"), _("nights"))]
    rows += [
        (names[one.weekday], show_number(round(one.mean), 0), show_number(one.days, 0))
        for one in drinks.by_weekday(whole)
    ]
    return Grid(tuple(rows))


COMMANDS = (
    Command(
        "drinks",
        N_("log how many drinks were poured"),
        _drinks,
        words=("drinks poured", "poured"),
        examples=(
            N_("drinks 140 yesterday"),
            N_("drinks 60 grapefruit mist"),
            N_("drinks 45 orange ran out"),
        ),
        slots=(
            Slot("drinks_count", _ask, never, _accept_count),
            Slot("subject", _ask, never, accept_subject),
            Slot("day", _ask, never, accept_day),
            Slot("ran_out", _ask, never),
        ),
        writes=True,
        menu=56,
    ),
)

LOG_WORDS = (
    LogWords("drinks", N_("counted {count} drinks"), N_("The count of {count} drinks is taken back.")),
)
