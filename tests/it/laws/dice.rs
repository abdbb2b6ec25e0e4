//! Random actions: mostly sensible, some nonsense, reproducible from a seed.

use sim_core::action::{Action, Cue, Cycle, PedalHold, Sense, Written};
use sim_core::assembly::Stop;
use sim_core::car::Car;
use sim_core::instrument::{InstrumentCard, InstrumentKind};
use sim_core::parts::Domain;
use sim_core::parts::engine::EngineState;
use sim_core::parts::instruments::MeterMode;

/// Stream of the generator that is kept for these tests.
const STREAM: u128 = 0x7e57;

/// A die that also draws what hands need.
pub(super) struct Dice(dice::Dice);

impl std::ops::Deref for Dice {
    type Target = dice::Dice;

    fn deref(&self) -> &dice::Dice {
        &self.0
    }
}

impl std::ops::DerefMut for Dice {
    fn deref_mut(&mut self) -> &mut dice::Dice {
        &mut self.0
    }
}

impl Dice {
    pub(super) fn new(seed: u64) -> Self {
        Self(dice::Dice::new(u128::from(seed), STREAM))
    }

    /// Mostly from `min` to `max`, now and then something nobody should write.
    fn number(&mut self, min: f64, max: f64) -> f64 {
        if self.one_in(25) {
            *self.pick(&[f64::NAN, f64::INFINITY, -1.0, 0.0, 1e300, -1e-300, min, max])
        } else {
            min + (max - min) * self.unit()
        }
    }

    fn count(&mut self, max: u32) -> u32 {
        if self.one_in(25) { *self.pick(&[0, 1, max, max + 1, u32::MAX]) } else { 1 + self.below(8) as u32 }
    }

    /// Mostly a short time, s.
    fn seconds(&mut self) -> u32 {
        match self.below(20) {
            0 => *self.pick(&[0, 1, 43_200, 43_201, u32::MAX]),
            1 => 600 + self.below(3_000) as u32,
            _ => 1 + self.below(60) as u32,
        }
    }

    /// One of the names, now and then one that does not exist.
    fn name(&mut self, names: &[String]) -> String {
        if self.one_in(40) || names.is_empty() {
            (*self.pick(&["", "nothing", "booster.vacuum.x", "ü", "tee", "pump.", ".pump"])).to_owned()
        } else {
            self.pick(names).clone()
        }
    }

    fn engine(&mut self) -> EngineState {
        use EngineState::{ColdIdle, Cruise, Overrun, Stopped, WarmIdle, WideOpen};
        *self.pick(&[Stopped, Stopped, ColdIdle, WarmIdle, WarmIdle, Cruise, Overrun, WideOpen])
    }

    fn pedal(&mut self) -> PedalHold {
        match self.below(4) {
            0 | 1 => PedalHold::Released,
            2 => PedalHold::Foot { force_n: self.number(1.0, 700.0) },
            _ => PedalHold::Prop { force_n: self.number(1.0, 500.0) },
        }
    }
}

/// The names an action may use.
pub(super) struct Names {
    parts: Vec<String>,
    joints: Vec<String>,
    pneumatic: Vec<String>,
    electrical: Vec<String>,
    units: Vec<String>,
    covers: Vec<String>,
    spares: Vec<(String, String)>,
    record: Vec<String>,
    kit: Vec<InstrumentCard>,
}

impl Names {
    pub(super) fn of(car: &Car, kit: &[InstrumentCard], spares: &[sim_core::car::Spare]) -> Self {
        let ports = |domain| {
            let a = &car.assembly;
            a.ports().filter(|p| a.domain(*p) == domain).map(|p| a.port_name(p)).collect()
        };
        Self {
            parts: car.assembly.parts.iter().map(|p| p.id.clone()).collect(),
            joints: car.assembly.joints.iter().map(|j| j.id.clone()).collect(),
            pneumatic: ports(Domain::Pneumatic),
            electrical: ports(Domain::Electrical),
            units: car.units.iter().map(|u| u.id.clone()).collect(),
            covers: car.covers.iter().map(|c| c.id.clone()).collect(),
            spares: spares.iter().map(|s| (car.units[s.unit as usize].id.clone(), s.id.clone())).collect(),
            record: car.record.iter().map(|r| r.id.clone()).collect(),
            kit: kit.to_vec(),
        }
    }

    fn instrument(&self, dice: &mut Dice) -> String {
        let names: Vec<String> = self.kit.iter().map(|c| c.id.clone()).collect();
        dice.name(&names)
    }

    fn fit(&self, dice: &mut Dice) -> Action {
        let connects = |c: &&InstrumentCard| {
            use InstrumentKind::{AngleFinder, ClampAmmeter, IrThermometer};
            c.part.is_some()
                || matches!(c.kind, ClampAmmeter { .. } | IrThermometer { .. } | AngleFinder { .. })
        };
        let connecting: Vec<&InstrumentCard> = self.kit.iter().filter(connects).collect();
        let card = (*dice.pick(&connecting)).clone();
        let end = |dice: &mut Dice, name: &str, to: &[String]| (name.to_owned(), dice.name(to));
        let ends = match card.kind {
            InstrumentKind::Gauge { .. } | InstrumentKind::HandPump { .. } => {
                vec![end(dice, "stem", &self.pneumatic)]
            }
            InstrumentKind::Lamp | InstrumentKind::PushLead => {
                vec![end(dice, "a", &self.electrical), end(dice, "b", &self.electrical)]
            }
            InstrumentKind::Multimeter { .. } => {
                vec![end(dice, "v_ohm", &self.electrical), end(dice, "com", &self.electrical)]
            }
            InstrumentKind::ClampAmmeter { .. } => vec![end(dice, "jaw", &self.electrical)],
            InstrumentKind::IrThermometer { .. } => vec![end(dice, "beam", &self.parts)],
            InstrumentKind::AngleFinder { .. } => vec![end(dice, "arm", &self.parts)],
            _ => vec![end(dice, "stem", &self.parts)],
        };
        Action::Fit { instrument: card.id, ends }
    }

