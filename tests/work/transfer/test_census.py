"""The census of all tables: an export and import carry each, or a reason stands here why not."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any, get_args

import pytest
from sqlalchemy import select

from bot.work.transfer.fields import Row, opened
from bot.work.transfer.rows import SECTIONS, BarRow
from storage.store import Store
from storage.tables import Bar, Base
from tests.house import House, Person, text
from tests.work.transfer.files import Sends, exported

# Written in rows of another table's model.
_WITHIN = {"other_name": "names of an ingredient", "formula_sprayer": "formulas of a sprayer"}
_NOT_CARRIED = {
    "counter": "the numbers given out here; imported rows get theirs from it",
    "entry": "who did what in this bar; in another one the import itself is the entry",
    "imported": "which rows of files are here",
    "inbox": "messages on their way",
    "invite": "codes to join this bar",
    "member": "people join the other bar themselves",
    "person": "people join the other bar themselves",
    "question": "questions still open",
    "room": "the chats of this bot",
    "upload": "files sent and not yet imported",
}
# Columns without a field of their own: keys and positions follow from the place in the document, and these...
_COLUMNS = {
    "bar": {
        "created_at": "when this bar began",
        "delete_after": "its deletion",
        "language": "people choose their own",
        "revision": "counts changes for caches",
        "team_room_id": "its group",
    },
    "batch_event": {"photo": "the channel's own file ids: other bots cannot read them"},
    "delivery": {"price_id": "its cost is carried"},
    "event": {"plan": "its content has fields", "cancelled_at": "cancelled ones are left out"},
    "formula": {"latest": "the last of its versions"},
    "peeled_fruit": {"business_day": "follows from its time"},
    "reminder": {
        **dict.fromkeys(
            ("state", "attempts", "unsure", "lease_until", "sent_at", "done_by"),
            "only open, and nights without waste",
        ),
        **dict.fromkeys(("channel", "key", "first_due_at", "last_error"), "planned anew"),
        "details": "its text and days have fields",
        "batch_id": "reminders of batches are planned with them",
        "person_id": "`team`, else the person who imports",
    },
    "sprayer_run": {"undone_at": "undone ones are left out"},
    "stock_par": {"told": "said again where it is still low"},
    "trial_score": {"person_id": "`by`, as far as that is a member"},
    "waste": {"price_id": "its cost is carried"},
}
_EVERYWHERE = {
    *("bar_id", "id", "number", "position", "first", "corrects", "void", "source", "line"),
    *("by", "made_by", "made_at", "match_key"),
}
_PARENTS = {f"{name}_id" for name in ("batch", "formula", "menu", "peeled", "sprayer", "trial")} | {
    "waste_id",
    "juicing_id",
}

_SAID = (
    "new formula Orange mist\norange oil 12 ml\npropylene glycol 22 ml\nneutral spirit 96 % 62 ml\n"
    "kind aroma mist\nreplaces orange\nsprays 2-3",
    "price oranges 0.60 each, 5 garnishes each",
    "stock bought neutral spirit 3 x 1 l 24 each",
    "stock orange oil 200 ml",
    "par neutral spirit 1 l",
    "weigh Blue 152.31 150.55 148.80 147.02 20 sprays with orange mist",
    "use Blue for orange mist",
    "batch orange mist to 400 ml",
    "lot 1 orange oil A2231 exp 2028-05",
    "check 1 hazy, a thin skin on top",
    "batch 1 add 20 ml neutral spirit",
    "bottled 1 4 x 50 ml, lost 12 ml",
    "open 1",
    "spilt 1 20 ml",
    "serve negroni: 2 orange mist, 90 ml",
    "drinks 40 negroni",
    "drinks 20 orange mist",
    "peeled 6 oranges",
    "juiced 2 oranges 140 ml",
    "peeled in batch 1 orange 1",
    "waste 2 oranges mouldy",
    "peeled 3 lemons",
    "remind me tomorrow 16:00 order limes",
    "remind the team every Monday 15:00 count fruit",
    "note for tomorrow: sprayer two drips",
    "event 300 guests 5 Dec, 2 drinks each, orange mist",
    "came back 1 120 ml orange mist",
    "spraying orange since 2026-11-01",
    "trial orange mist against fresh",
)


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with rows in every table of its content."""
    ana, ben = house.open_bar(), house.joins("Ben")
    for line in _SAID:
        ana.says(line)
    ben.says("trial pour 1")
    ana.says("taste #1 " + ana.says("taste #1")[-1].buttons[0][0].label)
    ana.says("cancel")
    ana.taps_line("settle orange = citrus seven\nwaste 1 citrus seven mouldy")
    ana.says("we bunged 3 limes in the trash, they were furry")
    ana.taps("waste 3 limes")
    house.clock.turn(hours=11)
    house.reminders()
    ana.says("nothing tonight")
    return ana


