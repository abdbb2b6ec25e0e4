//! Repair units: pull, push, swap, clean, re-form, and which of them are outside limits in truth.

use super::access::cannot;
use super::state::Doing;
use super::{Workshop, graph, timing};
use crate::notice::{Reason, Refusal, Word};
use crate::parts::engine::EngineState;
use crate::parts::{Domain, PartKind};

/// Share of a moved bend that is left after re-forming (a makeshift).
const REFORM_LEAVES: f64 = 0.1;

impl Workshop {
    pub(super) async fn do_plug_in(
        &mut self,
        doing: &mut Doing<'_>,
        name: &str,
        pull: bool,
    ) -> Result<(), Refusal> {
        let unit = self.find_unit(name)?;
        if !self.setup.car.units[unit].plug_in {
            return Err(cannot(Reason::NoPlugIn { unit: name.into() }));
        }
        if self.state.pulled[unit].is_some() == pull {
            return Err(cannot(Reason::UnitAlready {
                unit: name.into(),
                state: if pull { Word::PulledOut } else { Word::InPlace },
            }));
        }
        self.unit_is_bare(unit)?;
        self.hands_free()?;
        let at = self.reach(&self.places_of_unit(unit))?;
        self.walk(doing, at).await;
        self.pass(doing, timing::PLUG_IN_UNIT).await;
        self.mark_switch();
        if pull {
            let parts = &self.setup.car.units[unit].parts;
            let joints: Vec<u16> = self.circuit.assembly().joints[..self.n_car_joints()]
                .iter()
                .enumerate()
                .filter(|(_, j)| j.made && (parts.contains(&j.a.part) || parts.contains(&j.b.part)))
                .map(|(i, _)| i as u16)
                .collect();
            self.circuit.change(|a| joints.iter().for_each(|j| a.joints[usize::from(*j)].made = false));
            self.state.pulled[unit] = Some(joints);
        } else {
            let joints = self.state.pulled[unit].take().unwrap_or_default();
            self.circuit.change(|a| joints.iter().for_each(|j| a.joints[usize::from(*j)].made = true));
        }
        self.state.change();
        self.pass(doing, timing::SETTLE).await;
        Ok(())
    }

    /// Refused while an instrument, plug or clamp sits on the unit's own ports.
    fn unit_is_bare(&self, unit: usize) -> Result<(), Refusal> {
        let parts = &self.setup.car.units[unit].parts;
        if let Some(card) = self.fitted_at(|p| parts.contains(&p.part)) {
            return Err(cannot(Reason::ToolOnUnit { tool: self.tool(card) }));
        }
        let stop = self.circuit.assembly().stops.iter().find(|(p, _)| parts.contains(&p.part));
        if let Some((port, _)) = stop {
            let port = self.circuit.assembly().port_name(*port);
            return Err(cannot(Reason::StopOnUnit { at: port.into() }));
        }
        Ok(())
    }

    fn places_of_unit(&self, unit: usize) -> Vec<crate::reach::Place> {
        let parts = &self.setup.car.units[unit].parts;
        parts.iter().flat_map(|p| self.places_of_part(*p)).collect()
    }

    /// What every repair asks for; walks there.
    async fn begin_repair(&mut self, doing: &mut Doing<'_>, unit: usize) -> Result<(), Refusal> {
        if self.circuit.inputs().engine != EngineState::Stopped {
            return Err(cannot(Reason::RepairEngine));
        }
        self.unit_is_bare(unit)?;
        self.hands_free()?;
        let at = self.reach(&self.places_of_unit(unit))?;
        self.walk(doing, at).await;
        let parts = self.setup.car.units[unit].parts.clone();
        self.hands_at_pump(doing, &parts);
        Ok(())
    }

    fn end_repair(&mut self) {
        self.state.repaired = true;
        self.state.repaired_first |= self.state.findings.is_empty();
        self.state.change();
    }

