//! Instruments in the hand: connect, take off, set, press, stroke.
//!
//! A gauge on an open port seals it; into a made joint it is put with a tee-piece, for which the joint
//! stands open for some seconds and the air gets in. Electrical ends are probes and clips and touch
//! nothing else.

use super::access::{cannot, in_range};
use super::state::Doing;
use super::{NoFit, Workshop, graph, timing};
use crate::assembly::{Joint, PortRef};
use crate::instrument::{Held, Worked};
use crate::notice::{Quantity, Reason, Refusal};
use crate::parts::Domain;
use crate::parts::instruments::MeterMode;

/// What an end of an instrument can be held to.
enum Target {
    /// Joined to this port.
    Port(PortRef),
    /// Held around the wire at this port.
    Around(PortRef),
    /// Held to this part.
    Part(u16),
}

impl Workshop {
    /// Ends of an instrument (index into the kit) by name; empty when it is used where it lies.
    #[must_use]
    pub fn ends_of(&self, card: usize) -> Vec<&'static str> {
        self.setup.kit[card].kind.nature().ends.to_vec()
    }

    fn target(&self, card: usize, end: &str, at: &str) -> Result<Target, Refusal> {
        let held = self.setup.kit[card].kind.nature().held;
        if held.to_parts() {
            let part = self.find_part(at)?;
            self.fits_part(held, part).map_err(|_| cannot(Reason::NoHoseAngle { at: at.into() }))?;
            return Ok(Target::Part(part));
        }
        let port = self.find_port(at)?;
        if self.card_part(card) == Some(port.part) {
            return Err(cannot(Reason::ToItself));
        }
        let around = held == Held::AroundWire;
        self.fits_port(held, port).map_err(|why| {
            cannot(match why {
                NoFit::Plugged => Reason::PlugInIt { at: at.into() },
                NoFit::NoEnd
                | NoFit::Air
                | NoFit::Current
                | NoFit::Joined
                | NoFit::Stopped
                | NoFit::NoHoseToClamp
                | NoFit::Hard
                | NoFit::NoHose
                | NoFit::NoAir => {
                    if around {
                        Reason::NoCurrent { at: at.into() }
                    } else {
                        Reason::WrongKind { end: end.into(), at: at.into() }
                    }
                }
            })
        })?;
        Ok(if around { Target::Around(port) } else { Target::Port(port) })
    }

    pub(super) async fn do_fit(
        &mut self,
        doing: &mut Doing<'_>,
        name: &str,
        ends: &[(String, String)],
    ) -> Result<(), Refusal> {
        let card = self.find_card(name)?;
        let known = self.ends_of(card);
        if known.is_empty() {
            return Err(cannot(Reason::UsedInPlace { tool: self.tool(card) }));
        }
        if !self.state.fits[card].is_empty() {
            return Err(cannot(Reason::Connected { tool: self.tool(card) }));
        }
        let mut fits: Vec<(String, String)> = ends.to_vec();
        fits.sort();
        let mut given: Vec<&str> = fits.iter().map(|(end, _)| end.as_str()).collect();
        given.dedup();
        let mut wanted = known.clone();
        wanted.sort_unstable();
        if given != wanted || given.len() != fits.len() {
            return Err(cannot(Reason::Ends { tool: name.into(), known: known.join(", ") }));
        }
        let targets = fits
            .iter()
            .map(|(end, at)| self.target(card, end, at).map(|t| (end.clone(), t)))
            .collect::<Result<Vec<_>, _>>()?;
        self.hands_free()?;
        // Every end must be reachable before the first step is taken.
        let mut stations = Vec::new();
        for (_, target) in &targets {
            let places = match target {
                Target::Port(p) | Target::Around(p) => self.places_of_port(*p),
                Target::Part(p) => self.places_of_part(*p),
            };
            stations.push(self.reach(&places)?);
        }
        for (i, station) in stations.into_iter().enumerate() {
            self.walk(doing, station).await;
            if i == 0 {
                self.pass(doing, timing::minutes(self.setup.kit[card].fit_min)).await;
            }
        }
        let mut joints = Vec::new();
        let mut on_line = false;
        for (end, target) in &targets {
            let Target::Port(port) = *target else { continue };
            let assembly = self.circuit.assembly();
            if assembly.domain(port) == Domain::Pneumatic {
                on_line = true;
                self.hands_at_pump(doing, &[port.part]);
                if !graph::joined(assembly, port).is_empty() {
                    self.opens_store(doing, &[port]);
                    self.mark_switch();
                    self.stand_open(doing, |p| p == port).await;
                }
            }
            let own = self.card_part(card);
            if let Some(own) = own.and_then(|p| graph::port_of(self.circuit.assembly(), p, end)) {
                joints.push(Joint { id: format!("fit {name}.{end}"), a: own, b: port, made: true });
            }
        }
        if !joints.is_empty() {
            self.circuit.change(|a| a.joints.extend(joints));
        }
        self.state.fits[card] = fits;
        if on_line {
            self.state.change();
        } else {
            self.state.touch();
        }
        self.pass(doing, timing::SETTLE).await;
        Ok(())
    }

    pub(super) async fn do_unfit(&mut self, doing: &mut Doing<'_>, name: &str) -> Result<(), Refusal> {
        let card = self.find_card(name)?;
        if self.state.fits[card].is_empty() {
            return Err(cannot(Reason::NotConnected { tool: self.tool(card) }));
        }
        self.hands_free()?;
        let at = self.reach(&self.places_of_card(card))?;
        self.walk(doing, at).await;
        let on_line: Option<PortRef> = self.state.fits[card].iter().find_map(|(_, at)| {
            let port = self.circuit.assembly().port(at)?;
            let air = self.circuit.assembly().domain(port) == Domain::Pneumatic;
            (air && self.card_part(card).is_some()).then_some(port)
        });
        self.pass(doing, timing::minutes(0.5 * self.setup.kit[card].fit_min)).await;
        if let Some(port) = on_line {
            self.hands_at_pump(doing, &[port.part]);
            self.opens_store(doing, &[port]);
        }
        let mark = format!("fit {name}.");
        self.circuit.change(|a| a.joints.retain(|j| !j.id.starts_with(&mark)));
        if let Some(port) = on_line {
            self.mark_switch();
            self.stand_open(doing, |p| p == port).await;
            self.state.change();
        } else {
            self.state.touch();
        }
        self.state.fits[card].clear();
        Ok(())
    }

    /// Places from which an instrument can be handled and read: at any of its ends.
    pub(super) fn places_of_card(&self, card: usize) -> Vec<crate::reach::Place> {
        let assembly = self.circuit.assembly();
        let mut places = Vec::new();
        for (_, at) in &self.state.fits[card] {
            if let Some(port) = assembly.port(at) {
                places.extend(self.places_of_port(port));
            } else if let Some(part) = assembly.part_index(at) {
                places.extend(self.places_of_part(part));
            }
        }
        // Once connected it can be read with the cover back on: leads and hoses come out beside it.
        for place in &mut places {
            place.1 = None;
        }
        if places.is_empty() {
            places.push((self.state.station, None));
        }
        places
    }

    pub(super) async fn do_set_meter(
        &mut self,
        doing: &mut Doing<'_>,
        name: &str,
        mode: MeterMode,
    ) -> Result<(), Refusal> {
        let card = self.find_card(name)?;
        let Some(part) =
            self.card_part(card).filter(|_| self.setup.kit[card].kind.nature().worked == Worked::Set)
        else {
            return Err(cannot(Reason::NoDial { tool: self.tool(card) }));
        };
        self.hands_free()?;
        let at = self.reach(&self.places_of_card(card))?;
        self.walk(doing, at).await;
        self.circuit.inputs_mut().hands[usize::from(part)].mode = mode;
        self.state.touch();
        self.pass(doing, timing::SWITCH_INSTRUMENT).await;
        Ok(())
    }

    pub(super) async fn do_press(
        &mut self,
        doing: &mut Doing<'_>,
        name: &str,
        down: bool,
    ) -> Result<(), Refusal> {
        let card = self.find_card(name)?;
        // A push-button lead has a button; a hand pump has a lever that lets air in slowly.
        let Some(part) =
            self.card_part(card).filter(|_| self.setup.kit[card].kind.nature().worked.is_pressed())
        else {
            return Err(cannot(Reason::NoButton { tool: self.tool(card) }));
        };
        if self.circuit.inputs().hands[usize::from(part)].pressed == down {
            return Err(cannot(if down { Reason::HeldDown } else { Reason::NotPressed }));
        }
        let at = self.reach(&self.places_of_card(card))?;
        if down {
            self.hands_free()?;
        }
        self.walk(doing, at).await;
        self.mark_switch();
        self.circuit.inputs_mut().hands[usize::from(part)].pressed = down;
        self.state.touch();
        self.pass(doing, timing::SWITCH_INSTRUMENT).await;
        Ok(())
    }

    pub(super) async fn do_stroke(
        &mut self,
        doing: &mut Doing<'_>,
        name: &str,
        times: u32,
    ) -> Result<(), Refusal> {
        let card = self.find_card(name)?;
        in_range(Quantity::Strokes, f64::from(times), 1.0, 200.0)?;
        let Some(part) =
            self.card_part(card).filter(|_| self.setup.kit[card].kind.nature().worked == Worked::Stroked)
        else {
            return Err(cannot(Reason::NoStrokes { tool: self.tool(card) }));
        };
        if self.state.fits[card].is_empty() {
            return Err(cannot(Reason::FitFirst { tool: self.tool(card) }));
        }
        self.hands_free()?;
        let at = self.reach(&self.places_of_card(card))?;
        self.walk(doing, at).await;
        self.circuit.inputs_mut().hands[usize::from(part)].strokes_per_s = 1.0;
        self.pass(doing, timing::STROKE * u64::from(times)).await;
        self.circuit.inputs_mut().hands[usize::from(part)].strokes_per_s = 0.0;
        self.state.touch();
        Ok(())
    }
}
