"""Formulas: write one down, show, list, change, rename, put away."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import groupby
from typing import Any

from bot.chat.asking import Question, Slot, columns
from bot.chat.asks import FORMULA_SLOT, is_liquid, never, no_formulas, undo_button
from bot.chat.cautioning import cautions_at
from bot.chat.commands.scaling import line_texts
from bot.chat.formula_card import card, kind_name, show_hours
from bot.chat.grading import confirm_graded, grade_notes, stop_at_unlisted
from bot.chat.language import _, ngettext
from bot.chat.levels import percent_of
from bot.chat.message import Block, Button, Reply, Text, reply
from bot.chat.pieces import Noun
from bot.chat.plural import singular
from bot.chat.talk import Command, Given, Say, Talk
from bot.chat.units import show_quantity
from bot.chat.values import Detail, Duration, IngredientLine, Span, Unknown
from bot.trade.caution import Caution as TradeCaution
from bot.trade.caution import Step
from bot.trade.kinds import PREPARATION_DEFAULTS, Preparation, guess_kind
from bot.trade.words import N_
from bot.work import formulas
from bot.work.errors import AlreadyThereError
from bot.work.formulas import Draft, DraftLine, FormulaView

_MOST_LISTED = 30
_CAUTIONS_A_PAGE = 5


# -- showing ----------------------------------------------------------------------------


def _show(talk: Talk, given: Given) -> Reply:
    view: FormulaView = given["formula"]
    number = given.get("number")
    if number is not None:
        view = formulas.get(talk.desk, view.id, int(number))
    return card(talk, view, "more_detail" in given)


def _list(talk: Talk, given: Given) -> Reply:
    known = formulas.listed(talk.desk)
    if not known:
        return no_formulas()
    rows = tuple(
        (Button(f"{one.name} ({kind_name(one.preparation)})", f"formula #{one.id}"),)
        for one in known[:_MOST_LISTED]
    )
    title = ngettext("{count} formula in the book", "{count} formulas in the book", len(known)).format(
        count=len(known)
    )
    return reply(title, buttons=(*rows, (Button(_("Add a formula"), "new formula"),)))


def _cautions(talk: Talk, given: Given) -> Reply:
    start = int(given.rest[0]) if given.rest else 1  # type: ignore[call-overload]
    if "formula" not in given:
        return _all_cautions(start)
    view: FormulaView = given["formula"]
    found: dict[str, TradeCaution] = {}
    for step in Step:
        for caution in cautions_at(talk, view, step):
            found.setdefault(caution.id, caution)
    title = _("Cautions for {name}").format(name=view.name)
    return _caution_page(title, list(found.values()), start, f"cautions #{view.id}")


def _all_cautions(start: int) -> Reply:
    from bot.trade.cautions import CAUTIONS  # noqa: PLC0415 - only for the full list

    return _caution_page(_("Handling cautions"), list(CAUTIONS), start, "cautions")


def _caution_page(title: str, cautions: list[TradeCaution], start: int, line: str) -> Reply:
    """Show so many cautions as a phone shows at a glance, each with its source, and a way to the rest."""
    first = min(max(start, 1), max(len(cautions), 1))
    last = min(first + _CAUTIONS_A_PAGE - 1, len(cautions))
    numbered = enumerate(cautions[first - 1 : last], start=first)
    shown: list[str] = []
    for source, run in groupby(numbered, key=lambda one: _source(one[1])):
        together = list(run)
        shown += [f"{number}. {_(one.text)}" for number, one in together]
        named = source
        if len(together) > 1:
            named = _("{first} to {last}: {source}").format(
                first=together[0][0], last=together[-1][0], source=source
            )
        shown[-1] += f" ({named})"
    if last < len(cautions) or first > 1:
        title += " " + _("({first} to {last} of {count})").format(first=first, last=last, count=len(cautions))
    if last == len(cautions):
        return reply(title, *shown, _CLOSING_WORD())
    return reply(title, *shown, buttons=((Button(_("More"), f"{line} more {last + 1}"),),))


def _source(caution: TradeCaution) -> str:
    return _(caution.source.title)


def _CLOSING_WORD() -> str:  # noqa: N802 - a text that depends on the language spoken
    return _("Local codes and licensed practice come first; this list is not complete.")


# -- writing one down -----------------------------------------------------------------


def _ask_name(talk: Talk, given: Given) -> Question:
    return Question(_("What is it called?"), hint=_("Grapefruit mist"))


def _accept_name(talk: Talk, given: Given, value: str) -> str:
    clean = " ".join(value.split())
    if not clean or len(clean) > 80:
        raise Say(reply(_("A name of 1 to 80 letters, please.")))
    for one in formulas.listed(talk.desk, archived=True):
        if one.name.casefold() == clean.casefold():
            raise AlreadyThereError("formula", one.name, one.archived)
    return clean


def _ask_kind(talk: Talk, given: Given) -> Question:
    choices = [(kind_name(one), one.value) for one in Preparation]
    return Question(_("What kind is it?"), columns(choices, 2), hint=_("A kind"))


def _no_kind_said(talk: Talk, given: Given) -> bool:
    return not any(isinstance(line, Detail) and line.what == "kind" for line in given.get("raw_lines", ()))


def _ask_lines(talk: Talk, given: Given) -> Question:
    known = given.get("lines", ())
    shown: tuple[Block, ...] = ()
    text = _("Type the ingredients, a line each: lime oil 10 ml")
    if known:
        shown = (Text("\n".join(_shown_line(line) for line in known)),)
        text = _("More ingredients? Tap Done when it is complete.")
    return Question(text, blocks=shown, hint=_("neutral spirit 96 % 60 ml"))


def _shown_line(line: DraftLine | Detail) -> str:
    if isinstance(line, Detail):
        return f"· {_(line.what)}"
    name = line.ingredient if isinstance(line.ingredient, str) else f"#{line.ingredient}"
    return f"· {name} {show_quantity(line.quantity)}"


def _accept_lines(talk: Talk, given: Given, value: Any) -> tuple[DraftLine | Detail, ...]:
    parts = value if isinstance(value, tuple) else (value,)
    lines: list[DraftLine | Detail] = []
    for part in parts:
        if isinstance(part, IngredientLine):
            lines.append(draft_line(talk, part))
        elif isinstance(part, Detail):
            lines.append(part)
    stop_at_unlisted(talk, lines)
    return tuple(lines)


def draft_line(talk: Talk, line: IngredientLine) -> DraftLine:
    """Turn a typed line into a draft's, its unit resolved and its ingredient known or new."""
    if isinstance(line.item, Unknown):
        known = talk.vocabulary.named(line.item.text, "INGREDIENT")
        name: int | str = int(known.id) if known is not None else line.item.text
        kind = guess_kind(line.item.text)
        from bot.trade.kinds import INGREDIENT_PROPERTIES  # noqa: PLC0415 - a table lookup

        liquid = None if kind is None else INGREDIENT_PROPERTIES[kind].is_liquid
    else:
        noun = talk.noun(line.item, "INGREDIENT", _("ingredient"))
        from bot.work import ingredients  # noqa: PLC0415 - only for known ones

        view = ingredients.get(talk.desk, int(noun.id))
        name, liquid = view.id, is_liquid(view)
    strength = None if line.strength is None else percent_of(talk, line.strength)
    return DraftLine(name, talk.quantity(line.amount, liquid), strength)


