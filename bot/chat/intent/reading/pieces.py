"""Find the typed pieces of a free line: amounts, names, days, prices, each with the words to say it again."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from bot.chat.grammar.day_phrases import month_names
from bot.chat.grammar.lexer import Noun, Option, Reader, Vocabulary, stem
from bot.chat.grammar.syntax import DAYS_AGO, Day
from bot.chat.i18n.keywords import keyword_for, stands_for
from bot.chat.i18n.language import show_number, tongue
from bot.chat.i18n.languages import languages
from bot.chat.intent.reading.tokens import fold, is_fruit, plain_text
from bot.trade.formulas.kinds import IngredientKind, guess_kind

_BEGIN_KEYWORDS = frozenset({"FRESH", "LAST", "THIS", "WEEKS", "MONTHS"})
# What may stand after a number, and the kind of piece it makes.
_AFTER_NUMBER = {
    "UNIT": "amount",
    "PERCENT": "level",
    "PER_CENT": "level",
    "PROOF": "level",
    "VOL": "level",
    "SIGN": "money",
    "CODE": "money",
    "CENTS": "cents",
    "DRINKS": "drinks",
    "SPRAYS": "sprays",
    "MINUTES": "minutes",
    "HOURS": "duration",
    "DAYS": "duration",
    "WEEKS": "duration",
    "MONTHS": "duration",
    "COPIES": "copies",
    "GARNISHES": "garnishes",
}
_NOUNS = {
    "FORMULA": "formula",
    "PERSON": "person",
    "SPRAYER": "sprayer",
    "DRINK": "drink",
    "SETTING": "setting",
    "REASON": "reason",
}
_NOUNS |= {"PAGE": "page", "PREPARATION": "preparation"}
_WORDS = {"CLEAR": "clarity", "HAZY": "clarity", "SPLIT": "clarity", "DOUBLE": "factor", "HALF": "factor"}
_WORDS |= {"TRIPLE": "factor", "MANAGER": "role", "MEMBER": "role", "MORE": "more", "ADD": "more"}
_DAYS = {"DATE", "DAY", *DAYS_AGO}
_ONE = frozenset({"a", "an"})
_LOT = re.compile(r"(?=[^\W_]*\d)(?=[^\W_]*[A-Za-z])[A-Za-z0-9][A-Za-z0-9/-]{2,19}\Z", re.ASCII)
_HALF = Fraction(1, 2)
_LONGEST_UNLISTED = 3  # words


@dataclass(frozen=True, slots=True)
class Typed:
    """A piece of a line: its kind, its words in a form that the grammar reads, and its place.

    `counts` marks a number in words that counts what follows: 'two layers' names no batch.
    """

    kind: str
    text: str
    at: int
    day: Day | None = None
    number: str = ""
    counts: bool = False


def pieces_of(text: str, vocabulary: Vocabulary) -> list[Typed]:
    """Return the typed pieces of a line in the order of the words."""
    reader = Reader(plain_text(text), vocabulary)
    found = list(_scan(reader))
    if not any(one.kind == "formula" for one in found):
        found += _named_in_part(reader, vocabulary)
    return sorted([*_bottles(found, reader), *_unlisted(found, reader)], key=lambda one: one.at)


def _scan(reader: Reader) -> Iterator[Typed]:
    at = 0
    while at < len(reader.pieces):
        typed, taken = _piece(reader, at)
        if typed is not None:
            yield typed
        at += taken


def _piece(reader: Reader, at: int) -> tuple[Typed | None, int]:
    options = reader.options(at)
    noun = _longest(options, lambda one: isinstance(one.value, Noun) and one.terminal != "STOCK")
    number = next((one for one in options if one.terminal == "NUMBER"), None)
    if noun is not None and isinstance(noun.value, Noun) and (number is None or noun.length >= number.length):
        return _noun(reader, at, noun, noun.value), noun.length
    day = next((one for one in options if one.terminal in _DAYS), None)
    if day is not None and (number is None or options.index(day) < options.index(number)):
        return _day(reader, at, day), day.length
    if number is not None:
        return _number(reader, at, number)
    return _word(reader, at, options)


def _longest(options: list[Option], fits: Callable[[Option], bool]) -> Option | None:
    return max((one for one in options if fits(one)), key=lambda one: one.length, default=None)


def _said(reader: Reader, at: int, length: int) -> str:
    return reader.text[reader.pieces[at].start : reader.pieces[at + length - 1].end]


def _noun(reader: Reader, at: int, option: Option, noun: Noun) -> Typed:
    if noun.kind == "INGREDIENT":
        if guess_kind(noun.name) is IngredientKind.FRUIT:
            return _fruit(reader, at, option.length)
        return Typed("ingredient", noun.name, at)
    return Typed(_NOUNS.get(noun.kind, noun.kind.lower()), noun.name, at)


def _fruit(reader: Reader, at: int, length: int) -> Typed:
    """Return a fruit, or the juice of it that a line names: 'lime juice', 'zumo de lima'."""
    end = at + length
    for start, stop in ((at, end + 1), (at - 2, end)):
        if start >= 0 and stop <= len(reader.pieces):
            said = _said(reader, start, stop - start)
            kind = guess_kind(said)
            if kind is IngredientKind.JUICE:
                return Typed("fruit", said, at)
            if kind is IngredientKind.CITRUS_OIL:
                return Typed("ingredient", said, at)  # 'aceite de lima' is no lime
    return Typed("fruit", _said(reader, at, length), at)


def _day(reader: Reader, at: int, option: Option) -> Typed:
    said = _said(reader, at, option.length)
    if option.terminal in {"DATE", "DAY"}:
        return Typed("day", said, at, Day(str(option.value), words=said))
    return Typed("day", said, at, Day(None, DAYS_AGO[option.terminal], words=said))


def _number(reader: Reader, at: int, option: Option) -> tuple[Typed | None, int]:
    """Return a number with what follows it."""
    said = _said(reader, at, option.length)
    if not isinstance(option.value, Fraction) or _is_negative(reader, at):
        # 1,000 where it is ambiguous, and -50: no place takes them
        return Typed("unclear", said, at, number=said), option.length
    cases = _cases(reader, at, option)
    if cases is not None:
        return cases
    if said.casefold() in _ONE and not _is_named_fruit(reader, at + 1):
        return None, 1
    if (
        said.casefold() == "one"
        and at > 1
        and _is_named_fruit(reader, at - 1)
        and _is(reader, at - 2, "ARTICLE")
    ):
        return None, 1  # 'the grapefruit one'
    written = said if reader.pieces[at].terminal == "NUMBER" else show_number(option.value)
    after = at + option.length
    following = reader.options(after) if after < len(reader.pieces) else []
    known = next((one for one in following if _measures(one)), None)
    if at and reader.pieces[at - 1].terminal == "SIGN":
        return Typed("money", f"{reader.pieces[at - 1].text}{written}", at, number=written), option.length
    times = any(one.terminal == "TIMES" for one in following)
    if at and reader.pieces[at - 1].terminal == "TIMES" and not _is_number(reader, at - 2) and known is None:
        return Typed("factor", f"x{written}", at, number=written), option.length
    if times and not _is_number(reader, after + 1):
        return Typed("factor", f"x{written}", at, number=written), option.length + 1
    if known is None:
        kind = "half" if option.value == _HALF else "number"
        counts = _counts(reader, at, after)
        return _priced(reader, after, Typed(kind, written, at, number=written, counts=counts), option.length)
    kind = _AFTER_NUMBER[known.terminal]
    rest = _said(reader, after, known.length)
    words = f"{written}{'' if kind == 'money' else ' '}{rest}"
    return Typed(kind, words, at, number=written), option.length + known.length


def _measures(option: Option) -> bool:
    """Whether a piece says what the number before it counts; the name of a currency is read as such."""
    return option.terminal in _AFTER_NUMBER and (option.terminal != "CODE" or str(option.value).isupper())


def _cases(reader: Reader, at: int, option: Option) -> tuple[Typed, int] | None:
    """Return a number of cases of a fruit, which is no number of pieces."""
    after = at + option.length
    packs = reader.options(after) if after < len(reader.pieces) else []
    known = next((one for one in packs if one.terminal == "PACKS"), None)
    if known is None or not isinstance(option.value, Fraction):
        return None
    following = after + known.length
    thing = following + (following < len(reader.pieces) and _is(reader, following, "OF"))
    if not _is_named_fruit(reader, thing):
        return None
    number = show_number(option.value)
    return Typed("cases", f"{number} {_said(reader, after, known.length)}", at, number=number), (
        option.length + known.length
    )


def _counts(reader: Reader, at: int, after: int) -> bool:
    """Whether a number counts what follows it, in words 'two bits' and in any form '2 layers'."""
    is_name = at > 0 and (_is(reader, at - 1, "ARTICLE") or _is(reader, at - 1, "BATCH"))
    if is_name or after >= len(reader.pieces):
        return False
    following = {one.terminal for one in reader.options(after)}
    if "SPLIT" in following:
        return reader.pieces[after].text.casefold().endswith("s")
    return reader.pieces[at].text.isalpha() and following == {"WORD"}


def _priced(reader: Reader, after: int, number: Typed, length: int) -> tuple[Typed, int]:
    """Return a number before a currency's name as money, and before 'fifties' as bottles."""
    word = fold(reader.pieces[after].text) if after < len(reader.pieces) else ""
    if any(word in one.currencies for one in languages().values()):
        return Typed("money", number.text, number.at, number=number.number), length + 1
    size = next((one.bottle_sizes[word] for one in languages().values() if word in one.bottle_sizes), None)
    if size is not None:
        words, numbers = f"{number.text} x {size} ml", f"{number.text} {size}"
        return Typed("bottles", words, number.at, number=numbers), length + 1
    return number, length


