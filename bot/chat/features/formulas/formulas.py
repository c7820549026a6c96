"""Commands for formulas in the book: show, list, rename, archive."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import (
    ASKED_FORMULA_SLOT,
    FORMULA_SLOT,
    MORE_DETAIL_SLOT,
    NUMBER_SLOT,
    no_formulas,
    undo_button,
)
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.formulas.formula_card import card, kind_name
from bot.chat.features.formulas.writing import NAME_SLOT
from bot.chat.grammar.syntax import Named, Unknown
from bot.chat.i18n.language import _, ngettext
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaView

_MOST_LISTED = 30


# -- showing -------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class FormulaArguments(Arguments):
    """A formula."""

    formula: FormulaView


@dataclass(frozen=True, kw_only=True)
class ShowArguments(FormulaArguments):
    """A formula, in one of its versions if a number is given."""

    number: int | None = None
    more_detail: bool = False


@dataclass(frozen=True, kw_only=True)
class RenameArguments(FormulaArguments):
    """A formula and its new name."""

    new_name: str


def _show(turn: Turn, arguments: ShowArguments) -> Reply:
    view = arguments.formula
    if arguments.number is not None:
        view = formulas.get(turn.context, view.id, arguments.number)
    return card(turn, view, arguments.more_detail)


def _list(turn: Turn, arguments: Arguments) -> Reply:
    known = formulas.listed(turn.context)
    if not known:
        return no_formulas()
    rows = tuple(
        (Button(f"{one.name} ({kind_name(one.preparation)})", f"formula #{one.id}"),)
        for one in known[:_MOST_LISTED]
    )
    title = ngettext("{count} formula in the book", "{count} formulas in the book", len(known)).format(
        count=len(known)
    )
    return reply(title, buttons=(*rows, (Button(_("Add a formula"), "new formula"),)))


# -- archiving -----------------------------------------------------------------------------


def _rename(turn: Turn, arguments: RenameArguments) -> Reply:
    name = arguments.new_name
    before = formulas.rename(turn.context, arguments.formula.id, name)
    return reply(
        _("{before} is now called {name}.").format(before=before, name=name),
        buttons=((undo_button(turn),),),
    )


def _archive(turn: Turn, arguments: FormulaArguments) -> Reply:
    view = arguments.formula
    name = formulas.archive(turn.context, view.id)
    return reply(
        _("{name} is put away. Its batches and history stay.").format(name=name),
        buttons=((undo_button(turn), Button(_("Bring back"), f"restore #{view.id}")),),
    )


def _ask_archived(turn: Turn, given: Given) -> Question:
    known = [one for one in formulas.listed(turn.context, archived=True) if one.archived]
    if not known:
        raise Say(reply(_("No formula is put away.")))
    return Question(_("Which one comes back?"), columns([(one.name, f"#{one.id}") for one in known[:12]], 2))


def _accept_archived(turn: Turn, given: Given, value: Named) -> FormulaView:
    if isinstance(value, Unknown):
        for one in formulas.listed(turn.context, archived=True):
            if one.name.casefold() == value.text.casefold():
                return formulas.get(turn.context, one.id)
    return formulas.get(turn.context, int(turn.noun(value, "FORMULA", _("formula")).id))


def _restore(turn: Turn, arguments: FormulaArguments) -> Reply:
    view = arguments.formula
    formulas.archive(turn.context, view.id, away=False)
    return card(turn, formulas.get(turn.context, view.id))


COMMANDS = (
    Command(
        "formulas",
        N_("the formulas in the book"),
        _list,
        words=(
            *("book", "recipes", "specs", "spec list", "show formulas", "list formulas", "all formulas"),
            *("show recipes",),
        ),
        menu=45,
        quick=True,
    ),
    Command(
        "formula",
        N_("show a formula"),
        _show,
        words=(
            *("recipe", "spec", "show", "recipe for", "show recipe for", "formula for", "show me"),
            *("spec for",),
        ),
        examples=(N_("formula grapefruit mist"),),
        slots=(
            FORMULA_SLOT,
            NUMBER_SLOT,
            MORE_DETAIL_SLOT,
        ),
        menu=40,
        quick=True,
        wishes=(Wish("formula", ("{formula?}",)),),
    ),
    Command(
        "rename",
        N_("give a formula another name"),
        _rename,
        words=("rename formula",),
        examples=(N_("rename grapefruit mist to pink mist"),),
        slots=(ASKED_FORMULA_SLOT, NAME_SLOT),
        writes=True,
        manages=True,
        wishes=(Wish("rename", ("{formula?}",)),),
    ),
    Command(
        "archive",
        N_("put a formula away"),
        _archive,
        words=("archive formula", "put away"),
        slots=(ASKED_FORMULA_SLOT,),
        writes=True,
        manages=True,
        wishes=(Wish("archive", ("{formula?}",)),),
    ),
    Command(
        "restore",
        N_("bring a formula back"),
        _restore,
        words=("bring back",),
        slots=(Slot("formula", _accept_archived, _ask_archived),),
        writes=True,
        manages=True,
    ),
)

LOG_WORDS = (
    LogWords("rename formula", N_("renamed {before} to {name}"), N_("{before} renamed to {name}")),
    LogWords("archive formula", N_("put {name} away"), N_("{name} put away")),
    LogWords("restore formula", N_("brought {name} back"), N_("{name} brought back")),
)