    pub(super) async fn do_swap(
        &mut self,
        doing: &mut Doing<'_>,
        name: &str,
        spare: &str,
    ) -> Result<(), Refusal> {
        let unit = self.find_unit(name)?;
        let spare = self.find_spare(spare)?;
        if usize::from(self.setup.spares[spare].unit) != unit {
            let fits = usize::from(self.setup.spares[spare].unit);
            let fits = self.setup.car.units.get(fits).map_or("", |u| u.id.as_str());
            return Err(cannot(Reason::WrongSpare { unit: name.into(), other: fits.into() }));
        }
        if self.state.spares_used[spare] {
            return Err(cannot(Reason::SpareUsed));
        }
        self.begin_repair(doing, unit).await?;
        self.pass(doing, timing::minutes(self.setup.car.units[unit].swap_min)).await;
        let parts = self.setup.car.units[unit].parts.clone();
        let assembly = self.circuit.assembly();
        let ends: Vec<_> = assembly
            .ports()
            .filter(|p| parts.contains(&p.part) && !graph::joined(assembly, *p).is_empty())
            .collect();
        let air: Vec<_> = ends.iter().copied().filter(|p| assembly.domain(*p) == Domain::Pneumatic).collect();
        self.opens_store(doing, &air);
        self.mark_switch();
        self.stand_open(doing, |p| parts.contains(&p.part)).await;
        let car = std::sync::Arc::clone(&self.setup.car);
        let spares = std::sync::Arc::clone(&self.setup.spares);
        self.circuit.change(|a| {
            for part in &parts {
                let part = usize::from(*part);
                a.parts[part].kind = car.assembly.parts[part].kind;
            }
            for (param, value) in &spares[spare].params {
                a.set_param(param, *value);
            }
        });
        for part in &parts {
            self.circuit.renew_part(*part);
        }
        self.state.spares_used[spare] = true;
        self.end_repair();
        Ok(())
    }

    pub(super) async fn do_clean(&mut self, doing: &mut Doing<'_>, name: &str) -> Result<(), Refusal> {
        let unit = self.find_unit(name)?;
        if self.setup.car.units[unit].cleans.is_empty() {
            return Err(cannot(Reason::NoCleaning { unit: name.into() }));
        }
        self.begin_repair(doing, unit).await?;
        self.pass(doing, timing::CLEAN).await;
        let car = std::sync::Arc::clone(&self.setup.car);
        self.circuit.change(|a| {
            for param in &car.units[unit].cleans {
                if let Some(new) = car.assembly.param(param) {
                    a.set_param(param, new);
                }
            }
        });
        self.end_repair();
        Ok(())
    }

    pub(super) async fn do_reform(&mut self, doing: &mut Doing<'_>, name: &str) -> Result<(), Refusal> {
        let unit = self.find_unit(name)?;
        if !self.setup.car.units[unit].reforms {
            return Err(cannot(Reason::NoReform { unit: name.into() }));
        }
        self.begin_repair(doing, unit).await?;
        self.pass(doing, timing::REFORM).await;
        let parts = self.setup.car.units[unit].parts.clone();
        self.circuit.change(|a| {
            for part in parts {
                if let PartKind::Hose(hose) = &mut a.parts[usize::from(part)].kind {
                    hose.bend_moved_deg *= REFORM_LEAVES;
                }
            }
        });
        self.end_repair();
        Ok(())
    }

    /// See [`super::Opened::units_outside_limits`].
    pub(super) fn units_outside_limits(&self) -> Vec<u16> {
        let car = &self.setup.car;
        let assembly = self.circuit.assembly();
        let mut out = vec![false; car.units.len()];
        for t in &car.tolerances {
            let Some(value) = assembly.param(&t.param) else { continue };
            if (t.limit.0..=t.limit.1).contains(&value) {
                continue;
            }
            let part = t.param.split('.').next().and_then(|p| assembly.part_index(p));
            for (i, unit) in car.units.iter().enumerate() {
                out[i] |= part.is_some_and(|p| unit.parts.contains(&p));
            }
        }
        for fault in &car.faults {
            let Some(value) = assembly.param(&fault.param) else { continue };
            if breaches(value, fault.severity_min, fault.severity_max)
                && let Some(unit) = out.get_mut(usize::from(fault.unit))
            {
                *unit = true;
            }
        }
        out.iter().enumerate().filter(|(_, o)| **o).map(|(i, _)| i as u16).collect()
    }
}

/// Whether a number is at or beyond a fault's lowest severity, in the fault's direction.
fn breaches(value: f64, severity_min: f64, severity_max: f64) -> bool {
    if severity_min <= severity_max { severity_min <= value } else { value <= severity_min }
}

#[cfg(test)]
mod tests {
    use super::breaches;

    #[test]
    fn a_fault_has_a_direction() {
        assert!(breaches(0.5, 0.3, 2.0));
        assert!(!breaches(0.2, 0.3, 2.0));
        assert!(breaches(-12.0, -8.0, -20.0));
        assert!(!breaches(0.0, -8.0, -20.0));
    }
}
