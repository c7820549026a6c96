"""The command line: python -m bot run, console, demo, doctor, migrate, backup, restore or move-database."""

from __future__ import annotations

import argparse
import gc
import os
import shlex
import sys
import tempfile
from contextlib import ExitStack
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING

import bot

if TYPE_CHECKING:
    from bot.settings import Settings

# The name of the program as called, for help and in messages.
_PROGRAM = "peel-ledger" if Path(sys.argv[0]).stem == "peel-ledger" else "python -m bot"
# Not "me", the console's default name: filling the demo must not move anybody out of their bar.
_DEMO_OWNER = "Robin"
_INTERRUPTED = 130  # as a shell reports a program that Ctrl-C ended


def main(arguments: list[str] | None = None) -> int:
    """Run the command line; return the exit code."""
    chosen = _parser().parse_args(arguments)
    # What a start loads stays loaded, so garbage collection during a start only costs time.
    gc.disable()
    try:
        return _main(chosen)
    finally:
        gc.enable()


def _main(chosen: argparse.Namespace) -> int:
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        # A pipe may use a limited character set: print a question mark rather than fail.
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="replace")
    if chosen.does is _console and sys.stdin.isatty():
        from bot.channels.console.greeting import greeting  # noqa: PLC0415 - only a terminal needs it

        print(greeting(chosen.demo), end="\n\n", flush=True)
    from bot.operations import logs  # noqa: PLC0415 - after help and greeting
    from bot.settings import MalformedError, Settings  # noqa: PLC0415 - the same

    try:
        settings = Settings.read()
    except MalformedError as error:
        _say(str(error))
        return 2
    logs.set_up(settings)
    if chosen.does not in {_run, _console}:
        gc.enable()  # the others may process a whole database
    try:
        code = _do(settings, chosen)
        sys.stdout.flush()
    except KeyboardInterrupt:
        return _INTERRUPTED
    except BrokenPipeError:
        # The reader of the pipe (head, less) has closed it; Python must not complain at exit.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    return code


def _do(settings: Settings, chosen: argparse.Namespace) -> int:
    """Run the command; report an unusable or protected database in a sentence."""
    try:
        code: int = chosen.does(settings, chosen)
    except Exception as error:
        from bot.operations.maintenance import refusal  # noqa: PLC0415 - see _run

        said = refusal(error)
        if said is None:
            raise
        _say(said)
        return 1
    return code


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog=_PROGRAM, description="Peel Ledger")
    parser.add_argument("--version", action="version", version=f"Peel Ledger {bot.__version__}")
    actions = parser.add_subparsers(required=True, metavar="action")

    run = actions.add_parser("run", help="run the Telegram bot (TELEGRAM_BOT_TOKEN)")
    run.set_defaults(does=_run)

    console = actions.add_parser("console", help="hold the same conversation in this terminal")
    console.add_argument("--demo", action="store_true", help="on a throw-away copy of the demo bar")
    console.add_argument("--name", default="", help="who you are, when several share a database")
    console.set_defaults(does=_console)

    demo = actions.add_parser("demo", help="fill an invented bar with twelve weeks of work")
    demo.add_argument("--name", default=_DEMO_OWNER, help="who owns it, when the name is taken")
    demo.set_defaults(does=_demo)

    doctor = actions.add_parser("doctor", help="check token, database, zones, clock and write access")
    doctor.add_argument("--live", action="store_true", help="also ask Telegram and the bot's own door")
    doctor.add_argument(
        "--backups", default="", metavar="FOLDER", help="the newest one there must not be old"
    )
    doctor.set_defaults(does=_doctor)

    ready = actions.add_parser("ready", help="ask the running bot whether it can work (LISTEN_ADDRESS)")
    ready.set_defaults(does=_ready)

    migrate = actions.add_parser("migrate", help="bring the database to the tables of this version")
    migrate.add_argument("--reopen", action="store_true", help="use it again although its rows were moved")
    migrate.set_defaults(does=_migrate)

    backup = actions.add_parser("backup", help="write a checked copy of the database while the bot runs")
    backup.add_argument("file", nargs="?", default="", help="a new file, or a folder for dated ones")
    backup.add_argument("--keep", type=_positive, help="of the folder's dated backups, keep so many")
    backup.add_argument("--drill", action="store_true", help="restore it too, into a place thrown away again")
    backup.set_defaults(does=_backup)

    restore = actions.add_parser("restore", help="bring a backup back into a new place")
    restore.add_argument("file")
    restore.add_argument("--into", default="", metavar="URL", help="where to, instead of DATABASE_URL")
    restore.add_argument("--drill", action="store_true", help="only try it, in a place thrown away again")
    restore.set_defaults(does=_restore)

    move = actions.add_parser(
        "move-database", help="carry all rows into another database, compared one by one"
    )
    move.add_argument("source", metavar="FROM", help="URL of the database that is left")
    move.add_argument("target", metavar="TO", help="URL of the new one")
    move.set_defaults(does=_move_database)
    return parser


