#!/usr/bin/env bash
# Times the same arithmetic here and in the reference libraries, in one run on one
# machine, and prints the ratio. Installs the libraries as crosscheck does.
set -euo pipefail
cd "$(dirname "$0")/../.."
. calc/testdata/libraries.sh
"${GO:-go}" test -run '^$' -bench 'FrictionFactor|HoseDownstream|DewPoint|WetBulb' -count 5 ./calc/line ./calc/air |
  awk '/^Benchmark/ {sub(/^Benchmark/, "", $1); sub(/-[0-9]+$/, "", $1); print $1, $3}' |
  sort -k1,1 -k2,2n | awk '{v[$1] = v[$1] " " $2} END {for (k in v) {n = split(v[k], a, " "); print k, a[int((n + 1) / 2)]}}' >"$work/ours"
{ /usr/bin/python3 calc/testdata/peer.py; node calc/testdata/peer.mjs "$work/npm"; } >"$work/peer"
printf '%-16s %12s %14s %8s\n' what 'here, ns' 'library, ns' ratio
sort "$work/ours" | join - <(sort "$work/peer") | awk '{printf "%-16s %12.0f %14.0f %8.1f\n", $1, $2, $3, $3 / $2}'
