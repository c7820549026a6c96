"""Tests of the files in deploy/, as far as this machine can check them."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tomllib
import zipfile
from collections.abc import Collection
from configparser import RawConfigParser
from importlib import metadata
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from bot.__main__ import main
from bot.settings import Settings
from storage import migrate

_ROOT = Path(migrate.__file__).parent.parent
_DEPLOY = _ROOT / "deploy"
_UNITS = ["peel-ledger.service", "peel-ledger-backup.service", "peel-ledger-backup.timer"]
_SERVICES = _UNITS[:2]
_MOST_EXPOSED = 2.0  # systemd's own scale from 0 to 10; "OK" begins below 5


def _unit(name: str) -> RawConfigParser:
    parser = RawConfigParser(strict=False, comment_prefixes=("#",), delimiters=("=",))
    parser.optionxform = str  # type: ignore[assignment,method-assign]
    parser.read_string((_DEPLOY / name).read_text())
    return parser


# -- the lock file ---------------------------------------------------------------------------


def _locked() -> dict[str, dict[str, list[str]]]:
    """Name, versions (they may differ by the version of Python), and hashes of each."""
    found: dict[str, dict[str, list[str]]] = {}
    hashes: list[str] = []
    for line in (_DEPLOY / "requirements.lock").read_text().splitlines():
        begins = re.match(r"([a-z0-9-]+)==([^ ;]+)", line)
        if begins:
            hashes = found.setdefault(begins[1], {}).setdefault(begins[2], [])
        elif "--hash=" in line:
            hashes += re.findall(r"--hash=(sha256:[0-9a-f]{64})", line)
        else:
            assert not line.strip() or line.lstrip().startswith("#"), line
    return found


def test_every_locked_package_has_hashes() -> None:
    locked = _locked()
    assert len(locked) > 20
    assert [name for name, versions in locked.items() if not all(versions.values())] == []


def _needs(name: str, locked: Collection[str]) -> list[Requirement]:
    """The requirements of the locked version, if this machine has exactly that version."""
    try:
        here = metadata.distribution(name)
    except metadata.PackageNotFoundError:
        return []
    needs = [Requirement(one) for one in here.requires or []] if here.version in locked else []
    return [one for one in needs if one.marker is None or one.marker.evaluate({"extra": ""})]


def test_all_that_the_project_needs_is_locked_with_what_that_needs() -> None:
    project = tomllib.loads((_ROOT / "pyproject.toml").read_text())["project"]
    extras = project["optional-dependencies"]
    wanted = [Requirement(one) for one in project["dependencies"] + extras["postgres"] + extras["cjk"]]
    locked = _locked()
    seen: set[str] = set()
    while wanted:
        one = wanted.pop()
        name = canonicalize_name(one.name)
        again = f"{one}: make the lock file anew, its first lines say how"
        assert name in locked, again
        assert any(one.specifier.contains(version) for version in locked[name]), again
        if name not in seen:
            seen.add(name)
            wanted += _needs(name, locked[name])
    assert len(seen) > 30


def test_no_address_of_a_registry_and_no_path_of_a_machine_is_named() -> None:
    for path in (one for one in _DEPLOY.iterdir() if one.is_file()):
        text = path.read_text()
        for bad in (
            "index-url=",
            "--index-url ",
            "find-links",
            "pythonhosted",
            "docker.io",
            "/home/",
            "/root",
        ):
            assert bad not in text, f"{path.name}: {bad}"


# -- systemd ---------------------------------------------------------------------------------


@pytest.mark.parametrize("name", _SERVICES)
def test_the_units_start_what_the_command_line_knows(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    words = _unit(name)["Service"]["ExecStart"].split()
    assert words[1:3] == ["-m", "bot"]
    with pytest.raises(SystemExit) as ended:
        main([words[3], "--help"])
    assert ended.value.code == 0
    known = capsys.readouterr().out
    assert all(word in known for word in words[4:] if word.startswith("--"))


@pytest.mark.parametrize("name", _SERVICES)
def test_the_units_run_as_nobody_special_and_write_their_own_folder_only(name: str) -> None:
    service = _unit(name)["Service"]
    assert service["User"] == "peel-ledger"
    assert service["ProtectSystem"] == "strict"
    assert service["NoNewPrivileges"] == "yes"
    assert service["CapabilityBoundingSet"] == ""
    assert service["UMask"] == "0077"
    assert "ReadWritePaths" not in service


def test_the_bot_is_not_started_again_for_what_that_cannot_mend() -> None:
    # bot.channels.telegram: 2 for a missing or wrong token, 3 for another poller.
    assert _unit("peel-ledger.service")["Service"]["RestartPreventExitStatus"] == "2 3"


needs_systemd = pytest.mark.skipif(
    shutil.which("systemd-analyze") is None, reason="no systemd-analyze on this machine"
)


@pytest.fixture
def installed(tmp_path: Path) -> Path:
    """A root folder with the units and the programs that they start."""
    if not Path("/usr/lib/systemd/system/basic.target").exists():
        pytest.skip("systemd's own units are not on this machine")
    shutil.copytree("/usr/lib/systemd/system", tmp_path / "usr/lib/systemd/system", symlinks=True)
    units = tmp_path / "etc/systemd/system"
    units.mkdir(parents=True)
    for name in _UNITS:
        shutil.copy(_DEPLOY / name, units)
    python = tmp_path / "opt/peel-ledger/.venv/bin/python"
    python.parent.mkdir(parents=True)
    python.write_text("#!/bin/sh\n")
    python.chmod(0o755)
    return tmp_path


def _analyze(*words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        ["systemd-analyze", "--no-pager", *words],
        env={**os.environ, "LC_ALL": "C.UTF-8"},
        capture_output=True,
        text=True,
        check=False,
    )


@needs_systemd
def test_systemd_itself_finds_nothing_wrong(installed: Path) -> None:
    done = _analyze("verify", f"--root={installed}", *_UNITS)
    assert (done.returncode, "peel" in done.stdout + done.stderr) == (0, False), done.stderr


@needs_systemd
def test_systemd_would_find_something_wrong(installed: Path) -> None:
    unit = installed / "etc/systemd/system/peel-ledger.service"
    unit.write_text(unit.read_text().replace("Type=exec", "Type=exex"))
    assert "exex" in _analyze("verify", f"--root={installed}", "peel-ledger.service").stderr


@needs_systemd
@pytest.mark.parametrize("name", _SERVICES)
def test_systemd_calls_the_units_little_exposed(name: str) -> None:
    done = _analyze("security", "--offline=yes", str(_DEPLOY / name))
    level = re.search(r"Overall exposure level for \S+: ([\d.]+)", done.stdout)
    assert level is not None, done.stderr
    assert float(level[1]) <= _MOST_EXPOSED


# -- containers ------------------------------------------------------------------------------


def _instructions() -> list[tuple[str, str]]:
    text = re.sub(r"^\s*#.*\n", "", (_DEPLOY / "Containerfile").read_text(), flags=re.MULTILINE)
    lines = text.replace("\\\n", " ").splitlines()
    return [(words[0], words[1]) for line in lines if (words := line.split(maxsplit=1))]


def test_the_image_runs_as_nobody_special_from_hashed_wheels() -> None:
    instructions = _instructions()
    users = [rest for word, rest in instructions if word == "USER"]
    assert users == ["10001:10001"]
    assert all(
        rest.split()[0].startswith("python:3.11-slim") for word, rest in instructions if word == "FROM"
    )
    installs = [rest for word, rest in instructions if "pip install" in rest]
    assert len(installs) == 1
    assert "--require-hashes" in installs[0]
    assert "--only-binary :all:" in installs[0]
    assert ("ENTRYPOINT", '["python", "-m", "bot"]') in instructions
    checks = [rest for word, rest in instructions if word == "HEALTHCHECK"]
    assert checks[0].endswith('CMD ["python", "-m", "bot", "ready"]')


def test_the_image_copies_only_what_is_there_and_let_through() -> None:
    let_through = [
        line[1:]
        for line in (_DEPLOY / "Containerfile.dockerignore").read_text().splitlines()
        if line.startswith("!")
    ]
    copied = [rest.split()[0] for word, rest in _instructions() if word == "COPY" and "--from" not in rest]
    assert sorted(copied) == sorted(let_through)
    assert all((_ROOT / one).exists() for one in copied)


def test_what_the_image_holds_is_enough_to_start(tmp_path: Path) -> None:
    """The copied folders alone, in an empty environment, in a folder outside the project."""
    app, state = tmp_path / "app", tmp_path / "state"
    for name in ("bot", "storage"):
        shutil.copytree(_ROOT / name, app / name, ignore=shutil.ignore_patterns("__pycache__"))
    state.mkdir()
    environment = {
        "PATH": "/usr/bin:/bin",
        "PYTHONPATH": str(app),
        "XDG_DATA_HOME": str(state),
        "MPLCONFIGDIR": str(state),
        "PYTHONDONTWRITEBYTECODE": "1",
    }
    code = f"import sys, bot; assert bot.__file__.startswith({str(app)!r}), bot.__file__"
    for words in (["-c", code], ["-m", "bot", "migrate"], ["-m", "bot", "backup", "--drill"]):
        done = subprocess.run(
            [sys.executable, *words], cwd=app, env=environment, capture_output=True, text=True, check=False
        )
        assert done.returncode == 0, done.stderr
    assert list((state / "peel-ledger" / "backups").glob("*.sqlite"))


@pytest.mark.long
def test_image_and_units_have_all_built_that_a_start_would_build_anew(tmp_path: Path) -> None:
    """By the words of either: sources compiled, and the grammar's tables beside the grammar."""
    runs = [rest for word, rest in _instructions() if word == "RUN" and "compileall" in rest]
    assert len(runs) == 1
    (line,) = [one for one in (_DEPLOY / "NOTES.md").read_text().splitlines() if "compileall -q" in one]
    in_notes = line.removeprefix("( cd /opt/peel-ledger && ").removesuffix(" )").replace(".venv/bin/", "")
    assert " ".join(runs[0].split()) == in_notes
    for name in ("bot", "storage"):
        shutil.copytree(
            _ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__", "*.tables")
        )
    for command in in_notes.split(" && "):
        subprocess.run([sys.executable, *command.split()[1:]], cwd=tmp_path, check=True)
    assert (tmp_path / "bot" / "chat" / "grammar" / "grammar.tables").stat().st_size
    sources = [path for path in tmp_path.rglob("*.py") if path.parent.name != "__pycache__"]
    assert len(sources) == len(list(tmp_path.rglob("*.pyc"))) > 100
    for unit in _SERVICES:
        assert "PYTHONDONTWRITEBYTECODE" not in (_DEPLOY / unit).read_text()


