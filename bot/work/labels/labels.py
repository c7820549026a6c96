"""The texts on a batch's labels, and their sheets and pictures."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from bot.documents.labels.labels import (
    MOST_COPIES,
    LabelPreview,
    LabelSheet,
    LabelText,
    label_preview,
    label_sheet,
)
from bot.documents.labels.sheets import STOCKS, Roll, Sheet, stock_named
from bot.trade.formulas.amounts import fill_plan
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, Preparation
from bot.trade.liquids.flash import FlammableCategory
from bot.trade.numbers.ranges import Range
from bot.trade.safety.allergens import allergen_lines
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.batches import batches, bottles
from bot.work.batches.batches import BatchView, Clarity
from bot.work.context import BarView, Context
from bot.work.errors import BadValueError
from bot.work.formulas.mixture import mix_of_batch
from bot.work.safety import allergens as allergies
from bot.work.safety import grade
from bot.work.safety.allergens import Named
from bot.work.trials import blind

_MOST_INGREDIENTS = 6
_FIRST_STOCK = {Jurisdiction.US: "letter-2x5 102x51"}
_USUAL_STOCK = "a4-2x7 99x38"


@dataclass(frozen=True, slots=True)
class LabelStock:
    """One kind of label paper: `handle` is the word to type for it.

    `paper` is 'A4', 'Letter' or '' for a roll; `per_page` counts the labels of a sheet; lengths in mm,
    `height_mm` is None for a roll cut to the text.
    """

    name: str
    handle: str
    paper: str
    per_page: int
    width_mm: float
    height_mm: float | None


def _described(name: str) -> LabelStock:
    stock = STOCKS[name]
    if isinstance(stock, Roll):
        return LabelStock(name, name.replace(" ", "-"), "", 1, stock.width_mm, stock.length_mm)
    handle = name.split(" ", maxsplit=1)[0]
    paper = "A4" if stock.page_width_mm < 212 else "Letter"
    return LabelStock(name, handle, paper, stock.per_page, stock.label_width_mm, stock.label_height_mm)


ALL_STOCKS: Mapping[str, LabelStock] = {name: _described(name) for name in STOCKS}


def stock_for(bar: BarView) -> LabelStock:
    """Return the bar's label paper, or the usual one in its country (common practice)."""
    chosen = bar.settings.labels
    if chosen not in ALL_STOCKS:
        chosen = _FIRST_STOCK.get(Jurisdiction(bar.jurisdiction), _USUAL_STOCK)
    return ALL_STOCKS[chosen]


def offered(bar: BarView) -> list[LabelStock]:
    """Return all label papers, the bar's own first, then those of its paper size, rolls last."""
    own = stock_for(bar)
    ranks = {bar.paper: 1, "": 2}
    return sorted(ALL_STOCKS.values(), key=lambda one: 0 if one == own else ranks.get(one.paper, 3))


@dataclass(frozen=True, slots=True)
class LabelFacts:
    """The content of a batch's label in plain values: strength % vol, volumes mL, days of the bar.

    `bottle_ml` is None if bottles of several sizes or none were filled; `ingredients` are the main ones,
    largest first, and `more_ingredients` counts those left out. `flammable` goes by the flash point. A bottle
    of a running blind trial, `blind`, shows neither strength nor ingredients, and everything else is the same
    for all its bottles. `label_lines` are the preparation's own, in English for the catalogues.
    """

    batch: BatchView
    made_on: date
    checked_clear_on: date | None
    strength: Range[float] | None
    bottle_ml: Fraction | None
    bottles: int
    ingredients: tuple[str, ...]
    more_ingredients: int
    allergens: tuple[Named, ...]
    not_confirmed: tuple[str, ...]
    flammable: bool
    keep_cold: bool
    label_lines: tuple[str, ...]
    blind: int | None = None


def is_flammable(batch: BatchView) -> bool:
    """Whether the label says flammable: by the stricter end of the flash point."""
    flash = mix_of_batch(batch.frozen["lines"]).flash
    return flash is not None and flash.category is not FlammableCategory.BELOW_TABLE


def facts_of(context: Context, number: int) -> LabelFacts:
    """Collect the content of a batch's label. Raises NotThereError."""
    batch = batches.get(context, number)
    trial = blind.trial_of(context, batch)
    flammable = any(is_flammable(one) for one in blind.bottles_of(context, batch))
    batch = blind.as_any_bottle(context, batch)
    frozen = batch.frozen
    looks = [event for event in batch.events if event.what == "check"]
    # What is done to a batch after a look makes the look void.
    seen_clear = looks[-1].at if looks and batch.clarity == looks[-1].clarity == Clarity.CLEAR else None
    fill = _fill(context, batch)
    names = _by_amount(batch) if trial is None else []
    preparation = PREPARATION_DEFAULTS[Preparation(frozen["preparation"])]
    return LabelFacts(
        batch,
        context.bar.day_of(batch.made_at),
        None if seen_clear is None or trial is not None else context.bar.day_of(seen_clear),
        batch.strength if trial is None else None,
        fill[0][0] if len(fill) == 1 else None,
        min(sum(count for _size, count in fill) or 1, MOST_COPIES),
        tuple(names[:_MOST_INGREDIENTS]),
        max(0, len(names) - _MOST_INGREDIENTS),
        tuple(_allergens(context, batch)),
        tuple(grade.open_in_snapshot(context, batch.frozen)),
        flammable,
        preparation.keep_cold or bool(frozen.get("keep_cold")),
        preparation.label_lines,
        trial,
    )


def _fill(context: Context, batch: BatchView) -> list[tuple[Fraction, int]]:
    """Return the bottles by size: those filled, else those planned, for what came out of a strained batch."""
    found = bottles.left(context, batch.number)
    sizes = [] if found is None else [(one.size_ml, one.filled) for one in found.sizes if one.filled]
    if sizes:
        return sizes
    fill = [(Fraction(str(size)), int(count)) for size, count in batch.frozen.get("fill", ()) if int(count)]
    if not fill or batch.strained is None:
        return fill
    return list(fill_plan(batch.total_ml, tuple(size for size, _ in fill)).full)


def _by_amount(batch: BatchView) -> list[str]:
    """Names by amount, mixing grams and millilitres: the order on a label needs no more precision."""
    lines = sorted(batch.frozen["lines"], key=lambda line: -Fraction(str(line["amount"])))
    return list(dict.fromkeys(str(line["name"]) for line in lines))


def _allergens(context: Context, batch: BatchView) -> list[Named]:
    if "allergens" in batch.frozen:
        return allergies.kept_with(batch.frozen)
    names = [str(line["name"]) for line in batch.frozen["lines"]]
    return allergies.once(allergen_lines(names, Jurisdiction(context.bar.jurisdiction)))


@dataclass(frozen=True, slots=True)
class Printed:
    """A sheet to print and a picture of its first label."""

    sheet: LabelSheet
    preview: LabelPreview


def print_labels(text: LabelText, stock: LabelStock, copies: int, start: int = 1) -> Printed:
    """Make the sheet and the picture; `start` is the first free label of a partly used sheet.

    Raises BadValueError for an impossible number of copies or first label.
    """
    paper = stock_named(stock.name)
    if not 1 <= copies <= MOST_COPIES:
        raise BadValueError("number of labels", str(copies))
    if not 1 <= start <= (paper.per_page if isinstance(paper, Sheet) else 1):
        raise BadValueError("first label", str(start))
    return Printed(
        label_sheet(text, paper, copies=copies, start=start),
        label_preview(text, paper, bottles=copies),
    )
