#!/usr/bin/env bash
# Remakes every vector that a library made and compares it with what is committed, then
# runs the tests that read them. Installs what it needs: python3-fluids from Debian,
# psychrolib from npm (into a temporary folder).
set -euo pipefail
cd "$(dirname "$0")/../.."
. calc/testdata/libraries.sh

status=0
compare() { # committed, remade
  if diff -q "$1" "$2" >/dev/null; then
    echo "same    $1 ($(($(wc -l <"$1") - 1)) rows)"
  else
    echo "DIFFERS $1"
    diff "$1" "$2" | head -5
    status=1
  fi
}

mkdir "$work/line"
/usr/bin/python3 calc/line/testdata/make_vectors.py "$work/line"
for f in "$work"/line/*.csv; do compare "calc/line/testdata/$(basename "$f")" "$f"; done
node calc/air/testdata/psychrolib.mjs "$work/npm" >"$work/psychrolib.csv"
compare calc/air/testdata/psychrolib.csv "$work/psychrolib.csv"
/usr/bin/python3 calc/testdata/plan.py >"$work/plan.csv"
compare calc/testdata/plan.csv "$work/plan.csv"
/usr/bin/python3 calc/testdata/lines.py >"$work/lines.csv"
compare calc/testdata/lines.csv "$work/lines.csv"

"${GO:-go}" test -count=1 ./calc/air ./calc/line ./calc/gun ./calc/coat ./calc/supply ./calc ./cmd/boothset/command || status=1
exit $status
