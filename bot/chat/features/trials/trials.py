"""Commands for trials: try a variant of a formula, list trials, make the bottles, end a trial."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.inputs.naming import cancel_button, what_is
from bot.chat.dialogue.inputs.settling import SURE, settle_line
from bot.chat.dialogue.inputs.shared_slots import FORMULA_SLOT, quantity_in_ml, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.formulas.drafting import FormulaLines, apply_details, draft_line
from bot.chat.features.trials.trial_card import card, ways
from bot.chat.features.trials.trial_words import amounts, size_of_each, title
from bot.chat.features.trials.triangle_words import begin_triangle, only_scored
from bot.chat.grammar.syntax import Amount, Detail, IngredientLine
from bot.chat.i18n.language import _, ngettext
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_quantity, sizes_offered
from bot.trade.words import N_
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.formulas import Draft, DraftLine, FormulaView
from bot.work.trials import trial_life, trials
from bot.work.trials.trials import TrialKind, TrialView

# -- choosing a trial ----------------------------------------------------------------------


def none_goes_on(turn: Turn) -> Reply:
    """Say that no trial is running, and how to start one."""
    return reply(
        _("No trial is running."),
        example_of(turn, _("Begin one: trial grapefruit mist")),
        buttons=((Button(_("Begin a trial"), "trial"),),),
    )


def ask_trial(turn: Turn, given: Given) -> Question:
    """Ask for one of the running trials."""
    known = trials.listed(turn.context)
    if not known:
        raise Say(none_goes_on(turn))
    return which_trial(known)


def which_trial(known: Sequence[TrialView]) -> Question:
    """Ask for one of these trials."""
    return Question(_("Which trial?"), columns([(title(one), str(one.id)) for one in known[:8]], 1))


def accept_trial(turn: Turn, given: Given, value: Fraction) -> TrialView:
    """Turn a number into the trial."""
    return trials.get(turn.context, int(value))


def _accept_scored(turn: Turn, given: Given, value: Fraction) -> TrialView:
    trial = accept_trial(turn, given, value)
    only_scored(trial)
    return trial


NUMBER_SLOT = Slot("trial_number", accept_trial, ask_trial)
_SCORED_SLOT = replace(NUMBER_SLOT, accept=_accept_scored)
FRESH_SLOT = Slot("fresh", said)


# -- start ---------------------------------------------------------------------------------


def _ask_variant(turn: Turn, given: Given) -> Question:
    view = given[FORMULA_SLOT] if FORMULA_SLOT in given else given[NUMBER_SLOT].formula
    shown = tuple((line.ingredient.name, show_quantity(line.quantity)) for line in view.lines)
    return Question(
        example_of(
            turn, _("What changes in the variant of {name}? Such as: grapefruit oil 14 ml"), view
        ).format(name=view.name),
        blocks=(Grid(shown),),
        hint=example_of(turn, _("grapefruit oil 14 ml"), view),
    )


def _accept_variant(turn: Turn, given: Given, value: object) -> FormulaLines:
    lines: list[DraftLine | Detail] = []
    for part in value if isinstance(value, tuple) else (value,):
        if isinstance(part, IngredientLine):
            lines.append(draft_line(turn, part))
        elif isinstance(part, Detail) and part.what == "remove":
            lines.append(part)
        else:
            raise Say(
                reply(
                    example_of(
                        turn,
                        _("A variant changes ingredients: grapefruit oil 14 ml, or: without water"),
                    ),
                    _("Change rest and sprays in the formula itself."),
                )
            )
    for line in lines:
        if isinstance(line, DraftLine) and isinstance(line.ingredient, str):
            raise what_is(turn, line.ingredient, fruit=False)
    return tuple(lines)


def _ask_size(turn: Turn, given: Given) -> Question:
    units = turn.context.bar.units
    sizes = ["20 ml", "50 ml", "100 ml"] if units == "metric" else ["1 oz", "2 oz", "4 oz"]
    return Question(_("How much of each?"), columns(sizes_offered(sizes, units), 3), hint=sizes[1])


def _accept_size(turn: Turn, given: Given, value: Amount) -> Fraction:
    return quantity_in_ml(turn, value)


def _ask_blind(turn: Turn, given: Given) -> Question:
    return Question(
        _("Tasted blind? Then the bottles carry letters in random order."),
        (((_("Blind"), "yes"), (_("Open"), "no")),),
        hint=_("blind"),
    )


def _accept_blind(turn: Turn, given: Given, value: object) -> str:
    return "no" if value == "no" else "yes"


def _going_on(turn: Turn, view: FormulaView | None) -> TrialView | None:
    return None if view is None else trials.open_of(turn.context, view.id)


def _new(turn: Turn, given: Given) -> bool:
    if NUMBER_SLOT in given or FRESH_SLOT in given:
        return False
    return _going_on(turn, given.get(FORMULA_SLOT)) is None


@dataclass(frozen=True, kw_only=True)
class TrialArguments(Arguments):
    """A trial to show; or a formula, with its first variant, or `fresh` to set it against fresh fruit."""

    trial_number: TrialView | None = None
    formula: FormulaView | None = None
    lines: FormulaLines = ()
    amount: Fraction | None = None
    blind: str = "no"
    fresh: bool = False


@dataclass(frozen=True, kw_only=True)
class TrialsArguments(Arguments):
    """A trial, or None for all running trials."""

    trial_number: TrialView | None = None


@dataclass(frozen=True, kw_only=True)
class OneTrialArguments(Arguments):
    """A trial."""

    trial_number: TrialView


@dataclass(frozen=True, kw_only=True)
class AddArguments(OneTrialArguments):
    """A trial, and the changes of its next variant."""

    lines: FormulaLines


VARIANT_SLOT = Slot("lines", _accept_variant, _ask_variant, _new)
SIZE_SLOT = Slot("amount", _accept_size, _ask_size, _new)


def begin_or_show(turn: Turn, arguments: TrialArguments) -> Reply:
    """Begin a trial, add a variant to the running one, or show it."""
    if arguments.trial_number is not None:
        return card(turn, arguments.trial_number)
    view, lines, size = arguments.formula, arguments.lines, arguments.amount
    if view is not None and arguments.fresh:
        running = trials.open_of(turn.context, view.id, TrialKind.TRIANGLE)
        return begin_triangle(turn, view) if running is None else card(turn, running)
    going_on = _going_on(turn, view)
    if going_on is not None:
        return _add_to(turn, going_on, lines) if lines else card(turn, going_on)
    if view is None or size is None:
        raise ValueError("a new trial has a formula and a size")
    draft, changed = _draft(turn, view, lines)
    made = trial_life.start(turn.context, view.id, draft.lines, changed, size, arguments.blind == "yes")
    return _begun(turn, made, _("Trial {number} of {name} begins.").format(number=made.id, name=view.name))


def _draft(turn: Turn, view: FormulaView, lines: FormulaLines) -> tuple[Draft, str]:
    draft = apply_details(turn, formulas.draft_of(view), lines)
    words = []
    for line in lines:
        if isinstance(line, DraftLine):
            words.append(f"{_name_of(view, turn, line)} {show_quantity(line.quantity)}")
        else:
            noun = turn.noun(line.value, "INGREDIENT", _("ingredient"))  # type: ignore[arg-type]
            words.append(_("without {name}").format(name=noun.name))
    return draft, ", ".join(words)


def _name_of(view: FormulaView, turn: Turn, line: DraftLine) -> str:
    if isinstance(line.ingredient, str):
        return line.ingredient
    return ingredients.get(turn.context, line.ingredient).name


def _begun(turn: Turn, made: TrialView, first: str) -> Reply:
    blocks: list[Block] = [Text(first, strong=True)]
    if made.hidden:
        blocks.append(Text(_("Whoever fills them checks the letters; tasters don't.")))
    else:
        blocks += amounts(turn, made)
    changes = "\n".join(_changes(made))
    blocks.append(Text(_("Against the formula: {changes}").format(changes=changes)))
    if made.hidden:
        blocks.append(size_of_each(turn, made))
    return Reply(tuple(blocks), (*ways(turn, made), (undo_button(turn),)))


def _changes(trial: TrialView) -> list[str]:
    """Return the change of each variant: with its letter, or in the order in which they were added."""
    changed = [one for one in trial.variants if one.changed]
    if trial.hidden:
        return [one.changed for one in sorted(changed, key=lambda one: one.number)]
    return [f"{one.code}: {one.changed}" for one in changed]


def _add(turn: Turn, arguments: AddArguments) -> Reply:
    return _add_to(turn, arguments.trial_number, arguments.lines)


def _add_to(turn: Turn, going_on: TrialView, lines: FormulaLines) -> Reply:
    draft, changed = _draft(turn, going_on.formula, lines)
    made = trial_life.add(turn.context, going_on.id, draft.lines, changed)
    first = _("Trial {number} has {count} variants now.").format(number=made.id, count=len(made.variants))
    return _begun(turn, made, first)


# -- list, key, bottles, end --------------------------------------------------------------


def _list(turn: Turn, arguments: TrialsArguments) -> Reply:
    if arguments.trial_number is not None:
        return card(turn, arguments.trial_number)
    known = trials.listed(turn.context)
    if not known:
        past = trials.listed(turn.context, everything=True)
        return reply(
            _("No trial is running."),
            example_of(turn, _("Begin one: trial grapefruit mist")),
            buttons=tuple((Button(title(one), f"trials {one.id}"),) for one in past[:4]),
        )
    first = ngettext("{count} trial running", "{count} trials running", len(known)).format(count=len(known))
    return Reply(
        (Text(first, strong=True),), tuple((Button(title(one), f"trials {one.id}"),) for one in known[:8])
    )


def _ask_before_looking(turn: Turn, trial: TrialView) -> None:
    """Ask a taster whether to see the letters, which takes their scores out of the results. Raises Say."""
    person = turn.context.person_id
    if turn.sure or not trial.hidden or person in trial.looked or not trial.tasted_by(person):
        return
    yes = Button(_("Show me"), settle_line(SURE, f"trial key {trial.id}"))
    text = _("If you look up the letters of trial {number}, your scores don't count.")
    raise Say(reply(text.format(number=trial.id), buttons=((yes, cancel_button()),)))


def _key(turn: Turn, arguments: OneTrialArguments) -> Reply:
    _ask_before_looking(turn, arguments.trial_number)
    trial = trial_life.look_up(turn.context, arguments.trial_number.id)
    base = next(one for one in trial.variants if one.number == trials.BASE)
    changes = "\n".join(f"{one.code}: {one.changed}" for one in trial.variants if one.changed)
    return reply(
        title(trial),
        _("{code} is the formula as in the book.").format(code=base.code),
        *amounts(turn, trial),
        _("Changed in the formula:\n{changes}").format(changes=changes),
        *([_("Logged that you looked: you can't score it until it ends.")] if trial.hidden else []),
        buttons=ways(turn, trial),
    )


def _made(turn: Turn, arguments: OneTrialArguments) -> Reply:
    before = {one.batch_id for one in arguments.trial_number.variants}
    trial = trial_life.make(turn.context, arguments.trial_number.id)
    new = [one for one in trial.variants if one.batch_id not in before]
    if not new:
        return reply(_("Every variant has its batch already."), buttons=ways(turn, trial))
    lines = "\n".join(_("{code}: batch {number}").format(code=one.code, number=one.batch_id) for one in new)
    first = ngettext("{count} small batch is logged.", "{count} small batches are logged.", len(new))
    return reply(first.format(count=len(new)), lines, buttons=(*ways(turn, trial), (undo_button(turn),)))


def _close(turn: Turn, arguments: OneTrialArguments) -> Reply:
    trial = trial_life.close(turn.context, arguments.trial_number.id)
    shown = card(turn, trial)
    return Reply(shown.blocks, (*shown.buttons, (undo_button(turn),)), edits=turn.message.tapped is not None)


COMMANDS = (
    Command(
        "trial",
        N_("try a variant of a formula and taste it"),
        begin_or_show,
        words=("try", "trial of"),
        examples=(
            N_("trial grapefruit mist"),
            N_("trial grapefruit mist 50 ml blind: grapefruit oil 14 ml"),
            N_("trial grapefruit mist against fresh"),
        ),
        slots=(
            replace(NUMBER_SLOT, ask=None),
            replace(FORMULA_SLOT, wanted=lambda turn, given: NUMBER_SLOT not in given),
            FRESH_SLOT,
            VARIANT_SLOT,
            SIZE_SLOT,
            Slot("blind", _accept_blind, _ask_blind, _new, rule="grade_slot"),
        ),
        writes=True,
        menu=46,
        wishes=(Wish("trial", ("{formula?}",)), Wish("triangle", ("{formula} FRESH",))),
    ),
    Command(
        "trials",
        N_("the trials now running"),
        _list,
        slots=(replace(NUMBER_SLOT, ask=None),),
    ),
    Command(
        "trial add",
        N_("add a variant to a trial"),
        _add,
        slots=(_SCORED_SLOT, Slot("lines", _accept_variant, _ask_variant)),
        writes=True,
    ),
    Command(
        "trial key",
        N_("which letter is which"),
        _key,
        slots=(_SCORED_SLOT,),
        writes=True,
        private_only=True,
    ),
    Command("trial made", N_("log a trial's small batches"), _made, slots=(_SCORED_SLOT,), writes=True),
    Command("trial close", N_("end a trial"), _close, slots=(NUMBER_SLOT,), writes=True),
)

LOG_WORDS = (
    LogWords("trial", N_("began trial {trial}, {name}"), N_("trial {trial}, {name}")),
    LogWords(
        "trial variant",
        N_("added a variant to trial {trial}"),
        N_("new variant in trial {trial}"),
    ),
    LogWords(
        "trial batches",
        N_("made the small batches of trial {trial}"),
        N_("small batches of trial {trial}"),
    ),
    LogWords("trial key", N_("opened the key of trial {trial}")),
    LogWords("close trial", N_("closed trial {trial}"), N_("end of trial {trial}")),
    LogWords(
        "promote",
        N_("promoted a variant of {name}"),
        N_("new version of {name} from trial {trial}"),
    ),
)
