"""Tests that any typed or tapped text is answered, and that no data of one bar reaches another."""

from __future__ import annotations

import hashlib
import re

from hypothesis import HealthCheck, given
from hypothesis import strategies as st
from sqlalchemy import select

from bot.channels.rendering import html_parts, plain_lines
from bot.chat.dialogue.registry import all_commands
from bot.chat.reply.message import BUTTON_BYTES, Reply
from storage.store import Store
from storage.tables import Base
from tests.buttons import LONGEST_MESSAGE
from tests.examples import examples
from tests.house import House

# Words that only the other bar knows; no typed text here contains them.
_SECRETS = ("zanzibar", "quixotic", "xylograph", "bea", "salt stair", "77.31", "l-4711")
_BOOK = (
    "new formula Quixotic mist\nzanzibar oil 12 ml\npropylene glycol 22 ml\nneutral spirit 96 % 62 ml\n"
    "kind aroma mist\nreplaces grapefruit",
    "price zanzibar oil 10 ml 77.31",
    "price oranges 0.60 each, 5 garnishes each",
    "bar waste reasons xylograph, mouldy, other",
    "waste 6 oranges xylograph",
    "batch quixotic mist to 400 ml",
    "lot 1 zanzibar oil L-4711",
    "check 1 hazy, zanzibar skin on top",
)
_OURS = (
    "new formula Grapefruit mist\ngrapefruit oil 12 ml\nneutral spirit 96 % 62 ml\nkind aroma mist",
    "price grapefruit oil 10 ml 7.90",
    "waste 6 oranges mouldy",
    "batch grapefruit mist to 400 ml",
)

_COMMANDS = st.sampled_from(
    sorted({word for one in all_commands().values() for word in (one.name, *one.words)})
)
_RESTS = st.sampled_from(
    [
        *[
            "",
            "#1",
            "#2",
            "#1.1",
            "#1 x2",
            "1",
            "2",
            "1 clear",
            "1 hazy, skin",
            "1 40 ml",
            "99",
            "all",
            "yes",
            "no",
        ],
        *[
            "grapefruit mist",
            "grapefruit mist to 8 x 50 ml",
            "grapefruit mist x2",
            "grapefruit mist with 12 ml oil",
        ],
        *["oranges", "6 oranges", "6 oranges mouldy, 2 limes", "3 tyres", "orange 0.60 each", "#1 0.60 each"],
        *[
            "invite",
            "remove 1",
            "remove 2",
            "owner 1",
            "closing hour 04:00",
            "name Other",
            "currency usd",
            "1 2 hours",
        ],
        *[
            "grapefruit mist: grapefruit oil 14 ml",
            "grapefruit mist to Pink",
            "last week",
            "2026-W48",
            "lot A1",
            "½",
        ],
    ]
)
_LINES = st.one_of(
    st.tuples(_COMMANDS, _RESTS).map(" ".join),
    st.tuples(_COMMANDS, _RESTS).map(lambda parts: "/" + " ".join(parts)),
    _RESTS,
    st.sampled_from(
        ["back", "done", "cancel", "12 ml", "lime oil 10 ml", "tincture", "24 h", "Lisbon", "x3", "ok"]
    ),
    st.text(max_size=30),
)
_TAP = st.tuples(st.just("tap"), st.integers(0, 40))
_OLD_TAP = st.tuples(st.just("old"), st.integers(0, 400))
_STEPS = st.lists(st.one_of(_LINES, _TAP, _OLD_TAP), min_size=1, max_size=8)


def _digest(store: Store, bar_id: int) -> str:
    """Return a fingerprint of all rows of a bar."""
    found = hashlib.sha256()
    with store.reading() as unit:
        for name, table in sorted(Base.metadata.tables.items()):
            scope = table.c.id == bar_id if name == "bar" else None
            if name != "bar" and "bar_id" in table.c and name not in {"person", "room"}:
                scope = table.c.bar_id == bar_id
            if scope is None:
                continue
            for row in unit.session.execute(select(table).where(scope).order_by(*table.primary_key.columns)):
                found.update(repr(tuple(row)).encode())
    return found.hexdigest()


def _shown(reply: Reply) -> str:
    buttons = [f"{button.label} {button.line}" for row in reply.buttons for button in row]
    return "\n".join(
        [*plain_lines(reply), *buttons, reply.ask or "", *(file.caption for file in reply.files)]
    )


def _check(reply: Reply) -> None:
    shown = _shown(reply).casefold()
    for secret in _SECRETS:
        assert re.search(rf"\b{re.escape(secret)}\b", shown) is None, secret  # but 'flambeado'
    assert reply.first_line.strip()
    for part in html_parts(reply):
        assert part
    assert len("\n".join(plain_lines(reply))) <= LONGEST_MESSAGE
    assert all(len(button.line.encode()) <= BUTTON_BYTES for row in reply.buttons for button in row)


def _two_bars(house: House) -> list[str]:
    """Fill two bars; return every line behind a button of the other bar."""
    bea = house.open_bar("Bea", "The Salt Stair")
    theirs = [
        button.line for line in _BOOK for one in bea.says(line) for row in one.buttons for button in row
    ]
    house.person("Bea").says("waste")
    theirs += [button.line for row in house.room(None, bea).shown[-1].reply.buttons for button in row]
    ana = house.open_bar("Ana", "The Copper Gull")
    for line in _OURS:
        ana.says(line)
    return theirs


@examples(40, HealthCheck.function_scoped_fixture, HealthCheck.too_slow)
@given(steps=_STEPS)
def test_an_answer_comes_and_nothing_leaks(house: House, steps: list[str | tuple[str, int]]) -> None:
    # The first example opens the bars; later examples continue from the state before.
    if "Bea" not in house.persons:
        house.theirs = _two_bars(house)  # type: ignore[attr-defined]
        house.before = _digest(house.store, 1)  # type: ignore[attr-defined]
    ana = house.person("Ana")
    room = house.room(None, ana)
    for step in steps:
        if isinstance(step, str):
            replies = ana.says(step)
        elif step[0] == "old":
            lines: list[str] = house.theirs  # type: ignore[attr-defined]
            replies = ana.taps_line(lines[step[1] % len(lines)])
        else:
            rows = [button.label for row in room.shown[-1].reply.buttons for button in row]
            replies = ana.taps(rows[step[1] % len(rows)]) if rows else []
        for reply in replies:
            _check(reply)
        if len(room.shown) > 50:
            del room.shown[:-50]
    # No action of one bar changes a row of another.
    assert _digest(house.store, 1) == house.before  # type: ignore[attr-defined]
