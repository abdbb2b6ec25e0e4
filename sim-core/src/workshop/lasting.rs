//! Lasting states: key, engine, pedal, chocks, extraction, covers. The change comes at once, then a second passes.

use super::access::{cannot, in_range};
use super::state::{Doing, EngineEvent, Slope};
use super::{Workshop, timing};
use crate::action::{PedalHold, Station};
use crate::circuit::{Circuit, Pace};
use crate::instrument::InstrumentKind;
use crate::notice::{Hazard, Notice, Quantity, Reason, Refusal, Tool, Word};
use crate::parts::PartKind;
use crate::parts::engine::EngineState;

/// Voltage at rest below which the starter does not turn the engine, V (common practice, no source).
const CRANKS_ABOVE_V: f64 = 10.5;

impl Workshop {
    pub(super) async fn do_chocks(&mut self, doing: &mut Doing<'_>, on: bool) -> Result<(), Refusal> {
        if self.state.chocked == on {
            return Err(cannot(if on { Reason::ChocksSet } else { Reason::ChocksNone }));
        }
        self.hands_free()?;
        let at = self.reach(&[(Station::Front, None), (Station::Bay, None)])?;
        self.walk(doing, at).await;
        self.pass(doing, timing::CHOCKS).await;
        self.state.chocked = on;
        self.state.slope = Slope::Untold;
        Ok(())
    }

    /// Hangs the exhaust extraction on the tail pipe or back on the wall; one goes round the car for it.
    pub(super) async fn do_extraction(&mut self, doing: &mut Doing<'_>, on: bool) -> Result<(), Refusal> {
        if self.state.extracted == on {
            return Err(cannot(if on { Reason::ExtractionOn } else { Reason::ExtractionOff }));
        }
        self.hands_free()?;
        let at = self.reach(&[(Station::Bay, None), (Station::Front, None)])?;
        self.walk(doing, at).await;
        self.pass(doing, timing::EXTRACTION).await;
        self.state.extracted = on;
        if !on && self.circuit.inputs().engine != EngineState::Stopped {
            doing.breach(Hazard::ExtractionOffRunning);
        }
        Ok(())
    }

    pub(super) async fn do_cover(
        &mut self,
        doing: &mut Doing<'_>,
        name: &str,
        off: bool,
    ) -> Result<(), Refusal> {
        let cover = self.find_cover(name)?;
        if self.state.covers_off[cover] == off {
            return Err(cannot(Reason::CoverAlready {
                cover: name.into(),
                state: if off { Word::Off } else { Word::On },
            }));
        }
        self.hands_free()?;
        let (station, min) = {
            let c = &self.setup.car.covers[cover];
            (c.station, if off { c.off_min } else { c.on_min })
        };
        let at = self.reach(&[(station, None)])?;
        self.walk(doing, at).await;
        self.pass(doing, timing::minutes(min)).await;
        self.state.covers_off[cover] = off;
        Ok(())
    }

    pub(super) async fn do_key(&mut self, doing: &mut Doing<'_>, on: bool) -> Result<(), Refusal> {
        if self.circuit.inputs().key_on == on {
            return Err(cannot(Reason::IgnitionAlready { state: if on { Word::On } else { Word::Off } }));
        }
        let at = self.reach(&[(Station::Cab, None)])?;
        self.walk(doing, at).await;
        self.mark_switch();
        if !on && self.circuit.inputs().engine != EngineState::Stopped {
            self.engine_event(false);
            self.circuit.inputs_mut().engine = EngineState::Stopped;
            doing.say(Notice::EngineStops);
        }
        self.circuit.inputs_mut().key_on = on;
        self.state.applications = None;
        self.state.touch();
        self.pass(doing, timing::SETTLE).await;
        Ok(())
    }

    pub(super) async fn do_engine(&mut self, doing: &mut Doing<'_>, to: EngineState) -> Result<(), Refusal> {
        let now = self.circuit.inputs().engine;
        if now == to {
            return Err(cannot(Reason::EngineAlready));
        }
        let at = self.reach(&[(Station::Cab, None)])?;
        let starts = now == EngineState::Stopped;
        if starts {
            if !self.circuit.inputs().key_on {
                return Err(cannot(Reason::IgnitionFirst));
            }
            if doing.live() && self.engine_volts() < CRANKS_ABOVE_V {
                return Err(cannot(Reason::StarterClicks));
            }
        }
        self.walk(doing, at).await;
        if starts {
            self.engine_starts(doing);
        }
        if starts || to == EngineState::Stopped {
            self.engine_event(starts);
            self.state.applications = None;
        }
        self.circuit.inputs_mut().engine = to;
        self.state.touch();
        self.pass(doing, timing::SETTLE).await;
        Ok(())
    }

    /// Voltage between alternator terminal and engine block.
    fn engine_volts(&self) -> f64 {
        let assembly = self.circuit.assembly();
        let Some(engine) = super::graph::first_part(assembly, |k| matches!(k, PartKind::Engine(_))) else {
            return 0.0;
        };
        let volts = |name| {
            super::graph::port_of(assembly, engine, name).map_or(0.0, |port| self.circuit.voltage(port))
        };
        volts("b_plus") - volts("ground")
    }

