//! What truly switches: vacuum switches, relays, fuses; and the hum of a pump, which is heard or not.

use super::layout::{Chamber, Layout, Var};
use super::model::Scratch;
use super::wiring::{self, Wiring};
use super::{Circuit, Event, Flags};
use crate::assembly::{Assembly, PortRef};
use crate::lanes::Real;
use crate::parts::PartKind;
use crate::parts::controller::{self, Controller, Decision};
use crate::parts::electrical::FUSE_MELTS_AT;

/// Something that truly switches, its numbers looked up once.
#[derive(Clone, Copy, Debug)]
pub(super) enum Switch {
    /// A vacuum switch over the air of a volume.
    Vacuum { part: usize, volume: usize, opens_at_pa: f64, closes_at_pa: f64 },
    /// A relay by the voltage at its coil; `share` of it is left behind the corroded terminal.
    Relay { part: usize, pole: Option<usize>, share: f64, pull_in_v: f64, drop_out_v: f64 },
    /// A controller with the nodes of supply, feed, signal and earth.
    Controller { part: usize, numbers: Controller, nodes: [Option<u16>; 4], run_time: Option<usize> },
    /// A fuse by its heat.
    Fuse { part: usize, heat: usize },
    /// A pump's hum by its speed.
    Hum { part: usize, speed: usize },
}

impl Switch {
    fn part(&self) -> usize {
        match *self {
            Self::Vacuum { part, .. }
            | Self::Relay { part, .. }
            | Self::Controller { part, .. }
            | Self::Fuse { part, .. }
            | Self::Hum { part, .. } => part,
        }
    }

    /// All of an assembly, in part order.
    pub(super) fn all(assembly: &Assembly, layout: &Layout, wiring: &Wiring) -> Vec<Self> {
        let of = |(part, kind): (usize, &PartKind)| {
            let idx = part as u16;
            Some(match kind {
                PartKind::VacuumSwitch(s) => Self::Vacuum {
                    part,
                    volume: layout.volume_of(idx, Chamber::Body)?,
                    opens_at_pa: s.opens_at_pa(),
                    closes_at_pa: s.closes_at_pa(),
                },
                PartKind::Relay(r) => {
                    let coil = |p: &wiring::Pole| p.part == idx && p.kind == wiring::PoleKind::Coil;
                    Self::Relay {
                        part,
                        pole: wiring.poles.iter().position(coil),
                        share: r.coil_ohm / (r.coil_ohm + r.coil_open_ohm),
                        pull_in_v: r.pull_in_v,
                        drop_out_v: r.drop_out_v,
                    }
                }
                PartKind::Controller(c) => {
                    let ports = [controller::SUPPLY, controller::FEED, controller::SIGNAL, controller::EARTH];
                    Self::Controller {
                        part,
                        numbers: *c,
                        nodes: ports.map(|port| wiring.node(PortRef { part: idx, port })),
                        run_time: layout.index(Var::RunTime(idx)),
                    }
                }
                PartKind::Fuse(_) | PartKind::Multimeter(_) | PartKind::PushLead(_) => {
                    Self::Fuse { part, heat: layout.index(Var::FuseHeat(idx))? }
                }
                PartKind::VacuumPump(_) => Self::Hum { part, speed: layout.index(Var::Speed(idx))? },
                _ => return None,
            })
        };
        assembly.parts.iter().map(|p| &p.kind).enumerate().filter_map(of).collect()
    }
}

/// Discrete states that follow from a state.
#[derive(Debug)]
pub(super) struct After {
    flags: Vec<Flags>,
    /// Whether any differs from what is.
    pub(super) switches: bool,
}

