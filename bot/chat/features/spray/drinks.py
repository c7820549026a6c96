"""The command drinks: the number poured on a night, with a formula or a fruit."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.inputs.day import DAY_SLOT, noting_night
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.log_words import LogWords, Retold, typed_day
from bot.chat.dialogue.slots import Given, Slot, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.people.setting_values import day_names
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Named, Unknown
from bot.chat.i18n.language import _, ngettext, show_day, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.trade.words import N_
from bot.work.formulas import formulas, ingredients
from bot.work.log.chain import State
from bot.work.spray import drinks


def _accept_count(turn: Turn, given: Given, value: Fraction) -> int:
    if value.denominator != 1 or not 0 <= value <= drinks.MOST_DRINKS:
        raise Say(reply(_("Please write a whole number of drinks.")))
    return int(value)


def accept_subject(turn: Turn, given: Given, value: Named) -> Noun:
    """Turn a name into the formula or the fruit of the counted drinks."""
    if isinstance(value, Noun):
        return value
    if isinstance(value, Unknown):
        for kind in ("FORMULA", "INGREDIENT"):
            known = turn.vocabulary.named(value.text, kind)
            if known is not None:
                return known
        raise Say(turn.not_known(value, "FORMULA", _("formula or fruit")))
    return turn.noun(value, "FORMULA", _("formula"))


@dataclass(frozen=True, kw_only=True)
class DrinksArguments(Arguments):
    """The number of drinks poured, their subject and night; nothing to list them all."""

    drinks_count: int | None = None
    subject: Noun | None = None
    day: date | None = None
    ran_out: bool = False


def _drinks(turn: Turn, arguments: DrinksArguments) -> Reply:
    if arguments.drinks_count is None:
        return _table(turn)
    subject = arguments.subject
    formula_id = int(subject.id) if subject is not None and subject.kind == "FORMULA" else None
    ingredient_id = int(subject.id) if subject is not None and subject.kind == "INGREDIENT" else None
    logged = drinks.log(
        turn.context,
        arguments.drinks_count,
        arguments.day,
        formula_id,
        ingredient_id,
        arguments.ran_out,
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
        lines.append(_("It ran out, so people may have wanted more."))
    if logged.before is not None:
        lines.append(_("It was {count} before.").format(count=show_number(logged.before, 0)))
    answer = reply(
        first + ".",
        *lines,
        buttons=((undo_button(turn), Button(_("By weekday"), "drinks"), Button(_("Plan"), "plan")),),
    )
    about = "" if subject is None else f" {_name(turn, formula_id, ingredient_id)}"
    ran_out = " ran out" if arguments.ran_out else ""
    return noting_night(turn, answer, arguments.day, f"drinks {arguments.drinks_count}{about}{ran_out}")


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
            example_of(turn, _("With one formula or garnish: drinks 60 grapefruit mist")),
        )
    blocks: list[Block] = []
    subjects = sorted({one.subject for one in known if one.subject != (None, None)}, key=str)
    if whole:
        first = _("Drinks a night, by weekday")
        blocks.append(_weekdays(whole))
    else:
        first = _("Drinks a night, from what you counted")
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


def _retold(turn: Turn, found: State) -> Retold | None:
    counted = drinks.logged_in(turn.context, found.details)
    if len(counted) != 1 or counted[0].ran_out:
        return None
    one = counted[0]
    name = _name(turn, one.formula_id, one.ingredient_id)
    return Retold(
        "drinks", ({"drinks_count": str(one.drinks), "subject": name, "day": typed_day(turn, found)},)
    )


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
            Slot("drinks_count", _accept_count),
            Slot("subject", accept_subject),
            DAY_SLOT,
            Slot("ran_out", said),
        ),
        writes=True,
        menu=56,
        wishes=(Wish("drinks", ("{count} {formula} {day?}", "{count} {day?}", "")),),
    ),
)

LOG_WORDS = (LogWords("drinks", N_("counted {count} drinks"), N_("{count} drinks"), retold=_retold),)
