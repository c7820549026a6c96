"""The names of a bar as the grammar recognises them, cached until the bar changes."""

from __future__ import annotations

from bot.chat.grammar.lexer import Noun, Vocabulary
from bot.chat.i18n.language import Tongue, _, other_words, tongue
from bot.chat.i18n.setting_names import ALL, PAGES, SETTINGS
from bot.trade.formulas.kinds import Preparation
from bot.trade.words import N_
from bot.work.context import DEFAULT_REASONS, BarView
from bot.work.labels.labels import ALL_STOCKS
from bot.work.names import names
from storage.unit import Book, Unit


def vocabulary_for(unit: Unit, bar: BarView | None, language: str) -> Vocabulary:
    """Return the words of a bar in a language; without a bar only the common ones."""
    if bar is None:
        return _common(Vocabulary(language))
    book = unit.bar(bar.id)
    key = _key(language, tongue().locale)
    return book.remembered(bar.revision, key, lambda: _words_of(book, bar, language))


def is_at_hand(unit: Unit, bar: BarView | None, spoken: Tongue) -> bool:
    """Whether the words of a bar need not be collected first, which takes long for one with many names."""
    key = _key(spoken.language, spoken.locale)
    return bar is None or unit.memory.is_quick(bar.id, bar.revision, key)


def _key(language: str, locale: str) -> tuple[str, ...]:
    return ("words", language, locale)


def _words_of(book: Book, bar: BarView, language: str) -> Vocabulary:
    vocabulary = Vocabulary(language)
    for name in names(book):
        # Where there is one oil, "oil" means that.
        oil = ("oil", _("oil")) if name.only_oil else ()
        vocabulary.add(Noun(name.kind.upper(), str(name.id), name.name), *name.also, *oil)
    for reason in bar.settings.reasons:
        vocabulary.add(Noun("REASON", reason, _(reason)), reason, *other_words(reason))
    for reason, words in REASON_WORDS.items():
        if reason in bar.settings.reasons:
            for word in words:
                vocabulary.add(Noun("REASON", reason, _(word)), word)
    return _common(vocabulary)


# More words for the default reasons.
REASON_WORDS = {
    DEFAULT_REASONS[0]: (
        *(N_("mould"), N_("moldy"), N_("mold"), N_("rotten"), N_("rot"), N_("bad")),
        *(N_("gone off"), N_("went off"), N_("spoilt"), N_("spoiled")),
        *(N_("overripe"), N_("over-ripe"), N_("over ripe"), N_("too ripe"), N_("very ripe"), N_("past it")),
        *(N_("gone bad"), N_("went bad")),
    ),
    DEFAULT_REASONS[1]: (N_("dry"), N_("dried"), N_("shrivelled")),
    DEFAULT_REASONS[2]: (N_("peeled"), N_("naked"), N_("not used"), N_("unused")),
    DEFAULT_REASONS[3]: (N_("overprepped"), N_("over prepped"), N_("too many"), N_("leftover")),
    DEFAULT_REASONS[4]: (N_("damaged"), N_("bruised"), N_("delivery")),
}


def _common(vocabulary: Vocabulary) -> Vocabulary:
    for preparation in Preparation:
        vocabulary.add(Noun("PREPARATION", preparation.value, _(preparation.value)), preparation.value)
    for stock in ALL_STOCKS.values():
        vocabulary.add(Noun("STOCK", stock.name, stock.handle), stock.handle.replace("-", " "))
    for key, (label, also, _fields) in SETTINGS.items():
        vocabulary.add(Noun("SETTING", key, _(label)), label, *also, *other_words(label))
    for page in (ALL, *PAGES):
        vocabulary.add(Noun("PAGE", page, page))
    vocabulary.add(Noun("PAGE", "wordings", "wordings"), _("wordings"))
    return vocabulary
