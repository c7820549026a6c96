"""The drink list: put a drink on it with its spec card, list all, take one off."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import accept_formula, accept_sprays, quantity_in_ml, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.menu.menu_words import asked_lines, served_words, spec_reply
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.parser import try_read
from bot.chat.grammar.syntax import Amount, Hash, Named, Span, Unknown
from bot.chat.i18n.language import _, ngettext
from bot.chat.reply.message import Block, Button, Caution, Reply, Text, reply
from bot.trade.words import N_
from bot.work.formulas import formulas
from bot.work.menu import menu
from bot.work.menu.menu import MenuDrinkView, Served
from bot.work.menu.spec import spec

_MOST_SHOWN = 12

Said = Span | Amount | Named


@dataclass(frozen=True, slots=True)
class Serving:
    """What goes into a drink as said: its preparations, and its size in mL if said."""

    lines: tuple[Served, ...]
    glass_ml: Fraction | None


@dataclass(frozen=True, kw_only=True)
class ServeArguments(Arguments):
    """A drink's name and what goes into it."""

    drink_name: str
    serving: Serving


@dataclass(frozen=True, kw_only=True)
class MenuArguments(Arguments):
    """A drink; None for the whole list."""

    menu_drink: MenuDrinkView | None = None


def _ask_name(turn: Turn, given: Given) -> Question:
    return Question(_("Which drink?"), hint=_("negroni"))


def _accept_name(turn: Turn, given: Given, value: str) -> str:
    """Keep a name; ask where one typed without a colon goes on with what the drink takes."""
    for found in [] if "serving" in given.words else re.finditer(r"\s+(?=\d)", value):
        name, serving = value[: found.start()], value[found.end() :]
        if try_read("serving_slot", serving, turn.vocabulary) is not None:
            line = f"serve {name.rstrip(' ,')}: {serving}"
            raise Say(reply(_("Is that the name, and what goes on it?"), buttons=((Button(line, line),),)))
    return value


def _ask_serving(turn: Turn, given: Given) -> Question:
    known = formulas.listed(turn.context)
    if not known:
        raise Say(
            reply(_("This bar has no formulas yet."), buttons=((Button(_("Add a formula"), "new formula"),),))
        )
    sprayed = [(f"2 {one.name}", f"2 {one.name}") for one in known[:6]]
    return Question(_("What goes on or into it?"), columns(sprayed, 1), hint=_("2 orange mist, 90 ml"))


def _accept_serving(turn: Turn, given: Given, value: Said | tuple[Said, ...]) -> Serving:
    lines, glass, before = [], None, None
    for part in value if isinstance(value, tuple) else (value,):
        if isinstance(part, Noun | Hash | Unknown):
            lines.append(_served(turn, given, part, before))
            before = None
            continue
        if isinstance(before, Amount):
            glass = quantity_in_ml(turn, before)
        before = part
    if isinstance(before, Amount):
        glass = quantity_in_ml(turn, before)
    if not lines:
        raise Say(reply(_("Say what goes on it, such as: 2 orange mist, 90 ml")))
    if glass is not None and not 1 <= glass <= 5000:
        raise Say(reply(_("A drink from 1 ml to 5 l, please, such as 90 ml.")))
    return Serving(tuple(lines), glass)


def _served(turn: Turn, given: Given, named: Named, amount: Span | Amount | None) -> Served:
    view = accept_formula(turn, given, named)
    if isinstance(amount, Span):
        return Served(view.id, accept_sprays(turn, given, amount), None)
    if amount is None:
        raise Say(reply(_("How much {name} goes into a drink?").format(name=view.name)))
    ml = quantity_in_ml(turn, amount)
    if not 0 < ml <= menu.MOST_ML:
        raise Say(reply(_("Above 0 and up to 1000 ml, please.")))
    return Served(view.id, None, ml)


def _serve(turn: Turn, arguments: ServeArguments) -> Reply:
    said = arguments.serving
    drink = menu.serve(turn.context, arguments.drink_name, said.glass_ml, said.lines)
    return spec_reply(turn, spec(turn.context, drink), undo_button(turn))


