"""Tests of a bar in Spanish: every command and example is understood, and no reply is in English."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

import pytest

from bot.channels.rendering import plain_lines
from bot.chat.dialogue.registry import all_commands, command_at_start, words_of
from bot.chat.features.people.setting_values import read_clock, show_clock_minute
from bot.chat.i18n import language, locale_choice
from bot.chat.i18n.language import Tongue, _, decimal_mark, show_money, show_number, speaking
from bot.chat.i18n.numbers import read_number
from bot.chat.i18n.plurals import counted_name, pieces, singular
from tests import catalogues
from tests.buttons import problems
from tests.examples import in_long_part
from tests.house import House, Person, text
from tests.prepared import prepared

_COMMANDS = all_commands()
_LOST = "No lo he entendido."
_BOOK = (
    "nueva fórmula Bruma de pomelo\naceite de pomelo 12 ml\npropilenglicol 22 ml\nalcohol neutro 96 % 62 ml\n"
    "tipo bruma aromática\nsustituye pomelo",
    "nueva fórmula Cordial de limón\nzumo de limón 400 ml\nazúcar 400 g\ntipo cordial",
    "precio aceite de pomelo 10 ml 7,90",
    "precio naranjas 0,60 cada una, 5 adornos cada una",
    "merma 6 naranjas con moho",
    *["lote bruma de pomelo a 400 ml"] * 12,
    "partida 12 aceite de pomelo A2231",
)


@pytest.fixture
def database() -> str:
    """The words do not depend on the database."""
    return "sqlite"


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar in Madrid with data, on a phone set to Spanish."""
    ana = house.person("Ana", "es")
    prepared(house, "spanish bar", lambda: _open_bar(ana))
    return ana


def _open_bar(ana: Person) -> None:
    ana.says("empezar")
    ana.says("La Gaviota")
    replies = ana.says("Madrid")
    while replies[-1].choosing:
        replies = ana.taps(replies[-1].buttons[0][0].label)
    assert replies[0].first_line == "La Gaviota está abierto."
    for line in _BOOK:
        assert ana.says(line)[0].first_line != _LOST, line


@pytest.fixture
def unsaid(monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """The texts looked up in the Spanish catalogue without a translation."""
    missed: set[str] = set()
    known = {one if isinstance(one, str) else one[0] for one in catalogues.ids(catalogues.template())}
    plain = language._

    def watched(said: str) -> str:
        if said and said not in known and language.tongue().language == "es":
            missed.add(said)
        return plain(said)

    import sys  # noqa: PLC0415 - only to find the modules that import the function

    for module in list(sys.modules.values()):
        if getattr(module, "__name__", "").startswith("bot.") and getattr(module, "_", None) is plain:
            monkeypatch.setattr(module, "_", watched)
    return missed


def test_every_command_has_spanish_words_of_its_own() -> None:
    seen: dict[str, str] = {}
    with speaking(Tongue("es")):
        for command in _COMMANDS.values():
            assert words_of(command, "es")[0] != command.name
            for words in words_of(command, "es"):
                assert seen.setdefault(words, command.name) == command.name, words
                found = command_at_start(words)
                assert found is not None, words
                assert found[0] is command, words


def test_words_are_found_without_their_accents() -> None:
    for said in ("formulas", "graduacion de", "ETIQUETA 12", "que puedo hacer", "cocteles 140"):
        assert command_at_start(said, "es") is not None, said


@pytest.mark.long
def test_every_example_is_understood(ana: Person) -> None:
    for command in _COMMANDS.values():
        for example in command.examples:
            with speaking(Tongue("es")):
                said = _(example)
                assert said != example or said in {"log"}, example
                found = command_at_start(said)
            assert found is not None, said
            english = command_at_start(example, "en")
            assert english is not None, example
            # Some examples show another command related to this one.
            assert found[0] is english[0], said
            answer = text(ana.says(said))
            for lost in (_LOST, "No he entendido", "He entendido", "falta algo", "Falta algo"):
                assert lost not in answer, f"{said}: {answer}"
            ana.says("cancelar")


def test_english_commands_go_on_working(ana: Person) -> None:
    for said in ("scale bruma de pomelo to 8 x 50 ml", "waste 6 naranjas mouldy", "week", "batch 1", "help"):
        answer = text(ana.says(said))
        assert _LOST not in answer, answer
        assert "No he entendido" not in answer, answer


def test_every_command_answers_nothing_said_usefully_and_in_spanish(
    house: House, ana: Person, unsaid: set[str]
) -> None:
    wrong: list[str] = []
    for name in list(_COMMANDS)[:: 1 if in_long_part() else 3]:
        replies = ana.says(f"/{name}")
        assert replies, name
        for reply in replies:
            assert reply.first_line.strip(), name
            assert reply.first_line != _LOST, name
            assert reply.language == "es", name
        wrong += problems(house, ana, None, replies[-1])
    assert wrong == []
    # Names and values that are the same in every language.
    mine = {"bruma de pomelo", "cordial de limón", "us", "eu", "uk", "english", "español"}
    assert {one for one in unsaid if one.casefold() not in mine and not one[0].isdigit()} == set()


_ENGLISH = re.compile(r"\b(?:the|and|with|from|each|drinks?|batch|waste|price|days?|hours?|until|after)\b")


def test_answers_hold_no_english_words(ana: Person) -> None:
    for said in (
        "escala bruma de pomelo a 8 x 50 ml",
        "escala bruma de pomelo a 400 ml en gramos",
        "coste bruma de pomelo a 8 x 50 ml",
        "coste bruma de pomelo más",
        "claridad bruma de pomelo",
        "claridad bruma de pomelo más",
        "dosis bruma de pomelo en 90 ml, 3 cócteles",
        "graduación 500 ml 96 a 70",
        "lote 12",
        "lotes",
        "revisa 12 claro",
        "semana",
        "mes",
        "registro",
        "precauciones bruma de pomelo",
        "peladas 4 naranjas",
        "ácido 280 ml zumo de naranja a lima",
        "alérgenos bruma de pomelo",
        "existencias",
        "plan",
        "equipo",
        "bar",
        "ayuda",
    ):
        for reply in ana.says(said):
            lines = [line for line in plain_lines(reply) if "Regulation" not in line and "Codex" not in line]
            found = _ENGLISH.findall("\n".join(lines))
            assert not found, f"{said}: {found}: {lines}"


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        ("merma 6 naranjas mohosas", "6 naranjas"),
        ("tirar 2 limas podridas", "2 limas"),
        ("tiré 3 limones", "3 limones"),
        ("merma media docena de limas", "6 limas"),
        ("merma 1,2 kg de limones pasados", "1,2 kg"),
        ("6 naranjas secas, 2 limas", "6 naranjas"),
        ("basura dos naranjas", "2 naranjas"),
    ],
)
def test_waste_as_one_says_it(ana: Person, said: str, wanted: str) -> None:
    answer = text(ana.says(said))
    assert "Anotad" in answer, answer
    assert wanted in answer, answer


