"""Tests of what has no words: each gets one kind sentence in private, and silence in a group."""

from __future__ import annotations

from tests.api.group import Group
from tests.api.refusals import JsonDict
from tests.channels.telegram.conftest import MIST, Telephone

_FILE: JsonDict = {"file_id": "file-1", "file_unique_id": "u1", "file_size": 10}
_SENT: list[tuple[JsonDict, str]] = [
    ({"voice": {**_FILE, "duration": 3}}, "I can't listen to messages. Please type it."),
    ({"sticker": {**_FILE, "width": 1, "height": 1}}, "Nice one. I only read text, photos and files"),
    ({"video": {**_FILE, "duration": 3}}, "I can't watch videos. Please type it, or send a photo."),
    ({"location": {"latitude": 1.0, "longitude": 2.0}}, "I can't read a place on a map."),
    ({"contact": {"phone_number": "1", "first_name": "A"}}, "I can't read contacts."),
    ({"poll": {"id": "1", "question": "?", "options": []}}, "I can't take part in polls."),
    ({"document": {**_FILE, "mime_type": "image/png"}}, "I can't keep a picture sent as a file."),
]


async def test_in_private_each_gets_one_sentence(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    for content, answer in _SENT:
        mark = telephone.server.mark()
        ana.sends(dict(content))
        told = await telephone.server.follow(ana, mark)
        assert told.text.startswith(answer), content


async def test_an_open_question_stays(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("waste")
    mark = telephone.server.mark()
    ana.sends(dict(_SENT[0][0]))
    assert "Please type it" in (await telephone.server.follow(ana, mark)).text
    assert "How many limes?" in (await ana.says("limes")).text


async def test_in_a_group_there_is_silence(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    team = Group.made(telephone.server, "Team", [ana])
    await telephone.server.wait_quiet()
    before = len(telephone.server.messages(team))
    for content, _answer in _SENT:
        ana.sends(dict(content), chat=team)
    await telephone.server.wait_quiet()
    assert len(telephone.server.messages(team)) == before


async def test_added_to_a_group_it_says_what_to_do(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    team = Group.made(telephone.server, "Team", [ana], announce=False)
    mark = telephone.server.mark()
    team.adds_bot()
    told = await telephone.server.follow(team, mark)
    assert told.text.startswith("Hello. I help your bar with amounts, batches and waste.")
    assert "send /start here" in told.text


async def test_an_anonymous_admin_is_answered(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    team = Group.made(telephone.server, "Team", [ana], supergroup=True)
    await telephone.server.wait_quiet()
    mark = telephone.server.mark()
    chat = {"id": team.place.id, "title": "Team", "type": "supergroup"}
    anonymous = {"id": 1087968824, "is_bot": True, "first_name": "Group", "username": "GroupAnonymousBot"}
    content = {"text": "/week@peel_ledger_test_bot", "from": anonymous, "sender_chat": chat}
    ana.sends(content, chat=team)
    told = await telephone.server.follow(team, mark)
    assert told.text.startswith("I can't see who you are: you write as the group.")


async def test_an_inline_result_picked_in_the_own_chat_is_no_question(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    bot = {"id": int(telephone.server.token.partition(":")[0]), "is_bot": True, "first_name": "Peel Ledger"}
    before = len(telephone.server.messages(ana))
    ana.sends({"text": "Grapefruit mist: 8 x 50 ml\ngrapefruit oil 50 ml", "via_bot": bot})
    await telephone.server.wait_quiet()
    assert len(telephone.server.messages(ana)) == before
