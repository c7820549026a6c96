"""A lean HTTP client for the Bot API: h11 on asyncio streams, with persistent connections.

The library's request class uses httpx and httpcore, which cost several times the protocol itself per call; on
a small machine that is most of the cost of an answer. Uploads, and machines behind a proxy, still use the
library's class.
"""

from __future__ import annotations

import asyncio
import contextlib
import json
import ssl
import time
from collections.abc import Awaitable, Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Any, TypeVar
from urllib.parse import SplitResult, urlencode, urlsplit
from urllib.request import getproxies

import h11
from telegram import Bot
from telegram._utils.defaultvalue import DefaultValue
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, HTTPXRequest, RequestData
from telegram.request._requestparameter import RequestParameter

from storage.trouble import AwayError
from storage.types import JsonObject

_KEEP_SECONDS = 60.0
_READ_BYTES = 65536
_CLOSING_SECONDS = 1.0
_NEXT_ADDRESS_SECONDS = 0.25  # RFC 8305, section 5: the recommended delay
_PORTS = {"http": 80, "https": 443}
Thing = TypeVar("Thing")
_May = Callable[[], Awaitable[bool]]
# The library's methods between `call` and the connection have no parameters for these: the check whether a
# request may still leave, and the callback when it has left.
_MAY_SEND: ContextVar[_May | None] = ContextVar("may_send", default=None)
_LEFT: ContextVar[Callable[[], None] | None] = ContextVar("left", default=None)


_PROXY_HELP = (
    "The proxy of this machine cannot be used: a SOCKS proxy needs pip install 'peel-ledger[socks]', "
    "and any other should look like http://HOST:PORT (HTTPS_PROXY, ALL_PROXY)."
)


class ProxyError(ValueError):
    """The environment names a proxy that cannot be used; the text says so in a sentence."""


class NeverLeftError(Exception):
    """No connection was made, so no part of the request can have arrived."""


class BrokeOffError(Exception):
    """The exchange ended before the complete response: the request may have arrived."""


class LeftToAnotherError(Exception):
    """This process stalled for longer than its lease, and another process now sends the reply."""


@contextmanager
def sending_only_while(may: _May) -> Iterator[None]:
    """Let requests leave only while `may` allows it, checked last, with the connection open.

    A late request raises NetworkError, caused by LeftToAnotherError, or by NeverLeftError if the database
    that could tell is away.
    """
    before = _MAY_SEND.set(may)
    try:
        yield
    finally:
        _MAY_SEND.reset(before)


async def _make_sure() -> None:
    may = _MAY_SEND.get()
    if may is None:
        return
    try:
        ours = await may()
    except AwayError as error:
        raise NetworkError("nobody knows whose this is to send") from NeverLeftError(str(error))
    if not ours:
        raise NetworkError("another process sends this") from LeftToAnotherError


