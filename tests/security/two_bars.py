"""Two bars with the same names and numbers, and marks in every text of one of them.

Bar A is Bea's. Ana was a member of A and was removed; she then created bar B, and Ben is a member of B. Both
wrote the same lines, so that a row of one has the number and the name of a row of the other. After that every
text column of A's rows gets a unique mark: a visible mark means a visible row of A.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from typing import Any

import pypdfium2 as pdfium
from sqlalchemy import JSON, LargeBinary, String, Table, func, select, update
from sqlalchemy.orm import Session

from bot.channels.rendering import html_parts, plain_lines
from bot.chat.reply.message import Document, File, Message, Reply
from storage.store import Store
from storage.tables import Base, InBar
from tests.house import CHANNEL, House, Person

MARK = "ʘ"
A, B = 1, 2
A_GROUP = "Salt Stair back room"
B_GROUP = "Copper Gull back room"
# Rows are looked up by these: they stay unchanged, so that a query without the bar would find A's row.
_LOOKED_UP = {"match_key", "key", "ref", "source", "code_hash"}
# And list choices, without which A's own members could not show that the marks are visible.
_CHOSEN = {"role", "zone", "currency", "units", "language", "jurisdiction"}
_CHOSEN |= {"preparation", "kind", "unit", "pack_unit"}  # examples are made of these
_UNMARKED = _LOOKED_UP | _CHOSEN

BOOK = (
    "new formula Grapefruit mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\nneutral spirit 96 % 62 ml\n"
    "kind aroma mist\nreplaces grapefruit\nsprays 2-3",
    "new formula Lemon cordial\nlemon juice 400 ml\nsugar 400 g\nkind cordial",
    "price grapefruit oil 10 ml 7.90",
    "price oranges 0.60 each, 5 garnishes each",
    "price neutral spirit 1 l 24",
    "waste 6 oranges mouldy",
    "batch grapefruit mist to 400 ml",
    "batch grapefruit mist to 8 x 50 ml",
    "lot 1 grapefruit oil A2231",
    "check 1 hazy, a thin skin",
    "bought 80 oranges 34.00",
    "stock neutral spirit 4 l",
    "par neutral spirit 3 l",
    "drinks 40 grapefruit mist",
    "peeled 12 oranges",
    "juiced 4 oranges 280 ml",
    "trial grapefruit mist: grapefruit oil 14 ml",
    "50 ml",
    "yes",
    "taste A 4 4 4 4",
    "weigh Tall 152.31 150.55 148.80 147.02 20 sprays with grapefruit mist",
    "use Tall for grapefruit mist",
    "invite",
    "bottled 2 4 x 50 ml",
    "serve negroni: 2 grapefruit mist, 90 ml",
    "event 100 guests 20 Dec, 2 drinks each, grapefruit mist",
)
_FILE = b"day,fruit,pieces,reason\n2026-11-24,orange,6,mouldy\n"


def fill(house: House) -> list[str]:
    """Fill both bars; return every line behind a button of bar A."""
    bea = house.open_bar("Bea", "The Salt Stair")
    seen = list(_lines_of(_write(house, bea)))
    bea.says("/start", A_GROUP)
    seen += _lines_of(bea.says("/batches", A_GROUP))
    house.joins("Ana", by="Bea")
    ana = house.person("Ana")
    for line in ("batches", "batch 1", "scale grapefruit mist x2", "log", "waste"):
        seen += _lines_of(ana.says(line))
    bea.says("team remove Ana")
    seen += _lines_of(bea.says("waste"))  # an open question of A's
    house.clock.turn(hours=25)
    seen += _lines_of([one.reply for one in house.reminders()])
    house.open_bar("Ana", "The Copper Gull")
    _write(house, ana)
    ana.says("/start", B_GROUP)
    house.joins("Ben", by="Ana")
    house.person("Ben").says("waste 3 limes dried out")
    return list(dict.fromkeys(seen))


def _write(house: House, person: Person) -> list[Reply]:
    said = [one for line in BOOK for one in person.says(line)]
    said += person.taps_line("settle grapefruit = toronja\nwaste 1 toronja mouldy")  # another name
    said += person.taps_line("as waste: bunged 2 grapefruits mouldy")  # a wording
    (tried,) = sends_file(house, person, "waste.csv", _FILE)
    said += [tried, *person.taps_line(tried.buttons[0][0].line)]
    return [*said, *sends_file(house, person, "kept.csv", _FILE.replace(b"6", b"7"))]


def sends_file(house: House, person: Person, name: str, content: bytes) -> list[Reply]:
    """Send a file in a person's private chat."""
    here = house.room(None, person)
    message = Message(
        CHANNEL,
        person.sender,
        here.place,
        "",
        key=house.next_key(here),
        sent_at=house.clock.now(),
        document=Document(name, content),
    )
    return house.conversation.answer(message)