# Sources of what is compiled or trained, and documents.
_NOT_READ = {".po", ".pot", ".cfg", ".tsv", ".md"}


@pytest.mark.long
def test_the_package_holds_all_that_a_first_start_reads(tmp_path: Path) -> None:
    pytest.importorskip("setuptools", minversion="77")
    tree = tmp_path / "tree"
    tree.mkdir()
    built = shutil.ignore_patterns("__pycache__", "*.tables")
    for name in ("bot", "storage"):
        shutil.copytree(_ROOT / name, tree / name, ignore=built)
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(_ROOT / name, tree)
    files = (one for one in tree.glob("*/**/*") if one.is_file() and one.suffix not in _NOT_READ)
    read = {one.relative_to(tree).as_posix() for one in files}
    code = "import sys; from setuptools import build_meta; print(build_meta.build_wheel(sys.argv[1]))"
    done = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path)], cwd=tree, capture_output=True, text=True, check=True
    )
    with zipfile.ZipFile(tmp_path / done.stdout.split()[-1]) as wheel:
        wheel.extractall(tmp_path / "installed")
        names = set(wheel.namelist())
    assert read <= names
    (entries,) = [name for name in names if name.endswith("/entry_points.txt")]
    assert "peel-ledger = bot.__main__:main" in (tmp_path / "installed" / entries).read_text()
    # The saved tables match: loading works with building and saving disabled.
    code = (
        "from bot.chat.grammar import tables\n"
        "tables.build = tables.save = None\n"
        "print(len(tables.load().options.start))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=tmp_path / "installed",
        env={"PATH": "/usr/bin:/bin", "HOME": str(tmp_path)},
        capture_output=True,
        text=True,
        check=True,
    )
    assert int(done.stdout) > 50


