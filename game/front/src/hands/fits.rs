//! Which ends what is in the hand goes on, and why not: for the list that offers places. A menu offers more, for
//! the workshop says why it refuses; a list of a hundred names had better hold those that will do.

use sim_core::instrument::Held;
use sim_core::workshop::NoFit;

use super::{Carry, Thing};
use crate::shop::Shop;

/// Why what is in the hand does not go there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Misfit {
    /// The workshop says so.
    NoFit(NoFit),
    /// The other end of the instrument is there.
    Taken,
    /// The prop goes to the pedal.
    Prop,
}

impl Misfit {
    /// Key of its words, with how many there are as `$n`.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::NoFit(NoFit::NoEnd) => "misfit-no-end",
            Self::NoFit(NoFit::Air) => "misfit-air",
            Self::NoFit(NoFit::Current) => "misfit-current",
            Self::NoFit(NoFit::Joined) => "misfit-joined",
            Self::NoFit(NoFit::Stopped) => "misfit-stopped",
            Self::NoFit(NoFit::Plugged) => "misfit-plugged",
            Self::NoFit(NoFit::NoHoseToClamp | NoFit::Hard) => "misfit-hard",
            Self::NoFit(NoFit::NoHose) => "misfit-no-hose",
            Self::NoFit(NoFit::NoAir) => "misfit-no-air",
            Self::Taken => "misfit-taken",
            Self::Prop => "misfit-prop",
        }
    }
}

impl From<NoFit> for Misfit {
    fn from(why: NoFit) -> Self {
        Self::NoFit(why)
    }
}

/// Whether the end in the hand goes to `thing`, as far as anybody can see.
///
/// # Errors
/// Why not.
pub fn fits(shop: &Shop, carry: &Carry, thing: Thing) -> Result<(), Misfit> {
    const NO_END: Misfit = Misfit::NoFit(NoFit::NoEnd);
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return Err(NO_END) };
    let workshop = session.workshop();
    let Some(card) = workshop.setup().kit.get(usize::from(carry.card)) else { return Err(NO_END) };
    let held = card.kind.nature().held;
    if held == Held::OnPedal {
        return if thing == Thing::Pedal { Ok(()) } else { Err(Misfit::Prop) };
    }
    match thing {
        Thing::Part(part) if held.to_parts() => Ok(workshop.fits_part(held, part)?),
        Thing::Port(port) if !held.to_parts() && usize::from(port.part) < car.assembly.parts.len() => {
            let fit = workshop.fits_port(held, port);
            let name = car.assembly.port_name(port);
            let taken = carry.placed.iter().any(|(_, at)| *at == name);
            let other_kind = matches!(fit, Err(NoFit::Air | NoFit::Current));
            if taken && !other_kind { Err(Misfit::Taken) } else { Ok(fit?) }
        }
        _ => Err(NO_END),
    }
}