def _is_negative(reader: Reader, at: int) -> bool:
    """Whether a dash stands right before a number, and not between two."""
    dash = at > 0 and reader.pieces[at - 1].terminal == "DASH"
    return dash and reader.pieces[at - 1].end == reader.pieces[at].start and not _is_number(reader, at - 2)


def _is_number(reader: Reader, at: int) -> bool:
    return 0 <= at < len(reader.pieces) and _is(reader, at, "NUMBER")


def _is(reader: Reader, at: int, terminal: str) -> bool:
    return any(one.terminal == terminal for one in reader.options(at))


def _word(reader: Reader, at: int, options: list[Option]) -> tuple[Typed | None, int]:
    piece = reader.pieces[at]
    unit = _one_unit(reader, at, options)
    if unit is not None:
        return unit
    if piece.text.casefold() in _ONE and _is_named_fruit(reader, at + 1):
        return Typed("number", "1", at, number="1"), 1
    for kind in ("WEEK", "YEARMONTH", "TIME", "HASH"):
        if piece.terminal == kind:
            return Typed({"YEARMONTH": "month", "HASH": "number"}.get(kind, kind.lower()), piece.text, at), 1
    begins = next((one for one in options if one.terminal in _BEGIN_KEYWORDS), None)
    found = None if begins is None else _keyword(reader, at, begins)
    if found is not None:
        return found
    word = next((one for one in options if one.terminal in _WORDS), None)
    if word is not None:
        said = _said(reader, at, word.length)
        kind = _WORDS[word.terminal]
        return Typed(kind, keyword_for("MORE") if kind == "more" else said, at), word.length
    if piece.terminal == "WORD" and is_fruit(fold(piece.text)):
        return _fruit(reader, at, 1), 1
    if _LOT.match(piece.text):
        return Typed("lot", piece.text, at), 1
    language = _language(piece.text)
    return (Typed("language", language, at), 1) if language else (None, 1)


