//! A recorder under the skin: values of every port of the car at equal times, for traces.
//!
//! It shortens steps so that rows fall on their times; an attempt never uses it (its steps would differ).

use super::Workshop;
use crate::parts::Domain;
use crate::units::Tick;

/// Rows kept until they are taken; a longer stretch needs a longer interval.
const MOST_ROWS: usize = 100_000;

/// One row of a trace.
#[derive(Clone, Debug, PartialEq)]
pub struct TraceRow {
    /// When.
    pub tick: Tick,
    /// One value a column of [`super::Opened::trace_columns`].
    pub values: Vec<f64>,
}

#[derive(Clone, Debug)]
pub(super) struct Recorder {
    every: u64,
    /// Circuit tick of the next row.
    pub(super) next: u64,
    rows: Vec<TraceRow>,
    full: bool,
}

impl Workshop {
    /// See [`super::Opened::record_every`].
    pub(super) fn record_every(&mut self, every: u64) {
        let now = self.circuit.tick().0;
        self.recorder = Some(Recorder { every: every.max(1), next: now, rows: Vec::new(), full: false });
        self.record();
    }

    /// See [`super::Opened::take_rows`].
    pub(super) fn take_rows(&mut self) -> Option<Vec<TraceRow>> {
        let recorder = self.recorder.as_mut()?;
        let rows = std::mem::take(&mut recorder.rows);
        (!recorder.full).then_some(rows)
    }

    /// See [`super::Opened::trace_columns`].
    pub(super) fn trace_columns(&self) -> Vec<String> {
        let assembly = &self.setup.car.assembly;
        let mut columns = Vec::new();
        for port in assembly.ports() {
            let name = assembly.port_name(port);
            let units = match assembly.domain(port) {
                Domain::Pneumatic => ["kpa_abs", "flow_out_g_per_s"],
                Domain::Electrical => ["v", "into_a"],
            };
            columns.extend(units.map(|unit| format!("{name}_{unit}")));
        }
        columns.extend(self.warm_parts().map(|(_, id)| format!("{id}.case_c")));
        columns.push("pedal_n".to_owned());
        columns.push("pedal_travel_mm".to_owned());
        columns
    }

    fn warm_parts(&self) -> impl Iterator<Item = (u16, &str)> {
        let car = &self.setup.car;
        let parts = car.assembly.parts.iter().zip(&car.stands).enumerate();
        parts.filter(|(_, (_, stands))| stands.warm).map(|(i, (part, _))| (i as u16, part.id.as_str()))
    }

    /// Takes a row when one is due.
    pub(super) fn record(&mut self) {
        let now = self.circuit.tick();
        if self.recorder.as_ref().is_none_or(|r| now.0 < r.next) {
            return;
        }
        let circuit = &self.circuit;
        let assembly = &self.setup.car.assembly;
        let mut values = Vec::new();
        for port in assembly.ports() {
            match assembly.domain(port) {
                Domain::Pneumatic => {
                    values.extend([circuit.pressure(port).kpa(), circuit.m_flow_out(port) * 1e3]);
                }
                Domain::Electrical => values.extend([circuit.voltage(port), circuit.current(port)]),
            }
        }
        values.extend(self.warm_parts().map(|(part, _)| circuit.surface_c(part)));
        values.push(circuit.inputs().pedal_n);
        values.push(circuit.pedal_travel_mm());
        let tick = Tick(now.0 - self.offset);
        if let Some(recorder) = &mut self.recorder {
            recorder.next =
                (now.0 - recorder.next) / recorder.every * recorder.every + recorder.next + recorder.every;
            if recorder.rows.len() < MOST_ROWS {
                recorder.rows.push(TraceRow { tick, values });
            } else {
                recorder.full = true;
            }
        }
    }
}
