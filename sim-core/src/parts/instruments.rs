//! The physical side of what a hand connects: each is a volume, a resistance or a source of its own.
//!
//! Errors, spans and dials live in the instrument's card ([`crate::instrument`]); here is only what
//! the circuit feels.

use super::electrical::fuse_heat;
use super::elements::{
    Air, Allowance, Bounds, Chamber, Depth, Electric, Filament, Lag, Law, Meter, Mouth, Place, Quantity,
    Seen, Spec, Specified, Start, State, Switch, Volume, Way, Worth,
};
use crate::flow::nipple;
use crate::flow::pinhole::Pinhole;
use crate::params::part_params;

pub use super::elements::{FILAMENT_RATED_K, MeterMode};

/// The hose of a gauge, which goes into a made joint as a branch.
fn stem(bore_mm: f64) -> Mouth {
    Mouth { stem: true, ..Mouth::body(0, nipple::of_bore_mm(bore_mm)) }
}

/// The pointer over the air behind a stem.
fn pointer(tau_s: f64) -> State {
    State {
        is: Quantity::Pointer,
        bounds: Bounds::POINTER,
        start: Start::At(0.0),
        follows: Some(Lag::Pressure { chamber: Chamber::Body, tau_s }),
    }
}

part_params! {
    /// Dial gauge on a hose; port `stem` (pneumatic).
    pub struct VacuumGauge {
        /// Volume of gauge and hose, cm³.
        volume_cm3: 2.0 ..= 500.0,
        /// Bore of the hose, mm.
        bore_mm: 0.5 ..= 10.0,
        /// Time in which the pointer follows, s.
        lag_s: 0.02 ..= 5.0,
        faults {}
    }
}

impl Specified for VacuumGauge {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: true,
            air: Air {
                volumes: vec![Volume::small(Depth::Stem, self.volume_cm3)],
                mouths: vec![stem(self.bore_mm)],
                ways: vec![],
            },
            electric: Electric::NONE,
            states: vec![pointer(self.lag_s)],
            machines: vec![],
            switches: vec![],
        }
    }
}

part_params! {
    /// Hand vacuum pump with its gauge; port `stem` (pneumatic).
    pub struct HandPump {
        /// Air moved per stroke, cm³.
        stroke_cm3: 2.0 ..= 200.0,
        /// Pressure it can reach, share of the day's pressure.
        ultimate_share: 0.01 ..= 0.5,
        /// Volume of pump, gauge and hose, cm³.
        volume_cm3: 2.0 ..= 500.0,
        /// Bore of the hose, mm.
        bore_mm: 0.5 ..= 10.0,
        /// Time in which the pointer follows, s.
        lag_s: 0.02 ..= 5.0,
        faults {}
    }
}

impl Specified for HandPump {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let law = Law::Strokes { stroke: self.stroke_cm3 * 1e-6, ultimate: self.ultimate_share };
        let strokes = Way { a: Place::In(Chamber::Body), b: Place::Outside, law, heard: false };
        let hole = Pinhole::of_diameter_mm(HAND_PUMP_VENT_MM);
        Spec {
            hangs: true,
            air: Air {
                volumes: vec![Volume::small(Depth::Stem, self.volume_cm3)],
                mouths: vec![stem(self.bore_mm)],
                ways: vec![strokes, Way::leak(Chamber::Body, Law::Vent { hole })],
            },
            electric: Electric::NONE,
            states: vec![pointer(self.lag_s)],
            machines: vec![],
            switches: vec![],
        }
    }
}

part_params! {
    /// Test lamp with two leads; ports `a` and `b`.
    pub struct TestLamp {
        /// Rated power, W.
        rated_w: 1.0 ..= 100.0,
        /// Rated voltage, V.
        rated_v: 6.0 ..= 24.0,
        faults {}
    }
}

/// Hole of a hand pump's release lever while it is held, mm: it lets a booster's store down by less
/// than a kPa a second, slowly enough to read a gauge by (from memory).
pub const HAND_PUMP_VENT_MM: f64 = 0.4;

impl TestLamp {
    /// Its filament.
    #[must_use]
    pub const fn filament(&self) -> Filament {
        Filament { rated_w: self.rated_w, rated_v: self.rated_v }
    }
}

impl Specified for TestLamp {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let law = self.filament();
        Spec {
            hangs: true,
            air: Air::NONE,
            electric: Electric::one("lamp", 0, 1, Worth::Lamp(law)),
            states: vec![State {
                is: Quantity::Filament,
                bounds: Bounds::positive(Allowance::of(3.0)),
                start: Start::Room,
                follows: Some(Lag::Filament { law, pole: 0 }),
            }],
            machines: vec![],
            switches: vec![],
        }
    }
}

part_params! {
    /// Multimeter; ports `v_ohm` (red) and `com` (black).
    pub struct Multimeter {
        /// Input resistance when measuring voltage, MΩ.
        input_megohm: 0.01 ..= 100.0,
        /// Resistance of the shunt and its leads, mΩ.
        shunt_mohm: 1.0 ..= 1000.0,
        /// Resistance of the two leads, ohm.
        leads_ohm: 0.0 ..= 2.0,
        /// Rating of the fuse in the ampere socket, A.
        fuse_a: 0.1 ..= 30.0,
        /// Open-circuit voltage of the ohm range, V.
        ohm_source_v: 0.1 ..= 9.0,
        /// Source resistance of the ohm range, kΩ.
        ohm_source_kohm: 0.1 ..= 100.0,
        faults {}
    }
}

impl Specified for Multimeter {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let meter = Meter {
            volt: 1e-6 / self.input_megohm,
            ohm: 1e-3 / self.ohm_source_kohm,
            source_v: self.ohm_source_v,
            source_ohm: self.ohm_source_kohm * 1e3,
            leads_ohm: self.leads_ohm,
            ampere: 1.0 / (self.shunt_mohm * 1e-3 + self.leads_ohm),
        };
        Spec {
            hangs: true,
            air: Air::NONE,
            electric: Electric::one("meter", 0, 1, Worth::Meter(meter)),
            states: vec![fuse_heat(self.fuse_a, true)],
            machines: vec![],
            switches: vec![Switch::Fuse],
        }
    }
}

part_params! {
    /// Fused lead with a push button; ports `a` and `b`, joined while the button is pressed.
    pub struct PushLead {
        /// Resistance while pressed, mΩ.
        mohm: 1.0 ..= 1000.0,
        /// Rating of its fuse, A.
        fuse_a: 1.0 ..= 40.0,
        faults {}
    }
}

impl Specified for PushLead {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: true,
            air: Air::NONE,
            electric: Electric::one("push_lead", 0, 1, Worth::Pressed(1.0 / (self.mohm * 1e-3))),
            states: vec![fuse_heat(self.fuse_a, false)],
            machines: vec![],
            switches: vec![Switch::Fuse],
        }
    }
}
