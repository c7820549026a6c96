"""Tests of the server over HTTP: tokens, methods, updates, webhook, files, faults, with a real Bot."""

from __future__ import annotations

import asyncio
import json
from datetime import timedelta
from http.server import BaseHTTPRequestHandler, HTTPServer
from threading import Thread

import httpx
import pytest
from telegram import Bot
from telegram.error import (
    BadRequest,
    Conflict,
    EndPointNotFound,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
    TimedOut,
)

from tests.api import Fault, Person, Server
from tests.api.conftest import make_bot
from tests.api.pictures import small_png

_SECRET = "s3cret"  # noqa: S105  (of no other use than to be compared)

# -- tokens and methods -----------------------------------------------------------------------------


async def test_the_bot_knows_itself(bot: Bot) -> None:
    assert bot.username == "peel_ledger_test_bot"
    assert bot.supports_inline_queries


async def test_another_token_is_refused(server: Server) -> None:
    stranger = make_bot(server, "123:not-this-one")
    with pytest.raises(InvalidToken):
        await stranger.initialize()
    await stranger.shutdown()
    async with httpx.AsyncClient() as client:
        answer = await client.get(f"{server.base_url}nonsense/getMe")
        assert (answer.status_code, answer.json()["description"]) == (404, "Not Found")
        assert (await client.get(f"{server.base_url}1:x/getMe")).status_code == 401


async def test_an_unknown_method_is_not_found(server: Server, bot: Bot) -> None:
    with pytest.raises(EndPointNotFound):
        await bot.do_api_request("sendSmell")
    assert server.violations == ["sendsmell: Not Found: method not found"]


@pytest.mark.parametrize("how", ["query", "form", "json", "multipart"])
async def test_parameters_are_read_in_every_form(server: Server, ana: Person, how: str) -> None:
    url = f"{server.base_url}{server.token}/sendMessage"
    given = {"chat_id": str(ana.id), "text": "½ & more", "disable_notification": "true"}
    async with httpx.AsyncClient() as client:
        if how == "query":
            answer = await client.get(url, params=given)
        elif how == "form":
            answer = await client.post(url, data=given)
        elif how == "json":
            answer = await client.post(url, json={**given, "chat_id": ana.id, "disable_notification": True})
        else:
            answer = await client.post(url, data=given, files={"unused": ("a.txt", b"x")})
    assert answer.json()["result"]["text"] == "½ & more"
    (seen,) = server.messages(ana)
    assert seen.silent


async def test_a_body_that_cannot_be_read_is_refused(server: Server) -> None:
    url = f"{server.base_url}{server.token}/sendMessage"
    async with httpx.AsyncClient() as client:
        answer = await client.post(url, content=b"{", headers={"Content-Type": "application/json"})
    assert answer.status_code == 400
    assert len(server.violations) == 1


# -- updates ----------------------------------------------------------------------------------------


async def test_updates_stay_until_a_higher_offset_confirms_them(
    server: Server, bot: Bot, ana: Person
) -> None:
    for text in ("one", "two", "three"):
        ana.writes(text)
    first = await bot.get_updates(limit=2)
    assert [update.message.text for update in first if update.message] == ["one", "two"]
    assert [update.update_id for update in await bot.get_updates(limit=2)] == [
        update.update_id for update in first
    ]
    assert len(await bot.get_updates(offset=first[0].update_id)) == 3
    (left,) = await bot.get_updates(offset=first[1].update_id + 1)
    assert left.message
    assert left.message.text == "three"
    assert await bot.get_updates(offset=left.update_id + 1) == ()
    assert server.world.updates.pending == []


async def test_a_negative_offset_keeps_only_the_newest(bot: Bot, ana: Person) -> None:
    for text in ("one", "two", "three"):
        ana.writes(text)
    (newest,) = await bot.get_updates(offset=-1)
    assert newest.message
    assert newest.message.text == "three"
    assert len(await bot.get_updates()) == 1


async def test_a_long_poll_waits_for_the_next_update(bot: Bot, ana: Person) -> None:
    poll = asyncio.create_task(bot.get_updates(timeout=5))
    await asyncio.sleep(0.05)
    assert not poll.done()
    ana.writes("at last")
    assert len(await asyncio.wait_for(poll, 60)) == 1


async def test_an_empty_long_poll_ends_in_time(bot: Bot) -> None:
    assert await asyncio.wait_for(bot.get_updates(timeout=timedelta(milliseconds=50)), 60) == ()


async def test_a_second_poller_ends_the_first_with_conflict(server: Server, bot: Bot, ana: Person) -> None:
    async with make_bot(server) as other:
        poll = asyncio.create_task(bot.get_updates(timeout=5))
        await asyncio.sleep(0.05)
        second = asyncio.create_task(other.get_updates(timeout=5))
        with pytest.raises(Conflict, match="only one bot instance"):
            await poll
        ana.writes("for the second")
        assert len(await second) == 1


