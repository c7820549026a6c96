"""python -m tests.work.design [--write]: ten designs in the demo's bar, and what `clear` and `dose` say."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

from bot.chat.reply.message import Grid, Reply
from tests.demo_bar import demo_bar
from tests.house import Person, first_lines, text
from tests.written import print_or_write

_TABLE = Path(__file__).with_name("TABLE.md")
# What is asked, and the drink of the dose.
LINES = (
    ("design orange mist", "60 ml, 3 sprays"),
    ("design lemon mist with 10 ml oil", "60 ml, 3 sprays"),
    ("design grapefruit mist with 12 % oil 8 x 50 ml", "60 ml, 3 sprays"),
    ("design orange mist with 75.5 % spirit", "60 ml, 3 sprays"),
    ("design lime mist at most 1 g/l glycol in 60 ml with 3 sprays", "60 ml, 3 sprays"),
    ("design orange mist at most 300 mg/l glycol in 90 ml with 2 sprays 400 ml", "90 ml, 2 sprays"),
    ("design grapefruit mist cheapest 8 x 50 ml", "60 ml, 3 sprays"),
    ("design lemon mist at 0 C", "60 ml, 3 sprays"),
    ("design orange mist with 5 ml oil 200 ml in 120 ml with 1 spray", "120 ml, 1 spray"),
    ("design lime mist with 20 % oil", ""),
)
_HEAD = "| asked | proposed | and others | clear says | dose says |\n| -- | -- | -- | -- | -- |"


def rows() -> Iterator[str]:
    """Yield a row of the table for each line: the design, and the answers once it is in the book."""
    with tempfile.TemporaryDirectory() as folder, demo_bar(Path(folder)) as robin:
        for line, drink in LINES:
            (said,) = robin.says(line)
            yield _row(robin, line, drink, said)


def _row(robin: Person, line: str, drink: str, said: Reply) -> str:
    grid = next((block for block in said.blocks if isinstance(block, Grid)), None)
    if grid is None:  # nothing meets it
        return f"| {line} | {' '.join(text([said]).split())} | | | |"
    others = ", ".join(button.label.lower() for row in said.buttons[1:] for button in row)
    amounts = ", ".join(" ".join(cells) for cells in grid.rows)
    (written,) = robin.taps(said.buttons[0][0].label)
    name = written.first_line.removesuffix(" is in the book.")
    at = "at 0 C" if "at 0 C" in line else "at 15 C"
    answers = (
        first_lines(robin.says(asked))[0] for asked in (f"clear {name} {at}", f"dose {name} in {drink}")
    )
    return f"| {line} | {said.first_line.partition(': ')[2]}: {amounts} | {others} | {' | '.join(answers)} |"


def table() -> str:
    """Return the table as a page."""
    return "\n".join(("# Ten designs in the bar of the demo", "", _HEAD, *rows())) + "\n"


if __name__ == "__main__":
    print_or_write("tests.work.design", _TABLE, table)
