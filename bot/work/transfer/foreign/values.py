"""Parse numbers, money and days in the cells of tables in other formats.

All cells of a column together show its format: a comma can be the decimal mark or group thousands, 11/12 can
be in November or in December. Ambiguity is reported, not guessed.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from fractions import Fraction
from typing import Literal

Decimal = Literal[".", ","]
Order = Literal["ymd", "dmy", "mdy"]

_SIGNS = re.compile(r"[€£$¥]|\b(?:[A-Z]{3}|usd|eur|gbp|mxn|US\$|MX\$)\b|\s| | ")
_NUMBER = re.compile(r"[+-]?\d[\d.,']*|[+-]?[.,]\d+")
_AMOUNT = re.compile(
    r"^\s*(?P<number>[+-]?(?:\d[\d.,']*|[.,]\d+)(?:\s+\d/\d+|/\d+)?)\s*(?P<unit>[^\W\d_].*)?$"
)
_DAY = re.compile(r"^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})$")
_NAMED_DAY = re.compile(
    r"^(?:[^\W\d_]{2,12}\.?,?\s+)?(?:(\d{1,2})\.?\s+(?:de\s+)?([^\W\d_]{3,12})|([^\W\d_]{3,12})\s+(\d{1,2}))\.?,?(?:\s+(?:de\s+)?(\d{2,4}))?$"
)
_CENTURY = 2000


def fold(text: str) -> str:
    """Return a text in lower case without accents, marks and double spaces."""
    low = unicodedata.normalize("NFKD", text.casefold())
    plain = "".join(sign for sign in low if not unicodedata.combining(sign))
    return " ".join(re.sub(r"[_\W]+", " ", plain).split())


def is_number(text: str) -> bool:
    """Whether a cell is a number or an amount of money, whatever its marks."""
    return _NUMBER.fullmatch(_SIGNS.sub("", text)) is not None


def decimal_mark(cells: Iterable[str]) -> Decimal | None:
    """Return the decimal mark of a column's cells, or None if it is ambiguous.

    It is ambiguous if the only evidence is cells such as 1,234 or 1.234.
    """
    votes: set[Decimal] = set()
    doubtful = False
    for cell in cells:
        match = _NUMBER.search(_SIGNS.sub("", cell))
        if match is None:
            continue
        found = match[0].replace("'", "")
        point, comma = found.rfind("."), found.rfind(",")
        if point < 0 and comma < 0:
            continue
        mark: Decimal = "." if point > comma else ","
        other = "," if mark == "." else "."
        if point >= 0 and comma >= 0:
            votes.add(mark)
        elif found.count(mark) > 1:
            votes.add(other)  # type: ignore[arg-type]
        elif len(found) - found.rfind(mark) - 1 == 3 and not found.lstrip("+-").startswith(("0", mark)):
            doubtful = True
        else:
            votes.add(mark)
    if len(votes) == 1:
        return votes.pop()
    return None if votes or doubtful else "."


def read_number(text: str, mark: Decimal) -> Fraction:
    """Return the number in a cell without its currency sign and group marks. Raises ValueError."""
    plain = _SIGNS.sub("", text).replace("'", "")
    groups = "." if mark == "," else ","
    return Fraction(plain.replace(groups, "").replace(mark, "."))


def read_amount(text: str, mark: Decimal) -> tuple[Fraction, str]:
    """Return the number of a cell such as '12', '1 1/2 kg' or '3 doz' and the words after it."""
    match = _AMOUNT.match(text)
    if match is None:
        raise ValueError(text)
    words = match["number"].split()
    whole = sum((_part(word, mark) for word in words), Fraction(0))
    return whole, (match["unit"] or "").strip(" .")


def _part(word: str, mark: Decimal) -> Fraction:
    return Fraction(word) if "/" in word else read_number(word, mark)


@dataclass(frozen=True, slots=True)
class Months:
    """Month numbers by their names and the first three letters, folded."""

    names: Mapping[str, int]

    def number(self, word: str) -> int:
        """Return 1 to 12. Raises ValueError."""
        plain = fold(word)
        for name, number in self.names.items():
            if plain == name or (len(plain) >= 3 and name.startswith(plain)):
                return number
        raise ValueError(word)


def day_order(cells: Iterable[str]) -> Order | None:
    """Return the order of year, month and day in a column, or None if it is ambiguous."""
    votes: set[Order] = set()
    doubtful = False
    for cell in cells:
        match = _DAY.match(_without_time(cell))
        if match is None:
            continue
        first, second = int(match[1]), int(match[2])
        if len(match[1]) == 4:
            votes.add("ymd")
        elif first > 12:
            votes.add("dmy")
        elif second > 12:
            votes.add("mdy")
        else:
            doubtful = True
    if len(votes) == 1:
        return votes.pop()
    return None if votes or doubtful else "ymd"


def read_day(text: str, order: Order, months: Months, today: date) -> date:
    """Return the day in a cell; a day without a year is the last such day. Raises ValueError."""
    plain = _without_time(text)
    match = _DAY.match(plain)
    if match is not None:
        parts = [int(part) for part in match.groups()]
        places = {"ymd": (0, 1, 2), "dmy": (2, 1, 0), "mdy": (2, 0, 1)}[order]
        year, month, day = (parts[place] for place in places)
        return date(year + _CENTURY if year < 100 else year, month, day)
    named = _NAMED_DAY.match(plain)
    if named is None:
        raise ValueError(text)
    day, month = int(named[1] or named[4]), months.number(named[2] or named[3])
    if named[5]:
        year = int(named[5])
        return date(year + _CENTURY if year < 100 else year, month, day)
    found = date(today.year, month, day)
    return found if found <= today else found.replace(year=today.year - 1)


def is_day(text: str) -> bool:
    """Whether a cell looks like a day."""
    plain = _without_time(text)
    return _DAY.match(plain) is not None or (
        _NAMED_DAY.match(plain) is not None and any(map(str.isdigit, plain))
    )


def _without_time(text: str) -> str:
    plain = text.strip()
    try:
        return datetime.fromisoformat(plain).date().isoformat()
    except ValueError:
        return re.sub(r"\s+\d{1,2}:\d{2}.*$", "", plain)