    fn sense(&self, dice: &mut Dice) -> Sense {
        match dice.below(8) {
            0 => Sense::Hiss { part: dice.name(&self.parts) },
            1 => Sense::Hum,
            2 => Sense::Touch { part: dice.name(&self.parts) },
            3 => Sense::PedalTravel,
            4 => Sense::PedalMoved,
            5 => Sense::Lamp { instrument: self.instrument(dice) },
            6 => Sense::BaseBrakes,
            _ => dice.pick(&[Sense::Applications, Sense::YardDrive]).clone(),
        }
    }

    /// What a person does first, half the time: chocks, and all covers off.
    pub(super) fn preparation(&self, dice: &mut Dice) -> Vec<Action> {
        if dice.one_in(2) {
            return Vec::new();
        }
        let mut list = vec![Action::Chocks(true)];
        if dice.one_in(2) {
            list.push(Action::Key(true));
        }
        list.extend(self.covers.iter().map(|c| Action::Cover { cover: c.clone(), off: true }));
        list
    }

    /// One random action.
    pub(super) fn action(&self, dice: &mut Dice) -> Action {
        let times = |dice: &mut Dice, max| dice.count(max);
        match dice.below(40) {
            0 | 1 => Action::Key(!dice.one_in(3)),
            2..=4 => Action::Engine(dice.engine()),
            5 | 6 => Action::Pedal(dice.pedal()),
            7 | 8 => Action::PumpPedal { times: times(dice, 30), force_n: dice.number(1.0, 700.0) },
            9 | 10 => Action::Cover { cover: dice.name(&self.covers), off: !dice.one_in(4) },
            11..=13 => Action::OpenJoint { joint: dice.name(&self.joints) },
            14 | 15 => Action::MakeJoint { joint: dice.name(&self.joints) },
            16 | 17 => {
                let stop = *dice.pick(&[Some(Stop::Plug), Some(Stop::Clamp), None]);
                Action::SetStop { port: dice.name(&self.pneumatic), stop }
            }
            18 => Action::PullUnit { unit: dice.name(&self.units) },
            19 => Action::PushUnit { unit: dice.name(&self.units) },
            20..=23 => self.fit(dice),
            24 => Action::Unfit { instrument: self.instrument(dice) },
            25 => {
                let mode = *dice.pick(&[MeterMode::Off, MeterMode::Volt, MeterMode::Ohm, MeterMode::Ampere]);
                Action::SetMeter { instrument: self.instrument(dice), mode }
            }
            26 => Action::Press { instrument: self.instrument(dice), down: !dice.one_in(3) },
            27 => Action::Stroke { instrument: self.instrument(dice), times: times(dice, 200) },
            28 => self.repair(dice),
            29 | 30 => Action::Read { instrument: self.instrument(dice) },
            31 | 32 => Action::Sense(self.sense(dice)),
            33 => {
                let cycle = *dice.pick(&[Cycle::PumpRun, Cycle::PumpRest]);
                Action::Time { cycle, max_s: dice.seconds().min(120) }
            }
            34 => Action::Wait { s: dice.seconds() },
            35 => {
                let cue = *dice.pick(&[Cue::PumpStarts, Cue::PumpStops, Cue::LampOut, Cue::LampOn]);
                Action::WaitUntil { cue, max_s: dice.seconds().min(120) }
            }
            36 => self.note(dice),
            37 if dice.one_in(2) => Action::Extraction(!dice.one_in(3)),
            37 => Action::Chocks(!dice.one_in(3)),
            38 => dice.pick(&[Action::ReadCard, Action::ReadSheet, Action::Overnight]).clone(),
            _ => self.decide(dice),
        }
    }

    fn repair(&self, dice: &mut Dice) -> Action {
        match dice.below(4) {
            0 => Action::Clean { unit: dice.name(&self.units) },
            1 => Action::Reform { unit: dice.name(&self.units) },
            _ if self.spares.is_empty() => Action::Clean { unit: dice.name(&self.units) },
            _ => {
                let (unit, spare) = dice.pick(&self.spares).clone();
                let unit = if dice.one_in(5) { dice.name(&self.units) } else { unit };
                Action::Swap { unit, spare }
            }
        }
    }

    fn note(&self, dice: &mut Dice) -> Action {
        let unit = (*dice.pick(&["kPa", "V", "A", "ohm", "C", "s", "deg", "mm", "furlong"])).to_owned();
        let written = (!dice.one_in(3)).then(|| Written { value: dice.number(-100.0, 100.0), unit });
        let record = dice.one_in(2).then(|| dice.name(&self.record));
        Action::Note { reading: dice.count(3), written, record }
    }

    fn decide(&self, dice: &mut Dice) -> Action {
        if dice.one_in(4) {
            return Action::HandBack;
        }
        let n = dice.below(3);
        let units = (0..n).map(|_| dice.name(&self.units)).collect();
        Action::Finding { units, certainty: *dice.pick(&[0.0, 0.4, 0.6, 0.8, 0.95, 0.5, f64::NAN]) }
    }
}
