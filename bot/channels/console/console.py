"""The console: numbered choices for buttons, and plain text through a pipe."""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from itertools import count, product
from pathlib import Path
from string import ascii_lowercase

from bot.channels.rendering import plain_lines
from bot.chat.conversation.conversation import Conversation
from bot.chat.dialogue.progress import telling
from bot.chat.features.reminders.due import worded_reminder
from bot.chat.i18n.language import ngettext
from bot.chat.reply.message import Button, Document, Message, Place, Reply, Sender, harmless
from bot.work.context import Clock
from bot.work.people import people
from bot.work.reminders import delivery
from bot.work.transfer.problems import MOST_BYTES
from storage.store import Store

CHANNEL = "console"
_PROMPT = "> "
_PIPE_WIDTH = 76
_NARROWEST, _WIDEST = 24, 100  # beyond this, lines are hard to read
_WIDEST_GRID = 60


def terminal_language(environment: Mapping[str, str]) -> str | None:
    """Return the language of the terminal, from the first POSIX variable that is set."""
    for name in ("LC_ALL", "LC_MESSAGES", "LANG"):
        if environment.get(name):
            found = environment[name].partition(".")[0]
            return found.replace("_", "-") if found not in {"C", "POSIX"} else None
    return None


class Console:
    """One person at a terminal, who chooses buttons by number, or by letter where a number is an answer."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        name: str,
        write: Callable[[str], object],
        width: Callable[[], int] = lambda: _PIPE_WIDTH,
    ) -> None:
        self._width = width
        self.store = store
        self.clock = clock
        self.conversation = Conversation(store, clock)
        language = terminal_language(os.environ)
        self.sender = Sender(outside_id=name.casefold() or "me", name=name or "me", language=language)
        self.place = Place(outside_id=f"console {name.casefold() or 'me'}", private=True)
        self._out = write
        self._choices: dict[str, str] = {}
        self._said = 0

    def say(self, text: str) -> list[Reply]:
        """Send a line, or tap a button by its label; print and return the replies."""
        tapped = None
        chosen = self._choices.get(text.strip().casefold())
        if chosen is not None:
            text, tapped = chosen, str(self._said)
        self._said += 1
        now = self.clock.now()
        message = Message(
            CHANNEL,
            self.sender,
            self.place,
            text,
            key=f"{self.place.outside_id}:{now.timestamp():.6f}:{self._said}",
            sent_at=now,
            tapped=tapped,
            document=None if tapped is not None else _document(text),
        )
        with telling(self._tell):
            replies = self.conversation.answer(message)
        self._show(replies)
        return replies

    def _write(self, line: str) -> None:
        # Rows of older versions may contain terminal control characters.
        self._out(harmless(line))

    def tick(self) -> int:
        """Show the reminders that are due; return their number."""
        shown = 0
        for due in delivery.claim(self.store, CHANNEL, self.clock.now()):
            self._show([worded_reminder(due, self.clock.now(), self.store)])
            delivery.settle(self.store, due, delivery.Sent(delivery.Outcome.SENT), self.clock.now())
            shown += 1
        return shown

    def _tell(self, reply: Reply) -> None:
        for line in self._lines(reply):
            self._write(line)

    def _lines(self, reply: Reply) -> list[str]:
        width = self._width()
        return plain_lines(reply, width, min(width - 2, _WIDEST_GRID))

    def _show(self, replies: list[Reply]) -> None:
        """Print replies; button labels continue from one reply to the next."""
        self._choices = {}
        signs = _signs(replies)
        for reply in replies:
            self._show_text(reply)
            for row in reply.buttons:
                signed = [(next(signs), button) for button in row]
                self._choices |= {sign: button.line for sign, button in signed}
                for line in _wrapped([f"[{sign}] {button.label}" for sign, button in signed], self._width()):
                    self._write(line)
            self._write("")

    def _show_text(self, reply: Reply) -> None:
        for line in self._lines(reply):
            self._write(line)
        held = sum(file.file_id is not None for file in reply.files)
        if held:
            text = ngettext("[{count} photo, kept in the chat]", "[{count} photos, kept in the chat]", held)
            self._write(text.format(count=held))
        for file in reply.files:
            if file.file_id is not None or file.draw is not None:
                continue
            self._write(f"[{file.name}: {_save(file.name, file.content)}]")


def _wrapped(buttons: list[str], width: int) -> list[str]:
    """Put the buttons of a row on as few lines as the width allows, each button whole."""
    lines = buttons[:1]
    for button in buttons[1:]:
        if len(lines[-1]) + 2 + len(button) <= width:
            lines[-1] += f"  {button}"
        else:
            lines.append(button)
    return lines


def _signs(replies: list[Reply]) -> Iterator[str]:
    """Return labels for the buttons of replies: 1, 2, 3, or a, b, c where a typed number is itself an answer.

    Otherwise '8' could mean either eight oranges or the eighth button.
    """
    if any(_answers_a_number(button) for reply in replies for row in reply.buttons for button in row):
        return (
            "".join(pair) for first in ("", *ascii_lowercase) for pair in product([first], ascii_lowercase)
        )
    return map(str, count(1))


def _answers_a_number(button: Button) -> bool:
    """Whether a button stands for a number that may be typed: '8', or '24 Saline' for batch 24."""
    number = button.label.split(" ")[0]
    return number.isdigit() and button.line.split(" ")[-1] == number


_IMPORT = "import "


def _document(text: str) -> Document | None:
    """Return the file named by 'import FILE', relative to the working folder, or None if it is missing."""
    if not text.strip().casefold().startswith(_IMPORT):
        return None
    path = Path(text.strip()[len(_IMPORT) :].strip()).expanduser()
    try:
        if not path.is_file():
            return None
        return Document(path.name, path.read_bytes() if path.stat().st_size <= MOST_BYTES else None)
    except (OSError, ValueError):
        return None


def _save(name: str, content: bytes) -> str:
    """Save a file in the working folder, or in the temporary folder if that is not writable."""
    for folder in (Path(), Path(tempfile.gettempdir())):
        try:
            return str(_write_new(folder / Path(name).name, content))
        except OSError:
            continue
    return "nowhere: no folder here may be written to"


def _write_new(path: Path, content: bytes) -> Path:
    """Write a file under this name, with a number appended if needed, never over another one."""
    free, number = path, 1
    while free.exists():
        number += 1
        free = path.with_name(f"{path.stem}-{number}{path.suffix}")
    free.write_bytes(content)
    return free


def talk(console: Console, lines: Iterable[str] | None = None) -> int:
    """Hold the conversation until the input ends; return the exit code.

    With `lines` (a pipe) each line is one message; a backslash at its end continues it on the next. Otherwise
    input comes from the terminal.
    """
    if lines is not None:
        for message in _joined(lines):
            if _ends(message):
                break
            console.say(message)
        return 0
    with suppress(ImportError):
        import readline  # noqa: F401, PLC0415 - gives input() its arrow keys; not there on every system
    text = "start"
    while True:
        try:
            if text.strip():
                console.say(text)
            console.tick()
        except KeyboardInterrupt:
            # It ends the answer; what was not committed by then is rolled back.
            print()
        try:
            text = _ask()
        except (EOFError, KeyboardInterrupt):
            print()
            return 0
        if _ends(text):
            return 0


def _ends(text: str) -> bool:
    return text.strip().casefold() in {"quit", "exit", "bye"}


def _joined(lines: Iterable[str]) -> Iterable[str]:
    pending: list[str] = []
    for line in lines:
        text = line.rstrip("\n")
        if text.endswith("\\"):
            pending.append(text[:-1])
            continue
        whole = "\n".join([*pending, text])
        pending = []
        if whole.strip():
            yield whole
    if pending:
        yield "\n".join(pending)


def _ask() -> str:
    """Read one message; a line that ends with a backslash continues."""
    parts = []
    prompt = _PROMPT
    while True:
        line = input(prompt)
        parts.append(line.removesuffix("\\"))
        if not line.endswith("\\"):
            return "\n".join(parts)
        prompt = ". "


def usual_name(store: Store) -> str:
    """Return the default name at the terminal: the only name used so far, else 'me'."""
    with store.reading() as unit:
        known = people.known_names(unit, CHANNEL)
    return known[0] if len(known) == 1 else "me"


def open_console(store: Store, clock: Clock, name: str) -> Console:
    """Return a console that writes to standard output."""
    return Console(
        store, clock, name, lambda line: print(line, file=sys.stdout, flush=True), width=window_width
    )


def window_width() -> int:
    """Return the columns of the window, within what can be read; those of a pipe are fixed."""
    if not sys.stdout.isatty():
        return _PIPE_WIDTH
    return max(_NARROWEST, min(shutil.get_terminal_size((_PIPE_WIDTH, 24)).columns, _WIDEST))
