"""Import a file: first as a trial, then for good, all or nothing, and each row only once."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta

from sqlalchemy import delete

from bot.work.context import Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.transfer import export
from bot.work.transfer.import_rows import MOST_PROBLEMS, Sheet, read_file
from bot.work.transfer.import_undo import spans
from bot.work.transfer.import_write import Taken, Taker
from bot.work.transfer.problems import Problem
from storage.tables import Upload

MOST_UPLOADS_DAYS = 2


@dataclass(frozen=True, slots=True)
class Trial:
    """The trial import of a file: how many rows of each kind are new, and how many exist already.

    `problems` must be fixed first; with any, nothing can be imported. `upload` is the number of the stored
    file until the import is confirmed.
    """

    name: str
    upload: int
    taken: Taken
    problems: tuple[Problem, ...]

    @property
    def good(self) -> bool:
        """Whether it can be imported."""
        return not self.problems


def receive(context: Context, name: str, content: bytes) -> Trial:
    """Store an uploaded file and try the import without changing the book.

    Raises UnreadableFileError for any other kind of file.
    """
    known = (export.FORMAT, export.VERSION)
    read_file(name, content, known)  # before the file is stored
    context.book.session.execute(
        delete(Upload).where(
            Upload.bar_id == context.bar.id,
            (Upload.by == context.person_id) | (Upload.at < context.now - timedelta(days=MOST_UPLOADS_DAYS)),
        )
    )
    row = context.book.add(Upload(name=name[-120:], content=content, at=context.now, by=context.person_id))
    sheet = read_file(name, content, known)
    nested = context.book.session.begin_nested()
    try:
        taken = Taker(context, sheet, row.id).take()
        context.book.session.flush()
    finally:
        nested.rollback()
    return Trial(row.name, row.id, taken, tuple(_sorted(sheet)))


def take_in(context: Context, upload: int) -> Trial:
    """Import a stored file. Raises NotThereError if it is gone, BadValueError if it has problems."""
    row = context.book.get(Upload, upload)
    if row is None:
        raise NotThereError("file", str(upload))
    name, content = row.name, row.content
    sheet = read_file(name, content, (export.FORMAT, export.VERSION))
    taken = Taker(context, sheet, upload).take()
    if sheet.problems:
        raise BadValueError("file", name)
    context.book.session.delete(row)
    context.log(
        "import",
        file=name,
        rows=taken.new,
        count=sum(taken.new.values()),
        brought={kind: spans(numbers) for kind, numbers in taken.brought.items()},
        latest=taken.latest,
        runs=taken.runs,
        pars=taken.pars,
        strengths=taken.strengths,
        settings=taken.settings_changed,
    )
    context.book.touched()
    return Trial(name, upload, taken, ())


def _sorted(sheet: Sheet) -> list[Problem]:
    found = list(dict.fromkeys(sheet.problems))[:MOST_PROBLEMS]
    return sorted(found, key=lambda one: (one.kind, one.row))
