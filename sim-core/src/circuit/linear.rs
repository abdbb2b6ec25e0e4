//! Sparse elimination with a plan made once per compiled circuit.
//!
//! The plan lists, in order, which entry is changed by which two others, so that the numbers run through
//! without a search; entries are numbered in the order in which a solve uses them. The matrix has a dominant
//! diagonal in the order of the layout, so no rows are exchanged; a pivot that is not positive tells the
//! caller to take a smaller step.

use crate::lanes::{Mask as _, Real};

/// Most unknowns a plan can have: any byte is a place in a [`Column`], so that none need be checked.
pub(crate) const MOST: usize = 256;

/// Right-hand side or solution; what lies beyond the plan's unknowns is left alone.
pub(crate) type Column<R = f64> = [R; MOST];

/// A [`Column`] on the heap.
#[derive(Clone, Debug)]
pub(crate) struct Unknowns<R = f64>(Box<Column<R>>);

impl<R: Real> Default for Unknowns<R> {
    fn default() -> Self {
        Self(Box::new([R::all(0.0); MOST]))
    }
}

impl<R> std::ops::Deref for Unknowns<R> {
    type Target = Column<R>;
    fn deref(&self) -> &Column<R> {
        &self.0
    }
}

impl<R> std::ops::DerefMut for Unknowns<R> {
    fn deref_mut(&mut self) -> &mut Column<R> {
        &mut self.0
    }
}

/// What of which entry: `target` −= `factor` of the row · `source`.
#[derive(Clone, Copy, Debug)]
struct Change {
    target: u32,
    source: u32,
}

/// Elimination of one entry below a pivot.
#[derive(Clone, Copy, Debug)]
struct Below {
    entry: u32,
    first: u32,
    last: u32,
}

/// An entry off the diagonal: the row it belongs to, the unknown it multiplies.
#[derive(Clone, Copy, Debug)]
struct Off {
    row: u8,
    column: u8,
}

/// Entries of one row behind each other.
#[derive(Clone, Copy, Debug)]
struct Run {
    row: u8,
    len: u8,
}

impl Run {
    fn all(offs: &[Off]) -> Vec<Self> {
        offs.chunk_by(|a, b| a.row == b.row)
            .map(|run| Self { row: run[0].row, len: run.len() as u8 })
            .collect()
    }
}

/// Where the entries of a sparse matrix are kept, and how it is eliminated.
///
/// Entries are numbered: those of L row by row, those of U row by row from the last and each row from its end, the
/// diagonal, and what is written in rows beyond n.
#[derive(Clone, Debug, Default)]
pub(crate) struct Plan {
    n: usize,
    /// Row-major place of each entry in an n × n matrix, fill-in included.
    places: Vec<u32>,
    /// Per pivot, where its `below` begin; one more at the end.
    starts: Vec<u32>,
    below: Vec<Below>,
    changes: Vec<Change>,
    lower: Vec<Off>,
    lower_rows: Vec<Run>,
    upper: Vec<Off>,
    upper_rows: Vec<Run>,
    /// What is written in rows beyond n, by rows; its entries are numbered behind all others.
    beyond: Vec<Off>,
    beyond_rows: Vec<Run>,
}

