//! Battery, fuse, relay, key, wire, body, supply: the parts that only carry current.
//!
//! Terminal names are DIN 72552: 30 battery plus, 15 switched plus, 31 earth, 85/86 relay coil,
//! 87 relay output. Battery: open-circuit voltage by charge from row 6.7. Fuse: a heated strip,
//! τ dθ/dt = (i/I_n)² − θ, that melts at θ = 1.30²: between the 1.10 I_n it must carry for ever and the
//! 1.35 I_n (conventional tripping current, ISO 8820-3) at which it must melt within minutes.
//! Not modelled: surface charge and diffusion in the battery, its temperature, contact bounce, coil inductance.

use crate::lanes::Real;
use crate::params::part_params;

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
    /// Open-circuit voltage at charge `z`, V; straight lines between the points of row 6.7 from 0 to 1.
    /// Below 0 it collapses: a tenth of the capacity further there is nothing left (common practice, no
    /// source).
    #[must_use]
    pub fn open_circuit_v<R: Real>(z: R) -> R {
        const POINTS: [f64; 5] = [11.89, 12.06, 12.24, 12.45, 12.65];
        /// Charge at which the voltage is gone.
        const DEAD: f64 = -0.1;
        let (zero, one) = (R::all(0.0), R::all(1.0));
        let x = R::choose(one.below(z), one, z) * 4.0;
        let mut v = R::all(POINTS[0]) + x * (POINTS[1] - POINTS[0]);
        for i in 1..4 {
            let from = i as f64;
            let beyond = (x - from) * (POINTS[i + 1] - POINTS[i]) + POINTS[i];
            v = R::choose(R::all(from).at_most(x), beyond, v);
        }
        let gone = one - z / DEAD;
        let low = R::choose(gone.below(zero), zero, gone) * POINTS[0];
        R::choose(z.below(zero), low, v)
    }

    /// How fast the charge `z` of a battery of `capacity_ah` changes under `ampere` (positive charges), 1/s. The
    /// last twentieth takes in less and less; what it does not take makes gas.
    #[must_use]
    pub fn charge_rate_per_s<R: Real>(capacity_ah: R, z: R, ampere: R) -> R {
        /// Share of the capacity over which acceptance fades out.
        const FADES: f64 = 0.05;
        let (zero, one) = (R::all(0.0), R::all(1.0));
        let share = (one - z) / FADES;
        let share = R::choose(share.below(zero), zero, R::choose(one.below(share), one, share));
        let accepted = R::choose(zero.below(ampere), share, one);
        accepted * ampere / (capacity_ah * 3600.0)
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

/// Heat time of the fuse strip, s; with the melting point 1.30² it meets the bands of ISO 8820-3 at
/// 110, 135, 160, 200, 350 and 600 % (row 6.13b, from memory). At 1.35² it would never melt at 135 %.
pub const FUSE_TAU_S: f64 = 1.9;
/// Fuse strip melts at this heat, (i/I_n)².
pub const FUSE_MELTS_AT: f64 = 1.30 * 1.30;

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

part_params! {
    /// Ignition switch; ports `30` and `15`.
    pub struct KeySwitch {
        /// Resistance of the closed contact, mΩ.
        contact_mohm: 0.5 ..= 1000.0,
        faults {}
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

part_params! {
    /// Car body: one piece of metal with earth points `31a` to `31d`.
    pub struct Body {
        /// Unused resistance between the points, mΩ; the sheet is taken as one node.
        sheet_mohm: 0.0 ..= 10.0,
        faults {}
    }
}
