//! Which ends what is in the hand goes on, and why not: for the list that offers places. A menu offers more, for
//! the workshop says why it refuses; a list of a hundred names had better hold those that will do.

use sim_core::assembly::{PortRef, Stop};
use sim_core::instrument::InstrumentKind;
use sim_core::parts::{Domain, PartKind};

use super::{Carry, Thing, is_open, joints_at};
use crate::shop::Shop;

/// Why what is in the hand does not go there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Misfit {
    /// It is no end of anything.
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
    /// It is no rubber hose: a clamp would crack it.
    Hard,
    /// It is no hose.
    NoHose,
    /// There is no air in it.
    NoAir,
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
            Self::NoEnd => "misfit-no-end",
            Self::Air => "misfit-air",
            Self::Current => "misfit-current",
            Self::Joined => "misfit-joined",
            Self::Stopped => "misfit-stopped",
            Self::Plugged => "misfit-plugged",
            Self::Hard => "misfit-hard",
            Self::NoHose => "misfit-no-hose",
            Self::NoAir => "misfit-no-air",
            Self::Taken => "misfit-taken",
            Self::Prop => "misfit-prop",
        }
    }
}

/// Whether the end in the hand goes to `thing`, as far as anybody can see.
///
/// # Errors
/// Why not.
pub fn fits(shop: &Shop, carry: &Carry, thing: Thing) -> Result<(), Misfit> {
    let kind = shop.session().and_then(|s| s.workshop().setup().kit.get(usize::from(carry.card)));
    let Some(kind) = kind.map(|c| &c.kind) else { return Err(Misfit::NoEnd) };
    match kind {
        InstrumentKind::PedalProp if thing == Thing::Pedal => Ok(()),
        InstrumentKind::PedalProp => Err(Misfit::Prop),
        InstrumentKind::IrThermometer { .. }
        | InstrumentKind::AngleFinder { .. }
        | InstrumentKind::ListeningTube => on_part(shop, kind, thing),
        _ => match thing {
            Thing::Port(port) => on_port(shop, carry, kind, port),
            _ => Err(Misfit::NoEnd),
        },
    }
}

/// What is held to a part.
fn on_part(shop: &Shop, kind: &InstrumentKind, thing: Thing) -> Result<(), Misfit> {
    let Thing::Part(part) = thing else { return Err(Misfit::NoEnd) };
    let part = shop.car().and_then(|car| car.assembly.parts.get(usize::from(part)));
    let Some(part) = part else { return Err(Misfit::NoEnd) };
    match kind {
        InstrumentKind::AngleFinder { .. } if !matches!(part.kind, PartKind::Hose(_)) => Err(Misfit::NoHose),
        InstrumentKind::ListeningTube if part.kind.ports().iter().all(|d| d.domain != Domain::Pneumatic) => {
            Err(Misfit::NoAir)
        }
        _ => Ok(()),
    }
}

/// What is joined to a port, put round it, or stops it.
fn on_port(shop: &Shop, carry: &Carry, kind: &InstrumentKind, port: PortRef) -> Result<(), Misfit> {
    let (Some(car), Some(view)) = (shop.car(), shop.view()) else { return Err(Misfit::NoEnd) };
    if car.assembly.parts.len() <= usize::from(port.part) {
        return Err(Misfit::NoEnd);
    }
    let for_air = matches!(
        kind,
        InstrumentKind::Gauge { .. }
            | InstrumentKind::HandPump { .. }
            | InstrumentKind::Plugs
            | InstrumentKind::Clamps
    );
    match (for_air, car.assembly.domain(port)) {
        (true, Domain::Electrical) => return Err(Misfit::Current),
        (false, Domain::Pneumatic) => return Err(Misfit::Air),
        _ => {}
    }
    let name = car.assembly.port_name(port);
    if carry.placed.iter().any(|(_, at)| *at == name) {
        return Err(Misfit::Taken);
    }
    let stop = view.stops.iter().find(|(at, _)| *at == name).map(|(_, stop)| *stop);
    match kind {
        InstrumentKind::Plugs | InstrumentKind::Clamps if stop.is_some() => Err(Misfit::Stopped),
        InstrumentKind::Plugs => {
            let fitted = view.instruments.iter().any(|i| i.at.iter().any(|(_, at)| *at == name));
            let joined = joints_at(shop, port).into_iter().any(|joint| !is_open(shop, joint));
            if fitted || joined { Err(Misfit::Joined) } else { Ok(()) }
        }
        InstrumentKind::Clamps => {
            let part = usize::from(port.part);
            let hose = matches!(car.assembly.parts[part].kind, PartKind::Hose(_));
            let rubber = car.stands.get(part).is_some_and(|s| s.rubber);
            if hose && rubber { Ok(()) } else { Err(Misfit::Hard) }
        }
        InstrumentKind::Gauge { .. } | InstrumentKind::HandPump { .. } if stop == Some(Stop::Plug) => {
            Err(Misfit::Plugged)
        }
        _ => Ok(()),
    }
}
