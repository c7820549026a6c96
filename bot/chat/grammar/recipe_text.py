"""Rewrite ingredient lines as people paste and type them into lines that the grammar reads.

Bullets, dashes between name and amount, remarks in brackets, 'one bottle of', and shares of the whole.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache

from bot.chat.grammar.lexer import Vocabulary
from bot.chat.i18n.keywords import keyword_for, keyword_table, own_units, stands_for
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.languages import ENGLISH
from bot.chat.i18n.numbers import number_words
from bot.trade.errors import TradeError
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES, IngredientKind, Preparation, guess_kind
from bot.trade.formulas.unit_words import look_up

_AFTER_NAME = frozenset({"new_cmd", "change_cmd"})  # rules that read a name, then ingredient lines
_LINES = "lines_slot"
_BREAK = re.compile(r"(\s*\n\s*|\s*;\s*|\s*,(?!\d)\s*)")
_BULLET = re.compile(r"^(?:[•·▪◦‣*]\s*|[-–—]+\s+|[-–—]+(?=[^\W\d])|\d{1,2}[.)]\s+(?=\S))")
_REMARK = re.compile(r"\s*[(\[]([^()\[\]\n]*)[)\]]")
_LEADER = re.compile(r"(?<=[^\W\d_%])(?:\s+[-–—]+\s*|\s*[:=]\s*)(?=[\d½¼¾⅓⅔])|(?<=[%)])\s*[-–—:=]+\s*(?=\d)")
_QUALIFIED = re.compile(r"(?<!\S)([^\W\d_]+),\s+([^\W\d_]+)(?=\s+\d)")
_AMOUNT = re.compile(r"[\d½¼¾⅓⅔]\s*([^\W\d_]+)")
_SHARE = re.compile(r"^(\d+(?:[.,]\d+)?)\s*%\s*(.+)$|^(.+?)[\s:–-]+(\d+(?:[.,]\d+)?)\s*%$")
_LEAST_SHARES = 2  # one percentage alone may be a strength
_DISTILLED = re.compile(r"^dest?il\w*$", re.IGNORECASE)  # a distilled oil is another than a pressed one


class SharesError(TradeError):
    """Shares of the whole that cannot be amounts.

    `total` is what they add up to; `solid` names one that may be a share by weight.
    """

    def __init__(self, total: Fraction, solid: str = "") -> None:
        super().__init__(total, solid)
        self.total = total
        self.solid = solid


def tidied(rule: str, text: str, vocabulary: Vocabulary) -> str:
    """Return the text of a rule with its ingredient lines rewritten. Raises SharesError."""
    if rule == _LINES:
        return _lines(text, vocabulary)
    if rule == "scale_cmd":
        return with_own_bottle(text)
    if rule not in _AFTER_NAME:
        return text
    head, mark, rest = re.match(r"([^:\n]*)([:\n]?)(.*)", text, re.DOTALL).groups()  # type: ignore[union-attr]
    return f"{head}{mark} {_lines(rest, vocabulary)}" if rest.strip() else text


def with_own_bottle(text: str) -> str:
    """Return 'to one bottle of lime oil (10 ml)' as what it says: with 10 ml of lime oil."""

    def measured(found: re.Match[str]) -> str:
        lead, number, name, amount = found.groups(default="")
        if number_words(tongue().language).get(number.casefold(), 1) != 1 or not is_amount(amount):
            return found.group()
        leads = any(_is(lead, one) for one in ("TO", "FOR", "AT", "FROM", "WITH"))
        return f"{keyword_for('WITH') if leads else lead} {amount} {name}".lstrip()

    return _own_bottle(tongue().language).sub(measured, text)


@cache
def _own_bottle(language: str) -> re.Pattern[str]:
    """Return the pattern of a lead, one bottle of something, and its size."""
    known = keyword_table(language).items()
    bottle, of = ("|".join(word for word, those in known if one in those) for one in ("BOTTLES", "OF"))
    name = r"(?:[^\W\d]+ ){0,4}?[^\W\d]+?"
    return re.compile(
        rf"(?:\b([^\W\d]+) )?\b([^\W\d]+|1) (?:{bottle}) (?:{of}) ({name})(?: (?:{of})|,)? ?"
        rf"\(?(\d+(?:[.,]\d+)? ?[^\W\d]+)\b\)?",
        re.IGNORECASE,
    )


def left_out(text: str) -> list[str]:
    """Return the remarks of typed lines that change no amount: '(one bottle)', 'approx'."""
    found = [one.group().strip() for one in _REMARK.finditer(text) if _kept(one[1], text) == ""]
    return [*found, *(one for one in re.split(r"[\s,;]+", text) if _is(one.strip("."), "ROUGHLY"))]


def is_list(text: str) -> bool:
    """Whether a text looks like lines of ingredients, also if the grammar does not take it."""
    plain = _BULLET.sub("", text.strip())
    if not plain:
        return False
    first = plain.split(" ")[0]
    begins = plain[:1].isdigit() or plain[:1] in "½¼¾⅓⅔" or _is(first, "ROUGHLY")
    ends = re.search(r"\d\s*(?:%|[^\W\d_]+)$", plain)
    return "\n" in text.strip() or begins or (ends is not None and ("%" in ends[0] or _has_amount(ends[0])))


def has_list(text: str, least: int = 0) -> bool:
    """Whether a text is a name, then lines of ingredients, also if the grammar does not take them.

    `least` is how many amounts with a unit they must have.
    """
    name, _mark, rest = [*re.split(r"([:\n])", text, maxsplit=1), "", ""][:3]
    units = sum(_is_unit(one[1]) for one in _AMOUNT.finditer(rest))
    return bool(name.strip()) and is_list(rest) and units >= least


def kind_in(name: str) -> Preparation | None:
    """Return the kind that a formula's name ends or begins with: 'lemon mist', 'bruma de limón'."""
    words = name.casefold().split()
    for kind in sorted(Preparation, key=lambda one: -len(one.value)):  # 'acid-adjusted juice' is no juice
        whole = (kind.value, _(kind.value).casefold())
        if kind is not Preparation.OTHER and any(f" {one} " in f" {' '.join(words)} " for one in whole):
            return kind
    heads = {kind.value.split()[-1]: kind for kind in Preparation if " " in kind.value}
    heads |= {_(kind.value).split()[0].casefold(): kind for kind in Preparation if " " in kind.value}
    return next((heads[word] for word in (*words[-1:], *words[:1]) if word in heads), None)


