//! Seconds to ticks and back.

use sim_core::units::Tick;

#[test]
fn inv_hundredths_of_a_second_are_whole_ticks() {
    // 0.07 s times 100 is 7.000 000 000 000 001: rounding must not make it tick 8.
    for n in 0..200_000_u64 {
        assert_eq!(Tick::from_s(n as f64 / 100.0), Tick(n));
        assert_eq!(Tick::from_s(Tick(n).s()), Tick(n));
    }
}

#[test]
fn inv_a_part_of_a_tick_counts_as_a_tick() {
    for n in 0..1_000_u64 {
        assert_eq!(Tick::from_s(n as f64 / 100.0 + 0.001), Tick(n + 1));
    }
}
