//! What stands in a workshop until somebody changes it: states that last, and what hangs on the car.

use sim_core::action::{Action, PedalHold, Sense};
use sim_core::assembly::Stop;
use sim_core::parts::engine::EngineState;
use sim_core::parts::instruments::MeterMode;
use sim_core::workshop::View;

/// Something that lasts until it is undone.
#[derive(Clone, Debug, PartialEq)]
pub enum Lasting {
    /// The key is on.
    Key,
    /// The engine runs so.
    Engine(EngineState),
    /// The pedal is held so.
    Pedal(PedalHold),
    /// Chocks are in place.
    Chocks,
    /// The extraction hangs on the exhaust.
    Extraction,
    /// A cover is off.
    CoverOff(String),
    /// A joint is open.
    Open(String),
    /// A stop sits at a port.
    Stop(String, Stop),
    /// A unit is pulled out.
    Pulled(String),
    /// An instrument is connected: its ends.
    Fitted(String, Vec<(String, String)>),
    /// The dial of a meter is not at off.
    Dial(String, MeterMode),
    /// A button or lever is held down.
    Pressed(String),
}

impl Lasting {
    /// The action that ends it.
    #[must_use]
    pub fn undo(&self) -> Action {
        match self {
            Self::Key => Action::Key(false),
            Self::Engine(_) => Action::Engine(EngineState::Stopped),
            Self::Pedal(_) => Action::Pedal(PedalHold::Released),
            Self::Chocks => Action::Chocks(false),
            Self::Extraction => Action::Extraction(false),
            Self::CoverOff(cover) => Action::Cover { cover: cover.clone(), off: false },
            Self::Open(joint) => Action::MakeJoint { joint: joint.clone() },
            Self::Stop(port, _) => Action::SetStop { port: port.clone(), stop: None },
            Self::Pulled(unit) => Action::PushUnit { unit: unit.clone() },
            Self::Fitted(instrument, _) => Action::Unfit { instrument: instrument.clone() },
            Self::Dial(instrument, _) => {
                Action::SetMeter { instrument: instrument.clone(), mode: MeterMode::Off }
            }
            Self::Pressed(instrument) => Action::Press { instrument: instrument.clone(), down: false },
        }
    }
}

/// What stands, in the order in which it came about.
#[derive(Clone, Debug, Default)]
pub struct Standing(Vec<Lasting>);

/// The order in which things came about is no difference.
impl PartialEq for Standing {
    fn eq(&self, other: &Self) -> bool {
        self.0.len() == other.0.len() && self.0.iter().all(|thing| other.has(thing))
    }
}

impl Standing {
    /// A car as it came in: nothing.
    #[must_use]
    pub fn as_it_came() -> Self {
        Self::default()
    }

    /// What somebody sees who comes by; in an order whose reverse undoes it well.
    #[must_use]
    pub fn of(view: &View) -> Self {
        let mut all = Vec::new();
        let mut put = |is: bool, thing: Lasting| all.extend(is.then_some(thing));
        put(view.chocked, Lasting::Chocks);
        put(view.extracted, Lasting::Extraction);
        view.covers_off.iter().for_each(|cover| put(true, Lasting::CoverOff(cover.clone())));
        view.pulled.iter().for_each(|unit| put(true, Lasting::Pulled(unit.clone())));
        view.joints_open.iter().for_each(|joint| put(true, Lasting::Open(joint.clone())));
        view.stops.iter().for_each(|(port, stop)| put(true, Lasting::Stop(port.clone(), *stop)));
        for it in &view.instruments {
            put(!it.at.is_empty(), Lasting::Fitted(it.id.clone(), it.at.clone()));
            let mode = it.mode.unwrap_or_default();
            put(mode != MeterMode::Off, Lasting::Dial(it.id.clone(), mode));
        }
        put(view.key_on, Lasting::Key);
        put(view.engine != EngineState::Stopped, Lasting::Engine(view.engine));
        put(view.pedal != PedalHold::Released, Lasting::Pedal(view.pedal));
        view.instruments.iter().for_each(|it| put(it.pressed, Lasting::Pressed(it.id.clone())));
        Self(all)
    }

