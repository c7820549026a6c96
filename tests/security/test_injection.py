"""Tests that people's texts stay text: in HTML, spreadsheets, file names, headers and terminals."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from bot.channels.console.console import Console
from bot.channels.rendering import html_parts
from bot.chat.reply.message import Reply
from tests.api.markup import parse_html
from tests.channels.telegram.conftest import SET_UP, Telephone
from tests.house import Hands, House, text
from tests.security.two_bars import BOOK, sends_file

# Each would have an effect if treated as more than text. "Zq" marks the written text.
_EVIL = (
    "Zq<b>",
    "Zq</pre><a href='tg://x'>",
    "Zq&lt;i&gt;&#60;",
    "Zq{name}{0.__class__}",
    "Zq%s%n%(x)s",
    "Zq'; DROP TABLE bar; --",
    '=HYPERLINK("Zq")',
    "@SUM(Zq)",
    "../../Zq",
    "Zq\\..\\..",
)
_SAID = (
    "new formula {evil}\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h",
    "batch #1 x1",
    "check 1 hazy, {evil}",
    "lot 1 salt {evil}",
    "discard 1 40 ml, {evil}",
    "bar name {evil}",
    "bar waste reasons {evil}, mouldy, other",
    "waste 6 oranges",
    "{evil}",
    "help {evil}",
    "team remove {evil}",
    "join {evil}",
    "rename #1 to {evil} again",
    "formulas",
    "batch 1",
    "log",
    "week",
    "bar",
)


def _all_html(replies: list[Reply]) -> list[str]:
    return [part for one in replies for part in html_parts(one)]


@pytest.mark.parametrize("evil", _EVIL)
def test_what_was_written_is_shown_as_it_was_written(house: House, evil: str) -> None:
    ana = house.open_bar()
    shown = 0
    for line in _SAID:
        for part in _all_html(ana.says(line.format(evil=evil))):
            told = parse_html(part)  # fails like Telegram on invalid markup
            assert {one["type"] for one in told.entities} <= {"bold", "italic", "pre"}, part
            shown += told.text.count("Zq")
    assert shown >= 3
    with house.store.reading() as unit:
        assert unit.bar(1).bar_id == 1
    assert text(ana.says("bar"))


@pytest.mark.parametrize(
    "name", ["<b>Zq", "Zq</code>", "=Zq", "../../etc/Zq", "Zq\r\nX-Evil: 1", "Zq\x00.csv", "Z" * 300]
)
def test_a_files_name_is_text_too(house: House, name: str) -> None:
    ana = house.open_bar()
    for content in (b"day,fruit,pieces\n2026-11-24,orange,6\n", b"\xff\xfe", b"day,fruit\nx,y\n"):
        for part in _all_html(sends_file(house, ana, name, content)):
            assert {one["type"] for one in parse_html(part).entities} <= {"bold", "italic", "pre"}


def test_a_file_that_we_send_has_a_name_of_our_own(house: House) -> None:
    """Names go into an upload's header and onto a disk: they contain only our words and numbers."""
    ana = house.open_bar()
    names: list[str] = []
    for line in (
        *BOOK,
        "bar name ../../Zq",
        "rename #1 to ../../Zq",
        "export",
        "export me",
        "label 1",
        "week picture",
    ):
        names += [file.name for one in ana.says(line) for file in one.files]
    names += [
        file.name
        for one in sends_file(house, ana, "../../Zq", b"day,fruit\n" + b"x,\n" * 9)
        for file in one.files
    ]
    assert {"peel-ledger.json", "my-data.json", "problems.csv"} <= set(names)
    for name in names:
        assert re.fullmatch(r"[A-Za-z0-9-]+\.(csv|json|pdf|png)", name), name


async def test_headers_cannot_be_written_by_a_name(telephone: Telephone) -> None:
    """Line breaks and quotes in names reach the server as text, in the body of a request."""
    ana = telephone.server.person('Ana"\r\nX-Evil: 1\r\n\r\n')
    await ana.says("/start")
    for answer in SET_UP:
        await ana.says(answer)
    await ana.says('bar name Bar"\r\nX-Evil: 1')
    sent = await ana.says("export", expects=6)
    files = [one.file_name for one in sent if one.document is not None]
    assert len(files) == 5
    assert all(re.fullmatch(r"[a-z-]+\.(csv|json)", str(name)) for name in files)


def test_a_terminal_gets_no_sign_that_steers_it(
    house: House, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Names from Telegram may contain escape sequences, and the console shows them to somebody else."""
    monkeypatch.chdir(tmp_path)
    written: list[str] = []
    console = Console(house.store, Hands(house.clock.now()), "Ana", written.append)
    for line in ("start", "The Copper Gull", "Lisbon", "1", "1", "1", "1"):
        console.say(line)
    (code,) = [
        line for line in console.say("invite manager")[0].blocks if "join " in getattr(line, "text", "")
    ]
    ben = house.person("Be\x1b[2Jn\x1b]0;Zq\x07")
    ben.says(code.text)  # type: ignore[union-attr]
    ben.says("new formula Z\x1b[31mq\u202emist\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h")
    ben.says("batch #1 x1")
    ben.says("check 1 hazy, \x1b[2J\x9b31mskin")
    for line in ("team", "formulas", "batch 1", "log", "\x1b[2J", "help \x1b]0;Zq\x07"):
        console.say(line)
    shown = "\n".join(written)
    assert "skin" in shown
    steering = [sign for sign in shown if sign != "\n" and (ord(sign) < 32 or 127 <= ord(sign) < 160)]
    assert steering == []
