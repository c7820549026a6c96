"""The drinks of a bar's list, each with its preparations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.work.context import Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaView
from bot.work.standing import Details, Value
from storage.tables import MenuDrink, MenuLine
from storage.types import JsonObject

MOST_LINES = 8
MOST_ML = 1000


@dataclass(frozen=True, slots=True)
class Served:
    """A preparation in a drink: sprays, low and high, or mL."""

    formula_id: int
    sprays: tuple[Fraction, Fraction] | None
    ml: Fraction | None


@dataclass(frozen=True, slots=True)
class ServedView:
    """A preparation in a drink, with its formula."""

    formula: FormulaView
    sprays: tuple[Fraction, Fraction] | None
    ml: Fraction | None

    @property
    def ml_each(self) -> tuple[Fraction, Fraction]:
        """The mL in one drink, low and high."""
        if self.sprays is None:
            amount = self.ml or Fraction(0)
            return amount, amount
        low, high = self.formula.spray_ml
        return self.sprays[0] * low, self.sprays[1] * high

    @property
    def middle_ml(self) -> Fraction:
        """The likely mL in one drink: the middle of the sprays, and of the size of one."""
        if self.sprays is None:
            return self.ml or Fraction(0)
        return sum(self.sprays, Fraction(0)) / 2 * sum(self.formula.spray_ml, Fraction(0)) / 2


@dataclass(frozen=True, slots=True)
class MenuDrinkView:
    """A drink of the list; `glass_ml` is its volume without what is sprayed on it, None if not said."""

    id: int
    name: str
    glass_ml: Fraction | None
    lines: tuple[ServedView, ...]


def listed(context: Context) -> list[MenuDrinkView]:
    """Return the drinks on the list, by name."""
    rows = context.book.all(MenuDrink, MenuDrink.archived_at.is_(None))
    return sorted((_view(context, row) for row in rows), key=lambda one: one.name.casefold())


def get(context: Context, number: int) -> MenuDrinkView:
    """Return one drink. Raises NotThereError."""
    return _view(context, _row(context, number))


def served(context: Context, number: int) -> MenuDrinkView:
    """Return a drink with its preparations. Raises NotThereError, also if its only entry was undone."""
    drink = get(context, number)
    if not drink.lines:
        raise NotThereError("drink", drink.name)
    return drink


def serve(context: Context, name: str, glass_ml: Fraction | None, lines: Sequence[Served]) -> MenuDrinkView:
    """Put a drink on the list, or change the one of that name. Raises BadValueError, NotThereError."""
    clean = " ".join(name.split())
    key = plain_name(clean)
    if not key or len(clean) > 80:
        raise BadValueError("name", clean[:40])
    if not 0 < len(lines) <= MOST_LINES:
        raise BadValueError("number of ingredients", str(len(lines)))
    for one in lines:
        formulas.get(context, one.formula_id)
    row = context.book.one(MenuDrink, MenuDrink.match_key == key)
    if row is None:
        row = context.book.add(MenuDrink(name=clean, match_key=key, glass_ml=None, made_at=context.now))
        row.archived_at = context.now
    said = {
        "glass": None if glass_ml is None else str(glass_ml),
        "lines": [_plain(one) for one in lines],
        "away": False,
    }
    _change(context, "serve", row, said)
    return _view(context, row)


def take_off(context: Context, number: int) -> MenuDrinkView:
    """Take a drink off the list. Raises NotThereError."""
    row = _row(context, number)
    if row.archived_at is not None:
        raise NotThereError("drink", row.name)
    _change(context, "off menu", row, {**_state(context, row), "away": True})
    return _view(context, row)


def put_away(context: Context, numbers: Sequence[int]) -> None:
    """Take drinks off the list without a log line, and free their names."""
    for row in context.book.all(MenuDrink, MenuDrink.id.in_(list(numbers))):
        row.archived_at = context.now
        row.name = f"{row.name[:60]} (#{row.id})"
        row.match_key = plain_name(row.name)
    context.book.touched()


def uses(context: Context) -> dict[int, dict[int, Fraction]]:
    """Return the likely mL of each formula in each drink, past drinks included: by formula, by drink."""
    found: dict[int, dict[int, Fraction]] = {}
    for row in context.book.all(MenuDrink):
        for line in _view(context, row).lines:
            found.setdefault(line.formula.id, {})[row.id] = line.middle_ml
    return found


def _row(context: Context, number: int) -> MenuDrink:
    row = context.book.get(MenuDrink, number)
    if row is None:
        raise NotThereError("drink", str(number))
    return row


def _lines(context: Context, number: int) -> Sequence[MenuLine]:
    return context.book.all(MenuLine, MenuLine.menu_id == number, order=MenuLine.position)


def _view(context: Context, row: MenuDrink) -> MenuDrinkView:
    lines = tuple(
        ServedView(
            formulas.get(context, line.formula_id),
            None
            if line.sprays_low is None
            else (line.sprays_low, line.sprays_low if line.sprays_high is None else line.sprays_high),
            line.ml,
        )
        for line in _lines(context, row.id)
    )
    return MenuDrinkView(row.id, row.name, row.glass_ml, lines)


# -- the log and undo ----------------------------------------------------------------------------


def _change(context: Context, what: str, row: MenuDrink, after: JsonObject) -> None:
    before = _state(context, row)
    _set(context, row, after)
    context.log(what, drink=row.id, name=row.name, before=before, after=after)


def _plain(one: Served) -> list[object]:
    sprays = [None, None] if one.sprays is None else [str(end) for end in one.sprays]
    return [one.formula_id, *sprays, None if one.ml is None else str(one.ml)]


def _state(context: Context, row: MenuDrink) -> JsonObject:
    lines = [
        [
            line.formula_id,
            *(None if end is None else str(end) for end in (line.sprays_low, line.sprays_high, line.ml)),
        ]
        for line in _lines(context, row.id)
    ]
    glass = None if row.glass_ml is None else str(row.glass_ml)
    return {"glass": glass, "lines": lines, "away": row.archived_at is not None}


def _set(context: Context, row: MenuDrink, state: JsonObject) -> None:
    row.glass_ml = None if state["glass"] is None else Fraction(state["glass"])
    row.archived_at = context.now if state["away"] else None
    for line in _lines(context, row.id):
        context.book.session.delete(line)
    context.book.session.flush()
    context.book.add_all(
        [
            MenuLine(
                menu_id=row.id,
                position=position,
                formula_id=formula_id,
                sprays_low=None if low is None else Fraction(low),
                sprays_high=None if high is None else Fraction(high),
                ml=None if ml is None else Fraction(ml),
            )
            for position, (formula_id, low, high, ml) in enumerate(state["lines"], start=1)
        ]
    )
    context.book.touched()


def _read(context: Context, details: Details) -> JsonObject:
    return _state(context, _row(context, details["drink"]))


def _write(context: Context, details: Details, state: JsonObject) -> None:
    _set(context, _row(context, details["drink"]), state)


DRINK = Value(_read, _write)
