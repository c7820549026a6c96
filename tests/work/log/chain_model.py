"""A simple model of a bar's log under undo, put back, edits and reasons."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from fractions import Fraction
from typing import Any

PEELED = "peeled and not used"
OWNER, MEMBER = "Ana", "Ben"
POMELO, GRAPEFRUIT = "pomelo", "grapefruit"  # two that may be merged
_DAY = timedelta(hours=24)
_VALUES = {"par", "strength", "setting", "formula", "lot", "move", "name", "new", "merge"}


@dataclass
class Link:
    """One chain: its content, its author and time, and the person that undid it."""

    kind: str
    by: str
    at: datetime
    key: str  # of the message
    data: dict[str, Any]
    numbers: list[int] = field(default_factory=list)  # of its entries
    undos: set[int] = field(default_factory=set)  # those of them that are undos
    stands: bool = True
    undone_by: str = ""
    undone_at: datetime | None = None
    uses: list[tuple[Link, Fraction]] = field(default_factory=list)  # of peeled fruit
    left: Fraction = Fraction(0)  # of the fruit that this one peeled

    @property
    def sets(self) -> dict[tuple[Any, ...], Any]:
        """The values that it changed. Only the last change of a value can be undone."""
        if self.kind not in _VALUES:
            return {}
        also: dict[tuple[Any, ...], Any] = self.data.get("also", {})
        return {(self.kind, self.data.get("of")): self.data["after"], **also}

    @property
    def named(self) -> list[tuple[dict[str, Any], str]]:
        """Each place where it names a thing that can be merged."""
        if self.kind == "waste":
            return [(line, "fruit") for line in self.data["lines"]]
        return [(self.data, "item")] if "item" in self.data else []


class Model:
    """All chains in the order in which they began."""

    def __init__(self) -> None:
        self.links: list[Link] = []
        self.values: dict[tuple[Any, ...], Any] = {}

    def standing(self, *kinds: str) -> Iterator[Link]:
        """Yield the chains that stand, of some kinds."""
        return (one for one in self.links if one.stands and one.kind in kinds)

    # -- logging -------------------------------------------------------------------------

    def log(self, link: Link) -> None:
        """Begin a chain."""
        self.links.append(link)
        self._apply(link, new=True)

    def _apply(self, link: Link, new: bool = False) -> None:
        data = link.data
        if new:
            data["before"] = {subject: self.values.get(subject) for subject in link.sets}
        self.values |= link.sets
        if link.kind == "merge":
            self._merge(link)
        elif link.kind == "peeled":
            link.left = data["count"]
        elif link.kind == "juiced":
            link.uses = self._settle(data["count"])
        elif link.kind == "waste":
            for line in data["lines"]:
                self._bin(line)
        elif link.kind == "into batch" and new:
            link.uses = self._settle(data["count"])
        elif link.kind == "bought" and new:
            others = [one for one in self.standing("price", "bought") if one is not link]
            data["sets"] = data["price"] and _price(others, data["item"]) != data["price"]
        elif link.kind == "batch" and new:
            self.values["move", data["number"]] = ("ready", None, None, None)

    def _merge(self, link: Link) -> None:
        places = [place for one in self.links for place in one.named]
        link.data["moved"] = [(found, name) for found, name in places if found[name] == POMELO]
        for found, name in link.data["moved"]:
            found[name] = GRAPEFRUIT

    def _bin(self, line: dict[str, Any]) -> None:
        peeled = line["reason"] == PEELED and line["fruit"] == "lime"
        line["uses"] = self._settle(line["count"]) if peeled else []

    def _settle(self, count: Fraction) -> list[tuple[Link, Fraction]]:
        uses = []
        for lot in self.standing("peeled"):
            taken = min(count, lot.left)
            if taken > 0:
                lot.left -= taken
                count -= taken
                uses.append((lot, taken))
        return uses

    @staticmethod
    def _give_back(uses: list[tuple[Link, Fraction]]) -> None:
        for lot, taken in uses:
            lot.left += taken
        uses.clear()

    def lying(self) -> Fraction:
        """Return the peeled fruit that lies there."""
        return sum((lot.left for lot in self.standing("peeled")), Fraction(0))

    # -- undo and put back ---------------------------------------------------------------

    def refuses_undo(self, link: Link, who: str, now: datetime) -> str:
        """Return the error that an undo raises, '' for none."""
        if not link.stands:
            return "AlreadyUndoneError"
        if who not in {link.by, OWNER}:
            return "NotYoursError"
        if now - link.at > _DAY:
            return "TooLateError"
        refused = self._refuses_change(link, "after")
        if link.kind == "peeled" and link.left != link.data["count"]:
            refused = "UsedSinceError"
        return refused

    def _refuses_change(self, link: Link, expected: str) -> str:
        batch = link.data.get("batch")
        if batch is not None and not batch.stands:
            return "OffTheLogError"
        later = self.links[self.links.index(link) + 1 :]
        if any(one.stands and one.sets.keys() & link.sets.keys() for one in later):
            return "ChangedSinceError"
        wanted = link.sets if expected == "after" else link.data.get("before", {})
        same = all(self.values.get(subject) == value for subject, value in wanted.items())
        return "" if same else "ChangedSinceError"

    def undo(self, link: Link, who: str, now: datetime) -> None:
        """Undo what a chain says."""
        self._take_back(link)
        link.stands, link.undone_by, link.undone_at = False, who, now

    def _take_back(self, link: Link) -> None:
        if link.sets:
            self.values |= link.data["before"]
        if link.kind == "waste":
            for line in link.data["lines"]:
                self._give_back(line["uses"])
        elif link.kind == "merge":
            for found, name in link.data["moved"]:
                if found[name] == GRAPEFRUIT:
                    found[name] = POMELO
        elif link.kind in {"juiced", "into batch"}:
            link.data["used"] = list(link.uses)
            self._give_back(link.uses)
        elif link.kind == "batch":
            mine = [one for one in self.standing("into batch") if one.data["batch"] is link]
            link.data["used"] = [use for one in mine for use in one.uses]
            for one in mine:
                one.data["used"] = list(one.uses)
                self._give_back(one.uses)

    def last_of(self, who: str, now: datetime) -> Link | None:
        """Return the chain that 'undo' alone means."""
        for link in reversed(self.links):
            ours = link.stands and link.by == who and now - link.at <= _DAY
            if ours and self._refuses_change(link, "after") != "OffTheLogError":
                return link
        return None

    def refuses_put_back(self, link: Link, who: str, now: datetime) -> str:
        """Return the error that a put-back raises, '' for none."""
        if link.stands:
            return "AlreadyThereAgainError"
        if who not in {link.undone_by, OWNER}:
            return "NotYoursError"
        if link.undone_at is None or now - link.undone_at > _DAY:
            return "TooLateError"
        if link.kind in {"into batch", "batch"} and not self._can_use_again(link):
            return "OffTheLogError" if self._refuses_change(link, "before") else "UsedSinceError"
        return self._refuses_change(link, "before")

    @staticmethod
    def _can_use_again(link: Link) -> bool:
        wanted: dict[int, Fraction] = {}
        lots = {id(lot): lot for lot, _count in link.data["used"]}
        for lot, count in link.data["used"]:
            wanted[id(lot)] = wanted.get(id(lot), Fraction(0)) + count
        return all(lots[one].stands and lots[one].left >= count for one, count in wanted.items())

    def put_back(self, link: Link) -> None:
        """Put back what was undone."""
        link.stands = True
        self._apply(link)
        if link.kind == "into batch":
            self._use_again(link)
        if link.kind == "batch":
            for one in self.standing("into batch"):
                if one.data["batch"] is link:
                    self._use_again(one)

    @staticmethod
    def _use_again(link: Link) -> None:
        for lot, count in link.data["used"]:
            lot.left -= count
        link.uses = list(link.data["used"])

    # -- reasons and edits ---------------------------------------------------------------

    def give_reason(self, line: dict[str, Any], reason: str) -> None:
        """Give a line of waste another reason."""
        if line["reason"] == reason:
            return
        self._give_back(line["uses"])
        line["reason"] = reason
        self._bin(line)

    def edit(self, link: Link, change: Callable[[], dict[str, Any]]) -> None:
        """Replace what a chain says; what the new words do not say stays."""
        self._take_back(link)
        link.stands = False
        old, data = link.data, change()
        if link.kind == "waste":
            rest = list(old["lines"])
            for line in data["lines"]:
                same = next((one for one in rest if one["fruit"] == line["fruit"]), rest[0] if rest else None)
                if same is not None:
                    rest.remove(same)
                    line["reason"] = line["reason"] or same["reason"]
                    self._moves_along(same, line)
        elif "item" in data:
            self._moves_along(old, data)
        link.data = data
        link.stands = True
        self._apply(link, new=True)

    def _moves_along(self, old: dict[str, Any], new: dict[str, Any]) -> None:
        """Let a corrected line follow the line that it corrects when an undo makes two of one again."""
        for link in self.standing("merge"):
            link.data["moved"] += [(new, name) for found, name in link.data["moved"] if found is old]

    # -- what it comes to ----------------------------------------------------------------

    def wasted(self) -> dict[tuple[str, str], Fraction]:
        """Return the pieces thrown out, by fruit and reason."""
        sums: dict[tuple[str, str], Fraction] = {}
        for link in self.standing("waste"):
            for line in link.data["lines"]:
                key = line["fruit"], line["reason"]
                sums[key] = sums.get(key, Fraction(0)) + line["count"]
        return sums

    def on_hand(self, item: str) -> Fraction | None:
        """Return what the book says is there, None where nothing was counted or bought."""
        there: Fraction | None = None
        counted = [one for one in self.standing("count") if one.data["item"] == item]
        begins = self.links.index(counted[-1]) if counted else 0
        for link in self.links[begins:]:
            if not link.stands:
                continue
            if link.kind == "count" and link.data["item"] == item:
                there = link.data["count"]
            elif link.kind == "bought" and link.data["item"] == item:
                there = (there or Fraction(0)) + link.data["count"]
            elif there is not None and link.kind == "waste":
                there -= sum(one["count"] for one in link.data["lines"] if one["fruit"] == item)
            elif there is not None and link.kind == "batch" and item == "salt":
                there -= link.data["salt"]
        return there

    def price(self, item: str) -> int | None:
        """Return the price in force."""
        return _price(self.standing("price", "bought"), item)

    def drinks(self) -> dict[str, int]:
        """Return the drinks of each business day."""
        return {one.data["day"]: one.data["drinks"] for one in self.standing("drinks")}


def _price(links: Iterable[Link], item: str) -> int | None:
    """Return the last price of an item; what was bought brings one where it was another before."""
    known = [
        one.data["price"]
        for one in links
        if one.data["item"] == item and (one.kind == "price" or one.data["sets"])
    ]
    return known[-1] if known else None
