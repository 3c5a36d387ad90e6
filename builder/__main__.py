"""Lets `python -m builder` be the same command as `barrowbook`."""

from __future__ import annotations

import sys

from builder.cli import main

if __name__ == "__main__":
    sys.exit(main())