impl Plan {
    /// From the places (row, column) that the Jacobian writes; rows at or beyond `n` take no part in the
    /// elimination. Rows are at most [`MOST`].
    pub(crate) fn of(n: usize, written: &[(usize, usize)]) -> Self {
        assert!(n <= MOST, "{n} unknowns are more than {MOST}");
        let mut filled = vec![false; n * n];
        for i in 0..n {
            filled[i * n + i] = true;
        }
        for &(r, c) in written {
            if r < n {
                filled[r * n + c] = true;
            }
        }
        for k in 0..n {
            for i in k + 1..n {
                if filled[i * n + k] {
                    for j in k + 1..n {
                        filled[i * n + j] |= filled[k * n + j];
                    }
                }
            }
        }
        let off = |(row, column): (usize, usize)| Off { row: row as u8, column: column as u8 };
        let is = |(row, column): &(usize, usize)| filled[row * n + column];
        let lower = (0..n).flat_map(|r| (0..r).map(move |c| (r, c))).filter(is).map(off);
        let upper = (0..n).rev().flat_map(|r| (r + 1..n).rev().map(move |c| (r, c))).filter(is).map(off);
        let (lower, upper): (Vec<Off>, Vec<Off>) = (lower.collect(), upper.collect());
        let place = |o: &Off| u32::from(o.row) * n as u32 + u32::from(o.column);
        let diagonal = (0..n as u32).map(|k| k * n as u32 + k);
        let places = lower.iter().chain(&upper).map(place).chain(diagonal).collect();
        let mut beyond: Vec<(usize, usize)> = written.iter().copied().filter(|(r, _)| n <= *r).collect();
        beyond.sort_unstable();
        beyond.dedup();
        let last = beyond.last().map_or(0, |(row, _)| *row);
        assert!(last < MOST, "row {last} is beyond {MOST}");
        let beyond: Vec<Off> = beyond.into_iter().map(off).collect();
        let [lower_rows, upper_rows, beyond_rows] = [&lower, &upper, &beyond].map(|offs| Run::all(offs));
        let mut plan =
            Self { n, places, lower, lower_rows, upper, upper_rows, beyond, beyond_rows, ..Self::default() };
        plan.list_elimination();
        plan
    }

    fn list_elimination(&mut self) {
        let n = self.n;
        // Entry at a place, counted from 1; 0 is none.
        let mut entry = vec![0_u32; n * n];
        for (i, place) in self.places.iter().enumerate() {
            entry[*place as usize] = i as u32 + 1;
        }
        self.starts.push(0);
        for k in 0..n {
            for i in (k + 1..n).filter(|i| entry[i * n + k] != 0) {
                let first = self.changes.len() as u32;
                for j in k + 1..n {
                    let (source, target) = (entry[k * n + j], entry[i * n + j]);
                    if source != 0 && target != 0 {
                        self.changes.push(Change { target: target - 1, source: source - 1 });
                    }
                }
                let last = self.changes.len() as u32;
                self.below.push(Below { entry: entry[i * n + k] - 1, first, last });
            }
            self.starts.push(self.below.len() as u32);
        }
    }

    /// Number of the entry at (row, column), if it is kept.
    pub(crate) fn entry(&self, row: usize, column: usize) -> Option<u32> {
        let place = (row * self.n + column) as u32;
        self.places.iter().position(|p| *p == place).map(|i| i as u32)
    }

    /// Number of the diagonal entry of row `k`.
    pub(crate) fn diagonal(&self, k: usize) -> usize {
        self.lower.len() + self.upper.len() + k
    }

    /// Number of entries that are eliminated.
    pub(crate) fn n_entries(&self) -> usize {
        self.places.len()
    }

    /// Number of all entries, those in rows beyond n included.
    pub(crate) fn n_written(&self) -> usize {
        self.places.len() + self.beyond.len()
    }

    /// Row and column of an entry.
    pub(crate) fn place(&self, entry: usize) -> (usize, usize) {
        self.places.get(entry).map_or_else(
            || {
                let Off { row, column } = self.beyond[entry - self.places.len()];
                (row.into(), column.into())
            },
            |p| (*p as usize / self.n, *p as usize % self.n),
        )
    }

    /// Entries of `shift`·I − J, from the entries of J.
    pub(crate) fn shifted<R: Real>(&self, shift: R, jacobian: &[R], entries: &mut Vec<R>) {
        entries.clear();
        entries.extend(jacobian[..self.n_entries()].iter().map(|j| -*j));
        for d in &mut entries[self.lower.len() + self.upper.len()..] {
            *d += shift;
        }
    }

