"""Why a thing a person asked for was not done: errors that carry data, worded by the chat."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime


class WorkError(Exception):
    """A use case could not do what was asked. Nothing was changed."""


class TakesTimeError(Exception):
    """What was asked takes long, and whoever asked is in a hurry: ask again where it may."""


@dataclass
class NotThereError(WorkError):
    """There is no such thing in this bar. `what` is its plain name, `number` or `name` what was given."""

    what: str
    name: str


@dataclass
class AlreadyThereError(WorkError):
    """A thing of that name exists; `archived` says that it is put away and can be restored."""

    what: str
    name: str
    archived: bool = False


@dataclass
class NotAllowedError(WorkError):
    """The person's role does not reach so far. `needed` is the role that does."""

    needed: str


@dataclass
class TooManyTriesError(WorkError):
    """Too many wrong joining codes in a row. `until` is when the next may be tried."""

    until: datetime


@dataclass
class WrongStateError(WorkError):
    """A batch is not in a state in which this can be done."""

    batch: int
    state: str


@dataclass
class TooLateError(WorkError):
    """It was logged longer ago than can be undone. `hours` is how long one may."""

    hours: int


class AlreadyUndoneError(WorkError):
    """It was taken back before, and is not taken back twice."""


class NothingToUndoError(WorkError):
    """Nothing of this person's is left to undo."""


@dataclass
class BadValueError(WorkError):
    """A value is not one that can be kept. `what` is its plain name, `value` what was given."""

    what: str
    value: str
