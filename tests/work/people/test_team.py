"""Tests of who may do what in a team. The use cases refuse by themselves, whatever a channel has checked."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta

import pytest

from bot.work.context import Context, Role
from bot.work.errors import BadValueError, NotAllowedError, NotThereError, TooManyTriesError
from bot.work.people import bars, invites, people, team
from tests.house import CHANNEL, House, text
from tests.work.acting import acting


def _staff(house: House) -> None:
    """Ana owns the bar, Cleo and Dan manage it, Ben and Eve are members."""
    house.open_bar("Ana")
    for name in ("Cleo", "Dan"):
        house.joins(name, manager=True)
    for name in ("Ben", "Eve"):
        house.joins(name)


def _number(context: Context, name: str) -> int:
    return next(one.person_id for one in team.team(context) if one.name == name)


def _roles(house: House) -> dict[str, Role]:
    with acting(house) as context:
        return {one.name: one.role for one in team.team(context)}


@pytest.mark.parametrize(
    ("who", "whom", "needs"),
    [
        ("Ben", "Eve", Role.MANAGER),
        ("Ben", "Cleo", Role.MANAGER),
        ("Cleo", "Dan", Role.OWNER),
        ("Cleo", "Ana", Role.OWNER),
        ("Ana", "Ana", Role.OWNER),
    ],
)
def test_nobody_removes_their_equal_or_better(house: House, who: str, whom: str, needs: Role) -> None:
    _staff(house)
    with acting(house, who) as context, pytest.raises(NotAllowedError) as refused:
        team.remove(context, _number(context, whom))
    assert refused.value.needed is needs
    assert len(_roles(house)) == 5


def test_a_manager_removes_a_member_and_the_owner_a_manager(house: House) -> None:
    _staff(house)
    with acting(house, "Cleo") as context:
        assert team.remove(context, _number(context, "Ben")) == "Ben"
    with acting(house) as context:
        assert team.remove(context, _number(context, "Dan")) == "Dan"
    assert _roles(house) == {"Ana": Role.OWNER, "Cleo": Role.MANAGER, "Eve": Role.MEMBER}
    with acting(house) as context:
        assert {one.name for one in team.gone(context)} == {"Ben", "Dan"}
        with pytest.raises(NotThereError):
            team.remove(context, team.gone(context)[0].person_id)


@pytest.mark.parametrize("who", ["Cleo", "Ben"])
def test_only_the_owner_gives_roles_and_the_bar(house: House, who: str) -> None:
    _staff(house)
    with acting(house, who) as context:
        change: Callable[[], str]
        for change in (
            lambda: team.set_role(context, _number(context, "Eve"), Role.MANAGER),
            lambda: team.hand_over(context, _number(context, "Eve")),
        ):
            with pytest.raises(NotAllowedError) as refused:
                change()
            assert refused.value.needed is Role.OWNER
    assert _roles(house)["Eve"] is Role.MEMBER


def test_the_owner_gives_a_role_and_keeps_their_own(house: House) -> None:
    _staff(house)
    with acting(house) as context:
        team.set_role(context, _number(context, "Ben"), Role.MANAGER)
        with pytest.raises(NotThereError):
            team.set_role(context, context.person_id, Role.MEMBER)
        with pytest.raises(NotThereError):
            team.hand_over(context, context.person_id)
    assert _roles(house)["Ben"] is Role.MANAGER
    assert _roles(house)["Ana"] is Role.OWNER


def test_after_handing_over_the_former_owner_manages_and_may_leave(house: House) -> None:
    _staff(house)
    with acting(house) as context:
        with pytest.raises(NotAllowedError):
            team.leave(context)
        team.hand_over(context, _number(context, "Cleo"))
        assert context.role is Role.MANAGER
    assert (_roles(house)["Cleo"], _roles(house)["Ana"]) == (Role.OWNER, Role.MANAGER)
    with acting(house) as context:
        team.leave(context)
    with acting(house, "Cleo") as context:
        assert "Ana" not in {one.name for one in team.team(context)}


@pytest.mark.parametrize(
    ("who", "whom", "needs"),
    [("Ben", "Eve", Role.MANAGER), ("Cleo", "Dan", Role.OWNER), ("Ana", "Ana", Role.OWNER)],
)
def test_who_may_not_forget_another(house: House, who: str, whom: str, needs: Role) -> None:
    _staff(house)
    with acting(house, who) as context, pytest.raises(NotAllowedError) as refused:
        team.forget(context, _number(context, whom))
    assert refused.value.needed is needs


@pytest.mark.parametrize(("who", "whom"), [("Ben", "Ben"), ("Dan", "Dan"), ("Cleo", "Ben"), ("Ana", "Dan")])
def test_who_may_forget_whom(house: House, who: str, whom: str) -> None:
    _staff(house)
    with acting(house, who) as context:
        assert team.forget(context, _number(context, whom)) == whom
    assert whom not in _roles(house)


def test_a_member_does_not_change_the_bar(house: House) -> None:
    _staff(house)
    with acting(house, "Ben") as context:
        for values in ({"name": "Ben's"}, {"currency": "USD"}, {"quiet_from": 60}):
            with pytest.raises(NotAllowedError) as refused:
                bars.change(context, **values)
            assert refused.value.needed is Role.MANAGER
    with acting(house, "Cleo") as context:
        assert bars.change(context, name="The Grey Gull").name == "The Grey Gull"


@pytest.mark.parametrize(
    "values",
    [
        {"zone": "Europe/Nowhere"},
        {"currency": "XYZ"},
        {"currency": "XAU"},
        {"units": "cubits"},
        {"service_days": 0},
    ],
)
def test_a_setting_that_cannot_be_is_refused(house: House, values: dict[str, str | int]) -> None:
    house.open_bar()
    with acting(house) as context, pytest.raises(BadValueError):
        bars.change(context, **values)


# -- joining ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("who", "role", "needs"),
    [
        ("Ben", Role.MEMBER, Role.MANAGER),
        ("Ben", Role.MANAGER, Role.OWNER),
        ("Cleo", Role.MANAGER, Role.OWNER),
    ],
)
def test_a_code_gives_no_more_than_its_maker_may(house: House, who: str, role: Role, needs: Role) -> None:
    _staff(house)
    with acting(house, who) as context, pytest.raises(NotAllowedError) as refused:
        invites.invite(context, role)
    assert refused.value.needed is needs


@pytest.mark.parametrize(("uses", "days"), [(0, 7), (51, 7), (1, 0), (1, 91)])
def test_a_code_for_too_many_or_too_long_is_refused(house: House, uses: int, days: int) -> None:
    house.open_bar()
    with acting(house) as context, pytest.raises(BadValueError):
        invites.invite(context, uses=uses, days=days)


@pytest.mark.parametrize(("uses", "days"), [(1, 1), (50, 90)])
def test_a_code_for_few_or_many(house: House, uses: int, days: int) -> None:
    house.open_bar()
    with acting(house) as context:
        made = invites.invite(context, uses=uses, days=days)
        assert (made.uses, made.until) == (uses, context.now + timedelta(days=days))


def _joins(house: House, name: str, code: str) -> str:
    return text(house.person(name).says(f"join {code}"))


def test_a_code_for_two_lets_two_in_and_no_third(house: House) -> None:
    house.open_bar()
    with acting(house) as context:
        code = invites.invite(context, uses=2).code
    assert "Welcome" in _joins(house, "Ben", code)
    _joins(house, "Ben", code)  # already a member: this is no use
    assert "Welcome" in _joins(house, "Cleo", code)
    assert "does not work" in _joins(house, "Dan", code)


def test_coming_back_by_a_code_uses_it_up(house: House) -> None:
    house.open_bar()
    with acting(house) as context:
        code = invites.invite(context, uses=2).code
    _joins(house, "Ben", code)
    with acting(house, "Ben") as context:
        team.leave(context)
    assert "Welcome" in _joins(house, "Ben", code)
    assert "does not work" in _joins(house, "Cleo", code)


def test_a_code_ends_with_its_last_day(house: House) -> None:
    house.open_bar()
    with acting(house) as context:
        code = invites.invite(context, uses=2, days=1).code
    house.clock.turn(hours=23, minutes=59)
    assert "Welcome" in _joins(house, "Ben", code)
    house.clock.turn(minutes=1)
    assert "does not work" in _joins(house, "Cleo", code)


def test_a_right_code_forgives_the_wrong_ones_before_it(house: House) -> None:
    house.open_bar()
    with acting(house) as context:
        code = invites.invite(context).code
    for _try in range(invites.TRIES - 1):
        _joins(house, "Ben", "1-1-ABCDEFGHJK")
    assert "Welcome" in _joins(house, "Ben", code)
    for _try in range(invites.TRIES - 1):
        assert "does not work" in _joins(house, "Ben", "1-1-ABCDEFGHJK")


def test_after_five_wrong_codes_one_waits_an_hour(house: House) -> None:
    house.open_bar()
    with acting(house) as context:
        code = invites.invite(context).code
    for _try in range(invites.TRIES):
        assert "does not work" in _joins(house, "Ben", "1-1-ABCDEFGHJK")
    house.clock.turn(minutes=59)
    with house.store.writing() as unit:
        ben = people.find(unit, CHANNEL, "ben", "private ben", True)
        with pytest.raises(TooManyTriesError) as refused:
            invites.join(unit, ben, code, "Ben", True, house.clock.now())
        assert refused.value.until == house.clock.now() + timedelta(minutes=1)
    house.clock.turn(minutes=1)
    assert "Welcome" in _joins(house, "Ben", code)