    /// All of it, the oldest first.
    pub fn things(&self) -> impl DoubleEndedIterator<Item = &Lasting> {
        self.0.iter()
    }

    /// Whether this stands.
    #[must_use]
    pub fn has(&self, thing: &Lasting) -> bool {
        self.0.contains(thing)
    }

    /// What stands here and not there.
    #[must_use]
    pub fn without(&self, other: &Self) -> Vec<Lasting> {
        self.0.iter().filter(|thing| !other.has(thing)).cloned().collect()
    }

    /// What stands of it for which `stays` says so.
    #[must_use]
    pub fn only(&self, stays: impl Fn(&Lasting) -> bool) -> Self {
        Self(self.0.iter().filter(|thing| stays(thing)).cloned().collect())
    }

    /// The state of the engine.
    #[must_use]
    pub fn engine(&self) -> EngineState {
        let running = self.0.iter().find_map(|thing| match thing {
            Lasting::Engine(state) => Some(*state),
            _ => None,
        });
        running.unwrap_or(EngineState::Stopped)
    }

    /// How the pedal is held.
    #[must_use]
    pub fn pedal(&self) -> PedalHold {
        let held = self.0.iter().find_map(|thing| match thing {
            Lasting::Pedal(hold) => Some(*hold),
            _ => None,
        });
        held.unwrap_or(PedalHold::Released)
    }

    /// Where the dial of a meter stands.
    #[must_use]
    pub fn dial(&self, instrument: &str) -> MeterMode {
        let set = self.0.iter().find_map(|thing| match thing {
            Lasting::Dial(it, mode) if it == instrument => Some(*mode),
            _ => None,
        });
        set.unwrap_or_default()
    }

    /// Where the ends of an instrument are; `None` when it hangs on the board.
    #[must_use]
    pub fn fitted(&self, instrument: &str) -> Option<&[(String, String)]> {
        self.0.iter().find_map(|thing| match thing {
            Lasting::Fitted(it, ends) if it == instrument => Some(ends.as_slice()),
            _ => None,
        })
    }

    fn plus(&self, thing: Lasting) -> Option<Self> {
        if self.has(&thing) {
            return None;
        }
        let mut more = self.clone();
        more.0.push(thing);
        Some(more)
    }

    fn less(&self, goes: impl Fn(&Lasting) -> bool) -> Option<Self> {
        let left = self.only(|thing| !goes(thing));
        (left.0.len() < self.0.len()).then_some(left)
    }