def apply_details(talk: Talk, draft: Draft, lines: tuple[DraftLine | Detail, ...]) -> Draft:
    """Put typed lines into a draft: ingredients and the other things a formula says."""
    for line in lines:
        if isinstance(line, DraftLine):
            draft = formulas.with_line(draft, line)
        elif line.what == "remove":
            noun = talk.noun(line.value, "INGREDIENT", _("ingredient"))  # type: ignore[arg-type]
            draft = formulas.without_line(draft, int(noun.id))
        elif line.what == "kind" and isinstance(line.value, Noun):
            draft = replace(draft, preparation=Preparation(line.value.id))
        elif isinstance(line.value, Duration) and line.what == "rest":
            draft = replace(draft, rest_hours=line.value.hours)
        elif isinstance(line.value, Duration):
            draft = replace(draft, discard_days=max(1, round(line.value.hours / 24)))
        elif isinstance(line.value, Span):
            draft = replace(draft, sprays=(line.value.low, line.value.high))
        elif line.what == "replaces":
            draft = replace(draft, garnish=_garnish(talk, line.value))
    return draft


def _garnish(talk: Talk, named: Any) -> int | str:
    if isinstance(named, Unknown):
        known = talk.vocabulary.named(named.text, "INGREDIENT")
        return int(known.id) if known is not None else singular(named.text)
    return int(talk.noun(named, "INGREDIENT", _("fruit")).id)


