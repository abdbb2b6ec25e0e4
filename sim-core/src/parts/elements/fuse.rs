//! The strip of a fuse: τ dθ/dt = (i/I_n)² − θ, melts at θ = 1.30².

/// Heat time of the fuse strip, s; with the melting point 1.30² it meets the bands of ISO 8820-3 at
/// 110, 135, 160, 200, 350 and 600 % (row 6.13b, from memory). At 1.35² it would never melt at 135 %.
pub const FUSE_TAU_S: f64 = 1.9;
/// Fuse strip melts at this heat, (i/I_n)².
pub const FUSE_MELTS_AT: f64 = 1.30 * 1.30;