    /// What stands after an action. `None` when it is one that changes what stands and would change nothing: it is so
    /// already, or what it needs is not so.
    #[must_use]
    pub fn after(&self, action: &Action) -> Option<Self> {
        let either = |on: bool, thing: Lasting| match on {
            true => self.plus(thing),
            false => self.less(|t| *t == thing),
        };
        let engine = |t: &Lasting| matches!(t, Lasting::Engine(_));
        let pedal = |t: &Lasting| matches!(t, Lasting::Pedal(_));
        let key_off = |t: &Lasting| *t == Lasting::Key || engine(t);
        let propped = matches!(self.pedal(), PedalHold::Prop { .. });
        match action {
            Action::Key(true) => self.plus(Lasting::Key),
            Action::Key(false) if self.has(&Lasting::Key) => self.less(key_off),
            Action::Key(false) => None,
            Action::Engine(EngineState::Stopped) => self.less(engine),
            Action::Engine(state) if self.has(&Lasting::Key) && self.engine() != *state => {
                self.only(|t| !engine(t)).plus(Lasting::Engine(*state))
            }
            Action::Engine(_) => None,
            Action::Pedal(PedalHold::Released) => self.less(pedal),
            Action::Pedal(PedalHold::Foot { .. }) if propped => None,
            Action::Pedal(hold) if *hold == self.pedal() => None,
            Action::Pedal(hold) => self.only(|t| !pedal(t)).plus(Lasting::Pedal(*hold)),
            Action::PumpPedal { .. } if propped => None,
            Action::PumpPedal { .. } => Some(self.only(|t| !pedal(t))),
            Action::Sense(Sense::YardDrive) => {
                let bars = [Lasting::Chocks, Lasting::Extraction];
                let barred = propped || bars.iter().any(|t| self.has(t));
                (!barred).then(|| self.only(|t| !key_off(t) && !pedal(t)))
            }
            Action::Chocks(on) => either(*on, Lasting::Chocks),
            Action::Extraction(on) => either(*on, Lasting::Extraction),
            Action::Cover { cover, off } => either(*off, Lasting::CoverOff(cover.clone())),
            Action::OpenJoint { joint } => self.plus(Lasting::Open(joint.clone())),
            Action::MakeJoint { joint } => self.less(|t| *t == Lasting::Open(joint.clone())),
            Action::PullUnit { unit } => self.plus(Lasting::Pulled(unit.clone())),
            Action::PushUnit { unit } => self.less(|t| *t == Lasting::Pulled(unit.clone())),
            Action::SetStop { port, stop } => {
                let here = |t: &Lasting| matches!(t, Lasting::Stop(at, _) if at == port);
                match stop {
                    Some(_) if self.0.iter().any(here) => None,
                    Some(stop) => self.plus(Lasting::Stop(port.clone(), *stop)),
                    None => self.less(here),
                }
            }
            Action::Fit { instrument, .. } if self.fitted(instrument).is_some() => None,
            Action::Fit { instrument, ends } => {
                let mut ends = ends.clone();
                ends.sort();
                self.plus(Lasting::Fitted(instrument.clone(), ends))
            }
            Action::Unfit { instrument } => {
                self.less(|t| matches!(t, Lasting::Fitted(it, _) if it == instrument))
            }
            Action::SetMeter { instrument, mode } => {
                let dial = |t: &Lasting| matches!(t, Lasting::Dial(it, _) if it == instrument);
                match mode {
                    mode if *mode == self.dial(instrument) => None,
                    MeterMode::Off => self.less(dial),
                    mode => self.only(|t| !dial(t)).plus(Lasting::Dial(instrument.clone(), *mode)),
                }
            }
            Action::Press { instrument, down } => either(*down, Lasting::Pressed(instrument.clone())),
            Action::ReadCard
            | Action::ReadSheet
            | Action::Stroke { .. }
            | Action::Swap { .. }
            | Action::Clean { .. }
            | Action::Reform { .. }
            | Action::Read { .. }
            | Action::Sense(_)
            | Action::Time { .. }
            | Action::Wait { .. }
            | Action::WaitUntil { .. }
            | Action::Overnight
            | Action::Note { .. }
            | Action::Suspect { .. }
            | Action::Finding { .. }
            | Action::HandBack => Some(self.clone()),
        }
    }
}

/// Whether an action does nothing but change what stands: once it is so, it need not be done again.
#[must_use]
pub fn only_lasts(action: &Action) -> bool {
    match action {
        Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(_)
        | Action::Cover { .. }
        | Action::OpenJoint { .. }
        | Action::MakeJoint { .. }
        | Action::SetStop { .. }
        | Action::PullUnit { .. }
        | Action::PushUnit { .. }
        | Action::Fit { .. }
        | Action::Unfit { .. }
        | Action::SetMeter { .. }
        | Action::Press { .. } => true,
        Action::ReadCard
        | Action::ReadSheet
        | Action::PumpPedal { .. }
        | Action::Stroke { .. }
        | Action::Swap { .. }
        | Action::Clean { .. }
        | Action::Reform { .. }
        | Action::Read { .. }
        | Action::Sense(_)
        | Action::Time { .. }
        | Action::Wait { .. }
        | Action::WaitUntil { .. }
        | Action::Overnight
        | Action::Note { .. }
        | Action::Suspect { .. }
        | Action::Finding { .. }
        | Action::HandBack => false,
    }
}
