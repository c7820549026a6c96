"""Commands to export to files, and to import from them: first a trial run, then the import."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.on_copy import on_copy
from bot.chat.dialogue.progress import watching
from bot.chat.dialogue.slots import Slot, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.people import setting_pages
from bot.chat.features.transfer import tables
from bot.chat.features.transfer.table_words import empty_tables, words_of
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.i18n.setting_names import SETTINGS
from bot.chat.reply.message import Block, Button, File, Grid, Reply, Text, reply
from bot.documents.tables import write_csv
from bot.trade.words import N_
from bot.work.errors import BadValueError, NotThereError
from bot.work.log.chain import State
from bot.work.transfer.problems import MOST_BYTES, Problem, UnreadableFileError

if TYPE_CHECKING:
    from bot.work.transfer.import_file import Trial

_KEPT = re.compile(r"#(\d{1,9})(?: (.+))?")
_MOST_SHOWN = 6
_KINDS = {
    "ingredients": N_("ingredients"),
    "formulas": N_("formulas"),
    "sprayers": N_("sprayers"),
    "prices": N_("prices"),
    "deliveries": N_("deliveries"),
    "waste": N_("waste"),
    "juicings": N_("juicings"),
    "batches": N_("batches"),
    "drinks": N_("drinks"),
    "counts": N_("stock counts"),
    "peeled": N_("peeled fruit"),
    "pars": N_("pars"),
    "wordings": N_("wordings"),
    "reminders": N_("reminders"),
    "events": N_("events"),
    "menu": N_("drinks on the list"),
    "trials": N_("trials"),
}
_UNREADABLE = {
    "size": N_("That file is too large: at most 5 MB, 100,000 rows, and 20,000 batches or prices."),
    "names": N_("That file brings too many names: a bar has 2,000 ingredients at most."),
    "new bar": N_("In its first week a bar takes in at most 20,000 rows a file. Split it, or send it later."),
    "json": N_("That is not valid JSON: {detail}"),
    "csv": N_("That is not a table in UTF-8: {detail}"),
    "columns": N_("I find no table in that file: a row of headings, and below it a row for each thing."),
    "batches": N_("Batches come only by the JSON file: a table can't hold all of one."),
    "format": N_("That JSON is not one of mine: it needs format “peel-ledger”."),
    "version": N_("That file has version {detail}, which I do not know: it may be from a newer program."),
}
_WRONG = {
    "missing": N_("is missing"),
    "number": N_("is not a number that fits"),
    "day": N_("is not a day such as 2026-11-25"),
    "moment": N_("is not a moment such as 2026-11-25T18:00:00Z"),
    "unit": N_("is not a unit I know"),
    "choice": N_("is not one of the words for it"),
    "unknown": N_("is not in the file or the bar"),
    "long": N_("is too long"),
    "twice": N_("is there twice"),
}


# -- export ---------------------------------------------------------------------------------


def _export(turn: Turn, arguments: Arguments) -> Reply:
    from bot.work.transfer import export  # noqa: PLC0415 - loads pydantic

    turn.context.watch = watching(N_("Writing"))
    found = export.export(turn.context)
    rows = tuple((_(_KINDS[name]), show_number(count, 0)) for name, count in found.rows.items())
    return Reply(
        (
            Text(_("All of {bar}, as files.").format(bar=turn.context.bar.name), strong=True),
            Grid(rows),
            Text(_("The JSON file holds everything and can be sent back to me; the tables are for reading.")),
            *(Text(_sealed(number)) for number in found.sealed),
        ),
        files=tuple(File(name, content) for name, content in found.files),
    )


def _sealed(number: int) -> str:
    text = _("Trial {number} is blind and running: the file holds its key, but not in plain words.")
    return text.format(number=number)


def _template(turn: Turn, arguments: Arguments) -> Reply:
    """Send an empty table for each kind of import."""
    return Reply(
        (
            Text(_("Empty tables: fill in what you have and send one back."), strong=True),
            Text(_("Your own tables work too, whatever their columns are called.")),
        ),
        files=tuple(File(f"{name}.csv", write_csv(columns, ())) for name, columns in empty_tables()),
    )


# -- import ---------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class ImportArguments(Arguments):
    """A file sent before, or the name of one."""

    free: str = ""


@on_copy
def _import(turn: Turn, arguments: ImportArguments) -> Reply:
    sent = turn.message.document
    if sent is not None:
        if sent.content is None:
            too_large = _UNREADABLE["size"]
            return reply(_(too_large))
        return _received(turn, sent.name, sent.content)
    said = arguments.free.strip()
    kept = _KEPT.fullmatch(said)
    if kept is not None:
        return _of_kept(turn, int(kept[1]), kept[2] or "")
    if said:
        return reply(
            _("I find no file “{name}” here.").format(name=said[:60]),
            _("In a chat, send me the file itself, up to {size} MB.").format(size=MOST_BYTES // 1024**2),
        )
    return reply(
        _("Send me the file: the JSON of an export, or a table of formulas, prices or waste as CSV."),
        _("I first show what it would add, and add nothing until you say yes."),
        _("In the terminal: import FILE"),
    )


def _of_kept(turn: Turn, upload: int, more: str) -> Reply:
    """Continue with a stored file: import it, or apply an answer about its columns."""
    said = tables.Said.of(more)
    try:
        if not more:
            return _taken(turn, upload)
        if said is None:
            raise Say(reply(_("I could not read that about the file. Nothing changed.")))
        return _tried(turn, upload) if said.what == "try" else tables.proposed(turn, upload, said)
    except NotThereError:
        raise Say(reply(_("I no longer have that file: send it again."))) from None


def _received(turn: Turn, name: str, content: bytes) -> Reply:
    from bot.work.transfer import import_file  # noqa: PLC0415 - see _export
    from bot.work.transfer.import_rows import is_foreign  # noqa: PLC0415 - see _export

    try:
        upload = import_file.keep(turn.context, name, content)
    except (UnreadableFileError, BadValueError) as error:
        raise Say(_refused(turn, name, error)) from None
    return tables.proposed(turn, upload) if is_foreign(content) else _tried(turn, upload, name)


def _tried(turn: Turn, upload: int, name: str = "") -> Reply:
    from bot.work.transfer import import_file  # noqa: PLC0415 - see _export

    turn.context.watch = watching(N_("Trying the file"))
    try:
        trial = import_file.try_out(turn.context, upload, words_of(turn))
    except UnreadableFileError as error:
        if error.why == "open":
            return tables.proposed(turn, upload)
        raise Say(_refused(turn, name, error)) from None
    except BadValueError as error:
        raise Say(_refused(turn, name, error)) from None
    if not trial.good:
        return _with_problems(trial)
    new = sum(trial.taken.new.values())
    if not new:
        return reply(
            _("{name}: everything in it is here already.").format(name=trial.name), *_left_out(trial)
        )
    first = ngettext(
        "{name} would add {count} new row. Nothing is added yet.",
        "{name} would add {count} new rows. Nothing is added yet.",
        new,
    ).format(name=trial.name, count=show_number(new, 0))
    return Reply(
        (Text(first, strong=True), _counts(trial), *map(Text, _left_out(trial))),
        ((Button(_("Import it"), f"import #{trial.upload}"),),),
    )


def _refused(turn: Turn, name: str, error: UnreadableFileError | BadValueError) -> Reply:
    first = _("I can't import {name}.").format(name=name)
    if isinstance(error, UnreadableFileError):
        return reply(first, _(_UNREADABLE[error.why]).format(detail=error.detail))
    if error.what == "currency":
        return reply(
            first,
            _("It counts in {theirs}, this bar in {ours}.").format(
                theirs=error.value, ours=turn.context.bar.currency
            ),
        )
    return reply(first, _("Its bar's {what} cannot be read.").format(what=_(error.what)))


def _counts(trial: Trial) -> Grid:
    rows: list[tuple[str, ...]] = [("", _("new"), _("here"))]
    for kind, word in _KINDS.items():
        new, already = trial.taken.new.get(kind, 0), trial.taken.already.get(kind, 0)
        if new or already:
            rows.append((_(word), show_number(new, 0), show_number(already, 0)))
    return Grid(tuple(rows))


def _new_numbers(pairs: Sequence[tuple[int, int]]) -> str:
    text = _("{before} becomes {now}")
    shown = ", ".join(text.format(before=before, now=now) for before, now in pairs[:_MOST_SHOWN])
    return shown + (" …" if len(pairs) > _MOST_SHOWN else "")


def _left_out(trial: Trial) -> list[str]:
    lines = []
    if trial.taken.older:
        lines.append(
            ngettext(
                "{count} price is older than the one in force and is left out.",
                "{count} prices are older than those in force and are left out.",
                trial.taken.older,
            ).format(count=show_number(trial.taken.older, 0))
        )
    batches, trials = trial.taken.renumbered, trial.taken.renumbered_trials
    if batches:
        text = ngettext(
            "{count} batch gets a new number, because its own is taken: {which}",
            "{count} batches get new numbers, because theirs are taken: {which}",
            len(batches),
        )
        lines.append(text.format(count=len(batches), which=_new_numbers(batches)))
    if trials:
        text = ngettext(
            "{count} trial gets a new number, because its own is taken: {which}",
            "{count} trials get new numbers, because theirs are taken: {which}",
            len(trials),
        )
        lines.append(text.format(count=len(trials), which=_new_numbers(trials)))
    if trial.taken.settings is not None:
        before, after = (setting_pages.shown(bar) for bar in trial.taken.settings)
        changed = [key for key in after if key in SETTINGS and before.get(key) != after[key]]
        lines.append(_("This bar's book is empty, so the settings in the file come in too."))
        text = _("{setting} instead of {before}")
        lines += [
            text.format(setting=setting_pages.setting_line(key, after), before=before.get(key, _("not set")))
            for key in changed
        ]
    return lines


def problem_words(problem: Problem) -> str:
    """Write an import problem and its place: 'waste, row 3: day “x” is no day'."""
    value = f" “{problem.value}”" if problem.value else ""
    return _("{kind}, row {row}: {field}{value} {what}").format(
        kind=_(_KINDS[problem.kind]),
        row=problem.row,
        field=problem.field,
        value=value,
        what=_(_WRONG[problem.what]),
    )


def _with_problems(trial: Trial) -> Reply:
    count = len(trial.problems)
    first = ngettext(
        "{name} has {count} problem: nothing is imported.",
        "{name} has {count} problems: nothing is imported.",
        count,
    ).format(name=trial.name, count=count)
    blocks: list[Block] = [Text(first, strong=True)]
    blocks += [Text(problem_words(one)) for one in trial.problems[:_MOST_SHOWN]]
    files: tuple[File, ...] = ()
    if count > _MOST_SHOWN:
        blocks.append(Text(_("All of them are in the file.")))
        rows = [{"problem": problem_words(one)} for one in trial.problems]
        files = (File("problems.csv", write_csv(("problem",), rows)),)
    return Reply(tuple(blocks), files=files)


def _taken(turn: Turn, upload: int) -> Reply:
    from bot.work.transfer import import_file  # noqa: PLC0415 - see _export

    turn.context.watch = watching(N_("Importing"))
    try:
        trial = import_file.take_in(turn.context, upload, words_of(turn))
    except (UnreadableFileError, BadValueError) as error:
        raise Say(_refused(turn, "", error)) from None
    new = sum(trial.taken.new.values())
    first = ngettext("{count} row of {name} is in.", "{count} rows of {name} are in.", new).format(
        count=show_number(new, 0), name=trial.name
    )
    return Reply(
        (Text(first, strong=True), _counts(trial), *map(Text, _left_out(trial))),
        (
            (undo_button(turn),),
            (Button(_("Formulas"), "formulas"), Button(_("Batches"), "batches"), Button(_("Week"), "week")),
        ),
        edits=turn.message.tapped is not None,
    )


def _rows_undone(turn: Turn, after: State) -> list[str]:
    """Return how many rows went with an import, and which stay because they are in use."""
    count = int(after.details["count"])
    lines = [
        ngettext("It had added {count} row.", "It had added {count} rows.", count).format(
            count=show_number(count, 0)
        )
    ]
    if after.details.get("kept"):
        lines.append(_("These stay, because you use them: {names}").format(names=after.details["kept"]))
    return lines + [
        _("Batch {number} stays: some of it is at {bar} now.").format(number=number, bar=bar)
        for number, bar in after.details.get("moved", ())
    ]


COMMANDS = (
    Command(
        "export",
        N_("all of the bar as files: tables and JSON"),
        _export,
        words=("export all", "back up", "download"),
        manages=True,
        private_only=True,
        menu=77,
    ),
    Command(
        "import",
        N_("import a file: an export, or a table"),
        _import,
        words=("import file",),
        slots=(Slot("free", plain(str)),),
        writes=True,
        manages=True,
        private_only=True,
        menu=78,
    ),
    Command(
        "template",
        N_("empty tables to fill in and send back"),
        _template,
        words=("templates", "empty table", "empty file", "blank sheet"),
        manages=True,
    ),
)

LOG_WORDS = (LogWords("import", N_("imported {file}"), N_("import of {file}"), now=_rows_undone),)
