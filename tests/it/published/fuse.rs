//! Blade fuse: operating times.

use sim_core::parts::electrical::{FUSE_MELTS_AT, FUSE_TAU_S};

use super::Table;

/// When the strip, cold at first, melts at the steady current `x` times its rating, s.
fn melts_after_s(x: f64) -> f64 {
    let heat = x * x;
    if heat <= FUSE_MELTS_AT { f64::INFINITY } else { FUSE_TAU_S * f64::ln(heat / (heat - FUSE_MELTS_AT)) }
}

#[test]
fn val_conventional_tripping_current() {
    /// "1.35 I_n": it must melt there, and the strip must not take longer than the half hour or so that
    /// any norm's conventional time allows.
    const CONVENTIONAL_TIME_S: f64 = 1_800.0;
    Table::of("public notes on blade fuses: conventional tripping current 1.35 I_n", "6.13b").within(
        "time to melt at 135 %, s",
        melts_after_s(1.35),
        0.0,
        CONVENTIONAL_TIME_S,
    );
}

#[test]
fn reg_fuse_bands_from_memory() {
    let mut t = Table::of("ISO 8820-3 (from memory)", "6.13b");
    t.within("110 %, s", melts_after_s(1.10), 360e3, f64::INFINITY);
    for (percent, min, max) in [
        (135.0, 0.75, 600.0),
        (160.0, 0.25, 50.0),
        (200.0, 0.15, 5.0),
        (350.0, 0.04, 0.5),
        (600.0, 0.02, 0.1),
    ] {
        t.within(&format!("{percent} %, s"), melts_after_s(percent / 100.0), min, max);
    }
}
