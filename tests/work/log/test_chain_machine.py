"""Every kind of entry under log, reason, edit, undo, put back and restart, compared with a simple model."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction
from itertools import count
from typing import Any

from hypothesis import HealthCheck
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule, run_state_machine_as_test

from bot.trade.days import business_day
from bot.trade.formulas.amounts import ByFactor
from bot.trade.formulas.kinds import Preparation
from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.batches import batch_life, batches, shelf
from bot.work.batches.batch_life import NewBatch
from bot.work.batches.batches import Clarity
from bot.work.context import BarView, Context, Role
from bot.work.errors import WorkError
from bot.work.formulas import formulas, ingredients, merging, other_names, scaling
from bot.work.formulas.formulas import Draft, DraftLine
from bot.work.fruit import peeled, waste, week
from bot.work.fruit.waste import WasteLine
from bot.work.log import chain, edits
from bot.work.money import prices
from bot.work.people import bars, people
from bot.work.spray import drinks
from bot.work.stock import counts, on_hand, pars
from storage.store import Store
from storage.tables import Bar, Entry, Member
from tests.examples import examples
from tests.house import CHANNEL, Hands, House
from tests.work.log.chain_model import GRAPEFRUIT, MEMBER, OWNER, PEELED, POMELO, Link, Model

_FRUIT = ("lime", "lemon", GRAPEFRUIT, POMELO)
_CALLED = ("citron", "green one")
_NEW = ("kumquat", "yuzu")
_GIN = Quantity(Fraction(5), "ml")
_REASONS = ("", "mouldy", PEELED)
_WHO = st.sampled_from([OWNER, MEMBER])
_PIECES = st.integers(1, 9)
_bars = count(1)
# A sequence takes about a second: PEEL_TEST_SEQUENCES=1000 with --all tries 10,000 in some hours.
_SEQUENCES = int(os.environ.get("PEEL_TEST_SEQUENCES", "3"))
_SLOW = (HealthCheck.too_slow, HealthCheck.function_scoped_fixture, HealthCheck.filter_too_much)


def _each(number: int) -> Quantity:
    return Quantity(Fraction(number), "each")


def _money(price: int) -> Decimal | None:
    return Decimal(price) if price else None


def _quantity(data: dict[str, Any]) -> Quantity:
    return Quantity(data["count"], "g" if data["item"] == "salt" else "each")


class Corrections(RuleBasedStateMachine):
    """A bar of two people, and everything that can be logged in it."""

    build: Callable[[], House]

    def __init__(self) -> None:
        super().__init__()
        house = type(self).build()
        self.store: Store = house.store
        self.clock: Hands = house.clock
        self.model = Model()
        self.said = 0

    @initialize()
    def open(self) -> None:
        number = next(_bars)
        now = self.clock.now()
        with self.store.writing() as unit:
            first, second = (
                people.meet(unit, CHANNEL, f"{name}{number}", name, "en", f"{name}{number}", True, "")
                for name in (OWNER, MEMBER)
            )
            view = bars.open_bar(
                unit,
                first,
                OWNER,
                True,
                now,
                name=f"Bar {number}",
                zone="Europe/Lisbon",
                jurisdiction=Jurisdiction.OTHER,
                currency="EUR",
                units="metric",
            )
            self.people = {OWNER: first, MEMBER: second}
            book = unit.bar(view.id)
            book.add(Member(person_id=second.person_id, role=Role.MEMBER, name=MEMBER, joined_at=now))
            self.bar = view.id
            context = self._context(unit, OWNER, "begin")
            self.items = {name: ingredients.add(context, name).id for name in (*_FRUIT, "salt", "gin")}
            lines = (
                DraftLine("salt", Quantity(Fraction(20), "g")),
                DraftLine("water", Quantity(Fraction(80), "ml")),
                DraftLine(self.items["gin"], _GIN),
            )
            draft = Draft(Preparation.SALINE, lines, rest_hours=Fraction(0), note="0")
            self.formula = formulas.add(context, "Brine", draft).id
        self.model.values |= {("setting", None): 3, ("formula", None): "0", ("strength", None): None}
        self.model.values |= {("new", name): True for name in _NEW}
        self.clock.turn(hours=25)  # what the bar began with cannot be undone

    def _context(self, unit: Any, who: str, key: str) -> Context:
        row = unit.session.get(Bar, self.bar)
        person = self.people[who]
        assert row is not None
        assert person.person_id is not None
        assert person.room_id is not None
        role = Role.OWNER if who == OWNER else Role.MEMBER
        return Context(
            unit.bar(self.bar),
            BarView.of(row),
            person.person_id,
            who,
            role,
            person.room_id,
            self.clock.now(),
            key,
        )

    def _key(self) -> str:
        self.said += 1
        self.clock.turn(seconds=7)
        return f"{self.bar}:{self.said}"

    # -- logging -------------------------------------------------------------------------

    def _write(self, context: Context, kind: str, data: dict[str, Any]) -> None:
        """Log what the data say, in the book."""
        item = self.items.get(str(data.get("item")), 0)
        lime, gin = self.items["lime"], self.items["gin"]
        writes: dict[str, Callable[[], object]] = {
            "bought": lambda: counts.buy(
                context, item, Fraction(data["count"]), _each(1), _money(data["price"])
            ),
            "count": lambda: counts.count(context, item, _quantity(data)),
            "price": lambda: prices.set_price(context, item, _each(1), Decimal(data["price"])),
            "drinks": lambda: drinks.log(context, data["drinks"]),
            "peeled": lambda: peeled.peel(context, lime, data["count"]),
            "juiced": lambda: peeled.juice(context, lime, data["count"], data["count"] * 20),
            "par": lambda: pars.set_par(context, lime, _each(data["after"])),
            "strength": lambda: ingredients.set_strength(context, gin, Fraction(data["after"])),
            "setting": lambda: bars.change(context, discard_warn_days=data["after"]),
            "formula": lambda: self._note(context, data),
            "waste": lambda: self._waste(context, data["lines"]),
        }
        if kind == "drinks":
            data["day"] = context.today.isoformat()
        writes[kind]()

    def _note(self, context: Context, data: dict[str, Any]) -> None:
        """Change the formula's note, and perhaps the strength of its gin."""
        now = formulas.draft_of(formulas.get(context, self.formula))
        gin, percent = self.items["gin"], data.get("also", {}).get(("strength", None))
        said = DraftLine(gin, _GIN, None if percent is None else Fraction(percent))
        lines = tuple(said if line.ingredient == gin else line for line in now.lines)
        formulas.change(context, self.formula, replace(now, lines=lines, note=data["after"]))

    def _waste(self, context: Context, said: list[dict[str, Any]]) -> None:
        lines = [
            WasteLine(self.items[one["fruit"]], one["count"], Dimension.COUNT, one["reason"]) for one in said
        ]
        for one, view in zip(said, waste.log(context, lines).lines, strict=True):
            one["row"] = view.id

    def _log(self, who: str, kind: str, data: dict[str, Any]) -> None:
        key = self._key()
        with self.store.writing() as unit:
            context = self._context(unit, who, key)
            self._write(context, kind, data)
            assert context.entry is not None
            number = context.entry
        self._began(Link(kind, who, self.clock.now(), key, data), number)

    def _began(self, link: Link, number: int) -> None:
        link.numbers.append(number)
        self.model.log(link)

    @rule(who=_WHO, data=st.data(), both=st.booleans())
    def log_waste(self, who: str, data: st.DataObject, both: bool) -> None:
        named = self._named() if both else (data.draw(st.sampled_from(self._named())),)
        self._log(who, "waste", {"lines": [self._draw_line(data, fruit) for fruit in named]})

    def _named(self) -> tuple[str, ...]:
        """Return the fruit that have a name of their own now."""
        return _FRUIT[:-1] if self.model.values.get(("merge", None)) else _FRUIT

    @staticmethod
    def _draw_line(data: st.DataObject, fruit: str) -> dict[str, Any]:
        number, reason = data.draw(_PIECES), data.draw(st.sampled_from(_REASONS))
        return {"fruit": fruit, "count": Fraction(number), "reason": reason}

    @rule(
        who=_WHO,
        kind=st.sampled_from(["bought", "count", "price", "drinks", "peeled", "juiced"]),
        data=st.data(),
    )
    def log_amount(self, who: str, kind: str, data: st.DataObject) -> None:
        self._log(who, kind, self._draw_amount(kind, data))

    def _draw_amount(self, kind: str, data: st.DataObject, item: str = "") -> dict[str, Any]:
        number = data.draw(_PIECES)
        if kind == "drinks":
            return {"drinks": number}
        if kind in {"peeled", "juiced"}:
            return {"count": Fraction(number)}
        among = (*self._named(), "salt") if kind == "count" else self._named()
        item = item or data.draw(st.sampled_from(among))
        if kind == "price":
            return {"item": item, "price": number}
        priced = data.draw(st.sampled_from([0, 1, 2])) if kind == "bought" else 0
        return {"item": item, "count": Fraction(number), "price": priced}

    @rule(kind=st.sampled_from(["par", "strength", "setting", "formula"]), number=_PIECES)
    def set_value(self, kind: str, number: int) -> None:
        after: Any = {"setting": number, "par": number}.get(kind, f"{self.said + 1}")
        if kind == "setting" and self.model.values["setting", None] == number:
            return
        if kind == "strength":
            after = str(number + self.said % 50)
            if self.model.values["strength", None] == after:
                return
        self._log(OWNER, kind, {"after": after})

    @rule(number=_PIECES)
    def set_formula_and_strength(self, number: int) -> None:
        also = {("strength", None): f"{number + self.said % 50}"}
        if self.model.values["strength", None] != also["strength", None]:
            self._log(OWNER, "formula", {"after": f"{self.said + 1}", "also": also})

    # -- names ---------------------------------------------------------------------------

    @rule(who=_WHO, called=st.sampled_from(_CALLED), item=st.sampled_from(["lime", "lemon", None]))
    def call(self, who: str, called: str, item: str | None) -> None:
        """Give a thing another name, or forget the name."""
        if self.model.values.get(("name", called)) == item:
            return
        key = self._key()
        with self.store.writing() as unit:
            context = self._context(unit, who, key)
            if item is None:
                other_names.forget(context, called)
            else:
                other_names.call(context, self.items[item], called)
            number = context.entry or 0
        self._began(Link("name", who, self.clock.now(), key, {"of": called, "after": item}), number)

    @rule(who=_WHO, name=st.sampled_from(_NEW))
    def add_new(self, who: str, name: str) -> None:
        if not self.model.values["new", name]:
            return
        key = self._key()
        with self.store.writing() as unit:
            context = self._context(unit, who, key)
            other_names.add_new(context, name, None)
            number = context.entry or 0
        self._began(Link("new", who, self.clock.now(), key, {"of": name, "after": False}), number)

    @rule()
    def merge(self) -> None:
        if POMELO not in self._named():
            return
        key = self._key()
        with self.store.writing() as unit:
            context = self._context(unit, OWNER, key)
            merging.merge(context, self.items[POMELO], self.items[GRAPEFRUIT])
            number = context.entry or 0
        self._began(Link("merge", OWNER, self.clock.now(), key, {"after": True}), number)

    # -- batches -------------------------------------------------------------------------

    @rule(who=_WHO, factor=st.integers(1, 2))
    def make_batch(self, who: str, factor: int) -> None:
        key = self._key()
        with self.store.writing() as unit:
            context = self._context(unit, who, key)
            view = formulas.get(context, self.formula)
            answer = scaling.scale_formula(context, view, ByFactor(Fraction(factor)))
            made = batch_life.make(context, NewBatch(answer))
            salt = made.batch.lines[0].amount
        data = {"number": made.batch.number, "salt": salt, "until": made.batch.discard_on}
        self._began(Link("batch", who, self.clock.now(), key, data), made.entry)

    def _draw_batch(self, data: st.DataObject) -> Link | None:
        there = list(self.model.standing("batch"))
        return data.draw(st.sampled_from(there)) if there else None

    @rule(who=_WHO, what=st.sampled_from(["clear", "hazy", "open", "use up", "discard"]), data=st.data())
    def move_batch(self, who: str, what: str, data: st.DataObject) -> None:
        batch = self._draw_batch(data)
        if batch is None:
            return
        number = batch.data["number"]
        state, clarity, opened, ended = self.model.values["move", number]
        if ended is not None or (what == "open" and state != "ready"):
            return
        key = self._key()
        now = int(self.clock.now().timestamp())
        with self.store.writing() as unit:
            context = self._context(unit, who, key)
            if what in {"clear", "hazy"}:
                made = batch_life.check(context, number, Clarity(what))
                after: tuple[Any, ...] = (state, what, opened, ended)
            elif what == "open":
                made = batch_life.open_batch(context, number)
                after = ("in use", clarity, now, ended)
            elif what == "use up":
                made = batch_life.use_up(context, number)
                after = ("used up", clarity, opened, now)
            else:
                made = batch_life.discard(context, number, None, "spilt")
                after = ("discarded", clarity, opened, now)
        link = Link("move", who, self.clock.now(), key, {"of": number, "batch": batch, "after": after})
        self._began(link, made.entry)

    @rule(who=_WHO, data=st.data(), days=st.sampled_from([None, 5, 20, 400]))
    def note_lot(self, who: str, data: st.DataObject, days: int | None) -> None:
        batch = self._draw_batch(data)
        if batch is None:
            return
        key = self._key()
        lot = f"L{self.said}"
        expiry = None if days is None else self.clock.now().date() + timedelta(days=days)
        with self.store.writing() as unit:
            context = self._context(unit, who, key)
            batch_life.note_lot(context, batch.data["number"], self.items["salt"], lot, expiry)
            number = context.entry
        after = lot, expiry
        link = Link(
            "lot", who, self.clock.now(), key, {"of": batch.data["number"], "batch": batch, "after": after}
        )
        self._began(link, number or 0)

    @rule(who=_WHO, number=_PIECES, data=st.data())
    def put_peeled_into_batch(self, who: str, number: int, data: st.DataObject) -> None:
        batch = self._draw_batch(data)
        if batch is None or not self.model.lying():
            return
        key = self._key()
        with self.store.writing() as unit:
            context = self._context(unit, who, key)
            peeled.into_batch(context, self.items["lime"], Fraction(number), batch.data["number"])
            entry = context.entry
        link = Link("into batch", who, self.clock.now(), key, {"batch": batch, "count": Fraction(number)})
        self._began(link, entry or 0)

    # -- corrections ---------------------------------------------------------------------

    def _draw_link(self, data: st.DataObject) -> Link | None:
        return data.draw(st.sampled_from(self.model.links)) if self.model.links else None

    def _do(self, who: str, run: Callable[[Context], chain.Change]) -> tuple[str, int]:
        """Run an operation; return the error it raised and the number of its entry."""
        key = self._key()
        try:
            with self.store.writing() as unit:
                change = run(self._context(unit, who, key))
        except WorkError as error:
            return type(error).__name__, 0
        return "", change.entry

    @rule(who=_WHO)
    def undo(self, who: str) -> None:
        refused, entry = self._do(who, chain.undo)
        now = self.clock.now()
        link = self.model.last_of(who, now)
        if link is None:
            assert refused == "NothingToUndoError"
            return
        assert refused == self.model.refuses_undo(link, who, now)
        if not refused:
            self._undone(link, who, entry)

    def _undone(self, link: Link, who: str, entry: int) -> None:
        self.model.undo(link, who, self.clock.now())
        link.numbers.append(entry)
        link.undos.add(entry)

    @rule(who=_WHO, data=st.data())
    def undo_by_number(self, who: str, data: st.DataObject) -> None:
        link = self._draw_link(data)
        if link is None:
            return
        number = data.draw(st.sampled_from(link.numbers))
        refused, entry = self._do(who, lambda context: chain.undo(context, number))
        self._settle_number(link, who, number in link.undos, refused, entry)

    @rule(who=_WHO, data=st.data())
    def put_back(self, who: str, data: st.DataObject) -> None:
        undone = [one for one in self.model.links if not one.stands]
        if not undone:
            return
        link = data.draw(st.sampled_from(undone))
        number = data.draw(st.sampled_from(link.numbers))
        refused, entry = self._do(who, lambda context: chain.put_back(context, number))
        self._settle_number(link, who, True, refused, entry)

    def _settle_number(self, link: Link, who: str, puts_back: bool, refused: str, entry: int) -> None:
        now = self.clock.now()
        if puts_back:
            assert refused == self.model.refuses_put_back(link, who, now), link
            if not refused:
                self.model.put_back(link)
                link.numbers.append(entry)
        else:
            assert refused == self.model.refuses_undo(link, who, now), link
            if not refused:
                self._undone(link, who, entry)

    @rule(who=_WHO, reason=st.sampled_from(_REASONS[1:]), data=st.data())
    def give_reason(self, who: str, reason: str, data: st.DataObject) -> None:
        links = [one for one in self.model.links if one.kind == "waste"]
        if not links:
            return
        link = data.draw(st.sampled_from(links))
        line = data.draw(st.sampled_from(link.data["lines"]))
        key = self._key()
        refused, entry = "", 0
        try:
            with self.store.writing() as unit:
                context = self._context(unit, who, key)
                chain.give_reason(context, line["row"], reason)
                entry = context.entry or 0
        except WorkError as error:
            refused = type(error).__name__
        assert refused == ("" if link.stands else "AlreadyUndoneError")
        if refused:
            return
        if line["reason"] != reason:
            link.numbers.append(entry)
        self.model.give_reason(line, reason)

    @rule(data=st.data())
    def edit(self, data: st.DataObject) -> None:
        kinds = {"waste", "bought", "count", "price", "drinks", "peeled", "juiced", "par"}
        links = [one for one in self.model.links if one.kind in kinds]
        if not links:
            return
        link = data.draw(st.sampled_from(links))
        new = self._draw_change(link, data)
        self._key()
        now = self.clock.now()
        refused, entry = "", 0
        try:
            with self.store.writing() as unit:
                context = self._context(unit, link.by, f"{link.key}{edits.EDITED}{self.said}")
                earlier = edits.logged_by(context, link.key)
                if not earlier.standing:
                    assert not link.stands
                    assert earlier.undone is not None
                    return
                edit = edits.Edit(context, earlier, [])
                self._write(context, link.kind, new)
                (corrected,) = edit.finish()
                entry = corrected.after.last.id
        except WorkError as error:
            refused = type(error).__name__
        assert refused == self.model.refuses_undo(link, link.by, now)
        if not refused:
            self.model.edit(link, lambda: new)
            link.numbers.append(entry)

    def _draw_change(self, link: Link, data: st.DataObject) -> dict[str, Any]:
        if link.kind == "waste":
            named = self._named()
            fruit = data.draw(st.sampled_from([named[:1], named[1:2], named[2:], named]))
            return {"lines": [self._draw_line(data, one) for one in fruit]}
        if link.kind == "par":
            return {"after": data.draw(_PIECES)}
        return self._draw_amount(link.kind, data, link.data.get("item", ""))

    # -- what happens to all -------------------------------------------------------------

    @rule(hours=st.sampled_from([1, 8, 25]))
    def time_goes_by(self, hours: int) -> None:
        self.clock.turn(hours=hours)

    @rule()
    def restart(self) -> None:
        self.store.close()
        self.store = Store(self.store.url.render_as_string(hide_password=False))

    @invariant()
    def the_book_says_what_stands(self) -> None:
        if not hasattr(self, "bar"):
            return
        with self.store.reading() as unit:
            context = self._context(unit, OWNER, "look")
            self._compare_fruit(context)
            self._compare_values(context)
            self._compare_names(context)
            for link in self.model.links:
                found = chain.state(context, link.numbers[0])
                assert (found.stands, found.last.id) == (link.stands, link.numbers[-1]), link

    def _compare_fruit(self, context: Context) -> None:
        model, today = self.model, self.clock.now().date()
        found = week.summary(context, today - timedelta(days=90), today + timedelta(days=1))
        wasted = model.wasted()
        for name in _FRUIT:
            mine = sum((one.count for one in found.fruit if one.name == name), Fraction(0))
            assert mine == sum((sum_ for (fruit, _r), sum_ in wasted.items() if fruit == name), Fraction(0))
        for reason in _REASONS:
            mine = sum((one.count for said, one in found.reasons if said == reason), Fraction(0))
            assert mine == sum((sum_ for (_f, said), sum_ in wasted.items() if said == reason), Fraction(0))
        there = on_hand.on_hand(context)
        for name in (*_FRUIT, "salt"):
            one = there.get(self.items[name])
            assert (None if one is None else one.book) == model.on_hand(name), name
        in_force = prices.in_force(context)
        for name in _FRUIT:
            price = in_force.get(self.items[name])
            assert (None if price is None else price.price) == model.price(name), name
        assert sum((one.left for one in peeled.waiting(context)), Fraction(0)) == model.lying()
        known = drinks.days(context, today - timedelta(days=90), today + timedelta(days=1))
        assert {one.day.isoformat(): one.drinks for one in known} == model.drinks()

    def _compare_values(self, context: Context) -> None:
        model = self.model
        par = on_hand.least_wanted(context).get(self.items["lime"])
        assert (None if par is None else par[0]) == model.values.get(("par", None))
        assert context.bar.settings.discard_warn_days == model.values["setting", None]
        assert formulas.get(context, self.formula).note == model.values["formula", None]
        strength = ingredients.get(context, self.items["gin"]).strength_percent
        said = model.values["strength", None]
        assert strength == (None if said is None else Fraction(said))
        made = {one.number for one in batches.listed(context, everything=True)}
        assert made == {one.data["number"] for one in model.standing("batch")}
        for link in model.standing("batch"):
            number = link.data["number"]
            view = batches.get(context, number)
            state, clarity, opened, _ended = model.values["move", number]
            assert (view.state, view.clarity) == (state, clarity)
            assert (view.opened_at is None) == (opened is None)
            checks = [one for one in model.standing("move") if one.data["of"] == number]
            assert len(view.events) == 1 + len(checks)
            lot = view.lines[0].lot, view.lines[0].best_before
            assert lot == (model.values.get(("lot", number)) or (None, None))
            assert view.discard_on == self._until(link, opened, lot[1])

    @staticmethod
    def _until(batch: Link, opened: int | None, expiry: date | None) -> date:
        """Return the discard date: the earliest of what bears on it."""
        days: list[date] = [batch.data["until"], *([] if expiry is None else [expiry])]
        if opened is not None:
            opened_on = business_day(datetime.fromtimestamp(opened, UTC), "Europe/Lisbon", 5 * 60)
            days.append(shelf.opened_until(Preparation.SALINE, opened_on))
        return min(days)

    def _compare_names(self, context: Context) -> None:
        model = self.model
        for called in _CALLED:
            known = ingredients.by_name(context, called)
            item = model.values.get(("name", called))
            assert (None if known is None else known.id) == (None if item is None else self.items[item])
        active = {one.name for one in ingredients.all_of(context)}
        assert {name for name in _NEW if name in active} == {
            name for name in _NEW if not model.values["new", name]
        }
        merged = bool(model.values.get(("merge", None)))
        assert (POMELO in active) != merged
        known = ingredients.by_name(context, POMELO)
        assert known is not None
        assert known.id == self.items[GRAPEFRUIT if merged else POMELO]

    def teardown(self) -> None:
        if not hasattr(self, "bar"):
            return
        with self.store.reading() as unit:
            entries = list(unit.bar(self.bar).all(Entry, order=Entry.id))
        follows = [one.follows for one in entries if one.follows is not None]
        assert len(follows) == len(set(follows))
        self.store.close()


def test_corrections(another_house: Callable[[], House]) -> None:
    house = another_house()
    machine = type("Corrections", (Corrections,), {"build": staticmethod(lambda: _again(house))})
    run_state_machine_as_test(machine, settings=examples(_SEQUENCES, *_SLOW))


def _again(house: House) -> House:
    """Return a house on the same database; each run opens a bar of its own in it."""
    return House(Store(house.store.url.render_as_string(hide_password=False)), Hands(house.clock.now()))
