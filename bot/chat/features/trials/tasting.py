"""Commands to taste a trial's bottles, and to make the best one the formula's next version."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.trials.trials import accept_trial, ask_trial, none_goes_on
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.trials.tasting import HIGHEST, LOWEST, Aspect
from bot.trade.words import N_
from bot.work.trials import trial_life, trials
from bot.work.trials.trials import TrialView

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


def _ask_code(turn: Turn, given: Given) -> Question:
    trial = _tasted(turn, given.get(_TRIAL_SLOT))
    mine = trial.tasted.get(turn.context.person_id, frozenset())
    choices = [(f"{one.code} ✓" if one.number in mine else one.code, one.code) for one in trial.variants]
    return Question(_("Which bottle are you tasting?"), columns(choices, 4), hint=choices[0][1])


def _accept_code(turn: Turn, given: Given, value: str) -> str:
    if _TRIAL_SLOT not in given and len(trials.listed(turn.context)) > 1:
        return value.strip().upper()  # checked once the trial is chosen
    trial = _tasted(turn, given.get(_TRIAL_SLOT))
    if value.strip().upper() not in {one.code for one in trial.variants}:
        codes = ", ".join(one.code for one in trial.variants)
        raise Say(reply(_("That trial has the bottles {codes}.").format(codes=codes)))
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
    """A bottle and its scores."""

    aroma: int
    brightness: int
    lasting: int
    bitterness: int


@dataclass(frozen=True, kw_only=True)
class PromoteArguments(_BottleArguments):
    """A bottle."""


def _taste(turn: Turn, arguments: TasteArguments) -> Reply:
    trial, code = _tasted(turn, arguments.trial_number), arguments.code
    scores = {
        Aspect.AROMA: arguments.aroma,
        Aspect.BRIGHTNESS: arguments.brightness,
        Aspect.LASTING: arguments.lasting,
        Aspect.BITTERNESS: arguments.bitterness,
    }
    trial = trial_life.score(turn.context, trial.id, code, scores)
    said = ", ".join(f"{_(aspect)} {number}" for aspect, number in scores.items())
    mine = trial.tasted.get(turn.context.person_id, frozenset())
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
    variant = trial.by_code(arguments.code)
    if variant.number == trials.BASE:
        raise Say(reply(_("{code} is the formula as it is: nothing to promote.").format(code=variant.code)))
    view = trial_life.promote(turn.context, trial.id, variant.code)
    return reply(
        _("{name} is now version {version}: {changed}.").format(
            name=view.name, version=view.version, changed=variant.changed
        ),
        _("Trial {number} is over. Batches keep the version they were made with.").format(number=trial.id),
        buttons=((undo_button(turn), Button(_("Formula"), f"formula #{view.id}")),),
    )


_TRIAL_SLOT = Slot("trial_number", accept_trial, ask_trial, _several)

_CODE_SLOT = Slot("code", _accept_code, _ask_code, rule="bottle_slot")
_SCORE_SLOTS = tuple(Slot(name, _accept_score, _ask_aspect(words)) for name, words in _ASPECTS.items())

COMMANDS = (
    Command(
        "taste",
        N_("score a trial's bottle"),
        _taste,
        words=("score", "tasted"),
        examples=(N_("taste A 4 3 5 2"),),
        slots=(_TRIAL_SLOT, _CODE_SLOT, *_SCORE_SLOTS),
        writes=True,
        menu=47,
    ),
    Command(
        "promote",
        N_("make a variant the next version"),
        _promote,
        slots=(_TRIAL_SLOT, _CODE_SLOT),
        writes=True,
        manages=True,
    ),
)

LOG_WORDS = (LogWords("taste", N_("scored {code}"), N_("score of {code}")),)
