"""Word errors as sentences: the failed part, and the words that would fit."""

from __future__ import annotations

from decimal import Decimal
from functools import singledispatch

from bot.chat.dialogue.turn import Say
from bot.chat.grammar.parser import UNREADABLE, PhraseError, TooLongError
from bot.chat.grammar.recipe_text import SharesError
from bot.chat.i18n.language import _, show_moment, show_number, show_time
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.layout import shortened
from bot.chat.reply.message import Button, Reply, reply
from bot.chat.reply.units import unit_name
from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.formulas.measures import HouseMeasureNotSetError, WrongDimensionError
from bot.trade.formulas.unit_words import UnknownUnitError
from bot.trade.words import N_
from bot.work import errors
from bot.work.liquids.spirit_substitution import NoSpiritError, UnknownStrengthError
from bot.work.spray.dose import NothingToDoseError

# Errors that a person can fix: answered in words, with all changes rolled back.
REFUSALS = (Say, errors.WorkError, TradeError, *UNREADABLE)
# Names of the expected terminals, most helpful first.
_EXPECTED = {
    "FORMULA": N_("a formula's name"),
    "INGREDIENT": N_("an ingredient"),
    "UNIT": N_("a unit such as ml, g or oz"),
    "REASON": N_("a reason"),
    "CLEAR": N_("clear, hazy or split"),
    "PREPARATION": N_("a kind such as tincture or syrup"),
    "SETTING": N_("a setting's name"),
    "HOURS": N_("hours or days"),
}
# What to ask for if the phrase stops before a piece.
_QUESTIONS = {
    "FORMULA": N_("Which formula?"),
    "INGREDIENT": N_("Which ingredient?"),
    "NUMBER": N_("How many?"),
    "UNIT": N_("In ml, g or oz?"),
    "REASON": N_("Why?"),
    "CLEAR": N_("Clear, hazy or split?"),
    "SETTING": N_("Which setting?"),
    "HOURS": N_("How many hours or days?"),
}
_SHOWN = 60


def _short(text: str) -> str:
    return shortened(text, _SHOWN)


def _what_fits(expected: frozenset[str]) -> str:
    words = [_(phrase) for terminal, phrase in _EXPECTED.items() if terminal in expected]
    *first, last = words[:3] or [""]
    return _("{first} or {last}").format(first=", ".join(first), last=last) if first else last


def worded_phrase_error(error: PhraseError) -> str:
    """Ask for what a phrase lacks, or name the part that did not fit and the words that would."""
    if isinstance(error, TooLongError):
        return _("That is more than I can read at once. Please send it in parts.")
    if not error.problem:
        asked = next((_(text) for one, text in _QUESTIONS.items() if one in error.expected), _("And then?"))
        if not error.understood:
            return asked
        return _("Got “{understood}”. {question}").format(understood=_short(error.understood), question=asked)
    if not error.understood:
        said = _("I did not understand “{problem}”.").format(problem=_short(error.problem))
    else:
        said = _("Got “{understood}”. What about “{problem}”?").format(
            understood=_short(error.understood), problem=_short(error.problem)
        )
    fits = _what_fits(error.expected)
    if not fits:
        return said
    return said + " " + _("I take {expected} there.").format(expected=fits)


@singledispatch
def worded(error: Exception) -> Reply | None:
    """Return the reply to an error that a person can fix, or None for a fault of the program."""
    return None


@worded.register
def _answer(error: Say) -> Reply:
    return error.answer


@worded.register
def _phrase(error: PhraseError) -> Reply:
    return reply(worded_phrase_error(error))


@worded.register
def _number(error: AmbiguousNumberError) -> Reply:
    ways = _(" or ").join(show_number(reading, 3) for reading in error.readings)
    return reply(
        _("“{text}” can be read as {ways}. Please write it without the separator.").format(
            text=error.text, ways=ways
        )
    )


@worded.register
def _shares(error: SharesError) -> Reply:
    if error.solid:
        return reply(
            _("I can't tell whether the share of {name} is by weight or by volume.").format(name=error.solid),
            _("Write amounts, such as: {name} 20 g, water 80 ml").format(name=error.solid),
        )
    return reply(
        _("Those shares add up to {total} %, not to 100 %.").format(total=show_number(error.total, 2)),
        _("Write all of them, such as: 2% lime oil, 70% spirit 96%, 28% water. Or amounts: 10 ml lime oil"),
    )


