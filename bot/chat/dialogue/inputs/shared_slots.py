"""Slots that several commands share: formula, target, batch, loss."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from bot.chat.dialogue.slots import Given, Question, Slot, columns, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import (
    Amount,
    BareBottles,
    Bottles,
    Drinks,
    Factor,
    Hash,
    Named,
    Span,
    Stock,
    Target,
    Total,
    Unknown,
)
from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import Button, Reply, reply
from bot.chat.reply.units import sizes_offered
from bot.trade.formulas.amounts import ByBottles, ByDrinks, ByFactor, ByIngredient, ByStock, ByTotal
from bot.trade.formulas.amounts import Target as TradeTarget
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES, IngredientKind
from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.words import N_
from bot.work.batches import batches
from bot.work.batches.batches import BatchState, BatchView
from bot.work.errors import WrongStateError
from bot.work.formulas import formulas, ingredients, scaling
from bot.work.formulas.formulas import FormulaView, in_base
from bot.work.formulas.ingredients import IngredientView
from bot.work.stock import on_hand as stock
from bot.work.trials import blind

_MOST_CHOICES = 12


# -- undo ---------------------------------------------------------------------------------


def undo_button(turn: Turn) -> Button:
    """Return the button that undoes the entry just logged, and no later one."""
    return Button(_("Undo"), f"undo {turn.context.entry}")


def undo_each(entries: list[tuple[str, int]]) -> tuple[tuple[Button, ...], ...]:
    """Return an undo button for each entry of one message: its name and number."""
    buttons = [Button(_("Undo {name}").format(name=name), f"undo {number}") for name, number in entries]
    return tuple(tuple(buttons[at : at + 2]) for at in range(0, len(buttons), 2))


# -- formulas -----------------------------------------------------------------------------


def ask_formula(turn: Turn, given: Given) -> Question:
    """Ask which formula, the bar's own on buttons."""
    known = formulas.listed(turn.context)
    if not known:
        raise Say(no_formulas())
    choices = [(one.name, f"#{one.id}") for one in known[:_MOST_CHOICES]]
    return Question(_("Which formula?"), columns(choices, 2), hint=_("A formula's name"))


def no_formulas() -> Reply:
    """Return the first step for a bar without formulas."""
    return reply(
        _("This bar has no formulas yet."),
        _("Write the first one down: its name, then a line for each ingredient."),
        buttons=((Button(_("Add a formula"), "new formula"), Button(_("Propose one"), "design")),),
    )


def accept_formula(turn: Turn, given: Given, value: Named) -> FormulaView:
    """Turn a name into the formula, in the button's version or the latest."""
    noun = turn.noun(value, "FORMULA", _("formula"))
    return formulas.get(turn.context, int(noun.id), noun.version)


def _only_formula(turn: Turn) -> tuple[str, object] | None:
    known = formulas.listed(turn.context)
    return (known[0].name, Hash(known[0].id)) if len(known) == 1 else None


FORMULA_SLOT = Slot("formula", accept_formula, ask_formula, only=_only_formula)
ASKED_FORMULA_SLOT = replace(FORMULA_SLOT, only=None)  # for commands that change or remove it
SAID_FORMULA_SLOT = replace(FORMULA_SLOT, ask=None, only=None)


def accept_number(turn: Turn, given: Given, value: Fraction) -> int:
    """Return the number of an entry, a reminder or a page."""
    return int(value)


NUMBER_SLOT = Slot("number", accept_number)


# -- targets ------------------------------------------------------------------------------