def _is_named_fruit(reader: Reader, at: int) -> bool:
    if at >= len(reader.pieces):
        return False
    named = (one.value for one in reader.options(at) if isinstance(one.value, Noun))
    fruit = any(one.kind == "INGREDIENT" and guess_kind(one.name) is IngredientKind.FRUIT for one in named)
    return fruit or is_fruit(fold(reader.pieces[at].text))


def _one_unit(reader: Reader, at: int, options: list[Option]) -> tuple[Typed | None, int] | None:
    """Return 'a litre', 'per kg' and '/l' as an amount of one."""
    leads = {"ARTICLE", "EACH"}
    if reader.pieces[at].text != "/" and not any(one.terminal in leads for one in options):
        return None
    if at + 1 >= len(reader.pieces):
        return None
    unit = next((one for one in reader.options(at + 1) if one.terminal == "UNIT"), None)
    if unit is None:
        return None
    return Typed("amount", f"1 {_said(reader, at + 1, unit.length)}", at), 1 + unit.length


def _keyword(reader: Reader, at: int, begins: Option) -> tuple[Typed, int] | None:
    if begins.terminal == "FRESH":
        return Typed("fresh", keyword_for("FRESH"), at), begins.length
    return _past_span(reader, at, begins) if at + begins.length < len(reader.pieces) else None


