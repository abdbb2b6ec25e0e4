//! Battery, fuse, relay, key, wire, body, supply: the parts that only carry current.
//!
//! Terminal names are DIN 72552: 30 battery plus, 15 switched plus, 31 earth, 85/86 relay coil,
//! 87 relay output. Battery: open-circuit voltage by charge from row 6.7. Fuse: a heated strip,
//! τ dθ/dt = (i/I_n)² − θ, that melts at θ = 1.30²: between the 1.10 I_n it must carry for ever and the
//! 1.35 I_n (conventional tripping current, ISO 8820-3) at which it must melt within minutes.
//! Not modelled: surface charge and diffusion in the battery, its temperature, contact bounce, coil inductance.

use super::elements::{
    self, Air, Allowance, Bounds, Electric, Lag, Pole, Quantity, Seen, Spec, Specified, Start, State, Switch,
    Worth,
};
use crate::params::part_params;

pub use super::elements::{FUSE_MELTS_AT, FUSE_TAU_S};

part_params! {
    /// Lead-acid battery; ports `plus` and `minus`.
    pub struct Battery {
        /// Capacity, A·h.
        capacity_ah: 5.0 ..= 200.0,
        /// State of charge, share of capacity.
        charge: 0.0 ..= 1.0,
        /// Internal resistance, mΩ.
        internal_mohm: 1.0 ..= 500.0,
        faults {
            /// Further internal resistance of an aged battery, mΩ.
            aged_mohm: 0.0 ..= 2000.0,
        }
    }
}

impl Battery {
    /// Open-circuit voltage at charge `z`, V; see [`crate::parts::elements::open_circuit_v`].
    #[must_use]
    pub fn open_circuit_v(z: f64) -> f64 {
        elements::open_circuit_v(z)
    }
}

impl Specified for Battery {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one(
                "battery",
                0,
                1,
                Worth::Battery(1e3 / (self.internal_mohm + self.aged_mohm)),
            ),
            states: vec![State {
                is: Quantity::Charge,
                bounds: Bounds::any(Allowance::of(1e-6)),
                start: Start::At(self.charge),
                follows: Some(Lag::Charge { capacity_ah: self.capacity_ah, pole: 0 }),
            }],
            machines: vec![],
            switches: vec![],
        }
    }
}

part_params! {
    /// Bench supply; ports `plus` and `minus`.
    pub struct Supply {
        /// Voltage, V.
        volt: 0.0 ..= 20.0,
        /// Source resistance, mΩ.
        source_mohm: 0.1 ..= 1000.0,
        faults {}
    }
}

impl Specified for Supply {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let source = Worth::Source { g: 1e3 / self.source_mohm, emf: self.volt };
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one("supply", 0, 1, source),
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}

part_params! {
    /// Blade fuse; ports `a` and `b`.
    pub struct Fuse {
        /// Rated current, A.
        rating_a: 1.0 ..= 100.0,
        /// Resistance, mΩ.
        mohm: 0.2 ..= 500.0,
        faults {
            /// Resistance of a corroded holder on top, ohm.
            corroded_ohm: 0.0 ..= 1000.0,
        }
    }
}

impl Specified for Fuse {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one(
                "fuse",
                0,
                1,
                Worth::Intact(1.0 / (self.mohm * 1e-3 + self.corroded_ohm)),
            ),
            states: vec![fuse_heat(self.rating_a, false)],
            machines: vec![],
            switches: vec![Switch::Fuse],
        }
    }
}

/// The heat of a fuse strip in the first two-pole of a part; of a meter it carries current in one mode only.
pub(super) fn fuse_heat(rated_a: f64, in_ampere_mode: bool) -> State {
    State {
        is: Quantity::FuseHeat,
        // Close to melting it matters when.
        bounds: Bounds::any(Allowance { absolute: 0.002 * FUSE_MELTS_AT, share: 1e-3 }),
        start: Start::At(0.0),
        follows: Some(Lag::FuseHeat { rated_a, pole: 0, in_ampere_mode }),
    }
}

part_params! {
    /// Relay with one make contact; ports `30`, `87`, `85`, `86`.
    pub struct Relay {
        /// Coil resistance, ohm.
        coil_ohm: 10.0 ..= 1000.0,
        /// Coil voltage at which it pulls in, V.
        pull_in_v: 2.0 ..= 12.0,
        /// Coil voltage at which it drops out, V.
        drop_out_v: 0.5 ..= 8.0,
        /// Resistance of the closed contact, mΩ.
        contact_mohm: 0.5 ..= 1000.0,
        faults {
            /// Conductance of a weld across the contact, siemens; 0 = none.
            weld_s: 0.0 ..= 1000.0,
            /// Resistance of a burnt contact on top of the sound one, ohm.
            burnt_ohm: 0.0 ..= 1000000.0,
            /// Resistance of a corroded coil terminal, ohm; a million = open.
            coil_open_ohm: 0.0 ..= 1000000.0,
        }
    }
}

impl Specified for Relay {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let contact =
            Worth::Contact { g: 1.0 / (self.contact_mohm * 1e-3 + self.burnt_ohm), weld: self.weld_s };
        let coil = Worth::Steady(1.0 / (self.coil_ohm + self.coil_open_ohm));
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::of(vec![
                Pole { a: 0, b: 1, name: "contact", worth: contact },
                Pole { a: 3, b: 2, name: "coil", worth: coil },
            ]),
            states: vec![],
            machines: vec![],
            switches: vec![Switch::Relay {
                coil: 1,
                share: self.coil_ohm / (self.coil_ohm + self.coil_open_ohm),
                pull_in_v: self.pull_in_v,
                drop_out_v: self.drop_out_v,
            }],
        }
    }
}

part_params! {
    /// Ignition switch; ports `30` and `15`.
    pub struct KeySwitch {
        /// Resistance of the closed contact, mΩ.
        contact_mohm: 0.5 ..= 1000.0,
        faults {}
    }
}

impl Specified for KeySwitch {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one("key", 0, 1, Worth::KeyOn(1.0 / (self.contact_mohm * 1e-3))),
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}

part_params! {
    /// A wire with its two crimps; ports `a` and `b`.
    pub struct Wire {
        /// Length, m.
        length_m: 0.05 ..= 20.0,
        /// Cross-section, mm².
        area_mm2: 0.35 ..= 50.0,
        faults {
            /// Resistance of a corroded crimp or bolt, ohm; a million = open.
            corroded_ohm: 0.0 ..= 1000000.0,
        }
    }
}

impl Wire {
    /// Resistance at 20 °C, ohm: copper 17.241 Ω·mm²/km (row 6.1), and 15 % more for strands thinner and
    /// longer than the nominal area says: what the class 5 limits of IEC 60228 (row 6.3) hold, within 2 %.
    #[must_use]
    pub fn resistance_ohm(&self) -> f64 {
        const RHO_OHM_MM2_PER_M: f64 = 17.241e-3;
        const STRANDING: f64 = 1.15;
        RHO_OHM_MM2_PER_M * STRANDING * self.length_m / self.area_mm2 + self.corroded_ohm
    }
}

impl Specified for Wire {
    const SEEN: Seen = Seen::LINE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one("wire", 0, 1, Worth::Steady(1.0 / self.resistance_ohm())),
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}

part_params! {
    /// Car body: one piece of metal with earth points `31a` to `31d`.
    pub struct Body {
        /// Unused resistance between the points, mΩ; the sheet is taken as one node.
        sheet_mohm: 0.0 ..= 10.0,
        faults {}
    }
}

impl Specified for Body {
    const SEEN: Seen = Seen::SHEET;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric { poles: vec![], earth: true },
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
