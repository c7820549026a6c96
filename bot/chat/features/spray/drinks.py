"""The command drinks: the number poured on a night, with a formula or a fruit."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments, Lines
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.inputs.belief import ask_belief
from bot.chat.dialogue.inputs.day import DAY_SLOT, noting_night, with_day
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.log_words import LogWords, Retold, typed_day
from bot.chat.dialogue.slots import Given, Slot, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.people.setting_values import day_names
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Named, Unknown
from bot.chat.i18n.language import _, ngettext, show_day, show_number
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_ml
from bot.trade.words import N_
from bot.work.events import events
from bot.work.formulas import formulas, ingredients
from bot.work.log.chain import State
from bot.work.menu import menu
from bot.work.spray import drinks
from bot.work.spray.drinks import DrinksDay


def _accept_count(turn: Turn, given: Given, value: Fraction) -> int:
    if value.denominator != 1 or not 0 <= value <= drinks.MOST_DRINKS:
        raise Say(reply(_("Please write a whole number of drinks.")))
    return int(value)


def accept_subject(turn: Turn, given: Given, value: Named) -> Noun:
    """Turn a name into the drink of the list, the formula or the fruit of the counted drinks."""
    if isinstance(value, Noun):
        return value
    if isinstance(value, Unknown):
        for kind in ("DRINK", "FORMULA", "INGREDIENT"):
            known = turn.vocabulary.named(value.text, kind)
            if known is not None:
                return known
        raise Say(_not_on_the_list(turn, value.text))
    return turn.noun(value, "FORMULA", _("formula"))


def _not_on_the_list(turn: Turn, name: str) -> Reply:
    near = [*turn.near(name, "DRINK"), *turn.near(name, "FORMULA", 1)]
    rows: list[tuple[Button, ...]] = [(Button(one, turn.line_with(name, one)),) for one in near]
    one = name if name.endswith("ies") else singular(name)
    add = Button(_("Add {name}").format(name=one), f"serve {one}")
    first = _("“{name}” is not on the drink list.").format(name=name)
    return reply(
        first,
        *([_("Did you mean:")] if near else []),
        buttons=(*rows, (add, Button(_("Drink list"), "menu"))),
    )


_COUNT = Slot("drinks_count", _accept_count)
_SUBJECT = Slot("counted_drink", accept_subject)
_RAN_OUT = Slot("ran_out", said)
_ADDED = Slot("further_count", said)


@dataclass(frozen=True, kw_only=True)
class DrinksLineArguments(Arguments):
    """The number of drinks poured, and their subject: a drink of the list, a formula or a garnish."""

    drinks_count: int | None = None
    counted_drink: Noun | None = None
    ran_out: bool = False
    further_count: bool = False


_LINES = Lines(
    DrinksLineArguments,
    (_COUNT, _ADDED, _SUBJECT, _RAN_OUT),
    (((_COUNT,), N_("an amount")),),
    N_("drinks 40 negroni, 30 old fashioned"),
)


@dataclass(frozen=True, kw_only=True)
class DrinksArguments(Arguments):
    """The drinks poured on a night; no number to list them all."""

    lines: tuple[DrinksLineArguments, ...]
    day: date | None = None


def _drinks(turn: Turn, arguments: DrinksArguments) -> Reply:
    if arguments.lines[0].drinks_count is None:
        return _table(turn)
    day = arguments.day or turn.context.today
    counted = [_counted(one, day) for one in arguments.lines]
    _refuse_two_counts(turn, counted, arguments.day)
    _believe(turn, counted, arguments.day)
    logged = drinks.log_all(turn.context, counted)
    lines = [_("It ran out, so people may have wanted more.")] if any(one.ran_out for one in counted) else []
    lines += [
        _before_words(said, one.before, counted_name(turn, said) if len(counted) > 1 else "")
        for said, one in zip(counted, logged, strict=True)
        if one.before is not None
    ]
    button_row = (undo_button(turn), Button(_("By weekday"), "drinks"), Button(_("Plan"), "plan"))
    now = [one.day for one in logged]
    answer = reply(_logged_words(turn, now), *_used(turn, counted), *lines, buttons=(button_row,))
    said_again = ", ".join(_line_of(turn, one) for one in counted)
    return noting_night(turn, answer, arguments.day, f"drinks {said_again}")


def _before_words(said: DrinksDay, before: int, name: str) -> str:
    """Say the count before, and what was added to it; of several counts with the name."""
    if said.added:
        text = _("{count} more than the {before} before.")
        text = text.format(count=show_number(said.drinks, 0), before=show_number(before, 0))
    else:
        text = _("It was {count} before.").format(count=show_number(before, 0))
    return f"{name}: {text[:1].lower()}{text[1:]}" if name else text


def _refuse_two_counts(turn: Turn, counted: list[DrinksDay], day: date | None) -> None:
    """Ask which count is meant where a line has two for one thing: '10 plus 5'. Raises Say."""
    seen: dict[drinks.Subject, DrinksDay] = {}
    for one in counted:
        first = seen.setdefault(one.subject, one)
        if first is one:
            continue
        offered = dict.fromkeys((first.drinks, one.drinks, first.drinks + one.drinks))
        lines = [with_day(f"drinks {_line_of(turn, replace(one, drinks=each))}", day) for each in offered]
        labels = [_counted_words(turn, replace(one, drinks=each)) for each in offered]
        rows = tuple((Button(*pair),) for pair in zip(labels, lines, strict=True))
        raise Say(reply(_("Two counts for one thing. Which is it?"), buttons=rows))


def _believe(turn: Turn, counted: list[DrinksDay], day: date | None) -> None:
    """Ask before a count is logged that the bar has never come near, unless it was confirmed. Raises Say.

    The night of an event may have any.
    """
    if turn.sure:
        return
    held = events.days(turn.context)
    for one in (each.day for each in drinks.totals(turn.context, counted)):
        if one.day not in held and not drinks.is_believable(turn.context, one):
            line = with_day("drinks " + ", ".join(_line_of(turn, each) for each in counted), day)
            raise ask_belief(_counted_words(turn, one), line)


def _counted(line: DrinksLineArguments, day: date) -> DrinksDay:
    noun = line.counted_drink
    numbers = {"FORMULA": "formula_id", "INGREDIENT": "ingredient_id", "DRINK": "menu_id"}
    about = {} if noun is None else {numbers[noun.kind]: int(noun.id)}
    return DrinksDay(day, line.drinks_count or 0, ran_out=line.ran_out, added=line.further_count, **about)


def _line_of(turn: Turn, one: DrinksDay) -> str:
    more, ran_out = "more" if one.added else "", "ran out" if one.ran_out else ""
    return " ".join(f"{one.drinks} {more} {counted_name(turn, one)} {ran_out}".split())


def _logged_words(turn: Turn, counted: list[DrinksDay]) -> str:
    """Say what was counted: one count with its subject, several in a list."""
    day = show_day(counted[0].day)
    if len(counted) > 1:
        listed = ", ".join(
            f"{show_number(one.drinks, 0)} {counted_name(turn, one)}".strip() for one in counted
        )
        return _("{day}: {drinks}").format(day=day, drinks=listed) + "."
    return _("{day}: {drinks}").format(day=day, drinks=_counted_words(turn, counted[0])) + "."


def _counted_words(turn: Turn, one: DrinksDay) -> str:
    """Return a count in words: '140 drinks', '40 negroni', '60 drinks with orange'."""
    count, name = show_number(one.drinks, 0), counted_name(turn, one)
    if one.menu_id is not None:
        return f"{count} {name}"
    text = ngettext("{count} drink", "{count} drinks", one.drinks)
    if name:
        text = ngettext("{count} drink with {name}", "{count} drinks with {name}", one.drinks)
    return text.format(count=count, name=name)


def _used(turn: Turn, counted: list[DrinksDay]) -> list[str]:
    """Say how much of each preparation the counted drinks of the list took."""
    amounts: dict[str, Fraction] = {}
    for one in counted:
        for line in () if one.menu_id is None else menu.get(turn.context, one.menu_id).lines:
            name = line.formula.name
            amounts[name] = amounts.get(name, Fraction(0)) + line.middle_ml * one.drinks
    units = turn.context.bar.units
    listed = [f"{name} {show_ml(Fraction(round(ml)), units)}" for name, ml in amounts.items() if round(ml)]
    return [_("That took about: {amounts}.").format(amounts=", ".join(listed))] if listed else []


def counted_name(turn: Turn, one: DrinksDay) -> str:
    """Name what was counted, '' for all drinks."""
    if one.menu_id is not None:
        return menu.get(turn.context, one.menu_id).name
    if one.formula_id is not None:
        return formulas.get(turn.context, one.formula_id).name
    return "" if one.ingredient_id is None else ingredients.get(turn.context, one.ingredient_id).name


def _table(turn: Turn) -> Reply:
    known = drinks.lately(turn.context)
    whole = [one for one in known if one.is_whole]
    if not known:
        return reply(
            _("No drinks were counted yet."),
            _("At close: drinks 140. Or for the night before: drinks 140 yesterday"),
            example_of(turn, _("With one formula or garnish: drinks 60 grapefruit mist")),
        )
    blocks: list[Block] = []
    subjects = {one.subject: one for one in known if not one.is_whole}
    if whole:
        first = _("Drinks a night, by weekday")
        blocks.append(_weekdays(whole))
    else:
        first = _("Drinks a night, from what you counted")
    for subject, newest in list(subjects.items())[:4]:
        own = [one for one in known if one.subject == subject]
        mean = sum(one.drinks for one in own) / len(own)
        text = ngettext(
            "With {name}: {mean} a night ({count} night)",
            "With {name}: {mean} a night ({count} nights)",
            len(own),
        )
        blocks.append(
            Text(
                text.format(
                    name=counted_name(turn, newest),
                    mean=show_number(round(mean), 0),
                    count=len(own),
                )
            )
        )
    last = (whole or known)[-1]
    count = " ".join([show_number(last.drinks, 0), counted_name(turn, last)]).strip()
    blocks.append(Text(_("Last: {day}, {count}").format(day=show_day(last.day), count=count)))
    return Reply((Text(first, strong=True), *blocks), ((Button(_("Plan"), "plan"),),))


def _weekdays(whole: list[drinks.DrinksDay]) -> Grid:
    names = day_names()
    rows: list[tuple[str, ...]] = [("", _("mean"), _("nights"))]
    rows += [
        (names[one.weekday], show_number(round(one.mean), 0), show_number(one.days, 0))
        for one in drinks.by_weekday(whole)
    ]
    return Grid(tuple(rows))


def _retold(turn: Turn, found: State) -> Retold:
    counted = drinks.logged_in(turn.context, found.details)
    day = typed_day(turn, found)
    lines = tuple(
        {
            "drinks_count": str(one.drinks),
            "further_count": "more" if one.added else "",
            "counted_drink": counted_name(turn, one),
            "ran_out": "ran out" if one.ran_out else "",
            "day": "" if number else day,
        }
        for number, one in enumerate(counted)
    )
    return Retold("drinks", lines, further="more")


def _now(turn: Turn, found: State) -> list[str]:
    """Say the counts in force after an undo, of what it undid."""
    logged = drinks.logged_in(turn.context, found.details)
    subjects = {one.subject for one in logged}
    known = drinks.days(turn.context, min(one.day for one in logged), max(one.day for one in logged))
    left = [one for one in known if one.subject in subjects]
    return [] if found.stands or not left else [_logged_words(turn, left)]


COMMANDS = (
    Command(
        "drinks",
        N_("log how many drinks were poured"),
        _drinks,
        words=("drinks poured", "poured"),
        examples=(
            N_("drinks 140 yesterday"),
            N_("drinks 60 grapefruit mist"),
            N_("drinks 40 negroni, 30 old fashioned"),
            N_("drinks 45 orange ran out"),
        ),
        slots=(_COUNT, _ADDED, _SUBJECT, DAY_SLOT, _RAN_OUT),
        lines=_LINES,
        writes=True,
        menu=56,
        wishes=(
            Wish(
                "drinks",
                (
                    "{day?} [{count} {more?} {sold}]",
                    "{count} {more?} {formula} {day?}",
                    "{count} {more?} {day?}",
                    "",
                ),
            ),
        ),
    ),
)

LOG_WORDS = (
    LogWords("drinks", N_("counted {count} drinks"), N_("{count} drinks"), retold=_retold, now=_now),
)
