//! What a person in the workshop can see. Nothing hidden passes through here without an instrument.

use super::{InstrumentView, View, Workshop};
use crate::instrument::{Held, Measured, Worked};
use crate::observe::{Predicted, ShownValue};
use crate::parts::instruments::FILAMENT_RATED_K;
use crate::units::{TICK_S, Tick};

impl Workshop {
    /// Minutes of work so far, and minutes of waiting that needed nobody.
    #[must_use]
    pub fn minutes(&self) -> (f64, f64) {
        let min = |ticks: u64| ticks as f64 * TICK_S / 60.0;
        (min(self.state.attended), min(self.state.unattended))
    }

    /// What can be seen.
    #[must_use]
    pub fn view(&self) -> View {
        let assembly = self.circuit.assembly();
        let car = &self.setup.car;
        let named = |of: &[bool], id: &dyn Fn(usize) -> String| {
            of.iter().enumerate().filter(|(_, on)| **on).map(|(i, _)| id(i)).collect::<Vec<_>>()
        };
        let open: Vec<bool> = assembly.joints[..car.assembly.joints.len()].iter().map(|j| !j.made).collect();
        let pulled: Vec<bool> = self.state.pulled.iter().map(Option::is_some).collect();
        let (attended_min, unattended_min) = self.minutes();
        View {
            tick: Tick(self.circuit.tick().0 - self.offset),
            station: self.state.station,
            attended_min,
            unattended_min,
            key_on: self.circuit.inputs().key_on,
            engine: self.circuit.inputs().engine,
            pedal: self.state.pedal,
            chocked: self.state.chocked,
            extracted: self.state.extracted,
            covers_off: named(&self.state.covers_off, &|i| car.covers[i].id.clone()),
            joints_open: named(&open, &|i| assembly.joints[i].id.clone()),
            pulled: named(&pulled, &|i| car.units[i].id.clone()),
            stops: assembly.stops.iter().map(|(p, s)| (assembly.port_name(*p), *s)).collect(),
            hum: self.pump_hums(),
            pedal_seen_mm: self.circuit.pedal_travel_mm(),
            instruments: (0..self.setup.kit.len()).map(|card| self.instrument_view(card)).collect(),
            readings: self.state.readings.clone(),
            notes: self.state.notes.clone(),
            findings: self.state.findings.clone(),
            handed_back: self.state.handed_back,
        }
    }

    fn instrument_view(&self, card: usize) -> InstrumentView {
        let c = &self.setup.kit[card];
        let at = self.state.fits[card].clone();
        let mut view = InstrumentView {
            id: c.id.clone(),
            card,
            at,
            value: None,
            shown: ShownValue::Blank,
            scale: None,
            glow: None,
            mode: None,
            pressed: false,
        };
        let nature = c.kind.nature();
        if let Some(part) = self.card_part(card) {
            let hand = self.circuit.inputs().hands[usize::from(part)];
            view.mode = (nature.worked == Worked::Set).then_some(hand.mode);
            view.pressed = hand.pressed;
        }
        let lamp = nature.measured == Measured::Glow;
        if lamp && let Some(part) = self.card_part(card) {
            view.glow = Some(glow(self.circuit.filament_k(part)));
        }
        let pointed = matches!(nature.held, Held::AtPart | Held::OnHose);
        if pointed && view.at.is_empty() {
            return view;
        }
        let Some(what) = self.observed(card) else { return view };
        let scale = self.scale(&what);
        let predicted = self.predict(&what);
        view.shown = self.show(&what, predicted, self.state.readings.len() as u32 + 1);
        if let Predicted::Value(value) = predicted
            && !lamp
        {
            let with_error = value + self.instrument_error(&what, value, self.drawn_share(&what));
            view.value = scale.number(view.shown).map(|_| with_error);
        }
        view.scale = Some(scale);
        view
    }
}

/// How bright a filament looks, 0 to 1: nothing below the first glow, full at rated temperature.
fn glow(filament_k: f64) -> f64 {
    /// First glow a person sees, K (Draper point, from memory).
    const FIRST_GLOW_K: f64 = 800.0;
    let share = ((filament_k - FIRST_GLOW_K) / (FILAMENT_RATED_K - FIRST_GLOW_K)).clamp(0.0, 1.0);
    share * share
}
