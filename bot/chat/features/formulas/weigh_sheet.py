"""The weigh sheet: amounts in grams at the bar's temperature, with their uncertainty."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.i18n.language import _
from bot.chat.reply.message import Grid
from bot.chat.reply.units import show_amount, show_g, show_ml, show_temperature
from bot.trade.formulas.measures import Dimension
from bot.work.formulas import scaling
from bot.work.formulas.scaling import LineMass, ScaleAnswer

# A spread below the resolution of a bar's scale needs no line.
_WORTH_SAYING_G = Fraction(1, 10)


def grams_grid(answer: ScaleAnswer, names: dict[str, str]) -> Grid:
    """Return every amount in grams; ingredients without a known density keep their own unit."""
    rows = []
    total: Fraction | None = Fraction(0)
    for line, mass in zip(answer.scaled.lines, answer.masses, strict=True):
        name = names.get(line.name, line.name)
        if mass.grams is None:
            total = None
            rows.append((name, show_amount(line.amount, line.dimension)))
        else:
            total = None if total is None else total + mass.grams
            rows.append((name, show_g(mass.grams)))
    if total is not None:
        rows.append((_("Total"), show_g(total)))
    return Grid(tuple(rows))


def grams_notes(answer: ScaleAnswer, temperature_c: float, units: str) -> list[str]:
    """Return the temperature of the grams, the relevant ranges of standards, and unknown densities."""
    notes = [
        _("In place of ml measured at {temperature}.").format(
            temperature=show_temperature(temperature_c, units)
        )
    ]
    at_20 = scaling.made_at_20_ml(answer)
    if temperature_c != scaling.REFERENCE_TEMPERATURE_C and at_20 is not None and answer.finished_ml:
        notes.append(
            _("What it makes is measured at {temperature} too; at 20 °C it is {volume}.").format(
                temperature=show_temperature(temperature_c, units), volume=show_ml(at_20, units)
            )
        )
    unknown = []
    for line, mass in zip(answer.scaled.lines, answer.masses, strict=True):
        if mass.grams is None and line.dimension is Dimension.VOLUME:
            unknown.append(line.name)
        elif _spread_matters(mass):
            notes.append(
                _("{name}: {low} to {high}, the range its standard allows.").format(
                    name=line.name,
                    low=show_g(mass.low_g or Fraction(0)),
                    high=show_g(mass.high_g or Fraction(0)),
                )
            )
        if mass.grams is not None and not mass.corrected:
            notes.append(_("{name}: by its density at 20 °C.").format(name=line.name))
    if unknown:
        notes.append(_("No density known: {names}.").format(names=", ".join(unknown)))
    return notes


def _spread_matters(mass: LineMass) -> bool:
    if mass.low_g is None or mass.high_g is None:
        return False
    return (mass.high_g - mass.low_g) / 2 >= _WORTH_SAYING_G
