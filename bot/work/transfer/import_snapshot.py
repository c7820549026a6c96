"""Rebuild a batch's frozen copy of its formula from a file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    StringConstraints,
    ValidationError,
    ValidationInfo,
    ValidatorFunctionWrapHandler,
    field_validator,
)

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import IngredientKind, Preparation
from bot.trade.formulas.measures import BASE_DIMENSIONS, Dimension
from bot.trade.safety.allergens import Allergen
from bot.trade.safety.cautions import CAUTIONS
from bot.work.transfer.rows import BatchRow
from storage.tables import BatchLine
from storage.types import exact, exact_text

_CAUTIONS = {caution.id for caution in CAUTIONS}


def _from_nothing_up(text: str) -> str:
    if exact(text) < 0:
        raise ValueError(text)
    return text


def _one_line(text: str) -> str:
    return " ".join(text.split()) if text.isprintable() else ""


def _known_caution(text: str) -> str:
    if text not in _CAUTIONS:
        raise ValueError(text)
    return text


_Text = Annotated[str, StringConstraints(max_length=300)]
_Exact = Annotated[str, AfterValidator(_from_nothing_up)]
_Percent = Annotated[float, Field(ge=0, le=100)]


class _AsFarAsItFits(BaseModel):
    """The file's value if it is valid, else the field's default."""

    model_config = ConfigDict(defer_build=True)

    @field_validator("*", mode="wrap")
    @classmethod
    def _or_the_default(cls, value: Any, read: ValidatorFunctionWrapHandler, info: ValidationInfo) -> Any:
        try:
            return read(value)
        except ValidationError:
            return cls.model_fields[str(info.field_name)].get_default(call_default_factory=True)


class _Price(BaseModel, defer_build=True):
    pack: _Exact
    dimension: Dimension
    price: _Exact


class _Allergen(BaseModel, defer_build=True):
    allergen: Allergen
    declare: bool
    certain: bool


class _Line(_AsFarAsItFits):
    ingredient: int = 0
    name: _Text = ""
    kind: IngredientKind = IngredientKind.OTHER
    amount: _Text = ""
    left: _Exact | None = None
    dimension: Dimension = Dimension.VOLUME
    strength_percent: _Exact | None = None
    density_g_per_ml: _Exact | None = None
    food_grade: _Text | None = None
    price: _Price | None = None


class _Strained(BaseModel, defer_build=True):
    ml: _Exact
    made_ml: _Exact
    percent: tuple[_Percent, _Percent] | None = None


class _Poured(_Line):
    amount: _Exact = "0"


class _Snapshot(_AsFarAsItFits):
    formula: Annotated[_Text, AfterValidator(_one_line)] = ""
    trial: tuple[int, int] | None = None
    preparation: Preparation = Preparation.OTHER
    strength_percent: _Percent | None = None
    strained: _Strained | None = None
    rest_hours: _Exact = "0"
    discard_days: Annotated[int, Field(ge=0)] = 0
    discard_on: date | None = None
    discard_rule: _Text = ""
    discard_subject: _Text = ""
    recheck_on: date | None = None
    past_when_made: bool = False
    ask_inspector: bool = False
    keep_cold: bool = False
    allergens: list[_Allergen] | None = None
    sprays: tuple[_Exact, _Exact] | None = None
    spray_ml: tuple[_Exact, _Exact] = ("1/15", "1/10")
    fill: list[tuple[_Exact, int]] = Field(default_factory=list)
    cautions: list[Annotated[str, AfterValidator(_known_caution)]] = Field(default_factory=list)
    lines: list[_Line] = Field(default_factory=list)


def mix_before(lines: Sequence[Any] | None) -> list[dict[str, Any]] | None:
    """Return the valid parts of what was in a batch before an addition, without the file's own numbers."""
    if lines is None:
        return None
    known = [_Poured.model_validate(line) for line in lines if isinstance(line, dict)]
    return [_without_none(one.model_dump(mode="json", exclude={"ingredient"}), "left") for one in known]


def _without_none(line: dict[str, Any], name: str) -> dict[str, Any]:
    return {key: value for key, value in line.items() if key != name or value is not None}


def snapshot(
    row: BatchRow, formula: str, lines: Sequence[BatchLine], names: Mapping[int, str]
) -> dict[str, Any]:
    """Return the frozen copy from the valid parts of the file, and the rest from the row itself.

    Ingredients have other numbers here, so they are matched by name.
    """
    said = _Snapshot.model_validate(row.frozen)
    was = {plain_name(one.name): one for one in said.lines}
    said.formula = said.formula or formula
    said.lines = [
        was.get(plain_name(names[line.ingredient_id]), _Line()).model_copy(
            update={
                "ingredient": line.ingredient_id,
                "name": names[line.ingredient_id],
                "amount": exact_text(line.amount),
                "dimension": BASE_DIMENSIONS.get(line.unit, Dimension.VOLUME),
            }
        )
        for line in lines
    ]
    kept = said.model_dump(mode="json")
    kept["lines"] = [_without_none(line, "left") for line in kept["lines"]]
    absent = {name for name in ("trial", "discard_on", "allergens", "strained") if kept[name] is None}
    return {name: value for name, value in kept.items() if name not in absent} | {"version": row.version}