@pytest.mark.parametrize(
    "said",
    [
        "escala bruma de pomelo al doble",
        "escalar bruma de pomelo para 600 cócteles con 5 % de pérdida",
        "escala 8 frascos de 50 ml de bruma de pomelo",
        "cuánto cuesta bruma de pomelo",
        "precio de naranjas",
        "abierto aceite de pomelo hace 3 días, en la nevera",
        "revisa lote 12 turbio: una capa fina",
        "desecha lote 11",
        "qué lotes llevan la partida A2231",
        "etiquetas lote 12",
        "semana pasada",
        "compré 2 cajas de naranjas 80 piezas 34,00",
        "cuenta naranjas 24",
        "peladas 4 naranjas",
        "exprimidas 4 naranjas 280 ml",
        "cócteles 140 ayer",
        "idioma",
        "ayuda merma",
        "¿qué puedo hacer?",
    ],
)
def test_phrases_of_a_shift(ana: Person, said: str) -> None:
    answer = text(ana.says(said))
    for lost in (_LOST, "No he entendido", "He entendido", "Falta algo", "No conozco", "No hay fórmula"):
        assert lost not in answer, answer


def test_a_member_chooses_a_language_and_the_bar_has_its_own(house: House, ana: Person) -> None:
    (reply,) = ana.says("idioma inglés")
    assert reply.language == "en"
    assert ana.says("week")[0].first_line.startswith("Waste")
    (reply,) = ana.says("language español")
    assert reply.first_line == "Desde ahora hablo español contigo."
    # The bar's own language is for phones with a language that the bot does not have.
    assert ana.says("bar idioma inglés")[0].first_line == "Idioma: English"
    code = next(
        line for line in plain_lines(ana.says("invitar 1 persona 1 día")[0]) if line.startswith("join ")
    )
    ken = house.person("Ken", "ja")
    assert ken.says(code)[0].first_line == "Welcome to La Gaviota."
    assert ken.says("week")[0].first_line.startswith("Waste")


def test_a_word_of_the_menu_works_whatever_the_language_now(ana: Person) -> None:
    ana.says("idioma inglés")
    assert ana.says("/merma 2 naranjas")[0].first_line.startswith("Logged")
    ana.says("/idioma español")
    assert ana.says("/waste 2 naranjas")[0].first_line.startswith("Anotado")


@pytest.mark.parametrize(
    ("city", "wanted"), [("Madrid", "1.234,56\u00a0€"), ("Mexico City", "$1,234.56"), ("Bogota", "1234,56")]
)
def test_money_and_numbers_take_the_signs_of_the_place(house: House, city: str, wanted: str) -> None:
    eva = house.person("Eva", "es-419")
    eva.says("empezar")
    eva.says("Bar")
    replies = eva.says(city)
    while replies[-1].choosing:
        replies = eva.taps(replies[-1].buttons[0][0].label)
    answer = text(eva.says("precio mesa 1 l 1234,56")).replace("\u00a0", " ")
    digits = re.sub(r"[^\d]", "", wanted)
    assert digits in re.sub(r"[^\d]", "", answer), answer
    assert ("1.234,56" in answer or "1234,56" in answer) == ("," in wanted[-4:] or "," in wanted[-5:]), answer