    /// Remembers that the engine starts or stops now, and where a held pedal stands.
    pub(super) fn engine_event(&mut self, started: bool) {
        let held = self.state.pedal != PedalHold::Released;
        self.state.engine_event = Some(EngineEvent {
            started,
            tick: self.circuit.tick().0,
            travel_mm: held.then(|| self.circuit.pedal_travel_mm()),
        });
    }

    /// Remembers that hands switch something electrical now, and how full the store is.
    pub(super) fn mark_switch(&mut self) {
        self.state.last_switch = self.circuit.tick().0;
        self.state.store_kpa_at_switch = self.store_kpa();
    }

    pub(super) async fn do_pedal(&mut self, doing: &mut Doing<'_>, hold: PedalHold) -> Result<(), Refusal> {
        let (force, time) = match hold {
            PedalHold::Released => {
                if self.state.pedal == PedalHold::Released {
                    return Err(cannot(Reason::PedalFree));
                }
                (0.0, timing::SETTLE)
            }
            PedalHold::Foot { force_n } => {
                in_range(Quantity::PedalForce, force_n, 1.0, 700.0)?;
                if matches!(self.state.pedal, PedalHold::Prop { .. }) {
                    return Err(cannot(Reason::PropHolds));
                }
                (force_n, timing::SETTLE)
            }
            PedalHold::Prop { force_n } => {
                self.need(Tool::Prop, |k| matches!(k, InstrumentKind::PedalProp))?;
                in_range(Quantity::PedalForce, force_n, 1.0, 500.0)?;
                (force_n, timing::PROP)
            }
        };
        self.hands_free()?;
        let at = self.reach(&[(Station::Cab, None)])?;
        self.walk(doing, at).await;
        if matches!(hold, PedalHold::Prop { .. }) {
            // Setting the prop is work: its time comes first.
            self.pass(doing, time).await;
        }
        self.state.pedal = hold;
        if let Some(event) = &mut self.state.engine_event {
            event.travel_mm = None;
        }
        self.circuit.inputs_mut().pedal_n = force;
        self.state.touch();
        self.pass(doing, timing::SETTLE).await;
        Ok(())
    }

    pub(super) async fn do_pump_pedal(
        &mut self,
        doing: &mut Doing<'_>,
        times: u32,
        force_n: f64,
    ) -> Result<(), Refusal> {
        in_range(Quantity::Applications, f64::from(times), 1.0, 30.0)?;
        in_range(Quantity::PedalForce, force_n, 1.0, 700.0)?;
        if matches!(self.state.pedal, PedalHold::Prop { .. }) {
            return Err(cannot(Reason::PropHolds));
        }
        self.hands_free()?;
        let at = self.reach(&[(Station::Cab, None)])?;
        self.walk(doing, at).await;
        self.state.pedal = PedalHold::Released;
        if let Some(event) = &mut self.state.engine_event {
            event.travel_mm = None;
        }
        let inputs = self.circuit.inputs();
        let standing = inputs.engine == EngineState::Stopped && !inputs.key_on;
        if self.state.applications.is_none() {
            self.state.applications_standing = true;
        }
        self.state.applications_standing &= standing;
        let mut count = self.state.applications.unwrap_or(0.0);
        for _ in 0..times {
            self.circuit.inputs_mut().pedal_n = force_n;
            self.pass(doing, timing::PEDAL_DOWN).await;
            count += clear_assist(self.assist_share(force_n));
            self.circuit.inputs_mut().pedal_n = 0.0;
            self.pass(doing, timing::PEDAL_UP).await;
        }
        self.state.applications = Some(count);
        self.state.touch();
        Ok(())
    }

    /// Share of assist at this pedal force now; see [`assist_share`].
    pub(super) fn assist_share(&self, force_n: f64) -> f64 {
        assist_share(&self.circuit, force_n)
    }

    pub(super) async fn do_base_brakes(&mut self, doing: &mut Doing<'_>) -> Result<(), Refusal> {
        let at = self.reach(&[(Station::Bay, None), (Station::Front, None)])?;
        self.hands_free()?;
        self.walk(doing, at).await;
        self.pass(doing, timing::s(300)).await;
        Ok(())
    }