def ask_target(turn: Turn, given: Given) -> Question:
    """Ask how much to make, with the usual sizes on buttons."""
    view = given[FORMULA_SLOT]
    metric = turn.context.bar.units == "metric"
    if scaling.is_sprayed(view):
        sizes = ["4 x 50 ml", "8 x 50 ml", "4 x 100 ml"] if metric else ["4 x 2 oz", "8 x 2 oz", "4 x 4 oz"]
    else:
        sizes = ["250 ml", "500 ml", "1 l"] if metric else ["8 oz", "16 oz", "32 oz"]
    choices = columns(sizes_offered(sizes, turn.context.bar.units), 3)
    more = ((_("as written"), "x1"), (_("double"), "x2"))
    return Question(
        _("How much of {name}?").format(name=view.name),
        (*choices, more),
        hint=_("8 x 50 ml, 600 drinks, with 12 ml oil, x3"),
    )


SaidTarget = tuple[Target, TradeTarget]  # as typed, and as the rules' type


def accept_target(turn: Turn, given: Given, value: Target) -> SaidTarget:
    """Convert the wanted amount to the rules' type; ask if a unit or name is ambiguous."""
    view = given[FORMULA_SLOT]
    said = given.get(LOSS_SLOT)
    loss = Fraction(turn.context.bar.settings.loss_percent) / 100 if said is None else said
    if isinstance(value, BareBottles):
        raise Say(_which_bottles(turn, given, value.count))
    if isinstance(value, Factor):
        return value, ByFactor(value.factor)
    if isinstance(value, Drinks):
        if view.sprays is None:
            raise Say(
                reply(
                    _("{name} is not sprayed, so I do not know how much a drink takes.").format(
                        name=view.name
                    ),
                    _("Add it: change {name}: sprays 2-3").format(name=view.name),
                )
            )
        if value.count.denominator != 1:
            raise Say(reply(_("Please write a whole number of drinks.")))
        return value, ByDrinks(int(value.count), view.sprays[1], view.spray_ml[1], loss)
    if isinstance(value, Bottles):
        if value.count.denominator != 1:
            raise Say(reply(_("Please write a whole number of bottles, such as 8 x 50 ml.")))
        size, kind = in_base(turn.context.bar, turn.quantity(value.size, True))
        _must_be(kind, Dimension.VOLUME, value.size)
        return value, ByBottles(int(value.count), size, loss)
    if isinstance(value, Total):
        return value, _total(turn, view, value.amount)
    return value, _stock(turn, view, value)


def _which_bottles(turn: Turn, given: Given, count: Fraction) -> Reply:
    """Ask for the size of bottles that were only counted."""
    said, units = given.words["target"], turn.context.bar.units
    number = show_number(count)
    sizes = sizes_offered(["50 ml", "100 ml"] if units == "metric" else ["2 oz", "4 oz"], units)
    buttons = [
        Button(f"{number} x {label}", turn.line_with(said, f"{number} x {size} ")) for label, size in sizes
    ]
    first = _("Bottles of what size? Such as: {example}").format(example=buttons[0].label)
    return reply(first, buttons=(tuple(buttons),))


def _must_be(found: Dimension, wanted: Dimension, amount: Amount) -> None:
    if found is not wanted:
        raise Say(
            reply(
                _("I need a volume here, such as 50 ml, not {amount}.").format(
                    amount=f"{show_number(amount.number)} {amount.unit}"
                )
            )
        )


def _total(turn: Turn, view: FormulaView, amount: Amount) -> TradeTarget:
    quantity, kind = in_base(turn.context.bar, turn.quantity(amount, None if view.total_ml == 0 else True))
    if kind is Dimension.VOLUME:
        return ByTotal(quantity)
    if kind is Dimension.COUNT:
        raise Say(reply(_("Please write how much in ml or g, or so many bottles: 8 x 50 ml.")))
    masses = [scaling.mass_of(line, line.amount).grams for line in view.lines]
    if any(grams is None for grams in masses):
        raise Say(reply(_("I do not know the density of every ingredient, so please give a volume in ml.")))
    return ByFactor(quantity / sum((grams for grams in masses if grams is not None), Fraction(0)))


