"""Spanish: texts, keywords, numbers, units and plurals.

Found by `bot.chat.i18n.languages`; nothing imports it by name.
"""

from __future__ import annotations

from fractions import Fraction

from bot.chat.i18n.es.concepts import CONCEPTS
from bot.chat.i18n.es.keywords import KEYWORDS
from bot.chat.i18n.es.plurals import half, plural, singular
from bot.chat.i18n.es.tables import COLUMNS, TABLES, TOTALS
from bot.chat.i18n.languages import Language, spelled

# The catalogue is written as in Spain. Words of Argentina, Chile and Uruguay, and of the rest of America.
_SOUTHERN = {"zumo": "jugo", "zumos": "jugos", "coste": "costo", "costes": "costos"}
_AMERICAN = {
    **_SOUTHERN,
    "pomelo": "toronja",
    "pomelos": "toronjas",
    "el pomelo": "la toronja",
    "del pomelo": "de la toronja",
}
_AMERICAN_COUNTRIES = "MX US PR GT HN SV NI CR PA CU DO CO VE EC PE BO PY"

_FILLERS = (
    "a al como con cuál cuándo de del dónde el en es está hacer hago la las lo los me mi mis para"
    " por puedo que qué quiero se si sobre su tengo un una y yo"
)

_SMALL = (
    "uno dos tres cuatro cinco seis siete ocho nueve diez once doce trece catorce quince dieciséis diecisiete"
    " dieciocho diecinueve veinte veintiuno veintidós veintitrés veinticuatro veinticinco veintiséis"
    " veintisiete veintiocho veintinueve"
)
_HUNDREDS = (
    "doscient",
    "trescient",
    "cuatrocient",
    "quinient",
    "seiscient",
    "setecient",
    "ochocient",
    "novecient",
)
_SPELLED = {
    word: number
    for small in (_SMALL, _SMALL.translate(str.maketrans("éó", "eo")))
    for word, number in spelled(
        small,
        "treinta cuarenta cincuenta sesenta setenta ochenta noventa",
        (" y ",),
        {"cien": 100, "ciento": 100}
        | {f"{root}{end}": 100 * at for at, root in enumerate(_HUNDREDS, start=2) for end in ("os", "as")},
        (" ",),
    ).items()
}


LANGUAGE = Language(
    tag="es",
    name="Español",
    locale="es_ES",
    locales={"US": "es_US"},
    regional={
        **dict.fromkeys(("AR", "CL", "UY"), _SOUTHERN),
        **dict.fromkeys(_AMERICAN_COUNTRIES.split(), _AMERICAN),
    },
    zones={
        "es": ("Europe/Madrid", "America/Mexico_City", "America/Bogota", "America/Argentina/Buenos_Aires")
    },
    stemmer="spanish",
    plural=plural,
    singular=singular,
    letters="áéíóúñ",
    half=half,
    keywords=KEYWORDS,
    concepts=CONCEPTS,
    units={
        "ml": "ml, mililitro, mililitros",
        "cl": "cl, centilitro, centilitros",
        "dl": "dl, decilitro, decilitros",
        "l": "l, lt, lts, litro, litros",
        "mg": "mg, miligramo, miligramos",
        "g": "g, gr, grs, gramo, gramos",
        "kg": "kg, kgs, kilo, kilos, kilogramo, kilogramos",
        "lb": "lb, libra, libras",
        "each": "pieza, piezas, pza, pzas, unidad, unidades, ud, uds, cada uno, cada una",
        "dozen": "docena, docenas",
        "dash": "golpe, golpes",
        "drop": "gota, gotas",
        "barspoon": "cuchara de bar, cucharas de bar, cucharilla de bar, cucharillas de bar",
        "splash": "chorrito, chorritos",
        "part": "parte, partes",
        "bottle": "botella, botellas",
        "oz": "oz, onza, onzas",
        "fl oz": "onza líquida, onzas líquidas, onza fluida, onzas fluidas",
        "tsp": "cdta, cdtas, cdita, cditas, cucharadita, cucharaditas",
        "tbsp": "cda, cdas, cucharada, cucharadas",
        "cup": "taza, tazas",
        "pint": "pinta, pintas",
        "quart": "cuarto de galón, cuartos de galón",
        "gallon": "galón, galones",
    },
    number_words={
        **_SPELLED,
        **dict.fromkeys(("un", "una"), Fraction(1)),
        **dict.fromkeys(("medio", "media"), Fraction(1, 2)),
        "un par de": Fraction(2),
    },
    halves=("y medio", "y media"),
    range_words=("a", "o"),
    articles=frozenset({"el", "la", "los", "las"}),
    fillers=frozenset(_FILLERS.split()),
    thanks=frozenset(
        {"gracias", "muchas gracias", "mil gracias", "vale", "vale gracias", "vale, gracias", "perfecto"}
        | {"genial", "estupendo", "ok gracias", "ok, gracias", "de acuerdo"}
    ),
    called=frozenset({"spanish", "espanol", "castellano"}),
    currencies=frozenset({"euro", "euros", "peso", "pesos", "mxn"}),
    other_words={
        "closing hour": ("cierre",),
        "quiet hours": ("silencio",),
        "garnish minutes": ("minutos por adorno",),
        "manager": ("encargada", "responsable"),
        "member": ("integrante",),
        "owner": ("dueño", "dueña", "titular", "propietario", "propietaria"),
    },
    columns=COLUMNS,
    tables=TABLES,
    totals=TOTALS,
)
