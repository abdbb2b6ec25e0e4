//! Vacuum brake booster with pedal and master cylinder.
//!
//! Two chambers either side of a power piston of travel x: front V_f0 − A x, rear V_r0 + A x.
//! The piston moves against damping: c dx/dt = F_in + A (p_rear − p_front) − F_spring(x) − F_mc(x).
//! The control valve follows e = F_in − F_preload − F_mc(x)/SR (reaction disc: the rod feels the output
//! force divided by the servo ratio, once the gap behind the disc is taken up at the jump-in force):
//! e < 0 joins the chambers, e > 0 lets air into the rear one, in between both are shut. Both openings
//! are continuous laws. The master cylinder and brakes are one stiffness curve.
//!
//! Geometry: row 7.2 (PATH report); flow coefficients: row 7.3 as trap T3 reads it. Out of it come
//! assist, jump-in, the run-out point, the hard pedal, the air each application swallows, and the pedal
//! that drops when the engine starts.
//!
//! Hysteresis is the band of F_in in which both seats are shut. What can be wrong, each a number of its own:
//! holes (shell, diaphragm, front seal, air seat, seat between the chambers), a blocked air filter (the way
//! of the air in is narrower), a sticking return (dry friction of the piston, [`BoosterLaw::unstuck`]), and a
//! push-rod of the wrong length (the master cylinder is met earlier or later, or pressed at rest).
//! Not modelled: brake hydraulics beyond the curve, friction of sound seals, mass of the pedal, the brake
//! fluid that a leaking front seal draws in (its air is).

use crate::flow::iso6358::{C_PER_MM2, Iso6358};
use crate::flow::nipple::{self, B_SHORT_WAY};
use crate::lanes::{Mask as _, Real, spread};
use crate::math::smoothstep;
use crate::params::part_params;

part_params! {
    /// The booster; ports `vacuum` (pneumatic, front chamber), place `pedal`.
    pub struct Booster {
        /// Volume of the front chamber at rest, L.
        front_l: 0.2 ..= 10.0,
        /// Volume of the rear chamber at rest, L.
        rear_l: 0.05 ..= 5.0,
        /// Effective area of the diaphragm, cm².
        area_cm2: 50.0 ..= 2000.0,
        /// Return spring at rest, N.
        spring_n: 0.0 ..= 1000.0,
        /// Rate of the return spring, N/m.
        spring_n_per_m: 0.0 ..= 20000.0,
        /// Pedal ratio.
        pedal_ratio: 1.0 ..= 10.0,
        /// Servo ratio of the reaction disc.
        servo_ratio: 1.5 ..= 15.0,
        /// Output force at which the reaction disc begins to push back, N.
        jump_in_n: 0.0 ..= 2000.0,
        /// Preload of the control valve's spring, N at the push rod.
        valve_preload_n: 5.0 ..= 300.0,
        /// Force at the push rod between shut and fully open, N.
        valve_span_n: 5.0 ..= 300.0,
        /// Opening of the control valve from the air to the rear chamber, mm² of ideal hole.
        admit_mm2: 1.0 ..= 200.0,
        /// Opening of the control valve between the chambers, mm² of ideal hole.
        equalise_mm2: 1.0 ..= 400.0,
        /// Stiffness of master cylinder and brakes, kN/cm² of travel squared.
        brake_kn_per_cm2: 0.01 ..= 10.0,
        /// Travel before the master cylinder builds pressure, mm.
        brake_free_mm: 0.0 ..= 20.0,
        /// Damping of the piston, kN·s/m.
        damping_kns_per_m: 0.5 ..= 200.0,
        /// Bore of the vacuum nipple, mm.
        bore_mm: 3.0 ..= 25.0,
        /// Inner surface that warms the air, m².
        surface_m2: 0.01 ..= 2.0,
        /// Seep of a sound booster into a perfect vacuum, cm³ of free air a minute.
        seep_cm3_per_min: 0.0 ..= 20.0,
        faults {
            /// Leak of the diaphragm at its rim to the air, as a hole, mm.
            rim_mm: 0.0 ..= 5.0,
            /// Tear between the chambers, as a hole, mm.
            tear_mm: 0.0 ..= 10.0,
            /// Leak of the seat between the chambers while the valve should be shut, as a hole, mm.
            seat_mm: 0.0 ..= 8.0,
            /// Leak of the air seat at rest, as a hole, mm.
            air_seat_mm: 0.0 ..= 5.0,
            /// Leak of the front seal at the push-rod to the air, as a hole, mm.
            front_seal_mm: 0.0 ..= 5.0,
            /// Share of the air's way through the filter that is blocked.
            filter_blocked: 0.0 ..= 0.999,
            /// Dry friction of a sticking piston, N.
            drag_n: 0.0 ..= 2000.0,
            /// Push-rod too long (positive) or too short (negative), mm.
            rod_mm: -10.0 ..= 10.0,
        }
    }
}

/// Stiffness of the stops at both ends of the piston's way, N/m.
pub const STOP_N_PER_M: f64 = 2e6;
/// Force beyond the dry friction within which a sticking piston comes loose, N.
pub const UNSTICKS_N: f64 = 5.0;

/// A booster's numbers as the laws of its piston and valve need them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoosterLaw<R = f64> {
    /// Effective area, m².
    pub area_m2: R,
    /// Damping of the piston, N·s/m.
    pub damping: R,
    /// Pedal ratio.
    pub pedal_ratio: R,
    spring_n: R,
    spring_n_per_m: R,
    servo_ratio: R,
    jump_in_n: R,
    valve_preload_n: R,
    valve_span_n: R,
    /// Stiffness of master cylinder and brakes, N/cm² of travel squared.
    brake_n_per_cm2: R,
    /// Travel before the master cylinder is met, mm.
    brake_free_mm: R,
    drag_n: R,
    /// Travel at which the front chamber is all but used up, m.
    end_m: R,
}