impl Circuit {
    /// Discrete states that follow from the state `y` in a lane, its air and voltages being in `scratch`.
    pub(super) fn flags_after<R: Real>(&mut self, y: &[R], scratch: &Scratch<R>, lane: usize) -> After {
        let mut next = std::mem::take(&mut self.next_flags);
        next.clone_from(&self.flags);
        for switch in &self.model.switches {
            match switch {
                Switch::Vacuum { part, volume, opens_at_pa, closes_at_pa } => {
                    let gauge = scratch.gas[*volume].p.lane(lane) - self.model.numbers.p_atm;
                    let flag = &mut next[*part];
                    if flag.closed && gauge <= *opens_at_pa {
                        flag.closed = false;
                    } else if !flag.closed && *closes_at_pa <= gauge {
                        flag.closed = true;
                    }
                }
                Switch::Relay { part, pole, share, pull_in_v, drop_out_v } => {
                    let coil = (self.model.at_pole(*pole, scratch).0.lane(lane) * share).abs();
                    let flag = &mut next[*part];
                    if !flag.closed && *pull_in_v <= coil {
                        flag.closed = true;
                    } else if flag.closed && coil <= *drop_out_v {
                        flag.closed = false;
                    }
                }
                Switch::Controller { part, numbers, nodes, run_time } => {
                    let flag = &mut next[*part];
                    let before = Decision {
                        powered: flag.powered,
                        drives: flag.closed,
                        resting: flag.resting,
                        codes: flag.codes,
                    };
                    let v =
                        |node: Option<u16>| node.map_or(0.0, |n| scratch.solved.v[usize::from(n)].lane(lane));
                    let [supply, feed, signal, earth] = nodes.map(v);
                    let run_s = run_time.map_or(0.0, |i| y[i].lane(lane));
                    let now = numbers.decide(before, supply - earth, feed - earth, signal - earth, run_s);
                    flag.powered = now.powered;
                    flag.closed = now.drives;
                    flag.resting = now.resting;
                    flag.codes = now.codes;
                }
                Switch::Fuse { part, heat } => next[*part].melted |= FUSE_MELTS_AT <= y[*heat].lane(lane),
                Switch::Hum { part, speed } => {
                    /// Audible above this speed, rad/s; silent again below half of it.
                    const HUM: f64 = 60.0;
                    let (omega, flag) = (y[*speed].lane(lane), &mut next[*part]);
                    flag.hums = if flag.hums { HUM / 2.0 < omega } else { HUM < omega };
                }
            }
        }
        // Only what is listed can differ.
        let switches = self.model.switches.iter().any(|s| next[s.part()] != self.flags[s.part()]);
        After { flags: next, switches }
    }

    /// Gives back the room of flags that are not to be.
    pub(super) fn leave_as_is(&mut self, after: After) {
        self.next_flags = after.flags;
    }

    /// Switches, tells what happened, and says whether anything changed.
    pub(super) fn switch_to(&mut self, after: After) -> bool {
        if !after.switches {
            self.leave_as_is(after);
            return false;
        }
        let next = after.flags;
        for (i, (old, new)) in self.flags.iter().zip(&next).enumerate() {
            let part = i as u16;
            if old.closed != new.closed {
                self.events.push((
                    self.tick,
                    match (&self.assembly.parts[i].kind, new.closed) {
                        (PartKind::VacuumSwitch(_), true) => Event::SwitchClosed(part),
                        (PartKind::VacuumSwitch(_), false) => Event::SwitchOpened(part),
                        (PartKind::Controller(_), true) => Event::OutputOn(part),
                        (PartKind::Controller(_), false) => Event::OutputOff(part),
                        (_, true) => Event::RelayPulled(part),
                        (_, false) => Event::RelayDropped(part),
                    },
                ));
            }
            if old.codes != new.codes {
                self.events.push((self.tick, Event::CodeStored(part)));
            }
            if old.melted != new.melted {
                self.events.push((self.tick, Event::FuseMelted(part)));
            }
            if old.hums != new.hums {
                let event = if new.hums { Event::PumpStarted(part) } else { Event::PumpStopped(part) };
                self.events.push((self.tick, event));
            }
        }
        self.e = self.e.min(0);
        self.flags.clone_from(&next);
        self.next_flags = next;
        true
    }
}
