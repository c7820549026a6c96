"""Injected faults: failures of a network, a proxy or Telegram for one request."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

Predicate = Callable[[dict[str, Any]], bool]


@dataclass(frozen=True, slots=True)
class Fault:
    """One kind of failure. `processed` says whether the request was still executed.

    Kinds: `drop` closes the connection, `http` answers with the status `code` (502 as a proxy does, in HTML),
    `flood` answers 429 with `seconds` to wait, `slow` answers after `seconds`, `garbled` answers half a JSON
    object, `refuse` answers with the status `code` and the sentence `said`.
    """

    kind: Literal["drop", "http", "flood", "slow", "garbled", "refuse"]
    processed: bool = False
    code: int = 500
    seconds: float = 0.0
    said: str = ""

    @classmethod
    def drop_before(cls) -> Fault:
        """The connection breaks before the request was read: nothing happened."""
        return cls("drop")

    @classmethod
    def drop_after(cls) -> Fault:
        """The connection breaks before the response: the request was executed, but the bot cannot know."""
        return cls("drop", processed=True)

    @classmethod
    def http(cls, code: int, *, processed: bool = False) -> Fault:
        """An error of the server or of a proxy in front of it."""
        return cls("http", processed=processed, code=code)

    @classmethod
    def refuse(cls, code: int, said: str) -> Fault:
        """A refusal in Telegram's words."""
        return cls("refuse", code=code, said=said)

    @classmethod
    def flood(cls, seconds: int) -> Fault:
        """429 with retry_after."""
        return cls("flood", seconds=seconds)

    @classmethod
    def slow(cls, seconds: float, *, processed: bool = True) -> Fault:
        """The response is late; the request is executed immediately, or with False only then."""
        return cls("slow", processed=processed, seconds=seconds)

    @classmethod
    def garbled(cls, *, processed: bool = True) -> Fault:
        """An answer that is not JSON."""
        return cls("garbled", processed=processed)


@dataclass(slots=True)
class _Ordered:
    method: str
    fault: Fault
    times: int
    when: Predicate | None


class Faults:
    """The pending faults, in the order they were injected."""

    def __init__(self) -> None:
        self._ordered: list[_Ordered] = []

    def order(self, method: str, fault: Fault, times: int, when: Predicate | None) -> None:
        """Let the next `times` calls of `method` ("*" for any) that satisfy `when` fail."""
        self._ordered.append(_Ordered(method.lower(), fault, times, when))

    def next_for(self, method: str, values: dict[str, Any]) -> Fault | None:
        """The fault for this call, which uses it up."""
        if not self._ordered:
            return None
        for ordered in self._ordered:
            if ordered.method in {method, "*"} and (ordered.when is None or ordered.when(values)):
                ordered.times -= 1
                if ordered.times <= 0:
                    self._ordered.remove(ordered)
                return ordered.fault
        return None

    @property
    def left(self) -> int:
        """The number of pending faults."""
        return sum(ordered.times for ordered in self._ordered)

    def clear(self) -> None:
        """Remove all pending faults."""
        self._ordered.clear()
