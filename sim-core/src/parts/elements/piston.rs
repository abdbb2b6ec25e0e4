//! A power piston between two chambers, with the control valve it carries and the brakes it presses.
//!
//! c dx/dt = F_in + A (p_rear − p_front) − F_spring(x) − F_mc(x); the control valve follows
//! e = F_in − F_preload − F_mc(x)/SR. Both openings are continuous laws with their slopes.

use crate::lanes::{Mask as _, Real, spread};
use crate::math::smoothstep;

/// Stiffness of the stops at both ends of the piston's way, N/m.
pub const STOP_N_PER_M: f64 = 2e6;
/// Force beyond the dry friction within which a sticking piston comes loose, N.
pub const UNSTICKS_N: f64 = 5.0;

/// The numbers of a piston's laws and of the control valve it carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PistonLaw<R = f64> {
    /// Effective area, m².
    pub area_m2: R,
    /// Damping of the piston, N·s/m.
    pub damping: R,
    /// Pedal ratio.
    pub pedal_ratio: R,
    /// Return spring at rest, N.
    pub spring_n: R,
    /// Rate of the return spring, N/m.
    pub spring_n_per_m: R,
    /// Servo ratio of the reaction disc.
    pub servo_ratio: R,
    /// Output force at which the reaction disc begins to push back, N.
    pub jump_in_n: R,
    /// Preload of the control valve's spring, N at the push rod.
    pub valve_preload_n: R,
    /// Force at the push rod between shut and fully open, N.
    pub valve_span_n: R,
    /// Stiffness of master cylinder and brakes, N/cm² of travel squared.
    pub brake_n_per_cm2: R,
    /// Travel before the master cylinder is met, mm.
    pub brake_free_mm: R,
    /// Dry friction, N.
    pub drag_n: R,
    /// Travel at which the front chamber is all but used up, m.
    pub end_m: R,
}

spread!(PistonLaw {
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

impl<R: Real> PistonLaw<R> {
    /// Force of master cylinder and brakes at travel `x` (m), N, and its slope.
    #[must_use]
    #[inline(always)]
    pub fn brake_force(&self, x: R) -> (R, R) {
        let over_cm = ((x * 1e3 - self.brake_free_mm) * 0.1).larger(R::all(0.0));
        let k = self.brake_n_per_cm2;
        (k * over_cm * over_cm, k * 2.0 * over_cm * 100.0)
    }

    /// What dry friction leaves of the force that moves the piston, N, and its slope: nothing up to
    /// `drag_n`, then soon all but that much, with continuous slope.
    #[must_use]
    #[inline(always)]
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
    #[inline(always)]
    pub fn spring_force(&self, x: R) -> (R, R) {
        let rate = R::choose(x.below(R::all(0.0)), R::all(STOP_N_PER_M), self.spring_n_per_m);
        (self.spring_n + rate * x, rate)
    }

    /// Force of the wall the piston meets when the front chamber is all but used up, N, and its slope.
    #[must_use]
    #[inline(always)]
    pub fn end_stop(&self, x: R) -> (R, R) {
        let (zero, stiffness) = (R::all(0.0), R::all(STOP_N_PER_M));
        let over = x - self.end_m;
        let met = zero.below(over);
        (R::choose(met, stiffness * over, zero), R::choose(met, stiffness, zero))
    }

    /// Force that moves the control valve, N, and its slope over travel: > 0 admits, < 0 joins.
    #[must_use]
    #[inline(always)]
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
    #[inline(always)]
    pub fn admit_lift(&self, e: R) -> (R, R) {
        let (s, ds) = smoothstep(e / self.valve_span_n);
        (s, ds / self.valve_span_n)
    }

    /// Opening between the chambers at valve force `e`: share and slope.
    #[must_use]
    #[inline(always)]
    pub fn equalise_lift(&self, e: R) -> (R, R) {
        // Fully open at rest (e = −preload), shut for the last fifth of the way to e = 0, where the air
        // seat begins to open: both seats are shut in between.
        let path = self.valve_preload_n * 0.8;
        let (s, ds) = smoothstep((-e - self.valve_preload_n * 0.2) / path);
        (s, -ds / path)
    }
}