def _stock(turn: Turn, view: FormulaView, value: Stock) -> TradeTarget:
    stock: dict[str, Fraction] = {}
    for named, amount in value.amounts:
        line = _line_named(turn, view, named)
        liquid = INGREDIENT_PROPERTIES[line.ingredient.kind].is_liquid
        quantity, kind = in_base(turn.context.bar, turn.quantity(amount, liquid))
        if kind is not line.dimension:
            quantity = _turned(line, quantity, kind)
        stock[line.ingredient.name] = quantity
    if len(stock) == 1:
        name, quantity = next(iter(stock.items()))
        return ByIngredient(name, quantity)
    return ByStock(stock)


def _line_named(turn: Turn, view: FormulaView, named: Named) -> formulas.FormulaLineView:
    if isinstance(named, Unknown):  # a name in another language, or another name of it
        named = turn.vocabulary.named(named.text, "INGREDIENT") or named
    if not isinstance(named, Hash):
        text = named.name if not hasattr(named, "text") else named.text
        plain = text.casefold()
        exact = [line for line in view.lines if line.ingredient.name.casefold() == plain]
        # 'oil' is enough if only one ingredient of the formula has that word in its name.
        within = [line for line in view.lines if plain in line.ingredient.name.casefold().split()]
        found = exact or (within if len(within) == 1 else [])
        if found:
            return found[0]
    if not hasattr(named, "text"):
        number = str(named.id)
        for line in view.lines:
            if str(line.ingredient.id) == number:
                return line
    said = named.text if hasattr(named, "text") else getattr(named, "name", f"#{named.id}")
    buttons = tuple(
        (Button(line.ingredient.name, turn.line_with(said, line.ingredient.name)),) for line in view.lines[:6]
    )
    raise Say(
        reply(
            _("{formula} has no “{name}”. Which did you mean?").format(formula=view.name, name=said),
            buttons=buttons,
        )
    )


def _turned(line: formulas.FormulaLineView, quantity: Fraction, kind: Dimension) -> Fraction:
    density = scaling.mass_of(line, Fraction(1)).density_g_per_ml
    if density is None or Dimension.COUNT in {kind, line.dimension}:
        raise Say(
            reply(
                _("{name} is measured by {measure} in this formula: please give it so.").format(
                    name=line.ingredient.name, measure=_(line.dimension)
                )
            )
        )
    return quantity / density if kind is Dimension.MASS else quantity * density


def accept_loss(turn: Turn, given: Given, value: Fraction) -> Fraction:
    """Parse a loss as a share below 1."""
    if not 0 <= value < 1:
        raise Say(reply(_("A loss from 0 % to below 100 %, please.")))
    return value


LOSS_SLOT = Slot("loss", accept_loss)
TARGET_SLOT = Slot("target", accept_target, ask_target)
SAID_TARGET_SLOT = replace(TARGET_SLOT, ask=None)
GRAMS_SLOT = Slot("grams", said)
MORE_DETAIL_SLOT = Slot("more_detail", said)
PICTURE_SLOT = Slot("picture", said)


# -- batches ------------------------------------------------------------------------------


def ask_open_batch(turn: Turn, given: Given) -> Question:
    """Ask which batch, with a button for each that has something left."""
    known = [batch for batch in batches.listed(turn.context) if batch.state.open]
    if not known:
        raise Say(
            reply(
                _("There is no batch with anything left in it."),
                buttons=((Button(_("Make a batch"), "batch"),),),
            )
        )
    choices = [(f"{batch.number} {batch.name}", str(batch.number)) for batch in known[:_MOST_CHOICES]]
    return Question(_("Which batch?"), columns(choices, 1), hint=_("A batch number"))


