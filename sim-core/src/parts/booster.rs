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
//! of the air in is narrower), a sticking return (dry friction of the piston, [`PistonLaw::unstuck`]), and a
//! push-rod of the wrong length (the master cylinder is met earlier or later, or pressed at rest).
//! Not modelled: brake hydraulics beyond the curve, friction of sound seals, mass of the pedal, the brake
//! fluid that a leaking front seal draws in (its air is).

use crate::flow::iso6358::{C_PER_MM2, Iso6358};
use crate::flow::nipple::{self, B_SHORT_WAY};
use crate::flow::pinhole::Pinhole;
use crate::params::part_params;
use crate::parts::elements::{
    Air, Allowance, Behind, Bounds, ByHand, Chamber, Depth, Electric, FlowPath, Law, Machine, Mouth, Passage,
    PistonLaw, Place, Quantity, Seen, Spec, Specified, Start, State, Volume, wall_w_per_k,
};

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

impl Booster {
    /// Effective area, m².
    #[must_use]
    pub fn area_m2(&self) -> f64 {
        self.area_cm2 * 1e-4
    }

    /// The numbers of its laws.
    #[must_use]
    pub fn law(&self) -> PistonLaw {
        PistonLaw {
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

    /// Both chambers; the wall is shared out by their volumes at rest.
    fn volumes(&self) -> Vec<Volume> {
        let (front, rear) = (self.front_l * 1e-3, self.rear_l * 1e-3);
        let wall = wall_w_per_k(self.surface_m2);
        let share = front / (front + rear);
        let area = self.area_m2();
        let chamber = |chamber, depth, m3, area: f64, share: f64| Volume {
            chamber,
            depth,
            m3,
            per_travel_m2: Some(area),
            w_per_k: wall * share,
        };
        vec![
            chamber(Chamber::Rear, Depth::Store, rear, area, 1.0 - share),
            chamber(Chamber::Front, Depth::Hub, front, -area, share),
        ]
    }

    /// What leaks, and the two ways of the control valve.
    fn flow_paths(&self) -> Vec<FlowPath> {
        let between = |law| {
            Some(FlowPath { a: Place::In(Chamber::Rear), b: Place::In(Chamber::Front), law, heard: false })
        };
        let inner =
            |d_mm: f64| (0.0 < d_mm).then(|| between(Law::Hole(Pinhole::of_diameter_mm(d_mm)))).flatten();
        let flow_paths = [
            FlowPath::hole(Chamber::Front, self.rim_mm),
            FlowPath::hole(Chamber::Front, self.front_seal_mm),
            FlowPath::seep(Chamber::Front, self.seep_cm3_per_min),
            FlowPath::hole(Chamber::Rear, self.air_seat_mm),
            Some(FlowPath::leak(Chamber::Rear, Law::Admit { open: self.admit() })),
            between(Law::Equalise { open: self.equalise() }),
            inner(self.tear_mm),
            inner(self.seat_mm),
        ];
        flow_paths.into_iter().flatten().collect()
    }
}

impl Specified for Booster {
    const SEEN: Seen = Seen { by_hand: Some(ByHand::Pedal), ..Seen::PIECE };

    fn spec(&self, _: f64) -> Spec {
        let nipple = Passage::Iso(self.nipple());
        Spec {
            hangs: false,
            air: Air {
                volumes: self.volumes(),
                mouths: vec![Mouth::to(0, Behind::Chamber(Chamber::Front), nipple)],
                flow_paths: self.flow_paths(),
            },
            electric: Electric::NONE,
            states: vec![State {
                is: Quantity::Travel,
                bounds: Bounds::any(Allowance::of(1e-5)),
                start: Start::At(0.0),
                follows: None,
            }],
            machines: vec![Machine::Piston { law: self.law(), front: Chamber::Front, rear: Chamber::Rear }],
            switches: vec![],
        }
    }
}
