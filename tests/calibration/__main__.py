"""Command line: python -m tests.calibration [--write]."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from tests.written import print_or_write

if TYPE_CHECKING:
    from tests.calibration.published import Point
    from tests.calibration.simulated import Outcomes

TABLE = Path(__file__).with_name("TABLE.md")


def table() -> str:
    """Return all figures as a page."""
    # Loads the libraries of the outside checks, which take seconds.
    from tests.calibration.published import POINTS, alone, brier, held_out  # noqa: PLC0415
    from tests.calibration.simulated import BARS, LOOKS, WORLDS, reliability, run  # noqa: PLC0415

    lines = [
        "# Calibration of clearing",
        "",
        "Written by `python -m tests.calibration --write` for `bot/trade/liquids/clearing/evidence.py`.",
        "",
        f"## Simulated bars: coverage of the 80 % interval of the limit ({BARS} bars for each figure)",
        "",
        f"| bars | {' | '.join(f'looks: {number}' for number in LOOKS)} |",
        f"|--|{'--|' * len(LOOKS)}",
    ]
    first: list[Outcomes] = []
    for world in WORLDS:
        found = [run(world, number) for number in LOOKS]
        first = first or found
        cells = " | ".join(f"{one.covered:.0%}, ×/÷ {2.718281828 ** (one.width / 2):.2f}" for one in found)
        lines.append(f"| {world.name} | {cells} |")
    lines += [
        "",
        "After the comma: half the mean width of the interval, as a factor of the oil. The first kind is",
        "what the rule assumes; the others break one assumption each.",
        "",
        "## Simulated bars: probability said for the next look, and share seen clear",
        "",
        "| said | mean said | seen clear | looks |",
        "|--|--|--|--|",
    ]
    for low, mean, was, number in reliability(first):
        lines.append(f"| {low:.0%} to {low + 0.2:.0%} | {mean:.0%} | {was:.0%} | {number} |")
    lines += [
        "",
        "## Published mixes, each held out and answered from the others of its oil",
        "",
        "| mix | published | models alone | held out | source | mark |",
        "|--|--|--|--|--|--|",
    ]
    for point in POINTS:
        seen = "clear" if point.clear else "not clear"
        said = f"{alone(point):.0%} | {held_out(point):.0%}"
        lines.append(f"| {_words(point)} | {seen} | {said} | {point.source} | {point.mark.value} |")
    right = sum((held_out(one) > 0.5) is one.clear for one in POINTS)
    lines += [
        "",
        f"On the right side of a half: {right} of {len(POINTS)}. Mean squared error: {brier(held_out):.3f}; "
        f"the models alone {brier(alone):.3f}; a coin 0.25.",
    ]
    return "\n".join(lines) + "\n"


def _words(point: Point) -> str:
    mixture = point.mixture
    names = (
        ("oil_ml", point.oil),
        ("glycol_ml", "glycol"),
        ("glycerol_ml", "glycerol"),
        ("water_ml", "water"),
        ("spirit_ml", f"spirit {mixture.spirit_percent:g} %"),
    )
    return " : ".join(f"{getattr(mixture, part):g} {name}" for part, name in names if getattr(mixture, part))


if __name__ == "__main__":
    print_or_write("tests.calibration", TABLE, table)
