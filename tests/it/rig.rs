//! Small assemblies for tests, joined by name, and whole cars from the library.
//!
//! Numbers here may lie far outside what a pack file may hold (a vessel of 20 m³, walls that take up any
//! heat): the circuit's equations are the same, and textbook examples are large.

use std::cell::Cell;
use std::path::Path;
use std::sync::Arc;

use assess::attempt::Attempt;
use assess::pack::Library;
use assess::pack::job::Job;
use assess::play;
use sim_core::Opened;
use sim_core::action::Action;
use sim_core::air::{Day, R_AIR};
use sim_core::assembly::{Assembly, Joint, Part, PortRef, Stop};
use sim_core::car::Car;
use sim_core::circuit::{Circuit, Pace};
use sim_core::parts::booster::Booster;
use sim_core::parts::electrical::{Body, Supply, Wire};
use sim_core::parts::instruments::{HandPump, Multimeter};
use sim_core::parts::tee::Tee;
use sim_core::parts::{Domain, PartKind};
use sim_core::units::Tick;
use sim_core::world::World;

/// Wall surface, m², that keeps the air at the wall's temperature: what books call isothermal.
pub(crate) const ISOTHERMAL_M2: f64 = 1e4;

thread_local! {
    /// How often a circuit was run in this thread, which is a test's own.
    static RUNS: Cell<u64> = const { Cell::new(0) };
}

/// How often this thread has run a circuit: a check value that says "through the step" is held to it.
pub(crate) fn runs() -> u64 {
    RUNS.get()
}

/// An assembly in the making.
#[derive(Default)]
pub(crate) struct Rig(Assembly);

impl Rig {
    pub(crate) fn part(mut self, id: &str, kind: PartKind) -> Self {
        self.0.parts.push(Part { id: id.to_owned(), kind });
        self
    }

    /// Joins two ports, `part.port` each.
    pub(crate) fn join(mut self, a: &str, b: &str) -> Self {
        let port = |name| self.0.port(name).unwrap_or_else(|| panic!("no port {name}"));
        let joint = Joint { id: format!("{a}-{b}"), a: port(a), b: port(b), made: true };
        self.0.joints.push(joint);
        self
    }

    /// Puts the rig into the day, with every unjoined pneumatic port plugged except those named.
    pub(crate) fn on(mut self, day: Day, open: &[&str]) -> Bench {
        let ports: Vec<PortRef> = self.0.ports().collect();
        for port in ports {
            let name = self.0.port_name(port);
            let free = self.0.domain(port) == Domain::Pneumatic && self.0.partner(port).is_none();
            if free && !open.contains(&name.as_str()) {
                self.0.set_stop(port, Some(Stop::Plug));
            }
        }
        Bench { circuit: Circuit::new(self.0, day) }
    }
}

/// A running circuit with access by name.
#[derive(Clone)]
pub(crate) struct Bench {
    pub(crate) circuit: Circuit,
}

impl Bench {
    pub(crate) fn port(&self, name: &str) -> PortRef {
        self.circuit.assembly().port(name).unwrap_or_else(|| panic!("no port {name}"))
    }

    pub(crate) fn part(&self, id: &str) -> u16 {
        self.circuit.assembly().part_index(id).unwrap_or_else(|| panic!("no part {id}"))
    }

    /// Absolute pressure behind a port, Pa.
    pub(crate) fn pa(&self, port: &str) -> f64 {
        self.circuit.pressure(self.port(port)).pa()
    }

    /// Gauge pressure behind a port, kPa.
    pub(crate) fn kpa_gauge(&self, port: &str) -> f64 {
        self.circuit.pressure(self.port(port)).gauge(self.circuit.ambient()).kpa()
    }

    /// Absolute pressure (Pa) and temperature (K) of a body of air by its name.
    pub(crate) fn air(&self, name: &str) -> (f64, f64) {
        let bodies = self.circuit.bodies_of_air();
        let (_, p, t) = bodies.iter().find(|b| b.0 == name).unwrap_or_else(|| panic!("no air in {name}"));
        (p.pa(), *t)
    }

    /// Mass of air in `m3` of a body, kg.
    pub(crate) fn mass(&self, name: &str, m3: f64) -> f64 {
        let (p, t) = self.air(name);
        p * m3 / (R_AIR * t)
    }

    pub(crate) fn set(&mut self, param: &str, value: f64) {
        let mut found = false;
        self.circuit.change(|a| found = a.set_param(param, value));
        assert!(found, "no parameter {param}");
    }

    pub(crate) fn stroke(&mut self, part: &str, strokes_per_s: f64) {
        let i = self.part(part) as usize;
        self.circuit.inputs_mut().hands[i].strokes_per_s = strokes_per_s;
    }

    pub(crate) fn run_s(&mut self, s: f64) {
        RUNS.set(RUNS.get() + 1);
        let to = Tick(self.circuit.tick().0 + Tick::from_s(s).0);
        self.circuit.run_to(to, Pace::Timed);
    }

    pub(crate) fn now_s(&self) -> f64 {
        self.circuit.tick().s()
    }

