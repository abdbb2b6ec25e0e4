#!/usr/bin/env bash
# A thousand kills (SIGKILL) at random moments: a script at work, words from a pipe, a hand in the window. Every file
# must open again, replay, and hold every action that was shown. Prints a line for each way with its seed.
#   tests/kills.sh [SCRIPT] [PIPE] [WINDOW]       default 450 450 100; the window needs Xvfb, xdotool, an adapter
# The ordinary tests do thirty of the first two.
set -euo pipefail
cd "$(dirname "$0")/.."
script=${1:-450} pipe=${2:-450} window=${3:-100}
lines() { grep -E ' kills|panicked|skipped' || true; }
PINHOLE_KILLS=$script cargo test -p tests --test it killed_at_any_moment_a_script -- --nocapture 2>&1 | tee /tmp/kills.$$ | lines
PINHOLE_KILLS=$pipe cargo test -p tests --test it killed_at_any_moment_a_pipe -- --nocapture 2>&1 | tee -a /tmp/kills.$$ | lines
if [ "$window" -gt 0 ]; then
    PINHOLE_KILLS=$window cargo test -p game --test window -- --ignored kills --nocapture 2>&1 | tee -a /tmp/kills.$$ | lines
fi
# A test that failed has said so above; here it counts.
if grep -q 'test result: FAILED' /tmp/kills.$$; then rm -f /tmp/kills.$$; exit 1; fi
rm -f /tmp/kills.$$
