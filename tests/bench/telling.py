"""Report the figures as tables, sentences and a picture for README.md."""

from __future__ import annotations

import os
import platform
from dataclasses import dataclass, field
from pathlib import Path

from tests.bench.imports import ROWS
from tests.bench.measure import Figures, Plan
from tests.bench.parts import machine
from tests.bench.soak import Soak
from tests.bench.start import Start, tell_starts
from tests.bench.ticks import FEW, MANY, Ticks

_ROOT = Path(__file__).parents[2]
_REPORT = Path(__file__).with_name("README.md")
PICTURE = _ROOT / "deploy" / "pictures" / "bench.png"
_ONE, _TWO = "waste, webhook, one process", "waste, webhook, two processes"
_POSTGRES = "waste, PostgreSQL"
_HOURLY = 120  # messages of one bar in its busiest hour, a generous estimate


@dataclass
class Found:
    """The measurements; empty or None if not measured."""

    contenders: dict[str, Figures] = field(default_factory=dict)
    ticks: dict[str, tuple[Ticks, Ticks]] = field(default_factory=dict)
    week: list[tuple[int, float, float]] = field(default_factory=list)
    imports: tuple[float, float] | None = None
    soak: Soak | None = None


@dataclass(frozen=True)
class Aim:
    """One target: the wanted figure, the actual one, and whether it is met."""

    what: str
    wanted: str
    got: str
    met: bool


def aims(found: Found) -> list[Aim]:
    """Compare the figures with their targets."""
    aims = []
    contenders = found.contenders
    scale, waste = contenders.get("scale, SQLite"), contenders.get("waste, SQLite")
    if scale:
        ratio = scale.latency_ratio
        aims.append(
            Aim("`scale` on SQLite, p50 against the echo", "1.3 at most", f"{ratio:.2f}", ratio <= 1.3)
        )
        ratio = scale.replies_ratio
        aims.append(Aim("its throughput against the echo", "0.7 at least", f"{ratio:.2f}", ratio >= 0.7))
    if waste:
        ratio = waste.latency_ratio
        aims.append(
            Aim("`waste` on SQLite, p50 against the echo", "1.6 at most", f"{ratio:.2f}", ratio <= 1.6)
        )
    if _ONE in contenders and _TWO in contenders:
        ratio = contenders[_TWO].replies_per_second / contenders[_ONE].replies_per_second
        aims.append(
            Aim("two processes on PostgreSQL against one", "1.6 at least", f"{ratio:.2f}", ratio >= 1.6)
        )
    for name, (few, many) in found.ticks.items():
        ratio = max(many.nothing_ms / few.nothing_ms, many.due_ms / few.due_ms)
        what = f"tick among {MANY:,} reminders against {FEW:,}, {name}"
        aims.append(Aim(what, "1.5 at most", f"{ratio:.2f}", ratio <= 1.5))
    if found.week:
        ratio = found.week[1][1] / found.week[0][1]
        aims.append(Aim("a week among a million rows against alone", "2 at most", f"{ratio:.2f}", ratio <= 2))
    if found.imports:
        ratio = found.imports[1] / found.imports[0]
        aims.append(Aim("others beside an import against alone", "4 at most", f"{ratio:.2f}", ratio <= 4))
    if found.soak:
        last = found.soak.readings[-1][1]
        aims.append(Aim("resident after the soak", "150 MB at most", f"{last:.0f} MB", last <= 150))
    if scale and scale.cold_start_s is not None:
        seconds = scale.cold_start_s
        aims.append(Aim("cold start", "2 s at most", f"{seconds:.2f} s", seconds <= 2))
    return aims