def is_amount(text: str) -> bool:
    """Whether a text begins with an amount and its unit: '10 ml lime oil'."""
    found = re.match(r"\d+(?:[.,/]\d+)?\s*([^\W\d_]+)\b", text)
    return found is not None and _is_unit(found[1])


def _lines(text: str, vocabulary: Vocabulary) -> str:
    named = {noun.name.casefold() for noun in vocabulary.nouns if "(" in noun.name}
    if not any(name in text.casefold() for name in named):
        text = _REMARK.sub(lambda one: _kept(one[1], text), text)
    parts = _BREAK.split(_QUALIFIED.sub(_qualified, text.strip()))
    parts[::2] = [_line(one) for one in parts[::2]]
    return "".join(_shares(parts))


def _qualified(found: re.Match[str]) -> str:
    """Return 'water, distilled 40 ml' as 'distilled water 40 ml'; 'water, salt 5 g' are two things."""
    name, quality = found[1], found[2]
    kind = guess_kind(name)
    after, before = f"{name} {quality}", f"{quality} {name}"
    if kind is None or guess_kind(quality) is not None or kind not in {guess_kind(after), guess_kind(before)}:
        return found.group()
    return before if tongue().language == ENGLISH else after


def _kept(remark: str, text: str) -> str:
    """Return what is kept of a remark in brackets: a strength, the only amount, 'distilled'; else nothing."""
    counted = re.match(r"\s*(\d+)\s+([^\W\d_]+)", remark)
    if counted is not None and counted[1] != "1" and _is(counted[2], "BOTTLES"):
        return f" ({remark})"  # two bottles of it may be twice the amount: the grammar refuses it
    line = next((one for one in text.split("\n") if remark in one), text)
    only = _has_amount(remark) and not _has_amount(line.replace(remark, ""))
    return f" {remark.strip()}" if "%" in remark or only or _DISTILLED.match(remark.strip()) else ""


