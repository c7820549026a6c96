"""Errors of the use cases; they carry data, and the chat turns them into words."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction


class WorkError(Exception):
    """A use case could not do its work. Nothing was changed."""


class TakesTimeError(Exception):
    """The request takes long, and the caller cannot wait: repeat it where it may take time."""


@dataclass
class NotThereError(WorkError):
    """The bar has no such thing. `what` is its plain name, `number` or `name` the value given."""

    what: str
    name: str


@dataclass
class AlreadyThereError(WorkError):
    """A thing of that name exists; `archived` means that it is archived and can be restored."""

    what: str
    name: str
    archived: bool = False


@dataclass
class NotAllowedError(WorkError):
    """The person's role is not sufficient. `needed` is the required role."""

    needed: str


@dataclass
class TooManyTriesError(WorkError):
    """Too many consecutive wrong joining codes. `until` is when the next attempt is allowed."""

    until: datetime


@dataclass
class WrongStateError(WorkError):
    """The state of the batch does not allow this."""

    batch: int
    state: str


@dataclass
class TooLateError(WorkError):
    """The entry is too old to undo. `hours` is the limit."""

    hours: int


@dataclass
class OvertakenError(WorkError):
    """A later entry came first. `by` and `at` are of that entry, if it is known.

    `number` is that entry, if this person can undo it, or restore what it undid.
    """

    number: int | None = None
    by: str = ""
    at: datetime | None = None


class AlreadyUndoneError(OvertakenError):
    """The entry is already undone."""


@dataclass
class AlreadyThereAgainError(WorkError):
    """The entry is not undone. `number`, `by` and `at` are of the last entry of its chain."""

    number: int
    by: str
    at: datetime


class ChangedSinceError(OvertakenError):
    """The same thing was changed later, so its earlier state cannot come back."""


@dataclass
class NotYoursError(WorkError):
    """Only the person `by` or a manager may undo this, or put it back."""

    by: str


@dataclass
class UsedSinceError(WorkError):
    """Something else has used it: `count` pieces of `name` were juiced, binned or put into a batch."""

    what: str
    name: str
    count: Fraction


@dataclass
class OffTheLogError(WorkError):
    """The batch or trial of the entry is itself undone. `what` is its plain name."""

    what: str
    name: str


@dataclass
class BlindError(WorkError):
    """Doing this would tell the key of a running blind trial, whose letters are given out."""

    trial: int


@dataclass
class KeySeenError(WorkError):
    """This person has seen the key of a running blind trial, so may not score it. So have `others`."""

    trial: int
    others: tuple[str, ...]


@dataclass
class CannotPutBackError(WorkError):
    """Entries of this kind cannot be put back. `what` is the kind."""

    what: str


@dataclass
class NotManagedError(WorkError):
    """The person does not manage the other bar `bar`; its name is '' if they are not in it."""

    bar: str


@dataclass
class MovedSinceError(WorkError):
    """Some of the batch stands in the bar `bar`, so its making cannot be undone."""

    bar: str


@dataclass
class UsedThereError(WorkError):
    """The bar `bar` has used some of its batch `number`, so the move cannot be undone."""

    bar: str
    number: int


@dataclass
class CameFromError(WorkError):
    """Only the bar `bar` can undo the move that brought this."""

    bar: str


class NothingToUndoError(WorkError):
    """This person has nothing left to undo."""


@dataclass
class BadValueError(WorkError):
    """A value is invalid. `what` is its plain name, `value` the value given."""

    what: str
    value: str
