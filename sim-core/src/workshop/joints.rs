//! Work at joints and ports: open, make, plug, clamp; and what stands open while a piece is put in.

use super::access::cannot;
use super::state::Doing;
use super::{Refusal, Workshop, graph, timing};
use crate::assembly::{PortRef, Stop};
use crate::instrument::InstrumentKind;
use crate::parts::Domain;

impl Workshop {
    pub(super) async fn do_joint(
        &mut self,
        doing: &mut Doing<'_>,
        name: &str,
        make: bool,
    ) -> Result<(), Refusal> {
        let joint = self.find_joint(name)?;
        let j = self.circuit.assembly().joints[joint].clone();
        if j.made == make {
            return Err(cannot(format!(
                "the joint {name} is {} already",
                if make { "made" } else { "open" }
            )));
        }
        if self.is_pulled_joint(joint) {
            return Err(cannot(format!(
                "the joint {name} belongs to a unit that is pulled out: push it back"
            )));
        }
        if make {
            for port in [j.a, j.b] {
                if self.circuit.assembly().stop(port) == Some(Stop::Plug) {
                    let port = self.circuit.assembly().port_name(port);
                    return Err(cannot(format!("there is a plug in {port}: take it out first")));
                }
            }
            if self.circuit.assembly().domain(j.a) == Domain::Pneumatic
                && let Some(card) = self.fitted_at(|p| p == j.a || p == j.b)
            {
                return Err(cannot(format!(
                    "the {} sits on the open end: take it off, make the joint, then fit it into the joint",
                    self.setup.kit[card].name
                )));
            }
        }
        self.hands_free()?;
        let at = self.reach(&self.places_of_joint(joint))?;
        self.walk(doing, at).await;
        self.hands_at_pump(doing, &[j.a.part, j.b.part]);
        let pneumatic = self.circuit.assembly().domain(j.a) == Domain::Pneumatic;
        if pneumatic {
            if !make {
                self.opens_store(doing, &[j.a, j.b]);
            }
            self.pass(doing, timing::HOSE_JOINT).await;
        } else {
            self.battery_order(doing, j.a, j.b, !make);
            self.pass(doing, timing::WIRE_JOINT).await;
        }
        self.mark_switch();
        self.circuit.change(|a| a.joints[joint].made = make);
        self.state.change();
        self.pass(doing, timing::SETTLE).await;
        Ok(())
    }

    pub(super) async fn do_stop(
        &mut self,
        doing: &mut Doing<'_>,
        name: &str,
        stop: Option<Stop>,
    ) -> Result<(), Refusal> {
        let port = self.find_port(name)?;
        let assembly = self.circuit.assembly();
        if self.n_car_parts() <= usize::from(port.part) {
            return Err(cannot(format!("{name} belongs to an instrument; plugs and clamps go on the car")));
        }
        if assembly.domain(port) != Domain::Pneumatic {
            return Err(cannot(format!("{name} is electrical; plugs and clamps are for vacuum lines")));
        }
        match (assembly.stop(port), stop) {
            (Some(_), Some(_)) => {
                return Err(cannot(format!("there is a plug or clamp at {name} already")));
            }
            (None, None) => return Err(cannot(format!("there is neither plug nor clamp at {name}"))),
            (None, Some(Stop::Plug)) => {
                self.need("rubber plug", |k| matches!(k, InstrumentKind::Plugs))?;
                if !graph::joined(assembly, port).is_empty() {
                    return Err(cannot(format!(
                        "{name} is joined: a plug goes on an open port, so open the joint first"
                    )));
                }
            }
            (None, Some(Stop::Clamp)) => {
                self.need("hose clamp", |k| matches!(k, InstrumentKind::Clamps))?;
                if assembly.parts[usize::from(port.part)].kind.hose().is_none() {
                    return Err(cannot(format!(
                        "{name} is no hose: name the end of the rubber hose beside it"
                    )));
                }
                if !self.setup.car.stands[usize::from(port.part)].rubber {
                    return Err(cannot("this is hard pipe: a clamp cracks it; clamp rubber hose only"));
                }
            }
            (Some(_), None) => {}
        }
        self.hands_free()?;
        let at = self.reach(&self.places_of_port(port))?;
        self.walk(doing, at).await;
        self.hands_at_pump(doing, &[port.part]);
        self.pass(doing, timing::STOP).await;
        self.circuit.change(|a| a.set_stop(port, stop));
        self.state.change();
        Ok(())
    }

    /// Lets the made joints that `is` picks stand open for a while and makes them again: a piece is put
    /// in between, or a unit is changed, and the air gets in meanwhile.
    pub(super) async fn stand_open(&mut self, doing: &Doing<'_>, is: impl Fn(PortRef) -> bool) {
        let joints: Vec<usize> = self.circuit.assembly().joints[..self.n_car_joints()]
            .iter()
            .enumerate()
            .filter(|(_, j)| j.made && (is(j.a) || is(j.b)))
            .map(|(i, _)| i)
            .collect();
        if joints.is_empty() {
            return;
        }
        self.circuit.change(|a| joints.iter().for_each(|j| a.joints[*j].made = false));
        self.pass(doing, timing::STANDS_OPEN).await;
        self.circuit.change(|a| joints.iter().for_each(|j| a.joints[*j].made = true));
    }
}