class _Line:
    """One persistent connection and its protocol state."""

    def __init__(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        self._reader = reader
        self._writer = writer
        self._http = h11.Connection(h11.CLIENT)
        self._until = 0.0

    @property
    def open(self) -> bool:
        """Whether another request can use this connection: the server has not closed it, and it is recent."""
        hung_up = self._reader.at_eof() or self._writer.is_closing()
        return not hung_up and self._http.our_state is h11.IDLE and time.monotonic() < self._until

    def close(self) -> None:
        """Close the connection."""
        self._writer.close()

    async def closed(self) -> None:
        """Wait until the connection is closed: TLS shuts down first."""
        with contextlib.suppress(OSError, TimeoutError):
            await _within(_CLOSING_SECONDS, self._writer.wait_closed())

    async def exchange(
        self,
        head: h11.Request,
        body: bytes,
        write_seconds: float | None,
        read_seconds: float | None,
        left: Callable[[], None] | None = None,
    ) -> tuple[int, bytes]:
        """Send a request and return the status and body of its response; the seconds apply to each step.

        `left` is called when the operating system has all of the request, and will send it even if this
        process ends.
        """
        http = self._http
        # With a content-length, the end of the message has no bytes.
        self._writer.write(b"".join(http.send(part) or b"" for part in (head, h11.Data(body))))
        http.send(h11.EndOfMessage())
        async with asyncio.timeout(write_seconds) as limit:
            await self._writer.drain()
            if left is not None and not self._writer.transport.get_write_buffer_size():
                left()
            status, parts = 0, []
            while not isinstance(event := http.next_event(), h11.EndOfMessage):
                if event is h11.NEED_DATA:
                    limit.reschedule(_from_now(read_seconds))
                    http.receive_data(await self._reader.read(_READ_BYTES))
                elif isinstance(event, h11.Response):
                    status = event.status_code
                elif isinstance(event, h11.Data):
                    parts.append(bytes(event.data))
                elif not isinstance(event, h11.InformationalResponse):
                    raise BrokeOffError("the server hung up")
        if http.our_state is h11.DONE and http.their_state is h11.DONE:
            http.start_next_cycle()
            self._until = time.monotonic() + _KEEP_SECONDS
        return status, b"".join(parts)


class LeanRequest(HTTPXRequest):
    """A request class for python-telegram-bot with its own bounded connection pool."""

    def __init__(self, connections: int, *, read_timeout: float = 5.0, encrypted: bool = True) -> None:
        # A server on this machine needs no certificates, and loading them takes time.
        options: JsonObject = {} if encrypted else {"verify": False, "trust_env": False}
        try:
            super().__init__(
                connection_pool_size=connections, read_timeout=read_timeout, httpx_kwargs=options or None
            )
        except (RuntimeError, ValueError) as error:
            raise ProxyError(_PROXY_HELP) from error
        self.heard_at = time.monotonic()  # of the last response
        self._ssl = ssl.create_default_context() if encrypted else None
        self._free = asyncio.Semaphore(connections)
        self._kept: dict[str, list[_Line]] = {}
        self._behind_proxy = encrypted and bool(getproxies())

    async def shutdown(self) -> None:
        """Close every connection."""
        lines = [line for kept in self._kept.values() for line in kept]
        self._kept.clear()
        for line in lines:
            line.close()
        for line in lines:
            await line.closed()
        await super().shutdown()

    async def updates(
        self, address: str, offset: int | None, seconds: int, allowed: list[str]
    ) -> list[JsonObject]:
        """Request updates at `address` and return them as raw text, waiting up to `seconds` for one.

        They are stored as text, so building the library's objects would be wasted. Raises TelegramError.
        """
        asked = {"timeout": str(seconds), "allowed_updates": json.dumps(allowed)}
        if offset is not None:
            asked["offset"] = str(offset)
        answer = await self.retrieve(f"{address}?{urlencode(asked)}")
        found: list[JsonObject] = self.parse_json_payload(answer)["result"]
        return found

    async def do_request(
        self,
        url: str,
        method: str,
        request_data: RequestData | None = None,
        read_timeout: Any = BaseRequest.DEFAULT_NONE,
        write_timeout: Any = BaseRequest.DEFAULT_NONE,
        connect_timeout: Any = BaseRequest.DEFAULT_NONE,
        pool_timeout: Any = BaseRequest.DEFAULT_NONE,
    ) -> tuple[int, bytes]:
        """Send one request and return the status and body.

        Raises TimedOut or NetworkError, with NeverLeftError or BrokeOffError as the cause.
        """
        where = urlsplit(url)
        uploads = request_data is not None and request_data.contains_files
        if self._behind_proxy or uploads or where.scheme not in _PORTS:
            await _make_sure()
            answer = await super().do_request(
                url, method, request_data, read_timeout, write_timeout, connect_timeout, pool_timeout
            )
            self.heard_at = time.monotonic()
            return answer
        defaults = self._client.timeout
        body = b"" if request_data is None else json.dumps(request_data.parameters).encode()
        try:
            if self._free.locked():
                await _within(_or(pool_timeout, defaults.pool), self._free.acquire())
            else:
                await self._free.acquire()
        except TimeoutError as error:
            raise TimedOut from NeverLeftError(str(error))
        try:
            line = await self._line(where, _or(connect_timeout, defaults.connect))
            try:
                await _make_sure()
                answer = await line.exchange(
                    self._head(method, where, len(body)),
                    body,
                    _or(write_timeout, defaults.write),
                    _or(read_timeout, defaults.read),
                    _LEFT.get(),
                )
            except TimeoutError as error:
                raise TimedOut from BrokeOffError(str(error))
            except (OSError, h11.ProtocolError, BrokeOffError) as error:
                raise NetworkError(f"{type(error).__name__}: {error}") from BrokeOffError(str(error))
            finally:
                self._put_back(where, line)
            self.heard_at = time.monotonic()
            return answer
        finally:
            self._free.release()

    async def _line(self, where: SplitResult, seconds: float | None) -> _Line:
        """Return a pooled connection, or a new one. Raises TimedOut or NetworkError."""
        kept = self._kept.get(where.netloc, [])
        while kept:
            line = kept.pop()
            if line.open:
                return line
            line.close()
        secured = where.scheme == "https"
        opening = asyncio.open_connection(
            where.hostname,
            where.port or _PORTS[where.scheme],
            ssl=self._ssl if secured else None,
            server_hostname=where.hostname if secured else None,
            # An address that leads nowhere, such as IPv6 without a route, must not use up all the time.
            happy_eyeballs_delay=_NEXT_ADDRESS_SECONDS,
        )
        try:
            return _Line(*await _within(seconds, opening))
        except TimeoutError as error:
            raise TimedOut from NeverLeftError(str(error))
        except OSError as error:  # some TLS errors are OSErrors too
            raise NetworkError(f"{type(error).__name__}: {error}") from NeverLeftError(str(error))

    def _put_back(self, where: SplitResult, line: _Line) -> None:
        """Return a connection to the pool, unless its exchange did not end cleanly."""
        if line.open:
            self._kept.setdefault(where.netloc, []).append(line)
        else:
            line.close()

    def _head(self, method: str, where: SplitResult, length: int) -> h11.Request:
        headers = [
            ("Host", where.netloc),
            ("User-Agent", self.USER_AGENT),
            ("Content-Type", "application/json"),
            ("Content-Length", str(length)),
        ]
        target = f"{where.path}?{where.query}" if where.query else where.path
        return h11.Request(method=method, target=target or "/", headers=headers)


async def call(
    bot: Bot, method: str, fields: Mapping[str, object], left: Callable[[], None] | None = None
) -> Any:
    """Call a method of the Bot API and return its raw result.

    Skips the library's objects for request and response: if nothing reads them, they cost as much as the
    sending. `left` is called when the operating system has the whole request. Raises TelegramError.
    """
    given = [RequestParameter(name, value, None) for name, value in fields.items() if value is not None]
    before = _LEFT.set(left)
    try:
        return await bot.request.post(f"{bot.base_url}/{method}", RequestData(given))
    finally:
        _LEFT.reset(before)


def _from_now(seconds: float | None) -> float | None:
    return None if seconds is None else asyncio.get_running_loop().time() + seconds


async def _within(seconds: float | None, work: Awaitable[Thing]) -> Thing:
    async with asyncio.timeout(seconds):
        return await work


def _or(value: Any, default: float | None) -> float | None:
    if isinstance(value, DefaultValue):
        return default
    return value  # type: ignore[no-any-return]
