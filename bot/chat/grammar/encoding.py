"""Encode parsed values as JSON and back, so that each text is parsed once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass
from datetime import time
from fractions import Fraction
from typing import Final

from bot.chat.grammar import syntax
from bot.chat.grammar.lexer import Noun
from bot.trade.formulas.measures import AmbiguousUnit

Json = None | bool | int | str | Sequence["Json"] | Mapping[str, "Json"]

_OF = "of"  # the key of the class name, beside its fields
_CLASSES: Final[Mapping[str, type]] = {
    one.__name__: one
    for one in (*vars(syntax).values(), Noun, AmbiguousUnit)
    if isinstance(one, type) and is_dataclass(one)
}


class NotEncodedError(ValueError):
    """This version cannot restore the stored value."""


def encode(value: object) -> Json:
    """Return a value of the grammar as JSON."""
    if value is None or isinstance(value, bool | int | str):
        return value
    if isinstance(value, Fraction):
        return {_OF: "Fraction", "value": str(value)}
    if isinstance(value, time):
        return {_OF: "time", "value": value.isoformat()}
    if isinstance(value, tuple):
        return [encode(one) for one in value]
    name = type(value).__name__
    if is_dataclass(value) and _CLASSES.get(name) is type(value):
        return {_OF: name, **{one.name: encode(getattr(value, one.name)) for one in fields(value)}}
    raise TypeError(f"the grammar has no value of type {name}")


def decode(stored: Json) -> object:
    """Return the encoded value. Raises NotEncodedError for a value unknown to this version."""
    if stored is None or isinstance(stored, bool | int | str):
        return stored
    if not isinstance(stored, Mapping):
        return tuple(decode(one) for one in stored)
    name, filled = stored.get(_OF), {key: one for key, one in stored.items() if key != _OF}
    try:
        if name == "Fraction":
            return Fraction(str(filled["value"]))
        if name == "time":
            return time.fromisoformat(str(filled["value"]))
        return _CLASSES[str(name)](**{key: decode(one) for key, one in filled.items()})
    except (KeyError, TypeError, ValueError) as error:
        raise NotEncodedError(str(name)) from error
