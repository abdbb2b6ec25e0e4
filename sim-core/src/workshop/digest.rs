//! Digest of the workshop: FNV-1a over circuit and workshop state in declared order.

use super::Workshop;
use crate::action::PedalHold;
use crate::observe::ShownValue;

/// FNV-1a, 64 bit.
pub(super) struct Fnv(u64);

impl Fnv {
    pub(super) fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }
    pub(super) fn bytes(&mut self, bytes: &[u8]) {
        for b in bytes {
            self.0 = (self.0 ^ u64::from(*b)).wrapping_mul(0x0000_0100_0000_01b3);
        }
    }
    pub(super) fn u64(&mut self, v: u64) {
        self.bytes(&v.to_le_bytes());
    }
    pub(super) fn u32(&mut self, v: u32) {
        self.bytes(&v.to_le_bytes());
    }
    pub(super) fn bool(&mut self, v: bool) {
        self.bytes(&[u8::from(v)]);
    }
    pub(super) fn f64(&mut self, v: f64) {
        self.u64(v.to_bits());
    }
    /// With its length, so that neighbours cannot run together.
    pub(super) fn str(&mut self, v: &str) {
        self.u64(v.len() as u64);
        self.bytes(v.as_bytes());
    }
    pub(super) fn finish(&self) -> u64 {
        self.0
    }
}

impl Workshop {
    /// Digest of circuit and workshop.
    #[must_use]
    pub fn digest(&self) -> u64 {
        let s = &self.state;
        let mut d = Fnv::new();
        d.u64(self.circuit.digest());
        d.u64(self.offset);
        d.u32(s.station as u32);
        d.u64(s.attended);
        d.u64(s.unattended);
        match s.pedal {
            PedalHold::Released => d.u32(0),
            PedalHold::Foot { force_n } => {
                d.u32(1);
                d.f64(force_n);
            }
            PedalHold::Prop { force_n } => {
                d.u32(2);
                d.f64(force_n);
            }
        }
        d.bool(s.chocked);
        // Only when it hangs there: what was done before there was an extraction keeps its digests.
        if s.extracted {
            d.str("extraction");
        }
        s.covers_off.iter().for_each(|c| d.bool(*c));
        for pulled in &s.pulled {
            d.bool(pulled.is_some());
            pulled.iter().flatten().for_each(|j| d.u32(u32::from(*j)));
        }
        for fits in &s.fits {
            d.u64(fits.len() as u64);
            for (end, at) in fits {
                d.str(end);
                d.str(at);
            }
        }
        s.spares_used.iter().for_each(|u| d.bool(*u));
        for r in &s.readings {
            d.u32(r.id);
            d.u64(r.tick.0);
            d.u32(r.epoch);
            match r.shown {
                ShownValue::Steps(n) => {
                    d.u32(0);
                    d.u64(n as u64);
                }
                ShownValue::Off(high) => d.u32(1 + u32::from(high)),
                ShownValue::Level(l) => {
                    d.u32(3);
                    d.u32(u32::from(l));
                }
                ShownValue::Blank => d.u32(4),
            }
        }
        for (id, written, record) in &s.notes {
            d.u32(*id);
            if let Some(w) = written {
                d.f64(w.value);
                d.str(&w.unit);
            }
            d.str(record.as_deref().unwrap_or_default());
        }
        for (units, certainty) in &s.findings {
            units.iter().for_each(|u| d.str(u));
            d.f64(*certainty);
        }
        d.bool(s.handed_back);
        d.u32(s.epoch);
        d.u32(s.changes);
        d.bool(s.repaired);
        d.bool(s.repaired_first);
        d.u64(s.last_switch);
        d.f64(s.store_kpa_at_switch);
        if let Some(e) = s.engine_event {
            d.bool(e.started);
            d.u64(e.tick);
            d.f64(e.travel_mm.unwrap_or(-1.0));
        }
        d.f64(s.applications.unwrap_or(-1.0));
        d.bool(s.applications_standing);
        d.f64(s.yard_share.unwrap_or(-1.0));
        d.u32(s.proven.map_or(u32::MAX, |p| p));
        d.finish()
    }
}
