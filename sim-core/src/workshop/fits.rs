//! What goes where, as far as anybody can see: the kind of end, stops, joints, rubber; never what is hidden.
//!
//! The workshop refuses by it, and who offers places asks here.

use super::{Workshop, graph};
use crate::assembly::{PortRef, Stop};
use crate::instrument::Held;
use crate::parts::Domain;

/// Why something does not go there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum NoFit {
    /// It is held to something else.
    NoEnd,
    /// It carries air.
    Air,
    /// It carries current.
    Current,
    /// It is joined: a plug goes into an open end.
    Joined,
    /// There is a plug or a clamp.
    Stopped,
    /// There is a plug in it.
    Plugged,
    /// It is no hose that could be clamped.
    NoHoseToClamp,
    /// It is no rubber: a clamp would crack it.
    Hard,
    /// It is no hose.
    NoHose,
    /// There is no air in it.
    NoAir,
}

impl Workshop {
    /// Whether an end that is held so goes on a port now.
    ///
    /// # Errors
    /// Why not.
    ///
    /// # Panics
    /// For a port that neither car nor kit has.
    pub fn fits_port(&self, held: Held, port: PortRef) -> Result<(), NoFit> {
        let assembly = self.circuit.assembly();
        let wanted = held.port().ok_or(NoFit::NoEnd)?;
        match (wanted, assembly.domain(port)) {
            (Domain::Pneumatic, Domain::Electrical) => return Err(NoFit::Current),
            (Domain::Electrical, Domain::Pneumatic) => return Err(NoFit::Air),
            (Domain::Pneumatic, Domain::Pneumatic) | (Domain::Electrical, Domain::Electrical) => {}
        }
        let stop = assembly.stop(port);
        match held {
            Held::InOpening | Held::OverHose if stop.is_some() => Err(NoFit::Stopped),
            Held::InOpening if !graph::joined(assembly, port).is_empty() => Err(NoFit::Joined),
            Held::OverHose if assembly.parts[usize::from(port.part)].kind.hose().is_none() => {
                Err(NoFit::NoHoseToClamp)
            }
            Held::OverHose if !self.is_rubber(port.part) => Err(NoFit::Hard),
            Held::OnLine if stop == Some(Stop::Plug) => Err(NoFit::Plugged),
            Held::InOpening
            | Held::OverHose
            | Held::OnLine
            | Held::OnWires
            | Held::AroundWire
            | Held::Nowhere
            | Held::AtPart
            | Held::OnHose
            | Held::AtEar
            | Held::OnPedal => Ok(()),
        }
    }

    /// Whether something that is held so goes to a part of the car (index into its assembly's).
    ///
    /// # Errors
    /// Why not.
    pub fn fits_part(&self, held: Held, part: u16) -> Result<(), NoFit> {
        let part = self.setup.car.assembly.parts.get(usize::from(part)).ok_or(NoFit::NoEnd)?;
        if held.part(&part.kind) {
            return Ok(());
        }
        Err(match held {
            Held::OnHose => NoFit::NoHose,
            Held::AtEar => NoFit::NoAir,
            Held::Nowhere
            | Held::OnLine
            | Held::OnWires
            | Held::AroundWire
            | Held::AtPart
            | Held::InOpening
            | Held::OverHose
            | Held::OnPedal => NoFit::NoEnd,
        })
    }

    fn is_rubber(&self, part: u16) -> bool {
        self.setup.car.stands.get(usize::from(part)).is_some_and(|stands| stands.rubber)
    }
}
