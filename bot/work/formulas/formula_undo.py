"""Undo and restore changes of a formula: versions and names."""

from __future__ import annotations

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.work.context import Context
from bot.work.errors import ChangedSinceError
from bot.work.formulas import formulas
from bot.work.standing import Details, Value


def take_back_change(context: Context, details: Details) -> Details:
    """Undo a change: add the previous version again as the newest. Raises ChangedSinceError."""
    check(context, details)
    _write(context, details, details["before"], 0)
    return {}


def check(context: Context, details: Details) -> None:
    """Raise ChangedSinceError if the newest version has other content."""
    if not _says(context, details["formula"], details["version"]):
        raise ChangedSinceError


def put_back_change(context: Context, details: Details) -> Details:
    """Restore an undone change as the newest version. Raises ChangedSinceError."""
    if not _says(context, details["formula"], details["before"]):
        raise ChangedSinceError
    return {"version": _write(context, details, details["version"], 1)}


def _says(context: Context, formula_id: int, version: int) -> bool:
    """Whether the newest version has the same content as this one."""
    newest, other = formulas.get(context, formula_id), formulas.get(context, formula_id, version)
    return formulas.draft_of(newest) == formulas.draft_of(other)


def _write(context: Context, details: Details, version: int, kind: int) -> int:
    row = formulas.row_of(context, details["formula"])
    draft = formulas.draft_of(formulas.get(context, row.id, version))
    if "kinds" in details:
        row.preparation = details["kinds"][kind]
    away = row.archived_at
    view = formulas.write_version(context, row, draft)
    row.archived_at = away
    return view.version


def _read_name(context: Context, details: Details) -> str:
    return formulas.row_of(context, details["formula"]).name


def _write_name(context: Context, details: Details, name: str) -> None:
    row = formulas.row_of(context, details["formula"])
    if plain_name(name) != row.match_key:
        formulas.refuse_taken(context, name)
    row.name, row.match_key = name, plain_name(name)
    context.book.touched()


NAME = Value(_read_name, _write_name)
