"""Import the book: ingredients, settings, formulas, sprayers and prices."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from pydantic import ValidationError

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, IngredientKind, Preparation
from bot.work.errors import BadValueError
from bot.work.formulas import ingredients, other_names, overheads
from bot.work.people import bars
from bot.work.transfer.import_references import Intake
from bot.work.transfer.rows import BarRow, FormulaRow, IngredientRow, PriceRow, SprayerRow, VersionRow
from bot.work.transfer.service_rows import MenuRow
from storage.tables import FormulaSprayer, FormulaVersion, Ingredient

_COLUMNS = {"currency", "units", "zone", "closing_minute", "jurisdiction"}
_BESIDE = ("density_g_per_ml", "density_source", "grams_each", "food_grade", "details", "archived_at")


class BookIntake(Intake):
    """Imports the book, as opposed to the log. Each method returns whether the row is new."""

    def _ingredient(self, row: IngredientRow) -> bool:
        key = plain_name(row.name)
        known = self.ingredients.get(key)
        if known is not None:
            self._other_names(row, known)
        if known is not None and (known not in self._put_away or row.archived_at is not None):
            return False
        self._room_for_one_more(self.ingredients)
        kind = None if row.kind is None else IngredientKind(row.kind)
        number = ingredients.add(self._context, row.name, kind, row.strength_percent).id
        found = self._book.get(Ingredient, number)
        assert found is not None  # noqa: S101 - just written
        self._put_away.discard(number)
        self._taken.note("ingredient", number)
        for name in (
            "density_g_per_ml",
            "density_source",
            "grams_each",
            "food_grade",
            "details",
            "archived_at",
        ):
            setattr(found, name, getattr(row, name))
        self.ingredients[key] = number
        self._other_names(row, number)
        return True

    def _other_names(self, row: IngredientRow, number: int) -> None:
        """Add the other names that mean nothing here yet."""
        for name in row.other_names:
            if plain_name(name) not in self.ingredients:
                self._room_for_one_more(self.ingredients)
                other_names.write(self._context, number, name)
                self.ingredients[plain_name(name)] = number

    # -- settings, if the book is still empty -------------------------------------------------

    def _settings(self) -> None:
        given = self._sheet.bar
        if not isinstance(given.get("settings"), dict) or not self._empty or not self._context.role.manages:
            return
        try:
            self._bar = bar = BarRow.model_validate(given)
        except ValidationError:
            raise BadValueError("settings", "") from None
        since = {
            str(self.ingredients[plain_name(name)]): day
            for name, day in bar.spraying_since.items()
            if plain_name(name) in self.ingredients
        }
        settings = bar.settings.changed(
            spraying_since=since, more=self.bar.settings.more, formula_costs={}, sprayer=0
        )
        values = {name: getattr(settings, name) for name in settings.to_json()}
        before = self.bar
        self._set(**bar.model_dump(include=_COLUMNS, exclude_unset=True), **values)
        self._taken.settings = before, self.bar

    def _own(self) -> None:
        """Set the bar's default sprayer and the costs of formulas, now that they have numbers here."""
        if self._bar is None:
            return
        sprayer = self._sprayers.get(plain_name(self._bar.sprayer or ""))
        if sprayer is not None:
            self._set(sprayer=sprayer)
        costs = {
            str(self.formulas[plain_name(name)]): {
                field: one[field] for field in overheads.FIELDS if field in one
            }
            for name, one in self._bar.formula_costs.items()
            if plain_name(name) in self.formulas
        }
        if costs:
            self._set(formula_costs=costs)

    def _set(self, **values: Any) -> None:
        """Change settings as part of the import, and record their previous values for its undo."""
        before, after = bars.change_unlogged(self._context, **values)
        self._taken.settings_changed.append({"before": before, "after": after})

    # -- formulas, sprayers, prices -----------------------------------------------------------

    def _formula(self, row: FormulaRow) -> bool:
        for version in row.versions:
            self._strengths(version)
        key = plain_name(row.name)
        if key in self.formulas:
            return False
        self._room_for_one_more(self.formulas)
        latest = row.versions[-1].number
        versions = [self._version(row, one) for one in row.versions]
        formula = self._book.add(row.stored(match_key=key, latest=latest, made_at=versions[0].made_at))
        for found, one in zip(versions, row.versions, strict=True):
            found.formula_id = formula.id
            self._book.add(found)
            self._book.add_all(
                [
                    line.stored(formula_id=formula.id, number=one.number, position=position)
                    for position, line in enumerate(one.lines, start=1)
                ]
            )
        self.formulas[key] = formula.id
        self._note(row, formula.id)
        self._taken.latest[str(formula.id)] = latest
        return True

    def _version(self, row: FormulaRow, one: VersionRow) -> FormulaVersion:
        """Return a version; missing values take the defaults of its kind."""
        usual = PREPARATION_DEFAULTS[Preparation(row.preparation)]
        found: FormulaVersion = one.stored(made_by=self.person_id, made_at=one.made_at or self.now)
        if found.rest_hours is None:
            found.rest_hours = Fraction(usual.rest_hours)
        if found.discard_days is None:
            found.discard_days = usual.discard_days
        if row.preparation == Preparation.AROMA_MIST and found.sprays_low is None:
            settings = self.bar.settings
            found.sprays_low, found.sprays_high = (
                Fraction(settings.sprays_low),
                Fraction(settings.sprays_high),
            )
        return found

    def _strengths(self, version: VersionRow) -> None:
        """Set the strengths in a table of formulas, except for spirits with a known strength."""
        for line in version.lines:
            found = self._book.get(Ingredient, line.ingredient_id)
            if line.strength_percent is not None and found is not None and found.strength_percent is None:
                found.strength_percent = line.strength_percent
                self._taken.strengths.append((found.id, str(line.strength_percent)))

    def _menu(self, row: MenuRow) -> bool:
        key = plain_name(row.name)
        if key in self.drinks:
            return False
        drink = self._book.add(row.stored(match_key=key, made_at=self.now))
        lines = [
            one.stored(menu_id=drink.id, position=position) for position, one in enumerate(row.lines, start=1)
        ]
        self._book.add_all(lines)
        self.drinks[key] = drink.id
        self._taken.note("drink", drink.id)
        return True

    def _sprayer(self, row: SprayerRow) -> bool:
        key = plain_name(row.name)
        if key in self._sprayers:
            return False
        sprayer = self._book.add(row.stored(match_key=key, made_at=self.now))
        self._sprayers[key] = sprayer.id
        self._book.add_all([run.stored(sprayer_id=sprayer.id, by=self.person_id) for run in row.runs])
        self._taken.note("sprayer", sprayer.id)
        self._taken.runs[str(sprayer.id)] = len(row.runs)
        for number in row.formulas:
            if self._book.get(FormulaSprayer, number) is None:
                self._book.add(FormulaSprayer(formula_id=number, sprayer_id=sprayer.id))
        return True

    def _price(self, row: PriceRow) -> bool | None:
        at, newer = row.at or self.now, self._in_force.get(row.ingredient_id)
        if newer is not None and newer.at > at:
            self._taken.older += 1  # the newest row is the valid price, and history is not rewritten
            return None
        high = row.garnishes_high or row.garnishes_low
        self._note(row, self._book.add(row.stored(at=at, garnishes_high=high)).id)
        return True
