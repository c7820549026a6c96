"""A bar's formulas and their versions."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from fractions import Fraction

from bot.trade.formulas.amounts import Line, Recipe
from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, IngredientKind, Preparation
from bot.trade.formulas.measures import Dimension, Quantity, dimension, to_count, to_g, to_ml
from bot.trade.liquids.strength import is_same_label
from bot.work.context import BarView, Context
from bot.work.errors import AlreadyThereError, BadValueError, NotThereError
from bot.work.formulas import ingredients, spray_output
from bot.work.formulas.ingredients import IngredientView
from bot.work.standing import Details
from storage.tables import Formula, FormulaLine, FormulaVersion, Ingredient

MOST_LINES = 40


@dataclass(frozen=True, slots=True)
class DraftLine:
    """One ingredient of a draft: by number or by a new name, in its own unit."""

    ingredient: int | str
    quantity: Quantity
    strength_percent: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Draft:
    """The content of a formula version. None means the default of the kind of preparation or of the bar."""

    preparation: Preparation
    lines: tuple[DraftLine, ...]
    rest_hours: Fraction | None = None
    discard_days: int | None = None
    sprays: tuple[Fraction, Fraction] | None = None
    garnish: int | str | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class FormulaLineView:
    """One ingredient of a version: as entered, and in mL, g or pieces (`amount`)."""

    ingredient: IngredientView
    quantity: Quantity
    amount: Fraction
    dimension: Dimension


@dataclass(frozen=True, slots=True)
class FormulaView:
    """One version of a formula. `sprays` are per drink, low and high; `spray_ml` mL of one spray.

    `sprayer` names the weighed sprayer behind `spray_ml`; '' for the bar's usual size.
    """

    id: int
    name: str
    preparation: Preparation
    version: int
    latest: int
    lines: tuple[FormulaLineView, ...]
    rest_hours: Fraction
    discard_days: int
    sprays: tuple[Fraction, Fraction] | None
    spray_ml: tuple[Fraction, Fraction]
    garnish: IngredientView | None
    note: str
    made_at: datetime
    archived: bool
    sprayer: str = ""

    @property
    def recipe(self) -> Recipe:
        """The lines as a recipe of the trade rules."""
        return Recipe(tuple(Line(line.ingredient.name, line.amount, line.dimension) for line in self.lines))

    @property
    def total_ml(self) -> Fraction:
        """The plain sum of all volumes, in mL, before any contraction."""
        return sum((line.amount for line in self.lines if line.dimension is Dimension.VOLUME), Fraction(0))

    @property
    def kinds(self) -> tuple[IngredientKind, ...]:
        """The kinds of its ingredients."""
        return tuple(line.ingredient.kind for line in self.lines)


@dataclass(frozen=True, slots=True)
class FormulaName:
    """One line of the formula list."""

    id: int
    name: str
    preparation: Preparation
    version: int
    archived: bool


def in_base(bar: BarView, quantity: Quantity) -> tuple[Fraction, Dimension]:
    """Return a quantity in mL, g or pieces. Raises the errors of bot.trade.formulas.measures."""
    kind = dimension(quantity.unit)
    if kind is Dimension.VOLUME:
        return to_ml(quantity, bar.house), kind
    if kind is Dimension.MASS:
        return to_g(quantity), kind
    return to_count(quantity), kind


def get(context: Context, formula_id: int, version: int | None = None) -> FormulaView:
    """Return a formula in one version, by default the latest. Raises NotThereError."""
    key = ("formula", formula_id, version)
    return context.book.remembered(context.bar.revision, key, lambda: _read(context, formula_id, version))


def _read(context: Context, formula_id: int, version: int | None) -> FormulaView:
    row = row_of(context, formula_id)
    number = version or row.latest
    said = context.book.get(FormulaVersion, formula_id, number)
    if said is None:
        raise NotThereError("version", f"{row.name} {number}")
    query = (
        context.book.rows(FormulaLine, FormulaLine, Ingredient)
        .join(
            Ingredient,
            (Ingredient.bar_id == FormulaLine.bar_id) & (Ingredient.id == FormulaLine.ingredient_id),
        )
        .where(FormulaLine.formula_id == formula_id, FormulaLine.number == number)
        .order_by(FormulaLine.position)
    )
    lines = []
    for line, ingredient in context.book.session.execute(query):
        quantity = Quantity(line.amount, line.unit)
        lines.append(
            FormulaLineView(IngredientView.of(ingredient), quantity, *in_base(context.bar, quantity))
        )
    garnish = None if said.garnish_id is None else ingredients.get(context, said.garnish_id)
    sprays = None if said.sprays_low is None else (said.sprays_low, said.sprays_high or said.sprays_low)
    low, high = said.spray_ml_low, said.spray_ml_high
    weighed = spray_output.sprayed_by(context, formula_id) if low is None and sprays is not None else None
    usual = context.bar.spray_ml if weighed is None else weighed.ml
    return FormulaView(
        row.id,
        row.name,
        Preparation(row.preparation),
        number,
        row.latest,
        tuple(lines),
        said.rest_hours,
        said.discard_days,
        sprays,
        usual if low is None else (low, high or low),
        garnish,
        said.note,
        said.made_at,
        row.archived_at is not None,
        "" if weighed is None else weighed.sprayer,
    )


def listed(context: Context, archived: bool = False) -> list[FormulaName]:
    """Return the bar's formulas by name, with archived ones on request."""
    where = [] if archived else [Formula.archived_at.is_(None)]
    rows = context.book.all(Formula, *where, order=Formula.match_key)
    return [
        FormulaName(row.id, row.name, Preparation(row.preparation), row.latest, row.archived_at is not None)
        for row in rows
    ]


