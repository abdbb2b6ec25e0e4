//! What truly switches: vacuum switches, relays, fuses; and the hum of a pump, which is heard or not.

use super::super::compile::Switch;
use super::super::solve::{Flags, Scratch};
use super::{Circuit, Event};
use crate::lanes::Real;
use crate::parts::elements::{Decision, FUSE_MELTS_AT, SLACK_CLOSES_AT, SLACK_OPENS_AT};

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
        for switch in &self.net.switches {
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
                    let coil = (self.model.volts_at(*pole, scratch, lane) * share).abs();
                    let flag = &mut next[*part];
                    if !flag.closed && *pull_in_v <= coil {
                        flag.closed = true;
                    } else if flag.closed && coil <= *drop_out_v {
                        flag.closed = false;
                    }
                }
                Switch::Controller { part, law, nodes, run_time } => {
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
                    let now = law.decide(before, supply - earth, feed - earth, signal - earth, run_s);
                    flag.powered = now.powered;
                    flag.closed = now.drives;
                    flag.resting = now.resting;
                    flag.codes = now.codes;
                }
                Switch::Fuse { part, heat } => next[*part].melted |= FUSE_MELTS_AT <= y[*heat].lane(lane),
                Switch::Slack { part, heat } => {
                    let (heat, flag) = (y[*heat].lane(lane), &mut next[*part]);
                    flag.closed = if flag.closed { heat < SLACK_OPENS_AT } else { heat <= SLACK_CLOSES_AT };
                }
                Switch::Hum { part, speed } => {
                    /// Audible above this speed, rad/s; silent again below half of it.
                    const HUM: f64 = 60.0;
                    let (omega, flag) = (y[*speed].lane(lane), &mut next[*part]);
                    flag.hums = if flag.hums { HUM / 2.0 < omega } else { HUM < omega };
                }
            }
        }
        // Only what is listed can differ.
        let switches = self.net.switches.iter().any(|s| next[s.part()] != self.flags[s.part()]);
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
                let own = self.net.switches.iter().filter(|s| s.part() == i);
                let turned = own.filter_map(|s| turned(s, part, new.closed)).next();
                self.events.extend(turned.map(|event| (self.tick, event)));
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

/// What it is called that a contact or an output has closed or opened.
fn turned(switch: &Switch, part: u16, closed: bool) -> Option<Event> {
    let (on, off) = match switch {
        Switch::Vacuum { .. } => (Event::SwitchClosed(part), Event::SwitchOpened(part)),
        Switch::Relay { .. } => (Event::RelayPulled(part), Event::RelayDropped(part)),
        Switch::Controller { .. } => (Event::OutputOn(part), Event::OutputOff(part)),
        Switch::Fuse { .. } | Switch::Slack { .. } | Switch::Hum { .. } => return None,
    };
    Some(if closed { on } else { off })
}
