"""Lines to send: usual ones, and mutations by haste or malice."""

from __future__ import annotations

from random import Random

from bot.chat.dialogue.registry import all_commands

# Usual lines beyond the commands' own examples.
SAID = (
    "start",
    "hello",
    "6 oranges mouldy, 2 limes",
    "waste 6 oranges mouldy\n2 limes dried out\n1.5 kg lemons",
    "waste 3 limes",
    "waste",
    "batch",
    "batch #1 to 8 x 50 ml",
    "batch #1 x2",
    "batch 1",
    "batch 3",
    "batches all",
    "check 1 hazy, a thin skin",
    "check 2 clear",
    "open 1",
    "used 2",
    "discard 1 40 ml, spilt",
    "lot 1 #1 A2231",
    "which A2231",
    "label 1",
    "label 2 a4-3x7 x4 from 9",
    "label 1 roll-62 x2",
    "photos 1",
    "scale #1 with 12 ml oil",
    "scale #1 for 600 drinks, 5 % loss",
    "scale #1 to 400 ml in grams at 27 C",
    "scale #1 to 400 ml with 75.5 % spirit instead",
    "cost #1 to 8x50ml",
    "strength #1",
    "strength 500 ml 40 % to 30 %",
    "clear #1 more",
    "dose #1",
    "price #1 10 ml 7.90",
    "price orange 0.60 each",
    "formula #1.1",
    "new formula Test cordial\nsugar 100 g\nlime juice 100 ml\nkind cordial",
    "change #1: rest 2 days",
    "rename #2 to Winter drops",
    "archive #2",
    "restore #2",
    "undo",
    "undo 5",
    "log",
    "log 12",
    "week",
    "week 2026-W48",
    "bar",
    "bar closing hour 04:00",
    "bar hours",
    "bar mixing dash",
    "bar costs wage 12-14",
    "bar house pictures dark",
    "bar hours quiet hours none",
    "change the currency to USD",
    "set quiet hours to none",
    "is batch 1 ready?",
    "orange price",
    "how much oil for 600 drinks",
    "formula #1 version 1 more",
    "thanks",
    "bar loss 5 %",
    "bar reasons mouldy, dried out, other",
    "bar language en",
    "team",
    "invite 3 people 2 days",
    "join 1-1-ABCDEFGHJK",
    "join 2-1-ABCDEFGHJK",
    "start join_2_1_ABCDEFGHJK",
    "start b_1_1",
    "start b_2_1",
    "start b_2_2",
    "start b_999999999999_1",
    "bars",
    "bars 1",
    "bars 2",
    "export me",
    "forget me",
    "delete bar",
    "restore bar",
    "leave",
    "later 1 2 hours",
    "done 1",
    "reason 1 mouldy",
    "cautions #1",
    "allergens #1",
    "cancel",
    "back",
    "help waste",
)
_NUMBERS = (
    "0", "-1", "1e999", "99999999999999999999", "0.0000001", "½", "1/0", "1 1/2", "1,000", "1.000,5",
    "#0", "#999999999", "#1.99", "٣", "९", "0x10", "NaN", "²", "1/3", "2147483648", "9223372036854775808",
)  # fmt: skip
_JUNK = (
    "💥", "\u202e", "\u200b", "\x00", "e\u0301", "ﬁ", "<b>", "&amp;", "</pre>", "%s", "{0}", "{name}",
    "'", '"', "\\", "--", ";", "\t", "\n", "  ", "@peel_ledger_test_bot", "/", "//", "= 1 x", "~ 1 0",
    "@1 ", "@2 ", "…", "\ud83d", "א", "柚子", "x" * 300, "of of of", "ml ml", "to to",
)  # fmt: skip
_UNITS = ("ml", "g", "oz", "kg", "cups", "dash", "%", "°F", "C", "each", "drinks", "days", "l", "proof")


def known_lines() -> list[str]:
    """Every example of a command, every command's bare words, and some more."""
    lines = list(SAID)
    for command in all_commands().values():
        lines += [command.name, *command.words, *command.examples]
    return lines


def mutated(random: Random, line: str, others: list[str]) -> str:
    """The line after some random mutations."""
    for _accident in range(random.choice((0, 0, 1, 1, 1, 2, 3, 6))):
        line = random.choice(_ACCIDENTS)(random, line, others)
    return line[:4096]


def _place(random: Random, line: str) -> int:
    return random.randint(0, len(line))


def _drop_sign(random: Random, line: str, others: list[str]) -> str:
    at = _place(random, line)
    return line[:at] + line[at + 1 :]


def _double_sign(random: Random, line: str, others: list[str]) -> str:
    at = _place(random, line)
    return line[:at] + line[at : at + 1] * 2 + line[at + 1 :]


def _swap_words(random: Random, line: str, others: list[str]) -> str:
    words = line.split(" ")
    random.shuffle(words)
    return " ".join(words)


def _drop_word(random: Random, line: str, others: list[str]) -> str:
    words = line.split(" ")
    words.pop(random.randrange(len(words)))
    return " ".join(words)


def _word_of_another(random: Random, line: str, others: list[str]) -> str:
    words = line.split(" ")
    words.insert(random.randint(0, len(words)), random.choice(random.choice(others).split(" ")))
    return " ".join(words)


def _number(random: Random, line: str, others: list[str]) -> str:
    words = line.split(" ")
    words[random.randrange(len(words))] = random.choice(_NUMBERS)
    return " ".join(words)


def _unit(random: Random, line: str, others: list[str]) -> str:
    words = line.split(" ")
    words[random.randrange(len(words))] = random.choice(_UNITS)
    return " ".join(words)


def _junk(random: Random, line: str, others: list[str]) -> str:
    at = _place(random, line)
    return line[:at] + random.choice(_JUNK) + line[at:]


def _two_lines(random: Random, line: str, others: list[str]) -> str:
    return line + random.choice(("\n", ", ", " and ", "; ")) + random.choice(others)


def _capitals(random: Random, line: str, others: list[str]) -> str:
    return random.choice((line.upper(), line.title(), line.swapcase()))


def _again(random: Random, line: str, others: list[str]) -> str:
    return random.choice((" ", "\n", ", ")).join([line] * random.choice((2, 3, 40)))


def _cut(random: Random, line: str, others: list[str]) -> str:
    return line[: _place(random, line)]


_ACCIDENTS = (
    _drop_sign,
    _drop_sign,
    _double_sign,
    _swap_words,
    _drop_word,
    _word_of_another,
    _number,
    _number,
    _unit,
    _junk,
    _two_lines,
    _capitals,
    _again,
    _cut,
)


def sendable(line: str) -> str:
    """Limit a line to what a phone would send: whole characters, not empty, at most 4096."""
    whole = line.encode("utf-8", "ignore").decode("utf-8").strip()
    return whole[:4096] or "."
