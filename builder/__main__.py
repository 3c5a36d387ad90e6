"""The command itself, as `barrowbook` and as `python -m builder`. Ctrl-C is quiet from the first import on."""

from __future__ import annotations

import gc
import sys


def main() -> int:
    """Run the command of the command line; the exit code (130 when stopped, as in builder.cli)."""
    try:
        from builder.cli import main as run  # inside, as loading it takes long enough to be stopped

        code = run()
    except KeyboardInterrupt:
        return 130
    gc.freeze()  # all of it goes with the process: looking through it once more takes a twentieth of a short run
    return code


if __name__ == "__main__":
    sys.exit(main())
