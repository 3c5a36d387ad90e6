#!/bin/sh
# Makes what the checks need, then runs them: ruff, mypy, pytest.
#
#   sh tests/run.sh               what this machine can run; says at the end what it left out
#   sh tests/run.sh --all         a missing tool is a failure
#   sh tests/run.sh --no-install  touches nothing outside this folder
#   sh tests/run.sh -k tax -x     anything else goes to pytest
set -eu
cd "$(dirname "$0")/.."

NU=vnu-jar@26.9.27
AXE=axe-core@4.14.1
VENV=.venv
TOOLS=.checks # tools that are not Python's, and what installing them printed

all=no
may_install=yes
while [ $# -gt 0 ]; do
    case $1 in
        --all) all=yes ;;
        --no-install) may_install=no ;;
        --) shift; break ;;
        *) break ;;
    esac
    shift
done

export PIP_DISABLE_PIP_VERSION_CHECK=1 PYTHONUTF8=1
mkdir -p "$TOOLS"
log=$TOOLS/install.log
: >"$log"

have() { command -v "$1" >/dev/null 2>&1; }

quietly() { # run a command; show what it printed only if it fails
    if "$@" >"$TOOLS/last.log" 2>&1 </dev/null; then
        cat "$TOOLS/last.log" >>"$log"
    else
        tail -n 15 "$TOOLS/last.log" >&2
        return 1
    fi
}

# --- Python ---------------------------------------------------------------------------------

python=${PYTHON:-python3}
if ! "$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
    echo "Needs Python 3.11 or newer; '$python' is not. Name another with PYTHON=..." >&2
    exit 2
fi

# The stamp says what the environment was made from; while it holds, nothing is installed again.
wanted=$("$python" -V; pwd; cksum <pyproject.toml; cksum <.ci/constraints.txt)
if [ ! -x "$VENV/bin/python" ] || [ "$wanted" != "$(cat "$VENV/made-from" 2>/dev/null)" ]; then
    echo "Making the environment in $VENV (a minute, once) ..."
    quietly "$python" -m venv "$VENV" || { echo "Could not make $VENV." >&2; exit 2; }
    quietly "$VENV/bin/python" -m pip install -q -c .ci/constraints.txt -e '.[test]' ||
        { echo "Could not install what the checks need." >&2; exit 2; }
    printf '%s\n' "$wanted" >"$VENV/made-from"
fi

# --- The browser, Java and two npm packages -------------------------------------------------

as_root=no # how to become root, if that needs no password
if [ "$(id -u)" = 0 ]; then
    as_root=
elif have sudo && sudo -n true 2>/dev/null; then
    as_root='sudo -n'
fi

asked_apt=no
apt_install() { # package ...: install Debian packages, if we may
    [ "$may_install" = yes ] && [ "$as_root" != no ] && have apt-get || return 1
    echo "Installing $* with apt-get ..."
    if [ "$asked_apt" = no ]; then
        asked_apt=yes
        quietly $as_root apt-get -qq update || return 1
    fi
    quietly $as_root env DEBIAN_FRONTEND=noninteractive apt-get -qq -y --no-install-recommends install "$@"
}

find_chromium() { # some systems ship a stand-in that only says to install another package: so ask it
    for name in ${CHROMIUM:-chromium chromium-browser google-chrome}; do
        if have "$name" && "$name" --version >/dev/null 2>&1; then
            CHROMIUM=$(command -v "$name")
            export CHROMIUM
            return 0
        fi
    done
    return 1
}

npm_packages() { # put both npm packages into $TOOLS, unless those versions are there
    [ "$(cat "$TOOLS/made-from" 2>/dev/null)" = "$NU $AXE" ] && return 0
    [ "$may_install" = yes ] || return 1
    have npm || apt_install npm || return 1
    echo "Installing $NU and $AXE with npm ..."
    quietly npm install --prefix "$TOOLS" --no-save --no-package-lock --no-audit --no-fund \
        --ignore-scripts "$NU" "$AXE" || return 1
    echo "$NU $AXE" >"$TOOLS/made-from"
}

java_runs() { have java && java -version >/dev/null 2>&1; }

left_out=
without=
leave_out() { # marker, sentence
    without="$without${without:+ and }not $1"
    left_out="$left_out
  - $2"
}

browser_runs() { find_chromium && "$VENV/bin/python" -m playwright --version >/dev/null 2>&1; }

# Playwright's driver wants libatomic, which a small Debian has not.
browser_runs || { apt_install chromium fonts-liberation libatomic1 && browser_runs; } || leave_out browser \
    "How the pages behave (size, keyboard, print, without JavaScript): needs Chromium (Debian: chromium, libatomic1; or CHROMIUM=/path/to/one)."
java_runs || apt_install default-jre-headless || true
{ java_runs && npm_packages; } || leave_out nu \
    "Whether the pages are valid HTML: needs Java (Debian: default-jre-headless) and npm, which fetches $NU."
{ browser_runs && npm_packages; } || leave_out axe \
    "Whether everyone can use the pages (WCAG 2.2 AA): needs Chromium and npm, which fetches $AXE."

export NU_JAR="$TOOLS/node_modules/vnu-jar/build/dist/vnu.jar"
export AXE_JS="$TOOLS/node_modules/axe-core/axe.min.js"

# --- The checks -----------------------------------------------------------------------------

failed=
echo "Style (ruff) and types (mypy) ..."
"$VENV/bin/python" -m ruff check --quiet . || failed="$failed ruff"
"$VENV/bin/python" -m mypy --no-error-summary || failed="$failed mypy"

echo "Tests (pytest) ..."
# Two workers for the whole suite; a few chosen tests start sooner in one.
if [ $# -eq 0 ] && [ "$(getconf _NPROCESSORS_ONLN 2>/dev/null || echo 1)" -gt 1 ]; then
    set -- -n 2
fi
if [ -n "$without" ]; then
    set -- -m "$without" "$@"
fi
"$VENV/bin/python" -m pytest -q "$@" || failed="$failed pytest"

# --- What that was ---------------------------------------------------------------------------

if [ -n "$left_out" ]; then
    echo
    echo "LEFT OUT, because this machine lacks what they need:$left_out"
    echo "Install those, or run this as root on Debian, and run it again."
    [ "$all" = no ] || failed="$failed left-out"
fi
if [ -n "$failed" ]; then
    echo "FAILED:$failed"
    exit 1
fi
