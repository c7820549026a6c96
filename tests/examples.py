"""The number of examples for property tests: some in the short part, many in the long one."""

from __future__ import annotations

from hypothesis import HealthCheck, Phase, settings

_SHORT, _LONG = "short", "long"
# Enough to find an error within a few runs, and few enough to run all of them each time. An example may take
# two seconds, because the machine may be busy with other tests.
settings.register_profile(_SHORT, max_examples=20, deadline=2000)
settings.register_profile(_LONG, max_examples=80, deadline=2000)
_TIMES_LONG = 4


def choose(*, long: bool) -> None:
    """Choose the part to run."""
    settings.load_profile(_LONG if long else _SHORT)


def in_long_part() -> bool:
    """Whether the long part is running."""
    return settings.get_current_profile_name() == _LONG


def examples(count: int, *suppressed: HealthCheck) -> settings:
    """Try a slow property with this many examples, four times as many in the long part.

    Only the long part looks for the smallest failing example, which may take minutes.
    """
    phases = [Phase.explicit, Phase.reuse, Phase.generate]
    if in_long_part():
        count *= _TIMES_LONG
        phases.append(Phase.shrink)
    return settings(max_examples=count, deadline=None, phases=phases, suppress_health_check=suppressed)