def _lines_of(replies: list[Reply]) -> Iterator[str]:
    for one in replies:
        for row in one.buttons:
            yield from (button.line for button in row)


# -- marks ------------------------------------------------------------------------------------


def tables() -> Iterator[Table]:
    """Every table with rows of one bar."""
    for mapper in Base.registry.mappers:
        if issubclass(mapper.class_, InBar) and isinstance(mapper.local_table, Table):
            yield mapper.local_table


def empty_tables(store: Store, bar_id: int) -> list[str]:
    """The tables without rows of this bar."""
    with store.reading() as unit:
        return sorted(
            one.name
            for one in tables()
            if not unit.session.scalar(select(func.count()).select_from(one).where(one.c.bar_id == bar_id))
        )


def plant(store: Store) -> int:
    """Mark every text of bar A; return the number of marks."""
    count = 0
    with store.writing() as unit:
        for table in [*tables(), Base.metadata.tables["bar"]]:
            count += _plant_in(unit.session, table)
    return count


def _plant_in(session: Session, table: Table) -> int:
    scope = table.c.id == A if table.name == "bar" else table.c.bar_id == A
    keys = list(table.primary_key.columns)
    count = 0
    for row in session.execute(select(table).where(scope)).mappings().all():
        marked = {
            column.name: _marked(column.type, row[column.name])
            for column in table.columns
            if isinstance(column.type, String | JSON | LargeBinary)
            and column.name not in _UNMARKED
            and not column.primary_key
            and row[column.name] is not None
        }
        if marked:
            one = [key == row[key.name] for key in keys]
            session.execute(update(table).where(*one).values(**marked))
            count += len(marked)
    return count


def _marked(kind: Any, value: Any) -> Any:
    if isinstance(kind, JSON):
        return _marked_json(value)
    if isinstance(kind, LargeBinary):
        return value + MARK.encode()
    return str(value)[: (kind.length or 10_000) - 1] + MARK


def _marked_json(value: Any) -> Any:
    """Return the value with every text marked, and one more entry in every object."""
    if isinstance(value, dict):
        return {**{name: _marked_json(one) for name, one in value.items()}, MARK: MARK}
    if isinstance(value, list):
        return [_marked_json(one) for one in value]
    return value + MARK if isinstance(value, str) else value


def leaks(replies: list[Reply]) -> list[str]:
    """The marks visible in a person's messages and files."""
    found = []
    for one in replies:
        shown = [*plain_lines(one), *html_parts(one), one.ask or ""]
        shown += [f"{button.label} {button.line}" for row in one.buttons for button in row]
        shown += [f"{file.name} {file.caption} {file.file_id}" for file in one.files]
        shown += [_words_in(file) for file in one.files if not file.picture]
        found += [line for line in shown if MARK in line or json.dumps(MARK)[1:-1] in line]
    return found


def _words_in(file: File) -> str:
    if not file.name.endswith(".pdf"):
        return file.content.decode("utf-8")
    with pdfium.PdfDocument(file.content) as document:
        return "\n".join(page.get_textpage().get_text_range() for page in document)


# -- rows -------------------------------------------------------------------------------------


def rows_of(store: Store, bar_id: int) -> dict[str, str]:
    """A fingerprint of all rows of a bar, by table."""
    found = {}
    with store.engine.connect() as connection:
        for table in [*tables(), Base.metadata.tables["bar"]]:
            scope = table.c.id == bar_id if table.name == "bar" else table.c.bar_id == bar_id
            rows = connection.execute(select(table).where(scope).order_by(*table.primary_key.columns))
            text = "\n".join(repr(tuple(row)) for row in rows)
            found[table.name] = hashlib.sha256(text.encode()).hexdigest()
    return found


def changed(before: dict[str, str], after: dict[str, str]) -> list[str]:
    """The tables with any change."""
    return [name for name, mark in before.items() if after[name] != mark]
