"""Names: what else the bar calls a thing, two things that are one, and lines settled by a tap."""

from __future__ import annotations

from dataclasses import dataclass, replace

from bot.chat.dialogue import filling, state
from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.names import named_ingredient
from bot.chat.dialogue.inputs.settling import NOTHING, SETTLE, said_after, settle
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.registry import command_at_start
from bot.chat.dialogue.rights import barred
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar import parser
from bot.chat.grammar.syntax import Named, Unknown
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.trade.words import N_
from bot.work.formulas import ingredients, merging, other_names
from bot.work.formulas.ingredients import IngredientView
from bot.work.log.chain import State

_MOST_SHOWN = 12


# -- a line settled by a tap ---------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class SettleArguments(Arguments):
    """What is settled, and the line to run after that."""

    settled: str = ""


def _settle(turn: Turn, arguments: SettleArguments) -> Reply | list[Reply]:
    if arguments.settled.strip() == NOTHING:
        cancelled = reply(_("Cancelled. Nothing was logged."))
        return replace(cancelled, edits=turn.message.tapped is not None)
    whole = f"{SETTLE} {arguments.settled}"
    found = command_at_start(said_after(whole))
    if found is None:
        raise Say(reply(_("That button is old.")))
    refused = barred(turn, found[0])
    if refused is not None:
        return refused
    _drop_same(turn, found[0])
    command, rest = command_at_start(settle(turn, whole)) or found
    turn.line = whole
    given = Given.of(parser.read(command.rule, rest.strip(), turn.vocabulary))
    answer = filling.start(turn, command, given)
    # The tapped question becomes its answer, so that it cannot be answered twice.
    edits = turn.message.tapped is not None
    if isinstance(answer, Reply):
        return replace(answer, edits=edits)
    return [replace(answer[0], edits=edits), *answer[1:]]


def _drop_same(turn: Turn, command: Command) -> None:
    """End the dialogue whose last answer led to this line: what it asked for is said whole now."""
    dialogue = None if turn.pending is None else turn.pending.dialogue
    if dialogue is not None and dialogue.command == command.name:
        state.drop(turn.unit, turn.presence)


# -- other names ---------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class NamesArguments(Arguments):
    """A name to look at, or to forget; without one all are shown."""

    forgetting: bool = False
    called: str = ""


def _names(turn: Turn, arguments: NamesArguments) -> Reply:
    if arguments.forgetting:
        gone = other_names.forget(turn.context, arguments.called)
        first = _("Forgotten: {name} no longer means {known}.")
        return reply(
            first.format(name=gone.name, known=gone.ingredient_name), buttons=((undo_button(turn),),)
        )
    item = named_ingredient(turn, Unknown(arguments.called)) if arguments.called else None
    known = other_names.listed(turn.context, None if item is None else item.id)
    if not known:
        return reply(
            _("No other names are kept."),
            _("They come with your answers: when I ask what a name means, I remember it."),
        )
    rows = tuple((one.name, one.ingredient_name) for one in known)
    buttons = [
        Button(_("Forget {name}").format(name=one.name), f"names forget {one.name}")
        for one in known[:_MOST_SHOWN]
    ]
    title = Text(_("Other names, and what each means here"), strong=True)
    return Reply((title, Grid(rows)), tuple((one,) for one in buttons))


# -- two that are one ----------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class MergeArguments(Arguments):
    """The ingredient that goes, and the one that stays."""

    merged: IngredientView
    into: IngredientView


def _accept(turn: Turn, given: Given, value: Named) -> IngredientView:
    return named_ingredient(turn, value)


def _choices(turn: Turn) -> tuple[tuple[tuple[str, str], ...], ...]:
    known = [(one.name, f"#{one.id}") for one in ingredients.all_of(turn.context)]
    return columns(known[:_MOST_SHOWN], 2)


def _ask_merged(turn: Turn, given: Given) -> Question:
    return Question(_("Which name goes?"), _choices(turn), hint=_("Ingredient"))


def _ask_into(turn: Turn, given: Given) -> Question:
    return Question(_("And which one stays?"), _choices(turn), hint=_("Ingredient"))


def _merge(turn: Turn, arguments: MergeArguments) -> Reply:
    gone, stays = arguments.merged, arguments.into
    if gone.id == stays.id:
        raise Say(reply(_("Those are one already: {name}.").format(name=stays.name)))
    merging.merge(turn.context, gone.id, stays.id)
    stock = Button(_("Stock of {name}").format(name=stays.name), f"stock #{stays.id}")
    return reply(
        _("{name} is now {known}.").format(name=gone.name, known=stays.name),
        _("Its waste, prices, deliveries, counts, formulas and batches went with it."),
        buttons=((undo_button(turn), stock),),
    )


_MERGED = Slot("merged", _accept, _ask_merged)
_INTO = Slot("into", _accept, _ask_into)

COMMANDS = (
    Command(
        SETTLE,
        N_("say what a name or an amount means, and run the line"),
        _settle,
        slots=(Slot("settled", plain(str)),),
        writes=True,
    ),
    Command(
        "names",
        N_("other names of your ingredients; forget one"),
        _names,
        words=("other names", "aliases"),
        examples=(N_("names"),),
        slots=(Slot("forgetting", said), Slot("called", plain(str))),
        writes=True,
    ),
    Command(
        "merge",
        N_("make one of two ingredients that are the same"),
        _merge,
        examples=(N_("merge pomelo into grapefruit"),),
        slots=(_MERGED, _INTO),
        writes=True,
        manages=True,
    ),
)


def _means_now(turn: Turn, found: State) -> list[str]:
    """Say what a name means after an undo, if anything."""
    called = str(found.details["called"])
    known = ingredients.by_name(turn.context, called)
    return (
        [] if known is None else [_("{called} means {known}").format(called=called, known=known.name) + "."]
    )


LOG_WORDS = (
    LogWords("other name", N_("{called} means {known}"), N_("the name {called}"), now=_means_now),
    LogWords(
        "forget name", N_("forgot the name {called}"), N_("the name {called} forgotten"), now=_means_now
    ),
    LogWords("new ingredient", N_("new: {known}"), N_("{known}, new here")),
    LogWords("merge", N_("{name} became {into_name}"), N_("{name} merged into {into_name}")),
)
