"""Show a trial: what was made, the scores side by side, and the next steps."""

from __future__ import annotations

from bot.chat.dialogue.turn import Turn
from bot.chat.features.trials.trial_words import amounts, result_lines, score_grid, title
from bot.chat.features.trials.triangle_words import triangle_card
from bot.chat.i18n.language import _, ngettext
from bot.chat.reply.message import Block, Button, Reply, Text
from bot.work.trials import trials
from bot.work.trials.trials import TrialState, TrialView


def ways(turn: Turn, trial: TrialView) -> tuple[tuple[Button, ...], ...]:
    """Return the buttons for the next steps of a trial."""
    number = trial.id
    if trial.state is not TrialState.OPEN:
        return ((Button(_("Formula"), f"formula #{trial.formula.id}"),),)
    first, second = [], []
    if not _saw(turn, trial):
        first.append(Button(_("Taste"), f"taste #{number}"))
    if not (trial.hidden and trial.begun):
        first.append(Button(_("Another variant"), f"trial add {number}"))
    if any(one.batch_id is None for one in trial.variants):
        second.append(Button(_("Log the batches"), f"trial made {number}"))
    if trial.hidden:
        second.append(Button(_("Which is which?"), f"trial key {number}"))
    rows = (first, second) if len(first) > 1 else ([*first, *second],)
    return tuple(tuple(row) for row in rows if row)


def _saw(turn: Turn, trial: TrialView) -> bool:
    """Whether this person has seen the letters of a running blind trial, and so tastes none of it."""
    return trial.hidden and turn.context.person_id in trial.seen_by


def card(turn: Turn, trial: TrialView) -> Reply:
    """Show one trial: the differences, the scores side by side, and the next steps."""
    if trial.triangle is not None:
        return triangle_card(turn, trial)
    blocks: list[Block] = [Text(title(trial), strong=True)]
    if trial.hidden:
        blocks.append(Text(_("Blind: you see which is which when it ends.")))
        if trial.looked:
            blocks.append(
                Text(_("Looked up the letters: {names}").format(names=", ".join(trial.looked.values())))
            )
        if trial.known:
            blocks.append(Text(_("Somebody saw the letters in the bar it came from.")))
        if trial.reopened:
            blocks.append(Text(_("It was over once, so anybody may have seen the letters.")))
    else:
        blocks += amounts(turn, trial)
    tasters = len(trial.tasted)
    if not tasters:
        blocks.append(Text(_("Nobody has tasted yet.")))
    elif trial.hidden and not trial.done_by(turn.context.person_id):
        blocks.append(Text(_who_tasted(turn, trial)))
    else:
        if trial.table is not None:
            blocks.append(score_grid(trial))
        blocks += [Text(line) for line in result_lines(trial)]
    ends: tuple[Button, ...] = ()
    if trial.state is TrialState.OPEN and tasters:
        ends = (Button(_("End it"), f"trial close {trial.id}"),)
    return Reply(tuple(blocks), (*ways(turn, trial), *_promotions(turn, trial), *((ends,) if ends else ())))


def _who_tasted(turn: Turn, trial: TrialView) -> str:
    tasters = len(trial.tasted)
    text = (
        ngettext(
            "{count} has tasted. You see the scores when it ends.",
            "{count} have tasted. You see the scores when it ends.",
            tasters,
        )
        if _saw(turn, trial)
        else ngettext(
            "{count} has tasted. You see the scores once you have tasted.",
            "{count} have tasted. You see the scores once you have tasted.",
            tasters,
        )
    )
    return text.format(count=tasters)


def _promotions(turn: Turn, trial: TrialView) -> tuple[tuple[Button, ...], ...]:
    if trial.table is None or trial.promoted is not None or not turn.context.role.manages:
        return ()
    # In a blind trial the letter of the formula itself is hidden, so promotion comes after the end.
    if trial.hidden:
        return ()
    buttons = [
        Button(_("Promote {code}").format(code=one.code), f"promote #{trial.id} {one.code}")
        for one in trial.variants
        if one.number != trials.BASE
    ]
    return (tuple(buttons[:4]),) if buttons else ()
