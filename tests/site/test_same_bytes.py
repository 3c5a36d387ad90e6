"""Law 9: the same journal, the same bytes, whatever order a process keeps its sets in."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

from tests.app.journal_folder import write

# Names that are one to the eye and two to the program, in every list that is sorted by name.
TWINS = """---
title: Twins
date: 2026-06-06
phase: foundation
items:
  - {material: Nails, quantity: 2 box, cost: 3, used: 1 box}
  - {material: nails, quantity: 1 box, cost: 2, used: 0 box}
  - {material: NAILS, quantity: 1 Box, cost: 2}
  - {material: nAILS, cost: 4, source: secondhand}
  - {material: Offcuts, source: salvaged}
  - {material: offcuts, source: salvaged}
  - {equipment: Mixer, source: hired, cost: 20}
  - {equipment: mixer, source: hired, cost: 20}
lessons: [Look twice., look twice.]
snags: [The gate sticks., the Gate sticks]
---
Done.
"""


def digests(journal: Path, site: Path, seed: str) -> dict[str, str]:
    """SHA-256 of every file of a site that a process of this hash seed made."""
    command = [sys.executable, "-m", "builder", "publish", str(journal), "--to", str(site)]
    environment = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.curdir, "BARROWBOOK_CACHE": "none"}
    subprocess.run(command, env=environment, check=True, capture_output=True)
    files = (path for path in site.rglob("*") if path.is_file())
    return {path.relative_to(site).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


def test_four_processes_make_one_site(tmp_path: Path) -> None:
    """Each with another hash seed, so that its sets stand in another order."""
    journal = write(tmp_path / "journal")
    (journal / "episodes" / "09-twins.md").write_text(TWINS, encoding="utf-8")
    first, *others = (digests(journal, tmp_path / f"site-{seed}", seed) for seed in ("1", "2", "3", "4"))
    assert len(first) > 10
    for other in others:
        assert other == first