async def test_a_poller_that_hangs_up_does_not_hold_the_poll(server: Server, bot: Bot, ana: Person) -> None:
    poll = asyncio.create_task(bot.get_updates(timeout=5))
    await asyncio.sleep(0.05)
    poll.cancel()
    with pytest.raises(asyncio.CancelledError):
        await poll
    await asyncio.sleep(0.02)
    ana.writes("still there")
    assert len(await bot.get_updates()) == 1
    assert server.violations == []


async def test_only_wanted_kinds_are_queued(bot: Bot, ana: Person) -> None:
    await bot.get_updates(allowed_updates=["callback_query"])
    ana.writes("not wanted")
    assert await bot.get_updates() == ()
    ana.blocks_bot()
    ana.unblocks_bot()
    assert await bot.get_updates(allowed_updates=[]) == ()  # an empty list means the default kinds again
    ana.writes("wanted")
    ana.blocks_bot()
    assert [update.my_chat_member is None for update in await bot.get_updates()] == [True, False]


async def test_an_update_can_come_twice_with_one_id(server: Server, bot: Bot, ana: Person) -> None:
    server.duplicate_next_update()
    ana.writes("twice")
    ana.writes("once")
    first = await bot.get_updates(limit=1)
    again = await bot.get_updates(offset=first[0].update_id + 1)
    assert [update.update_id - first[0].update_id for update in again] == [0, 1]
    assert await bot.get_updates(offset=again[-1].update_id + 1) == ()


async def test_updates_can_come_in_the_wrong_order(server: Server, bot: Bot, ana: Person) -> None:
    server.reorder_next_updates(2)
    ana.writes("first")
    assert await bot.get_updates() == ()
    ana.writes("second")
    texts = [update.message.text for update in await bot.get_updates() if update.message]
    assert texts == ["second", "first"]


# -- webhook ----------------------------------------------------------------------------------------


class _Hook:
    """A small web server that records posts and responds with the given statuses."""

    def __init__(self, *statuses: int) -> None:
        self.got: list[tuple[str | None, dict[str, object]]] = []
        left = list(statuses)
        hook = self

        class Handler(BaseHTTPRequestHandler):
            def do_POST(self) -> None:
                body = json.loads(self.rfile.read(int(self.headers["Content-Length"])))
                hook.got.append((self.headers.get("X-Telegram-Bot-Api-Secret-Token"), body))
                self.send_response(left.pop(0) if left else 200)
                self.send_header("Content-Length", "0")
                self.end_headers()

            def log_message(self, format: str, *args: object) -> None:  # noqa: A002
                pass

        self.server = HTTPServer(("127.0.0.1", 0), Handler)
        self.url = f"http://127.0.0.1:{self.server.server_port}/hook"
        self.thread = Thread(target=self.server.serve_forever, kwargs={"poll_interval": 0.01})
        self.thread.start()

    def close(self) -> None:
        self.server.shutdown()
        self.thread.join()
        self.server.server_close()


async def test_a_webhook_gets_updates_with_its_secret(server: Server, bot: Bot, ana: Person) -> None:
    hook = _Hook(500)
    try:
        ana.writes("waiting")
        await bot.set_webhook(hook.url, secret_token=_SECRET)
        ana.writes("another")
        await server.wait_quiet()
        # The first attempt got 500 and was repeated.
        assert [secret for secret, _ in hook.got] == [_SECRET] * 3
        assert hook.got[0][1] == hook.got[1][1]
        info = await bot.get_webhook_info()
        assert (info.url, info.pending_update_count) == (hook.url, 0)
        assert info.last_error_message == "Wrong response from the webhook: 500"
        assert await server.post_to_webhook("message", {}, secret=_SECRET[::-1]) == 200
        assert await server.post_to_webhook("message", {}, secret="") == 200
        assert [secret for secret, _ in hook.got[-2:]] == [_SECRET[::-1], None]
    finally:
        hook.close()


async def test_polling_and_a_webhook_exclude_each_other(server: Server, bot: Bot, ana: Person) -> None:
    poll = asyncio.create_task(bot.get_updates(timeout=5))
    await asyncio.sleep(0.05)
    await bot.set_webhook("http://127.0.0.1:9/hook")
    with pytest.raises(Conflict, match="setWebhook"):
        await poll
    with pytest.raises(Conflict, match="webhook is active"):
        await bot.get_updates()
    ana.writes("lost")
    await bot.delete_webhook(drop_pending_updates=True)
    assert await bot.get_updates() == ()
    assert server.violations == []


async def test_a_webhook_elsewhere_must_be_https(server: Server, bot: Bot) -> None:
    with pytest.raises(BadRequest, match="https url"):
        await bot.set_webhook("http://192.0.2.1/hook")
    with pytest.raises(BadRequest, match="illegal characters"):
        await bot.set_webhook("http://127.0.0.1:9/", secret_token=f"{_SECRET} with blanks")
    assert (await bot.get_webhook_info()).url == ""
    assert len(server.violations) == 2


