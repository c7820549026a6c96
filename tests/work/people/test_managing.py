"""Tests that what takes a manager or the owner is refused by the use case itself."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from fractions import Fraction

import pytest

from bot.work.context import Context, Role
from bot.work.errors import BadValueError, NotAllowedError, NotThereError
from bot.work.formulas import merging
from bot.work.liquids import strength
from bot.work.people import bar_deletion, people
from bot.work.safety import grade
from bot.work.spray import sprayers
from bot.work.trials import trial_life
from tests.house import House
from tests.work.acting import acting

_MANAGERS: dict[str, Callable[[Context], object]] = {
    "food grade": lambda context: grade.confirm(context, 1, True),
    "strength": lambda context: strength.set_of(context, 1, Fraction(40)),
    "merge": lambda context: merging.merge(context, 1, 2),
    "sprayer": lambda context: sprayers.use(context, 1, None),
    "promote": lambda context: trial_life.promote(context, 1, "A"),
    "team chat": lambda context: people.use_as_team_room(context, "Team", None),
}
_OWNERS: dict[str, Callable[[Context], object]] = {
    "delete": lambda context: bar_deletion.begin(context, context.bar.name),
    "keep": bar_deletion.keep,
}


@pytest.mark.parametrize("what", _MANAGERS)
def test_a_member_is_refused_what_takes_a_manager(house: House, what: str) -> None:
    house.open_bar()
    house.joins("Ben")
    with acting(house, "Ben") as context, pytest.raises(NotAllowedError) as refused:
        _MANAGERS[what](context)
    assert refused.value.needed == Role.MANAGER


@pytest.mark.parametrize("what", _OWNERS)
def test_a_manager_is_refused_what_takes_the_owner(house: House, what: str) -> None:
    house.open_bar()
    house.joins("Cleo", manager=True)
    with acting(house, "Cleo") as context, pytest.raises(NotAllowedError) as refused:
        _OWNERS[what](context)
    assert refused.value.needed == Role.OWNER


def test_a_manager_is_let_through_to_the_thing_itself(house: House) -> None:
    house.open_bar()
    house.joins("Cleo", manager=True)
    with acting(house, "Cleo") as context:
        for what in ("food grade", "strength", "merge", "sprayer", "promote"):
            with pytest.raises(NotThereError):  # an empty bar has none of them
                _MANAGERS[what](context)


def test_a_bar_is_deleted_after_its_days_and_only_by_its_name(house: House) -> None:
    house.open_bar()
    with acting(house) as context:
        with pytest.raises(BadValueError):
            bar_deletion.begin(context, "The Copper")
        assert not bar_deletion.keep(context)
        ends = bar_deletion.begin(context, " the copper  GULL ")
        assert ends == context.now + timedelta(days=bar_deletion.GRACE_DAYS)
        assert bar_deletion.keep(context)
        ends = bar_deletion.begin(context, "The Copper Gull")
    assert bar_deletion.purge(house.store, ends - timedelta(seconds=1)) == 0
    assert bar_deletion.purge(house.store, ends) == 1
    assert bar_deletion.purge(house.store, ends) == 0
