"""Word trials: the differences, and the scores side by side."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.reply.message import Block, Grid, Text
from bot.chat.reply.units import show_amount, show_ml
from bot.trade.trials.tasting import Aspect, Difference, Summary
from bot.trade.words import N_
from bot.work.trials import trial_life
from bot.work.trials.trials import TrialState, TrialView

_SPREAD_FITS = 2  # with this many bottles a phone has room for the spread beside each mean
_SHORT = {
    Aspect.AROMA: N_("aroma"),
    Aspect.BRIGHTNESS: N_("brightness"),
    Aspect.LASTING: N_("lasting"),
    Aspect.BITTERNESS: N_("bitterness"),
}


def title(trial: TrialView) -> str:
    """Write the title of a trial: 'Trial 1, Grapefruit mist: A, B'."""
    if trial.triangle is not None:
        garnish = "" if trial.formula.garnish is None else trial.formula.garnish.name
        text = (
            _("Trial {number}: {name} against fresh {fruit}")
            if trial.state is TrialState.OPEN
            else _("Trial {number}: {name} against fresh {fruit}, over")
        )
        return text.format(number=trial.id, name=trial.formula.name, fruit=garnish)
    codes = ", ".join(one.code for one in trial.variants)
    text = (
        _("Trial {number}, {name}: {codes}")
        if trial.state is TrialState.OPEN
        else _("Trial {number}, {name}: {codes}, over")
    )
    return text.format(number=trial.id, name=trial.formula.name, codes=codes)


def amounts(turn: Turn, trial: TrialView) -> list[Block]:
    """Return the size that is made of each variant, and the amounts for it, side by side."""
    return [size_of_each(turn, trial), _amounts_grid(turn, trial)]


def size_of_each(turn: Turn, trial: TrialView) -> Text:
    """Write the size that is made of each variant."""
    return Text(_("{amount} of each.").format(amount=show_ml(trial.total_ml, turn.context.bar.units)))


def _amounts_grid(turn: Turn, trial: TrialView) -> Grid:
    trial, units = trial_life.at_size(turn.context, trial), turn.context.bar.units
    names: dict[int, str] = {}
    for one in trial.variants:
        for line in one.lines:
            names.setdefault(line.ingredient.id, line.ingredient.name)
    rows: list[tuple[str, ...]] = [("", *(one.code for one in trial.variants))]
    for number, name in names.items():
        cells = []
        for one in trial.variants:
            found = next((line for line in one.lines if line.ingredient.id == number), None)
            cells.append("-" if found is None else show_amount(found.amount, found.dimension, units))
        rows.append((name, *cells))
    return Grid(tuple(rows))


def score_grid(trial: TrialView) -> Grid:
    """Return the mean and spread of each aspect, a column for each bottle."""
    table = trial.table
    assert table is not None  # noqa: S101 - checked by the caller
    rows: list[tuple[str, ...]] = [("", *table.variants)]
    for aspect, cells in table.cells.items():
        with_spread = len(table.variants) <= _SPREAD_FITS
        found = (_cell(cells[code], with_spread) for code in table.variants)
        rows.append((_(_SHORT[aspect]), *found))
    return Grid(tuple(rows))


def _cell(summary: Summary | None, with_spread: bool) -> str:
    if summary is None:
        return "-"
    mean = _one_place(summary.mean)
    return mean if summary.spread is None or not with_spread else f"{mean} ±{_one_place(summary.spread)}"


def _widest_spread(trial: TrialView) -> float | None:
    assert trial.table is not None  # noqa: S101 - checked by the caller
    spreads = [
        cell.spread
        for cells in trial.table.cells.values()
        for cell in cells.values()
        if cell is not None and cell.spread is not None
    ]
    return max(spreads, default=None)


def _one_place(value: float) -> str:
    return show_number(Fraction(str(round(value, 1))), 1)


def result_lines(trial: TrialView) -> list[str]:
    """Return the number of tasters, whose scores do not count, and the differences beyond disagreement."""
    names = ", ".join(trial.not_counted)
    left_out = [_("Looked up the letters, so not counted: {names}").format(names=names)] if names else []
    return [*left_out, *_counted_lines(trial)]


def _counted_lines(trial: TrialView) -> list[str]:
    table = trial.table
    if table is None:
        return []
    counts = _tasters_by_code(trial)
    tasters = max(counts.values())
    widest = _widest_spread(trial)
    if len(set(counts.values())) > 1:
        shown = ", ".join(f"{code} {count}" for code, count in counts.items())
        lines = [_("Not all tasted every bottle. Tasters: {counts}.").format(counts=shown)]
    elif widest is None or len(table.variants) <= _SPREAD_FITS:
        text = ngettext("Mean and spread of {count} taster.", "Mean and spread of {count} tasters.", tasters)
        lines = [text.format(count=tasters)]
    else:
        text = ngettext(
            "Mean of {count} taster, who differ by up to ±{spread}.",
            "Means of {count} tasters, who differ by up to ±{spread}.",
            tasters,
        )
        lines = [text.format(count=tasters, spread=_one_place(widest))]
    if trial.hidden:
        return [*lines, _("What differs is said when it ends: it would name the formula as it stands.")]
    if len(table.variants) == 1:
        return lines
    clear = [
        _difference(code, table.base, aspect, found)
        for aspect, against in table.against_base.items()
        for code, found in against.items()
        if found is not None and found.clear
    ]
    if clear:
        lines += clear[:3]
    else:
        lines.append(_("No clear difference: chance alone could do this."))
    return lines


def _tasters_by_code(trial: TrialView) -> dict[str, int]:
    """Return for each bottle how many tasters' scores of it are in the table."""
    assert trial.table is not None  # noqa: S101 - checked by the caller
    cells = trial.table.cells.values()
    return {
        one.code: max((found.count for row in cells if (found := row.get(one.code)) is not None), default=0)
        for one in trial.variants
    }


def _difference(code: str, base: str, aspect: Aspect, found: Difference) -> str:
    text = (
        _("{code} has more {aspect} than {base}: by {mean}.")
        if found.mean > 0
        else _("{code} has less {aspect} than {base}: by {mean}.")
    )
    return text.format(code=code, aspect=_(_SHORT[aspect]), base=base, mean=_one_place(abs(found.mean)))
