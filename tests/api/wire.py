"""The HTTP layer: requests, responses, and the faults between them."""

from __future__ import annotations

import asyncio
import json
import re
import time
from collections.abc import Awaitable, Callable, Coroutine
from typing import Any, cast
from urllib.parse import unquote

from tornado.http1connection import HTTP1Connection
from tornado.httpserver import HTTPServer
from tornado.httputil import HTTPHeaders, HTTPInputError, HTTPServerRequest, ResponseStartLine
from tornado.netutil import bind_sockets

from tests.api import answering, chats, editing, menus, sending, webhooks
from tests.api.faults import Fault, Faults
from tests.api.params import Params, read_params
from tests.api.refusals import JsonDict, RefusalError, bad, too_many_requests
from tests.api.world import Call, World

METHODS: dict[str, Callable[[World, Params], Any]] = {
    **sending.METHODS,
    **editing.METHODS,
    **answering.METHODS,
    **menus.METHODS,
    **chats.METHODS,
    **webhooks.METHODS,
}
_REASONS = {
    200: "OK",
    400: "Bad Request",
    401: "Unauthorized",
    403: "Forbidden",
    404: "Not Found",
    409: "Conflict",
    413: "Request Entity Too Large",
    429: "Too Many Requests",
    500: "Internal Server Error",
    502: "Bad Gateway",
    504: "Gateway Timeout",
}
_JSON = "application/json"
Control = Callable[[str, JsonDict], Awaitable[Any]]


