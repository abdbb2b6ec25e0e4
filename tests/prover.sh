#!/usr/bin/env bash
# The prover against a pack in which every job has a planted flaw (tests/prover/planted): prints, job by job, whether it was
# found. Some minutes on two cores. Seeds 1 to 5.
set -euo pipefail
cd "$(dirname "$0")/.."
cargo build --release --locked -p game --no-default-features
PINHOLE_TEST_PROGRAM="$PWD/target/release/pinhole" cargo test --release --locked -p tests --test it -- \
    --ignored --nocapture the_prover_finds_every_planted_flaw_of_a_pack
