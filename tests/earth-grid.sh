#!/usr/bin/env bash
# Is a bad earth found whatever was noted before? A bad earth of five resistances in a healthy-car job, six seeds each: the drop over
# it is noted alone, and after three notes that were taken while the pump stood (nothing over the earth, no current, the
# battery). Prints every E and how many reach the 0.8 that is asked. Some minutes.
#     tests/earth-grid.sh [program]
set -euo pipefail
cd "$(dirname "$0")/.."
program=$(realpath "${1:-target/release/pinhole}")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
job=first-shift/new-in-the-mountains

cat > "$work/before" <<'LINES'
meter volt
fit meter red=pump.minus black=battery.minus
read meter
note shown
take meter
fit clampmeter wire_pump.a
read clampmeter
note shown
take clampmeter
fit meter red=battery.plus black=battery.minus
read meter
note shown
take meter
meter off
LINES
cat > "$work/drop" <<'LINES'
pull fuse
open j_hose_p
plug hose_p.a
push fuse
meter volt
fit meter red=pump.minus black=battery.minus
pedal pump 12 200
key on
read meter
note shown
key off
take meter
finding wire_earth sure 0.95
hand back
LINES
printf 'chocks on\ncover splash_guard off\n' > "$work/first"
cat "$work/first" "$work/drop" > "$work/alone"
cat "$work/first" "$work/before" "$work/drop" > "$work/after"

all=0 enough=0
for ohm in 0.2 0.4 0.6 0.8 1.0; do
    data="$work/$ohm"
    mkdir "$data"
    cp -r assets scenarios "$data"
    sed -i "s/hidden: \[\],/hidden: [Hidden(fault: \"earth_bad\", severity: $ohm)],/" \
        "$data/scenarios/first-shift/jobs/new-in-the-mountains.ron"
    for seed in 1 2 3 4 5 5eed; do
        for notes in alone after; do
            attempt="$work/$ohm-$seed-$notes.attempt"
            # Nothing was proved before the hand-back: not competent, and not asked here.
            "$program" text "$job" --data "$data" --seed "$seed" --script "$work/$notes" --attempt "$attempt" \
                > "$work/said" 2>&1 || true
            "$program" mark "$attempt" --data "$data" --json "$work/sheet.json" > "$work/said" 2>&1 || true
            share=$(awk '/"letter": "E"/ { e = 1 } e && /"value"/ { gsub(/[^0-9.]/, ""); print; exit }' "$work/sheet.json")
            echo "$ohm ohm, seed $seed, $notes: E $share"
            all=$((all + 1))
            if awk -v e="$share" 'BEGIN { exit !(0.8 <= e) }'; then enough=$((enough + 1)); fi
        done
    done
    rm -rf "$data"
done
echo "E reaches 0.8 in $enough of $all"
[ "$enough" = "$all" ]
