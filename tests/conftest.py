"""What every test may ask for: the demo site, a browser, and laws that are tried the same way each time."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from playwright.sync_api import Browser, sync_playwright

ROOT = Path(__file__).resolve().parent.parent

# "same" tries the same examples in every run, so a red suite is red because of a change.
# "search" looks for new ones: HYPOTHESIS_PROFILE=search sh tests/run.sh -k law
settings.register_profile(
    "same",
    derandomize=True,
    database=None,
    deadline=None,
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.register_profile("search", deadline=None, max_examples=2000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same"))

# Chromium without the services it would look for on a network.
CHROMIUM_OPTIONS = [
    "--no-sandbox",  # needed as root; the only pages opened are our own
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-sync",
    "--disable-component-update",
    "--no-first-run",
    "--disable-quic",
]


def barrowbook(*words: str, cache: Path) -> subprocess.CompletedProcess[str]:
    """Run the command as a person does, from the project's folder, with a cache folder of its own."""
    environment = {**os.environ, "XDG_CACHE_HOME": str(cache), "PYTHONUTF8": "1"}
    return subprocess.run(
        [sys.executable, "-W", "error", "-m", "builder", *words],
        cwd=ROOT,
        env=environment,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.fixture(scope="session")
def root() -> Path:
    """The project's folder."""
    return ROOT


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo journal, published once into a new folder. Look, do not touch."""
    base = tmp_path_factory.getbasetemp()
    folder = (base.parent if "PYTEST_XDIST_WORKER" in os.environ else base) / "demo"
    told = folder / "told"
    try:
        folder.mkdir()
    except FileExistsError:  # another worker is at it
        _wait_for(told)
    else:
        run = barrowbook("publish", "content", "--to", str(folder / "site"), cache=folder / "cache")
        (folder / "telling").write_text("" if run.returncode == 0 else run.stdout + run.stderr + "\n", "utf-8")
        (folder / "telling").rename(told)
    if said := told.read_text("utf-8"):
        pytest.fail(f"the demo journal does not publish:\n{said}")
    return folder / "site"


def _wait_for(path: Path) -> None:
    deadline = time.monotonic() + 600
    while not path.exists():
        if time.monotonic() > deadline:
            pytest.fail("the other worker never finished publishing the demo journal")
        time.sleep(0.1)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Debian's Chromium, driven by Playwright."""
    chromium = shutil.which(os.environ.get("CHROMIUM", "chromium"))
    if chromium is None:
        pytest.fail("no Chromium here: `sh tests/run.sh` finds or installs it, or leaves these tests out")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium, args=CHROMIUM_OPTIONS)
        yield started
        started.close()
