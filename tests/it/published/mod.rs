//! Published values: one module for each family of sources.
//!
//! Rows are those of `reference/check-values.md`; the issuing body stands beside each. `val_` rows were
//! read in the source (status V) or in somebody's reproduction of it (V2), `reg_` rows were computed
//! (C) or are from memory (M, and marked so). A tolerance is a named constant with its reason.

mod accuracy;
mod atmosphere;
mod battery_and_wire;
mod booster;
mod circuit_flow;
mod fuse;
mod gas_dynamics;
mod hole_coefficient;
mod instruments;
mod integrator;
mod iso_6358;
mod lamp;
mod leak_rate;
mod motor;
mod page;
mod pump_down;
mod regulations;
mod service;
mod thermodynamics;
mod trade;
mod units;

/// Figures of one source, checked together so that a failure shows the whole row.
///
/// Every comparison is printed (`--nocapture`); the misses are reported when the table goes out of scope.
pub(crate) struct Table {
    source: &'static str,
    row: &'static str,
    checked: usize,
    misses: Vec<String>,
}

impl Table {
    pub(crate) fn of(source: &'static str, row: &'static str) -> Self {
        Self { source, row, checked: 0, misses: Vec::new() }
    }

    /// `got` within `tol` of `printed`, in the unit named in `what`.
    pub(crate) fn near(&mut self, what: &str, got: f64, printed: f64, tol: f64) {
        self.within(what, got, printed - tol, printed + tol);
    }

    /// `got` within the share `tol` of `printed`.
    pub(crate) fn near_rel(&mut self, what: &str, got: f64, printed: f64, tol: f64) {
        self.near(what, got, printed, tol * printed.abs());
    }

    /// `got` from `min` to `max`; a NaN is a miss.
    pub(crate) fn within(&mut self, what: &str, got: f64, min: f64, max: f64) {
        self.checked += 1;
        let hit = (min..=max).contains(&got);
        let line = format!("{what}: {got:.9} against {min:.9} to {max:.9}");
        println!("row {} ({}) {line}{}", self.row, self.source, if hit { "" } else { "  MISS" });
        if !hit {
            self.misses.push(line);
        }
    }
}

impl Drop for Table {
    fn drop(&mut self) {
        if std::thread::panicking() {
            return;
        }
        assert!(0 < self.checked, "row {}: nothing was checked", self.row);
        assert!(self.misses.is_empty(), "row {} ({}): {:#?}", self.row, self.source, self.misses);
    }
}

/// Half a unit in the last of `decimals` printed decimals.
pub(crate) fn half_digit(decimals: u32) -> f64 {
    0.5 / f64::from(10_u32.pow(decimals))
}
