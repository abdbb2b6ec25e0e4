//! What of the job is built.

use bevy::prelude::*;

use super::layout::{Layout, Seen};
use super::stands::Stands;
use front::prefs::PressureUnit;

/// What of the job is built, and where it is.
#[derive(Resource, Debug, Default)]
pub(super) struct Room {
    /// What it was built for: the car's and the job's name, and the unit on its dials.
    pub(super) of: Option<(String, String, PressureUnit)>,
    /// Where its car stands.
    pub(super) stands: Option<Stands>,
    pub(super) seen: Option<Seen>,
    /// Where everything is.
    pub(super) layout: Layout,
    /// Counts what was built anew.
    pub(super) round: u64,
}
