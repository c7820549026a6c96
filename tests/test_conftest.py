"""Tests of the guard against outside connections."""

from __future__ import annotations

import asyncio
import socket

import pytest

from tests.conftest import OutsideConnectionError

_OUTSIDE = "192.0.2.1"  # a documentation address, RFC 5737: nobody is there


def test_a_connection_to_the_outside_is_refused_and_remembered(outside_connections: list[str]) -> None:
    with socket.socket() as plain, pytest.raises(OutsideConnectionError):
        plain.connect((_OUTSIDE, 80))
    assert outside_connections == [f"connect ('{_OUTSIDE}', 80)"]
    outside_connections.clear()


async def test_asyncio_is_refused_too(outside_connections: list[str]) -> None:
    with pytest.raises(OutsideConnectionError):
        await asyncio.open_connection(_OUTSIDE, 80)
    with pytest.raises(OutsideConnectionError):
        await asyncio.open_connection("example.org", 80)
    assert len(outside_connections) == 2
    outside_connections.clear()


def test_datagrams_are_refused_too(outside_connections: list[str]) -> None:
    with (
        socket.socket(type=socket.SOCK_DGRAM) as plain,
        pytest.raises(OutsideConnectionError),
    ):
        plain.sendto(b"x", (_OUTSIDE, 53))
    outside_connections.clear()


def test_loopback_and_unix_sockets_stay_open() -> None:
    with socket.create_server(("127.0.0.1", 0)) as server, socket.create_connection(server.getsockname()):
        pass
    first, second = socket.socketpair()
    first.close()
    second.close()
