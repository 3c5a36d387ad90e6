"""The command itself, as `barrowbook` and as `python -m builder`. Ctrl-C is quiet from the first import on."""

from __future__ import annotations

import sys


def main() -> int:
    """Run the command of the command line; the exit code (130 when stopped, as in builder.cli)."""
    try:
        from builder.cli import main as run  # inside, as loading it takes long enough to be stopped

        return run()
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    sys.exit(main())