def tell(found: Found, plan: Plan, capacity: float) -> list[str]:
    """Report all measurements in Markdown."""
    lines = [
        f"On {machine()}, Python {platform.python_version()}, with driver, Bot API server, database and bot "
        "sharing them.",
        f"The server alone answers {capacity:.0f} requests a second on one connection.",
        f"{plan.sequential} messages one after another in one chat, then {plan.each} in each of "
        f"{plan.chats} chats at once; times in ms, CPU in ms for one reply, memory in MiB; in brackets the "
        "ratio to an echo that was measured in turn with it. Each chat has said something before; `first` is "
        "what that took, its share of all chats at once.",
        "",
        *_contenders(found.contenders),
    ]
    lines += ["", *_ticks(found), *_week(found), *_imports(found), *_soak(found)]
    lines += ["", "| aim | wanted | got | |", "| --- | --- | ---: | --- |"]
    lines += [
        f"| {one.what} | {one.wanted} | {one.got} | {'met' if one.met else 'missed'} |" for one in aims(found)
    ]
    return [*lines, "", *_how_far(found)]


_COLUMNS = (
    ("p50", "latency_p50_ms"),
    ("p95", "latency_p95_ms"),
    ("p50 together", "together_p50_ms"),
    ("p95 together", "together_p95_ms"),
    ("replies/s", "replies_per_second"),
    ("first", "first_ms"),
    ("CPU bot", "cpu_ms"),
    ("CPU server", "server_cpu_ms"),
    ("CPU database", "database_cpu_ms"),
    ("start, s", "cold_start_s"),
    ("memory", "memory_started_mib"),
    ("memory after", "memory_after_mib"),
)
_RATIOS = {"latency_p50_ms": "latency_ratio", "replies_per_second": "replies_ratio", "cpu_ms": "cpu_ratio"}


def _contenders(contenders: dict[str, Figures]) -> list[str]:
    lines = [
        "| | " + " | ".join(head for head, _name in _COLUMNS) + " |",
        "| --- |" + " ---: |" * len(_COLUMNS),
    ]
    for name, figures in contenders.items():
        cells = []
        for _head, column in _COLUMNS:
            value = getattr(figures, column)
            cell = "" if value is None else f"{value:.0f}" if value >= 100 else f"{value:.2f}"
            if column in _RATIOS and name != "echo":
                cell += f" ({getattr(figures, _RATIOS[column]):.2f})"
            cells.append(cell)
        lines.append(f"| {name} | " + " | ".join(cells) + " |")
    return lines


def _ticks(found: Found) -> list[str]:
    lines = []
    for name, (few, many) in found.ticks.items():
        lines.append(
            f"One tick on {name}: nothing due {few.nothing_ms:.2f} ms among {FEW:,} reminders and "
            f"{many.nothing_ms:.2f} ms among {MANY:,}; 50 due, sent and settled, {few.due_ms:.0f} ms and "
            f"{many.due_ms:.0f} ms."
        )
    return lines


def _week(found: Found) -> list[str]:
    if not found.week:
        return []
    (own, alone, _p95), (rows, among, most) = found.week
    return [
        f"The week's answer of a bar with {own:,} rows: p50 {alone:.2f} ms alone, {among:.2f} ms (p95 "
        f"{most:.2f}) among {rows:,}."
    ]


def _imports(found: Found) -> list[str]:
    if not found.imports:
        return []
    alone, beside = found.imports
    return [
        f"99 of 100 answers to four other bars come within {alone:.0f} ms, and within {beside:.0f} ms while "
        f"one imports {ROWS:,} rows."
    ]


def _soak(found: Found) -> list[str]:
    if found.soak is None:
        return []
    soak = found.soak
    readings = ", ".join(
        f"{soak.at(share):.0f} {word}"
        for share, word in ((0, "at the start"), (0.25, "after a quarter"), (0.5, "half"), (1, "at the end"))
    )
    return [
        f"Soak: {soak.readings[-1][0]:,} messages of all kinds in {soak.seconds:.0f} s; "
        f"MiB resident: {readings}. These bars have the week's picture off (`bar week picture off`): "
        "the first picture drawn loads the drawing library, which then stays."
    ]