@pytest.mark.parametrize(
    ("zone", "jurisdiction", "clock", "money"),
    [
        ("Europe/Madrid", "EU", "23:30", "1.234,50 €"),
        ("America/Mexico_City", "other", "11:30 p.m.", "EUR1,234.50"),
        ("America/Bogota", "other", "11:30 p. m.", "EUR1.234,50"),
        ("America/New_York", "US", "11:30 p.m.", "EUR1,234.50"),
    ],
)
def test_the_clock_and_the_decimal_mark_are_those_of_the_place(
    zone: str, jurisdiction: str, clock: str, money: str
) -> None:
    locale = locale_choice._locale_at("es", zone, jurisdiction)
    with speaking(Tongue("es", locale, zone, "EUR")):
        shown = show_clock_minute(23 * 60 + 30)
        assert shown.replace("\u00a0", " ") == clock
        assert read_clock(shown) == 23 * 60 + 30
        assert show_money(Decimal("1234.5")).replace("\u00a0", " ") == money
        for value in (Fraction(1, 2), Fraction(1234), Fraction(5, 4), Fraction(12345)):
            assert read_number(show_number(value), decimal_mark()) == value


@pytest.mark.parametrize(
    ("said", "language"),
    [
        ("Spanish", "es"),
        ("español", "es"),
        ("espanol", "es"),
        ("ES", "es"),
        ("inglés", "en"),
        ("English", "en"),
        ("es-MX", ""),
        ("Klingon", ""),
    ],
)
def test_a_language_is_known_by_any_of_its_names(said: str, language: str) -> None:
    assert locale_choice.language_named(said) == language


def test_what_no_catalogue_speaks_falls_back_to_the_bars_language_then_english() -> None:
    assert locale_choice.spoken("es-419") == "es"
    assert locale_choice.spoken("de") == ""
    assert locale_choice.spoken(None) == ""


@pytest.mark.parametrize(
    ("one", "many"),
    [
        ("limón", "limones"),
        ("naranja", "naranjas"),
        ("nuez", "nueces"),
        ("flor", "flores"),
        ("kiwi", "kiwis"),
        ("naranja sanguina", "naranjas sanguinas"),
        ("limón verde", "limones verdes"),
        ("limón Meyer", "limones Meyer"),
        ("piel de naranja", "pieles de naranja"),
        ("hoja de laurel", "hojas de laurel"),
        ("tomate", "tomates"),
        ("mango", "mangos"),
    ],
)
def test_spanish_plurals_of_a_bars_own_names(one: str, many: str) -> None:
    with speaking(Tongue("es")):
        assert counted_name(one, Fraction(2)) == many
        assert counted_name(one, Fraction(1)) == one
        assert singular(many) == one


def test_half_of_one_in_spanish() -> None:
    with speaking(Tongue("es")):
        assert pieces("limón", Fraction(1, 2)) == "medio limón"
        assert pieces("naranja sanguina", Fraction(1, 2)) == "media naranja sanguina"


@pytest.mark.parametrize(
    ("said", "first"),
    [
        ("bar días de servicio mar-sáb", "Días de servicio: mar mié jue vie sáb"),
        ("bar dias de servicio lun mie vie", "Días de servicio: lun mié vie"),
        ("bar días de servicio todos los días", "Días de servicio: todos los días"),
        ("bar aviso de cierre no", "Aviso de cierre: no"),
        ("bar aviso de cierre 1:30", "Aviso de cierre: 1:30"),
        ("bar onzas imperiales", "Responde una de estas"),
        ("bar onzas imperial", "Onzas: onzas líquidas imperiales"),
        ("bar cucharas y tazas preguntar", "Cucharas y tazas: preguntar cada vez"),
        ("bar unidades métrico", "Unidades: ml y gramos"),
        ("bar normas Reino Unido", "Normas: Reino Unido"),
        ("bar normas otro", "Normas: las de tu país"),
        ("bar impuesto 10 % descontado", "Impuesto: 10 % descontado de los precios"),
        ("bar impuesto 8 % sumado", "Impuesto: 8 % sumado a los precios"),
        ("bar fruta pelada barra", "Fruta pelada: sobre la barra"),
        ("bar fruta pelada 36 horas", "Fruta pelada: 36 h"),
        ("bar imágenes oscuro", "Imágenes: oscuro"),
        ("bar golpe 0,8 ml", "Golpe: 0,8 ml"),
        ("bar pérdida al embotellar 2,5 %", "Pérdida al embotellar: 2,5 %"),
        ("bar sueldo 12,50", "Sueldo: 12,50"),
        ("bar moneda USD", "Moneda: USD"),
    ],
)
def test_settings_are_named_and_set_in_spanish(ana: Person, said: str, first: str) -> None:
    assert first in ana.says(said)[0].first_line.replace("\u00a0", " ")
