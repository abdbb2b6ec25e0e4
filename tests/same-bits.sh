#!/usr/bin/env bash
# The same bits from every build: release, release for this machine's own processor, sim-core at opt-level 0; one
# thread and many. Plays the reference of each job of first-shift, replays each attempt with every build and marks one
# with each; compares byte for byte. CI does the part that fits there; this does all of it (about ten minutes).
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
root=${CARGO_TARGET_DIR:-target}

mkdir -p "$root/same-bits"
declare -A program
# Each program is copied out, because the next build may put another in its place. Release and opt-level 0 use the
# libraries that are built already; the processor's own code needs a folder of its own.
build() { # name, folder of the build, folder in it, arguments of cargo
    local name=$1 target=$2 profile=$3
    shift 3
    cargo build --locked -p game --no-default-features --target-dir "$target" "$@"
    program[$name]=$root/same-bits/pinhole-$name
    cp "$target/$profile/pinhole" "${program[$name]}"
}
build release "$root" release --release
RUSTFLAGS="-C target-cpu=native" build native "$root/same-bits/native" release --release
build o0 "$root" debug --config 'profile.dev.package.sim-core.opt-level=0'

marked=hum-at-the-lights
for script in scenarios/first-shift/reference/*.script; do
    job=$(basename "$script" .script)
    "${program[release]}" text "first-shift/$job" --seed 5eed --script "$script" --attempt "$work/$job.attempt" >/dev/null
    for build in release native o0; do
        "${program[$build]}" replay "$work/$job.attempt" >"$work/$job.$build.replay"
        cmp "$work/$job.release.replay" "$work/$job.$build.replay"
    done
    echo "$job: digests are the same in release, native and at opt-level 0"
done
for build in release native o0; do
    "${program[$build]}" mark "$work/$marked.attempt" --json "$work/$build.json" >/dev/null
    cmp "$work/release.json" "$work/$build.json"
done
RAYON_NUM_THREADS=1 "${program[release]}" mark "$work/$marked.attempt" --json "$work/one.json" >/dev/null
cmp "$work/release.json" "$work/one.json"
echo "$marked: the mark is the same in release, native, at opt-level 0, and on one thread"
