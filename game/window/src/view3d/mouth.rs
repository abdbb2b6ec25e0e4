//! A fitting or terminal.

use bevy::math::Vec3;
use bevy::transform::components::Transform;

/// A fitting or terminal: where it is, and where a hose or wire leaves it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Mouth {
    /// The place.
    pub(super) at: Vec3,
    /// The way out, unit length.
    pub(super) out: Vec3,
    /// The way in which the fitting itself stands, unit length.
    pub(super) axis: Vec3,
    /// It is pushed onto another part's fitting, no hose between them.
    pub(super) sits: bool,
}

impl Mouth {
    /// A fitting that a line leaves the way it stands.
    #[must_use]
    pub(super) fn new(at: Vec3, out: Vec3) -> Self {
        let out = out.normalize_or(Vec3::Y);
        Self { at, out, axis: out, sits: false }
    }

    /// The same where its part stands.
    #[must_use]
    pub(super) fn placed(&self, part: &Transform) -> Self {
        Self {
            at: part.transform_point(self.at),
            out: part.rotation * self.out,
            axis: part.rotation * self.axis,
            ..*self
        }
    }
}
