"""Word the clearing estimate: one line for a scale or a card, and the parts of the whole answer."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _, ngettext, show_sensibly
from bot.chat.reply.message import Button
from bot.chat.reply.units import show_ml
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids.clearing.estimate import COLD_BELOW_C
from bot.trade.liquids.clearing.mend import Band, Mend, MendKind, State
from bot.trade.words import N_
from bot.work.batches.batches import Clarity
from bot.work.formulas.formulas import FormulaLineView, FormulaView
from bot.work.liquids import clearing as clarity
from bot.work.liquids.clearing import ClearAnswer, Seen

ESTIMATE = N_(
    "An estimate: real oils hold polar parts that help and waxes that drop out. The rested bottle decides."
)
_STATES = {
    State.CLEAR: N_("should stay clear"),
    State.BORDERLINE: N_("borderline, it may cloud"),
    State.WILL_SPLIT: N_("will split"),
    State.WITHHELD: N_("clearing not known"),
}
CLARITY_SEEN = {Clarity.CLEAR: N_("clear"), Clarity.HAZY: N_("hazy"), Clarity.SPLIT: N_("split")}
_MOST_SIGHTINGS = 4
_MOST_MENDS = 3
_PARTS = {
    MendKind.MORE_SPIRIT: ("spirit_ml", IngredientKind.SPIRIT),
    MendKind.LESS_GLYCOL: ("glycol_ml", IngredientKind.PROPYLENE_GLYCOL),
    MendKind.LESS_GLYCEROL: ("glycerol_ml", IngredientKind.GLYCEROL),
    MendKind.LESS_WATER: ("water_ml", IngredientKind.WATER),
    MendKind.LESS_OIL: ("oil_ml", IngredientKind.CITRUS_OIL),
    MendKind.LESS_CARRIER: ("carrier_ml", IngredientKind.CARRIER_OIL),
}


def clear_line(turn: Turn, view: FormulaView, temperature_c: float, usual: FormulaView | None = None) -> str:
    """Return one line on whether a formula stays clear, or '' without oil or without an answer.

    `usual` is the formula with its own spirit if `view` has another; the line then says both.
    """
    found = clarity.standing(turn.context, view, temperature_c)
    if found is None or found.state is None:
        return ""
    seen = here_words(found.seen)
    if seen:
        return _("Clearing: {seen}").format(seen=seen)
    if found.state is State.WITHHELD:
        return _("Clearing: not known, the models lack {names}").format(names=", ".join(found.outside))
    before = None if usual is None else clarity.standing(turn.context, usual, temperature_c)
    if before is not None and before.state is not None and before.state is not found.state:
        return _("Clearing: {state}, by estimate (with the usual spirit: {before})").format(
            state=_(_STATES[found.state]), before=_(_STATES[before.state])
        )
    return _("Clearing: {state}, by estimate").format(state=_(_STATES[found.state]))


def clear_button(view: FormulaView, swap: str = "") -> Button:
    """Return the button for the whole answer, with another spirit if `swap` is given."""
    return Button(_("Will it clear?"), f"clear #{view.id}.{view.version} {swap}".rstrip())


def here_words(seen: Seen) -> str:
    """Return the summary of this bar's own checks, or '' if they are too few."""
    worst = seen.worst_last
    if worst is not None:
        return _("{seen} here when last looked at (batch {number})").format(
            seen=_(CLARITY_SEEN[worst.clarity]), number=worst.batch
        )
    if seen.clear_here:
        return _("clear here, seen {count} times").format(count=seen.times_clear)
    return ""


def title(answer: ClearAnswer) -> str:
    """Return the answer itself: the bar's own checks if they suffice, else the models' state."""
    what = here_words(answer.seen) or _(_STATES[answer.clearing.state])
    return _("{name}: {what}").format(name=answer.view.name, what=what)


def sightings_line(seen: Seen) -> str:
    """Return the checks of the formula in this bar, newest last, or ''."""
    shown = seen.sightings[-_MOST_SIGHTINGS:]
    if not shown:
        return ""
    looks = [
        ngettext(
            "{seen} after {count} day (batch {number})",
            "{seen} after {count} days (batch {number})",
            one.days,
        ).format(seen=_(CLARITY_SEEN[one.clarity]), count=one.days, number=one.batch)
        for one in shown
    ]
    return _("Seen here: {looks}.").format(looks=", ".join(looks))


def belief_line(answer: ClearAnswer) -> str:
    """Return the probability of clear by the models and the bar's looks, or ''."""
    found = answer.belief
    if found is None:
        return ""
    text = ngettext(
        "By the models and {count} look at this oil: clear {chance}.",
        "By the models and {count} looks at this oil: clear {chance}.",
        found.looks,
    )
    return text.format(count=found.looks, chance=chance_words(found.clear))


def chance_words(probability: float) -> str:
    """Write a probability to the tenths that are known."""
    if probability > 0.95:
        return _("more than 9 times in 10")
    if probability < 0.05:
        return _("less than once in 10")
    tenths = round(10 * probability) or 1
    return ngettext("about {count} time in 10", "about {count} times in 10", tenths).format(count=tenths)


