"""Tests of every command: it is found, it is understood, it answers, and its buttons work."""

from __future__ import annotations

import re

import pytest

from bot.channels.rendering import html_parts, plain_lines
from bot.chat.dialogue.registry import all_commands, command_at_start
from bot.chat.grammar import parser, tables
from bot.chat.reply.message import Button, Reply
from tests.api.markup import parse_html
from tests.buttons import dead, problems
from tests.house import House

_COMMANDS = all_commands()
_LOST = "I'm not sure what you want. One of these?"

# A bar with data for every example of every command.
_BOOK = (
    "new formula Grapefruit mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\nneutral spirit 96 % 62 ml\n"
    "kind aroma mist\nreplaces grapefruit",
    "new formula Lemon cordial\nlemon juice 400 ml\nsugar 400 g\nkind cordial",
    "price grapefruit oil 10 ml 7.90",
    "price oranges 0.60 each, 5 garnishes each",
    "waste 6 oranges mouldy",
    *["batch grapefruit mist to 400 ml"] * 12,
    "lot 12 grapefruit oil A2231",
    "peeled 12 oranges",
    "event 120 guests today, 2 drinks each, grapefruit mist",
)


def _full_bar(house: House) -> None:
    house.open_bar(said=_BOOK)


def _rules() -> set[str]:
    return set(re.findall(r"^(\w+)_cmd:", tables.grammar(), re.MULTILINE))


def test_every_command_has_a_grammar_rule_and_every_rule_a_command() -> None:
    assert _rules() == {command.rule.removesuffix("_cmd") for command in _COMMANDS.values()}


def test_every_slot_that_is_asked_has_a_rule_that_reads_its_answer() -> None:
    for command in _COMMANDS.values():
        for slot in command.slots:
            assert parser.can_read(slot.reads_by), (command.name, slot.name)


def test_what_stands_in_the_menu_says_what_it_does_and_how_it_is_said() -> None:
    menu = [command for command in _COMMANDS.values() if command.menu]
    for command in menu:
        # Telegram: a command of up to 32 small letters, a description of up to 256 characters.
        assert re.fullmatch(r"[a-z_]{1,32}", command.name), command.name
        assert 3 <= len(command.summary) <= 60, command.name
        assert command.summary[0].islower() or not command.summary[0].isalpha(), command.name
        assert not command.summary.endswith("."), command.name


def test_no_two_commands_begin_with_the_same_words() -> None:
    seen: dict[str, str] = {}
    for command in _COMMANDS.values():
        for words in (command.name, *command.words):
            assert words == words.casefold()
            assert seen.setdefault(words, command.name) == command.name, words
            found = command_at_start(words)
            assert found is not None
            assert found[0] is command, words


def test_every_example_leads_somewhere(house: House) -> None:
    _full_bar(house)
    ana = house.person("Ana")
    wrong = [
        (example, why)
        for command in _COMMANDS.values()
        for example in command.examples
        if (why := dead(house, ana, None, Button("example", example)))
    ]
    assert wrong == []


def test_what_cannot_be_said_alone_or_asked_for_shows_an_example() -> None:
    for command in _COMMANDS.values():
        if command.menu and not command.slots:
            assert command.examples or _says_something_alone(command.rule), command.name


def _says_something_alone(rule: str) -> bool:
    return "$END" in parser._lark().parse_interactive(start=rule).accepts()  # type: ignore[no-untyped-call]


_OTHERS = ("owner of an empty bar", "member")


@pytest.mark.parametrize(
    "who", ["owner", "stranger", *(pytest.param(one, marks=pytest.mark.long) for one in _OTHERS)]
)
def test_every_command_answers_nothing_said_usefully(house: House, who: str) -> None:
    if who == "owner of an empty bar":
        person = house.open_bar()
    else:
        _full_bar(house)
        person = {"owner": house.person("Ana"), "stranger": house.person("Zoe")}.get(who) or house.joins(
            "Ben"
        )
    wrong: list[str] = []
    for name in _COMMANDS:
        replies = person.says(f"/{name}")
        assert replies, name
        for reply in replies:
            assert reply.first_line.strip(), name
            assert reply.first_line != _LOST, name
        wrong += problems(house, person, None, replies[-1])
    assert wrong == []


def test_a_member_is_shown_no_button_that_only_a_manager_may_tap(house: House) -> None:
    _full_bar(house)
    ben = house.joins("Ben")
    wrong: list[str] = []
    for line in (
        "formula grapefruit mist",
        "scale grapefruit mist x2",
        "cost grapefruit mist x2",
        "batch 1",
        "batch grapefruit mist x1",
        "price oranges",
        "price sugar 1 kg 2",
        "waste 3 limes",
        "team",
        "bar",
        "scale negroni x2",
    ):
        for reply in ben.says(line):
            wrong += problems(house, ben, None, reply)
    assert wrong == []


def test_nonsense_after_a_command_is_answered_in_one_sentence(house: House) -> None:
    _full_bar(house)
    ana = house.person("Ana")
    for name in _COMMANDS:
        (reply,) = ana.says(f"{name} §§ 17 17 ° ~~ %")
        assert reply.first_line.strip(), name
        assert len(reply.first_line) <= 250, reply.first_line
        ana.says("cancel")


_SHARP = "<b>&amp;</b> & <i"


def test_names_with_signs_of_html_are_shown_as_they_are(house: House) -> None:
    ana = house.open_bar(name=f"Bar {_SHARP}")
    said = [
        f"new formula Mist {_SHARP}\noil {_SHARP} 10 ml\nneutral spirit 96 % 60 ml\nkind aroma mist",
        "formulas",
        "formula #1",
        "scale #1 x2",
        f"bar name Inn {_SHARP}",
        "cost #1 x2",
        f"price oil {_SHARP} 10 ml 7.90",
        "batch #1 x2",
        f"lot 1 oil {_SHARP} L<1>&",
        f"check 1 hazy, {_SHARP}",
        "batch 1",
        "batches",
        "bar",
        "team",
        "start",
        f"waste new 3 {_SHARP}",
        f"bar waste reasons {_SHARP}, other",
        "waste",
    ]
    shown = 0
    for line in said:
        for reply in ana.says(line):
            shown += _shown_as_it_is(reply)
    house.clock.turn(hours=24)
    for one in house.reminders():
        shown += _shown_as_it_is(one.reply)
    assert shown >= 10


def _shown_as_it_is(reply: Reply) -> int:
    """Check that Telegram would show the exact text of the reply; return its number of special names."""
    parts = [parse_html(part) for part in html_parts(reply)]
    assert not [warning for part in parts for warning in part.warnings]
    read = re.sub(r"\s+", "", "".join(part.text for part in parts))
    plain = re.sub(r"\s+", "", "".join(plain_lines(reply)))
    assert read == plain
    return plain.count(_SHARP.replace(" ", ""))
