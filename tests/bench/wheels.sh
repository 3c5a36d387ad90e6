#!/bin/sh
# The program as somebody installs it: a wheel in an empty environment of each Python, far from this folder.
#
#   sh tests/bench/wheels.sh                           python3.11 and newer, those that are found
#   sh tests/bench/wheels.sh python3.13 /some/python   these
#
# In each: every command runs with warnings as errors, the demo journal gives site_demo to the byte, and a journal
# begun there is filled, inspected and published. Says for each what failed; fails if one did.
set -eu
cd "$(dirname "$0")/../.."
root=$PWD

if [ $# -eq 0 ]; then
    for name in python3.11 python3.12 python3.13 python3.14 python3.15; do
        ! "$name" -c '' 2>/dev/null || set -- "$@" "$name"
    done
fi
[ $# -gt 0 ] || { echo "No Python 3.11 or newer is found; name one." >&2; exit 2; }

work=$(mktemp -d)
trap 'rm -r "$work"' EXIT
export PIP_DISABLE_PIP_VERSION_CHECK=1 PYTHONUTF8=1
unset PYTHONPATH PYTHONHOME

echo "Building the wheel ..."
quietly() { # a command that says something only if it fails
    "$@" >"$work/log" 2>&1 || { tail -n 15 "$work/log" >&2; exit 2; }
}
quietly "$1" -m venv "$work/build"
quietly "$work/build/bin/python" -m pip wheel -q --no-deps -w "$work" "$root"
wheel=$(echo "$work"/barrowbook-*.whl)
echo "$(basename "$wheel"), $(wc -c <"$wheel") bytes"

fails() { # a sentence: say it, with what the command printed
    echo "  FAILED: $1" >&2
    tail -n 15 "$here/said" "$here/told" | cut -c 1-200 >&2
    wrong="$wrong $name"
}

runs() { # sentence, text that must be printed ("" for any), words of the command
    sentence=$1 expected=$2
    shift 2
    if ! "$here/venv/bin/barrowbook" "$@" >"$here/said" 2>"$here/told" </dev/null; then
        fails "$sentence (barrowbook $1)"
    elif ! grep -qF -- "$expected" "$here/said"; then
        fails "$sentence: barrowbook $1 does not print $expected"
    fi
}

same() { # sentence, what is compared: nothing may be told apart
    sentence=$1
    shift
    diff -rq "$@" >"$here/differs" 2>&1 || { cp "$here/differs" "$here/said" && fails "$sentence"; }
}

wrong=
for python in "$@"; do
    name=$("$python" -c 'import platform; print(platform.python_version())')
    here=$work/$name
    mkdir "$here" && cp -r content "$here/content"
    began=$(date +%s)
    quietly "$python" -m venv "$here/venv"
    quietly "$here/venv/bin/python" -m pip install -q -c .ci/constraints.txt "$wheel"
    quietly "$here/venv/bin/python" -m pip check
    (
        cd "$here"
        wrong=
        export XDG_CACHE_HOME="$here/cache" PYTHONWARNINGS=error
        runs "help comes" "commands" --help
        runs "the version is told" "barrowbook " --version
        runs "the demo journal publishes" "Spent so far" publish content --to site
        same "the demo site is site_demo, to the byte" "$root/site_demo" site
        same "publishing leaves the journal as it was" "$root/content" content
        runs "publishing again finds nothing to do" "Nothing has changed" publish content --to site
        runs "the demo journal has no mistakes" "no mistakes" inspect content
        runs "take-offs are printed" "bag" takeoff content
        runs "the figures are printed" '"format": 1' tally content --json
        same "the figures are those of the site" said site/figures.json
        runs "a journal is begun" "made" begin shed --title "A shed" --language en-US --currency USD \
            --ready-by none --phases "Ground, Frame"
        runs "an episode is made" "made" episode "The first nails" --in shed
        runs "a line is added" "added" spend "Galvanised nails" 36.90 --in shed
        runs "what was begun has no mistakes" "no mistakes" inspect shed
        runs "what was spent is in the totals" "36.90" tally shed
        runs "a plan without a take-off says so" "no take-off" takeoff shed
        runs "what was begun publishes" "36.90" publish shed --to shed-site
        [ -z "$wrong" ]
    ) && echo "$name: all well, $(($(date +%s) - began)) s" || wrong="$wrong $name"
done

if [ -n "$wrong" ]; then
    echo "FAILED:$wrong" >&2
    exit 1
fi
