"""Decide whether the grammar takes a text whole, as a command or as an answer."""

from __future__ import annotations

from bot.chat.dialogue import filling
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.error_messages import REFUSALS
from bot.chat.dialogue.inputs.names import is_known
from bot.chat.dialogue.registry import all_commands, command_at_start, words_of
from bot.chat.dialogue.slots import AnySlot
from bot.chat.dialogue.state import DialogueState
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.parser import Phrase
from bot.chat.grammar.recipe_text import has_list
from bot.chat.grammar.syntax import Amount, Filled, PackPrice, PacksBought, Unknown, names_unknown
from bot.chat.i18n.keywords import keyword_table, stands_for
from bot.chat.i18n.language import tongue
from bot.chat.intent.reading.frames import wishes_of
from bot.chat.intent.reading.reader import Readings

# Slots for free words.
_LOOSE = frozenset({("help", "free"), ("which", "lot"), ("new", "new_name"), ("start", "code")})
# Slots whose words are usually what they seem, and now and then a sentence that means something else.
_WORDED = frozenset(
    {
        ("another bar", "bar_name"),
        ("remind", "reminder"),
        ("serve", "drink_name"),
        ("bar", "value"),
        ("team", "free"),
    }
)

_NEW_NAMES = frozenset({"drink_name", "new_name", "sprayer_name"})


def reads_whole(spoken: tuple[Command, str], turn: Turn) -> bool:
    """Whether the grammar takes the words, whatever names are in them."""
    command, rest = spoken
    return command.phrase(turn, rest) is not None


def knows_all(turn: Turn, command: Command, rest: str) -> bool:
    """Whether the grammar takes the words after a command's word, every name in them known."""
    phrase = command.phrase(turn, rest)
    if phrase is None or _is_loose(turn, command, rest, phrase) or _is_worded(turn, command, phrase):
        return False
    if _is_waste(turn, command, rest) and not any(map(_is_sentence, phrase.filled)):
        return True
    return not any(names_unknown(one.value) for one in phrase.filled)


def _is_loose(turn: Turn, command: Command, rest: str, phrase: Phrase) -> bool:
    """Whether the grammar takes the words only because they could be anything."""
    filled, slots = phrase.filled, {one.slot for one in phrase.filled}
    if command.name == "waste" and slots == {"waste_amount"} and not is_named(command, turn.message.text):
        return True  # 'bin 36' may mean a batch
    if command.name == "check" and "note" in slots and "clarity" not in slots:
        return True  # 'check stock on sugar'
    value = next((one.text for one in filled if one.slot == "value"), "")
    if command.name == "bar" and (value.startswith("of ") or "=" in value):
        return True  # 'change the name of lemon mist', 'set the names: House syrup = jarabe'
    bar = next((one.text for one in filled if one.slot == "bar" and command.name == "moved"), "")
    if any(stands_for(word, "BOTTLES", tongue().language) for word in bar.split()):
        return True  # 'pasé el lote 7 a botellas'
    if command.name == "note" and (other := command_at_start(rest)) is not None and other[0].writes:
        return True  # 'note lot A12 of the glycol', but not 'note sprayer 2 drips'
    if "lines" in slots:
        return False  # a formula with its ingredients
    return any((command.name, one.slot) in _LOOSE and _is_any_words(one) for one in filled)


def _is_worded(turn: Turn, command: Command, phrase: Phrase) -> bool:
    """Whether a phrase stands on free words: 'remind me what goes in the cordial' asks for a formula."""
    words = [one for one in phrase.filled if (command.name, one.slot) in _WORDED]
    few = all(len(one.text.split()) <= _FEW_WORDS for one in words)
    plain = command.name in {"bar", "team"} and (few or is_named(command, turn.message.text))
    return bool(words) and not plain and "serving" not in phrase.slots


def _is_sentence(filled: Filled) -> bool:
    return isinstance(filled.value, Unknown) and len(filled.value.text.split()) > 2


def _counts_new(phrase: Phrase | None) -> bool:
    """Whether a phrase says how much of an unknown thing, with no other words: it is asked if that is new."""
    filled = [] if phrase is None else phrase.filled
    named = [one for one in filled if isinstance(one.value, Unknown)]
    measured = any(isinstance(one.value, Amount | PacksBought | PackPrice) for one in filled)
    return len(named) == 1 and named[0].slot == "item" and measured and not _is_sentence(named[0])


def is_recipe(command: Command, rest: str) -> bool:
    """Whether a command is given a name and lines: the answer then says which of them it cannot read."""
    return command.name in {"new", "change"} and has_list(rest)


def is_named(command: Command, text: str) -> bool:
    """Whether a text begins with the usual word of its command, or with that of its slash command."""
    usual = {command.name, words_of(command, tongue().language)[0]}
    return any(f"{text} ".casefold().startswith(f"{word} ") for word in usual)


def _is_any_words(filled: Filled) -> bool:
    """Whether a slot for any words holds several: 'which A2231' names a lot, 'which are open' does not."""
    if not isinstance(filled.value, str):
        return False
    return " " in filled.value.strip() or (filled.slot == "code" and filled.value.isdecimal())