def add(context: Context, name: str, draft: Draft) -> FormulaView:
    """Add a new formula as its version 1.

    Raises AlreadyThereError for a name in use and BadValueError for an empty or overlong one.
    """
    clean = ingredients.clean_name(name, "formula name")
    refuse_taken(context, clean)
    row = context.book.add(
        Formula(
            name=clean,
            match_key=plain_name(clean),
            preparation=draft.preparation,
            latest=0,
            made_at=context.now,
        )
    )
    strengths = _set_strengths(context, draft.lines)
    view = write_version(context, row, draft)
    context.log("formula", formula=row.id, name=clean, **strengths)
    return view


def refuse_taken(context: Context, clean: str) -> None:
    """Raise AlreadyThereError if a formula has this name."""
    taken = context.book.one(Formula, Formula.match_key == plain_name(clean))
    if taken is not None:
        raise AlreadyThereError("formula", taken.name, taken.archived_at is not None)


def change(context: Context, formula_id: int, draft: Draft) -> FormulaView:
    """Add a new version; batches keep the version they were made with. Raises NotThereError."""
    view, changed = write_change(context, formula_id, draft)
    context.log("change formula", name=view.name, **changed)
    return view


def write_change(context: Context, formula_id: int, draft: Draft) -> tuple[FormulaView, Details]:
    """Add a new version without a log line; return the details that its undo needs."""
    row = row_of(context, formula_id)
    before = row.latest
    kinds = [row.preparation, draft.preparation.value]
    row.preparation = draft.preparation
    strengths = _set_strengths(context, draft.lines)
    view = write_version(context, row, draft)
    about = {"formula": row.id, "version": view.version, "before": before, "kinds": kinds}
    return view, about | strengths


def row_of(context: Context, formula_id: int) -> Formula:
    """Return the row of a formula. Raises NotThereError."""
    row = context.book.get(Formula, formula_id)
    if row is None:
        raise NotThereError("formula", str(formula_id))
    return row


def draft_of(view: FormulaView) -> Draft:
    """Return a version as a draft to edit."""
    lines = tuple(DraftLine(line.ingredient.id, line.quantity) for line in view.lines)
    garnish = None if view.garnish is None else view.garnish.id
    return Draft(view.preparation, lines, view.rest_hours, view.discard_days, view.sprays, garnish, view.note)


def with_line(draft: Draft, line: DraftLine) -> Draft:
    """Return the draft with one amount replaced, or the ingredient added at the end."""
    if any(old.ingredient == line.ingredient for old in draft.lines):
        lines = tuple(line if old.ingredient == line.ingredient else old for old in draft.lines)
    else:
        lines = (*draft.lines, line)
    return replace(draft, lines=lines)


