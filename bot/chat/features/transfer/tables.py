"""Word a received table: its columns, its first rows as they would be logged, and open questions."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from bot.chat.dialogue.turn import Turn
from bot.chat.features.transfer.table_words import words_of
from bot.chat.i18n.language import _, ngettext, show_day, show_money, show_number
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.message import Button, Grid, Reply, Text
from bot.chat.reply.units import show_quantity, unit_name
from bot.trade.formulas.measures import Quantity
from bot.trade.words import N_
from bot.work.transfer.foreign.reading import KINDS, MEANINGS, Meaning, Question, Reading

if TYPE_CHECKING:
    from bot.work.transfer.foreign.tables import Proposal
    from bot.work.transfer.import_rows import Given

_LONGEST_NAME = 24
_KIND_WORDS = {
    "waste": N_("waste"),
    "deliveries": N_("a delivery"),
    "prices": N_("a price list"),
    "counts": N_("a stock count"),
}
_MEANING_WORDS: dict[Meaning, str] = {
    "item": N_("what"),
    "amount": N_("how many"),
    "unit": N_("unit"),
    "cost": N_("total cost"),
    "each": N_("price of one"),
    "day": N_("day"),
    "reason": N_("reason"),
    "pack": N_("pack size"),
    "": N_("leave out"),
}
_ASKED: dict[Question, str] = {
    "kind": N_("What is in this table?"),
    "item": N_("Which column says what it is?"),
    "amount": N_("Which column says how many?"),
    "cost": N_("Which column is the price?"),
    "decimal": N_("How does it write one and a half?"),
    "order": N_("Which comes first in its dates?"),
    "day": N_("Which day is it for?"),
    "unit": N_("What does oz mean in it?"),
}
_OUNCES = {"weight": "ounce", "us": "us_fluid_ounce", "imperial": "imperial_fluid_ounce"}
_DAY_ORDERS = {"dmy": N_("the day"), "mdy": N_("the month")}
_SAID = re.compile(
    r"(?P<what>try|columns|is|column|decimal|dates|day|oz)(?: (?P<value>\S+))?(?: (?P<more>\S*))?"
)


@dataclass(frozen=True, slots=True)
class Said:
    """An answer about a stored table: 'is waste', 'column 3 cost', 'dates dmy', 'try'."""

    what: str
    value: str = ""
    more: str = ""

    @classmethod
    def of(cls, text: str) -> Said | None:
        """Parse an answer, or return None."""
        found = _SAID.fullmatch(text)
        return None if found is None else cls(found["what"], found["value"] or "", found["more"] or "")


def proposed(turn: Turn, upload: int, said: Said | None = None) -> Reply:
    """Show the reading of a stored table after an answer, and ask the first open question."""
    from bot.work.transfer.foreign import tables as own_tables  # noqa: PLC0415 - loads pydantic

    words = words_of(turn)
    found = own_tables.look(turn.context, upload, words)
    changed = {} if said is None else _changed(turn, found.reading, said)
    if changed:
        found = own_tables.look(turn.context, upload, words, **changed)
    if said is not None and said.what == "columns":
        return _columns(found)
    if said is not None and said.what == "column" and not changed:
        return _meanings(found, int(said.value or 1) - 1)
    return _shown(turn, found)


def _changed(turn: Turn, reading: Reading, said: Said) -> dict[str, Any]:
    if said.what == "is" and said.value in KINDS:
        return {"kind": said.value}
    if said.what == "column" and said.more and said.more in {*MEANINGS, "-"} and said.value.isdecimal():
        return {"columns": _with_meaning(reading.columns, int(said.value) - 1, said.more.strip("-"))}
    if said.what == "decimal" and said.value in {"point", "comma"}:
        return {"decimal": "." if said.value == "point" else ","}
    if said.what == "dates" and said.value in _DAY_ORDERS:
        return {"order": said.value}
    if said.what == "oz" and said.value:
        return {"unit": _OUNCES.get(said.value, "")}
    if said.what == "day":
        return {"day": date.fromisoformat(said.value)}
    return {}


def _with_meaning(columns: tuple[Meaning, ...], at: int, meaning: str) -> tuple[Meaning, ...]:
    """Give a column a meaning, and take it from any other column."""
    known: Meaning = next(one for one in MEANINGS if one == meaning)
    kept = [("" if one == known else one) for one in columns]
    if 0 <= at < len(kept):
        kept[at] = known
    return tuple(kept)


def _shown(turn: Turn, found: Proposal) -> Reply:
    reading = found.reading
    first = ngettext("{name}: {count} row, as I read it.", "{name}: {count} rows, as I read it.", found.count)
    blocks: list[Text | Grid] = [
        Text(first.format(name=found.name, count=show_number(found.count, 0)), strong=True)
    ]
    if reading.kind is not None:
        blocks.append(Text(_("This looks like {what}.").format(what=_(_KIND_WORDS[reading.kind]))))
    if found.first:
        blocks.append(Grid(tuple(_row(turn, one) for one in found.first)))
    if found.wrong:
        blocks.append(
            Text(
                ngettext("{count} row I cannot read.", "{count} rows I cannot read.", found.wrong).format(
                    count=show_number(found.wrong, 0)
                )
            )
        )
    if found.new_names and reading.kind is not None:
        blocks.append(Text(_("New names: {names}").format(names=", ".join(found.new_names[:8]))))
    columns = (Button(_("Change columns"), f"import #{found.upload} columns"),)
    if not reading.open:
        return Reply(
            tuple(blocks),
            ((Button(_("Try it"), f"import #{found.upload} try"),), columns),
            edits=_edits(turn),
        )
    asked = reading.open[0]
    blocks.append(Text(_(_ASKED[asked]), strong=True))
    return Reply(tuple(blocks), (*_answers(turn, found, asked), columns), edits=_edits(turn), choosing=True)


def _edits(turn: Turn) -> bool:
    return turn.message.tapped is not None


def _answers(turn: Turn, found: Proposal, asked: Question) -> tuple[tuple[Button, ...], ...]:
    line = f"import #{found.upload}"
    if asked == "kind":
        kinds = [Button(_(_KIND_WORDS[one]), f"{line} is {one}") for one in KINDS]
        return (tuple(kinds[:2]), tuple(kinds[2:]))
    if asked in {"item", "amount", "cost"}:
        meaning = asked
        return tuple(
            (Button(_heading(found.reading, at), f"{line} column {at + 1} {meaning}"),)
            for at, known in enumerate(found.reading.columns)
            if not known
        )
    if asked == "decimal":
        return ((Button("1.5", f"{line} decimal point"), Button("1,5", f"{line} decimal comma")),)
    if asked == "order":
        return (tuple(Button(_(word), f"{line} dates {key}") for key, word in _DAY_ORDERS.items()),)
    if asked == "unit":
        return (
            (Button(unit_name("ounce"), f"{line} oz weight"),),
            (
                Button(unit_name("us_fluid_ounce"), f"{line} oz us"),
                Button(unit_name("imperial_fluid_ounce"), f"{line} oz imperial"),
            ),
        )
    bar = turn.context.bar
    today = bar.day_of(turn.clock.now())
    days = (today, today - timedelta(days=1))
    return (tuple(Button(show_day(one), f"{line} day {one.isoformat()}") for one in days),)


def _heading(reading: Reading, at: int) -> str:
    said = reading.header[at] if at < len(reading.header) else ""
    return said[:_LONGEST_NAME] or _("column {number}").format(number=at + 1)


def _columns(found: Proposal) -> Reply:
    rows = tuple(
        (
            Button(
                f"{_heading(found.reading, at)}: {_(_MEANING_WORDS[meaning])}",
                f"import #{found.upload} column {at + 1}",
            ),
        )
        for at, meaning in enumerate(found.reading.columns)
    )
    done = (Button(_("Done"), f"import #{found.upload}"),)
    return Reply(
        (Text(_("What does each column say? Tap one to change it."), strong=True),), (*rows, done), edits=True
    )


def _meanings(found: Proposal, at: int) -> Reply:
    buttons = [
        Button(_(_MEANING_WORDS[one]), f"import #{found.upload} column {at + 1} {one or '-'}")
        for one in MEANINGS
    ]
    rows = tuple(tuple(buttons[place : place + 3]) for place in range(0, len(buttons), 3))
    asked = _("What does “{column}” say?").format(column=_heading(found.reading, at))
    return Reply((Text(asked, strong=True),), rows, edits=True)


def _row(turn: Turn, given: Given) -> tuple[str, ...]:
    """Write a row as it would be logged: day, item, reason, cost."""
    data, units = given.data, turn.context.bar.units
    name = str(data.get("fruit") or data.get("ingredient"))[:_LONGEST_NAME]
    day = show_day(date.fromisoformat(data["day"])) if "day" in data else ""
    if "price" in data:
        pack = Quantity(Fraction(data["pack_amount"]), data["pack_unit"])
        return (name, show_quantity(pack, units), show_money(Fraction(data["price"])))
    if "pieces" in data or data.get("dimension") == "count":
        count = Fraction(data.get("pieces") or data["amount"])
        what = f"{show_number(count, 2)} {counted_name(name, count)}"
    else:
        unit = "g" if "grams" in data or data.get("dimension") == "mass" else "ml"
        what = f"{show_quantity(Quantity(Fraction(data.get('grams') or data['amount']), unit), units)} {name}"
    cost = show_money(Fraction(data["cost"])) if "cost" in data else ""
    return (day, what, str(data.get("reason", "")), cost)
