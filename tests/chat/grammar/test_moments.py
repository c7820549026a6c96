"""Tests of the time that a text begins or ends with."""

from __future__ import annotations

from fractions import Fraction

import pytest

from bot.chat.grammar.lexer import Vocabulary
from bot.chat.grammar.moments import split_moment
from bot.chat.grammar.syntax import Day
from bot.chat.i18n.language import Tongue, speaking


@pytest.mark.parametrize(
    ("text", "rest", "said"),
    [
        ("tomorrow 16:00 order limes", "order limes", {"minute": 960}),
        ("order limes tomorrow at 4pm", "order limes", {"minute": 960}),
        ("on Friday to check batch 12", "check batch 12", {}),
        ("every Monday 15:00 count fruit", "count fruit", {"days": 1, "minute": 900}),
        ("count fruit every day at 11:00", "count fruit", {"days": 127, "minute": 660}),
        ("call the oil merchant in 2 hours", "call the oil merchant", {"delay": Fraction(2)}),
        ("for tomorrow: sprayer two drips", "sprayer two drips", {}),
        ("order 4 cases of limes", "order 4 cases of limes", {}),
        ("order limes tomorrow morning", "order limes", {"part": "morning"}),
        ("order limes at 4 in the afternoon", "order limes", {"minute": 960}),
        ("at 4 in the afternoon of the delivery", "the delivery", {"minute": 960}),
        ("order limes on 24/12", "order limes", {"day": Day("--12-24", words="on 24/12")}),
        ("split the batch 1/2", "split the batch 1/2", {"day": None}),
        ("1/2 case of limes", "1/2 case of limes", {"day": None}),
        ("in two weeks order limes", "order limes", {"day": None, "delay": Fraction(336)}),
        ("in 1/2 hour order limes", "order limes", {"day": None, "delay": Fraction(1, 2)}),
        ("3/4 order limes", "order limes", {"day": Day("--04-03 or --03-04", words="3/4")}),
        ("order limes on 3/4", "order limes", {"day": Day("--04-03 or --03-04", words="3/4")}),
        (
            "order limes 3/4 at 4",
            "order limes",
            {"day": Day("--04-03 or --03-04", words="3/4"), "minute": 240},
        ),
        ("on mondays at 3 count the fruit", "count the fruit", {"days": 1, "minute": 180, "sure": False}),
        ("count the fruit on mondays and fridays", "count the fruit", {"days": 0b10001}),
        ("every monday, thursday at 11:00 count", "count", {"days": 0b1001, "minute": 660}),
        ("monday order limes", "order limes", {"days": 0, "day": Day("-W-1", words="monday")}),
        ("tomorrow at noon to call", "call", {"minute": 720, "sure": True}),
        ("at midnight to lock up", "lock up", {"minute": 0, "sure": True}),
        ("half past nine order", "order", {"minute": 570, "sure": False}),
        ("at 9.30 order", "order", {"minute": 570, "sure": False}),
        ("04:30 order", "order", {"minute": 270, "sure": True}),
        ("at 12 at night order", "order", {"minute": 0}),
        ("tonight to lock up", "lock up", {"minute": None, "part": "evening"}),
        ("tomorrow night at 9 lock up", "lock up", {"minute": 1260, "sure": True}),
        ("thursday next week pay", "pay", {"day": Day("-W-4 next week", words="thursday next week")}),
        ("next thursday week pay", "pay", {"day": Day("-W-4 week after", words="next thursday week")}),
    ],
)
def test_a_time_before_or_after_the_words(text: str, rest: str, said: dict[str, object]) -> None:
    moment, words = split_moment(text, Vocabulary("en"))
    assert words == rest
    for name, value in said.items():
        assert getattr(moment, name) == value


@pytest.mark.parametrize(
    ("text", "rest", "minute", "days"),
    [
        ("mañana a las 16:00 pedir limas", "pedir limas", 960, 0),
        ("los lunes a las 15:00 contar la fruta", "contar la fruta", 900, 1),
        ("los sábados a las 11:00 pedir limas", "pedir limas", 660, 0b100000),
        ("los lunes y los jueves a las 11 h contar", "contar", 660, 0b1001),
        ("pedir limas mañana a las 4 de la tarde", "pedir limas", 960, 0),
        ("pasado mañana al mediodía llamar", "llamar", 720, 0),
        ("a las ocho y media llamar", "llamar", 510, 0),
        ("mañana a las nueve menos cuarto llamar", "llamar", 525, 0),
        ("a las 12 de la noche cerrar", "cerrar", 0, 0),
        ("el jueves de la semana que viene a las 16:00 pagar", "pagar", 960, 0),
    ],
)
def test_a_time_in_spanish(text: str, rest: str, minute: int, days: int) -> None:
    with speaking(Tongue("es", "es_ES")):
        moment, words = split_moment(text, Vocabulary("es"))
    assert (words, moment.minute, moment.days) == (rest, minute, days)