def _line(line: str) -> str:
    line = _BULLET.sub("", line)
    line = _LEADER.sub(" ", line)
    words = line.split(" ")
    line = " ".join(one for one in words if not _is(one.strip("."), "ROUGHLY"))
    first, _space, rest = line.partition(" ")
    if _is(first, "KIND") or _is(first.rstrip(":"), "KIND"):
        kind = kind_in(rest)
        return line if kind is None else f"{first} {_(kind.value)}"
    return _of_one_bottle(line)


def _of_one_bottle(line: str) -> str:
    """Return 'one bottle of lime oil 10 ml' and 'a 10 ml bottle of lime oil' with the amount alone."""
    language = tongue().language
    words = line.split()
    if not words:
        return line
    one = number_words(language).get(words[0].casefold()) == 1 or words[0] == "1"
    rest = words[one:]
    at = next((at for at, word in enumerate(rest) if _is(word, "BOTTLES")), None)
    if at is None or at > 2 or not (one or at):
        return line
    size, after = rest[:at], rest[at + 1 :]
    if after and _is(after[0], "OF"):
        after = after[1:]
    if (size and not is_amount(" ".join(size))) or not (size or _has_amount(" ".join(after))):
        return line
    kept = [
        word for word, next_one in zip(after, [*after[1:], ""], strict=True) if not _leads(word, next_one)
    ]
    return " ".join([*size, *kept])


def _leads(word: str, following: str) -> bool:
    """Whether a word only leads to an amount: 'aceite de limón de 10 ml'."""
    return _is(word, "OF") and following[:1].isdigit() and not following.endswith("%")


def _shares(parts: list[str]) -> list[str]:
    """Return lines in shares of the whole, '2% lime oil, 98% spirit 96%', as amounts of 100 ml."""
    found = {at: shared for at in range(0, len(parts), 2) if (shared := _SHARE.match(parts[at])) is not None}
    if len(found) < _LEAST_SHARES or any(map(_has_amount, parts)):
        return parts
    shares = {at: (one[1] or one[4], one[2] or one[3]) for at, one in found.items()}
    total = sum((Fraction(number.replace(",", ".")) for number, _name in shares.values()), Fraction(0))
    solid = next((name for _number, name in shares.values() if not _is_liquid(name)), "")
    if total != 100 or solid:
        raise SharesError(total, solid)
    return [f"{shares[at][0]} ml {shares[at][1]}" if at in shares else one for at, one in enumerate(parts)]


def _is_liquid(name: str) -> bool:
    kind = guess_kind(re.sub(r"\s+\d.*", "", name))
    if kind is None or kind is IngredientKind.OTHER:
        return False
    return INGREDIENT_PROPERTIES[kind].is_liquid is True


def in_shares(text: str) -> bool:
    """Whether typed lines are shares of the whole."""
    found = [_SHARE.match(_BULLET.sub("", one)) for one in _BREAK.split(text.strip())[::2]]
    return sum(one is not None for one in found) >= _LEAST_SHARES and not _has_amount(text)


def _has_amount(text: str) -> bool:
    return any(_is_unit(one[1]) for one in _AMOUNT.finditer(text))


def _is_unit(word: str) -> bool:
    return look_up(word, own_units(tongue().language)) is not None


def _is(word: str, terminal: str) -> bool:
    return stands_for(word, terminal, tongue().language)
