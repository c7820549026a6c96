"""Asking what a new name means: one of the nearest known things, or something new."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from bot.chat.dialogue.examples import USUAL_FRUIT
from bot.chat.dialogue.inputs.settling import NOTHING, SETTLE, settle_line
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.plurals import counted_name, singular
from bot.chat.reply.message import Button, reply
from bot.trade.formulas.ingredient_names.reading import meanings, plain_name
from bot.trade.formulas.kinds import IngredientKind, guess_kind, is_fruit_name
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView

_MOST_NEAR = 3
_SPELT_LIKE = 75  # of 100
_LONGEST_PART = 3  # words of a known name looked for within a longer one
# 'limón' alone is the green one where these count their money or keep their time.
_GREEN_LEMON = ("MXN", "America/")


def what_is(turn: Turn, text: str, fruit: bool) -> Say:
    """Return the question what a name means, its nearest known names first."""
    near = nearest(turn, text, fruit)
    name = singular(text) if fruit else text
    rows: list[tuple[Button, ...]]
    rows = [(Button(_shown(one, fruit), settle_line(f"{one.name} = {text}", turn.line)),) for one in near]
    if fruit and not near and (kinds := _open_kinds(turn, text)):
        rows = [
            (
                Button(
                    kind,
                    settle_line(f"fruit {kind}", settle_line(f"{kind} = {singular(text)}", turn.line)),
                ),
            )
            for kind in kinds
        ]
        return _asked(_("Which {name}?").format(name=text), rows)
    part = _ordinary_part(text) if fruit and not near else ""
    if part:
        kept = settle_line(f"fruit {part}", settle_line(f"{part} = {text}", turn.line))
        rows.append((Button(_("New fruit: {name}").format(name=part), kept),))
    label = _("New fruit: {name}") if fruit else _("New ingredient: {name}")
    new = "fruit" if fruit else "ingredient"
    rows.append((Button(label.format(name=name), settle_line(f"{new} {name}", turn.line)),))
    if fruit and not near and not part:
        rows.append(
            (
                Button(
                    _("Not a fruit: {name}").format(name=name), settle_line(f"ingredient {name}", turn.line)
                ),
            )
        )
    if near:
        known = ", ".join(_shown(one, fruit) for one in near)
        first = _("{name}: {known}, or a new fruit?") if fruit else _("{name}: {known}, or a new ingredient?")
        return _asked(first.format(name=text, known=known), rows)
    first = _("{name} is new here. A fruit?") if fruit else _("{name} is new here. Right?")
    return _asked(first.format(name=text), rows)


def cancel_button() -> Button:
    """Return the button that leaves a line unrun."""
    return Button(_("Cancel"), f"{SETTLE} {NOTHING}")


def _asked(first: str, rows: list[tuple[Button, ...]]) -> Say:
    return Say(reply(first, buttons=(*rows, (cancel_button(),))))


def _ordinary_part(text: str) -> str:
    """Return the ordinary name of a fruit within a longer name or near it: 'lemon' of 'soft lemons'."""
    words = text.split()
    whole = next((singular(word) for word in reversed(words) if is_fruit_name(singular(word))), "")
    return whole or spelt_like(singular(text), [_(one) for one in USUAL_FRUIT])


def spelt_like(name: str, known: list[str]) -> str:
    """Return the known name that is spelt most like a word in any number, '' if none is near."""
    from rapidfuzz import fuzz, process  # noqa: PLC0415 - only for unknown names

    found = process.extractOne(name.casefold(), known, scorer=fuzz.ratio, score_cutoff=_SPELT_LIKE)
    return "" if found is None else str(found[0])


def _shown(one: IngredientView, fruit: bool) -> str:
    return counted_name(one.name, Fraction(2)) if fruit else one.name


def nearest(turn: Turn, text: str, fruit: bool) -> list[IngredientView]:
    """Return known ingredients that a name may mean: by its meanings, by its words, by its spelling."""
    kinds = (IngredientKind.FRUIT,) if fruit else ()
    all_known = ingredients.all_of(turn.context, *kinds)
    known = {one.id: one for one in all_known if fruit or _may_be(text, one.kind)}
    found = [*_by_meaning(text, known), *_by_words(turn, text), *_by_spelling(turn, text, known)]
    return [known[number] for number in dict.fromkeys(found) if number in known][:_MOST_NEAR]


def may_be_fruit(text: str) -> bool:
    """Whether a new name may be of whole fruit: juice is none, and cut pieces are counted by themselves."""
    kind, language = guess_kind(text), tongue().language
    of_it = any(stands_for(word, part, language) for word in text.split() for part in ("GARNISHES", "JUICE"))
    return kind in {None, IngredientKind.FRUIT} and not of_it


def _may_be(text: str, kind: IngredientKind) -> bool:
    """Whether the words of a name do not rule out a kind: 'ice' is no juice, however it is spelt."""
    guess = guess_kind(text)
    if kind is IngredientKind.FRUIT:
        return may_be_fruit(text)
    return guess in {None, IngredientKind.OTHER, kind} or kind is IngredientKind.OTHER


def _by_meaning(text: str, known: dict[int, IngredientView]) -> Iterator[int]:
    said = meanings(singular(text)) | meanings(text)
    # A bar that says both 'lima' and 'limón' means two things by them.
    return (
        number
        for number, one in known.items()
        if said & meanings(one.name) and (len(said) == 1 or len(meanings(one.name)) == 1)
    )


def _by_words(turn: Turn, text: str) -> Iterator[int]:
    words = text.split()
    for length in range(min(_LONGEST_PART, len(words) - 1), 0, -1):
        for at in range(len(words) - length + 1):
            noun = turn.vocabulary.named(" ".join(words[at : at + length]), "INGREDIENT")
            if noun is not None:
                yield int(noun.id)


def _by_spelling(turn: Turn, text: str, known: dict[int, IngredientView]) -> Iterator[int]:
    near = set(turn.near(text, "INGREDIENT", len(known) or 1))
    return (number for number, one in known.items() if one.name in near)


def is_open(turn: Turn, text: str) -> bool:
    """Whether a fruit's ordinary name means different fruit in places like this bar's."""
    return bool(_open_kinds(turn, text))


def _open_kinds(turn: Turn, text: str) -> tuple[str, ...]:
    """Return what to tap for 'limón' where it may well be a lime: to who speaks another language, it may."""
    if plain_name(singular(text)) != "limon":
        return ()
    if plain_name(_("lemon")) != "limon":
        return (_("lemon"), _("lime"))
    bar = turn.context.bar
    currency, place = _GREEN_LEMON
    return ("limón verde", "limón amarillo") if bar.currency == currency or bar.zone.startswith(place) else ()