def without_line(draft: Draft, ingredient_id: int) -> Draft:
    """Return the draft without an ingredient. Raises NotThereError if it is not in the draft."""
    lines = tuple(line for line in draft.lines if line.ingredient != ingredient_id)
    if len(lines) == len(draft.lines):
        raise NotThereError("ingredient", str(ingredient_id))
    return replace(draft, lines=lines)


def write_version(context: Context, row: Formula, draft: Draft) -> FormulaView:
    """Add a new version. Raises BadValueError, AlreadyThereError for a repeated ingredient."""
    if not draft.lines:
        raise BadValueError("ingredients", "")
    if len(draft.lines) > MOST_LINES:
        raise BadValueError("number of ingredients", str(len(draft.lines)))
    defaults = PREPARATION_DEFAULTS[draft.preparation]
    row.latest += 1
    row.archived_at = None
    sprays = draft.sprays
    if sprays is None and draft.preparation is Preparation.AROMA_MIST:
        sprays = Fraction(context.bar.settings.sprays_low), Fraction(context.bar.settings.sprays_high)
    context.book.add(
        FormulaVersion(
            formula_id=row.id,
            number=row.latest,
            rest_hours=Fraction(defaults.rest_hours) if draft.rest_hours is None else draft.rest_hours,
            discard_days=defaults.discard_days if draft.discard_days is None else draft.discard_days,
            sprays_low=sprays[0] if sprays else None,
            sprays_high=sprays[1] if sprays else None,
            garnish_id=None if draft.garnish is None else _ingredient(context, draft.garnish, None).id,
            note=draft.note,
            made_at=context.now,
            made_by=context.person_id,
        )
    )
    _write_lines(context, row, draft.lines)
    context.book.touched()
    return get(context, row.id)


def _write_lines(context: Context, row: Formula, lines: Sequence[DraftLine]) -> None:
    seen: set[int] = set()
    for position, line in enumerate(lines, start=1):
        if line.quantity.number <= 0:
            raise BadValueError("amount", str(float(line.quantity.number)))
        ingredient = _ingredient(context, line.ingredient, line.strength_percent)
        if ingredient.id in seen:
            raise AlreadyThereError("ingredient", ingredient.name)
        seen.add(ingredient.id)
        context.book.add(
            FormulaLine(
                formula_id=row.id,
                number=row.latest,
                position=position,
                ingredient_id=ingredient.id,
                amount=line.quantity.number,
                unit=line.quantity.unit,
            )
        )


def _ingredient(context: Context, which: int | str, strength_percent: Fraction | None) -> IngredientView:
    if isinstance(which, str):
        return ingredients.add(context, which, strength_percent=strength_percent)
    return ingredients.get(context, which)


def _set_strengths(context: Context, lines: Sequence[DraftLine]) -> Details:
    """Set the strengths said for known ingredients; return the change for the entry of the formula."""
    said = {one.ingredient: one.strength_percent for one in lines if isinstance(one.ingredient, int)}
    known = {number: ingredients.get(context, number).strength_percent for number in said}
    changed = {
        number: percent
        for number, percent in said.items()
        if percent is not None and not is_same_label(known[number], percent)
    }
    for number, percent in changed.items():
        ingredients.write_strength(context, number, percent)
    if not changed:
        return {}
    before = {str(number): None if known[number] is None else str(known[number]) for number in changed}
    return {
        "strengths": {
            "before": before,
            "after": {str(number): str(percent) for number, percent in changed.items()},
        }
    }


def rename(context: Context, formula_id: int, name: str) -> str:
    """Rename a formula; return the old name. Raises NotThereError, AlreadyThereError."""
    row = row_of(context, formula_id)
    clean = ingredients.clean_name(name, "formula name")
    if plain_name(clean) != row.match_key:
        refuse_taken(context, clean)
    before = row.name
    row.name, row.match_key = clean, plain_name(clean)
    context.log("rename formula", formula=row.id, name=clean, before=before, after=clean)
    context.book.touched()
    return before


def archive(context: Context, formula_id: int, away: bool = True) -> str:
    """Archive or restore a formula; return its name. Raises NotThereError."""
    row = row_of(context, formula_id)
    row.archived_at = context.now if away else None
    context.log("archive formula" if away else "restore formula", formula=row.id, name=row.name)
    context.book.touched()
    return row.name
