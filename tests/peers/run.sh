#!/bin/sh
# Prints the table of tests/peers: our solver beside SUNDIALS CVODES on the same equations.
# Usage: tests/peers/run.sh [PROGRAM]   (a release build is made when no program is named)
# PINHOLE_PEERS_VENV: where the virtual environment is kept (default: target/peers-venv).
set -eu
cd "$(dirname "$0")/../.."
program=${1:-}
if [ -z "$program" ]; then
    cargo build --release -p game --no-default-features
    program=target/release/pinhole
fi
venv=${PINHOLE_PEERS_VENV:-target/peers-venv}
if [ ! -x "$venv/bin/python" ]; then
    python3 -m venv "$venv"
    "$venv/bin/pip" install --quiet --requirement tests/peers/requirements.txt
fi
out=target/peers
mkdir -p "$out"
rm -f "$out"/*.json
for altitude in 0 2000; do
    trace() { # NAME SECONDS SCRIPT [MORE]
        name=$1 seconds=$2 script=$3
        shift 3
        "$program" trace alder --altitude "$altitude" --for "$seconds" --script "tests/peers/$script.script" \
            --circuit "$out/$name-at-$altitude-m.json" "$@" > /dev/null
    }
    trace pull-down-from-air 60 pull-down
    trace three-applications 20 applications
    trace pull-down-and-overnight-hold 10 overnight
    # The hold alone: its stretch begins when the store was emptied and the key has been off for a minute.
    trace overnight-hold 36000 emptied --circuit-after-script
    trace leaking-hold 7200 emptied --circuit-after-script --fault hose_b_pinhole=0.06
    trace pinhole 300 pull-down --fault hose_b_pinhole=0.3
done
echo "$(date -u +%Y-%m-%d), $(uname -m), $(sed -n 's/^model name[[:space:]]*: //p' /proc/cpuinfo | head -1), $(nproc) cores; $(git rev-parse --short HEAD)"
"$venv/bin/python" tests/peers/peer.py "$out"/*.json
