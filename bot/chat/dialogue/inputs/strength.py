"""Parse strengths: % vol, or US proof in a bar with US rules."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.slots import Given
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Level
from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import Button, Reply, reply
from bot.chat.reply.units import show_percent
from bot.trade.liquids import strength
from bot.trade.safety.jurisdiction import Jurisdiction

_SAME_PROOF = 0.2  # the difference between twice the % vol at 20 °C and at 60 °F; labels have whole numbers


def percent_of(turn: Turn, level: Level) -> Fraction:
    """Return a typed strength in % vol at 20 °C; ask if proof could mean another country's scale."""
    top = 200 if level.proof else 100
    if not 0 <= level.number <= top:
        unit = _("proof") if level.proof else _("% vol")
        first = _("A strength from 0 to {top} {unit}, please.").format(top=show_number(top), unit=unit)
        raise Say(reply(first, _("A volume needs its unit, such as 750 ml.")))
    if level.bare:
        raise Say(_which_scale(turn, level))
    if not level.proof:
        return level.number
    # 27 CFR 5.1: twice the % by volume, at 60 °F; at 20 °C less than 0.1 more, which no label shows.
    percent = level.number / 2
    if turn.context.bar.jurisdiction != Jurisdiction.US:
        shown = show_number(percent, 1)
        typed = _typed(turn, level)
        raise Say(
            reply(
                _("{proof} US proof is {percent} % vol.").format(
                    proof=show_number(level.number), percent=shown
                ),
                _("Proof differs between countries, so this bar counts in % vol."),
                buttons=(
                    (
                        Button(
                            _("Use {percent} % vol").format(percent=shown),
                            turn.line_with(typed, f"{shown} %"),
                        ),
                    ),
                ),
            )
        )
    return percent


def _which_scale(turn: Turn, level: Level) -> Reply:
    """Ask what a bare number after a spirit's name means."""
    import re  # noqa: PLC0415 - only for a number without its mark

    number = show_number(level.number, 3)
    scales = ["%"] if turn.context.bar.jurisdiction != Jurisdiction.US else ["%", _("proof")]
    typed = re.compile(rf"(?<![\d.,]){re.escape(number)}(?![\d.,]|\s*[^\W\d])")
    lines = [(f"{number} {scale}", typed.sub(f"{number} {scale}", turn.line)) for scale in scales]
    return reply(
        _("{number} what? Tap it, or write the strength with its mark.").format(number=number),
        buttons=(tuple(Button(label, line) for label, line in lines),),
    )


def _typed(turn: Turn, level: Level) -> str:
    """Return the words of a typed proof, as far as found."""
    import re  # noqa: PLC0415 - only for a proof outside the United States

    for found in re.finditer(r"[\d.,]+\s*proof", turn.line, re.IGNORECASE):
        if show_number(level.number, 3) in found.group() or str(level.number) in found.group():
            return found.group()
    return turn.line


def accept_level(turn: Turn, given: Given, value: Level) -> Fraction:
    """Parse a strength for a slot."""
    return percent_of(turn, value)


def ask_strength(turn: Turn, name: str, formula: str) -> Reply:
    """Ask for the strength of a spirit; members who may set it get the usual answers to tap."""
    levels = (96, 70, 40) if turn.context.role.manages else ()
    buttons = (tuple(Button(f"{level} %", f"strength {name} {level} %") for level in levels),)
    return reply(
        _("How strong is {name}?").format(name=name),
        _("Say it once, and I can work out {formula}: strength {name} 96").format(name=name, formula=formula),
        buttons=buttons if levels else (),
    )


def show_strength(turn: Turn, percent: float) -> str:
    """Write a strength in % vol, with US proof in a bar with US rules."""
    text = show_percent(percent)
    if turn.context.bar.jurisdiction == Jurisdiction.US:
        label = 2 * round(percent, 1)
        exact = strength.us_proof(percent)
        proof = Fraction(str(round(label if abs(label - exact) < _SAME_PROOF else exact, 1)))
        text += _(" ({proof} proof)").format(proof=show_number(proof, 1))
    return text