def models_line(answer: ClearAnswer) -> str:
    """Return the results of the two models, or '' if they did not run."""
    found = answer.clearing
    if found.original_clear is None:
        return ""
    if found.dortmund_clear is None:
        alone = (
            _("The cautious model keeps it one clear liquid")
            if found.original_clear
            else _("The cautious model sees it part in two")
        )
        said = _(
            "{alone}; the hopeful one has no say in this much water, where it dissolves far too much oil"
        )
        said = said.format(alone=alone)
    elif found.original_clear and found.dortmund_clear:
        said = _("Both models keep it one clear liquid")
    elif not found.original_clear and not found.dortmund_clear:
        said = _("Both models see it part in two")
    else:
        said = _("The hopeful model keeps it clear, the cautious one does not")
    if found.published:
        return said + "; " + _("published: {fact}.").format(fact=_(found.published[0].text))
    return said + "."


def cold_line(temperature_c: float) -> str:
    """Return what is not known of a cold bottle, or ''."""
    if temperature_c >= COLD_BELOW_C:
        return ""
    return _(
        "In the cold the models disagree even on the direction, so I take the worse of here and 20 °C; peel "
        "waxes can drop out as well. Chill a small bottle and look."
    )


def strength_line(answer: ClearAnswer) -> str:
    """Return the weakest spirit that stays clear at this ratio, as a band, or ''."""
    if answer.mixture.spirit_ml == 0 or answer.clearing.state is State.WITHHELD:
        return ""
    yours = _percent(answer.mixture.spirit_percent, 3)
    return _("Weakest spirit that clears it: {band} (yours {yours})").format(
        band=_band(answer.clearing.lowest_strength, _("none is strong enough")), yours=yours
    )


def oil_line(answer: ClearAnswer) -> str:
    """Return the largest share of oil that stays clear with this spirit, as a range, or ''."""
    if answer.mixture.oil_ml == 0 or answer.clearing.state is State.WITHHELD:
        return ""
    yours = _percent(100 * answer.mixture.oil_ml / answer.mixture.modelled_ml, 3)
    if answer.belief is not None:
        ends = answer.belief.largest_oil
        low, high = (_percent(100 * end) for end in (ends.low, ends.high))
        text = _("Most oil that stays clear: {low} to {high}, 8 times in 10 (yours {yours})")
        return text.format(low=low, high=high, yours=yours)
    return _("Most oil that stays clear: {band} (yours {yours})").format(
        band=_band(answer.clearing.largest_oil_percent, _("any amount")), yours=yours
    )


def _band(band: Band, missing: str) -> str:
    """Write a band, low to high; `missing` replaces a limit that a model does not have."""
    if band.original is not None and band.dortmund is not None:
        low, high = (_limit(end) for end in sorted((band.original, band.dortmund)))
        return low if low == high else _("{low} to {high}").format(low=low, high=high)
    known = band.original if band.dortmund is None else band.dortmund
    if known is None:
        return missing
    return _("{one} by one model, {other} by the other").format(one=_limit(known), other=missing)


def _limit(value: float) -> str:
    return _percent(value) if value else _("next to none")


def _percent(value: float, figures: int = 2) -> str:
    return f"{show_sensibly(Fraction(str(round(value, 2))), figures)} %"


@dataclass(frozen=True, slots=True)
class MendWords:
    """One mend as a row (what, how much), and the button that applies it to the formula if possible."""

    what: str
    amount: str
    button: Button | None


def mends(answer: ClearAnswer, factor: Fraction, units: str) -> list[MendWords]:
    """Return the smallest changes that clear the formula, with amounts times `factor`."""
    found = answer.clearing.mends
    best = [mend for mend in found if mend.reaches is State.CLEAR] or list(found)
    return [mend_words(answer, mend, factor, units) for mend in best[:_MOST_MENDS]]


def mend_words(answer: ClearAnswer, mend: Mend, factor: Fraction, units: str) -> MendWords:
    """Return one mend with amounts times `factor`."""
    if mend.kind is MendKind.STRONGER_SPIRIT:
        return MendWords(
            _(mend.kind), _("{percent} vol").format(percent=_percent(mend.mixture.spirit_percent)), None
        )
    part, kind = _PARTS[mend.kind]
    if _is_metric(answer.view, kind):
        units = "metric"  # as in the formula itself
    ml = Fraction(str(round(getattr(mend.mixture, part), 3)))
    change = Fraction(str(abs(mend.change_ml)))
    sign = "+" if mend.change_ml > 0 else "−"
    amount = _("{amount} ({sign}{change})").format(
        amount=show_ml(_short(ml * factor, 3), units),
        sign=sign,
        change=show_ml(_short(change * factor), units),
    )
    what = _(mend.kind)
    if mend.kind is MendKind.MORE_SPIRIT and answer.mixture.spirit_ml == 0:
        what = _("spirit of {percent}").format(percent=_percent(mend.mixture.spirit_percent))
    return MendWords(what, amount, _change_button(answer.view, kind, ml, units))


def _short(ml: Fraction, figures: int = 2) -> Fraction:
    return Fraction(f"{float(ml):.{figures}g}")


def _is_metric(view: FormulaView, kind: IngredientKind) -> bool:
    return any(
        line.quantity.unit in {"ml", "cl", "dl", "l"} for line in view.lines if line.ingredient.kind is kind
    )


def _change_button(view: FormulaView, kind: IngredientKind, ml: Fraction, units: str) -> Button | None:
    lines: list[FormulaLineView] = [line for line in view.lines if line.ingredient.kind is kind]
    if len(lines) != 1:
        return None
    name = lines[0].ingredient.name
    if ml == 0:
        return Button(
            _("Leave out {name}").format(name=name), f"change #{view.id}: remove #{lines[0].ingredient.id}"
        )
    amount = show_ml(_short(ml, 3), units)
    return Button(
        _("Change to {amount} {name}").format(amount=amount, name=name),
        f"change #{view.id}: #{lines[0].ingredient.id} {amount}",
    )
