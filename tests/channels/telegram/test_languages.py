"""Tests of two languages over real HTTP: a phone's menu, a night in Spanish, and the channel's notes."""

from __future__ import annotations

import pytest

from bot.channels.console.console import terminal_language
from tests.api import Fault, Person
from tests.channels.telegram.conftest import MIST, Telephone

BRUMA = (
    "nueva fórmula Bruma de pomelo\n"
    "aceite de pomelo 12 ml\n"
    "propilenglicol 22 ml\n"
    "alcohol neutro 96 % 62 ml\n"
    "tipo bruma aromática\n"
    "sustituye pomelo"
)


async def _eva(telephone: Telephone) -> Person:
    eva = telephone.server.person("Eva", "es-ES")
    await eva.says("/start")
    for answer in ("La Gaviota", "Europe/Madrid", "EU", "EUR", "metric", "05:00"):
        await eva.says(answer)
    return eva


async def test_a_phone_is_offered_the_words_of_its_language(telephone: Telephone) -> None:
    await telephone.opens_bar()  # the menus are set by now
    server = telephone.server
    group_of = server.person("Iris", "de")
    eva, ana = server.person("Eva", "es"), server.person("Ana", "en")
    group = server.group("La Gaviota", [eva])
    assert server.menu(eva)[:3] == ["merma", "hoy", "escala"]
    assert server.menu(ana)[:3] == ["waste", "today", "scale"] == server.menu(group_of)[:3]
    assert len(server.menu(eva)) == len(server.menu(ana))
    assert "merma" in server.menu(eva, group)


async def test_a_night_in_spanish(telephone: Telephone) -> None:
    eva = await _eva(telephone)
    await eva.says(BRUMA)
    await eva.says("precio aceite de pomelo 10 ml 7,90")
    scaled = await eva.says("escala bruma de pomelo a 8 x 50 ml")
    assert "Precaución: Apaga toda llama" in scaled.text
    made = await eva.taps("Anotar este lote")
    assert "Lote 1: Bruma de pomelo" in made.text
    mark = telephone.server.mark()
    assert await telephone.tick(hours=24, minutes=1) >= 1
    rested = await telephone.server.follow(eva, mark)
    assert "ya ha reposado" in rested.text
    clear = await eva.taps("Claro")
    assert "claro" in clear.text
    assert "Anotado: 6 naranjas" in (await eva.says("/merma 6 naranjas mohosas")).text
    assert "Merma" in (await eva.says("/semana")).text
    assert "Deshecho: 6 naranjas, con moho" in (await eva.says("deshacer")).text


async def test_what_the_channel_adds_is_in_the_language_of_the_answer(telephone: Telephone) -> None:
    eva = await _eva(telephone)
    telephone.server.fail_next("sendMessage", Fault.drop_after())
    said = await eva.says("ayuda", expects=2)
    assert "(Puede que esto esté repetido.)" in said.text


async def test_each_member_is_answered_in_their_own_language(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    made = await ana.says("invite 1 person 1 day")
    code = next(line for line in made.text.splitlines() if line.startswith("join "))
    eva = telephone.server.person("Eva", "es")
    assert "Te damos la bienvenida" in (await eva.says(code)).text
    assert "Anotado" in (await eva.says("merma 2 limas")).text
    assert "Log" in (await ana.says("log")).text
    assert "I speak English" in (await eva.says("/language English")).text
    assert "Logged" in (await eva.says("waste 2 limas")).text


@pytest.mark.parametrize(
    ("variables", "language"),
    [
        ({"LANG": "es_ES.UTF-8"}, "es-ES"),
        ({"LANG": "en_US.UTF-8", "LC_ALL": "es_MX.UTF-8"}, "es-MX"),
        ({"LANG": "es_ES.UTF-8", "LC_ALL": "C"}, None),
        ({"LANG": "C.UTF-8"}, None),
        ({}, None),
    ],
)
def test_the_console_speaks_the_terminals_language(variables: dict[str, str], language: str | None) -> None:
    assert terminal_language(variables) == language
