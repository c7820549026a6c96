"""Word the triangle test: its beginning, its glasses, and its answer."""

from __future__ import annotations

from bot.chat.dialogue.examples import fruit_of
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.trials.trial_words import title
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.trade.trials.triangle import (
    DISCRIMINATORS,
    FRESH,
    MOST_TASTINGS,
    Answer,
    critical_number,
    rates,
)
from bot.work.formulas.formulas import FormulaView
from bot.work.trials import trial_life
from bot.work.trials.trials import TrialState, TrialView, Triangle


def begin_triangle(turn: Turn, view: FormulaView) -> Reply:
    """Begin a triangle test of a formula against the fresh garnish that it replaces, and say how it goes."""
    if view.garnish is None:
        fruit = fruit_of(turn, view)
        first = _("I don't know what {name} replaces.").format(name=view.name)
        way = _("Say it: change {name}: replaces {fruit}").format(name=view.name, fruit=fruit)
        replaces = Button(_("Replaces {fruit}").format(fruit=fruit), f"change #{view.id}: replaces {fruit}")
        raise Say(reply(first, way, buttons=((replaces,),)))
    made = trial_life.start_triangle(turn.context, view.id)
    return Reply(
        (
            Text(title(made), strong=True),
            Text(_("Three glasses, two alike. Each taster taps the odd one; guessing is right 1 time in 3.")),
            Text(_("It ends by itself, after {most} tastings at most.").format(most=MOST_TASTINGS)),
            Text(_error_rates()),
            Text(_("Who pours? They tap Pour in their own chat with me, and don't taste those glasses.")),
        ),
        (*_ways(made), (Button(_("Undo"), "undo"),)),
    )


def _error_rates() -> str:
    return _(
        "Errors: {alarm} % of tests say they can tell when nobody can, {miss} % say they can't when {share} "
        "% can."
    ).format(
        alarm=show_number(round(rates(0).different * 100)),
        miss=show_number(round((1 - rates(DISCRIMINATORS).different) * 100)),
        share=show_number(round(DISCRIMINATORS * 100)),
    )


def _ways(trial: TrialView) -> tuple[tuple[Button, ...], ...]:
    taste, pour = Button(_("Taste"), f"taste #{trial.id}"), Button(_("Pour"), f"trial pour {trial.id}")
    return ((pour, taste), (Button(_("End it"), f"trial close {trial.id}"),))


def triangle_card(turn: Turn, trial: TrialView) -> Reply:
    """Show a triangle test: how many have tasted, and the answer once it is in."""
    test = _test(trial)
    blocks = [Text(title(trial), strong=True)]
    if trial.state is TrialState.OPEN:
        blocks += [Text(_tasted(test)), Text(_("Blind: the answer comes when it ends."))]
        return Reply(tuple(blocks), _ways(trial))
    blocks += [Text(line) for line in answer_lines(test)]
    return Reply(tuple(blocks), ((Button(_("Formula"), f"formula #{trial.formula.id}"),),))


def _test(trial: TrialView) -> Triangle:
    if trial.triangle is None:
        raise ValueError("this trial is scored")
    return trial.triangle


def _tasted(test: Triangle) -> str:
    count = len(test.right)
    if not count:
        return _("Nobody has tasted yet.")
    return ngettext("{count} tasting so far.", "{count} tastings so far.", count).format(
        count=show_number(count)
    )


def answer_lines(test: Triangle) -> list[str]:
    """Write the answer of a test that is over: first in a sentence, then how far it holds."""
    count, right = len(test.right), sum(test.right)
    numbers = {"right": show_number(right), "count": show_number(count)}
    if not count:
        return [_("Stopped before anybody tasted.")]
    if test.answer is Answer.OPEN:
        lines = [
            _("Stopped before the answer was in: {right} of {count} picked the odd glass.").format(**numbers)
        ]
        fewest = show_number(critical_number(count))
        text = _("A test of {count} from the start would take {fewest}.")
        lines.append(text.format(fewest=fewest, **numbers))
        return lines
    if test.answer is Answer.DIFFERENT:
        text = _("They can tell: {right} of {count} picked the odd glass, chance gives {chance}.")
        lines = [text.format(chance=show_number(round(count / 3)), **numbers)]
        lines.append(_("It doesn't say which is better."))
    else:
        lines = [
            _("They can't tell, as far as this shows: {right} of {count} picked the odd glass.").format(
                **numbers
            )
        ]
    lines.append(_error_rates())
    if test.people < count:
        text = ngettext(
            "{people} person tasted, so it speaks for them.",
            "{people} people tasted, so it speaks for them.",
            test.people,
        )
        lines.append(text.format(people=show_number(test.people)))
    return lines


def glasses(turn: Turn, trial: TrialView) -> Reply:
    """Show the person who pours what goes into each of the next glasses."""
    test = _test(trial)
    fruit = "" if trial.formula.garnish is None else trial.formula.garnish.name
    rows = [
        (str(code), _("fresh {fruit}").format(fruit=fruit) if one == FRESH else trial.formula.name)
        for code, one in zip(test.glasses.codes, test.glasses.contents, strict=True)
    ]
    return Reply(
        (
            Text(_("Glasses {number}, from left to right").format(number=test.serving + 1), strong=True),
            Grid(tuple(rows)),
            Text(_("The same drink in the same glass, out of sight. You can't taste these.")),
            Text(_("The taster says: taste #{number}").format(number=trial.id)),
        )
    )


def picked(turn: Turn, trial: TrialView) -> Reply:
    """Say that a tasting is noted, or the answer if it is in."""
    undo = (Button(_("Undo"), "undo"),)
    if trial.state is not TrialState.OPEN:
        shown = triangle_card(turn, trial)
        return Reply(shown.blocks, (*shown.buttons, undo), edits=turn.message.tapped is not None)
    return Reply(
        (Text(_("Noted."), strong=True), Text(_tasted(_test(trial)))),
        ((Button(_("Pour"), f"trial pour {trial.id}"),), undo),
        edits=turn.message.tapped is not None,
    )


def only_scored(trial: TrialView) -> None:
    """Raise Say if this is a triangle test, which has no key to see, bottles to fill or variants to add."""
    if trial.triangle is not None:
        raise Say(
            reply(
                _("Trial {number} is a triangle test: its glasses are known when it ends.").format(
                    number=trial.id
                ),
                buttons=((Button(_("See the trial"), f"trials {trial.id}"),),),
            )
        )
