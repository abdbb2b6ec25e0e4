//! The model's own coefficients: numbers that no data sheet gives and no part carries, each with a factor.
//!
//! What a mark says should not hang on them. Everything is built with factors of one; whoever asks how much a reading
//! or a mark moves when the model is a little wrong about its own laws sets others (`robust`, acceptance of the marks).
//! Parts' numbers are not among them: those have tolerances in the vehicle file.

use crate::flow::pinhole::Pinhole;
use crate::flow::valve::CheckLaw;
use crate::parts::elements::{FlowPath, Law, Machine, Passage, Spec};

/// Factors on the model's own coefficients; finite and above nought, 1 as built.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Coefficients {
    /// On the heat transfer from air to a wall (`parts/elements/air.rs`).
    pub wall_heat: f64,
    /// On the discharge coefficient of a sharp-edged hole or gap (`flow/pinhole.rs`).
    pub hole: f64,
    /// On the conductance of nipples, hoses, openings and slip (`flow/nipple.rs`, `parts/hose.rs`).
    pub way: f64,
    /// On the friction of motor and piston: dry, viscous, damping (`parts/elements/motor.rs`, `piston.rs`).
    pub friction: f64,
}

impl Default for Coefficients {
    fn default() -> Self {
        Self { wall_heat: 1.0, hole: 1.0, way: 1.0, friction: 1.0 }
    }
}

impl Coefficients {
    /// Whether all are as built.
    #[must_use]
    pub fn are_as_built(&self) -> bool {
        *self == Self::default()
    }

    /// Scales what a part says of itself.
    pub(crate) fn scale(&self, spec: &mut Spec) {
        if self.are_as_built() {
            return;
        }
        for volume in &mut spec.air.volumes {
            volume.w_per_k *= self.wall_heat;
        }
        for mouth in &mut spec.air.mouths {
            match &mut mouth.passage {
                Passage::Iso(way) => way.c *= self.way,
                Passage::Seat(check) => self.scale_check(check),
            }
            if let Some(gap) = &mut mouth.gap {
                gap.still *= self.hole;
                gap.shaking *= self.hole;
            }
        }
        for FlowPath { law, .. } in &mut spec.air.flow_paths {
            self.scale_law(law);
        }
        for machine in &mut spec.machines {
            match machine {
                Machine::Piston { law, .. } => {
                    law.damping *= self.friction;
                    law.drag_n *= self.friction;
                }
                Machine::Rotor { motor, .. } => {
                    motor.dry_nm *= self.friction;
                    motor.viscous *= self.friction;
                }
            }
        }
    }

    fn scale_law(&self, law: &mut Law) {
        match law {
            Law::Iso(way) | Law::Admit { open: way } | Law::Equalise { open: way } => way.c *= self.way,
            Law::Hole(hole) | Law::Vent { hole } => self.scale_hole(hole),
            Law::Gap { still, shaking } => {
                self.scale_hole(still);
                self.scale_hole(shaking);
            }
            Law::Check(check) => self.scale_check(check),
            // Laminar seep is the part's own number; what a pump sweeps is geometry.
            Law::Seep(_) | Law::Suction { .. } | Law::Strokes { .. } => {}
        }
    }

    fn scale_check(&self, check: &mut CheckLaw) {
        check.open.c *= self.way;
        self.scale_hole(&mut check.leak);
    }

    /// The discharge coefficient multiplies the area wherever the area stands.
    fn scale_hole(&self, hole: &mut Pinhole) {
        hole.area *= self.hole;
    }
}
