//! What truly switches: vacuum switches, relays, fuses; and the hum of a pump, which is heard or not.

use super::layout::{Chamber, Var};
use super::model::Given;
use super::{Circuit, Event, Flags, wiring};
use crate::assembly::PortRef;
use crate::parts::PartKind;
use crate::parts::controller::{self, Decision};
use crate::parts::electrical::FUSE_MELTS_AT;

impl Circuit {
    /// Discrete states that the attempted step would end in.
    pub(super) fn flags_after(&mut self) -> Vec<Flags> {
        std::mem::swap(&mut self.y, &mut self.work.y_new);
        let flags = self.flags_after_state();
        std::mem::swap(&mut self.y, &mut self.work.y_new);
        flags
    }

    /// Discrete states that follow from the present state.
    pub(super) fn flags_after_state(&mut self) -> Vec<Flags> {
        let given = Given { assembly: &self.assembly, inputs: &self.inputs, flags: &self.flags };
        self.model.gases(&self.y, &mut self.scratch);
        self.model.solve_wiring(given, &self.y, &mut self.scratch);
        let mut next = self.flags.clone();
        for (i, part) in self.assembly.parts.iter().enumerate() {
            let (idx, flag) = (i as u16, &mut next[i]);
            let value = |var| self.model.layout.index(var).map(|k| self.y[k]);
            match &part.kind {
                PartKind::VacuumSwitch(s) => {
                    let Some(k) = self.model.layout.volume_of(idx, Chamber::Body) else { continue };
                    let gauge = self.scratch.gas[k].p - self.day.pressure().pa();
                    if flag.closed && gauge <= s.opens_at_pa() {
                        flag.closed = false;
                    } else if !flag.closed && s.closes_at_pa() <= gauge {
                        flag.closed = true;
                    }
                }
                PartKind::Relay(r) => {
                    let coil = self.coil_v(idx).abs();
                    if !flag.closed && r.pull_in_v <= coil {
                        flag.closed = true;
                    } else if flag.closed && coil <= r.drop_out_v {
                        flag.closed = false;
                    }
                }
                PartKind::Controller(c) => {
                    let volt = |port| {
                        let at = |port| self.model.wiring.node(PortRef { part: idx, port });
                        let v = |node: Option<u16>| node.map_or(0.0, |n| self.scratch.solved.v[n as usize]);
                        v(at(port)) - v(at(controller::EARTH))
                    };
                    let before = Decision {
                        powered: flag.powered,
                        drives: flag.closed,
                        resting: flag.resting,
                        codes: flag.codes,
                    };
                    let run_s = value(Var::RunTime(idx)).unwrap_or(0.0);
                    let now = c.decide(
                        before,
                        volt(controller::SUPPLY),
                        volt(controller::FEED),
                        volt(controller::SIGNAL),
                        run_s,
                    );
                    flag.powered = now.powered;
                    flag.closed = now.drives;
                    flag.resting = now.resting;
                    flag.codes = now.codes;
                }
                PartKind::Fuse(_) | PartKind::Multimeter(_) | PartKind::PushLead(_) => {
                    if let Some(heat) = value(Var::FuseHeat(idx)) {
                        flag.melted |= FUSE_MELTS_AT <= heat;
                    }
                }
                PartKind::VacuumPump(_) => {
                    /// Audible above this speed, rad/s; silent again below half of it.
                    const HUM: f64 = 60.0;
                    let omega = value(Var::Speed(idx)).unwrap_or(0.0);
                    flag.hums = if flag.hums { HUM / 2.0 < omega } else { HUM < omega };
                }
                _ => {}
            }
        }
        next
    }

    /// Voltage across the coil, without the drop in its corroded terminal.
    fn coil_v(&self, relay: u16) -> f64 {
        let PartKind::Relay(r) = &self.assembly.parts[relay as usize].kind else { return 0.0 };
        self.model.wiring.poles.iter().find(|p| p.part == relay && p.kind == wiring::PoleKind::Coil).map_or(
            0.0,
            |p| {
                let v = &self.scratch.solved.v;
                (v[p.node_a as usize] - v[p.node_b as usize]) * r.coil_ohm / (r.coil_ohm + r.coil_open_ohm)
            },
        )
    }

    pub(super) fn switch_to(&mut self, next: Vec<Flags>) {
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
        if next != self.flags {
            self.e = self.e.min(0);
            self.flags = next;
        }
    }
}