# -- files ------------------------------------------------------------------------------------------


async def test_files_go_up_and_come_down(server: Server, bot: Bot, ana: Person) -> None:
    sent = await bot.send_document(ana.id, b"a,b\n1,2\n", filename="week.csv", caption="<b>x</b>")
    assert sent.document
    assert (sent.document.file_name, sent.document.mime_type) == ("week.csv", "text/csv")
    file = await bot.get_file(sent.document)
    assert bytes(await file.download_as_bytearray()) == b"a,b\n1,2\n"
    again = await bot.send_document(ana.id, sent.document)
    assert again.document
    assert again.document.file_id == sent.document.file_id
    seen = server.messages(ana)[0]
    assert (seen.document, seen.file_name, seen.text) == (b"a,b\n1,2\n", "week.csv", "<b>x</b>")


async def test_a_picture_sent_by_a_person_can_be_fetched(server: Server, bot: Bot, ana: Person) -> None:
    picture = small_png(30, 20)
    await ana.sends_photo("rested", content=picture, wait=False)
    (update,) = await bot.get_updates()
    assert update.message
    assert (update.message.caption, update.message.photo[0].width) == ("rested", 30)
    file = await bot.get_file(update.message.photo[0])
    assert bytes(await file.download_as_bytearray()) == picture
    server.world.download_limit = 10
    with pytest.raises(BadRequest, match="File is too big"):
        await bot.get_file(update.message.photo[0])
    with pytest.raises(BadRequest, match="Invalid file_id"):
        await bot.get_file("nothing")


# -- faults -----------------------------------------------------------------------------------------


async def test_a_dropped_connection_before_leaves_nothing_behind(
    server: Server, bot: Bot, ana: Person
) -> None:
    server.fail_next("sendMessage", Fault.drop_before(), times=2)
    for _ in range(2):
        with pytest.raises(NetworkError) as raised:
            await bot.send_message(ana.id, "once")
        assert type(raised.value) is NetworkError
    assert server.messages(ana) == []
    await bot.send_message(ana.id, "once")
    assert len(server.messages(ana)) == 1
    assert server.faults.left == 0


async def test_a_dropped_connection_after_leaves_the_message(server: Server, bot: Bot, ana: Person) -> None:
    server.fail_next("sendMessage", Fault.drop_after())
    with pytest.raises(NetworkError):
        await bot.send_message(ana.id, "delivered")
    assert [seen.text for seen in server.messages(ana)] == ["delivered"]


async def test_errors_of_the_server_and_of_a_proxy(server: Server, bot: Bot, ana: Person) -> None:
    server.fail_next("*", Fault.http(500))
    server.fail_next("*", Fault.http(502))
    with pytest.raises(NetworkError, match="Internal Server Error"):
        await bot.send_message(ana.id, "x")
    with pytest.raises(NetworkError, match="Bad Gateway"):
        await bot.send_message(ana.id, "x")
    assert server.messages(ana) == []


async def test_flood_on_order(server: Server, bot: Bot, ana: Person) -> None:
    server.fail_next("sendMessage", Fault.flood(7))
    with pytest.raises(RetryAfter) as raised:
        await bot.send_message(ana.id, "x")
    assert raised.value.retry_after.total_seconds() == 7  # type: ignore[union-attr]


async def test_a_slow_answer_times_out_though_delivered(server: Server, ana: Person) -> None:
    async with make_bot(server, read_timeout=0.5) as bot:
        server.fail_next("sendMessage", Fault.slow(2.0))
        with pytest.raises(TimedOut) as raised:
            await bot.send_message(ana.id, "late")
        assert isinstance(raised.value.__cause__, httpx.ReadTimeout)
        assert [seen.text for seen in server.messages(ana)] == ["late"]
        server.fail_next("sendMessage", Fault.slow(2.0, processed=False))
        with pytest.raises(TimedOut):
            await bot.send_message(ana.id, "never")
        assert len(server.messages(ana)) == 1


async def test_half_an_answer(server: Server, bot: Bot, ana: Person) -> None:
    server.fail_next("sendMessage", Fault.garbled())
    with pytest.raises(TelegramError, match="Invalid server response"):
        await bot.send_message(ana.id, "x")
    assert len(server.messages(ana)) == 1


async def test_a_fault_can_pick_its_call(server: Server, bot: Bot, ana: Person) -> None:
    server.fail_next("sendMessage", Fault.http(500), when=lambda values: "boom" in values["text"])
    await bot.send_message(ana.id, "fine")
    with pytest.raises(NetworkError):
        await bot.send_message(ana.id, "boom")
    await bot.send_message(ana.id, "boom")
    assert len(server.messages(ana)) == 2


async def test_polling_can_fail_too(server: Server, bot: Bot, ana: Person) -> None:
    ana.writes("kept")
    server.fail_next("getUpdates", Fault.drop_after())
    with pytest.raises(NetworkError):
        await bot.get_updates()
    assert len(await bot.get_updates()) == 1
