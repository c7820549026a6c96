"""Tests that every outside check agrees with its source."""

from __future__ import annotations

import pytest

from tests.outside import all_checks
from tests.outside.check import Check


@pytest.mark.parametrize("check", list(all_checks()), ids=lambda check: f"{check.rule}: {check.what}")
def test_agrees_with_its_source(check: Check) -> None:
    got = check.got()
    assert check.passes(got), f"{check.source}: expected {check.value} {check.unit}, got {got}"
