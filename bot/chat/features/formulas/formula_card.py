"""Show a formula as a card: ingredients, yield, cautions, and next steps."""

from __future__ import annotations

from bot.chat.dialogue.turn import Turn
from bot.chat.features.formulas.scale import line_texts
from bot.chat.features.liquids.clearing_words import clear_button, clear_line
from bot.chat.features.safety.caution_blocks import caution_blocks
from bot.chat.features.safety.grade_words import allergen_line, grade_buttons, mark
from bot.chat.i18n.language import _, ngettext
from bot.chat.reply.message import Block, Button, Caution, Reply, Text
from bot.chat.reply.units import show_hours, show_ml, show_percent, show_range
from bot.trade.formulas.kinds import Preparation
from bot.trade.safety.caution import Step
from bot.work.formulas import scaling
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.keeping import kept_days
from bot.work.formulas.mixture import mix_of
from bot.work.safety import allergens, grade


def kind_name(preparation: Preparation) -> str:
    """Return the name of a kind of preparation."""
    return _(preparation.value)


def card(turn: Turn, view: FormulaView, more: bool = False, written: bool = False) -> Reply:
    """Show one version of a formula with the usual next steps.

    With `more`, or if it was just `written`, show all details; `more` also shows all buttons.
    """
    units = turn.context.bar.units
    title = _("{name}: {kind}, version {version}").format(
        name=view.name, kind=kind_name(view.preparation), version=view.version
    )
    lines = _facts(view, units, more or written)
    lines += [
        clear_line(turn, view, turn.context.bar.temperature_c),
        allergen_line(allergens.named_in(turn.context, view)),
    ]
    blocks: list[Block] = [line_texts(view, units), *(Text(line) for line in lines if line)]
    questions = grade.open_in_formula(view)
    if questions:
        blocks.append(Caution(mark([one.ingredient.name for one in questions])))
    else:
        blocks += caution_blocks(turn, view, Step.ADDING)
    rows = (*_buttons(turn, view, more), *grade_buttons(turn.context, questions if more else questions[:1]))
    return Reply((Text(title, strong=True), *blocks), rows, edits=more and turn.message.tapped is not None)


def _buttons(turn: Turn, view: FormulaView, more: bool) -> tuple[tuple[Button, ...], ...]:
    """Return the usual next steps; rare ones are behind a button or shown with `more`."""
    ref = f"#{view.id}"
    often = (
        Button(_("Scale"), f"scale {ref}"),
        Button(_("Cost"), f"cost {ref} x1"),
        Button(_("Make"), f"batch {ref}"),
    )
    mix = mix_of(view)
    change = [Button(_("Change"), f"change {ref}")]
    next_to_it = [clear_button(view)] if mix.has_oil else []
    if not more:
        second = (*next_to_it, *change, Button(_("More"), f"formula {ref} version {view.version} more"))
        return often, second
    if mix.has_spirit:
        next_to_it.append(Button(_("Strength"), f"strength {ref}"))
    if mix.has_oil or scaling.is_sprayed(view):
        next_to_it.append(Button(_("Dose"), f"dose {ref}"))
    change += [Button(_("Rename"), f"rename {ref}"), Button(_("Put away"), f"archive {ref}")]
    rows = (often, tuple(next_to_it), tuple(change))
    return tuple(row for row in rows if row)


def _facts(view: FormulaView, units: str, all_known: bool) -> list[str]:
    facts = []
    strength = scaling.strength_of(view)
    made = scaling.made_ml(view)
    if made:
        text = _("Makes {volume}").format(volume=show_ml(made, units))
        if strength is not None and strength.strength_percent > 0:
            text += _(" at {percent}").format(percent=show_percent(strength.strength_percent))
        facts.append(text)
    keeps = kept_days(view)
    days = ngettext("{count} day", "{count} days", keeps).format(count=keeps)
    if view.rest_hours:
        text = _("Rests {hours}, discard after {days}").format(hours=show_hours(view.rest_hours), days=days)
    else:
        text = _("Needs no rest, discard after {days}").format(days=days)
    facts.append(text)
    if keeps < view.discard_days:
        facts.append(_("Weak or fresh: keep it refrigerated and ask your inspector how long."))
    if all_known and view.sprays is not None:
        text = _("{sprays} sprays a drink, {ml} ml each").format(
            sprays=show_range(*view.sprays), ml=show_range(*view.spray_ml)
        )
        if view.sprayer:
            text += _(" by {sprayer}").format(sprayer=view.sprayer)
        if view.garnish is not None:
            text += _(", instead of fresh {fruit}").format(fruit=view.garnish.name)
        facts.append(text)
    return facts
