"""The pages against the HTML standard, by the Nu HTML checker."""

from __future__ import annotations

import json
import os
import subprocess
from pathlib import Path

import pytest

from tests.site.folder import ROOT, listed, pages

pytestmark = pytest.mark.nu


def checked(paths: list[Path]) -> list[dict[str, object]]:
    """What the checker says of these files, all in one run."""
    jar = ROOT / os.environ.get("NU_JAR", ".checks/node_modules/vnu-jar/build/dist/vnu.jar")
    command = ["java", "-jar", str(jar), "--format", "json", "--stdout", "--exit-zero-always"]
    run = subprocess.run([*command, *map(str, paths)], capture_output=True, text=True, check=False)
    assert run.returncode == 0, f"the checker did not run: {run.stderr}"
    messages: list[dict[str, object]] = json.loads(run.stdout)["messages"]
    return messages


def test_no_page_breaks_the_html_standard(demo_site: Path) -> None:
    """No error; a warning is a matter of taste."""
    wrong = [
        f"{str(said.get('url', '')).rpartition('/site/')[2]}:{said.get('lastLine')}: {said['message']}"
        for said in checked(list(pages(demo_site)))
        if said["type"] != "info"
    ]
    assert not wrong, listed(wrong)


def test_the_checker_is_awake(tmp_path: Path) -> None:
    """It finds a mistake where there is one, so that its silence says something."""
    page = tmp_path / "broken.html"
    page.write_text("<!doctype html><title>Broken</title><p><table><li>no list</table>", encoding="utf-8")
    assert [said for said in checked([page]) if said["type"] == "error"]
