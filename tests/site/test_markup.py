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


def test_no_page_breaks_the_html_standard(demo_site: Path, tmp_path: Path) -> None:
    """No error; a warning is a matter of taste. A broken page goes along last, so that silence says something."""
    broken = tmp_path / "broken.html"
    broken.write_text("<!doctype html><title>Broken</title><p><table><li>no list</table>", encoding="utf-8")
    wrong = [
        f"{str(said.get('url', '')).rpartition('/site/')[2]}:{said.get('lastLine')}: {said['message']}"
        for said in checked([*pages(demo_site), broken])
        if said["type"] != "info"
    ]
    found = [told for told in wrong if "broken.html" not in told]
    assert not found, listed(found)
    assert wrong, "the checker found nothing wrong with a broken page"
