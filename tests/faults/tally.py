"""Count the results of a fault: the database on one side, people's phones on the other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, fields

REPEAT = "(This may be a repeat.)"


@dataclass(frozen=True, slots=True)
class Tally:
    """The counts of one fault on one database; all but the first columns must be 0.

    `tried` is how often the fault happened. An entry is `lost` if it was sent and is not on disk, whatever
    the phones show; `doubled` counts rows beyond one per entry; `unanswered` entries were never acknowledged;
    `refused` ones got an error message. `unlabelled` counts repeated answers and reminders without the note
    that they may be a repeat.
    """

    fault: str
    database: str
    tried: int
    entries: int
    lost: int
    doubled: int
    unanswered: int
    refused: int
    reminders: int
    reminders_lost: int
    unlabelled: int

    @property
    def clean(self) -> bool:
        """Whether nothing was lost, doubled, left open or repeated without a note."""
        return not any((self.lost, self.doubled, self.unanswered, self.refused, self.reminders_lost)) and (
            not self.unlabelled
        )

    def cells(self) -> list[str]:
        """The row of the table."""
        return [str(getattr(self, one.name)) for one in fields(self)]


def repeated_unlabelled(shown: Iterable[tuple[str, str]]) -> int:
    """Count the repeats without the note: (subject, full text) pairs in order."""
    seen: set[str] = set()
    count = 0
    for about, text in shown:
        count += about in seen and REPEAT not in text
        seen.add(about)
    return count


_HEAD = (
    "fault",
    "database",
    "tried",
    "entries sent",
    "lost",
    "doubled",
    "unanswered",
    "refused",
    "reminders",
    "reminders lost",
    "repeated unlabelled",
)


def table(tallies: Sequence[Tally]) -> list[str]:
    """The lines of the table, in Markdown."""
    lines = ["| " + " | ".join(_HEAD) + " |", "| --- | --- |" + " ---: |" * (len(_HEAD) - 2)]
    return lines + ["| " + " | ".join(one.cells()) + " |" for one in tallies]