    /// Runs until `value` has fallen to `target`, looking every `every_s`; the clock's time then, s, by
    /// interpolation of the value's logarithm.
    ///
    /// # Panics
    /// When `max_s` pass before.
    pub(crate) fn when_fallen(
        &mut self,
        every_s: f64,
        max_s: f64,
        target: f64,
        value: impl Fn(&Self) -> f64,
    ) -> f64 {
        let start = self.now_s();
        let mut before = value(self);
        while self.now_s() - start < max_s {
            self.run_s(every_s);
            let after = value(self);
            if after <= target {
                let share = f64::ln(before / target) / f64::ln(before / after);
                return self.now_s() - every_s * (1.0 - share);
            }
            before = after;
        }
        panic!("{before} has not fallen to {target} in {max_s} s")
    }
}

/// A plain vessel: a booster nobody presses, its rear chamber a ten-thousandth of the whole.
pub(crate) fn vessel(litre: f64, surface_m2: f64) -> Booster {
    Booster {
        front_l: litre * (1.0 - 1e-4),
        rear_l: litre * 1e-4,
        area_cm2: 1.0,
        spring_n: 100.0,
        spring_n_per_m: 1_000.0,
        pedal_ratio: 4.0,
        servo_ratio: 5.0,
        jump_in_n: 0.0,
        valve_preload_n: 50.0,
        valve_span_n: 50.0,
        admit_mm2: 1.0,
        equalise_mm2: 100.0,
        brake_kn_per_cm2: 1.0,
        brake_free_mm: 0.0,
        damping_kns_per_m: 20.0,
        bore_mm: 50.0,
        surface_m2,
        seep_cm3_per_min: 0.0,
        rim_mm: 0.0,
        tear_mm: 0.0,
        seat_mm: 0.0,
        air_seat_mm: 0.0,
        front_seal_mm: 0.0,
        filter_blocked: 0.0,
        drag_n: 0.0,
        rod_mm: 0.0,
    }
}

/// A pump of constant speed: strokes of `stroke_l`, down to `ultimate_share` of the day's pressure.
pub(crate) fn constant_pump(stroke_l: f64, ultimate_share: f64, bore_mm: f64) -> PartKind {
    PartKind::HandPump(HandPump {
        stroke_cm3: stroke_l * 1e3,
        ultimate_share,
        volume_cm3: 2.0,
        bore_mm,
        lag_s: 0.3,
    })
}

/// A vessel and a pump of constant speed on it; strokes are of a litre.
pub(crate) fn vessel_and_pump(vessel: Booster, ultimate_share: f64, day: Day) -> Bench {
    Rig::default()
        .part("vessel", PartKind::Booster(vessel))
        .part("suction", constant_pump(1.0, ultimate_share, vessel.bore_mm))
        .join("suction.stem", "vessel.vacuum")
        .on(day, &[])
}

pub(crate) fn tee(bore_mm: f64, volume_cm3: f64, crack_mm: f64) -> PartKind {
    PartKind::Tee(Tee { bore_mm, volume_cm3, crack_mm })
}

pub(crate) fn supply(volt: f64, source_ohm: f64) -> PartKind {
    PartKind::Supply(Supply { volt, source_mohm: source_ohm * 1e3 })
}

pub(crate) fn body() -> PartKind {
    PartKind::Body(Body { sheet_mohm: 0.0 })
}

/// A plain resistance.
pub(crate) fn resistor(ohm: f64) -> PartKind {
    let wire = Wire { length_m: 1e-9, area_mm2: 1.0, corroded_ohm: ohm };
    PartKind::Wire(wire)
}

pub(crate) fn multimeter(input_megohm: f64) -> PartKind {
    PartKind::Multimeter(Multimeter {
        input_megohm,
        shunt_mohm: 10.0,
        leads_ohm: 0.2,
        fuse_a: 10.0,
        ohm_source_v: 2.0,
        ohm_source_kohm: 1.0,
    })
}

/// A day of pressure `pa` at `celsius`.
pub(crate) fn day_of(pa: f64, celsius: f64) -> Day {
    Day { weather_kpa: (pa - 101_325.0) * 1e-3, ambient_c: celsius, ..Day::STANDARD }
}

/// The library of this checkout.
pub(crate) fn library() -> Library {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    Library::open(&root).unwrap_or_else(|e| panic!("{e}"))
}

/// The car Alder, new.
pub(crate) fn alder() -> Arc<Car> {
    library().car("alder").unwrap_or_else(|e| panic!("{e}"))
}

/// Alder's part of that name.
pub(crate) fn alder_part(id: &str) -> PartKind {
    let car = alder();
    let i = car.assembly.part_index(id).unwrap_or_else(|| panic!("Alder has no {id}"));
    car.assembly.parts[i as usize].kind
}

/// Alder on a day, new, everything at rest.
pub(crate) fn alder_on(day: Day) -> Bench {
    Bench { circuit: Circuit::new(alder().assembly.clone(), day) }
}

/// The hidden numbers of an attempt, as they may be known once the car is handed back. One that is not is handed back
/// here, with a finding if there is none.
pub(crate) fn world(attempt: &Attempt, job: &Job) -> World {
    let mut workshop = play::replay(attempt, job).unwrap_or_else(|e| panic!("{e}"));
    if !workshop.view().handed_back {
        workshop.act(&Action::Finding { units: Vec::new(), certainty: 0.4 });
        workshop.act(&Action::HandBack);
    }
    Opened::after(workshop).expect("it could be handed back").world().clone()
}
