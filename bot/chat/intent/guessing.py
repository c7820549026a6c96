"""Guess the meaning of a text without a command's word: run harmless readings, suggest the others."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.naming import spelt_like
from bot.chat.dialogue.registry import all_commands, command_at_start, words_of
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.parser import Phrase
from bot.chat.grammar.syntax import Amount, Line, Unknown, names_unknown
from bot.chat.i18n.keywords import keyword_for, stands_for
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.languages import languages
from bot.chat.intent.shorthand import formulas_meant, read_scaling
from bot.chat.reply.layout import shortened
from bot.chat.reply.message import Button
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES, IngredientKind, guess_kind, is_fruit_name
from bot.trade.formulas.measures import Dimension, dimension

# Commands that only show something may run on a guess; these slots are evidence for them.
_TAKEN = (
    ("scale", {"formula", "target"}),
    ("week", {"period"}),
    ("month", {"month"}),
    ("formula", {"formula"}),
)
# Sentences about the drink list: the rule, the command and the slot that goes on with it.
_SAID_OF_MENU = (
    ("in_drink_said", "menu", "listed_drink"),
    ("new_on_menu_said", "serve", "drink_name"),
    ("off_menu_said", "off menu", "listed_drink"),
)
# What these log is never taken from a question.
LOGGING = frozenset({"waste", "bought", "count", "peeled", "juiced", "discard"})
_OFFERED = ("check", "price", "scale", "waste", "used", "discard", "batch", "stock", "bar")
_MOST_OFFERED = 2
_MOST_NAMED = 3
# Words that may follow the name of a thing: 'orange price', 'grapefruit mist cost'.
_NAMED_LAST = frozenset({"price", "cost", "stock", "strength", "dose", "cautions", "photos"})
_CLARITIES = frozenset({"clear", "hazy", "split"})
_LONGEST_GUESSED = 200  # characters: many readings are tried, and a longer text is hardly ever one of them
_NEAR_WORD = 76  # of 100: a command's word below this is not suggested
_SHORT_WORD = 3  # letters: a shorter word is close to too many others
_REASON_WORDS = 2
_VALUE_WORDS = 3  # "closing hour 1:30 am": a longer value is a sentence
_RECIPE_LINES = 2  # amounts of two things are a recipe, one may be anything
_FRUIT_WORDS = 2  # 'blood orange': a longer text is a sentence


def is_article(word: str) -> bool:
    """Whether a word is an article in any language."""
    return any(word.casefold() in one.articles for one in languages().values())


def without_word(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Return the command of a text that does not begin with its word: '6 oranges mouldy', 'the batches'."""
    asked = _asked(turn, text) or as_waste(turn, text) if turn.presence.bar is not None else None
    return asked or _after_an_article(text)


def another_command(turn: Turn, command: Command, rest: str) -> tuple[Command, str] | None:
    """Return the command that is meant by the word of another: 'change currency to USD', 'bin batch 25'."""
    ways = (_as_setting, _as_discard, _as_spilt)
    return next(filter(None, (way(turn, command, rest) for way in ways)), None)


def _after_an_article(text: str) -> tuple[Command, str] | None:
    """Parse 'la semana pasada' or 'the batches' without the article."""
    first, _space, rest = text.lstrip("¿¡ ").partition(" ")
    return command_at_start(rest) if is_article(first) else None


