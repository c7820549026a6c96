"""Tests of opening a database, and of many concurrent writers."""

from __future__ import annotations

import multiprocessing
import threading
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError

from storage.store import Store, UnsupportedDatabaseError, read_url
from storage.tables import Bar, Ingredient

_NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)
_THREADS, _TIMES = 8, 12


def _bar(name: str = "The Copper Gull") -> Bar:
    return Bar(
        name=name,
        language="en",
        currency="EUR",
        units="metric",
        zone="Europe/Lisbon",
        closing_minute=300,
        jurisdiction="EU",
        settings={},
        created_at=_NOW,
    )


def _open_bar(store: Store) -> int:
    with store.writing() as unit:
        row = _bar()
        unit.session.add(row)
        unit.session.flush()
        return row.id


def _in_threads(count: int, work: Callable[[int], None]) -> None:
    ready = threading.Barrier(count)
    failed: list[BaseException] = []

    def run(number: int) -> None:
        ready.wait()
        try:
            work(number)
        except BaseException as error:
            failed.append(error)

    threads = [threading.Thread(target=run, args=(number,)) for number in range(count)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert not failed, failed


def test_sqlite_is_opened_as_promised(tmp_path: Path) -> None:
    store = Store(f"sqlite:///{tmp_path / 'new folder' / 'bar.sqlite'}")
    with store.reading() as unit:
        found = {
            name: unit.session.scalar(text(f"PRAGMA {name}"))
            for name in ("journal_mode", "synchronous", "foreign_keys", "busy_timeout")
        }
    store.close()
    # synchronous: 2 is FULL.
    assert found == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "busy_timeout": 5000}


@pytest.mark.parametrize(
    ("given", "driver"),
    [
        ("sqlite:///bar.sqlite", "sqlite"),
        ("postgres://a:b@db/bar", "postgresql+psycopg"),
        ("postgresql://a:b@db/bar", "postgresql+psycopg"),
        ("postgresql+psycopg://a:b@db/bar", "postgresql+psycopg"),
    ],
)
def test_urls(given: str, driver: str) -> None:
    assert read_url(given).drivername == driver


def test_another_database_is_refused_by_name() -> None:
    with pytest.raises(UnsupportedDatabaseError) as caught:
        read_url("mysql://a:b@db/bar")
    assert caught.value.name == "mysql"


class _GivenUpError(Exception):
    pass


def _give_up(store: Store) -> None:
    with store.writing() as unit:
        unit.session.add(_bar())
        unit.session.flush()
        raise _GivenUpError


def test_reading_keeps_nothing_and_a_failure_keeps_nothing(store: Store) -> None:
    with store.reading() as unit:
        unit.session.add(_bar())
        unit.session.flush()
    with pytest.raises(_GivenUpError):
        _give_up(store)
    with store.reading() as unit:
        assert unit.session.query(Bar).count() == 0


def test_a_row_cannot_point_into_another_bar(store: Store) -> None:
    one, other = _open_bar(store), _open_bar(store)
    with store.writing() as unit:
        row = Ingredient(name="lime", match_key="lime", kind="fruit", made_at=_NOW)
        lime = unit.bar(one).add(row).id
    from storage.tables import Price  # noqa: PLC0415 - only here

    price = {"pack_amount": 1, "pack_unit": "each", "price_minor": 20, "at": _NOW, "by": 1}
    with pytest.raises(IntegrityError), store.writing() as unit:
        unit.bar(other).add(Price(ingredient_id=lime, **price))
    with store.writing() as unit:
        unit.bar(one).add(Price(ingredient_id=lime, **price))


def test_numbers_are_given_out_once_whoever_asks_at_the_same_moment(store: Store) -> None:
    bar = _open_bar(store)
    given: list[int] = []
    lock = threading.Lock()

    def take(_number: int) -> None:
        for _time in range(_TIMES):
            with store.writing() as unit:
                number = unit.bar(bar).next_number("batch")
            with lock:
                given.append(number)

    _in_threads(_THREADS, take)
    assert sorted(given) == list(range(1, _THREADS * _TIMES + 1))


def test_no_change_of_a_bar_goes_uncounted(store: Store) -> None:
    bar = _open_bar(store)

    def touch(_number: int) -> None:
        for _time in range(_TIMES):
            with store.writing() as unit:
                unit.bar(bar).touched()

    _in_threads(_THREADS, touch)
    with store.reading() as unit:
        row = unit.session.get(Bar, bar)
        assert row is not None
        assert row.revision == _THREADS * _TIMES


def test_who_holds_a_bar_reads_what_the_last_one_wrote(store: Store) -> None:
    bar = _open_bar(store)

    def add_one(_number: int) -> None:
        for _time in range(_TIMES):
            with store.writing() as unit:
                unit.bar(bar).hold()
                row = unit.session.get(Bar, bar)
                assert row is not None
                row.closing_minute = row.closing_minute + 1

    _in_threads(_THREADS, add_one)
    with store.reading() as unit:
        row = unit.session.get(Bar, bar)
        assert row is not None
        assert row.closing_minute == 300 + _THREADS * _TIMES


def _touch_often(url: str, bar: int, times: int) -> None:
    store = Store(url)
    for _time in range(times):
        with store.writing() as unit:
            book = unit.bar(bar)
            book.hold()
            book.touched()
            book.next_number("entry")
    store.close()


def test_processes_do_not_lose_each_others_changes(store: Store, store_url: str) -> None:
    bar = _open_bar(store)
    context = multiprocessing.get_context("spawn")
    processes = [context.Process(target=_touch_often, args=(store_url, bar, 25)) for _ in range(3)]
    for process in processes:
        process.start()
    for process in processes:
        process.join(60)
    assert [process.exitcode for process in processes] == [0, 0, 0]
    with store.reading() as unit:
        row = unit.session.get(Bar, bar)
        assert row is not None
        assert row.revision == 75
    with store.writing() as unit:
        assert unit.bar(bar).next_number("entry") == 76


def test_readers_are_not_held_up_by_a_writer(store: Store) -> None:
    bar = _open_bar(store)
    with store.writing() as unit:
        unit.bar(bar).touched()
        done = threading.Event()

        def read() -> None:
            with store.reading() as other:
                row = other.session.get(Bar, bar)
                assert row is not None
                assert row.revision == 0
            done.set()

        thread = threading.Thread(target=read)
        thread.start()
        assert done.wait(10), "a reader waited for the writer"
        thread.join()
