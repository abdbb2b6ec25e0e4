//! Work at joints and ports: open, make, plug, clamp; and what stands open while a piece is put in.

use super::access::cannot;
use super::state::Doing;
use super::{NoFit, Workshop, timing};
use crate::assembly::{PortRef, Stop};
use crate::instrument::Held;
use crate::notice::{Reason, Refusal, Tool, Word};
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
            return Err(cannot(Reason::JointAlready {
                joint: name.into(),
                state: if make { Word::Made } else { Word::Open },
            }));
        }
        if self.is_pulled_joint(joint) {
            return Err(cannot(Reason::JointPulled { joint: name.into() }));
        }
        if make {
            for port in [j.a, j.b] {
                if self.circuit.assembly().stop(port) == Some(Stop::Plug) {
                    let port = self.circuit.assembly().port_name(port);
                    return Err(cannot(Reason::PlugInIt { at: port.into() }));
                }
            }
            if self.circuit.assembly().domain(j.a) == Domain::Pneumatic
                && let Some(card) = self.fitted_at(|p| p == j.a || p == j.b)
            {
                return Err(cannot(Reason::ToolOnEnd { tool: self.tool(card) }));
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

    /// Refuses a stop that does not go there, or for which there is no tool.
    fn stop_fits(&self, name: &str, port: PortRef, stop: Stop) -> Result<(), Refusal> {
        let (held, tool) = match stop {
            Stop::Plug => (Held::InOpening, Tool::Plug),
            Stop::Clamp => (Held::OverHose, Tool::Clamp),
        };
        let fit = self.fits_port(held, port);
        if fit != Err(NoFit::Stopped) {
            self.need(tool, |kind| kind.nature().held == held)?;
        }
        let at = || name.into();
        fit.map_err(|why| {
            cannot(match why {
                NoFit::Stopped => Reason::StopAlready { at: at() },
                NoFit::Joined => Reason::PlugJoined { at: at() },
                NoFit::NoHoseToClamp => Reason::ClampNoHose { at: at() },
                NoFit::Hard => Reason::ClampHard,
                NoFit::NoEnd
                | NoFit::Air
                | NoFit::Current
                | NoFit::Plugged
                | NoFit::NoHose
                | NoFit::NoAir => Reason::StopElectrical { at: at() },
            })
        })
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
            return Err(cannot(Reason::StopOnTool { at: name.into() }));
        }
        if assembly.domain(port) != Domain::Pneumatic {
            return Err(cannot(Reason::StopElectrical { at: name.into() }));
        }
        match stop {
            None if assembly.stop(port).is_none() => return Err(cannot(Reason::NoStop { at: name.into() })),
            None => {}
            Some(stop) => self.stop_fits(name, port, stop)?,
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
