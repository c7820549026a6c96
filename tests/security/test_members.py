"""Tests that removed members are out immediately, and that others join only with an unguessable code."""

from __future__ import annotations

from sqlalchemy import select

from storage.tables import Base, Invite
from tests.api import Person
from tests.channels.telegram.conftest import MIST, Telephone
from tests.house import House, text


def _code(shown: str) -> str:
    return next(line for line in shown.splitlines() if line.startswith("join "))


_OUT = ("not in a bar", "no bar that you are in", "button is old")


async def _with_ben(telephone: Telephone) -> tuple[Person, Person]:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    ben = telephone.server.person("Ben")
    await ben.says(_code((await ana.says("invite")).text))
    return ana, ben


async def test_who_was_removed_is_out_by_every_way(telephone: Telephone) -> None:
    ana, ben = await _with_ben(telephone)
    group = telephone.server.group("Back bar", [ana, ben])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    made = await ben.says("batch grapefruit mist to 200 ml")
    asked = await ben.says("/waste")
    in_group = await ben.says("/batches@peel_ledger_test_bot", chat=group)
    await ana.says("team remove Ben")
    log = (await ana.says("log")).text
    # Old buttons: of an answer, of an open question, of a message in the group.
    for message, chat in ((made.last, None), (asked.last, None), (in_group.last, group)):
        for label in message.labels[:3]:
            said = await ben.taps(label, message=message, chat=chat)
            assert any(one in f"{said.text} {said.toast}" for one in _OUT), (label, said.text, said.toast)
            assert "Grapefruit" not in said.text
    # Links: the label of a batch, and the code he joined with.
    assert "only to members of its bar" in (await ben.opens_link("b_1_1")).text
    # Inline, typed lines, a photo, a file, an edit of an earlier message.
    assert (await ben.types_inline("grapefruit 8x50")).results == ()
    for line in ("batches", "batch 1", "scale grapefruit mist x2", "/week"):
        assert "not in a bar" in (await ben.says(line)).text, line
    assert "no bar that you are in" in (await ben.says("/batch@peel_ledger_test_bot 1", chat=group)).text
    assert "not in a bar" in (await ben.sends_photo("check 1 clear")).text
    assert "not in a bar" in (await ben.sends_document("waste.csv", b"day,fruit\n2026-11-24,lime\n")).text
    assert (await ana.says("log")).text == log


async def test_reminders_do_not_follow_who_was_removed(telephone: Telephone) -> None:
    ana, ben = await _with_ben(telephone)
    await ben.says("batch grapefruit mist to 200 ml")
    await ana.says("team remove Ben")
    before = len(telephone.server.messages(ben))
    mark = telephone.server.mark()
    await telephone.tick(hours=25)
    reminded = await telephone.server.follow(ana, mark)
    assert "has rested" in reminded.text
    assert len(telephone.server.messages(ben)) == before


async def test_a_used_link_lets_nobody_in_again(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    payload = "join_" + _code((await ana.says("invite")).text)[5:].replace("-", "_")
    ben, eve = telephone.server.person("Ben"), telephone.server.person("Eve")
    assert "Welcome" in (await ben.opens_link(payload)).text
    stolen = (await eve.opens_link(payload)).text
    assert "does not work" in stolen
    assert "Copper" not in stolen
    # Nor him, after his removal.
    await ana.says("team remove Ben")
    assert "does not work" in (await ben.opens_link(payload)).text


def test_a_code_stands_nowhere_in_the_database(house: House) -> None:
    ana = house.open_bar()
    code = _code(text(ana.says("invite")))[5:]
    secret = code.rpartition("-")[2]
    with house.store.reading() as unit:
        for table in Base.metadata.sorted_tables:
            for row in unit.session.execute(select(table)):
                assert secret not in repr(tuple(row)), table.name
        (kept,) = unit.session.scalars(select(Invite.code_hash)).all()
    assert len(kept) == 64


def test_wrong_codes_are_counted_whatever_they_look_like(house: House) -> None:
    """Of an existing bar, of none, too long, not a code: each is one attempt, and all answers are alike."""
    house.open_bar()
    eve = house.person("Eve")
    wrong = ("1-1-ABCDEFGHJK", "99-1-ABCDEFGHJK", "1-99-ABCDEFGHJK", "x" * 200, "²-1-A")
    said = {text(eve.says(f"join {code}")) for code in wrong}
    assert len(said) == 1, said
    assert "Too many wrong codes" in text(eve.says("join 1-1-ABCDEFGHJK"))
    # The count belongs to the person: another chat, a link and a restart change nothing.
    house.restart()
    assert "Too many wrong codes" in text(eve.says("start join_1_1_ABCDEFGHJK"))


def test_five_tries_an_hour_do_not_find_a_code() -> None:
    """With 30 letters, 10 places and 5 attempts per hour, a week's probability is below one in 10^12.

    OWASP ASVS 4.0.3, 2.2.1 asks for no more than 100 failed attempts per hour on one account (from memory).
    """
    from bot.work.people.invites import (  # noqa: PLC0415
        _CODE_LENGTH,
        _CODE_LETTERS,
        INVITE_DAYS,
        TRIES,
        WAIT,
    )

    tries = TRIES * INVITE_DAYS * 24 / (WAIT.total_seconds() / 3600)
    thousand_accounts = 1_000
    assert tries * thousand_accounts / len(_CODE_LETTERS) ** _CODE_LENGTH < 1e-8
    assert TRIES <= 100
