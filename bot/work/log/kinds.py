"""The kinds of entries that can be undone, and how to undo and restore each."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Any

from bot.work.batches import arriving, batch_undo, bottles, moving, shelf
from bot.work.context import Context
from bot.work.events import events
from bot.work.formulas import formula_undo, ingredients, merging, other_names
from bot.work.formulas.ingredients import STRENGTHS
from bot.work.fruit import peeled_undo, waste
from bot.work.menu import menu
from bot.work.money import prices
from bot.work.people import settings_undo
from bot.work.planning import event_use
from bot.work.reminders import nights, own
from bot.work.spray import drinks, sprayers
from bot.work.standing import Details, Rows, Value, archived
from bot.work.stock import counts, pars
from bot.work.transfer import import_undo
from bot.work.trials import trial_undo
from storage.tables import Formula, Ingredient, Sprayer

Step = Callable[[Context, Details], Details]
Subject = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Kind:
    """How to undo and restore entries of one kind; `put_back` is None if they cannot be restored.

    `take_back` returns the details that `put_back` needs, and `put_back` the changed details of the entry.
    `about` names what the entry changed: of two entries that changed the same, only the later can be undone.
    `look` raises OffTheLogError if the batch or trial of the entry is itself undone; `check` raises the other
    errors of `take_back`.
    """

    take_back: Step
    put_back: Step | None
    about: Callable[[Details], Iterable[Subject]] = lambda details: ()
    look: Callable[[Context, Details], Any] = lambda context, details: None
    check: Callable[[Context, Details], Any] = lambda context, details: None


def _value(value: Value, *names: str) -> Kind:
    """Return the kind of entries that change a value. `names` are its subject and the identifying details."""

    def about(details: Details) -> list[Subject]:
        return [(names[0], *(str(details.get(name)) for name in names[1:]))]

    return Kind(value.take_back, value.put_back, about, value.read, value.check)


def _rows(rows: Rows) -> Kind:
    """Return the kind of entries that log rows."""
    return Kind(rows.take_back, rows.put_back)


def _archived(table: type[Any], name: str, after: bool) -> Kind:
    """Return the kind of entries that archive a row or bring it back. A new row is archived when undone."""
    return _value(archived(table, name, after), f"{name} away", name)


def _settings(details: Details) -> list[Subject]:
    return [("setting", name) for name in details["before"]]


def _content(details: Details) -> list[Subject]:
    number = str(details["batch"])
    return [("batch", number), ("strained", number)]


def _version(details: Details) -> list[Subject]:
    return [("version", str(details["formula"]))]


def _bottles(details: Details) -> list[Subject]:
    return [("bottles", str(details["batch"]))]


def _batch_and_bottles(details: Details) -> list[Subject]:
    return [("batch", str(details["batch"])), *(_bottles(details) if "rows" in details else ())]


def _with_strengths(kind: Kind) -> Kind:
    """Return a kind of entries that may have changed the strengths of known ingredients as well."""

    def each(of_kind: Step, of_strengths: Step) -> Step:
        def step(context: Context, details: Details) -> Details:
            if "strengths" in details:
                of_strengths(context, details["strengths"])
            return of_kind(context, details)

        return step

    def about(details: Details) -> list[Subject]:
        changed = details["strengths"]["before"] if "strengths" in details else ()
        return [*kind.about(details), *(("strength", number) for number in changed)]

    def check(context: Context, details: Details) -> None:
        kind.check(context, details)
        if "strengths" in details:
            STRENGTHS.check(context, details["strengths"])

    put_back = None if kind.put_back is None else each(kind.put_back, STRENGTHS.put_back)
    return Kind(each(kind.take_back, STRENGTHS.take_back), put_back, about, kind.look, check)


_CHANGE = Kind(
    formula_undo.take_back_change, formula_undo.put_back_change, _version, check=formula_undo.check
)

KINDS: dict[str, Kind] = {
    "waste": _rows(waste.ROWS),
    "price": _rows(prices.ROWS),
    "buy stock": Kind(counts.take_back_buying, counts.put_back_buying),
    "count stock": _rows(counts.COUNTS),
    "par": _value(pars.PAR, "par", "ingredient"),
    "drinks": _rows(drinks.ROWS),
    "peeled": Kind(peeled_undo.take_back, peeled_undo.put_back, check=peeled_undo.check),
    "juiced": _rows(peeled_undo.JUICINGS),
    "peeled in batch": Kind(
        peeled_undo.take_back_batch, peeled_undo.put_back_batch, look=peeled_undo.look_at_batch
    ),
    "batch": Kind(batch_undo.take_back_made, batch_undo.put_back_making, check=batch_undo.check_making),
    "check": _value(batch_undo.changed("check"), "batch", "batch"),
    "open batch": replace(_value(batch_undo.changed("open batch"), "batch"), about=_batch_and_bottles),
    "use bottle": replace(_value(batch_undo.changed("use bottle"), "batch"), about=_batch_and_bottles),
    "bottled": replace(_rows(bottles.ROWS), about=_bottles, look=batch_undo.look_at_batch),
    "spilt": replace(_rows(bottles.ROWS), about=_bottles, look=batch_undo.look_at_batch),
    "use at event": Kind(event_use.take_back, event_use.put_back, _bottles, look=batch_undo.look_at_batch),
    "moved": Kind(
        moving.take_back,
        moving.put_back,
        _batch_and_bottles,
        look=batch_undo.look_at_batch,
        check=moving.check,
    ),
    "moved in": Kind(
        arriving.refuse, None, _batch_and_bottles, look=batch_undo.look_at_batch, check=arriving.refuse
    ),
    "use up": _value(batch_undo.changed("use up"), "batch", "batch"),
    "discard": _value(batch_undo.changed("discard"), "batch", "batch"),
    "strain": _value(batch_undo.STRAINED, "strained", "batch"),
    "add to batch": replace(_value(batch_undo.changed("add to batch"), "batch"), about=_content),
    "filter": replace(_value(batch_undo.changed("filter"), "batch"), about=_content),
    "lot": _value(batch_undo.LOT, "lot", "batch", "position"),
    "formula": _with_strengths(_archived(Formula, "formula", after=False)),
    "change formula": _with_strengths(_CHANGE),
    "rename formula": _value(formula_undo.NAME, "formula name", "formula"),
    "archive formula": _archived(Formula, "formula", after=True),
    "restore formula": _archived(Formula, "formula", after=False),
    "settings": replace(_value(settings_undo.SETTINGS, "setting"), about=_settings),
    "other name": _value(other_names.NAME, "name", "key"),
    "forget name": _value(other_names.NAME, "name", "key"),
    "new ingredient": _archived(Ingredient, "ingredient", after=False),
    "merge": Kind(merging.take_back, merging.put_back, merging.about, check=merging.check),
    "strength": _value(ingredients.STRENGTH, "strength", "ingredient"),
    "density": _value(ingredients.DENSITY, "density", "ingredient"),
    "food grade": _value(ingredients.GRADE, "food grade", "ingredient"),
    "opened": _value(shelf.OPENED, "opened", "ingredient"),
    "sprayer": _archived(Sprayer, "sprayer", after=False),
    "weighing": Kind(sprayers.take_back_weighing, sprayers.put_back_weighing),
    "use sprayer": _value(sprayers.USE, "sprayer of", "formula"),
    "retire sprayer": _archived(Sprayer, "sprayer", after=True),
    "trial": Kind(trial_undo.take_back_start, trial_undo.put_back_start, check=trial_undo.check_start),
    "trial variant": _value(trial_undo.VARIANT, "variant", "trial", "number"),
    "trial batches": Kind(trial_undo.take_back_batches, trial_undo.put_back_batches),
    "taste": _rows(trial_undo.SCORE),
    "triangle": _rows(trial_undo.SCORE),
    "close trial": _value(trial_undo.CLOSE, "trial", "trial"),
    "promote": Kind(
        trial_undo.take_back_promotion, trial_undo.put_back_promotion, _version, check=formula_undo.check
    ),
    "remind": _value(own.STATE, "reminder", "reminder"),
    "note": _value(own.STATE, "reminder", "reminder"),
    "change reminder": _value(own.STATE, "reminder", "reminder"),
    "stop reminder": _value(own.STATE, "reminder", "reminder"),
    "tick": _value(own.STATE, "reminder", "reminder"),
    "no waste": _value(nights.NO_WASTE, "night", "day"),
    "closes": _value(own.CLOSER, "closer", "day"),
    "event": _value(events.PLANNED, "event", "event"),
    "change event": _value(events.ASKED, "event", "event"),
    "cancel event": _value(events.CANCELLED, "event", "event"),
    "event back": _value(events.BACK, "event back", "event"),
    "serve": _value(menu.DRINK, "drink", "drink"),
    "off menu": _value(menu.DRINK, "drink", "drink"),
    "import": Kind(import_undo.take_back, None),
    # Of an imported line. Other reasons belong to the chain of the waste.
    "waste reason": _value(waste.REASON, "reason", "rows"),
}
