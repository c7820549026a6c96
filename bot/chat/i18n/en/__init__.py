"""English: keywords, numbers and plurals. The code holds the texts and the command words.

Found by `bot.chat.i18n.languages`; nothing imports it by name.
"""

from __future__ import annotations

from fractions import Fraction

from bot.chat.i18n.en.concepts import CONCEPTS
from bot.chat.i18n.en.keywords import KEYWORDS
from bot.chat.i18n.en.plurals import half, plural, singular
from bot.chat.i18n.en.tables import COLUMNS, TABLES, TOTALS
from bot.chat.i18n.languages import Language, counting, spelled

_HALF = Fraction(1, 2)
_AMERICAN = {
    "mouldy": "moldy",
    "mould": "mold",
    "colour": "color",
    "flavour": "flavor",
    "flavouring": "flavoring",
    "flavourings": "flavorings",
    "vapour": "vapor",
    "litre": "liter",
    "litres": "liters",
    "millilitre": "milliliter",
    "labelled": "labeled",
    "catalogue": "catalog",
    "judgement": "judgment",
    "pasteurised": "pasteurized",
    "oxidised": "oxidized",
    "sulphites": "sulfites",
    "smelt": "smelled",
    "spelt": "spelled",
    "spilt": "spilled",
}

_FILLERS = (
    "a an and are can could do does for from get have how i if in is it me my of on or please should so"
    " that the them there this to us want we what when where which who why with would you your"
)

_ONES = "one two three four five six seven eight nine"
_SPELLED = spelled(
    f"{_ONES} ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen",
    "twenty thirty forty fifty sixty seventy eighty ninety",
    (" ", "-"),
    {"a hundred": 100, **{f"{one} hundred": int(number) * 100 for one, number in counting(_ONES).items()}},
    (" and ", " "),
)


LANGUAGE = Language(
    tag="en",
    name="English",
    locale="en_GB",  # before the place is known: everyone reads a 24-hour clock
    locales={"US": "en_US", "UK": "en_GB", "EU": "en_IE", "other": "en_AU"},
    regional={"US": _AMERICAN},
    zones={
        "en-us": ("America/New_York", "America/Chicago", "America/Denver", "America/Los_Angeles"),
        "en": (
            *("Europe/London", "America/New_York", "America/Chicago"),
            *("America/Los_Angeles", "Australia/Sydney"),
        ),
    },
    stemmer="english",
    plural=plural,
    singular=singular,
    half=half,
    keywords=KEYWORDS,
    concepts=CONCEPTS,
    # A dozen is a unit, not a number.
    number_words={
        **_SPELLED,
        **dict.fromkeys(("a", "an"), Fraction(1)),
        **dict.fromkeys(("half", "a half", "half a", "half an", "half of a"), _HALF),
        **dict.fromkeys(("a couple", "couple of", "a couple of"), Fraction(2)),
    },
    halves=("and a half", "and half"),
    range_words=("to", "or"),
    articles=frozenset({"the"}),
    fillers=frozenset(_FILLERS.split()),
    thanks=frozenset(
        {"thanks", "thank you", "thanks a lot", "many thanks", "thx", "ty", "cheers", "great", "perfect"}
        | {"nice", "good", "ok", "okay", "got it", "great, thanks", "ok thanks", "okay thanks", "ok, thanks"}
    ),
    called=frozenset({"english", "ingles"}),
    currencies=frozenset(
        {"dollar", "dollars", "buck", "bucks", "quid", "pound", "pounds", "usd", "gbp"}
        | {"euro", "euros", "eur"}
    ),
    bottle_sizes={"twenties": 20, "thirties": 30, "fifties": 50, "hundreds": 100},
    sold_out="86",
    columns=COLUMNS,
    tables=TABLES,
    totals=TOTALS,
)
