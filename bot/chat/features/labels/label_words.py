"""Word labels: their text, and the names of label papers."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.turn import Turn
from bot.chat.features.safety.grade_words import allergen_line, mark
from bot.chat.i18n.language import _, ngettext, show_full_day, show_number, tongue
from bot.chat.reply.units import show_ml, show_percents
from bot.documents.labels.labels import LabelText
from bot.trade.numbers.ranges import Range
from bot.trade.words import N_
from bot.work.labels.labels import LabelFacts, LabelStock

_MM_PER_INCH = Fraction(254, 10)
_FLAMMABLE_LINE = N_("Flammable: keep away from flame and heat")
_COLD_LINE = N_("Keep refrigerated")
_CLOSED_LINE = N_("Keep closed, cool and out of the light")


def stock_words(stock: LabelStock, units: str) -> str:
    """Write a label paper: 'A4, 14 labels of 99.1 x 38.1 mm', in inches for a bar with US units."""
    size = _size(stock, units)
    if stock.paper:
        return ngettext(
            "{paper}, {count} label of {size}", "{paper}, {count} labels of {size}", stock.per_page
        ).format(paper=stock.paper, count=stock.per_page, size=size)
    if stock.height_mm is None:
        return _("roll {size} wide, cut to length").format(size=size)
    return _("roll of labels, {size}").format(size=size)


def _size(stock: LabelStock, units: str) -> str:
    inches = units == "us"
    lengths = [stock.width_mm] if stock.height_mm is None else [stock.width_mm, stock.height_mm]
    shown = [_length(length, inches) for length in lengths]
    unit = _("in") if inches else _("mm")
    return f"{' x '.join(shown)} {unit}"


def _length(mm: float, inches: bool) -> str:
    exact = Fraction(str(mm))
    return show_number(exact / _MM_PER_INCH, 2) if inches else show_number(exact, 1)


def link_of(turn: Turn, number: int) -> str:
    """Return the content of the QR symbol: a link to the batch in the chat, or its line in a console."""
    if turn.deep_link is None:
        return f"batch {number}"
    return turn.deep_link(f"b_{turn.context.bar.id}_{number}")


def label_text(turn: Turn, facts: LabelFacts) -> LabelText:
    """Word a batch's label in the current language."""
    batch = facts.batch
    units = turn.context.bar.units
    return LabelText(
        name=batch.name,
        batch=_("Batch {number}").format(number=batch.number),
        bar=turn.context.bar.name,
        made=_("Made {day}").format(day=show_full_day(facts.made_on)),
        clear_checked=""
        if facts.checked_clear_on is None
        else _("Checked clear {day}").format(day=show_full_day(facts.checked_clear_on)),
        discard_by=_("Discard after {day}").format(day=show_full_day(batch.discard_on)),
        strength=_strength(facts.strength),
        volume=_volume(facts, units),
        ingredients=_ingredients(facts),
        allergens=allergen_line(facts.allergens) or _("Allergens: no name in it points to one."),
        flammable=_("Flammable") if facts.flammable else "",
        storage=_(_COLD_LINE) if facts.keep_cold else _(_CLOSED_LINE),
        made_by=_("Made by {name}").format(name=batch.made_by),
        cautions=_lines(facts),
        link=link_of(turn, batch.number),
        numbering=_("{number} of {total}"),
        continued=_("continued"),
        language=tongue().language,
    )


def _strength(percent: Range[float] | None) -> str:
    return show_percents(percent) if percent is not None and percent.high else ""


def _volume(facts: LabelFacts, units: str) -> str:
    if facts.bottle_ml is not None:
        return show_ml(facts.bottle_ml, units)
    return _("of {volume}").format(volume=show_ml(facts.batch.total_ml, units))


def _ingredients(facts: LabelFacts) -> str:
    if facts.blind is not None:
        return _("Blind trial {trial}: what went in stays hidden until it ends.").format(
            trial=show_number(facts.blind, 0)
        )
    names = ", ".join(facts.ingredients)
    if not facts.more_ingredients:
        return names
    more = ngettext("and {count} more", "and {count} more", facts.more_ingredients)
    return f"{names}, {more.format(count=facts.more_ingredients)}"


def _lines(facts: LabelFacts) -> tuple[str, ...]:
    """Return the preparation's own lines without those printed elsewhere, and the unconfirmed grades."""
    elsewhere = {_COLD_LINE, _CLOSED_LINE}
    if not facts.flammable:
        elsewhere.add(_FLAMMABLE_LINE)
    own = [_(line) for line in facts.label_lines if line not in elsewhere]
    return tuple(line for line in (mark(facts.not_confirmed), *own) if line)
