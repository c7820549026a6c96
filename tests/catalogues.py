"""Extract the texts of the code and check their translations.

python -m tests.catalogues            lists stale, untranslated and badly translated texts
python -m tests.catalogues --update   extracts, updates and compiles them
"""

from __future__ import annotations

import argparse
import io
import string
import sys
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

from babel.messages.catalog import Catalog, Message
from babel.messages.extract import extract_from_dir
from babel.messages.frontend import parse_mapping_cfg
from babel.messages.mofile import read_mo, write_mo
from babel.messages.pofile import read_po, write_po

from bot.chat import i18n
from bot.chat.dialogue.registry import COMMAND_WORDS, all_commands
from bot.chat.i18n.languages import ENGLISH, languages

_ROOT = Path(__file__).parent.parent
_I18N = Path(i18n.__path__[0])
TEMPLATE = _I18N / "messages.pot"
LANGUAGES = tuple(tag for tag in languages() if tag != ENGLISH)
_HEADER = "# What the bot says. Extracted and compiled by: python -m tests.catalogues --update"
_NO_DATE = datetime(2000, 1, 1, tzinfo=UTC)  # otherwise the bytes would change with the clock
_DATED = ("POT-Creation-Date", "PO-Revision-Date")
_UNUSED = ("Project-Id-Version", "Report-Msgid-Bugs-To", "Last-Translator", "Language-Team")
# The functions for translatable texts, with the positions of their text arguments.
_KEYWORDS: dict[str, tuple[int, ...] | None] = {"_": None, "N_": None, "ngettext": (1, 2)}


def catalogue_path(language: str, ending: str = "po") -> Path:
    """Return the path of a language's catalogue: 'po' to edit, 'mo' to read."""
    return _I18N / language / f"messages.{ending}"


def extracted() -> Catalog:
    """Return every text in the code, in the order of the files, and last the beginnings of commands."""
    with (_I18N / "babel.cfg").open(encoding="utf-8") as file:
        methods, options = parse_mapping_cfg(file)  # type: ignore[no-untyped-call]
    catalogue = Catalog(fuzzy=False, header_comment=_HEADER)
    found = extract_from_dir(_ROOT / "bot", methods, options, _KEYWORDS)
    for name, _line, texts, _comments, context in sorted(found, key=lambda one: (one[0], one[1])):
        catalogue.add(texts, locations=[(f"bot/{name}", 0)], context=context)
    for command in sorted(all_commands().values(), key=lambda one: one.name):
        module = f"{command.run.__module__.replace('.', '/')}.py"
        catalogue.add(command.name, locations=[(module, 0)], context=COMMAND_WORDS)
    return catalogue


def template() -> Catalog:
    """Return the texts of the stored template."""
    with TEMPLATE.open("rb") as file:
        return read_po(file)


def catalogue(language: str) -> Catalog:
    """Return a language's stored texts."""
    with catalogue_path(language).open("rb") as file:
        return read_po(file, locale=language)


def compiled(texts: Catalog) -> bytes:
    """Return a catalogue as gettext reads it."""
    buffer = io.BytesIO()
    texts.creation_date = texts.revision_date = _NO_DATE
    write_mo(buffer, texts)
    return buffer.getvalue()


def update() -> None:
    """Rewrite the template, update every language, and compile."""
    source = extracted()
    _write(TEMPLATE, source)
    for language in LANGUAGES:
        texts = catalogue(language)
        # A text that only resembles an old one gets no translation: a wrong one is worse than none.
        texts.update(source, no_fuzzy_matching=True)
        texts.obsolete.clear()
        texts.header_comment = _HEADER
        _write(catalogue_path(language), texts)
        catalogue_path(language, "mo").write_bytes(compiled(catalogue(language)))