    /// L and U in place, the rows of U divided by their pivots, the pivots inverted. Says where every pivot was
    /// positive; elsewhere nothing is to be made of the numbers.
    pub(crate) fn factor<R: Real>(&self, a: &mut [R]) -> R::Mask {
        let first_diagonal = self.lower.len() + self.upper.len();
        let mut positive = R::Mask::all(true);
        for (k, range) in self.starts.windows(2).enumerate() {
            let pivot = a[first_diagonal + k];
            positive = positive & R::all(0.0).below(pivot);
            if !positive.any() {
                return positive;
            }
            let inverse = R::all(1.0) / pivot;
            a[first_diagonal + k] = inverse;
            for b in &self.below[range[0] as usize..range[1] as usize] {
                let l = a[b.entry as usize] * inverse;
                a[b.entry as usize] = l;
                for c in &self.changes[b.first as usize..b.last as usize] {
                    let change = l * a[c.source as usize];
                    a[c.target as usize] -= change;
                }
            }
        }
        let (off, inverse) = a.split_at_mut(first_diagonal);
        for (u, o) in off[self.lower.len()..].iter_mut().zip(&self.upper) {
            *u *= inverse[usize::from(o.row)];
        }
        positive
    }

    /// Adds to the rows beyond n of `x` what the slopes there make of the solution before them.
    pub(crate) fn add_beyond<R: Real>(&self, jacobian: &[R], x: &mut Column<R>) {
        let mut both = self.beyond.iter().zip(&jacobian[self.n_entries()..]);
        for run in &self.beyond_rows {
            let mut sum = x[usize::from(run.row)];
            for (o, j) in both.by_ref().take(usize::from(run.len)) {
                sum += *j * x[usize::from(o.column)];
            }
            x[usize::from(run.row)] = sum;
        }
    }

    /// Solves L U x = b in place.
    pub(crate) fn solve<R: Real>(&self, lu: &[R], x: &mut Column<R>) {
        let (lower, rest) = lu.split_at(self.lower.len());
        let (upper, inverse) = rest.split_at(self.upper.len());
        subtract(&self.lower_rows, &self.lower, lower, x);
        for (x, d) in x.iter_mut().zip(inverse) {
            *x *= *d;
        }
        subtract(&self.upper_rows, &self.upper, upper, x);
    }
}

/// Row by row, so that a row's sum stays in a register: takes each entry times the unknown it multiplies.
#[inline]
fn subtract<R: Real>(rows: &[Run], offs: &[Off], entries: &[R], x: &mut Column<R>) {
    let mut both = offs.iter().zip(entries);
    for run in rows {
        let mut sum = x[usize::from(run.row)];
        for (o, e) in both.by_ref().take(usize::from(run.len)) {
            sum -= *e * x[usize::from(o.column)];
        }
        x[usize::from(run.row)] = sum;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inv_what_was_multiplied_is_solved() {
        // A small matrix with gaps and fill-in: dominant diagonal, a few entries off it.
        let n = 5;
        let off = [
            (0, 3, -1.0),
            (3, 0, -0.5),
            (1, 4, -2.0),
            (4, 1, -1.0),
            (2, 3, -1.5),
            (3, 2, -0.5),
            (4, 0, -1.0),
        ];
        let mut dense = vec![0.0; n * n];
        for k in 0..n {
            dense[k * n + k] = -(1.0 + k as f64);
        }
        for (r, c, v) in off {
            dense[r * n + c] = -v;
        }
        let written: Vec<(usize, usize)> = off.iter().map(|(r, c, _)| (*r, *c)).collect();
        let plan = Plan::of(n, &written);
        let (shift, x) = (4.0, [1.0, -2.0, 3.0, 0.5, 7.0]);
        let mut b = [0.0; MOST];
        for r in 0..n {
            b[r] = shift * x[r] - (0..n).map(|c| dense[r * n + c] * x[c]).sum::<f64>();
        }
        let mut a = Vec::new();
        let entries: Vec<f64> =
            (0..plan.n_written()).map(|i| plan.place(i)).map(|(r, c)| dense[r * n + c]).collect();
        plan.shifted(shift, &entries, &mut a);
        assert!(plan.factor(&mut a));
        plan.solve(&a, &mut b);
        for (got, want) in b.iter().zip(x) {
            assert!((got - want).abs() < 1e-13, "{got} against {want}");
        }
    }
}
