"""What every line cost this build, receipt by receipt and in order of date; stock; totals."""

from __future__ import annotations
