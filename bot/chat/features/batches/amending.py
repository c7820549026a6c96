"""Commands that change a batch after it was made: batch 41 add 29 ml spirit; filtered 41, lost 12 ml."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.names import known_ingredient, words_of
from bot.chat.dialogue.inputs.shared_slots import OPEN_BATCH_SLOT, quantity_in_ml, undo_button
from bot.chat.dialogue.log_words import LogWords, Retold, typed_amount
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.batch_card import clarity_buttons, discard_words
from bot.chat.features.safety.caution_blocks import batch_caution
from bot.chat.grammar.syntax import Amount, Named, Unknown
from bot.chat.i18n.language import _, show_money
from bot.chat.reply.message import Block, Button, Reply, Text, reply
from bot.chat.reply.units import show_ml, show_percents, sizes_offered
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension
from bot.trade.safety.caution import Step
from bot.trade.words import N_
from bot.work.batches import amending
from bot.work.batches.amending import Amended
from bot.work.batches.batches import BatchState, BatchView
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.log.chain import State
from bot.work.log.history import LogLine
from bot.work.trials import blind

# -- adding --------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Addition:
    """An amount of an ingredient of the bar, mL."""

    ml: Fraction
    ingredient: IngredientView


def accept_addition(turn: Turn, given: Given, value: Amount | tuple[Amount, Named]) -> Addition:
    """Turn an amount and a name into an ingredient of the bar; 'spirit' alone is that of the batch."""
    amount, named = value if isinstance(value, tuple) else (value, None)
    known = _in_batch(turn, given.get(OPEN_BATCH_SLOT), named)
    if known is None and named is not None:
        known = known_ingredient(turn, named)
    if known is None:
        words = _("spirit") if named is None else words_of(named)
        raise Say(turn.not_known(Unknown(words), "INGREDIENT", _("ingredient")))
    return Addition(quantity_in_ml(turn, amount), known)


def _in_batch(turn: Turn, batch: BatchView | None, named: Named | None) -> IngredientView | None:
    """Return the ingredient of a batch with this word in its name; for no name its spirit."""
    if batch is None or not (named is None or isinstance(named, Unknown)):
        return None
    bottles = blind.bottles_of(turn.context, batch)  # what only one of them holds would tell
    numbers = dict.fromkeys(line.ingredient_id for one in bottles for line in one.lines)
    lines = [ingredients.get(turn.context, number) for number in numbers]
    if named is None:
        found = [one for one in lines if one.kind is IngredientKind.SPIRIT]
    else:
        found = [one for one in lines if named.text.casefold() in one.name.casefold().split()]
    return found[0] if len(found) == 1 else None


ADDED_SLOT = Slot("added", accept_addition)


def added_reply(turn: Turn, batch: BatchView, addition: Addition) -> Reply:
    """Add to a batch and say what it is now."""
    units, name = turn.context.bar.units, addition.ingredient.name
    amount = show_ml(addition.ml, units)
    note = f"{amount} {name}"
    done = amending.add(turn.context, batch.number, addition.ingredient.id, addition.ml, note)
    first = _("Batch {number}: {amount} {name} added, now {volume}.").format(
        number=batch.number,
        amount=amount,
        name=name,
        volume=show_ml(done.after.total_ml, units),
    )
    return _amended(turn, done, first)


def _amended(turn: Turn, done: Amended, first: str) -> Reply:
    batch, units = done.after, turn.context.bar.units
    lines: list[Block] = []
    if blind.trial_of(turn.context, batch) is None:
        lines += [Text(line) for line in (_strength_change(done), _cost_line(done)) if line]
    if batch.state is BatchState.IN_USE:
        text = _("Reckoned on all {volume}: if some is used up already, add less in proportion.")
        lines.append(Text(text.format(volume=show_ml(done.before.total_ml, units))))
    if batch.discard_on < done.before.discard_on:
        lines.append(Text(discard_words(batch, turn.context.today)))
    lines.append(Text(_("Swirl it, let it stand a day, and look again: I will ask.")))
    lines += batch_caution(turn.context, batch, Step.RESTING)
    return Reply(
        (Text(first, strong=True), *lines),
        (clarity_buttons(batch.number), (Button(_("Label"), f"label {batch.number}"), undo_button(turn))),
    )


def _strength_change(done: Amended) -> str:
    was, now = done.before.strength, done.after.strength
    if now is None or was == now:
        return ""
    if was is None:
        return show_percents(now)
    text = _("{now}, from {before}: print its label anew.")
    return text.format(now=show_percents(now), before=show_percents(was))


def _cost_line(done: Amended) -> str:
    if done.cost is None:
        return ""
    each = done.cost / Decimal(float(done.after.total_ml)) * 100
    return _("What went in cost {money}, {each} for 100 ml.").format(
        money=show_money(done.cost), each=show_money(each)
    )


# -- filtering -----------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class FilteredArguments(Arguments):
    """A batch, and how much of it stayed in the filter, mL."""

    batch: BatchView
    amount: Fraction


def _ask_lost(turn: Turn, given: Given) -> Question:
    sizes = ["0 ml", "10 ml", "20 ml"] if turn.context.bar.units == "metric" else ["0 oz", "1/4 oz", "1/2 oz"]
    return Question(
        _("How much stayed in the filter?"),
        columns(sizes_offered(sizes, turn.context.bar.units), 3),
        hint="12 ml",
    )


def _accept_lost(turn: Turn, given: Given, value: Amount) -> Fraction:
    lost, batch = quantity_in_ml(turn, value), given[OPEN_BATCH_SLOT]
    if lost >= batch.total_ml:
        whole = show_ml(batch.total_ml, turn.context.bar.units)
        raise Say(reply(_("Batch {number} has only {volume}.").format(number=batch.number, volume=whole)))
    return lost


def _filtered(turn: Turn, arguments: FilteredArguments) -> Reply:
    number, units = arguments.batch.number, turn.context.bar.units
    note = f"−{show_ml(arguments.amount, units)}"
    done = amending.filtered(turn.context, number, arguments.amount, note)
    volume = show_ml(done.after.total_ml, units)
    first = _("Batch {number} filtered: {volume} left.").format(number=number, volume=volume)
    return _amended(turn, done, first)


COMMANDS = (
    Command(
        "filtered",
        N_("note that a batch was filtered, and what was lost"),
        _filtered,
        words=("filter", "filtered batch", "filter batch"),
        examples=(N_("filtered 12, lost 12 ml"),),
        slots=(OPEN_BATCH_SLOT, Slot("amount", _accept_lost, _ask_lost)),
        writes=True,
        wishes=(Wish("filtered", ("{batch} {amount}", "{batch?}")),),
    ),
)


def _values(line: LogLine, units: str) -> dict[str, str]:
    return {"amount": show_ml(Fraction(line.details["amount"]), units)}


def _filtered_retold(turn: Turn, found: State) -> Retold:
    said = found.details
    amount = typed_amount(Fraction(said["amount"]), Dimension.VOLUME)
    return Retold("filtered", ({"batch": str(said["batch"]), "amount": amount},))


LOG_WORDS = (
    LogWords(
        "add to batch",
        N_("added {amount} {item} to batch {batch}"),
        N_("{amount} {item} in batch {batch}"),
        values=_values,
    ),
    LogWords(
        "filter",
        N_("filtered batch {batch}, {amount} lost"),
        N_("filtering of batch {batch}"),
        values=_values,
        retold=_filtered_retold,
    ),
)
