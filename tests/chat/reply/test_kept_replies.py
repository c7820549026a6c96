"""Tests that stored replies survive a restart unchanged."""

from __future__ import annotations

import json

from bot.chat.reply.message import Button, Caution, File, Grid, replies_from_json, replies_to_json, reply

_PNG = bytes(range(256))


def test_a_reply_comes_back_whole_with_its_files() -> None:
    said = reply(
        "Send this to your new manager:",
        Grid((("grapefruit oil", "12 ml"),)),
        Caution("No flame."),
        buttons=((Button("Undo", "undo 4"),),),
        files=(
            File("invite.png", _PNG, picture=True, caption="Scan it to join."),
            File("batch-1-1.jpg", b"", picture=True, file_id="AgAC"),
        ),
        edits=True,
    )
    assert replies_from_json(replies_to_json([said])) == [said]


def test_files_too_large_to_keep_are_asked_for_once_more() -> None:
    said = reply("All that is here.", files=(File("all.zip", b"0" * 1_500_000),))
    kept = replies_to_json([said])
    assert len(kept) < 1000
    (again,) = replies_from_json(kept)
    assert not again.files
    assert json.loads(kept)[0]["blocks"][-1][1]["text"] == "If no file came with this, ask once more."
