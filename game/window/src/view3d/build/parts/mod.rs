//! What a part looks like: one builder a kind, from its numbers and its ports.
//!
//! A shape stands in its part's own frame. Volumes are drawn as large as they are; bores and wires thicker
//! ([`lines`]), so as to be seen and hit across the bay.

mod about;
mod air;
mod alternator;
mod brake;
mod control;
mod electrics;
mod engine;
mod instruments;
pub(in crate::view3d) mod lines;
mod pumps;

use bevy::math::Vec3;
use sim_core::parts::PartKind;

use crate::view3d::materials::Sculpt;
use crate::view3d::mouth::Mouth;
pub(in crate::view3d) use about::{About, Seat};

/// What a kind of part looks like.
pub(in crate::view3d) trait Body {
    /// Its ports where nobody has said otherwise: in its own frame, in the order of its kind.
    fn mouths(&self) -> Vec<Mouth>;

    /// How it stands about.
    fn about(&self) -> About;

    /// Its shape in its own frame, its ports being there.
    fn build(&self, ports: &[Mouth]) -> Sculpt;

    /// Where it is pointed at, from its middle.
    fn hold(&self) -> Vec3 {
        Vec3::ZERO
    }

    /// Whether it brings a rubber sleeve of its own at a port that is pushed onto another part's nipple.
    fn has_sleeve(&self, _port: usize) -> bool {
        false
    }

    /// What stands on the shelf for it; the part itself for most.
    fn spare(&self, ports: &[Mouth]) -> Sculpt {
        self.build(ports)
    }
}

/// The body of a kind. A new kind does not compile before it has one.
pub(in crate::view3d) fn body(kind: &PartKind) -> &dyn Body {
    sim_core::with_kind!(kind, part => part)
}

/// The cube root of how much larger a volume is than the one that a shape was drawn for, kept to what still
/// looks like the part.
fn grown(volume: f64, drawn_for: f64) -> f32 {
    ((volume / drawn_for).max(0.0) as f32).cbrt().clamp(0.4, 3.0)
}

/// Radius of the nipple of a bore, m; a nipple of 8 mm has 15 mm outside, as hoses are drawn.
fn nipple_m(bore_mm: f64) -> f32 {
    (bore_mm as f32 * 0.0075 / 8.0).clamp(0.003, 0.03)
}
