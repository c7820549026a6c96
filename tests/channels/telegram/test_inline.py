"""Tests of inline queries: amounts for members in any chat, and nothing for others."""

from __future__ import annotations

from tests.channels.telegram.conftest import MIST, Telephone


async def test_a_member_gets_scaled_amounts(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    answer = await ana.types_inline("grapefruit 8x50")
    assert answer.titles == ["Grapefruit mist: 8 x 50 ml"]
    assert answer.cache_time == 0
    assert answer.is_personal
    said = answer.results[0]["input_message_content"]["message_text"]
    assert "grapefruit oil" in said
    assert "50 ml" in said
    assert "grapefruit oil 50 ml" in str(answer.results[0]["description"])
    # It asks and logs nothing.
    assert "made batch" not in (await ana.says("/log")).text


async def test_without_a_size_the_formulas_are_given_as_written(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says(MIST.replace("Grapefruit mist", "Pink mist"))
    assert (await ana.types_inline("")).titles == ["Grapefruit mist: as written", "Pink mist: as written"]
    doubled = await ana.types_inline("mist x2")
    assert [title.partition(":")[0] for title in doubled.titles] == ["Grapefruit mist", "Pink mist"]
    assert "grapefruit oil 24 ml" in str(doubled.results[1]["description"])


async def test_nothing_for_anybody_else(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    eve = telephone.server.person("Eve")
    ben = await telephone.opened_bar("Ben")
    for stranger in (eve, ben):
        for text in ("grapefruit 8x50", "", "#1 x2", "mist"):
            answer = await stranger.types_inline(text)
            assert answer.results == ()
            assert answer.cache_time == 0
            assert answer.is_personal


async def test_a_member_who_was_removed_gets_nothing(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    code = next(
        line for line in (await ana.says("team invite")).text.splitlines() if line.startswith("join ")
    )
    ben = telephone.server.person("Ben")
    await ben.says(code)
    assert len((await ben.types_inline("mist x2")).results) == 1
    await ana.says("team remove Ben")
    assert (await ben.types_inline("mist x2")).results == ()


async def test_what_makes_no_sense_gives_nothing(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    for text in ("zzz 8x50", "grapefruit -5 ml", "💥", "x" * 256):
        assert (await ana.types_inline(text)).results == (), text