def _past_span(reader: Reader, at: int, begins: Option) -> tuple[Typed, int] | None:
    """Return 'last week' or 'this week', in either order of the words."""
    for one in reader.options(at + begins.length):
        found = {begins.terminal: (at, begins), one.terminal: (at + begins.length, one)}
        kind = "week" if "WEEKS" in found else "month"
        length = begins.length + one.length
        if not found.keys() & {"WEEKS", "MONTHS"}:
            continue
        if "THIS" in found:
            return Typed(f"this_{kind}", "", at), length
        if "LAST" in found:
            where, last = found["LAST"]
            # 'semana pasada' is typed as 'pasada' after the command's word, 'last week' as both words.
            said = _said(reader, where, length if where == at else last.length)
            return Typed(kind, said, at), length
    return None


def _language(word: str) -> str:
    plain = fold(word)
    return next((one.name for one in languages().values() if plain in {fold(one.name), *one.called}), "")


def _named_in_part(reader: Reader, vocabulary: Vocabulary) -> list[Typed]:
    """Return the formula with a part of its name in the line: 'the syrup' where there is one syrup."""
    said = {stem(piece.text, vocabulary.language): at for at, piece in enumerate(reader.pieces)}
    found = {}
    for formula in vocabulary.of_kind("FORMULA"):
        words = [stem(word, vocabulary.language) for word in formula.name.split()]
        at = [said[word] for word in words if word in said and len(word) > 2]
        if at:
            found[formula.id] = (len(at), min(at), formula.name)
    most = max((one[0] for one in found.values()), default=0)
    best = [one for one in found.values() if one[0] == most]
    return [Typed("formula", best[0][2], best[0][1])] if len(best) == 1 else []


def _unlisted(found: list[Typed], reader: Reader) -> Iterator[Typed]:
    """Yield the words after a number that mean nothing known: '40 palomas' where none are on the list."""
    for one in found:
        after = one.at + 1
        while after < len(reader.pieces) and {each.terminal for each in reader.options(after)} == {"WORD"}:
            after += 1
        if one.kind == "number" and one.at + 1 < after <= one.at + 1 + _LONGEST_UNLISTED:
            yield Typed("unlisted", _said(reader, one.at + 1, after - one.at - 1), one.at + 1)


def _bottles(found: list[Typed], reader: Reader) -> list[Typed]:
    """Join '8 x 50 ml', '6 bottles of 50 ml' and 'six fifties' into one piece."""
    joined: list[Typed] = []
    for one in found:
        before = joined[-1] if joined else None
        between = reader.pieces[before.at + 1 : one.at] if before is not None else []
        if (
            before is not None
            and before.kind == "number"
            and one.kind == "amount"
            and (any(_is_bottle(piece.text) for piece in between) or _bottles_follow(reader, before, one))
        ):
            joined[-1:] = _both_ways(before, one)
        else:
            joined.append(one)
    return [*joined, *_bottle_counts(joined, reader)]


def _bottle_counts(found: list[Typed], reader: Reader) -> Iterator[Typed]:
    """Yield '2 bottles' for each number right before the word."""
    for one in found:
        word = "".join(piece.text for piece in reader.pieces[one.at + 1 : one.at + 2])
        if one.kind == "number" and stands_for(word, "BOTTLES", tongue().language):
            yield Typed("bottle_count", f"{one.text} {word}", one.at)


def _both_ways(number: Typed, size: Typed) -> list[Typed]:
    """Return bottles of one size, and the amount in all of them."""
    numbers = f"{number.number} {size.number}"
    found = [Typed("bottles", f"{number.text} x {size.text}", number.at, number=numbers)]
    if number.number.isdecimal() and size.number.isdecimal():
        unit = size.text.removeprefix(size.number).strip()
        found.append(Typed("packs", f"{int(number.number) * int(size.number)} {unit}", number.at))
    return found


def _bottles_follow(reader: Reader, number: Typed, amount: Typed) -> bool:
    """Whether a number and an amount stand side by side before 'bottles'."""
    after = amount.at + 2  # a number and its unit
    return number.at + 1 == amount.at and after < len(reader.pieces) and _is_bottle(reader.pieces[after].text)


def _is_bottle(word: str) -> bool:
    spoken = tongue().language
    return (
        word in {"x", "×", "*", "X"}
        or stands_for(word, "BOTTLES", spoken)
        or stands_for(word, "TIMES", spoken)
    )


def month_named(text: str, today: date) -> str | None:
    """Return the last month of a name in a text, as 2026-10."""
    months = month_names(tongue().language)
    found = next((months[word] for word in fold(text).replace(",", " ").split() if word in months), None)
    if found is None:
        return None
    return f"{today.year - (found > today.month)}-{found:02}"