def _said(given: Given, what: str) -> bool:
    return any(isinstance(line, Detail) and line.what == what for line in given.get("lines", ()))


def _preparation(given: Given) -> Preparation:
    for line in given.get("lines", ()):
        if isinstance(line, Detail) and line.what == "kind" and isinstance(line.value, Noun):
            return Preparation(line.value.id)
    kind = given.get("preparation")
    return kind if isinstance(kind, Preparation) else Preparation.OTHER


def _wants_kind(talk: Talk, given: Given) -> bool:
    return not _said(given, "kind")


def _ask_rest(talk: Talk, given: Given) -> Question:
    usual = PREPARATION_DEFAULTS[_preparation(given)].rest_hours
    hours = [usual, *(one for one in (0, 24, 48) if one != usual)]
    choices = [(show_hours(Fraction(one)), f"{one} h") for one in hours]
    return Question(_("How long does it rest before use?"), columns(choices, 2), hint="24 h")


def _ask_discard(talk: Talk, given: Given) -> Question:
    usual = PREPARATION_DEFAULTS[_preparation(given)].discard_days
    days = [usual, *(one for one in (7, 30, 180) if one != usual)]
    choices = [
        (ngettext("{count} day", "{count} days", one).format(count=one), f"{one} days") for one in days
    ]
    return Question(_("After how long is it thrown out?"), columns(choices, 2), hint=_("30 days"))


def _ask_sprays(talk: Talk, given: Given) -> Question:
    return Question(
        _("How many sprays does a drink get?"),
        columns([("1", "1"), ("2", "2"), ("2-3", "2-3"), ("3", "3")], 4),
    )


def _guided_without(what: str) -> Any:
    def wanted(talk: Talk, given: Given) -> bool:
        return given.guided and not _said(given, what)

    return wanted


def _wants_sprays(talk: Talk, given: Given) -> bool:
    return given.guided and _preparation(given) is Preparation.AROMA_MIST and not _said(given, "sprays")


def _accept_preparation(talk: Talk, given: Given, value: Any) -> Preparation:
    return Preparation(value.id)


def _new(talk: Talk, given: Given) -> Reply:
    draft = apply_details(talk, Draft(_preparation(given), ()), given["lines"])
    if "rest" in given:
        draft = replace(draft, rest_hours=given["rest"].hours)
    if "discard" in given:
        draft = replace(draft, discard_days=max(1, round(given["discard"].hours / 24)))
    if "sprays" in given:
        draft = replace(draft, sprays=(given["sprays"].low, given["sprays"].high))
    if not draft.lines:
        raise Say(reply(_("A formula needs at least one ingredient, such as: lime oil 10 ml")))
    confirm_graded(talk, given["lines"])
    view = formulas.add(talk.desk, given["new_name"], draft)
    return _written(talk, view, _("{name} is in the book.").format(name=view.name))


def _written(talk: Talk, view: FormulaView, first: str) -> Reply:
    shown = card(talk, view, written=True)
    notes: list[Block] = [*grade_notes(view)]
    for line in view.lines:
        if line.ingredient.kind.value == "spirit" and line.ingredient.strength_percent is None:
            notes.append(
                Text(_("How strong is {name}? Say: strength {name} 96").format(name=line.ingredient.name))
            )
    return Reply(
        (Text(first, strong=True), *shown.blocks, *notes),
        (*shown.buttons, (undo_button(talk),)),
    )


# -- changing -------------------------------------------------------------------------


def _ask_changes(talk: Talk, given: Given) -> Question:
    view: FormulaView = given["formula"]
    return Question(
        _("What changes in {name}? A line each: lime oil 12 ml, remove water, rest 24 h, sprays 2-3").format(
            name=view.name
        ),
        blocks=(line_texts(view, talk.desk.bar.units),),
        hint=_("lime oil 12 ml"),
    )


def _change(talk: Talk, given: Given) -> Reply:
    view: FormulaView = given["formula"]
    draft = apply_details(talk, formulas.draft_of(view), given["lines"])
    if not draft.lines:
        raise Say(reply(_("A formula needs at least one ingredient.")))
    confirm_graded(talk, given["lines"])
    changed = formulas.change(talk.desk, view.id, draft)
    first = _("{name} is now version {version}. Batches keep the version they were made by.").format(
        name=changed.name, version=changed.version
    )
    return _written(talk, changed, first)


