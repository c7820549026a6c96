"""Commands to write and change a formula: the typed lines, and the draft made from them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.inputs.names import short_name, spelt_alike
from bot.chat.dialogue.inputs.naming import what_is
from bot.chat.dialogue.inputs.settling import SURE, settle_line
from bot.chat.dialogue.inputs.shared_slots import ASKED_FORMULA_SLOT, FORMULA_SLOT, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.formulas.confirming import confirm_strengths
from bot.chat.features.formulas.drafting import FormulaLines, accept_lines, apply_details, garnish_of
from bot.chat.features.formulas.formula_card import card, kind_name
from bot.chat.features.formulas.recipe_words import stop_at_amounts
from bot.chat.features.formulas.scale import line_texts
from bot.chat.features.safety.grade_questions import confirm_graded, grade_notes
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.recipe_text import in_shares, kind_in, left_out
from bot.chat.grammar.syntax import (
    Detail,
    Duration,
    Hash,
    Span,
    Unknown,
)
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import Block, Reply, Text, reply
from bot.chat.reply.units import show_hours, show_percent, show_quantity
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, Preparation, is_fruit_name
from bot.trade.words import N_
from bot.work.errors import AlreadyThereError
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.formulas import Draft, DraftLine, FormulaView
from bot.work.log.chain import State

_SPRAYED = (N_("oranges"), N_("lemons"), N_("limes"), N_("grapefruits"))

# -- writing -------------------------------------------------------------------------------


def _ask_name(turn: Turn, given: Given) -> Question:
    return Question(_("What is it called?"), hint=_("Grapefruit mist"))


def _accept_name(turn: Turn, given: Given, value: str) -> str:
    stop_at_amounts(turn, value)
    clean = short_name(value)
    for one in formulas.listed(turn.context, archived=True):
        if one.name.casefold() == clean.casefold():
            raise AlreadyThereError("formula", one.name, one.archived)
    return clean


def _ask_kind(turn: Turn, given: Given) -> Question:
    choices = [(kind_name(one), one.value) for one in Preparation]
    return Question(_("What kind is it?"), columns(choices, 2), hint=_("A kind"))


def _ask_lines(turn: Turn, given: Given) -> Question:
    known = given.get(_LINES) or ()
    shown: tuple[Block, ...] = ()
    text = example_of(turn, _("Type the ingredients, a line each: lime oil 10 ml"))
    if known:
        shown = (Text("\n".join(_shown_line(turn, line) for line in known)), *_spelling_notes(turn, known))
        text = _("More ingredients? Tap Done when it is complete.")
    return Question(text, blocks=shown, hint=_("neutral spirit 96 % 60 ml"))


def _shown_line(turn: Turn, line: DraftLine | Detail) -> str:
    if isinstance(line, Detail):
        named = getattr(line.value, "name", getattr(line.value, "text", ""))
        return f"· {_(line.what)} {named}".rstrip()
    name = line.ingredient
    if not isinstance(name, str):
        name = ingredients.get(turn.context, name).name
    if line.strength_percent is not None:
        name = f"{name} {show_number(line.strength_percent)} %"
    if isinstance(line.ingredient, str):
        name = _("{name} (new)").format(name=name)
    return f"· {name} {show_quantity(line.quantity)}"


def _spelling_notes(turn: Turn, lines: Iterable[DraftLine | Detail]) -> list[Text]:
    """Name new ingredients with a spelling close to a known one: a typing mistake would create a second."""
    notes = []
    for line in lines:
        if not isinstance(line, DraftLine) or not isinstance(line.ingredient, str):
            continue
        near = turn.near(line.ingredient, "INGREDIENT")
        alike = next((one for one in near if spelt_alike(one, line.ingredient)), None)
        if alike is not None:
            text = _("{name} is new here, spelt almost like {known}.")
            notes.append(Text(text.format(name=line.ingredient, known=alike)))
    return notes


def _reading_notes(said: str) -> list[Text]:
    """Say what was left out of typed lines, and how shares of the whole were taken."""
    notes = [_("Shares by volume, written down for 100 ml.")] if in_shares(said) else []
    if remarks := left_out(said):
        notes.append(_("Not kept: {remarks}").format(remarks=", ".join(remarks)))
    return [Text(one) for one in notes]


def _said(given: Given, what: str) -> bool:
    return any(isinstance(line, Detail) and line.what == what for line in given.get(_LINES) or ())


def _preparation(given: Given) -> Preparation:
    return _kind_of(given.get(_LINES) or (), given.get(_KIND) or kind_in(given.get(NAME_SLOT) or ""))


def _kind_of(lines: FormulaLines, otherwise: Preparation | None) -> Preparation:
    for line in lines:
        if isinstance(line, Detail) and line.what == "kind" and isinstance(line.value, Noun):
            return Preparation(line.value.id)
    return otherwise or Preparation.OTHER


def _wants_kind(turn: Turn, given: Given) -> bool:
    return not _said(given, "kind") and kind_in(given.get(NAME_SLOT) or "") is None


def _ask_rest(turn: Turn, given: Given) -> Question:
    usual = PREPARATION_DEFAULTS[_preparation(given)].rest_hours
    hours = [usual, *(one for one in (0, 24, 48) if one != usual)]
    choices = [(show_hours(Fraction(one)), f"{one} h") for one in hours]
    return Question(_("How long does it rest before use?"), columns(choices, 2), hint="24 h")


def _ask_discard(turn: Turn, given: Given) -> Question:
    usual = PREPARATION_DEFAULTS[_preparation(given)].discard_days
    days = [usual, *(one for one in (7, 30, 180) if one != usual)]
    choices = [
        (ngettext("{count} day", "{count} days", one).format(count=one), f"{one} days") for one in days
    ]
    return Question(_("How long does it keep?"), columns(choices, 2), hint=_("30 days"))


def _ask_sprays(turn: Turn, given: Given) -> Question:
    return Question(
        _("How many sprays per drink?"),
        columns([("1", "1"), ("2", "2"), ("2-3", "2-3"), ("3", "3")], 4),
    )


def _guided_without(what: str) -> Callable[[Turn, Given], bool]:
    def wanted(turn: Turn, given: Given) -> bool:
        return given.guided and not _said(given, what)

    return wanted


def _wants_sprays(turn: Turn, given: Given) -> bool:
    return given.guided and _preparation(given) is Preparation.AROMA_MIST and not _said(given, "sprays")


def _wants_replaced(turn: Turn, given: Given) -> bool:
    return given.guided and _preparation(given) is Preparation.AROMA_MIST and not _said(given, "replaces")


def _ask_replaced(turn: Turn, given: Given) -> Question:
    words = (given.get(NAME_SLOT) or "").casefold()
    fruits = [_(one) for one in _SPRAYED]
    likely = [one for one in fruits if singular(one) in words] or fruits
    return Question(
        _("Which fruit's peel does it stand in for?"),
        (*columns([(one, one) for one in likely], 2), ((_("None"), "none"),)),
        hint=_("A fruit"),
    )


def _is_new_here(turn: Turn, name: str) -> bool:
    """Whether a name is neither known in the bar nor that of an ordinary fruit."""
    return turn.vocabulary.named(name, "INGREDIENT") is None and not is_fruit_name(singular(name))


def _accept_replaced(turn: Turn, given: Given, value: object) -> int | str:
    if given.guided and isinstance(value, Unknown) and _is_new_here(turn, value.text):
        raise what_is(turn, value.text, fruit=True)
    return garnish_of(turn, value) if isinstance(value, Noun | Hash | Unknown) else ""


def _accept_preparation(turn: Turn, given: Given, value: Noun) -> Preparation:
    return Preparation(value.id)


@dataclass(frozen=True, kw_only=True)
class NewArguments(Arguments):
    """A new formula: its name, its lines, and its properties."""

    new_name: str
    lines: FormulaLines
    preparation: Preparation | None = None
    rest: Duration | None = None
    discard: Duration | None = None
    sprays: Span | None = None
    replaced: int | str = ""


@dataclass(frozen=True, kw_only=True)
class ChangeArguments(Arguments):
    """A formula, and the lines that change it."""

    formula: FormulaView
    lines: FormulaLines


def _new(turn: Turn, arguments: NewArguments) -> Reply:
    lines = arguments.lines
    kind = arguments.preparation or kind_in(arguments.new_name)
    draft = apply_details(turn, Draft(_kind_of(lines, kind), ()), lines)
    if arguments.rest is not None:
        draft = replace(draft, rest_hours=arguments.rest.hours)
    if arguments.discard is not None:
        draft = replace(draft, discard_days=max(1, round(arguments.discard.hours / 24)))
    if arguments.sprays is not None:
        draft = replace(draft, sprays=(arguments.sprays.low, arguments.sprays.high))
    if arguments.replaced:
        draft = replace(draft, garnish=arguments.replaced)
    if not draft.lines:
        raise Say(
            reply(example_of(turn, _("A formula needs at least one ingredient, such as: lime oil 10 ml")))
        )
    confirm_strengths(turn, _new_line(turn, arguments), draft)
    confirm_graded(turn, lines)
    spelling = [*_spelling_notes(turn, lines), *_reading_notes(_lines_said(turn, arguments))]
    view = formulas.add(turn.context, arguments.new_name, draft)
    return _written(turn, view, _("{name} is in the book.").format(name=view.name), spelling)


def _lines_said(turn: Turn, arguments: Arguments) -> str:
    """Return the typed lines, as answered or in one message."""
    return arguments.words["lines"] if arguments.guided else re.split(r"[:\n]", turn.line, maxsplit=1)[-1]


def _new_line(turn: Turn, arguments: NewArguments) -> str:
    """Return the line that says a new formula at once, also where it was said in answers."""
    if not arguments.guided:
        return turn.line
    words = arguments.words
    said = [f"new formula {words['new_name']}", words["lines"]]
    said += [f"{slot} {words[slot]}" for slot in ("rest", "discard", "sprays") if slot in words]
    if arguments.replaced and words.get("replaced"):
        said.append(f"replaces {words['replaced']}")
    if arguments.preparation is not None:
        said.append(f"kind {arguments.preparation.value}")
    return settle_line(SURE, "\n".join(said))  # each line was seen with its mark of being new


def _written(turn: Turn, view: FormulaView, first: str, spelling: list[Text]) -> Reply:
    shown = card(turn, view, written=True)
    notes: list[Block] = [*spelling, *grade_notes(view)]
    for line in view.lines:
        if line.ingredient.kind.value == "spirit" and line.ingredient.strength_percent is None:
            notes.append(
                Text(_("How strong is {name}? Say: strength {name} 96").format(name=line.ingredient.name))
            )
    return Reply(
        (Text(first, strong=True), *shown.blocks, *notes),
        (*shown.buttons, (undo_button(turn),)),
    )


# -- changing ------------------------------------------------------------------------------


def _ask_changes(turn: Turn, given: Given) -> Question:
    view = given[FORMULA_SLOT]
    return Question(
        example_of(
            turn,
            _("What changes in {name}? A line each: lime oil 12 ml, remove water, rest 24 h, sprays 2-3"),
            view,
        ).format(name=view.name),
        blocks=(line_texts(view, turn.context.bar.units),),
        hint=example_of(turn, _("lime oil 12 ml"), view),
    )


def _change(turn: Turn, arguments: ChangeArguments) -> Reply:
    view, lines = arguments.formula, arguments.lines
    draft = apply_details(turn, formulas.draft_of(view), lines)
    if not draft.lines:
        raise Say(reply(_("A formula needs at least one ingredient.")))
    whole = f"change {view.name}\n{arguments.words['lines']}"
    said = settle_line(SURE, whole) if arguments.guided else turn.line
    confirm_strengths(turn, said, draft)
    confirm_graded(turn, lines)
    spelling = [*_spelling_notes(turn, lines), *_reading_notes(_lines_said(turn, arguments))]
    changed = formulas.change(turn.context, view.id, draft)
    first = _("{name} is now version {version}. Batches keep the version they were made with.").format(
        name=changed.name, version=changed.version
    )
    return _written(turn, changed, first, spelling)


_LINES = Slot("lines", accept_lines, _ask_lines, many=True)
_KIND = Slot("preparation", _accept_preparation, _ask_kind, _wants_kind)
NAME_SLOT = Slot("new_name", _accept_name, _ask_name)
_NEW_EXAMPLES = (
    N_("new formula Lime tincture\nlime oil 10 ml\nneutral spirit 96 % 90 ml\nkind tincture\nrest 14 days"),
)

COMMANDS = (
    Command(
        "new",
        N_("write a new formula down"),
        _new,
        words=("new formula", "add formula", "new recipe", "new spec"),
        examples=_NEW_EXAMPLES,
        slots=(
            NAME_SLOT,
            _LINES,
            _KIND,
            Slot("rest", plain(Duration), _ask_rest, _guided_without("rest")),
            Slot("discard", plain(Duration), _ask_discard, _guided_without("discard")),
            Slot("sprays", plain(Span), _ask_sprays, _wants_sprays),
            Slot("replaced", _accept_replaced, _ask_replaced, _wants_replaced),
        ),
        writes=True,
        manages=True,
        menu=42,
    ),
    Command(
        "change",
        N_("change a formula: a new version"),
        _change,
        words=("change formula", "edit formula"),
        examples=(N_("change grapefruit mist: grapefruit oil 14 ml"),),
        slots=(ASKED_FORMULA_SLOT, Slot("lines", accept_lines, _ask_changes)),
        writes=True,
        manages=True,
        wishes=(Wish("change", ("{formula?}: {ingredient} {amount}", "{formula?}")),),
    ),
)


def _strengths_now(turn: Turn, found: State) -> list[str]:
    """Say the strengths after an undo of a formula that had changed them."""
    changed = found.details.get("strengths", {}).get("before", {})
    known = [ingredients.get(turn.context, int(number)) for number in changed]
    return [
        f"{one.name}: {show_percent(float(one.strength_percent))}"
        for one in known
        if one.strength_percent is not None
    ]


LOG_WORDS = (
    LogWords("formula", N_("wrote down {name}"), N_("new formula {name}"), now=_strengths_now),
    LogWords("change formula", N_("changed {name}"), N_("change of {name}"), now=_strengths_now),
)
