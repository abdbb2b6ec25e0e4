//! Where slopes go.

use super::flow_path::Place;
use crate::lanes::Real;

/// Receives slopes ∂f_row/∂y_column.
pub(crate) trait Sink<R> {
    /// Whether slopes are wanted at all.
    const WANTED: bool;
    /// Adds a slope to an entry of the model's plan.
    fn add(&mut self, entry: Place, value: R);
}

/// Wants no slopes.
pub(crate) struct NoSlopes;
impl<R> Sink<R> for NoSlopes {
    const WANTED: bool = false;
    #[inline(always)]
    fn add(&mut self, _: Place, _: R) {}
}

/// Adds into the entries of a plan.
pub(crate) struct Entries<'a, R = f64>(pub(crate) &'a mut [R]);
impl<R: Real> Sink<R> for Entries<'_, R> {
    const WANTED: bool = true;
    #[inline(always)]
    fn add(&mut self, entry: Place, value: R) {
        self.0[usize::from(entry)] += value;
    }
}
