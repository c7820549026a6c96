"""Word the strength of a formula, a batch, a bottle or a hydrometer reading."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.inputs.strength import ask_strength, show_strength
from bot.chat.dialogue.turn import Turn
from bot.chat.features.liquids import dilution
from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_percents, show_temperature
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import strength
from bot.trade.liquids.flash import FlashPoint, flash_point
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.liquids.strength import StrengthAnswer


def mix_reply(turn: Turn, answer: StrengthAnswer, title: str, view: FormulaView | None = None) -> Reply:
    """Show the strength and yield of a formula or a batch; ask for an unknown strength."""
    found = answer.strength
    if found is None:
        return ask_strength(turn, answer.unknown[0], answer.name)
    first = _("{name}: {percent}").format(name=title, percent=show_strength(turn, found.strength_percent))
    rows = [(_("Poured in"), dilution.ml_words(turn, answer.poured_ml))]
    if found.contraction_ml >= 0.005:
        rows.append((_("Contraction"), dilution.ml_words(turn, found.contraction_ml)))
    rows.append((_("Makes"), dilution.ml_words(turn, found.volume_ml)))
    if found.ethanol_ml > 0:
        rows.append((_("Ethanol in it"), dilution.ml_words(turn, found.ethanol_ml)))
    else:
        first = _("{name} holds no alcohol.").format(name=title)
    blocks: list[Block] = [Grid(tuple(rows))]
    blocks += [Text(line) for line in _taken_as(answer)]
    if answer.infused_percent is not None and found.ethanol_ml > 0:
        infused = show_percents(answer.infused_percent)
        text = _("Fresh fruit gives it water: {percent} once strained. Measure what comes out.")
        if answer.strained:
            first = _("{name}: {percent}").format(name=title, percent=infused)
            text = _("As poured {percent}; the fruit's water is in it now.")
            infused = show_strength(turn, found.strength_percent)
        blocks.append(Text(text.format(percent=infused)))
    if answer.flash is not None and answer.flash.band_c is not None:
        blocks.append(Text(flash_words(turn, answer.flash)))
    buttons: tuple[tuple[Button, ...], ...] = ()
    if view is not None:
        row = [Button(_("Scale"), f"scale #{view.id}.{view.version}")]
        if found.ethanol_ml > 0:
            row.append(Button(_("Another spirit"), f"swap #{view.id}.{view.version}"))
        buttons = (tuple(row),)
    return Reply((Text(first, strong=True), *blocks), buttons)


def _taken_as(answer: StrengthAnswer) -> list[str]:
    found = answer.strength
    lines = []
    if found is not None and found.ideal:
        lines.append(
            _("Added without contraction, as ideal volumes: {names}.").format(names=", ".join(found.ideal))
        )
    if found is not None and found.taken_as_spirit:
        lines.append(
            _("Counted as plain spirit and water: {names}.").format(names=", ".join(found.taken_as_spirit))
        )
    if answer.left_out:
        lines.append(_("Not counted: {names}.").format(names=", ".join(answer.left_out)))
    return lines


def flash_words(turn: Turn, found: FlashPoint) -> str:
    """Return the temperature from which it can light, and the category: the stricter end of the band."""
    if found.band_c is None:
        return _("Weaker than flash-point tables go.")
    return _(
        "It can light from about {low} upwards: {category}. An estimate, some degrees off either way."
    ).format(
        low=show_temperature(round(found.band_c.low), turn.context.bar.units), category=_(found.category)
    )


def bottle_reply(turn: Turn, one: IngredientView, temperature: float) -> Reply:
    """Show the strength of a bottle, with figures for that strength; ask if it is unknown."""
    if one.strength_percent is None:
        if one.kind is IngredientKind.WATER:
            return reply(_("{name} holds no alcohol.").format(name=one.name))
        return ask_strength(turn, one.name, _("everything made with it"))
    first = _("{name}: {percent}").format(
        name=one.name, percent=show_strength(turn, float(one.strength_percent))
    )
    return _level_reply(turn, first, float(one.strength_percent), temperature)


def plain_level_reply(turn: Turn, level: Fraction, temperature: float) -> Reply:
    """Show the figures of spirit and water at a strength."""
    percent = float(level)
    return _level_reply(turn, show_strength(turn, percent), percent, temperature)


def _level_reply(turn: Turn, first: str, percent: float, temperature: float) -> Reply:
    from bot.trade.liquids import ethanol  # noqa: PLC0415 - only for the figures of plain spirit

    density = ethanol.spirit_density_g_per_ml(percent, temperature)
    rows = (
        (
            _("Density at {temperature}").format(
                temperature=show_temperature(temperature, turn.context.bar.units)
            ),
            _("{density} g/ml").format(density=show_number(Fraction(str(round(density, 4))), 4)),
        ),
        (
            _("Ethanol by weight"),
            f"{show_number(Fraction(str(round(100 * ethanol.mass_fraction(percent), 2))), 2)} %",
        ),
    )
    blocks: list[Block] = [Grid(rows)]
    if percent >= 10:
        blocks.append(Text(flash_words(turn, flash_point(percent))))
    button = Button(_("Water it down"), f"strength 500 ml {dilution.said(Fraction(str(percent)))} to 70")
    return Reply((Text(first, strong=True), *blocks), ((button,),) if percent > 70 else ())


def reading_reply(turn: Turn, reading: Fraction, temperature: float) -> Reply:
    """Show the true strength for a hydrometer reading."""
    # US scales are calibrated at 60 °F, others at 20 °C.
    us = turn.context.bar.jurisdiction == Jurisdiction.US
    right_at = strength.US_PROOF_TEMPERATURE_C if us else dilution.REFERENCE_C
    percent = strength.true_strength(float(reading), temperature, right_at)
    units = turn.context.bar.units
    return reply(
        _("A reading of {reading} at {temperature} is {percent}.").format(
            reading=dilution.short(reading),
            temperature=show_temperature(temperature, units),
            percent=show_strength(turn, percent),
        ),
        _(
            "For a hydrometer made for {temperature}, in spirit and water alone: sugar or oil misleads it."
        ).format(temperature=show_temperature(right_at, units)),
    )