def _positive(text: str) -> int:
    number = int(text)
    if number < 1:
        raise ValueError(text)
    return number


def _say(text: str) -> None:
    print(text, file=sys.stderr)


def _run(settings: Settings, chosen: argparse.Namespace) -> int:
    if not settings.telegram_bot_token.reveal():
        _say(
            "No token: set TELEGRAM_BOT_TOKEN to what BotFather gave you, "
            f"or try the console, which needs none: {_PROGRAM} console"
        )
        return 2
    from bot.channels.telegram.channel import run  # noqa: PLC0415 - the console must not pay for it

    return run(settings)


def _console(settings: Settings, chosen: argparse.Namespace) -> int:
    from bot.channels.console import console  # noqa: PLC0415 - see _run
    from bot.chat.dialogue.registry import all_commands  # noqa: PLC0415
    from bot.demo import filling  # noqa: PLC0415
    from bot.work.context import SystemClock  # noqa: PLC0415
    from storage import migrate  # noqa: PLC0415
    from storage.locks import holding  # noqa: PLC0415
    from storage.store import Store  # noqa: PLC0415

    interactive = sys.stdin.isatty()
    with tempfile.TemporaryDirectory(prefix="peel-ledger-") as folder, ExitStack() as held:
        url = f"sqlite:///{Path(folder) / 'demo.sqlite'}" if chosen.demo else settings.database
        store = Store(url)
        try:
            migrate.upgrade(store)
            held.enter_context(holding.held(store))
            name = chosen.name or (_DEMO_OWNER if chosen.demo else console.usual_name(store))
            if chosen.demo:
                filling.fill(store, SystemClock(), console.CHANNEL, name)
            here = console.open_console(store, SystemClock(), name)
            all_commands()
            gc.freeze()
            gc.enable()
            return console.talk(here, None if interactive else sys.stdin)
        finally:
            store.close()


def _demo(settings: Settings, chosen: argparse.Namespace) -> int:
    from bot.channels.console.console import CHANNEL  # noqa: PLC0415 - see _run
    from bot.demo import filling  # noqa: PLC0415
    from bot.work.context import SystemClock  # noqa: PLC0415
    from bot.work.errors import AlreadyThereError  # noqa: PLC0415
    from storage import migrate  # noqa: PLC0415
    from storage.locks import holding  # noqa: PLC0415
    from storage.store import Store  # noqa: PLC0415

    store = Store(settings.database)
    try:
        migrate.upgrade(store)
        with holding.held(store):
            filled = filling.fill(store, SystemClock(), CHANNEL, chosen.name)
    except AlreadyThereError as error:
        _say(f"{chosen.name} stands in {error.name} here. Choose another owner: {_PROGRAM} demo --name Kim")
        return 1
    finally:
        store.close()
    state = "was filled before" if filled.already else "is filled"
    print(f"{filled.bar} {state}: {filled.batches} batches, {filled.waste_lines} lines of waste.")
    print(f"Open it in this terminal: {_PROGRAM} console --name {shlex.quote(chosen.name)}")
    print(f"Or join it from Telegram, as manager: /join {filled.joining_code}")
    return 0


def _doctor(settings: Settings, chosen: argparse.Namespace) -> int:
    from bot.operations.doctor import examine  # noqa: PLC0415 - see _run

    return examine(settings, print, chosen.live, chosen.backups)


def _ready(settings: Settings, chosen: argparse.Namespace) -> int:
    from bot.operations.live_checks import door  # noqa: PLC0415 - see _run

    if not settings.listening:
        _say("The bot listens nowhere: set LISTEN_ADDRESS, such as 127.0.0.1:8080.")
        return 2
    found = door(settings.listening)
    print(found.what)
    return 0 if found.good else 1


def _migrate(settings: Settings, chosen: argparse.Namespace) -> int:
    from storage import migrate  # noqa: PLC0415 - see _run
    from storage.store import Store  # noqa: PLC0415

    store = Store(settings.database)
    try:
        if chosen.reopen:
            migrate.reopen(store)
        before = migrate.current(store)
        migrate.upgrade(store)
        print(f"{before or 'empty'} -> {migrate.current(store)}")
    finally:
        store.close()
    return 0


def _backup(settings: Settings, chosen: argparse.Namespace) -> int:
    from bot.operations import maintenance  # noqa: PLC0415 - see _run

    return maintenance.back_up(settings, chosen.file, chosen.keep, chosen.drill, print)


def _restore(settings: Settings, chosen: argparse.Namespace) -> int:
    from bot.operations import maintenance  # noqa: PLC0415 - see _run

    return maintenance.restore(settings, chosen.file, chosen.into, chosen.drill, print)


def _move_database(settings: Settings, chosen: argparse.Namespace) -> int:
    from bot.operations import maintenance  # noqa: PLC0415 - see _run

    return maintenance.move_database(chosen.source, chosen.target, print, _say)


if __name__ == "__main__":
    sys.exit(main())