def _how_far(found: Found) -> list[str]:
    """Report the capacity of one PostgreSQL by these figures, and the next limit."""
    one = found.contenders.get(_ONE) or found.contenders.get(_POSTGRES)
    if one is None or not one.database_cpu_ms:
        return []
    cores = 2
    two = found.contenders.get(_TWO)
    bound = ""
    if two is not None and two.database_cpu_ms:
        # Driver, server and database share the cores with the processes.
        most = (os.cpu_count() or 1) * 1000 / (two.cpu_ms + two.server_cpu_ms + two.database_cpu_ms)
        bound = (
            f" With all parts on one machine its cores allow {most:.0f} replies a second, "
            f"{most / one.replies_per_second:.2f} times those of one process, however the work is shared."
        )
    writes = cores * 1000 / one.database_cpu_ms
    processes = writes / (1000 / one.cpu_ms)
    bars = int(writes * 3600 / _HOURLY / 1000) * 1000
    return [
        f"How far one PostgreSQL goes: a logged message costs it {one.database_cpu_ms:.2f} ms and a bot "
        f"process {one.cpu_ms:.2f} ms of CPU. With {cores} cores to itself it takes about {writes:.0f} "
        f"logged messages a second, which keeps {processes:.0f} bot processes busy on cores of their own: "
        f"some {bars:,} bars in their busiest hour at {_HOURLY} messages each. A million rows do not slow "
        "a bar's week down, since every key begins with the bar. The next step is a PostgreSQL with more "
        "cores; then, since nothing reaches from one bar into another but the directory tables, bars "
        "spread over a PostgreSQL-compatible engine that shards by the bar's id." + bound
    ]


def write(lines: list[str]) -> None:
    """Write the report to README.md, with the picture."""
    picture = f"![Replies a second and memory over the soak](../../{PICTURE.relative_to(_ROOT).as_posix()})"
    _write_between("bench", [*lines, "", picture])


def write_starts(starts: list[Start]) -> None:
    """Write the report of the starts to README.md."""
    _write_between(
        "starts", [f"On {machine()}, Python {platform.python_version()}:", "", *tell_starts(starts)]
    )


def _write_between(block: str, lines: list[str]) -> None:
    begin, end = f"<!-- {block}: begin -->", f"<!-- {block}: end -->"
    before, _begin, rest = _REPORT.read_text("utf-8").partition(begin)
    after = rest.partition(end)[2]
    shown = "\n".join(lines)
    _REPORT.write_text(f"{before}{begin}\n\n{shown}\n\n{end}{after}", "utf-8")


def draw(found: Found) -> None:
    """Draw replies per second of each contender, and the memory over the soak."""
    from matplotlib.figure import Figure  # noqa: PLC0415 - only where a picture is wanted

    figure = Figure(figsize=(9, 3.4), dpi=80, layout="constrained")
    left, right = figure.subplots(1, 2, width_ratios=(3, 2))
    names = list(found.contenders)[::-1]
    bars = left.barh(names, [found.contenders[name].replies_per_second for name in names], color="#8c8c8c")
    left.bar_label(bars, fmt="%.0f", padding=3)
    left.set_xlabel("replies a second, 200 chats at once")
    left.spines[["top", "right"]].set_visible(False)
    left.margins(x=0.12)
    if found.soak is not None:
        messages, memory = zip(*found.soak.readings, strict=True)
        right.plot(messages, memory, color="#333333", marker="o", markersize=3)
        right.axhline(150, color="#aa3333", linewidth=0.8, linestyle="--")
        right.set_ylim(0, 1.1 * max(150, *memory))
    right.set_xlabel("messages of the soak")
    right.set_ylabel("MiB resident")
    right.spines[["top", "right"]].set_visible(False)
    PICTURE.parent.mkdir(exist_ok=True)
    figure.savefig(PICTURE, metadata={"Software": None})
