"""Tests of edited messages: the log follows, and keeps both entries."""

from __future__ import annotations

from sqlalchemy import func, update

from bot.channels.telegram.updates import CHANNEL
from storage.tables import Entry, Inbox, Waste
from tests.channels.telegram.conftest import MIST, Telephone


async def test_an_edited_line_is_logged_in_place_of_the_first(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("price oranges 0.60 each")
    said = await ana.says("waste 6 oranges mouldy")
    edited = await ana.edits(said, "waste 8 oranges dried out")
    assert "Corrected: 8 oranges instead of 6, dried out instead of mouldy" in edited.text
    assert "€4.80" in (await ana.says("week")).text
    log = (await ana.says("/log")).text
    assert "waste: 6 oranges, mouldy (now #" in log
    assert "waste: 8 oranges, dried out (instead of #" in log


async def test_an_edit_of_an_edit_and_undo(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("price oranges 0.60 each")
    said = await ana.says("waste 6 oranges mouldy")
    await ana.edits(said, "waste 8 oranges mouldy")
    await ana.edits(said, "waste 10 oranges mouldy")
    assert "€6.00" in (await ana.says("week")).text
    assert "Undone: 10 oranges, mouldy" in (await ana.says("/undo")).text
    week = (await ana.says("week")).text
    assert "€6.00" not in week
    # Another edit does not restore an entry that is no longer valid.
    again = await ana.edits(said, "waste 1 orange mouldy")
    assert "What that message logged was undone at" in again.text


async def test_a_change_that_is_none_changes_nothing(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    said = await ana.says("waste 6 oranges mouldy")
    await ana.edits(said, "waste 6 oranges mouldy", expects=0)
    log = (await ana.says("/log")).text
    assert log.count("6 oranges") == 1
    assert "undone by" not in log
    assert "(now #" not in log
    helped = await ana.says("help")
    await ana.edits(helped, "help", expects=0)


async def test_words_that_log_nothing_leave_the_log_alone(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    said = await ana.says("waste 6 oranges mouldy")
    for words in ("hello there", "waste 6", "waste 6 oranges sdkfjh", "week", "waste"):
        kept = await ana.edits(said, words)
        assert "Nothing changed." in kept.text, words
    assert "undone" not in (await ana.says("/log")).text
    await ana.edits(said, "hello again")
    assert "Undone: 6 oranges, mouldy" in (await ana.taps("Undo")).text


async def test_after_a_day_it_is_too_late(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    said = await ana.says("waste 6 oranges mouldy")
    telephone.clock.turn(hours=25)
    late = await ana.edits(said, "waste 8 oranges mouldy")
    assert "more than 24 hours ago" in late.text
    assert "8 oranges" not in (await ana.says("/log")).text


async def test_a_typing_error_mended_by_editing_is_done(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    said = await ana.says("wsate 3 limes mouldy")
    assert "Logged: 3 limes" in (await ana.edits(said, "waste 3 limes mouldy")).text


async def test_an_edited_batch(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    said = await ana.says("batch grapefruit mist to 200 ml")
    assert "Batch 2" in (await ana.edits(said, "batch grapefruit mist to 400 ml")).text
    assert "There is no batch 1" in (await ana.says("batch 1")).text


async def test_the_same_edit_twice_changes_nothing_twice(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("price oranges 0.60 each")
    said = await ana.says("waste 6 oranges mouldy")
    telephone.server.duplicate_next_update()
    await ana.edits(said, "waste 8 oranges mouldy")
    assert "€4.80" in (await ana.says("week")).text


async def test_an_edited_command_in_a_group(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    group = telephone.server.group("Back bar", [ana])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    said = await ana.says("/waste 6 oranges mouldy", chat=group)
    edited = await ana.edits(said, "/waste 7 oranges mouldy", chat=group)
    assert "7 oranges" in edited.text


async def test_an_answer_inside_a_dialogue_is_corrected_by_an_edit(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("waste")
    fruit = await ana.says("lemons")
    await ana.says("3")
    assert "Why?" in (await ana.edits(fruit, "limes")).text
    assert "Logged: 3 limes, mouldy" in (await ana.taps("mouldy")).text
    refused = await ana.edits(await ana.says("waste 1 lime mouldy"), "waste a few, mouldy")
    assert "Nothing changed." in refused.text


async def test_a_message_from_before_keys_named_the_bot_is_still_edited(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    said = await ana.says("waste 6 oranges mouldy")
    await telephone.server.wait_quiet()
    _forget_the_bot(telephone)
    await telephone.restart()
    edited = await ana.edits(said, "waste 8 oranges mouldy")
    assert "Corrected: 8 oranges instead of 6" in edited.text
    assert "Corrected: 9 oranges instead of 8" in (await ana.says("make it 9")).text
    _forget_the_bot(telephone)
    await telephone.restart()
    assert "Corrected: 7 oranges instead of 9" in (await ana.says("make it 7")).text


def _forget_the_bot(telephone: Telephone) -> None:
    """Store updates and keys as they were before revision 0011."""
    with telephone.channel.store.writing() as unit:
        for table in (Entry, Waste):
            without = func.replace(table.source, f"{telephone.server.world.bot_id}:", "")
            unit.connection.execute(update(table).values(source=without))
        unit.connection.execute(update(Inbox).values(channel=CHANNEL))