spread!(BoosterLaw {
    area_m2,
    damping,
    pedal_ratio,
    spring_n,
    spring_n_per_m,
    servo_ratio,
    jump_in_n,
    valve_preload_n,
    valve_span_n,
    brake_n_per_cm2,
    brake_free_mm,
    drag_n,
    end_m,
});

impl Booster {
    /// Effective area, m².
    #[must_use]
    pub fn area_m2(&self) -> f64 {
        self.area_cm2 * 1e-4
    }

    /// The numbers of its laws.
    #[must_use]
    pub fn law(&self) -> BoosterLaw {
        BoosterLaw {
            area_m2: self.area_m2(),
            damping: self.damping_kns_per_m * 1e3,
            pedal_ratio: self.pedal_ratio,
            spring_n: self.spring_n,
            spring_n_per_m: self.spring_n_per_m,
            servo_ratio: self.servo_ratio,
            jump_in_n: self.jump_in_n,
            valve_preload_n: self.valve_preload_n,
            valve_span_n: self.valve_span_n,
            brake_n_per_cm2: self.brake_kn_per_cm2 * 1e3,
            brake_free_mm: self.brake_free_mm - self.rod_mm,
            drag_n: self.drag_n,
            end_m: 0.92 * self.front_l * 1e-3 / self.area_m2(),
        }
    }

    /// Full opening from the air to the rear chamber.
    #[must_use]
    pub fn admit(&self) -> Iso6358 {
        Iso6358 { c: self.admit_mm2 * (1.0 - self.filter_blocked) * C_PER_MM2, b: B_SHORT_WAY }
    }

    /// Full opening between the chambers.
    #[must_use]
    pub fn equalise(&self) -> Iso6358 {
        Iso6358 { c: self.equalise_mm2 * C_PER_MM2, b: B_SHORT_WAY }
    }

    /// Resistance of the vacuum nipple.
    #[must_use]
    pub fn nipple(&self) -> Iso6358 {
        nipple::of_bore_mm(self.bore_mm)
    }
}

impl<R: Real> BoosterLaw<R> {
    /// Force of master cylinder and brakes at travel `x` (m), N, and its slope.
    #[must_use]
    #[inline]
    pub fn brake_force(&self, x: R) -> (R, R) {
        let over_cm = ((x * 1e3 - self.brake_free_mm) * 0.1).larger(R::all(0.0));
        let k = self.brake_n_per_cm2;
        (k * over_cm * over_cm, k * 2.0 * over_cm * 100.0)
    }

    /// What dry friction leaves of the force that moves the piston, N, and its slope: nothing up to
    /// `drag_n`, then soon all but that much, with continuous slope.
    #[must_use]
    #[inline]
    pub fn unstuck(&self, force: R) -> (R, R) {
        let (zero, one) = (R::all(0.0), R::all(1.0));
        let free = self.drag_n.at_most(zero);
        if free.every() {
            return (force, one);
        }
        let over = force.abs() - self.drag_n;
        let stuck = over.at_most(zero);
        let sum = over + UNSTICKS_N;
        let sign = R::choose(force.below(zero), -one, one);
        let left = R::choose(stuck, zero, sign * over * over / sum);
        let gain = R::choose(stuck, zero, over * (over + 2.0 * UNSTICKS_N) / (sum * sum));
        (R::choose(free, force, left), R::choose(free, one, gain))
    }

    /// Force of return spring and rest stop at travel `x` (m), N, and its slope.
    #[must_use]
    #[inline]
    pub fn spring_force(&self, x: R) -> (R, R) {
        let rate = R::choose(x.below(R::all(0.0)), R::all(STOP_N_PER_M), self.spring_n_per_m);
        (self.spring_n + rate * x, rate)
    }

    /// Force of the wall the piston meets when the front chamber is all but used up, N, and its slope.
    #[must_use]
    #[inline]
    pub fn end_stop(&self, x: R) -> (R, R) {
        let (zero, stiffness) = (R::all(0.0), R::all(STOP_N_PER_M));
        let over = x - self.end_m;
        let met = zero.below(over);
        (R::choose(met, stiffness * over, zero), R::choose(met, stiffness, zero))
    }

    /// Force that moves the control valve, N, and its slope over travel: > 0 admits, < 0 joins.
    #[must_use]
    #[inline]
    pub fn valve_force(&self, pedal_n: R, x: R) -> (R, R) {
        let zero = R::all(0.0);
        let (f_mc, df_mc) = self.brake_force(x);
        let felt = f_mc - self.jump_in_n;
        let pushes = zero.below(felt);
        let (reaction, d_reaction) = (R::choose(pushes, felt, zero), R::choose(pushes, df_mc, zero));
        (
            pedal_n * self.pedal_ratio - self.valve_preload_n - reaction / self.servo_ratio,
            -d_reaction / self.servo_ratio,
        )
    }

    /// Opening from the air to the rear chamber at valve force `e`: share and slope.
    #[must_use]
    #[inline]
    pub fn admit_lift(&self, e: R) -> (R, R) {
        let (s, ds) = smoothstep(e / self.valve_span_n);
        (s, ds / self.valve_span_n)
    }

    /// Opening between the chambers at valve force `e`: share and slope.
    #[must_use]
    #[inline]
    pub fn equalise_lift(&self, e: R) -> (R, R) {
        // Fully open at rest (e = −preload), shut for the last fifth of the way to e = 0, where the air
        // seat begins to open: both seats are shut in between.
        let way = self.valve_preload_n * 0.8;
        let (s, ds) = smoothstep((-e - self.valve_preload_n * 0.2) / way);
        (s, -ds / way)
    }
}