def accept_batch(turn: Turn, given: Given, value: int | Noun) -> BatchView:
    """Turn a number into the batch, or a formula's name into its only open batch; ask which of several."""
    if isinstance(value, int):
        return batches.get(turn.context, value)
    known = batches.open_of(turn.context, int(value.id))
    if len(known) == 1:
        return known[0]
    if not known:
        raise Say(reply(_("No batch of {name} has anything left in it.").format(name=value.name)))
    rows = tuple(
        (Button(_("Batch {number}").format(number=one.number), _naming(turn, given, one)),)
        for one in known[:_MOST_CHOICES]
    )
    raise Say(reply(_("Which batch of {name}?").format(name=value.name), buttons=rows))


def accept_shown_batch(turn: Turn, given: Given, value: int | Noun) -> BatchView:
    """Turn a number or name into a batch. Raises Say for a bottle whose content is secret."""
    batch = accept_batch(turn, given, value)
    trial = blind.trial_of(turn.context, batch)
    if trial is not None:
        button = Button(_("Trial {trial}").format(trial=trial), f"trials {trial}")
        hidden = _("Blind trial {trial}: what went in stays hidden until it ends.").format(trial=trial)
        raise Say(reply(hidden, buttons=((button,),)))
    return batch


def _naming(turn: Turn, given: Given, batch: BatchView) -> str:
    """Return the line, or the answer to a question, with a batch's number in place of its formula's name."""
    said = given.words.get("batch")
    return f"{batch.number}" if said is None else turn.line_with(said, f"batch {batch.number}")


def accept_open_batch(turn: Turn, given: Given, value: int | Noun) -> BatchView:
    """Turn a number or a formula's name into an unfinished batch. Raises WrongStateError."""
    batch = accept_batch(turn, given, value)
    if not batch.state.open:
        raise WrongStateError(batch.number, batch.state)
    return batch


BATCH_SLOT = Slot("batch", accept_batch, ask_open_batch)
SHOWN_BATCH_SLOT = replace(BATCH_SLOT, accept=accept_shown_batch)
OPEN_BATCH_SLOT = replace(BATCH_SLOT, accept=accept_open_batch)
SAID_BATCH_SLOT = replace(BATCH_SLOT, ask=None)

STATE_WORDS = {
    BatchState.RESTING: N_("resting"),
    BatchState.READY: N_("ready"),
    BatchState.IN_USE: N_("in use"),
    BatchState.USED_UP: N_("used up"),
    BatchState.DISCARDED: N_("discarded"),
    BatchState.MOVED: N_("moved away"),
    BatchState.UNDONE: N_("undone"),
}


def is_liquid(ingredient: IngredientView) -> bool | None:
    """Whether an ingredient is a liquid; None if its kind does not tell."""
    if ingredient.kind is IngredientKind.OTHER:
        return None
    return INGREDIENT_PROPERTIES[ingredient.kind].is_liquid


def quantity_in_ml(turn: Turn, amount: Amount) -> Fraction:
    """Return a volume in mL; ask about or refuse anything else."""
    quantity: Quantity = turn.quantity(amount, True)
    ml, kind = in_base(turn.context.bar, quantity)
    _must_be(kind, Dimension.VOLUME, amount)
    return ml


def ask_item(turn: Turn, given: Given) -> Question:
    """Ask which ingredient, the stocked ones first."""
    there = stock.on_hand(turn.context)
    known = sorted(
        ingredients.all_of(turn.context), key=lambda one: (one.id not in there, one.name.casefold())
    )
    choices = [(one.name, f"#{one.id}") for one in known[:12]]
    return Question(_("Which ingredient?"), columns(choices, 2), hint=_("neutral spirit"))


# -- sprays ----------------------------------------------------------------------------------

_MOST_SPRAYS = 50  # of one drink


def accept_sprays(turn: Turn, given: Given, value: Span) -> tuple[Fraction, Fraction]:
    """Return the sprays of a drink, from and to. Raises Say."""
    if not 0 < value.low <= value.high <= _MOST_SPRAYS:
        raise Say(reply(_("From 1 to 50 sprays, please, such as 2-3 sprays.")))
    return value.low, value.high