def as_waste(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Parse '6 oranges mouldy, 2 limes' as waste, because the prompt at close invites people to type it."""
    if turn.presence.bar is None or _is_86(text):
        return None
    command = all_commands()["waste"]
    phrase = _read(turn, command, text)
    if phrase is None:
        return None
    other = [line for line in _lines(phrase) if not _is_counted_fruit(turn, line)]
    if other == list(_lines(phrase)) or not all(_is_of_batch(line) or _is_poured(line) for line in other):
        return None
    return command, text


def _is_of_batch(line: Line) -> bool:
    """Whether a line names an amount or bottles of a batch by its formula: 'a bottle of house syrup'."""
    return any(one.slot == "batch" and isinstance(one.value, Noun) for one in line.filled)


def _is_poured(line: Line) -> bool:
    """Whether a line is a volume of a liquid, as juice may be among the fruit: '50 ml of lime juice'."""
    said = {one.slot: one.value for one in line.filled}
    fruit = said.get("fruit")
    kind = guess_kind(
        fruit.name if isinstance(fruit, Noun) else fruit.text if isinstance(fruit, Unknown) else ""
    )
    is_liquid = kind is not None and INGREDIENT_PROPERTIES[kind].is_liquid is True
    return is_liquid and _is_volume(said.get("waste_amount"))


def _lines(phrase: Phrase) -> tuple[Line, ...]:
    return phrase.lines or (Line(tuple(phrase.slots.values())),)


def _is_counted_fruit(turn: Turn, line: Line) -> bool:
    said = {one.slot: one.value for one in line.filled}
    fruit_first = next(iter(said), "") == "fruit"
    if any(one.slot == "reason" and one.text.casefold().startswith(_("peeled")) for one in line.filled):
        return False  # peeled fruit is kept, not thrown out
    reason = said.get("reason")
    if isinstance(reason, Unknown) and len(reason.text.split()) > _REASON_WORDS:
        return False  # 'four oranges two limes a lemon'
    fruit, amount = said.get("fruit"), said.get("waste_amount")
    if amount is None or not _is_count_or_weight(amount):
        return False
    if _is_volume(amount) and isinstance(reason, Unknown):
        return False  # '10 ml orange oil'
    if isinstance(amount, Amount) and amount.unit != "each" and "reason" not in said and fruit_first:
        return False  # 'oranges 2.20 kg' is as likely a price or a delivery
    if isinstance(fruit, Noun):
        return guess_kind(fruit.name) is IngredientKind.FRUIT
    name = fruit.text if isinstance(fruit, Unknown) else ""
    if command_at_start(name) is not None or _is_volume(amount):
        return False  # 'price limes' is no fruit, and 'orange mist 750 ml' none that is counted
    known = turn.vocabulary.named(name, "INGREDIENT")
    if known is not None:
        return guess_kind(known.name) is IngredientKind.FRUIT
    if is_fruit_name(name):
        return True
    # Of '2 soft limes' it is asked what they are; 'order limes 24' begins with an unknown verb.
    begins = next(iter(line.filled), None)
    counted_first = begins is not None and begins.slot == "waste_amount"
    return counted_first and len(name.split()) <= _FRUIT_WORDS and guess_kind(name) is IngredientKind.FRUIT


def _as_discard(turn: Turn, command: Command, rest: str) -> tuple[Command, str] | None:
    """Take 'threw away batch 25' for the batch, which is no fruit."""
    first, _space, number = rest.strip().partition(" ")
    if command.name != "waste" or not stands_for(first, "BATCH", tongue().language):
        return None
    discard = all_commands()["discard"]
    if not number[:1].isdigit() or _read(turn, discard, rest) is None:
        return None
    return discard, rest


def _as_spilt(turn: Turn, command: Command, rest: str) -> tuple[Command, str] | None:
    """Take 'spilled 50 ml gin' for waste of the gin: no batch is called that."""
    waste = all_commands()["waste"]
    if command.name != "spilt" or _read(turn, command, rest) is not None:
        return None
    phrase = _read(turn, waste, rest)
    said = set() if phrase is None else set(phrase.slots)
    return (waste, rest) if "fruit" in said and said & {"waste_amount", "wasted_bottles"} else None


def _is_count_or_weight(amount: object) -> bool:
    """Whether an amount can be one of fruit: '0.65 each' is a price, and 0.65 of an orange is unlikely."""
    if isinstance(amount, Amount):
        return amount.unit != "each"
    return not isinstance(amount, Fraction) or amount.denominator <= 2


def _is_volume(amount: object) -> bool:
    unit = amount.unit if isinstance(amount, Amount) else "each"
    return isinstance(unit, str) and unit != "each" and dimension(unit) is Dimension.VOLUME


def _asked(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Parse 'grapefruit mist to 400 ml' or 'last week' as a command that only shows something."""
    for rule, name, slot in _SAID_OF_MENU:
        said = parser.try_read(rule, text.strip(" ?¿!."), turn.vocabulary)
        if said is not None:
            return all_commands()[name], said.slots[slot].text
    for name, telling in _TAKEN:
        command = all_commands()[name]
        phrase = _read(turn, command, text)
        if phrase is not None and telling <= set(phrase.slots) and not _names_unknown(phrase):
            return command, text
    return _named_last(turn, text)


def _as_setting(turn: Turn, command: Command, rest: str) -> tuple[Command, str] | None:
    """Parse 'change currency to USD' as the setting, unless a formula has that name."""
    if command.name not in {"change", "bar"} or turn.presence.bar is None:
        return None
    words = rest.split(None, 1)
    plain = words[1] if len(words) == 2 and is_article(words[0]) else rest
    bar = all_commands()["bar"]
    phrase, formula = _read(turn, bar, plain), _read(turn, command, rest)
    if phrase is None or not {"setting", "value"} <= set(phrase.slots):
        return None
    if command is not bar and formula is not None and not _names_unknown(formula):
        return None
    return bar, plain


def _named_last(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Parse 'orange price' as the price of oranges: a known thing, then the command's word."""
    rest, _space, word = text.rstrip("?! ").rpartition(" ")
    found = command_at_start(word)
    if found is None or found[0].name not in _NAMED_LAST or not rest:
        return None
    phrase = _read(turn, found[0], rest)
    if phrase is None or _names_unknown(phrase):
        return None
    return found[0], rest


def offers(turn: Turn, text: str, besides: str = "") -> tuple[tuple[Button, ...], ...]:
    """Return possible readings to tap: whole phrases of other commands, with known names only."""
    if turn.presence.bar is None:
        return ()
    gone = sold_out(turn, text)
    if gone:
        return gone
    rows = []
    for command, line in said_whole(turn, text, besides):
        word = words_of(command, tongue().language)[0]
        rows.append((Button(shortened(f"{word} {line}"), f"{command.name} {line}"),))
    return tuple(rows)


def said_whole(turn: Turn, text: str, besides: str = "") -> list[tuple[Command, str]]:
    """Return the commands whose phrase the whole text is, although it lacks their word."""
    found = [*_scaled(turn, text), *_misspelt(turn, text)]
    for name in _OFFERED:
        command = all_commands()[name]
        if name == besides or (command.manages and not turn.context.role.manages):
            continue
        phrase = _read(turn, command, text)
        if phrase is None or not _tells(turn, phrase, name):
            continue
        if name == "bar" and command_at_start(text) is not None:
            continue  # 'label 34 on A4' begins like a setting, but has no value of one
        found.append((command, text))
    return found[:_MOST_OFFERED]


def as_recipe(turn: Turn, text: str) -> Command | None:
    """Return the command for a new formula if a text is one: 'Mist: 12 ml orange oil, 20 ml glycol'."""
    command = all_commands()["new"]
    phrase = command.phrase(turn, text)
    written = None if phrase is None or "lines" not in phrase.slots else phrase.slots["lines"].value
    return command if isinstance(written, tuple) and len(written) >= _RECIPE_LINES else None


def as_more_drinks(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Parse 'another 3 negronis' and '10 more drinks', which add to a count."""
    said = parser.try_read("more_drinks_said", text.strip(" .!"), turn.vocabulary)
    if said is None:
        return None
    words = {name: one.text for name, one in said.slots.items()} | {"further_count": keyword_for("MORE")}
    order = ("drinks_count", "further_count", "listed_drink", "day")
    return all_commands()["drinks"], " ".join(words[slot] for slot in order if slot in words)


def sold_out(turn: Turn, text: str) -> tuple[tuple[Button, ...], ...]:
    """Suggest both meanings of '86 limes': in English bar slang it means that none are left."""
    word, _space, name = text.partition(" ")
    first, _space, rest = name.partition(" ")
    name = rest if is_article(first) else name
    if not _is_86(text) or turn.vocabulary.named(name, "INGREDIENT") is None:
        return ()
    lines = (f"stock {name} 0", f"waste {word} {name}")
    return tuple((Button(line, line),) for line in lines)


def _is_86(text: str) -> bool:
    word = text.partition(" ")[0]
    return bool(word) and word == languages()[tongue().language].sold_out


def _scaled(turn: Turn, text: str) -> Iterator[tuple[Command, str]]:
    """Yield the amounts for '6x50 grapefruit': a part of a formula's name, sizes without a unit."""
    read = read_scaling(turn, text)
    if read is None or not {"formula", "target"} <= set(read[0].slots):
        return
    said, whole = read[0].slots["formula"], read[1]
    for one in formulas_meant(turn, said.value)[:_MOST_NAMED]:
        if isinstance(said.value, Unknown) and said.value.text.casefold() not in one.name.casefold():
            continue
        yield all_commands()["scale"], whole.replace(said.text, one.name)


def _misspelt(turn: Turn, text: str) -> Iterator[tuple[Command, str]]:
    """Yield the command whose word is close to the first typed one, if it takes the rest."""
    first, _space, rest = text.partition(" ")
    if command_at_start(text) is not None:
        return
    near = near_word(first)
    command = None if near is None else command_at_start(near)
    phrase = None if command is None else _read(turn, command[0], rest)
    if command is not None and phrase is not None and not _names_unknown(phrase):
        yield command[0], rest
    waste = all_commands()["waste"]
    meant = rest if command is not None and command[0] is waste else text
    if (respelt := _with_fruit_respelt(turn, meant)) is not None:
        yield waste, respelt


def _with_fruit_respelt(turn: Turn, text: str) -> str | None:
    """Return a line of waste with the nearest fruit for each name that is not known: 'lims 4 mouldy'."""
    phrase = _read(turn, all_commands()["waste"], text)
    lines = () if phrase is None else _lines(phrase)
    fixed = text
    for line in lines:
        said = {one.slot: one for one in line.filled}
        fruit = said.get("fruit")
        if fruit is None or "waste_amount" not in said:
            return None
        if isinstance(fruit.value, Unknown):
            near = spelt_like(fruit.text, [one.name for one in turn.vocabulary.of_kind("INGREDIENT")])
            if guess_kind(near) is not IngredientKind.FRUIT:
                return None
            fixed = fixed.replace(fruit.text, near)
    return None if fixed == text else fixed


def near_word(word: str) -> str | None:
    """Return the command's word that is close to a typed one, None if there is none or it is too short."""
    from rapidfuzz import fuzz, process  # noqa: PLC0415 - only for lines that the grammar does not take

    if len(word) <= _SHORT_WORD:
        return None
    language = tongue().language
    known = [one for command in all_commands().values() for one in words_of(command, language)]
    single = [one for one in known if " " not in one]
    found = process.extractOne(word.casefold(), single, scorer=fuzz.ratio, score_cutoff=_NEAR_WORD)
    return None if found is None else str(found[0])


def _tells(turn: Turn, phrase: Phrase, name: str) -> bool:
    """Whether a phrase has at least two slots, no unknown names and no amounts in hundredths."""
    if name == "bar":
        value = phrase.slots.get("value")
        return value is not None and "setting" in phrase.slots and len(value.text.split()) <= _VALUE_WORDS
    if name == "waste":
        lines = _lines(phrase)
        reasons = (one.value for line in lines for one in line.filled if one.slot == "reason")
        return all(_is_counted_fruit(turn, line) for line in lines) and not any(map(names_unknown, reasons))
    values = [one.value for one in phrase.filled]
    said = [value for value in values if not isinstance(value, str) or value in _CLARITIES]
    if name == "stock" and not all(map(_is_count_or_weight, values)):
        return False
    return len(said) > 1 and not _names_unknown(phrase)


def _names_unknown(phrase: Phrase) -> bool:
    return any(names_unknown(one.value) for one in phrase.filled)


def _read(turn: Turn, command: Command, text: str) -> Phrase | None:
    return command.phrase(turn, text) if len(text) <= _LONGEST_GUESSED else None