@worded.register
def _not_a_number(error: NotANumberError) -> Reply:
    return reply(
        _("“{text}” is not a number I can read. Write 12, 1.5, 1 1/2 or ½.").format(text=_short(error.text))
    )


@worded.register
def _unknown_unit(error: UnknownUnitError) -> Reply:
    near = ", ".join(error.nearest)
    first = _("I know no unit called “{unit}”.").format(unit=_short(error.unit))
    return reply(first, _("Near it: {near}.").format(near=near)) if near else reply(first)


@worded.register
def _wrong_dimension(error: WrongDimensionError) -> Reply:
    return reply(
        _("{unit} measures {found}, but here I need {wanted}.").format(
            unit=unit_name(error.unit), found=_(error.found), wanted=_(error.wanted)
        )
    )


@worded.register
def _no_measure(error: HouseMeasureNotSetError) -> Reply:
    name, size = unit_name(error.name), "700 ml" if error.name == "bottle" else "5 ml"
    return reply(
        _("What size is your {name}?").format(name=name),
        _("Set it once: bar {name} {size}").format(name=name, size=size),
    )


@worded.register
def _range(error: OutOfRangeError) -> Reply:
    value = show_number(round_decimal(error.value), 3)
    low = "" if error.low is None else show_number(round_decimal(error.low), 3)
    high = "" if error.high is None else show_number(round_decimal(error.high), 3)
    unit = f" {_(error.unit.replace('mL', 'ml'))}" if error.unit else ""
    if low and high:
        limits = _("between {low} and {high}").format(low=low, high=high)
    elif low:
        limits = _("above {low}").format(low=low)
    else:
        limits = _("below {high}").format(high=high)
    return reply(
        _("{quantity} {value}{unit} is out of range: it has to be {limits}.").format(
            quantity=_(error.quantity)[:1].upper() + _(error.quantity)[1:],
            value=value,
            unit=unit,
            limits=limits,
        )
    )


def round_decimal(value: float) -> Decimal:
    """Return a float as a decimal with the significant digits."""
    return Decimal(repr(float(value)))


@worded.register
def _trade(error: TradeError) -> Reply:
    return reply(
        _("That cannot be worked out: {why}.").format(why=_short(str(error) or type(error).__name__))
    )


@worded.register
def _not_there(error: errors.NotThereError) -> Reply:
    return reply(_("There is no {what} {name} in this bar.").format(what=_(error.what), name=error.name))


@worded.register
def _already(error: errors.AlreadyThereError) -> Reply:
    if error.archived:
        return reply(
            _("There is a {what} called {name}, put away.").format(what=_(error.what), name=error.name),
            _("Bring it back with: restore {name}").format(name=error.name),
            buttons=((Button(_("Bring back"), f"restore {error.name}"),),),
        )
    return reply(_("There is already a {what} called {name}.").format(what=_(error.what), name=error.name))


@worded.register
def _not_allowed(error: errors.NotAllowedError) -> Reply:
    if error.needed == "owner":
        return reply(_("Only the owner of the bar can do that."))
    return reply(_("Only a manager can do that. Ask one to do it, or to make you a manager."))


@worded.register
def _too_many_tries(error: errors.TooManyTriesError) -> Reply:
    return reply(_("Too many wrong codes. Try again after {when}.").format(when=show_moment(error.until)))


@worded.register
def _state(error: errors.WrongStateError) -> Reply:
    return reply(_("Batch {number} is {state}.").format(number=error.batch, state=_(error.state)))


@worded.register
def _too_late(error: errors.TooLateError) -> Reply:
    return reply(
        _("That was logged more than {hours} hours ago and stays as it is.").format(hours=error.hours),
        _("Log the opposite instead, so that the record shows both."),
    )


@worded.register
def _undone(error: errors.AlreadyUndoneError) -> Reply:
    if error.at is None:
        return reply(_("That was undone before."))
    said = _("{name} undid that at {time}.") if error.by else _("You undid that at {time}.")
    first = said.format(name=error.by, time=show_time(error.at))
    if error.number is None:
        return reply(first)
    return reply(first, buttons=((Button(_("Put it back"), f"undo {error.number}"),),))


@worded.register
def _there_again(error: errors.AlreadyThereAgainError) -> Reply:
    said = _("That stands since {time}, by {name}.") if error.by else _("That stands since {time}.")
    return reply(
        said.format(name=error.by, time=show_time(error.at)),
        buttons=((Button(_("Undo"), f"undo {error.number}"),),),
    )


