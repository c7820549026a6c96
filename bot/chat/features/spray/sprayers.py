"""Commands for sprayers: show one, choose its use, retire it."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import SAID_FORMULA_SLOT, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.spray import sprayer_words
from bot.chat.grammar.syntax import Hash, Named, Unknown
from bot.chat.i18n.language import _, ngettext
from bot.chat.reply.message import Block, Button, Reply, Text, reply
from bot.trade.words import N_
from bot.work.formulas.formulas import FormulaView
from bot.work.spray import sprayers
from bot.work.spray.sprayers import SprayerView

# -- choosing a sprayer --------------------------------------------------------------------


def accept_sprayer(turn: Turn, given: Given, value: Named) -> SprayerView:
    """Turn a name into the sprayer; suggest near names if there is none."""
    if isinstance(value, Unknown):
        known = turn.vocabulary.named(value.text, "SPRAYER")
        if known is None:
            answer = turn.not_known(value, "SPRAYER", _("sprayer"))
            new = Button(_("Weigh a new one: {name}").format(name=value.text), f"weigh {value.text}")
            raise Say(answer.with_buttons((new,)))
        value = known
    number = value.id if isinstance(value, Hash) else int(value.id)
    return sprayers.get(turn.context, number)


def _ask_sprayer(turn: Turn, given: Given) -> Question:
    known = sprayers.listed(turn.context)
    if not known:
        raise Say(_no_sprayers())
    return Question(_("Which sprayer?"), columns([(one.name, f"#{one.id}") for one in known[:12]], 2))


def _no_sprayers() -> Reply:
    return reply(
        _("No sprayer is weighed yet."),
        _("Fill one and spray 5 or 6 times until it gives its full dose."),
        _("Then weigh it before and after 20 sprays, three times over."),
        buttons=((Button(_("Weigh a sprayer"), "weigh"),),),
    )


# -- showing and use -----------------------------------------------------------------------


def use_buttons(turn: Turn, view: SprayerView, formula: FormulaView | None) -> list[tuple[Button, ...]]:
    """Offer a manager the use of a weighed sprayer, for one formula or for all."""
    if not turn.context.role.manages or view.spray_ml is None:
        return []
    rows: list[tuple[Button, ...]] = []
    if formula is not None and formula.name not in view.formulas:
        label = _("Use it for {name}").format(name=formula.name)
        rows.append((Button(label, f"use #{view.id} for #{formula.id}"),))
    if not view.for_all:
        rows.append((Button(_("Use it for all sprays"), f"use #{view.id} for all"),))
    return rows


@dataclass(frozen=True, kw_only=True)
class PumpArguments(Arguments):
    """A sprayer, or None for all sprayers."""

    sprayer: SprayerView | None = None


@dataclass(frozen=True, kw_only=True)
class UseArguments(Arguments):
    """A sprayer, None for the usual spray size, and its formula, None for all formulas."""

    sprayer: SprayerView | None = None
    nothing: bool = False
    formula: FormulaView | None = None


@dataclass(frozen=True, kw_only=True)
class RetireArguments(Arguments):
    """A sprayer."""

    sprayer: SprayerView


def _pump(turn: Turn, arguments: PumpArguments) -> Reply:
    if arguments.sprayer is not None:
        return _card(turn, arguments.sprayer)
    known = sprayers.listed(turn.context)
    if not known:
        return _no_sprayers()
    title = ngettext("{count} sprayer", "{count} sprayers", len(known)).format(count=len(known))
    lines = [
        f"{one.name}: {sprayer_words.range_words(one)}. {sprayer_words.used_for(one)}" for one in known[:10]
    ]
    rows = [(Button(one.name, f"pump #{one.id}"),) for one in known[:8]]
    return reply(title, *lines, buttons=(*rows, (Button(_("Weigh a sprayer"), "weigh"),)))


def _card(turn: Turn, view: SprayerView) -> Reply:
    blocks: list[Block] = list(sprayer_words.figures(view, None))
    if view.runs:
        blocks.append(Text(sprayer_words.run_lines(view)))
    blocks.append(Text(sprayer_words.used_for(view)))
    rows = [
        (Button(_("Weigh again"), f"weigh #{view.id}"), Button(_("Put away"), f"retire #{view.id}")),
        *use_buttons(turn, view, None),
    ]
    return Reply((Text(sprayer_words.title(view), strong=True), *blocks), tuple(rows))


def _use(turn: Turn, arguments: UseArguments) -> Reply:
    view, formula = arguments.sprayer, arguments.formula
    if view is not None and view.spray_ml is None:
        raise Say(
            reply(
                _("{name} is not weighed yet.").format(name=view.name),
                buttons=((Button(_("Weigh it"), f"weigh #{view.id}"),),),
            )
        )
    sprayers.use(turn.context, None if view is None else view.id, None if formula is None else formula.id)
    what = _("All formulas without a sprayer of their own") if formula is None else formula.name
    if view is None:
        first = _("{what}: back to the bar's usual spray size.").format(what=what)
        return reply(first, buttons=((undo_button(turn),),))
    row = [undo_button(turn)]
    if formula is not None:
        row.insert(0, Button(_("Cost"), f"cost #{formula.id} x1"))
    return reply(
        _("{what}: {spray}, by {name}.").format(
            what=what, spray=sprayer_words.range_words(view), name=view.name
        ),
        _("I'll now use it for drinks a bottle, dose and cost a drink."),
        buttons=(tuple(row),),
    )


def _wants_used(turn: Turn, given: Given) -> bool:
    return _NOTHING not in given


def _retire(turn: Turn, arguments: RetireArguments) -> Reply:
    view = arguments.sprayer
    name = sprayers.retire(turn.context, view.id)
    return reply(
        _("{name} is put away. Its formulas are back to the bar's usual spray size.").format(name=name),
        buttons=((undo_button(turn),),),
    )


_NOTHING = Slot("nothing", said)

COMMANDS = (
    Command(
        "pump",
        N_("what each sprayer gives"),
        _pump,
        words=("pumps", "sprayer", "sprayers"),
        examples=(N_("pump"), N_("weigh blue 152.31 150.55 148.80 20 sprays with grapefruit mist")),
        slots=(Slot("sprayer", accept_sprayer),),
        menu=55,
        wishes=(Wish("pump", ("{sprayer?}",)),),
    ),
    Command(
        "use",
        N_("which sprayer is used for what"),
        _use,
        words=("pump use", "use sprayer", "use pump"),
        examples=(N_("use blue for grapefruit mist"), N_("use none for grapefruit mist")),
        slots=(
            Slot("sprayer", accept_sprayer, _ask_sprayer, _wants_used),
            _NOTHING,
            SAID_FORMULA_SLOT,
        ),
        writes=True,
        manages=True,
    ),
    Command(
        "retire",
        N_("put a sprayer away"),
        _retire,
        words=("pump retire", "retire sprayer", "retire pump"),
        slots=(Slot("sprayer", accept_sprayer, _ask_sprayer),),
        writes=True,
        manages=True,
    ),
)

LOG_WORDS = (
    LogWords("sprayer", N_("named sprayer {name}"), N_("sprayer {name}")),
    LogWords(
        "use sprayer",
        N_("chose the sprayer of {name}"),
        N_("choice of the sprayer of {name}"),
    ),
    LogWords("retire sprayer", N_("put sprayer {name} away"), N_("sprayer {name} put away")),
)
