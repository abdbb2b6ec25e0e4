//! What truly switches, with the air, nodes and states that decide it looked up.

use super::layout::{Layout, StateVar};
use super::specs::Specs;
use super::wiring::Wiring;
use crate::assembly::PortRef;
use crate::parts::elements::{self, Control, Quantity};

/// Something that truly switches, its numbers looked up once.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Switch {
    /// A vacuum switch over the air of a volume.
    Vacuum { part: usize, volume: usize, opens_at_pa: f64, closes_at_pa: f64 },
    /// A relay by the voltage at its coil; `share` of it is left behind the corroded terminal.
    Relay { part: usize, pole: Option<usize>, share: f64, pull_in_v: f64, drop_out_v: f64 },
    /// A controller with the nodes of supply, feed, signal and earth.
    Controller { part: usize, law: Control, nodes: [Option<u16>; 4], run_time: Option<usize> },
    /// A fuse by its heat.
    Fuse { part: usize, heat: usize },
    /// A slack clip by its heat.
    Slack { part: usize, heat: usize },
    /// A pump's hum by its speed.
    Hum { part: usize, speed: usize },
}

impl Switch {
    pub(crate) fn part(&self) -> usize {
        match *self {
            Self::Vacuum { part, .. }
            | Self::Relay { part, .. }
            | Self::Controller { part, .. }
            | Self::Fuse { part, .. }
            | Self::Slack { part, .. }
            | Self::Hum { part, .. } => part,
        }
    }

    /// Whether its contact is closed in a part from the shelf.
    pub(crate) fn is_closed_at_first(&self) -> bool {
        match self {
            Self::Vacuum { .. } | Self::Slack { .. } => true,
            Self::Relay { .. } | Self::Controller { .. } | Self::Fuse { .. } | Self::Hum { .. } => false,
        }
    }
}

/// All of an assembly, in part order.
pub(super) fn all(specs: &Specs<'_>, layout: &Layout, wiring: &Wiring) -> Vec<Switch> {
    let all = specs.active().flat_map(|(part, s)| s.switches.iter().map(move |switch| (part, switch)));
    all.filter_map(|(part, switch)| of(part, switch, layout, wiring)).collect()
}

fn of(idx: u16, switch: &elements::Switch, layout: &Layout, wiring: &Wiring) -> Option<Switch> {
    let part = usize::from(idx);
    let index = |is| layout.index(StateVar::Of(is, idx));
    Some(match *switch {
        elements::Switch::Vacuum { chamber, opens_at_pa, closes_at_pa } => {
            Switch::Vacuum { part, volume: layout.volume_of(idx, chamber)?, opens_at_pa, closes_at_pa }
        }
        elements::Switch::Relay { coil, share, pull_in_v, drop_out_v } => {
            Switch::Relay { part, pole: wiring.pole_of(idx, coil), share, pull_in_v, drop_out_v }
        }
        elements::Switch::Controller { law, supply, feed, signal, earth } => {
            let node = |port| wiring.node(PortRef { part: idx, port });
            let nodes = [supply, feed, signal, earth].map(node);
            Switch::Controller { part, law, nodes, run_time: index(Quantity::RunTime) }
        }
        elements::Switch::Fuse => Switch::Fuse { part, heat: index(Quantity::FuseHeat)? },
        elements::Switch::Slack => Switch::Slack { part, heat: index(Quantity::FuseHeat)? },
        elements::Switch::Hum => Switch::Hum { part, speed: index(Quantity::Speed)? },
    })
}
