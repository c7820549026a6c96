"""Taking in what stands in the book: ingredients, settings, formulas, sprayers and prices."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, IngredientKind, Preparation
from bot.work.errors import BadValueError
from bot.work.formulas import formulas, ingredients, overheads
from bot.work.people import bars
from bot.work.transfer.import_references import Intake
from bot.work.transfer.import_rows import Row
from bot.work.transfer.import_settings import columns_of, is_range, plain_details, settings_of
from storage.tables import (
    Formula,
    FormulaLine,
    FormulaSprayer,
    FormulaVersion,
    Ingredient,
    Price,
    Sprayer,
    SprayerRun,
)


class BookIntake(Intake):
    """Takes in what the bar knows, as against what it logged."""

    def _ingredient(self, row: Row) -> bool | None:
        name = row.text("name")
        kind = row.choice("kind", set(IngredientKind), needed=False) or None
        strength = row.number("strength_percent", needed=False)
        if strength is not None and strength > 100:
            row.wrong("strength_percent", "number")
        density, grams = row.number("density_g_per_ml", False, True), row.number("grams_each", False, True)
        grade = row.choice("food_grade", {"confirmed", "not confirmed"}, needed=False)
        details = row.data.get("details")
        if not self._good(row) or not plain_name(name):
            return None
        known = self._ingredients.get(plain_name(name))
        if known is not None and (known not in self._put_away or row.flag("archived")):
            return False
        self._room_for_one_more(self._ingredients)
        view = ingredients.add(self._context, name, None if kind is None else IngredientKind(kind), strength)
        found = self._book.get(Ingredient, view.id)
        assert found is not None  # noqa: S101 - just written
        self._put_away.discard(view.id)
        self._taken.note("ingredient", view.id)
        found.density_g_per_ml, found.grams_each = density, grams
        found.density_source = row.text("density_source", False, 200) or None
        found.food_grade = grade or None
        found.details = plain_details(details)
        found.archived_at = self._context.now if row.flag("archived") else None
        self._ingredients[plain_name(name)] = view.id
        return True

    def _settings(self) -> None:
        """Take the settings over, into a bar that has nothing in its book yet."""
        bar = self._sheet.bar
        if not bar or not self._empty or not self._context.role.manages:
            return
        given = bar.get("settings")
        if not isinstance(given, dict):
            return
        columns = columns_of(bar)
        settings = settings_of(given).changed(
            spraying_since=self._spraying_since(bar.get("spraying_since")),
            more=self._context.bar.settings.more,
        )
        values = {name: getattr(settings, name) for name in settings.to_json()}
        bars.change(self._context, **columns, **values)
        self._taken.settings_entries.append(self._context.entry or 0)
        self._taken.settings = True

    def _spraying_since(self, named: Any) -> dict[str, str]:
        """Return since when each fruit is sprayed, by the numbers that the fruit has here."""
        found = {}
        for name, day in (named if isinstance(named, dict) else {}).items():
            number = self._ingredients.get(plain_name(str(name)))
            if number is not None:
                found[str(number)] = str(day)
        return found

    def _formula(self, row: Row) -> bool | None:
        name = row.text("name")
        preparation = row.choice("preparation", set(Preparation))
        versions = [self._version(one, preparation) for one in row.rows("versions")]
        if not versions:
            row.wrong("versions", "missing")
        if not self._good(row) or any(one is None for one in versions):
            return None
        if plain_name(name) in self._formulas:
            return False
        made = [one for one in versions if one is not None]
        numbers = [version.number for version, _lines in made]
        if sorted(set(numbers)) != numbers:
            row.wrong("versions", "twice")
            return None
        self._room_for_one_more(self._formulas)
        formula = self._book.add(
            Formula(
                name=name,
                match_key=plain_name(name),
                preparation=preparation,
                latest=numbers[-1],
                made_at=made[0][0].made_at,
                archived_at=self._context.now if row.flag("archived") else None,
            )
        )
        for version, lines in made:
            version.formula_id = formula.id
            self._book.add(version)
            for line in lines:
                line.formula_id = formula.id
            self._book.add_all(lines)
        self._formulas[formula.match_key] = formula.id
        self._note("formula", row, formula.id)
        self._taken.latest[str(formula.id)] = formula.latest
        return True

    def _version(self, row: Row, preparation: str) -> tuple[FormulaVersion, list[FormulaLine]] | None:
        number, rest = row.whole("number"), row.number("rest_hours", needed=False)
        days = row.whole("discard_days", needed=False)
        garnish = self._item(row, "replaces", needed=False)
        lines: list[FormulaLine] = []
        seen: set[int] = set()
        listed = list(row.rows("lines"))
        if not 0 < len(listed) <= formulas.MOST_LINES:
            row.wrong("lines", "missing")
        for position, one in enumerate(listed, start=1):
            item, amount, unit = (
                self._item(one, "ingredient"),
                one.number("amount", above=True),
                one.unit("unit"),
            )
            self._strength(one, item)
            if item is not None and item in seen:
                one.wrong("ingredient", "twice")
            if item is not None and amount is not None and number is not None:
                seen.add(item)
                lines.append(
                    FormulaLine(
                        number=number, position=position, ingredient_id=item, amount=amount, unit=unit
                    )
                )
        sprays = {
            name: row.number(name, False, True)
            for name in ("sprays_low", "sprays_high", "spray_ml_low", "spray_ml_high")
        }
        note, made_at = row.text("note", False, 2000), row.moment("made_at", needed=False)
        if number is None or len(lines) != len(listed) or not lines or preparation not in set(Preparation):
            return None
        usual = PREPARATION_DEFAULTS[Preparation(preparation)]
        if preparation == Preparation.AROMA_MIST and sprays["sprays_low"] is None:
            settings = self._context.bar.settings
            sprays["sprays_low"], sprays["sprays_high"] = (
                Fraction(settings.sprays_low),
                Fraction(settings.sprays_high),
            )
        version = FormulaVersion(
            number=number,
            rest_hours=Fraction(usual.rest_hours) if rest is None else rest,
            discard_days=usual.discard_days if days is None else days,
            garnish_id=garnish,
            note=note,
            made_at=made_at or self._context.now,
            made_by=self._context.person_id,
            **sprays,
        )
        return version, lines

    def _strength(self, row: Row, item: int | None) -> None:
        """A table of formulas says a spirit's strength beside it; one that is known is left as it is."""
        strength = row.number("strength_percent", needed=False)
        if strength is None or item is None:
            return
        if strength > 100:
            row.wrong("strength_percent", "number")
            return
        found = self._book.get(Ingredient, item)
        if found is not None and found.strength_percent is None:
            found.strength_percent = strength
            self._taken.strengths.append((item, str(strength)))

    def _sprayer(self, row: Row) -> bool | None:
        name = row.text("name")
        named = row.data.get("formulas")
        used = [
            self._formulas.get(plain_name(str(one))) for one in (named if isinstance(named, list) else ())
        ]
        runs = []
        for one in row.rows("runs"):
            formula = self._formula_named(one, "formula", needed=False)
            before, after = one.number("before_g"), one.number("after_g")
            step, density = one.number("step_g", above=True), one.number("density_g_per_ml", above=True)
            sprays, at = one.whole("sprays"), one.moment("at")
            if before is None or after is None or step is None or density is None or not sprays or at is None:
                continue
            runs.append(
                SprayerRun(
                    formula_id=formula,
                    before_g=before,
                    after_g=after,
                    step_g=step,
                    sprays=sprays,
                    density_g_per_ml=density,
                    priming=one.flag("priming"),
                    at=at,
                    by=self._context.person_id,
                )
            )
        if not self._good(row) or not plain_name(name):
            return None
        if plain_name(name) in self._sprayers:
            return False
        sprayer = self._book.add(
            Sprayer(
                name=name,
                match_key=plain_name(name),
                made_at=self._context.now,
                archived_at=self._context.now if row.flag("archived") else None,
            )
        )
        self._sprayers[sprayer.match_key] = sprayer.id
        for run in runs:
            run.sprayer_id = sprayer.id
        self._book.add_all(runs)
        self._taken.note("sprayer", sprayer.id)
        self._taken.runs[str(sprayer.id)] = len(runs)
        for number in used:
            if number is not None and self._book.get(FormulaSprayer, number) is None:
                self._book.add(FormulaSprayer(formula_id=number, sprayer_id=sprayer.id))
        return True

    def _own_sprayer(self) -> None:
        name = self._sheet.bar.get("sprayer")
        if self._taken.settings and name:
            number = self._sprayers.get(plain_name(str(name)))
            if number is not None:
                bars.change(self._context, sprayer=number)
                self._taken.settings_entries.append(self._context.entry or 0)

    def _own_costs(self) -> None:
        """Take over what making single formulas takes, now that they have numbers here."""
        named = self._sheet.bar.get("formula_costs")
        if not self._taken.settings or not isinstance(named, dict):
            return
        kept: dict[str, dict[str, str]] = {}
        for name, costs in named.items():
            number = self._formulas.get(plain_name(str(name)))
            if number is None or not isinstance(costs, dict):
                continue
            found = {field: costs[field] for field in overheads.FIELDS if field in costs}
            if not all(is_range(value) for value in found.values()):
                raise BadValueError("settings", "")
            kept[str(number)] = found
        if kept:
            bars.change(self._context, formula_costs=kept)
            self._taken.settings_entries.append(self._context.entry or 0)

    def _price(self, row: Row) -> bool | None:
        item, size = self._item(row, "ingredient"), row.number("pack_amount", above=True)
        unit, minor = row.unit("pack_unit"), self._money(row, "price", True)
        low, high = row.number("garnishes_low", False, True), row.number("garnishes_high", False, True)
        at = row.moment("at", needed=False) or self._context.now
        if not self._good(row) or item is None or size is None or minor is None:
            return None
        if self._known("price", row) is not None:
            return False
        newer = self._in_force.get(item)
        if newer is not None and newer.at > at:
            self._taken.older += 1  # the newest row is the price in force, and history is not rewritten
            return None
        price = self._book.add(
            Price(
                ingredient_id=item,
                pack_amount=size,
                pack_unit=unit,
                price_minor=minor,
                garnishes_low=low,
                garnishes_high=high or low,
                at=at,
                by=self._context.person_id,
            )
        )
        self._note("price", row, price.id)
        return True
