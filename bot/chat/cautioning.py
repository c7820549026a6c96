"""Cautions at the step where they matter: the weightiest in the reply, the rest one tap away."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.language import _
from bot.chat.message import Block, Button
from bot.chat.message import Caution as CautionBlock
from bot.chat.talk import Talk
from bot.trade.caution import Caution, Step
from bot.trade.cautions import cautions_for
from bot.trade.jurisdiction import Jurisdiction
from bot.work.formulas import FormulaView
from bot.work.scaling import ScaleAnswer, strength_of


def cautions_at(
    talk: Talk, view: FormulaView, step: Step, answer: ScaleAnswer | None = None
) -> list[Caution]:
    """Return the cautions for a formula at a step of the work, weightiest first."""
    strength = answer.strength if answer is not None else strength_of(view)
    volume = float(answer.finished_ml) if answer is not None and answer.finished_ml else None
    return cautions_for(
        step,
        view.kinds,
        None if strength is None else strength.strength_percent,
        Jurisdiction(talk.desk.bar.jurisdiction),
        view.preparation,
        volume_ml=volume,
    )


def caution_blocks(
    talk: Talk, view: FormulaView, step: Step, answer: ScaleAnswer | None = None
) -> Sequence[Block]:
    """Return the one caution to show with an answer; cautions_button leads to the others."""
    found = cautions_at(talk, view, step, answer)
    if not found:
        return ()
    return (CautionBlock(_(found[0].text)),)


def cautions_button(view: FormulaView) -> Button:
    """Return the button that shows every caution for a formula."""
    return Button(_("All cautions"), f"cautions #{view.id}")
