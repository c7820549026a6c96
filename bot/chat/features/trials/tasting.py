"""Commands to taste a trial's bottles, and to make the best one the formula's next version."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.trials.trials import accept_trial, ask_trial, none_goes_on, which_trial
from bot.chat.features.trials.triangle_words import glasses, only_scored, picked
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.trials.tasting import HIGHEST, LOWEST, Aspect
from bot.trade.words import N_
from bot.work.trials import trial_life, trials
from bot.work.trials.trials import TrialState, TrialView, Triangle

_ASPECTS = {
    "aroma": N_("aroma, from 1 (faint) to 5 (full)"),
    "brightness": N_("brightness, from 1 (dull) to 5 (fresh)"),
    "lasting": N_("how long it lasts, from 1 (gone at once) to 5 (to the last sip)"),
    "bitterness": N_("bitterness, from 1 (none) to 5 (strong)"),
}


# -- tasting -------------------------------------------------------------------------------


def _several(turn: Turn, given: Given) -> bool:
    return len(trials.listed(turn.context)) != 1


def _tasted(turn: Turn, trial: TrialView | None) -> TrialView:
    if trial is not None:
        return trial
    known = trials.listed(turn.context)
    if not known:
        raise Say(none_goes_on(turn))
    return known[0]


def _is_scored(turn: Turn, given: Given) -> bool:
    if _TRIAL_SLOT not in given and _several(turn, given):
        return True
    return _tasted(turn, given.get(_TRIAL_SLOT)).triangle is None


def _poured_for(turn: Turn, trial: TrialView) -> Triangle:
    """Return the glasses that this person may taste. Raises Say before they are poured, or to who poured."""
    test = trial.triangle
    if test is None or trial.state is not TrialState.OPEN:
        raise Say(reply(_("Trial {number} is over.").format(number=trial.id)))
    pour = Button(_("Pour"), f"trial pour {trial.id}")
    if not test.poured_by:
        raise Say(reply(_("Nobody has poured these glasses yet."), buttons=((pour,),)))
    if turn.context.person_id in test.poured_by:
        raise Say(reply(_("You poured these glasses, so somebody else tastes them.")))
    return test


def _codes(trial: TrialView) -> str:
    return ", ".join(one.code for one in trial.variants)


def _ask_code(turn: Turn, given: Given) -> Question:
    trial = _tasted(turn, given.get(_TRIAL_SLOT))
    if trial.triangle is not None:
        codes = [str(code) for code in _poured_for(turn, trial).glasses.codes]
        glasses_shown = columns([(code, code) for code in codes], 3)
        return Question(_("Which glass is the odd one?"), glasses_shown, hint=codes[0])
    trial_life.refuse_who_saw(turn.context, trial)
    mine = trial.tasted_by(turn.context.person_id)
    choices = [(f"{one.code} ✓" if one.number in mine else one.code, one.code) for one in trial.variants]
    return Question(_("Which bottle are you tasting?"), columns(choices, 4), hint=choices[0][1])


def _accept_code(turn: Turn, given: Given, value: str) -> str:
    if _TRIAL_SLOT not in given and len(trials.listed(turn.context)) > 1:
        return value.strip().upper()  # checked once the trial is chosen
    trial = _tasted(turn, given.get(_TRIAL_SLOT))
    if trial.triangle is not None:
        known = [str(code) for code in _poured_for(turn, trial).glasses.codes]
        if value.strip() not in known:
            raise Say(reply(_("These glasses are {codes}.").format(codes=", ".join(known))))
        return value.strip()
    trial_life.refuse_who_saw(turn.context, trial)
    if value.strip().upper() not in {one.code for one in trial.variants}:
        raise Say(reply(_("That trial has the bottles {codes}.").format(codes=_codes(trial))))
    return value.strip().upper()


def _ask_aspect(words: str) -> Callable[[Turn, Given], Question]:
    def ask(turn: Turn, given: Given) -> Question:
        choices = [(str(number), str(number)) for number in range(LOWEST, HIGHEST + 1)]
        return Question(f"{given[_CODE_SLOT]}: {_(words)}", columns(choices, 5), hint="1-5")

    return ask


def _accept_score(turn: Turn, given: Given, value: Fraction) -> int:
    if value.denominator != 1 or not LOWEST <= value <= HIGHEST:
        raise Say(reply(_("A whole number from 1 to 5, please.")))
    return int(value)


@dataclass(frozen=True, kw_only=True)
class _BottleArguments(Arguments):
    """A bottle of a trial, by its letter; the trial is optional while there is only one."""

    code: str
    trial_number: TrialView | None = None


@dataclass(frozen=True, kw_only=True)
class TasteArguments(_BottleArguments):
    """A bottle and its scores; or, in a triangle test, only the odd glass."""

    aroma: int = LOWEST
    brightness: int = LOWEST
    lasting: int = LOWEST
    bitterness: int = LOWEST


@dataclass(frozen=True, kw_only=True)
class PromoteArguments(_BottleArguments):
    """A bottle."""


def _taste(turn: Turn, arguments: TasteArguments) -> Reply:
    trial, code = _tasted(turn, arguments.trial_number), arguments.code
    if trial.triangle is not None:
        return picked(turn, trial_life.pick(turn.context, trial.id, int(code)))
    scores = {
        Aspect.AROMA: arguments.aroma,
        Aspect.BRIGHTNESS: arguments.brightness,
        Aspect.LASTING: arguments.lasting,
        Aspect.BITTERNESS: arguments.bitterness,
    }
    trial = trial_life.score(turn.context, trial.id, code, scores)
    said = ", ".join(f"{_(aspect)} {number}" for aspect, number in scores.items())
    mine = trial.tasted_by(turn.context.person_id)
    left = [one for one in trial.variants if one.number not in mine]
    row = [
        Button(_("Taste {code}").format(code=one.code), f"taste #{trial.id} {one.code}") for one in left[:3]
    ]
    row.append(Button(_("See the trial"), f"trials {trial.id}"))
    lines = [said + "."]
    if not left:
        lines.append(_("You have tasted all of it."))
    return reply(_("{code} is scored.").format(code=code), *lines, buttons=(tuple(row), (undo_button(turn),)))


# -- promotion -----------------------------------------------------------------------------


def _promote(turn: Turn, arguments: PromoteArguments) -> Reply:
    trial = _tasted(turn, arguments.trial_number)
    only_scored(trial)
    if trial.hidden:
        raise Say(
            reply(
                _("Trial {number} is blind and not over: nothing is promoted by its letter.").format(
                    number=trial.id
                ),
                buttons=((Button(_("End it"), f"trial close {trial.id}"),),),
            )
        )
    variant = trial.by_code(arguments.code)
    if variant.number == trials.BASE:
        raise Say(reply(_("{code} is the formula as it is: nothing to promote.").format(code=variant.code)))
    view = trial_life.promote(turn.context, trial.id, variant.code)
    return reply(
        _("{name} is now version {version}: {changed}.").format(
            name=view.name, version=view.version, changed=variant.changed
        ),
        *([] if _told_apart(trial, variant.code) else [_("No tasting told it from the formula as it was.")]),
        _("Trial {number} is over. Batches keep the version they were made with.").format(number=trial.id),
        buttons=((undo_button(turn), Button(_("Formula"), f"formula #{view.id}")),),
    )


def _told_apart(trial: TrialView, code: str) -> bool:
    """Whether a variant differs clearly from the formula in any aspect."""
    if trial.table is None:
        return False
    found = (against.get(code) for against in trial.table.against_base.values())
    return any(one is not None and one.clear for one in found)


def _accept_scored(turn: Turn, given: Given, value: str) -> str:
    if _TRIAL_SLOT in given or len(trials.listed(turn.context)) == 1:
        only_scored(_tasted(turn, given.get(_TRIAL_SLOT)))
    return _accept_code(turn, given, value)


_TRIAL_SLOT = Slot("trial_number", accept_trial, ask_trial, _several)

_CODE_SLOT = Slot("code", _accept_code, _ask_code, rule="bottle_slot")
_SCORE_SLOTS = tuple(
    Slot(name, _accept_score, _ask_aspect(words), _is_scored) for name, words in _ASPECTS.items()
)


def _triangles(turn: Turn) -> list[TrialView]:
    return [one for one in trials.listed(turn.context) if one.triangle is not None]


def _ask_triangle(turn: Turn, given: Given) -> Question:
    return which_trial(_triangles(turn))


@dataclass(frozen=True, kw_only=True)
class PourArguments(Arguments):
    """A triangle test, or None for the only one."""

    trial_number: TrialView | None = None


def _pour(turn: Turn, arguments: PourArguments) -> Reply:
    running = _triangles(turn)
    trial = arguments.trial_number or (running[0] if running else None)
    if trial is None:
        raise Say(reply(_("No triangle test is running."), buttons=((Button(_("Trials"), "trials"),),)))
    if trial.triangle is None or trial.state is not TrialState.OPEN:
        return reply(_("Trial {number} has no glasses to pour.").format(number=trial.id))
    return glasses(turn, trial_life.pour(turn.context, trial.id))


_POURED_SLOT = replace(_TRIAL_SLOT, ask=_ask_triangle, wanted=lambda turn, _given: len(_triangles(turn)) > 1)

COMMANDS = (
    Command(
        "taste",
        N_("score a trial's bottle"),
        _taste,
        words=("score", "tasted"),
        examples=(N_("taste A 4 3 5 2"),),
        slots=(
            _TRIAL_SLOT,
            _CODE_SLOT,
            *_SCORE_SLOTS,
        ),
        writes=True,
        menu=47,
    ),
    Command(
        "trial pour",
        N_("pour the next glasses of a triangle test"),
        _pour,
        words=("pour", "pour glasses", "pour the glasses", "pour trial"),
        slots=(_POURED_SLOT,),
        writes=True,
        private_only=True,
    ),
    Command(
        "promote",
        N_("make a variant the next version"),
        _promote,
        slots=(_TRIAL_SLOT, replace(_CODE_SLOT, accept=_accept_scored)),
        writes=True,
        manages=True,
    ),
)

LOG_WORDS = (
    LogWords("taste", N_("scored {code}"), N_("score of {code}")),
    LogWords("triangle", N_("tasted the glasses of trial {trial}"), N_("tasting of trial {trial}")),
    LogWords("trial pour", N_("poured the glasses of trial {trial}")),
)
