"""Audit the dependencies: python -m tests.audit

Checks that the installed packages match the lock file and their own hashes, with known licences; and, if
`pip-audit` is on the path and its service answers, that none has a known vulnerability. An unreachable
service is reported but is not a failure: it says nothing about the packages.
"""

from __future__ import annotations

import argparse
import base64
import hashlib
import json
import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from importlib import metadata
from pathlib import Path
from typing import Any

from packaging.requirements import Requirement

LOCK = Path(__file__).parents[1] / "deploy" / "requirements.lock"
_LICENCE = re.compile(
    r"MIT|BSD|Apache|Python Software Foundation|PSF|Mozilla Public License 2|MPL-2\.0"
    r"|Lesser General Public|LGPL|SIL Open Font|OFL-1\.1|Public Domain|HPND"
)
_PIP_AUDIT_SECONDS = 180


def locked() -> list[Requirement]:
    """Return the packages of the lock file for this machine, each with one exact version."""
    text = LOCK.read_text().replace("\\\n", " ")
    lines = [line.partition(" --hash")[0].strip() for line in text.splitlines()]
    found = [Requirement(line) for line in lines if line and not line.startswith("#")]
    return [one for one in found if one.marker is None or one.marker.evaluate()]


def _installed() -> Iterator[tuple[Requirement, metadata.Distribution | None]]:
    for one in locked():
        try:
            yield one, metadata.distribution(one.name)
        except metadata.PackageNotFoundError:
            yield one, None


def other_versions() -> list[str]:
    """Packages with another version than locked, or missing."""
    return [
        f"{one}: here is {'none' if here is None else here.version}"
        for one, here in _installed()
        if here is None or not one.specifier.contains(here.version)
    ]


def conflicts() -> list[str]:
    """Conflicts between the packages, by `pip check`."""
    done = subprocess.run([sys.executable, "-m", "pip", "check"], capture_output=True, text=True, check=False)
    return done.stdout.splitlines() if done.returncode else []


def changed_files() -> list[str]:
    """Package files that differ from the hashes in the package's RECORD."""
    found = []
    for one, here in _installed():
        for file in (here.files or []) if here is not None else []:
            if file.hash is None or file.hash.mode != "sha256":
                continue
            path = Path(str(file.locate()))
            digest = hashlib.sha256(path.read_bytes()).digest() if path.is_file() else b""
            if base64.urlsafe_b64encode(digest).rstrip(b"=").decode() != file.hash.value:
                found.append(f"{one.name}: {file}")
    return found


def licences() -> dict[str, str]:
    """The licence of each package, as declared."""
    return {one.name: _licence(here) for one, here in _installed() if here is not None}


def _licence(here: metadata.Distribution) -> str:
    about: Any = here.metadata  # a message with headers, whatever its type says
    said = about.get("License-Expression") or ""
    if not said:
        names = [
            one.rpartition(" :: ")[2] for one in about.get_all("Classifier", []) if one.startswith("License")
        ]
        said = ", ".join(names)
    return said or (about.get("License") or "none").splitlines()[0][:60]


def unknown_licences() -> list[str]:
    """Packages with a licence that has not been reviewed."""
    return [f"{name}: {said}" for name, said in licences().items() if not _LICENCE.search(said)]


def vulnerable(program: str | None = None) -> tuple[str, list[str]]:
    """Run pip-audit: its result in a sentence, and the known vulnerabilities."""
    program = program or shutil.which("pip-audit")
    if program is None:
        return "not asked: pip-audit is not on the path (pip install pip-audit, in a place of its own)", []
    words = [program, "--disable-pip", "--require-hashes", "--format", "json", "--requirement", str(LOCK)]
    try:
        done = subprocess.run(words, capture_output=True, text=True, check=False, timeout=_PIP_AUDIT_SECONDS)
        found = json.loads(done.stdout)["dependencies"]
    except (subprocess.TimeoutExpired, ValueError, KeyError):
        return "not asked: the service of pip-audit could not be reached", []
    skipped = [one for one in found if one.get("skip_reason")]
    bad = [f"{one['name']} {one['version']}: {hole['id']}" for one in found for hole in one.get("vulns", ())]
    asked = len(found) - len(skipped)
    if not asked:
        return f"not asked: the service knew none of the {len(found)} packages", bad
    return f"{asked} of {len(found)} packages asked about", bad


OFFLINE: tuple[tuple[str, Callable[[], list[str]]], ...] = (
    ("versions as locked", other_versions),
    ("pip check", conflicts),
    ("files as packed", changed_files),
    ("licences known", unknown_licences),
)


def main() -> int:
    """Report the findings of each part; return 1 if there are any."""
    bad = 0
    for name, looks in OFFLINE:
        found = looks()
        bad += len(found)
        print(f"{name}: {'well' if not found else f'{len(found)} found'}", *found, sep="\n  ")
    how, found = vulnerable()
    bad += len(found)
    print(f"known to be vulnerable: {how}; {len(found)} found", *found, sep="\n  ")
    kinds: dict[str, list[str]] = {}
    for package, said in licences().items():
        kinds.setdefault(said, []).append(package)
    print("licences:", *(f"{said}: {', '.join(names)}" for said, names in sorted(kinds.items())), sep="\n  ")
    return 1 if bad else 0


if __name__ == "__main__":
    argparse.ArgumentParser(prog="python -m tests.audit", description=__doc__).parse_args()
    sys.exit(main())
