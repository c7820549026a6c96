"""Tests that saved grammar tables are used only if they are intact and match the grammar."""

from __future__ import annotations

import threading
from pathlib import Path

import lark
import pytest
from lark import Lark

from bot.chat.grammar import tables

_GRAMMAR = tables.grammar()


@pytest.fixture(autouse=True)
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty cache folder and a checkout without shipped tables; a short grammar, quick to build."""
    grammar = tmp_path / "grammar.lark"
    grammar.write_text("%declare NUMBER WORD\nscale_cmd: NUMBER\nname_slot: WORD\n")
    monkeypatch.setattr(tables, "GRAMMAR", grammar)
    monkeypatch.setattr(tables, "FEATURES", tmp_path / "features")
    monkeypatch.setattr(tables, "SHIPPED", tmp_path / "grammar.tables")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache" / "peel-ledger"


def _kept(cache: Path) -> Path:
    """Return the one file in the cache folder."""
    (found,) = cache.iterdir()
    return found


@pytest.fixture
def builds(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The list of grammars that were built instead of loaded."""
    built: list[str] = []
    build = tables.build

    def counted(text: str) -> Lark:
        built.append(text)
        return build(text)

    monkeypatch.setattr(tables, "build", counted)
    return built


def test_a_second_start_loads_what_the_first_saved(builds: list[str], cache: Path) -> None:
    first, second = tables.load(), tables.load()
    assert len(builds) == 1
    assert _kept(cache).stat().st_size
    assert first.options.start == second.options.start == ["scale_cmd", "name_slot"]


@pytest.mark.parametrize(
    "damage",
    [
        lambda content: b"",
        lambda content: content[:-1],
        lambda content: content[: len(content) // 2],
        lambda content: content.replace(b"NUMBER", b"NUMBFR"),
        lambda content: b"not the key\n" + content.partition(b"\n")[2],
        lambda content: content.partition(b"\n")[0],
    ],
    ids=["empty", "cut by one", "half", "changed", "another key", "first line only"],
)
def test_a_damaged_file_is_built_anew(builds: list[str], cache: Path, damage: object) -> None:
    tables.load()
    assert callable(damage)
    kept = _kept(cache)
    kept.write_bytes(damage(kept.read_bytes()))
    assert tables.load().options.start == ["scale_cmd", "name_slot"]
    assert len(builds) == 2
    tables.load()
    assert len(builds) == 2  # the new file replaced the damaged one


def test_tables_of_another_grammar_are_left_aside(builds: list[str]) -> None:
    tables.load()
    tables.GRAMMAR.write_text("%declare NUMBER\nother_cmd: NUMBER\n")
    assert tables.load().options.start == ["other_cmd"]
    assert len(builds) == 2


def test_tables_of_another_lark_are_left_aside(builds: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    tables.load()
    monkeypatch.setattr(lark, "__version__", "0.0")
    tables.load()
    assert len(builds) == 2


def test_shipped_tables_come_before_the_cache(builds: list[str], cache: Path) -> None:
    assert tables.save_shipped(tables.SHIPPED)
    tables.load()
    assert len(builds) == 1
    assert not cache.exists()


def test_without_a_folder_to_write_in_it_is_built(builds: list[str], cache: Path) -> None:
    cache.parent.mkdir()
    cache.write_text("a file where the folder should be")
    assert tables.load().options.start == ["scale_cmd", "name_slot"]
    assert len(builds) == 1
    assert not tables.save_shipped(cache / "grammar.tables")


def test_many_starts_at_once_leave_one_whole_file(cache: Path) -> None:
    starts = [threading.Thread(target=tables.load) for _ in range(8)]
    for one in starts:
        one.start()
    for one in starts:
        one.join()
    assert tables.read(_kept(cache), _kept(cache).read_text("latin-1").split(" ")[0]) is not None


def test_only_the_latest_few_are_kept(cache: Path) -> None:
    for number in range(20):
        tables.GRAMMAR.write_text(f"%declare NUMBER\nn{number}_cmd: NUMBER\n")
        tables.load()
    assert len(list(cache.iterdir())) == 16
    tables.load()
    assert len(list(cache.iterdir())) == 16


@pytest.mark.long
def test_the_real_grammar_reads_the_same_from_saved_tables(tmp_path: Path) -> None:
    built = tables.build(_GRAMMAR)
    assert tables.save(built, tmp_path / "real.tables", "key")
    saved = tables.read(tmp_path / "real.tables", "key")
    assert saved is not None
    assert saved.options.start == built.options.start
    assert {str(rule) for rule in saved.rules} == {str(rule) for rule in built.rules}
