"""Tests of the HTTP client: persistent connections, and the outcome of each interruption.

Expected outcomes: RFC 9112, sections 6 (chunked), 9.3 and 9.6 (persistent and closed connections), read; an
untrusted certificate is refused, common practice.
"""

from __future__ import annotations

import asyncio
import shlex
import shutil
import ssl
import subprocess
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from telegram.error import NetworkError, TelegramError, TimedOut

from bot.channels.telegram.http_client import BrokeOffError, LeanRequest, NeverLeftError
from bot.channels.telegram.outcomes import classify
from bot.work.reminders.delivery import Outcome

_OK = b"HTTP/1.1 200 OK\r\nContent-Length: 2\r\n\r\nok"
Answers = Callable[[asyncio.StreamReader, asyncio.StreamWriter], Awaitable[None]]


@dataclass
class _Server:
    """Answers each request with the next of the given texts; an empty one closes the connection instead."""

    answers: list[bytes]
    lines: int = 0
    asked: list[bytes] = field(default_factory=list)
    port: int = 0

    async def talk(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        self.lines += 1
        try:
            while self.answers:
                head = await reader.readuntil(b"\r\n\r\n")
                length = int(head.lower().partition(b"content-length:")[2].split(b"\r\n")[0])
                self.asked.append(head + await reader.readexactly(length))
                answer = self.answers.pop(0)
                if not answer:
                    break
                writer.write(answer)
                await writer.drain()
        except asyncio.IncompleteReadError:
            pass
        finally:
            writer.close()


@asynccontextmanager
async def _serving(
    *answers: bytes, talk: Answers | None = None, context: ssl.SSLContext | None = None
) -> AsyncIterator[_Server]:
    server = _Server(list(answers))
    ends: list[asyncio.StreamWriter] = []

    async def talking(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        ends.append(writer)
        await (talk or server.talk)(reader, writer)

    listening = await asyncio.start_server(talking, "127.0.0.1", 0, ssl=context)
    server.port = listening.sockets[0].getsockname()[1]
    async with listening:
        yield server
    for end in ends:
        end.close()
        with suppress(OSError):
            await end.wait_closed()


@asynccontextmanager
async def _asking(connections: int = 2, encrypted: bool = False) -> AsyncIterator[LeanRequest]:
    request = LeanRequest(connections, read_timeout=1.5, encrypted=encrypted)
    async with request:
        yield request


async def test_one_connection_serves_request_after_request() -> None:
    async with _serving(_OK, _OK, _OK) as server, _asking() as request:
        for _ in range(3):
            assert await request.do_request(f"http://127.0.0.1:{server.port}/bot1:A/getMe", "POST") == (
                200,
                b"ok",
            )
    assert server.lines == 1
    assert server.asked[0].startswith(b"POST /bot1:A/getMe HTTP/1.1\r\n")
    assert f"Host: 127.0.0.1:{server.port}\r\n".encode() in server.asked[0]


async def test_no_more_connections_than_allowed() -> None:
    async with _serving(*[_OK] * 6) as server, _asking(connections=2) as request:
        url = f"http://127.0.0.1:{server.port}/x?y=z"
        answers = await asyncio.gather(*(request.do_request(url, "GET") for _ in range(6)))
    assert answers == [(200, b"ok")] * 6
    assert server.lines == 2
    assert server.asked[0].startswith(b"GET /x?y=z HTTP/1.1\r\n")


@pytest.mark.parametrize(
    ("answer", "status", "body"),
    [
        (
            b"HTTP/1.1 200 OK\r\nTransfer-Encoding: chunked\r\n\r\n2\r\nab\r\n3\r\ncde\r\n0\r\n\r\n",
            200,
            b"abcde",
        ),
        (
            b"HTTP/1.1 100 Continue\r\n\r\nHTTP/1.1 502 Bad Gateway\r\nContent-Length: 3\r\n\r\nbad",
            502,
            b"bad",
        ),
    ],
)
async def test_other_shapes_of_an_answer(answer: bytes, status: int, body: bytes) -> None:
    async with _serving(answer) as server, _asking() as request:
        assert await request.do_request(f"http://127.0.0.1:{server.port}/", "POST") == (status, body)


async def test_a_connection_that_the_server_closes_is_not_used_again() -> None:
    closing = b"HTTP/1.1 200 OK\r\nConnection: close\r\nContent-Length: 2\r\n\r\nok"
    async with _serving(closing, _OK, b"", _OK) as server, _asking() as request:
        url = f"http://127.0.0.1:{server.port}/"
        assert await request.do_request(url, "POST") == (200, b"ok")
        assert await request.do_request(url, "POST") == (200, b"ok")
        assert server.lines == 2
        with pytest.raises(NetworkError):
            await request.do_request(url, "POST")  # closed: whether the request was read is unknown
        assert await request.do_request(url, "POST") == (200, b"ok")
    assert server.lines == 3


async def test_a_connection_that_was_closed_while_idle_is_not_used_again() -> None:
    async def once(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        await reader.readuntil(b"\r\n\r\n")
        writer.write(_OK)
        writer.close()

    async with _serving(talk=once) as server, _asking() as request:
        for _ in range(3):
            assert (await request.do_request(f"http://127.0.0.1:{server.port}/", "POST"))[0] == 200
            await asyncio.sleep(0.05)


async def _error(request: LeanRequest, port: int) -> TelegramError:
    with pytest.raises(TelegramError) as caught:
        await request.do_request(f"http://127.0.0.1:{port}/", "POST")
    return caught.value


async def test_hung_up_on_the_send_may_have_arrived() -> None:
    half = b"HTTP/1.1 200 OK\r\nContent-Length: 20\r\n\r\nhalf"

    async def cut(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        await reader.readuntil(b"\r\n\r\n")
        writer.write(half)
        writer.close()

    async with _serving(b"") as server, _asking() as request:
        error = await _error(request, server.port)
    assert isinstance(error.__cause__, BrokeOffError)
    assert classify(error).outcome is Outcome.UNSURE
    async with _serving(talk=cut) as server, _asking() as request:
        assert classify(await _error(request, server.port)).outcome is Outcome.UNSURE
    async with _serving(b"no such protocol\r\n\r\n") as server, _asking() as request:
        assert classify(await _error(request, server.port)).outcome is Outcome.UNSURE


@pytest.mark.long
async def test_a_silent_server_times_out_and_its_connection_is_dropped() -> None:
    async def silent(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        await reader.read()
        writer.close()

    async with _serving(talk=silent) as server, _asking(connections=1) as request:
        first = await _error(request, server.port)
        second = await _error(request, server.port)  # the only allowed connection was returned
    assert isinstance(first, TimedOut)
    assert isinstance(second, TimedOut)
    assert classify(first).outcome is Outcome.UNSURE


async def test_where_nobody_listens_nothing_can_have_arrived() -> None:
    async with _serving(_OK) as server:
        port = server.port
    async with _asking() as request:
        error = await _error(request, port)
    assert isinstance(error.__cause__, NeverLeftError)
    assert classify(error).outcome is Outcome.NOT_SENT


def _certificate(folder: Path) -> ssl.SSLContext:
    """The server side of TLS, with a certificate for localhost that only its own file trusts."""
    openssl = shutil.which("openssl")
    if openssl is None:
        pytest.skip("no openssl on this machine to make a certificate with")
    making = shlex.split(
        "req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes -days 2 -subj /CN=localhost "
        "-addext subjectAltName=DNS:localhost -keyout key.pem -out cert.pem"
    )
    subprocess.run(
        [openssl, *making],
        cwd=folder,
        check=True,
        capture_output=True,
    )
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(folder / "cert.pem", folder / "key.pem")
    return context


async def test_tls_is_checked_against_the_trusted_certificates(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("HTTP_PROXY", "HTTPS_PROXY", "ALL_PROXY", "http_proxy", "https_proxy", "all_proxy"):
        monkeypatch.delenv(name, raising=False)
    async with _serving(_OK, _OK, context=_certificate(tmp_path)) as server:
        url = f"https://localhost:{server.port}/"
        async with _asking(encrypted=True) as request:
            with pytest.raises(NetworkError, match="certificate verify failed") as caught:
                await request.do_request(url, "POST")
        assert classify(caught.value).outcome is Outcome.NOT_SENT
        monkeypatch.setenv("SSL_CERT_FILE", str(tmp_path / "cert.pem"))
        async with _asking(encrypted=True) as request:
            assert await request.do_request(url, "POST") == (200, b"ok")
            assert await request.do_request(url, "POST") == (200, b"ok")
            with pytest.raises(NetworkError, match="certificate"):  # of another name
                await request.do_request(f"https://127.0.0.1:{server.port}/", "POST")
    assert len(server.asked) == 2
