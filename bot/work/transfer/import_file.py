"""Import a file: first as a trial, then for good, all or nothing, and each row only once."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta

from sqlalchemy import delete

from bot.work.context import Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.people.newcomers import is_new
from bot.work.transfer import export
from bot.work.transfer.foreign import tables
from bot.work.transfer.foreign.reading import Words
from bot.work.transfer.import_rows import MOST_PROBLEMS, Sheet, is_foreign, read_file
from bot.work.transfer.import_undo import spans
from bot.work.transfer.import_write import Taken, Taker
from bot.work.transfer.problems import Problem, UnreadableFileError
from storage.tables import Upload

MOST_UPLOADS_DAYS = 2
MOST_ROWS_OF_NEW = 20_000  # in a file for a new bar
_KNOWN = (export.FORMAT, export.VERSION)


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


def keep(context: Context, name: str, content: bytes) -> int:
    """Store an uploaded file and return its number. Raises UnreadableFileError for any other kind of file."""
    # It has to be readable before it is stored.
    foreign = is_foreign(content)
    rows = len(tables.cells_of(content)) if foreign else read_file(name, content, _KNOWN).count
    if rows > MOST_ROWS_OF_NEW and is_new(context):
        raise UnreadableFileError("new bar")
    context.book.session.execute(
        delete(Upload).where(
            Upload.bar_id == context.bar.id,
            (Upload.by == context.person_id) | (Upload.at < context.now - timedelta(days=MOST_UPLOADS_DAYS)),
        )
    )
    row = context.book.add(Upload(name=name[-120:], content=content, at=context.now, by=context.person_id))
    return row.id


def try_out(context: Context, upload: int, words: Words) -> Trial:
    """Try the import of a stored file without changing the book.

    Raises NotThereError if it is gone, and UnreadableFileError.
    """
    row = _kept(context, upload)
    sheet = _sheet(context, row, words)
    bar = context.bar
    nested = context.book.session.begin_nested()
    try:
        taken = Taker(context, sheet, upload).take()
        context.book.session.flush()
    finally:
        nested.rollback()
        context.bar = bar  # the settings in the file were only tried
    return Trial(row.name, upload, taken, tuple(_sorted(sheet)))


def _kept(context: Context, upload: int) -> Upload:
    row = context.book.get(Upload, upload)
    if row is None:
        raise NotThereError("file", str(upload))
    return row


def _sheet(context: Context, row: Upload, words: Words) -> Sheet:
    if is_foreign(row.content):
        return tables.sheet_of(context, row, words)
    return read_file(row.name, row.content, _KNOWN)


def take_in(context: Context, upload: int, words: Words) -> Trial:
    """Import a stored file. Raises NotThereError if it is gone, BadValueError if it has problems."""
    row = _kept(context, upload)
    name = row.name
    sheet = _sheet(context, row, words)
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