# A command's word stands for its command from this probability on, the lower one if only a name is unknown.
_LIKELY, _NAMED, _POSSIBLE = 0.2, 0.1, 0.05
_FEW_WORDS = 2  # a longer value of a setting may be a sentence
_EVEN, _VERY_LIKELY, _NEARLY = 0.5, 0.85, 0.95


def stands(turn: Turn, command: Command, rest: str, found: Readings) -> bool:
    """Whether a command's word stands for its command although the grammar does not know all the rest."""
    first, likely = found.first, found.of(command)
    named = is_named(command, turn.message.text)
    phrase = command.phrase(turn, rest)
    recipe = is_recipe(command, rest) and not means_other(command, found)
    if first is None or recipe or (named and _counts_new(phrase)):
        return True
    same = first.command is command or first.wish in wishes_of(command)
    if phrase is None:
        if same:
            return not (first.complete and (first.rest or found.sure))
        bare = named and not any(map(str.isalpha, rest))  # 'count 30' asks what was counted
        return bare or likely >= _LIKELY or (named and (likely >= _NAMED or first.probability < _EVEN))
    if _is_worded(turn, command, phrase):
        if command.name == "bar":
            return likely >= _EVEN
        return likely >= _POSSIBLE or first.probability < _NEARLY
    if _is_loose(turn, command, rest, phrase):
        return likely >= _LIKELY or _says_formula(turn, command)
    if "further" in phrase.slots and first.wish == "waste":
        return True  # 'and 2 oranges': more of what was logged is waste as well
    if same:  # a name is unknown: the command says which
        return not _names_nothing(phrase)
    reason = any(one.slot == "reason" and isinstance(one.value, Noun) for one in phrase.filled)
    if reason and command_at_start(turn.message.text) is not None:
        return True  # 'chucked 5 graprfruits gone off', but not '4 grapefruits peeled'
    learnt = any(wish in found.odds for wish in wishes_of(command))
    sentence = any(map(_is_sentence, phrase.filled))
    # What else must be less likely than this.
    other = (_EVEN if sentence else _NEARLY) if named else 0 if learnt else _EVEN
    # A question for stock by another word may ask something else: 'qué hay para mañana'.
    least = _POSSIBLE if named or command.writes else _LIKELY
    return likely >= least or first.probability < other


def _is_waste(turn: Turn, command: Command, rest: str) -> bool:
    """Whether a text is waste of a thing of a known kind, 'waste ice', or of a thing that was spilt."""
    if command.name != "waste":
        return False
    spoken = command_at_start(turn.message.text)
    if spoken is not None and spoken[0].name == "spilt":
        return True
    phrase = command.phrase(turn, rest) if is_named(command, turn.message.text) else None
    said = [] if phrase is None else phrase.filled
    return [one.slot for one in said] == ["fruit"] and all(map(is_known, said))


def _says_formula(turn: Turn, command: Command) -> bool:
    """Whether a text begins with two words for a new formula: 'new recipe', where 'new' may be anything."""
    text = turn.message.text.casefold()
    return command.name == "new" and any(
        text.startswith(f"{word} ") for word in words_of(command, tongue().language) if " " in word
    )


def means_other(command: Command, found: Readings) -> bool:
    """Whether a line very likely means something other than a command."""
    first = found.first
    return first is not None and first.probability >= _VERY_LIKELY and found.of(command) < _POSSIBLE


def _names_nothing(phrase: Phrase) -> bool:
    """Whether every unknown name is made of little words: 'it', 'per spray'."""
    known = keyword_table(tongue().language)
    filled = [one for one in phrase.filled if isinstance(one.value, Unknown)]
    names = [one.text for one in filled if one.slot in {"formula", "subject"}]
    if any(one.slot == "reason" and _is_sentence(one) for one in filled):
        return True  # 'five limes this afternoon they were off'
    return bool(names) and all(word in known for name in names for word in name.casefold().split())


def asks_for_name(dialogue: DialogueState) -> bool:
    """Whether the question in progress is for the name of something new, which may be any words."""
    return dialogue.asking in _NEW_NAMES


def reads_as_answer(dialogue: DialogueState, text: str, turn: Turn) -> bool:
    """Whether a text answers the question in progress."""
    command = all_commands()[dialogue.command]
    slot = next(slot for slot in command.slots if slot.name == dialogue.asking)
    phrase = parser.try_read(slot.reads_by, text, turn.vocabulary)
    # An unknown name: a command's word then means the command.
    if phrase is None or any(names_unknown(one.value) for one in phrase.slots.values()):
        return False
    words = next((one.value for one in phrase.slots.values() if isinstance(one.value, str)), None)
    return words is None or _is_taken(turn, command, slot, dialogue, words)


def _is_taken(turn: Turn, command: Command, slot: AnySlot, dialogue: DialogueState, words: str) -> bool:
    """Whether a free-text question accepts these words: 'week' is no bottle and no city."""
    try:
        slot.accept(turn, filling.evaluate(turn, command, dialogue), words)
    except REFUSALS:
        return False
    return True


def counts_itself(command: Command, text: str, turn: Turn) -> bool:
    """Whether this command also logs counted fruit, and parses none of it as a note."""
    phrase = command.phrase(turn, text)
    return phrase is not None and not any(isinstance(one.value, str) for one in phrase.slots.values())