def _write(path: Path, texts: Catalog) -> None:
    buffer = io.BytesIO()
    write_po(buffer, texts, width=110, omit_header=False, include_lineno=False)
    lines = buffer.getvalue().decode("utf-8").splitlines()
    # Dates would change the file with every update.
    unwanted = tuple(f'"{name}:' for name in (*_DATED, *_UNUSED))
    kept = [line for line in lines if not line.startswith(unwanted)]
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("\n".join(kept) + "\n", encoding="utf-8")


def ids(texts: Catalog) -> set[str | tuple[str, ...]]:
    """Return the texts; those with a plural as pairs, those with a context prefixed by it."""
    return {_identity(one) for one in texts if one.id}


def _identity(message: Message) -> str | tuple[str, ...]:
    if not isinstance(message.id, str):
        return tuple(message.id)
    context = message.context
    if isinstance(context, bytes):  # as the library reads it from a compiled catalogue
        context = context.decode()
    return f"{context}: {message.id}" if context else message.id


def forms(message: Message) -> tuple[str, ...]:
    """Return the translations of a text: one, or one for each plural."""
    said = message.string or ""
    return (said,) if isinstance(said, str) else tuple(said)


def _translations(texts: Catalog) -> dict[str | tuple[str, ...], tuple[str, ...]]:
    return {_identity(one): forms(one) for one in texts if one.id}


def originals(message: Message) -> tuple[str, ...]:
    """Return the English of a text: one, or singular and plural."""
    return (message.id,) if isinstance(message.id, str) else tuple(message.id)


def placeholders(text: str) -> set[str]:
    """Return the placeholder names in braces."""
    return {name for _text, name, _spec, _turn in string.Formatter().parse(text) if name is not None}


def _ends(text: str) -> tuple[str, str]:
    return text[: len(text) - len(text.lstrip())], text[len(text.rstrip()) :]


def stale() -> list[str]:
    """Return the texts missing from the template, and those no longer in the code."""
    said, kept = ids(extracted()), ids(template())
    missing = [f"not in the template: {one!r}" for one in sorted(said - kept, key=str)]
    return missing + [f"said nowhere any more: {one!r}" for one in sorted(kept - said, key=str)]


def wrong(language: str) -> list[str]:
    """Return the texts of a language that are untranslated, fuzzy or unlike their original."""
    texts = catalogue(language)
    found = [f"not in {language}: {one!r}" for one in sorted(ids(template()) - ids(texts), key=str)]
    for message in texts:
        if message.id:
            found += _wrong_in(message, texts.num_plurals)
    with catalogue_path(language, "mo").open("rb") as file:
        # Not byte for byte: the library includes its own version.
        compiled_texts = read_mo(file)
    if _translations(compiled_texts) != _translations(texts):
        found.append(f"{language}: the compiled catalogue is older than the texts")
    return found


def _wrong_in(message: Message, plurals: int) -> Iterator[str]:
    english, said = originals(message), forms(message)
    if message.fuzzy:
        yield f"unsure: {english[0]!r}"
    if not all(said) or (len(english) > 1 and len(said) != plurals):
        yield f"untranslated: {english[0]!r}"
        return
    wanted = placeholders(english[-1])
    for number, text in enumerate(said):
        # A singular may omit its number: 'one day'.
        missing = (
            wanted - placeholders(text) - (wanted - placeholders(english[min(number, len(english) - 1)]))
        )
        if missing or placeholders(text) - wanted:
            yield f"other placeholders: {english[0]!r}: {text!r}"
        if _ends(text) != _ends(english[0]):
            yield f"other spaces at the ends: {english[0]!r}: {text!r}"


def main() -> int:
    """Run the command line; return 1 if anything is wrong."""
    reader = argparse.ArgumentParser(description="Extract, update, compile and check the catalogues.")
    reader.add_argument("--update", action="store_true")
    if reader.parse_args().update:
        update()
    found = [*stale(), *(one for language in LANGUAGES for one in wrong(language))]
    print("\n".join(found) or f"{len(ids(template()))} texts, complete in: {', '.join(LANGUAGES)}")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