    /// A slow drive in the yard with four applications of 120 N; the least assist of them counts.
    pub(super) async fn do_yard_drive(&mut self, doing: &mut Doing<'_>) -> Result<(), Refusal> {
        if self.state.chocked {
            return Err(cannot(Reason::DriveChocks));
        }
        if self.state.extracted {
            return Err(cannot(Reason::DriveExtraction));
        }
        if matches!(self.state.pedal, PedalHold::Prop { .. }) {
            return Err(cannot(Reason::DriveProp));
        }
        self.hands_free()?;
        let at = self.reach(&[(Station::Cab, None)])?;
        if doing.live() && self.engine_volts() < CRANKS_ABOVE_V {
            return Err(cannot(Reason::StarterClicks));
        }
        self.walk(doing, at).await;
        self.drive_hazards(doing);
        self.mark_switch();
        self.state.pedal = PedalHold::Released;
        self.state.applications = None;
        self.circuit.inputs_mut().pedal_n = 0.0;
        self.circuit.inputs_mut().key_on = true;
        if self.circuit.inputs().engine == EngineState::Stopped {
            self.engine_event(true);
        }
        self.circuit.inputs_mut().engine = EngineState::WarmIdle;
        self.pass(doing, timing::s(15)).await;
        let mut least = f64::INFINITY;
        for _ in 0..4 {
            self.circuit.inputs_mut().engine = EngineState::Cruise;
            self.pass(doing, timing::s(10)).await;
            self.circuit.inputs_mut().engine = EngineState::WarmIdle;
            self.circuit.inputs_mut().pedal_n = YARD_FORCE_N;
            self.pass(doing, timing::s(2)).await;
            least = least.min(self.assist_share(YARD_FORCE_N));
            self.circuit.inputs_mut().pedal_n = 0.0;
            self.pass(doing, timing::s(3)).await;
        }
        self.engine_event(false);
        self.circuit.inputs_mut().engine = EngineState::Stopped;
        self.circuit.inputs_mut().key_on = false;
        self.mark_switch();
        self.state.touch();
        self.pass(doing, timing::s(30)).await;
        self.state.yard_share = Some(least);
        doing.say(Notice::BackInWorkshop);
        Ok(())
    }

    /// Assist now, a minute after an engine start, and in the second application after stopping it:
    /// the lesser share. Asked of a copy; the car itself is not touched.
    pub(super) fn assist_on_the_road(&self) -> f64 {
        let mut car = self.circuit.clone();
        let mut run = |inputs: (bool, EngineState, f64), s: u64| {
            let i = car.inputs_mut();
            (i.key_on, i.engine, i.pedal_n) = inputs;
            let to = car.tick().plus(timing::s(s));
            car.run_to(to, Pace::Timed);
            assist_share(&car, YARD_FORCE_N)
        };
        run((true, EngineState::WarmIdle, 0.0), 60);
        let first = run((true, EngineState::WarmIdle, YARD_FORCE_N), 2);
        run((true, EngineState::WarmIdle, 0.0), 5);
        run((false, EngineState::Stopped, 0.0), 5);
        run((false, EngineState::Stopped, YARD_FORCE_N), 2);
        run((false, EngineState::Stopped, 0.0), 2);
        let second = run((false, EngineState::Stopped, YARD_FORCE_N), 2);
        first.min(second)
    }
}

/// Pedal force of the brake test in the yard, N.
const YARD_FORCE_N: f64 = 120.0;

/// How far an application with this share of assist counts as clearly assisted, 0 to 1: a quarter of full
/// assist is felt by every other foot (common practice, no source). A sound full store then gives two to
/// three, whatever the force between 80 and 300 N.
fn clear_assist(share: f64) -> f64 {
    ((share - 0.15) / 0.2).clamp(0.0, 1.0)
}

/// Share of the assist that a booster with 60 % of the day's pressure as vacuum would give at this
/// pedal force, told from how far the pedal has gone: 0 = as without any vacuum, 1 = full.
///
/// Both ends follow from the booster's own numbers: without vacuum F_in = spring + brakes; with it
/// the reaction disc balances, brakes = jump-in + SR (F_in − preload), up to the run-out point.
fn assist_share(circuit: &Circuit, force_n: f64) -> f64 {
    let assembly = circuit.assembly();
    let Some(b) = assembly.parts.iter().find_map(|p| p.kind.booster()) else { return 0.0 };
    let law = b.law();
    let f_in = force_n * b.pedal_ratio;
    let run_out = f_in + b.area_m2() * 0.6 * circuit.ambient().pa();
    let helped = (b.jump_in_n + b.servo_ratio * (f_in - b.valve_preload_n)).max(0.0);
    // Travel at which spring and brakes balance `force`; both rise with travel.
    let travel = |balance: &dyn Fn(f64) -> f64| {
        let (mut low, mut high) = (0.0, 0.1);
        for _ in 0..50 {
            let mid = 0.5 * (low + high);
            if balance(mid) < 0.0 {
                low = mid;
            } else {
                high = mid;
            }
        }
        0.5 * (low + high)
    };
    let bare = travel(&|x| law.brake_force(x).0 + law.spring_force(x).0 - f_in);
    let full = travel(&|x| {
        (law.brake_force(x).0 - helped).max(law.brake_force(x).0 + law.spring_force(x).0 - run_out)
    });
    let x = circuit.pedal_travel_mm() * 1e-3 / b.pedal_ratio;
    /// Travel below which bare and full cannot be told apart, m at the rod.
    const TOLD_APART_M: f64 = 0.3e-3;
    if full - bare < TOLD_APART_M { 0.0 } else { ((x - bare) / (full - bare)).clamp(0.0, 1.2) }
}
