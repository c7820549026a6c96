"""Weighing a sprayer, to learn what a spray of it gives."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.naming import spelt_alike
from bot.chat.dialogue.shared_slots import never, undo_button
from bot.chat.dialogue.slots import Question, Slot, columns
from bot.chat.dialogue.turn import Given, Say, Turn
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

# What a strip of tape on a sprayer can be: names to tell them apart by.
_USUAL_NAMES = (N_("Blue"), N_("Red"), N_("Green"), N_("White"))
_USUAL_SPRAYS = ("10", "20", "30")
_MOST_SPRAYS = 1000
WATER = ""  # what stands for water where a formula could be


# -- which sprayer -------------------------------------------------------------------------


def _accept_any_sprayer(turn: Turn, given: Given, value: Named | str) -> SprayerView | str:
    """Take a name that is not known yet for a new sprayer, unless it is spelt almost like a known one."""
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
        _("Which sprayer? Tap it, or type a name to tell it by, such as the colour of its tape."),
        columns(choices, 2),
        hint=_("Blue"),
    )


def _wants_any_sprayer(turn: Turn, given: Given) -> bool:
    # With one sprayer in the bar there is nothing to ask.
    return len(sprayers.listed(turn.context)) != 1


def _sprayer(turn: Turn, given: Given) -> SprayerView | str | None:
    if "sprayer" in given:
        found: SprayerView | str = given["sprayer"]
        return found
    known = sprayers.listed(turn.context)
    return known[0] if len(known) == 1 else None


# -- what is in it -------------------------------------------------------------------------


def _accept_inside(turn: Turn, given: Given, value: Named) -> FormulaView | str:
    if isinstance(value, Unknown) and value.text.casefold() in {"water", _("water").casefold()}:
        return WATER
    found = accept_subject(turn, given, value)
    if isinstance(found, IngredientView):
        if found.kind is IngredientKind.WATER:
            return WATER
        raise Say(reply(_("A formula or water, please: its weight per ml is needed.")))
    return found


def _likely_inside(turn: Turn, given: Given) -> FormulaView | str | None:
    """What is surely in it: what was there last time, or the only formula that is sprayed."""
    sprayer = _sprayer(turn, given)
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
    return _likely_inside(turn, given) is None


def _ask_inside(turn: Turn, given: Given) -> Question:
    choices = [(view.name, f"#{view.id}") for view in _sprayed(turn)[:8]]
    choices.append((_("water"), _("water")))
    return Question(
        _("What is in it? Its weight per ml is needed."), columns(choices, 2), hint=_("A formula")
    )


# -- how often it is sprayed, and the weights ----------------------------------------------


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


def _masses(given: Given) -> tuple[Fraction, ...]:
    found: tuple[Fraction, ...] = ()
    for name in ("readings", "before", "after"):
        if name in given:
            found = (*found, *given[name].masses)
    return found


def _wants_count(turn: Turn, given: Given) -> bool:
    return "readings" not in given or given["readings"].sprays is None


def _ask_count(turn: Turn, given: Given) -> Question:
    return Question(
        _("Spray 5 or 6 times first; that does not count. How many sprays will you weigh?"),
        columns([(one, one) for one in _USUAL_SPRAYS], 3),
        hint="20",
    )


def _wants_before(turn: Turn, given: Given) -> bool:
    return not _masses(given)


def _ask_before(turn: Turn, given: Given) -> Question:
    return Question(_("Weigh the bottle now. How many grams?"), hint="152.31")


def _accept_mass(turn: Turn, given: Given, value: Readings) -> Readings:
    if len(value.masses) != 1:
        raise Say(reply(_("One weight in grams, please, such as 152.31.")))
    before = _masses(given)
    _accept_readings(turn, given, Readings((*before, *value.masses), None, value.step))
    return value


def _wants_after(turn: Turn, given: Given) -> bool:
    return len(_masses(given)) < 2


def _ask_after(turn: Turn, given: Given) -> Question:
    return Question(
        ngettext(
            "Spray {count} time, then weigh it again. How many grams?",
            "Spray {count} times, then weigh it again. How many grams?",
            _sprays(given),
        ).format(count=_sprays(given)),
        hint="150.55",
    )


def _sprays(given: Given) -> int:
    readings: Readings | None = given.get("readings")
    if readings is not None and readings.sprays is not None:
        return readings.sprays
    count: int = given.get("count", 1)
    return count


def _step(given: Given) -> Fraction:
    """The last figure that the scale showed: the finest of this run's, since it shows all of them."""
    shown: list[Readings] = [given[name] for name in ("readings", "before", "after") if name in given]
    return min(one.step for one in shown)


# -- the answer ----------------------------------------------------------------------------


def _weigh(turn: Turn, given: Given) -> Reply:
    sprayer = _sprayer(turn, given)
    if sprayer is None or isinstance(sprayer, str):
        sprayer = sprayers.add(turn.context, sprayer or _(_USUAL_NAMES[0]))
    inside = given["inside"] if "inside" in given else _likely_inside(turn, given)
    formula = inside if isinstance(inside, FormulaView) else None
    masses, sprays = _masses(given), _sprays(given)
    done = sprayers.weigh(
        turn.context,
        sprayer.id,
        masses,
        sprays,
        _step(given),
        None if formula is None else formula.id,
        "priming" in given,
    )
    view = done.sprayer
    blocks: list[Block] = sprayer_words.figures(view, None if formula is None else formula.sprays)
    name = _("water") if formula is None else formula.name
    if "priming" in given:
        blocks.insert(0, Text(_("Priming run: put aside.")))
    blocks.append(Text(_("With {what} in it. {used}").format(what=name, used=sprayer_words.used_for(view))))
    again = f"weigh #{view.id} of {'water' if formula is None else f'#{formula.id}'} {sprays} sprays"
    last = show_number(masses[-1], 4)
    rows: list[tuple[Button, ...]] = [
        (Button(_("Next run from {mass} g").format(mass=last), f"{again} {last}"), undo_button(turn))
    ]
    rows += use_buttons(turn, view, formula)
    return Reply((Text(sprayer_words.title(view), strong=True), *blocks), tuple(rows))


COMMANDS = (
    Command(
        "weigh",
        N_("weigh a sprayer to learn what a spray gives"),
        _weigh,
        words=("pump weigh", "weigh pump", "weigh sprayer", "calibrate"),
        examples=(N_("weigh blue 152.31 150.55 20 sprays with grapefruit mist"),),
        slots=(
            Slot(
                "sprayer",
                _ask_any_sprayer,
                _wants_any_sprayer,
                _accept_any_sprayer,
                rule="sprayer_name_slot",
            ),
            Slot("inside", _ask_inside, _wants_inside, _accept_inside),
            Slot("readings", _ask_before, never, _accept_readings),
            Slot("priming", _ask_before, never),
            Slot("count", _ask_count, _wants_count, _accept_count),
            Slot("before", _ask_before, _wants_before, _accept_mass, rule="mass_slot"),
            Slot("after", _ask_after, _wants_after, _accept_mass, rule="mass_slot"),
        ),
        writes=True,
    ),
)

LOG_WORDS = (LogWords("weighing", N_("weighed sprayer {name}"), N_("The weighing of {name} is taken back.")),)
