"""The command weigh: measure the spray volume of a sprayer."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.names import spelt_alike
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.liquids.strength import accept_subject
from bot.chat.features.spray import sprayer_words
from bot.chat.features.spray.sprayers import accept_sprayer, use_buttons
from bot.chat.grammar.syntax import Hash, Named, Readings, Unknown
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.reply.message import Block, Button, Reply, Text, reply
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.words import N_
from bot.work.formulas import formulas, scaling
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.spray import sprayers
from bot.work.spray.sprayers import SprayerView

# Colours of tape on sprayers: names to tell them apart.
_USUAL_NAMES = (N_("Blue"), N_("Red"), N_("Green"), N_("White"))
_USUAL_SPRAYS = ("10", "20", "30")
_MOST_SPRAYS = 1000
WATER = ""  # stands for water in place of a formula


# -- choosing a sprayer --------------------------------------------------------------------


def _accept_any_sprayer(turn: Turn, given: Given, value: Named | str) -> SprayerView | str:
    """Take an unknown name for a new sprayer, unless its spelling is close to a known one."""
    if isinstance(value, str):
        number = value.removeprefix("#")
        value = Hash(int(number)) if value.startswith("#") and number.isdigit() else Unknown(value)
    if not isinstance(value, Unknown):
        return accept_sprayer(turn, given, value)
    known = turn.vocabulary.named(value.text, "SPRAYER")
    if known is not None:
        return sprayers.get(turn.context, int(known.id))
    near = [name for name in turn.near(value.text, "SPRAYER") if spelt_alike(name, value.text)]
    if near:
        raise Say(turn.not_known(value, "SPRAYER", _("sprayer")))
    return value.text


def _ask_any_sprayer(turn: Turn, given: Given) -> Question:
    known = sprayers.listed(turn.context)
    choices = [(one.name, f"#{one.id}") for one in known[:10]]
    taken = {one.name.casefold() for one in known}
    fresh = [name for name in map(_, _USUAL_NAMES) if name.casefold() not in taken]
    choices += [(_("New: {name}").format(name=name), name) for name in fresh[:2]]
    return Question(
        _("Which sprayer? Tap it, or type a name, such as the colour of its tape."),
        columns(choices, 2),
        hint=_("Blue"),
    )


def _wants_any_sprayer(turn: Turn, given: Given) -> bool:
    # With one sprayer in the bar there is nothing to ask.
    return len(sprayers.listed(turn.context)) != 1


def _only_sprayer(turn: Turn) -> SprayerView | None:
    known = sprayers.listed(turn.context)
    return known[0] if len(known) == 1 else None


# -- content -------------------------------------------------------------------------------


def _accept_inside(turn: Turn, given: Given, value: Named) -> FormulaView | str:
    if isinstance(value, Unknown) and value.text.casefold() in {"water", _("water").casefold()}:
        return WATER
    found = accept_subject(turn, given, value)
    if isinstance(found, IngredientView):
        if found.kind is IngredientKind.WATER:
            return WATER
        raise Say(reply(_("A formula or water, please: its weight per ml is needed.")))
    return found


def _likely_inside(turn: Turn, sprayer: SprayerView | str | None) -> FormulaView | str | None:
    """The likely content: that of the last run, or the only sprayed formula."""
    listed = formulas.listed(turn.context)
    if isinstance(sprayer, SprayerView) and sprayer.runs:
        same = [one for one in listed if one.name == sprayer.inside]
        return formulas.get(turn.context, same[0].id) if same else WATER
    sprayed = _sprayed(turn)
    return sprayed[0] if len(sprayed) == 1 else None


def _sprayed(turn: Turn) -> list[FormulaView]:
    views = (formulas.get(turn.context, one.id) for one in formulas.listed(turn.context))
    return [view for view in views if scaling.is_sprayed(view)]


def _wants_inside(turn: Turn, given: Given) -> bool:
    return _likely_inside(turn, given.get(_SPRAYER) or _only_sprayer(turn)) is None


def _ask_inside(turn: Turn, given: Given) -> Question:
    choices = [(view.name, f"#{view.id}") for view in _sprayed(turn)[:8]]
    choices.append((_("water"), _("water")))
    return Question(
        _("What is in it? Its weight per ml is needed."), columns(choices, 2), hint=_("A formula")
    )


# -- number of sprays, and weights ---------------------------------------------------------


def _accept_readings(turn: Turn, given: Given, value: Readings) -> Readings:
    if value.sprays is not None and not 1 <= value.sprays <= _MOST_SPRAYS:
        raise Say(reply(_("From 1 to {most} sprays, please.").format(most=_MOST_SPRAYS)))
    for before, after in zip(value.masses, value.masses[1:], strict=False):
        if after >= before:
            raise Say(
                reply(
                    _("The bottle cannot get heavier: {before} g, then {after} g. Weigh it again.").format(
                        before=show_number(before, 3), after=show_number(after, 3)
                    )
                )
            )
    return value


def _accept_count(turn: Turn, given: Given, value: Fraction) -> int:
    if value.denominator != 1 or not 1 <= value <= _MOST_SPRAYS:
        raise Say(reply(_("A whole number of sprays, please, such as 20.")))
    return int(value)


def _masses(*shown: Readings | None) -> tuple[Fraction, ...]:
    return tuple(mass for one in shown if one is not None for mass in one.masses)


def _masses_so_far(given: Given) -> tuple[Fraction, ...]:
    return _masses(given.get(_READINGS), given.get(_BEFORE), given.get(_AFTER))


def _wants_count(turn: Turn, given: Given) -> bool:
    readings = given.get(_READINGS)
    return readings is None or readings.sprays is None


def _ask_count(turn: Turn, given: Given) -> Question:
    return Question(
        _("Spray 5 or 6 times first; that does not count. How many sprays will you weigh?"),
        columns([(one, one) for one in _USUAL_SPRAYS], 3),
        hint="20",
    )


def _wants_before(turn: Turn, given: Given) -> bool:
    return not _masses_so_far(given)


def _ask_before(turn: Turn, given: Given) -> Question:
    return Question(_("Weigh the bottle now. How many grams?"), hint="152.31")


def _accept_mass(turn: Turn, given: Given, value: Readings) -> Readings:
    if len(value.masses) != 1:
        raise Say(reply(_("One weight in grams, please, such as 152.31.")))
    before = _masses_so_far(given)
    _accept_readings(turn, given, Readings((*before, *value.masses), None, value.step))
    return value


def _wants_after(turn: Turn, given: Given) -> bool:
    return len(_masses_so_far(given)) < 2


def _ask_after(turn: Turn, given: Given) -> Question:
    count = _sprays(given.get(_READINGS), given.get(_COUNT))
    return Question(
        ngettext(
            "Spray {count} time, then weigh it again. How many grams?",
            "Spray {count} times, then weigh it again. How many grams?",
            count,
        ).format(count=count),
        hint="150.55",
    )


def _sprays(readings: Readings | None, count: int | None) -> int:
    if readings is not None and readings.sprays is not None:
        return readings.sprays
    return 1 if count is None else count


# -- answer --------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class WeighArguments(Arguments):
    """A sprayer, known or new, its content, and the scale readings."""

    sprayer: SprayerView | str | None = None
    inside: FormulaView | str | None = None
    readings: Readings | None = None
    priming: bool = False
    count: int | None = None
    before: Readings | None = None
    after: Readings | None = None

    @property
    def shown(self) -> list[Readings]:
        """The scale readings in order."""
        return [one for one in (self.readings, self.before, self.after) if one is not None]


def _weigh(turn: Turn, arguments: WeighArguments) -> Reply:
    sprayer = arguments.sprayer or _only_sprayer(turn)
    if sprayer is None or isinstance(sprayer, str):
        sprayer = sprayers.add(turn.context, sprayer or _(_USUAL_NAMES[0]))
    inside = _likely_inside(turn, sprayer) if arguments.inside is None else arguments.inside
    formula = inside if isinstance(inside, FormulaView) else None
    masses, sprays = _masses(*arguments.shown), _sprays(arguments.readings, arguments.count)
    done = sprayers.weigh(
        turn.context,
        sprayer.id,
        masses,
        sprays,
        # The smallest step of all readings, because a scale always shows all its digits.
        min(one.step for one in arguments.shown),
        None if formula is None else formula.id,
        arguments.priming,
    )
    view = done.sprayer
    blocks: list[Block] = sprayer_words.figures(view, None if formula is None else formula.sprays)
    name = _("water") if formula is None else formula.name
    if arguments.priming:
        blocks.insert(0, Text(_("Priming run: not counted.")))
    blocks.append(Text(_("With {what} in it. {used}").format(what=name, used=sprayer_words.used_for(view))))
    again = f"weigh #{view.id} of {'water' if formula is None else f'#{formula.id}'} {sprays} sprays"
    last = show_number(masses[-1], 4)
    rows: list[tuple[Button, ...]] = [
        (Button(_("Next run from {mass} g").format(mass=last), f"{again} {last}"), undo_button(turn))
    ]
    rows += use_buttons(turn, view, formula)
    return Reply((Text(sprayer_words.title(view), strong=True), *blocks), tuple(rows))


_SPRAYER = Slot(
    "sprayer", _accept_any_sprayer, _ask_any_sprayer, _wants_any_sprayer, rule="sprayer_name_slot"
)
_INSIDE = Slot("inside", _accept_inside, _ask_inside, _wants_inside)
_READINGS = Slot("readings", _accept_readings)
_COUNT = Slot("count", _accept_count, _ask_count, _wants_count)
_BEFORE = Slot("before", _accept_mass, _ask_before, _wants_before, rule="mass_slot")
_AFTER = Slot("after", _accept_mass, _ask_after, _wants_after, rule="mass_slot")

COMMANDS = (
    Command(
        "weigh",
        N_("weigh a sprayer to learn what a spray gives"),
        _weigh,
        words=("pump weigh", "weigh pump", "weigh sprayer", "calibrate"),
        examples=(N_("weigh blue 152.31 150.55 20 sprays with grapefruit mist"),),
        slots=(_SPRAYER, _INSIDE, _READINGS, Slot("priming", said), _COUNT, _BEFORE, _AFTER),
        writes=True,
        wishes=(Wish("weigh", ("{sprayer?}",)),),
    ),
)

LOG_WORDS = (LogWords("weighing", N_("weighed sprayer {name}"), N_("weighing of sprayer {name}")),)
