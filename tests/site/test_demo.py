"""The demo site that is kept, the one made now and the one an installed package makes are the same."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from itertools import zip_longest
from pathlib import Path

import pytest

from tests.site.folder import ROOT, listed

ACCEPT = """
If the change is meant, make it the new site and look at it before you keep it:
    .venv/bin/barrowbook publish content --to site_demo"""


def contents(folder: Path) -> dict[str, bytes]:
    """Every file of a folder by its path in it."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def differences(kept: dict[str, bytes], made: dict[str, bytes]) -> list[str]:
    """One line for each file that is missing, new or different; empty if all bytes agree."""
    names = sorted(kept.keys() | made.keys())
    return [f"{name}: {where(kept[name], made[name])}" for name in names if differ(name, kept, made)] + [
        f"{name}: {'is new' if name in made else 'is gone'}" for name in sorted(kept.keys() ^ made.keys())
    ]


def differ(name: str, kept: dict[str, bytes], made: dict[str, bytes]) -> bool:
    """Whether both have the file, with other bytes."""
    return name in kept and name in made and kept[name] != made[name]


def where(kept: bytes, made: bytes) -> str:
    """The first line that differs, as it was and as it is."""
    pairs = zip_longest(kept.split(b"\n"), made.split(b"\n"), fillvalue=b"")
    number, (old, new) = next((n, pair) for n, pair in enumerate(pairs, 1) if pair[0] != pair[1])
    return f"line {number} was {old[:100]!r}, is {new[:100]!r}"


def test_site_demo_is_current(demo_site: Path) -> None:
    """`site_demo` is, byte for byte, what `publish content --to site_demo` makes."""
    wrong = differences(contents(ROOT / "site_demo"), contents(demo_site))
    assert not wrong, listed(wrong) + ACCEPT


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The package as a wheel holds it, unpacked far from the project."""
    folder = tmp_path_factory.mktemp("wheel")
    build = ["-m", "pip", "wheel", "-q", "--no-deps", "--no-build-isolation", "--disable-pip-version-check"]
    run = subprocess.run(
        [sys.executable, *build, "-w", str(folder), str(ROOT)], capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stderr
    (wheel,) = folder.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder / "unpacked")
    return folder / "unpacked"


def test_the_wheel_carries_every_template(installed: Path) -> None:
    """`templates/` goes along as `builder/templates`, all of it."""
    assert contents(installed / "builder" / "templates") == contents(ROOT / "templates") != {}


def test_an_installed_package_makes_the_same_site(installed: Path, demo_site: Path, tmp_path: Path) -> None:
    """Where the package stands, where it is called and how the journal is named change no byte.

    Photos are made once and come out of the store: the same code would only take as long again.
    """
    run = subprocess.run(
        [sys.executable, "-m", "builder", "publish", str(ROOT / "content"), "--to", "elsewhere"],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(installed), "XDG_CACHE_HOME": str(demo_site.parent / "cache")},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == 0, run.stderr
    wrong = differences(contents(demo_site), contents(tmp_path / "elsewhere"))
    assert not wrong, listed(wrong)
