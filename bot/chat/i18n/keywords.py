"""The little words of the grammar, in each language that is understood."""

from __future__ import annotations

import unicodedata
from functools import cache

from bot.chat.i18n.keywords_es import SPANISH

_ENGLISH = {
    "TO": "to into make fill until till",
    "FOR": "for",
    "FROM": "from",
    "WITH": "with from using",
    "WITHOUT": "without no",
    "IN": "in as",
    "OF": "of",
    "AND": "and",
    "AT": "at",
    "ON": "on",
    "IS": "is are cost costs",
    "EACH": "each apiece ea per piece pieces",
    "DRINKS": "drink drinks serve serves serving servings cocktail cocktails",
    "BOTTLES": "bottle bottles sprayer sprayers",
    "SPRAYS": "spray sprays mist mists pump pumps squirt squirts",
    "GARNISHES": "garnish garnishes peel peels twist twists zest zests wheel wheels wedge wedges",
    "LOSS": "loss lost lose losing spill spillage",
    "PER_CENT": "percent pct",
    "VOL": "vol abv",
    "PROOF": "proof",
    "GRAMS": "weight grams mass",
    "LOT": "lot lots",
    "REST": "rest rests resting",
    "DISCARD": "discard discards bin binned throw dump toss",
    "HOURS": "hour hours hr hrs h",
    "DAYS": "day days",
    "WEEKS": "week weeks wk wks",
    "MONTHS": "month months",
    "MINUTES": "minute minutes min mins",
    "CLEAR": "clear bright",
    "HAZY": "hazy cloudy haze milky",
    "SPLIT": "split separated layers layered",
    "DONE": "done finish finished ready rested ok okay that's_it that's_all thats_it thats_all",
    "KIND": "kind type",
    "KEEP": "keep same default",
    "RENAME": "rename renamed",
    "ARCHIVE": "archive archived",
    "RESTORE": "restore unarchive",
    "CHANGE": "change edit amend",
    "REMOVE": "remove delete drop",
    "VERSION": "version v",
    "LAST": "last previous",
    "THIS": "this that it",
    "MORE": "more",
    "YES": "yes y yeah yep",
    "NO": "no n nope",
    "OPEN": "open opened opening",
    "USED": "used",
    "UP": "up",
    "BATCH": "batch batches",
    "NOTE": "note notes",
    "GARNISH_FOR": "replaces garnish",
    "REPLACES": "replaces instead replace",
    "HAVE": "have got",
    "ALL": "all everything",
    "FACTOR": "times fold",
    "DOUBLE": "double twice",
    "TRIPLE": "triple thrice",
    "HALF": "half",
    "CELSIUS": "c celsius centigrade",
    "FAHRENHEIT": "f fahrenheit",
    "DEGREES": "degree degrees deg",
    "SPIRIT": "spirit spirits alcohol ethanol",
    "READS": "reads reading hydrometer",
    "SOURCES": "source sources",
    "ARTICLE": "a an the",
    "EVENING": "evening night",
    "PRIMING": "priming prime primed",
    "GRADED": "food-grade foodgrade",
    "NONE": "none nothing never",
    "KEPT": "kept stored",
    "WARM": "warm room",
    "DOWN": "down",
    "COLD": "cold refrigerated chilled fridge",
    "BEST": "best expires expiry use",
    "BEFORE": "before by",
    "TODAY": "today",
    "YESTERDAY": "yesterday",
    "AGO": "ago",
    "MANAGER": "manager managers",
    "MEMBER": "member members",
    "PEOPLE": "people person persons",
    "BOUGHT": "bought buy",
    "COUNTED": "count counted",
    "SET": "set",
    "FRUITS": "fruit fruits",
    "SHOPPING": "shopping",
    "RAN": "ran sold",
    "OUT": "out",
    "PACKS": "case cases box boxes crate crates sack sacks bag bags tray trays pack packs net nets",
    "PICTURE": "picture pictures chart graph trend",
    "SINCE": "since",
    "BECAUSE": "because cause since due_to too all",
    "CENTS": "cent cents c ct p pence penny",
    "COPIES": "copies copy labels label",
}


_LANGUAGES: dict[str, dict[str, str]] = {"es": SPANISH}
LONGEST_PHRASE = 4  # words


@cache
def keyword_table(language: str) -> dict[str, tuple[str, ...]]:
    """Return the terminals that a word or phrase may stand for; English is understood in every language.

    Phrases have single spaces; what has accents is found without them too.
    """
    table: dict[str, tuple[str, ...]] = {}
    for words in (_LANGUAGES.get(language[:2], {}), _ENGLISH):
        for terminal, listed in words.items():
            for word in listed.split():
                for form in {word.replace("_", " "), _bare(word).replace("_", " ")}:
                    if terminal not in table.get(form, ()):
                        table[form] = (*table.get(form, ()), terminal)
    return table


def _bare(word: str) -> str:
    return "".join(c for c in unicodedata.normalize("NFKD", word) if not unicodedata.combining(c))


@cache
def keyword_phrases(language: str) -> frozenset[str]:
    """Return the first words of phrases."""
    return frozenset(words.split(" ")[0] for words in keyword_table(language) if " " in words)
