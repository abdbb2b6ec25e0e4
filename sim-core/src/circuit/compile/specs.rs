//! What every part of an assembly says of itself, asked once.

use super::unsound::Unsound;
use crate::assembly::{Assembly, PortRef};
use crate::parts::elements::{Mouth, Quantity, Spec, State};

/// An assembly with the specifications of its parts.
pub(super) struct Specs<'a> {
    pub(super) assembly: &'a Assembly,
    /// Pressure of the day, Pa.
    pub(super) p_atm: f64,
    /// Per part.
    pub(super) parts: Vec<Spec>,
    /// Per part, whether it takes part: an instrument on the board does not.
    active: Vec<bool>,
}

impl<'a> Specs<'a> {
    /// Asks every part, on a day of pressure `p_atm`, Pa.
    pub(super) fn of(assembly: &'a Assembly, p_atm: f64) -> Self {
        let parts: Vec<Spec> = assembly
            .parts
            .iter()
            .map(|part| {
                let mut spec = part.kind.spec(p_atm);
                assembly.coefficients.scale(&mut spec);
                spec
            })
            .collect();
        let joined =
            |part: u16| assembly.joints.iter().any(|j| j.made && (j.a.part == part || j.b.part == part));
        let active = parts.iter().enumerate().map(|(i, s)| !s.hangs || joined(i as u16)).collect();
        Self { assembly, p_atm, parts, active }
    }

    /// With none that takes part.
    pub(super) fn idle(assembly: &'a Assembly, p_atm: f64) -> Self {
        Self { active: vec![false; assembly.parts.len()], ..Self::of(assembly, p_atm) }
    }

    pub(super) fn is_active(&self, part: u16) -> bool {
        self.active[usize::from(part)]
    }

    /// Those that take part, with their numbers.
    pub(super) fn active(&self) -> impl Iterator<Item = (u16, &Spec)> {
        self.parts.iter().enumerate().map(|(i, s)| (i as u16, s)).filter(|(i, _)| self.is_active(*i))
    }

    /// What a pneumatic port says of itself.
    pub(super) fn mouth(&self, port: PortRef) -> Result<&Mouth, Unsound> {
        let mouths = &self.parts[usize::from(port.part)].air.mouths;
        mouths.iter().find(|m| m.port == port.port).ok_or(Unsound::NoMouth(port))
    }

    /// What a part says of one of its states.
    pub(super) fn state(&self, part: u16, is: Quantity) -> Option<&State> {
        self.parts[usize::from(part)].states.iter().find(|s| s.is == is)
    }
}
