#!/usr/bin/env bash
# Many fuzz cases at once: files with flipped bits, cut short, altered and chained anew, data files, typed words. Prints
# a line for each family with its counts, its most memory and the seed. The ordinary tests do 2 000.
#   tests/fuzz.sh [CASES] [SEED]
# One case alone: PINHOLE_FUZZ_ONLY=<case> tests/fuzz.sh <CASES> <SEED>
set -euo pipefail
cd "$(dirname "$0")/.."
export PINHOLE_FUZZ_CASES=${1:-100000}
if [ -n "${2:-}" ]; then export PINHOLE_TEST_SEED=$2; fi
# One family after the other, so that the memory told is its own.
log=$(mktemp)
trap 'rm -f "$log"' EXIT
status=0
cargo test -p tests --test it fuzz:: -- --test-threads=1 --nocapture >"$log" 2>&1 || status=$?
grep -E ' cases +[0-9]+ refused|panicked at|hang|error' "$log" || true
if [ $status -ne 0 ]; then tail -40 "$log"; fi
exit $status