def _models(model: type[Row]) -> Iterator[type[Row]]:
    """Return a model, and those of the rows within its rows."""
    yield model
    for field in model.model_fields.values():
        for inner in get_args(field.annotation):
            if isinstance(inner, type) and issubclass(inner, Row):
                yield from _models(inner)


def _fields() -> dict[str, set[str]]:
    """Return the fields of the models of each table."""
    found: dict[str, set[str]] = {}
    sections: tuple[type[Row], ...] = (BarRow, *SECTIONS.values())
    for section in sections:
        for model in _models(section):
            if hasattr(model, "TABLE"):  # a variant's lines are in its own row
                found.setdefault(model.TABLE.__tablename__, set()).update(model.model_fields)
    return found


def test_every_table_is_carried_or_has_a_reason() -> None:
    tables = set(Base.metadata.tables)
    carried = set(_fields()) | set(_WITHIN)
    assert carried | set(_NOT_CARRIED) == tables
    assert not carried & set(_NOT_CARRIED)


def test_every_column_of_a_carried_table_is_carried_or_has_a_reason() -> None:
    for name, fields in _fields().items():
        columns = set(Base.metadata.tables[name].columns.keys())
        left_out = columns - fields - _EVERYWHERE - _PARENTS
        assert left_out == set(_COLUMNS.get(name, {})) - _PARENTS, name


def _rows(store: Store, bar_id: int, name: str) -> int:
    table = Base.metadata.tables[name]
    with store.reading() as unit:
        return len(unit.session.execute(select(table).where(table.c.bar_id == bar_id)).all())


def _bars(store: Store) -> tuple[int, int]:
    with store.reading() as unit:
        first, second = unit.session.scalars(select(Bar.id).order_by(Bar.id))
        return first, second


def test_each_list_and_table_comes_whole_into_an_empty_bar_and_goes_again(house: House, ana: Person) -> None:
    found = json.loads(exported(ana)["peel-ledger.json"])
    empty = [name for name, rows in found.items() if rows in ([], {})]
    assert empty == []
    eve = house.open_bar("Eve", "The Grey Gull")
    before = json.loads(exported(eve)["peel-ledger.json"])
    Sends(house, eve).and_takes_in("bar.json", json.dumps(found).encode())
    first, second = _bars(house.store)
    for name in (*(set(_fields()) - {"bar", "reminder"}), *_WITHIN):  # most reminders follow from other rows
        assert 0 < _rows(house.store, first, name) == _rows(house.store, second, name), name
    again = json.loads(exported(eve)["peel-ledger.json"])
    for name in found:
        assert _anonymous(again[name]) == _anonymous(found[name]), name
    assert "stay" not in text(eve.says("undo"))
    after = json.loads(exported(eve)["peel-ledger.json"])
    for name in set(found) - {"exported_at", "bar", "ingredients", "formulas", "menu", "sprayers"}:
        assert after[name] == before[name], name
    for name in ("ingredients", "formulas", "menu", "sprayers"):
        assert [row for row in after[name] if not row["archived"]] == [
            row for row in before[name] if not row["archived"]
        ], name


def _anonymous(found: Any) -> Any:
    """Return a document without its people and ingredient numbers, which the other bar does not have."""
    if isinstance(found, list):
        return [_anonymous(one) for one in found]
    if not isinstance(found, dict):
        return found
    row = {**found, **opened(found["sealed"])} if "sealed" in found else found
    hidden = {"by", "exported_at", "origin", "sealed"} | ({"name"} if "currency" in row else set())
    return {
        name: _anonymous(value)
        for name, value in row.items()
        if name not in hidden and not (name == "ingredient" and isinstance(value, int))
    }