@worded.register
def _not_yours(error: errors.NotYoursError) -> Reply:
    return reply(_("Only a manager or {name} can change that.").format(name=error.by))


@worded.register
def _changed_since(error: errors.ChangedSinceError) -> Reply:
    if error.at is None:
        return reply(_("The same was changed since. Nothing changed now."))
    said = _("{name} changed the same at {time}.") if error.by else _("You changed the same at {time}.")
    first = said.format(name=error.by, time=show_time(error.at))
    if error.number is None:
        return reply(first)
    return reply(
        first,
        _("Undo that first: undo {number}").format(number=error.number),
        buttons=((Button(_("Undo #{number}").format(number=error.number), f"undo {error.number}"),),),
    )


_USES = {"juiced": N_("juiced"), "binned": N_("thrown out"), "batch": N_("put into a batch")}


@worded.register
def _used_since(error: errors.UsedSinceError) -> Reply:
    what = f"{show_number(error.count, 2)} {counted_name(error.name, error.count)}"
    if error.what not in _USES:
        return reply(_("The peeled {name} is not there any more.").format(name=error.name))
    return reply(
        _("Used since: {what}, {use}.").format(what=what, use=_(_USES[error.what])), _("Undo that first.")
    )


@worded.register
def _not_managed(error: errors.NotManagedError) -> Reply:
    if not error.bar:
        return reply(_("You have to run both bars for that."))
    return reply(_("You have to run both bars for that, and you don't run {bar}.").format(bar=error.bar))


@worded.register
def _moved_since(error: errors.MovedSinceError) -> Reply:
    return reply(_("Some of it is at {bar} now. Undo that move first.").format(bar=error.bar))


@worded.register
def _used_there(error: errors.UsedThereError) -> Reply:
    return reply(
        _("{bar} has used some of it already, so that stays.").format(bar=error.bar),
        _("Move back what is left: there it is batch {number}.").format(number=error.number),
    )


@worded.register
def _came_from(error: errors.CameFromError) -> Reply:
    return reply(
        _("That came from {bar}: undo it there, or move it back.").format(bar=error.bar),
        buttons=((Button(_("My bars"), "bars"),),),
    )


@worded.register
def _off_the_log(error: errors.OffTheLogError) -> Reply:
    return reply(
        _("{thing} {number} was undone.").format(thing=_(error.what).capitalize(), number=error.name),
        _("Put it back first."),
    )


@worded.register
def _blind(error: errors.BlindError) -> Reply:
    return reply(
        _("Trial {number} is blind and its letters are given out.").format(number=error.trial),
        _("That would show which letter is which. End it first."),
        buttons=((Button(_("End it"), f"trial close {error.trial}"),),),
    )


@worded.register
def _key_seen(error: errors.KeySeenError) -> Reply:
    said = _("You can't score trial {number} until it ends: you have seen its letters.")
    if error.others:
        said = _(
            "You can't score trial {number} until it ends: you have seen its letters, and so have {names}."
        )
    return reply(
        said.format(number=error.trial, names=", ".join(error.others)),
        buttons=((Button(_("See the trial"), f"trials {error.trial}"),),),
    )


@worded.register
def _cannot_put_back(error: errors.CannotPutBackError) -> Reply:
    if error.what == "import":
        return reply(_("An import can't be put back. Send the file again."))
    if error.what == "moved in":
        return reply(_("It went back to the bar it came from: only there it can be put back."))
    return reply(_("That can't be put back. Write it again."))


@worded.register
def _no_spirit(error: NoSpiritError) -> Reply:
    return reply(_("{name} holds no spirit, so there is none to swap.").format(name=error.name))


@worded.register
def _nothing_to_dose(error: NothingToDoseError) -> Reply:
    text = _("{name} holds no oil, no glycol and no alcohol, so it has no dose.")
    return reply(text.format(name=error.name))


@worded.register
def _unknown_strength(error: UnknownStrengthError) -> Reply:
    return reply(
        _("How strong is {name}?").format(name=error.name),
        _("Say it once, and I can work out {formula}: strength {name} 96").format(
            name=error.name, formula=error.formula
        ),
    )


@worded.register
def _nothing(error: errors.NothingToUndoError) -> Reply:
    return reply(_("There is nothing of yours to undo."))


@worded.register
def _bad_value(error: errors.BadValueError) -> Reply:
    if not error.value:
        return reply(_("The {what} is missing.").format(what=_(error.what)))
    return reply(_("“{value}” will not do as {what}.").format(value=_short(error.value), what=_(error.what)))
