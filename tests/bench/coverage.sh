#!/bin/sh
# Branch coverage of the folders that compute (pyproject.toml names them) by their own tests; fails below 100 %.
#
#   sh tests/bench/coverage.sh              a minute or two
#   PYTHON=python3.13 sh tests/bench/coverage.sh
set -eu
cd "$(dirname "$0")/../.."

python=${PYTHON:-.venv/bin/python}
folder=$(mktemp -d)
trap 'rm -r "$folder"' EXIT
export COVERAGE_FILE="$folder/data"

"$python" -m coverage run -m pytest -q -p no:cacheprovider tests/words tests/ledger tests/takeoff tests/plan
"$python" -m coverage report