def _service(name: str) -> str:
    text = (_DEPLOY / "compose.yaml").read_text()
    found = re.search(rf"^  {name}:\n((?:    .*\n|\n)+)", text, re.MULTILINE)
    assert found is not None
    return found[1]


@pytest.mark.parametrize("name", ["bot", "database", "backup", "proxy"])
def test_every_service_is_shut_in_and_not_root(name: str) -> None:
    service = _service(name)
    assert "<<: *shut" in service
    user = re.search(r'^    user: "(\d+):\d+"$', service, re.MULTILINE)
    assert user is not None
    assert int(user[1]) > 0
    assert "privileged" not in service
    assert "cap_add" not in service
    assert "read_only: false" not in service


def test_what_shuts_the_services_in() -> None:
    text = (_DEPLOY / "compose.yaml").read_text()
    shut = text[text.index("x-shut: &shut") : text.index("services:")]
    for needed in ("read_only: true", "cap_drop: [ALL]", "no-new-privileges:true"):
        assert needed in shut
    assert "inside: {internal: true}" in text
    assert "networks: [inside]\n" in _service("database")
    assert "ports:" not in _service("database") + _service("bot")
    assert "test: [CMD, python, -m, bot, ready]" in _service("bot")


def test_the_bot_listens_for_the_proxy_at_the_port_that_it_asks() -> None:
    assert 'LISTEN_ADDRESS: "0.0.0.0:8080"' in _service("bot")
    assert "set $bot bot:8080;" in (_DEPLOY / "proxy.conf").read_text()
    assert not Settings(listen_address="0.0.0.0:8080").mistake


def test_the_settings_that_the_example_names_are_known() -> None:
    text = (_DEPLOY / "bot.env.example").read_text()
    named = re.findall(r"^#?([A-Z_]+)=", text, re.MULTILINE)
    assert {"TELEGRAM_BOT_TOKEN", "TELEGRAM_WEBHOOK_URL", "TELEGRAM_WEBHOOK_SECRET"} <= set(named)
    assert {name.casefold() for name in named} <= set(Settings.names())


@pytest.mark.parametrize("name", ["bot.env", "database.env"])
def test_no_secret_is_kept_in_the_project(name: str) -> None:
    for line in (_DEPLOY / f"{name}.example").read_text().splitlines():
        if re.match(r"(\w*TOKEN|\w*PASSWORD|\w*SECRET)=", line):
            assert line.endswith("="), line
    assert "deploy/*.env" in (_ROOT / ".gitignore").read_text().splitlines()