def _accept_drink(turn: Turn, given: Given, value: Named) -> MenuDrinkView:
    text = value.text if isinstance(value, Unknown) else ""
    noun = value if isinstance(value, Noun) else turn.vocabulary.named(text, "DRINK")
    if isinstance(value, Hash):
        return menu.served(turn.context, value.id)
    if noun is None or noun.kind != "DRINK":
        raise Say(turn.not_known(Unknown(text or getattr(value, "name", "")), "DRINK", _("drink")))
    return menu.served(turn.context, int(noun.id))


def _ask_drink(turn: Turn, given: Given) -> Question:
    known = menu.listed(turn.context)
    if not known:
        raise Say(_nothing_yet())
    return Question(_("Which drink?"), columns([(one.name, f"#{one.id}") for one in known[:12]], 2), hint="")


def _nothing_yet() -> Reply:
    return reply(
        _("No drinks are on the list yet."),
        _("Put one on it: serve negroni: 2 orange mist, 90 ml"),
        buttons=((Button(_("Add a drink"), "serve"),),),
    )


def _menu(turn: Turn, arguments: MenuArguments) -> Reply:
    if arguments.menu_drink is not None:
        return spec_reply(turn, spec(turn.context, arguments.menu_drink))
    known = menu.listed(turn.context)
    if not known:
        return _nothing_yet()
    shown = known[:_MOST_SHOWN]
    first = ngettext("{count} drink on the list", "{count} drinks on the list", len(known))
    lines = [f"{one.name}: {served_words(one, turn.context.bar.units)}" for one in shown]
    blocks: list[Block] = [Text(first.format(count=len(known)), strong=True), Text("\n".join(lines))]
    blocks += [Text(line) for line in asked_lines([spec(turn.context, one) for one in shown])]
    blocks.append(Caution(_("Ask every guest about allergies and medicines, and tell them what is in it.")))
    buttons = [Button(one.name, f"menu #{one.id}") for one in shown]
    rows = [tuple(buttons[at : at + 2]) for at in range(0, len(buttons), 2)]
    return Reply(tuple(blocks), (*rows, (Button(_("Add a drink"), "serve"),)))


@dataclass(frozen=True, kw_only=True)
class OffMenuArguments(Arguments):
    """A drink to take off the list."""

    menu_drink: MenuDrinkView


def _off(turn: Turn, arguments: OffMenuArguments) -> Reply:
    drink = menu.take_off(turn.context, arguments.menu_drink.id)
    first = _("{name} is off the list. Its counts stay.").format(name=drink.name)
    row = (Button(_("Drink list"), "menu"), undo_button(turn))
    return reply(first, buttons=(row,), edits=turn.message.tapped is not None)


COMMANDS = (
    Command(
        "serve",
        N_("put a drink on the list, with its spec card"),
        _serve,
        words=("add drink", "new drink", "spec card", "put on the menu", "cocktail"),
        examples=(N_("serve negroni: 2 orange mist, 90 ml"),),
        slots=(
            Slot("drink_name", _accept_name, _ask_name),
            Slot("serving", _accept_serving, _ask_serving),
        ),
        writes=True,
        manages=True,
        menu=57,
        wishes=(Wish("serve"),),
    ),
    Command(
        "menu",
        N_("the drinks on the list, and who must be asked"),
        _menu,
        words=("drink list", "drinks list", "the menu", "show menu", "cocktail list"),
        examples=(N_("menu"), N_("menu negroni")),
        slots=(Slot("menu_drink", _accept_drink),),
        menu=58,
        wishes=(Wish("menu", ("{drink?}",)),),
    ),
    Command(
        "off menu",
        N_("take a drink off the list"),
        _off,
        words=("take off the menu", "off the menu", "remove from menu", "remove drink"),
        slots=(Slot("menu_drink", _accept_drink, _ask_drink),),
        writes=True,
        manages=True,
        wishes=(Wish("off menu", ("{drink?}",)),),
    ),
)

LOG_WORDS = (
    LogWords("serve", N_("put {name} on the drink list"), N_("{name} on the drink list")),
    LogWords("off menu", N_("took {name} off the drink list"), N_("{name} off the drink list")),
)