class Wire:
    """The listening side of a server."""

    def __init__(self, world: World, faults: Faults, control: Control) -> None:
        self._world = world
        self._faults = faults
        self._control = control
        self._http: HTTPServer | None = None
        self._tasks: set[asyncio.Task[None]] = set()
        self.port = 0

    async def start(self, port: int = 0) -> None:
        """Listen on loopback, on any free port if none is given."""
        sockets = bind_sockets(port, "127.0.0.1")
        self.port = sockets[0].getsockname()[1]
        # A body slightly above the upload limit must get through to be refused in Telegram's words.
        self._http = HTTPServer(self._on_request, max_buffer_size=200_000_000)
        self._http.add_sockets(sockets)

    async def stop(self) -> None:
        """Close all connections and cancel pending responses."""
        if self._http is not None:
            self._http.stop()
        for task in self._tasks:
            task.cancel()
        if self._tasks:
            await asyncio.wait(self._tasks)
        if self._http is not None:
            await self._http.close_all_connections()

    # -- one request --------------------------------------------------------------------------

    def _on_request(self, request: HTTPServerRequest) -> None:
        path = unquote(request.path)
        if path.startswith("/bot"):
            self._on_call(request, path)
        elif path.startswith("/file/bot"):
            self._on_download(request, path)
        elif path.startswith("/control/"):
            self._spawn(request, self._on_control(request))
        else:
            self._refuse(request, RefusalError(404, "Not Found"))

    def _on_call(self, request: HTTPServerRequest, path: str) -> None:
        token, _, method = path.removeprefix("/bot").partition("/")
        refusal = None if token == self._world.token else _token_refusal(token)
        if refusal is not None:
            self._refuse(request, refusal)
            return
        method = method.lower()
        try:
            params = read_params(request)
        except (ValueError, HTTPInputError) as error:
            self._world.violate(f"{method}: a body that cannot be read: {error}")
            self._refuse(request, bad("can't parse the request"))
            return
        fault = self._faults.next_for(method, params.values)
        if fault is None and method != "getupdates":
            self._send(request, *self._run(method, params))
            return
        self._spawn(request, self._run_slowly(request, method, params, fault))

    def _run(self, method: str, params: Params) -> tuple[int, bytes]:
        """Execute one method immediately; returns the status and the body."""
        world = self._world
        try:
            handler = METHODS.get(method)
            if handler is None:
                raise RefusalError(404, "Not Found: method not found", breach=True)
            body = b'{"ok":true,"result":' + json.dumps(handler(world, params)).encode() + b"}"
            status = 200
        except RefusalError as refusal:
            status, body = self._refused(method, refusal)
        except (KeyError, TypeError, ValueError, AttributeError) as error:
            # Parameters in a shape that no method expects.
            world.violate(f"{method}: {error!r} for {params.values}")
            status, body = 400, json.dumps(bad(f"can't parse parameters: {error!r}").body()).encode()
        self._done(method, params, status)
        return status, body

    def _refused(self, method: str, refusal: RefusalError) -> tuple[int, bytes]:
        if refusal.breach:
            self._world.violate(f"{method}: {refusal.description}")
        return refusal.code, json.dumps(refusal.body()).encode()

    def _done(self, method: str, params: Params, status: int) -> None:
        world = self._world
        world.calls.append(Call(method, params.values, status))
        if method != "getupdates":
            world.active_at = time.monotonic()
        world.wake()

    async def _run_slowly(
        self, request: HTTPServerRequest, method: str, params: Params, fault: Fault | None
    ) -> None:
        polling = method == "getupdates"
        self._world.in_flight += not polling
        try:
            if fault is not None and fault.kind == "slow" and not fault.processed:
                await asyncio.sleep(fault.seconds)
                fault = None
            if fault is not None and not fault.processed:
                await self._fail(request, fault)
                return
            status, body = await self._poll(params) if polling else self._run(method, params)
            if fault is None or await self._fail(request, fault):
                self._send(request, status, body)
        finally:
            self._world.in_flight -= not polling
            self._world.wake()

    async def _poll(self, params: Params) -> tuple[int, bytes]:
        try:
            webhooks.allow(self._world, params)
            updates = await self._world.updates.poll(
                params.integer("offset") or 0, params.integer("limit") or 100, params.seconds("timeout")
            )
            status, body = 200, b'{"ok":true,"result":' + updates + b"}"
        except RefusalError as refusal:
            status, body = self._refused("getupdates", refusal)
        self._done("getupdates", params, status)
        return status, body

    async def _fail(self, request: HTTPServerRequest, fault: Fault) -> bool:
        """Apply the fault; returns whether to send the real response."""
        if fault.kind == "slow":
            await asyncio.sleep(fault.seconds)
            return True
        if fault.kind == "drop":
            cast(HTTP1Connection, request.connection).close()
        elif fault.kind == "flood":
            self._refuse(request, too_many_requests(int(fault.seconds)))
        elif fault.kind == "refuse":
            self._refuse(request, RefusalError(fault.code, fault.said))
        elif fault.kind == "garbled":
            self._send(request, 200, b'{"ok": tru')
        elif fault.code == 502:
            page = b"<html><head><title>502 Bad Gateway</title></head><body></body></html>"
            self._send(request, 502, page, "text/html")
        else:
            self._refuse(request, RefusalError(fault.code, _REASONS.get(fault.code, "Error")))
        return False

    # -- files and control --------------------------------------------------------------------

    def _on_download(self, request: HTTPServerRequest, path: str) -> None:
        token, _, path = path.removeprefix("/file/bot").partition("/")
        fault = self._faults.next_for("file", {"file_path": path})
        if fault is not None:
            self._spawn(request, self._download_slowly(request, path, fault))
            return
        found = next((one for one in self._world.files.values() if one.path == path), None)
        if found is None or token != self._world.token:
            self._refuse(request, RefusalError(404, "Not Found"))
            return
        self._send(request, 200, found.content, "application/octet-stream")

    async def _download_slowly(self, request: HTTPServerRequest, path: str, fault: Fault) -> None:
        if await self._fail(request, fault):
            found = next(one for one in self._world.files.values() if one.path == path)
            self._send(request, 200, found.content, "application/octet-stream")

    async def _on_control(self, request: HTTPServerRequest) -> None:
        what = request.path.removeprefix("/control/")
        try:
            result = await self._control(what, json.loads(request.body or b"{}"))
        except (AssertionError, LookupError, TypeError, ValueError) as error:
            body = {"ok": False, "error": f"{type(error).__name__}: {error}"}
            self._send(request, 400, json.dumps(body).encode())
            return
        self._send(request, 200, json.dumps({"ok": True, "result": result}).encode())

    # -- answers ------------------------------------------------------------------------------

    def _spawn(self, request: HTTPServerRequest, work: Coroutine[Any, Any, None]) -> None:
        task = asyncio.get_running_loop().create_task(work)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)

        def hang_up() -> None:
            task.cancel()  # a killed bot must not hold the long poll

        cast(HTTP1Connection, request.connection).set_close_callback(hang_up)

    def _refuse(self, request: HTTPServerRequest, refusal: RefusalError) -> None:
        self._send(request, refusal.code, json.dumps(refusal.body()).encode())

    def _send(self, request: HTTPServerRequest, status: int, body: bytes, kind: str = _JSON) -> None:
        connection = cast(HTTP1Connection, request.connection)
        if connection.stream is None or connection.stream.closed():
            return
        headers = HTTPHeaders({"Content-Type": kind, "Content-Length": str(len(body))})
        connection.write_headers(
            ResponseStartLine("HTTP/1.1", status, _REASONS.get(status, "Error")), headers, body
        )
        connection.finish()


def _token_refusal(token: str) -> RefusalError:
    if re.fullmatch(r"\d+:[\w-]+", token):
        return RefusalError(401, "Unauthorized")
    return RefusalError(404, "Not Found")
