"""Tests that exact numbers, instants and days survive a round trip in both databases."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta, timezone
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import bindparam, select
from sqlalchemy.exc import StatementError
from sqlalchemy.types import TypeEngine

from storage.store import Store
from storage.types import Day, Exact, Instant, exact_text

_OFFSETS = st.integers(-14 * 60, 14 * 60).map(lambda minutes: timezone(timedelta(minutes=minutes)))
# The store is opened once for all examples of a test: nothing is written to it.
_SHARED = settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)


def _there_and_back(store: Store, value: Any, kind: TypeEngine[Any]) -> Any:
    with store.reading() as unit:
        return unit.session.scalar(select(bindparam("value", value, type_=kind)))


@_SHARED
@given(value=st.fractions(max_denominator=10**9))
def test_exact_amounts(store: Store, value: Fraction) -> None:
    assert _there_and_back(store, value, Exact()) == value


@_SHARED
@given(
    value=st.datetimes(datetime(1970, 1, 2), datetime(9998, 1, 1), timezones=_OFFSETS)  # noqa: DTZ001 - the bounds are naive
)
def test_instants_keep_their_second_and_come_back_in_utc(store: Store, value: datetime) -> None:
    found = _there_and_back(store, value, Instant())
    assert found == value.replace(microsecond=0)
    assert found.tzinfo is UTC


@_SHARED
@given(value=st.dates())
def test_days(store: Store, value: date) -> None:
    assert _there_and_back(store, value, Day()) == value


@given(st.dates(), st.dates())
def test_days_sort_as_text(one: date, other: date) -> None:
    texts = sorted(day.isoformat() for day in (one, other))
    assert [date.fromisoformat(text) for text in texts] == sorted((one, other))


def test_nothing_stays_nothing(store: Store) -> None:
    for kind in (Exact(), Instant(), Day()):
        assert _there_and_back(store, None, kind) is None


def test_an_instant_without_a_zone_is_refused(store: Store) -> None:
    with pytest.raises(StatementError, match="needs a time zone"):
        _there_and_back(store, datetime(2026, 11, 25, 18, 0), Instant())  # noqa: DTZ001 - the point


def test_exact_text_is_a_decimal_where_one_ends() -> None:
    assert exact_text(Fraction("36.5")) == "36.5"
    assert exact_text(Fraction(1, 3)) == "1/3"
    assert exact_text(Fraction(-7, 8)) == "-0.875"
    assert exact_text(Fraction(10**12)) == "1000000000000"
    assert exact_text(Fraction(0)) == "0"
    assert exact_text(Fraction(1, 2**30)) == "1/1073741824"


@given(st.fractions())
def test_exact_text_is_exact_whatever_the_digits(value: Fraction) -> None:
    assert Fraction(exact_text(value)) == value


def test_an_amount_of_more_digits_than_a_column_holds_is_kept_as_near_as_no_scale_can_tell(
    store: Store,
) -> None:
    value = Fraction(10**60 + 1, 10**59 + 7)
    found = _there_and_back(store, value, Exact())
    assert len(exact_text(found)) <= 80
    assert abs(found - value) < Fraction(1, 10**37)