def _rename(talk: Talk, given: Given) -> Reply:
    view: FormulaView = given["formula"]
    before = formulas.rename(talk.desk, view.id, given["new_name"])
    return reply(
        _("{before} is now called {name}.").format(before=before, name=given["new_name"]),
        buttons=((undo_button(talk),),),
    )


def _archive(talk: Talk, given: Given) -> Reply:
    view: FormulaView = given["formula"]
    name = formulas.archive(talk.desk, view.id)
    return reply(
        _("{name} is put away. Its batches and history stay.").format(name=name),
        buttons=((undo_button(talk), Button(_("Bring back"), f"restore #{view.id}")),),
    )


def _ask_archived(talk: Talk, given: Given) -> Question:
    known = [one for one in formulas.listed(talk.desk, archived=True) if one.archived]
    if not known:
        raise Say(reply(_("No formula is put away.")))
    return Question(_("Which one comes back?"), columns([(one.name, f"#{one.id}") for one in known[:12]], 2))


def _accept_archived(talk: Talk, given: Given, value: Any) -> FormulaView:
    if isinstance(value, Unknown):
        for one in formulas.listed(talk.desk, archived=True):
            if one.name.casefold() == value.text.casefold():
                return formulas.get(talk.desk, one.id)
    return formulas.get(talk.desk, int(talk.noun(value, "FORMULA", _("formula")).id))


def _restore(talk: Talk, given: Given) -> Reply:
    view: FormulaView = given["formula"]
    formulas.archive(talk.desk, view.id, away=False)
    return card(talk, formulas.get(talk.desk, view.id))


_NAME_SLOT = Slot("new_name", _ask_name, accept=_accept_name)
_NEW_EXAMPLES = (
    N_("new formula Lime tincture\nlime oil 10 ml\nneutral spirit 96 % 90 ml\nkind tincture\nrest 14 days"),
)

COMMANDS = (
    Command(
        "formulas",
        N_("the formulas in the book"),
        _list,
        words=("book", "recipes", "specs", "spec list"),
        menu=45,
        quick=True,
    ),
    Command(
        "formula",
        N_("show a formula"),
        _show,
        words=("recipe", "spec", "show"),
        examples=(N_("formula grapefruit mist"),),
        slots=(FORMULA_SLOT, Slot("number", _ask_name, never), Slot("more_detail", _ask_name, never)),
        menu=40,
        quick=True,
    ),
    Command(
        "new",
        N_("write a new formula down"),
        _new,
        words=("new formula", "add formula", "new recipe", "new spec"),
        examples=_NEW_EXAMPLES,
        slots=(
            _NAME_SLOT,
            Slot("lines", _ask_lines, accept=_accept_lines, many=True),
            Slot("preparation", _ask_kind, _wants_kind, _accept_preparation),
            Slot("rest", _ask_rest, _guided_without("rest")),
            Slot("discard", _ask_discard, _guided_without("discard")),
            Slot("sprays", _ask_sprays, _wants_sprays),
        ),
        writes=True,
        manages=True,
        menu=42,
    ),
    Command(
        "change",
        N_("change a formula: a new version"),
        _change,
        words=("change formula", "edit formula"),
        examples=(N_("change grapefruit mist: grapefruit oil 14 ml"),),
        slots=(FORMULA_SLOT, Slot("lines", _ask_changes, accept=_accept_lines)),
        writes=True,
        manages=True,
    ),
    Command(
        "rename",
        N_("give a formula another name"),
        _rename,
        words=("rename formula",),
        examples=(N_("rename grapefruit mist to pink mist"),),
        slots=(FORMULA_SLOT, _NAME_SLOT),
        writes=True,
        manages=True,
    ),
    Command(
        "archive",
        N_("put a formula away"),
        _archive,
        words=("archive formula", "put away"),
        slots=(FORMULA_SLOT,),
        writes=True,
        manages=True,
    ),
    Command(
        "restore",
        N_("bring a formula back"),
        _restore,
        words=("bring back",),
        slots=(Slot("formula", _ask_archived, accept=_accept_archived),),
        writes=True,
        manages=True,
    ),
    Command(
        "cautions",
        N_("handling cautions"),
        _cautions,
        words=("caution", "handling"),
        slots=(Slot("formula", _ask_name, never, FORMULA_SLOT.accept),),
        menu=85,
        quick=True,
    ),
)
