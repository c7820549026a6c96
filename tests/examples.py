"""The number of examples for property tests: some in the short part, many in the long one."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

_SHORT, _LONG = "short", "long"
# Enough to find an error within a few runs, and few enough to run all of them each time. An example may take
# two seconds, because the machine may be busy with other tests.
settings.register_profile(_SHORT, max_examples=20, deadline=2000)
settings.register_profile(_LONG, max_examples=200, deadline=2000)
_TIMES_LONG = 10


def choose(*, long: bool) -> None:
    """Choose the part to run."""
    settings.load_profile(_LONG if long else _SHORT)


def in_long_part() -> bool:
    """Whether the long part is running."""
    return settings.get_current_profile_name() == _LONG


def examples(count: int, *suppressed: HealthCheck) -> settings:
    """Test a property with this many examples, ten times as many in the long part."""
    if in_long_part():
        count *= _TIMES_LONG
    return settings(max_examples=count, deadline=None, suppress_health_check=suppressed)
