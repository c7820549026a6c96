"""Metrics of the running bot: numbers only, nothing about any person or bar.

The format is Prometheus' text exposition. The library is loaded only if something listens.
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterable

    from prometheus_client.metrics_core import Metric

_OF_A_DAY = ("updates", "answers", "reminders sent", "errors")
_SECONDS = (0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0, 30.0)


class Figures:
    """Counters of a day; those for the metrics page cost nothing until `watched` is called."""

    def __init__(self) -> None:
        self._registry: Any = None
        self._updates: Any = None
        self._seconds: Any = None
        self._errors: Any = None
        self._reminders: Any = None
        self._gauges: dict[str, tuple[str, float]] = {}
        self._today: Counter[str] = Counter()

    def day(self) -> str:
        """Return what was done since the last call, in words for the log."""
        done, self._today = self._today, Counter()
        return ", ".join(f"{done[what]} {what}" for what in _OF_A_DAY)

    def watched(self) -> None:
        """Start counting."""
        from prometheus_client import (  # noqa: PLC0415 - a tenth of a second that few starts need
            CollectorRegistry,
            Histogram,
            ProcessCollector,
        )
        from prometheus_client import Counter as Counting  # noqa: PLC0415 - the same

        registry = CollectorRegistry()
        ProcessCollector(registry=registry)
        self._updates = Counting(
            "peel_ledger_updates", "Updates taken in, by kind.", ["kind"], registry=registry
        )
        self._seconds = Histogram(
            "peel_ledger_answer_seconds",
            "From taking an update in until its answer was sent.",
            buckets=_SECONDS,
            registry=registry,
        )
        self._errors = Counting(
            "peel_ledger_errors", "What went wrong, by place.", ["place"], registry=registry
        )
        self._reminders = Counting(
            "peel_ledger_reminders", "Reminders tried, by outcome.", ["outcome"], registry=registry
        )
        registry.register(self)
        self._registry = registry

    def collect(self) -> Iterable[Metric]:
        """Yield the figures last read from the database; called by the registry."""
        from prometheus_client.metrics_core import GaugeMetricFamily  # noqa: PLC0415 - see watched

        for name, (meaning, value) in self._gauges.items():
            yield GaugeMetricFamily(f"peel_ledger_{name}", meaning, value=value)

    def text(self, gauges: dict[str, tuple[str, float]]) -> tuple[bytes, str]:
        """Return the page and its content type; `gauges` maps a name to description and value."""
        from prometheus_client.exposition import CONTENT_TYPE_LATEST, generate_latest  # noqa: PLC0415

        self._gauges = gauges
        return generate_latest(self._registry), CONTENT_TYPE_LATEST

    def update_came(self, kind: str) -> None:
        """Count an update of this kind."""
        self._today["updates"] += 1
        if self._updates is not None:
            self._updates.labels(kind).inc()

    def answered(self, seconds: float) -> None:
        """Record the duration of an answer."""
        self._today["answers"] += 1
        if self._seconds is not None:
            self._seconds.observe(seconds)

    def went_wrong(self, place: str) -> None:
        """Count an error at this place."""
        self._today["errors"] += 1
        if self._errors is not None:
            self._errors.labels(place).inc()

    def reminded(self, outcome: str) -> None:
        """Count a reminder by its outcome."""
        self._today["reminders sent"] += outcome == "sent"
        if self._reminders is not None:
            self._reminders.labels(outcome).inc()
