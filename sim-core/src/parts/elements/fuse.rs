//! The strip of a fuse: τ dθ/dt = (i/I_n)² − θ, melts at θ = 1.30². A slack clip warms in the same way.

/// Heat time of the fuse strip, s; with the melting point 1.30² it meets the bands of ISO 8820-3 at
/// 110, 135, 160, 200, 350 and 600 % (row 6.13b, from memory). At 1.35² it would never melt at 135 %.
pub const FUSE_TAU_S: f64 = 1.9;
/// Fuse strip melts at this heat, (i/I_n)².
pub const FUSE_MELTS_AT: f64 = 1.30 * 1.30;
/// A slack clip lets go at this heat, (i/I)² with I the current that it carries for ever.
pub const SLACK_OPENS_AT: f64 = 1.0;
/// A slack clip makes contact again at this heat: it has to cool well before its spring reaches the blade.
pub const SLACK_CLOSES_AT: f64 = 0.1;
