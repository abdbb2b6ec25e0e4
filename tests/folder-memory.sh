#!/usr/bin/env bash
# Does the marker's memory grow with the folder? The same job, done by 10, 20 and 40 seats with one seed, is marked as a
# folder of each size; prints a line for each with its peak of resident memory and its time.
#   tests/folder-memory.sh [ATTEMPTS ...]         default 10 20 40
#   SCRIPT=file                                   what each seat does; default: the job's reference
#   PINHOLE=/whole/path/pinhole                   a program that is built already (else: built here, release, no window)
# Needs GNU time (Debian package time).
set -euo pipefail
cd "$(dirname "$0")/.."
[ -x /usr/bin/time ] || { echo "error: no /usr/bin/time; install the Debian package time" >&2; exit 2; }
job=flat-after-the-weekend
script=${SCRIPT:-scenarios/first-shift/reference/$job.script}
pinhole=${PINHOLE:-}
if [ -z "$pinhole" ]; then
    cargo build --release --locked -p game --no-default-features
    pinhole=$(realpath "${CARGO_TARGET_DIR:-target}/release/pinhole")
fi
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# A pack that tells nothing after the hand-back, so that playing does not mark.
mkdir "$work/data"
cp -r assets scenarios "$work/data"
sed -i 's/schema: 1,/schema: 1, after_hand_back: Nothing,/' "$work/data/scenarios/first-shift/pack.ron"
sizes=("$@")
[ $# -gt 0 ] || sizes=(10 20 40)
# 1: not all are competent or finished.
or_one() { local code=0; "$@" || code=$?; [ $code -le 1 ] || { echo "error: exit code $code: $*" >&2; exit 2; }; }

echo "$(date -u +%F), $(nproc) cores, $("$pinhole" --version), $(basename "$script" .script)"
echo
echo "| attempts | resident memory at most, MB | s | processor s |"
echo "|---|---|---|---|"
for n in "${sizes[@]}"; do
    folder=$work/$n
    mkdir "$folder"
    for ((seat = 1; seat <= n; seat++)); do
        or_one "$pinhole" --data "$work/data" text "first-shift/$job" --seed 5eed --seat "$seat" --script "$script" \
            --attempt "$folder/$(printf %05d $seat).attempt" >/dev/null
    done
    or_one /usr/bin/time --quiet -f '%M %e %U' -o "$work/time" "$pinhole" --data "$work/data" mark "$folder" \
        --csv "$work/$n.csv" --json "$work/$n.json" >"$work/said" 2>&1
    awk -v n="$n" '{ printf "| %d | %.1f | %.1f | %.1f |\n", n, $1 / 1024, $2, $3 }' "$work/time"
done
