"""Cautions at the step where they matter: the most important one in the reply, the rest one tap away."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _
from bot.chat.reply.message import Block, Button
from bot.chat.reply.message import Caution as CautionBlock
from bot.trade.formulas.kinds import Preparation
from bot.trade.safety.caution import Caution, Step
from bot.trade.safety.cautions import cautions_for
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.batches.batches import BatchView
from bot.work.context import Context
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.mixture import mix_of, mix_of_batch
from bot.work.formulas.scaling import ScaleAnswer
from bot.work.safety import grade
from bot.work.safety.contents import contents_of


def cautions_at(
    turn: Turn, view: FormulaView, step: Step, answer: ScaleAnswer | None = None
) -> list[Caution]:
    """Return the cautions for a formula at a step of the work, most important first."""
    volume = float(answer.finished_ml) if answer is not None and answer.finished_ml else None
    contents = contents_of(mix_of(view if answer is None else answer.measured), volume)
    return cautions_for(step, contents, Jurisdiction(turn.context.bar.jurisdiction), view.preparation)


def caution_blocks(
    turn: Turn, view: FormulaView, step: Step, answer: ScaleAnswer | None = None
) -> Sequence[Block]:
    """Return the caution to show with an answer, or all of rank 0; cautions_button leads to the others."""
    found = cautions_at(turn, view, step, answer)
    if step is Step.ADDING and not grade.open_in_formula(view):
        # Once the grade of every ingredient is confirmed, another caution matters more.
        found = [one for one in found if one.id != "food-grade"]
    return _first(found, step)


def batch_caution(context: Context, batch: BatchView, step: Step) -> Sequence[Block]:
    """Return the one caution for a batch at a step, by its ingredients."""
    contents = contents_of(mix_of_batch(batch.frozen["lines"]), float(batch.total_ml))
    preparation = Preparation(batch.frozen["preparation"])
    found = cautions_for(step, contents, Jurisdiction(context.bar.jurisdiction), preparation)
    return _first(found, step)


def _first(found: Sequence[Caution], step: Step) -> Sequence[Block]:
    gravest = [one for one in found if one.rank_at(step) == 0]
    return tuple(CautionBlock(_(one.text)) for one in gravest or found[:1])


def cautions_button(view: FormulaView) -> Button:
    """Return the button that shows every caution for a formula."""
    return Button(_("All cautions"), f"cautions #{view.id}")
