//! Sparse elimination with a plan made once per compiled circuit.
//!
//! The plan lists, in order, which entry is changed by which two others, so that the numbers run through
//! without a search. The matrix has a dominant diagonal in the order of the layout, so no rows are
//! exchanged; a pivot that is not positive tells the caller to take a smaller step.

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

/// An entry off the diagonal with the unknown it multiplies and the row it belongs to.
#[derive(Clone, Copy, Debug)]
struct Off {
    entry: u32,
    row: u16,
    column: u16,
}

/// Where the entries of a sparse matrix are kept, and how it is eliminated.
#[derive(Clone, Debug, Default)]
pub(crate) struct Plan {
    n: usize,
    /// Entries of the factors, fill-in included: row-major place in an n × n matrix, sorted. An entry's
    /// number is its place in this list.
    places: Vec<u32>,
    /// Places that the Jacobian writes, rows beyond n included, sorted.
    pub(crate) written: Vec<u32>,
    /// Number of each diagonal entry.
    diagonal: Vec<u32>,
    /// Per pivot, where its `below` begin; one more at the end.
    starts: Vec<u32>,
    below: Vec<Below>,
    changes: Vec<Change>,
    /// Entries of L, column by column.
    lower: Vec<Off>,
    /// Entries of U above the diagonal, row by row from the last; per row its range.
    upper: Vec<Off>,
    upper_starts: Vec<u32>,
}

impl Plan {
    /// From the places (row, column) that the Jacobian writes; rows at or beyond `n` are ignored.
    pub(crate) fn of(n: usize, written: &[(usize, usize)]) -> Self {
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
        let places: Vec<u32> = (0..n * n).filter(|p| filled[*p]).map(|p| p as u32).collect();
        let mut written: Vec<u32> = written.iter().map(|(r, c)| (r * n + c) as u32).collect();
        written.sort_unstable();
        written.dedup();
        let mut plan = Self { n, places, written, ..Self::default() };
        plan.diagonal = (0..n).filter_map(|k| plan.entry(k, k)).collect();
        plan.list_elimination();
        plan.list_upper();
        plan
    }

    fn list_elimination(&mut self) {
        let n = self.n;
        self.starts.push(0);
        for k in 0..n {
            for i in k + 1..n {
                let Some(entry) = self.entry(i, k) else { continue };
                let first = self.changes.len() as u32;
                for j in k + 1..n {
                    if let (Some(source), Some(target)) = (self.entry(k, j), self.entry(i, j)) {
                        self.changes.push(Change { target, source });
                    }
                }
                self.below.push(Below { entry, first, last: self.changes.len() as u32 });
                self.lower.push(Off { entry, row: i as u16, column: k as u16 });
            }
            self.starts.push(self.below.len() as u32);
        }
    }

    fn list_upper(&mut self) {
        let n = self.n;
        self.upper_starts.push(0);
        for k in (0..n).rev() {
            for j in k + 1..n {
                if let Some(entry) = self.entry(k, j) {
                    self.upper.push(Off { entry, row: k as u16, column: j as u16 });
                }
            }
            self.upper_starts.push(self.upper.len() as u32);
        }
    }

    /// Number of the entry at (row, column), if it is kept.
    pub(crate) fn entry(&self, row: usize, column: usize) -> Option<u32> {
        self.places.binary_search(&((row * self.n + column) as u32)).ok().map(|i| i as u32)
    }

    /// Number of the diagonal entry of row `k`.
    pub(crate) fn diagonal(&self, k: usize) -> usize {
        self.diagonal[k] as usize
    }

    /// Number of entries kept.
    pub(crate) fn n_entries(&self) -> usize {
        self.places.len()
    }

    /// Entries of `shift`·I − J, from a row-major J of n columns.
    pub(crate) fn shifted(&self, shift: f64, jacobian: &[f64], entries: &mut Vec<f64>) {
        entries.clear();
        entries.extend(self.places.iter().map(|p| -jacobian[*p as usize]));
        for d in &self.diagonal {
            entries[*d as usize] += shift;
        }
    }

    /// L and U in place, the pivots inverted; `false` when a pivot is not positive.
    pub(crate) fn factor(&self, a: &mut [f64]) -> bool {
        for (k, d) in self.diagonal.iter().enumerate() {
            let pivot = a[*d as usize];
            if pivot.is_nan() || pivot <= 0.0 {
                return false;
            }
            let inverse = 1.0 / pivot;
            a[*d as usize] = inverse;
            for b in &self.below[self.starts[k] as usize..self.starts[k + 1] as usize] {
                let l = a[b.entry as usize] * inverse;
                a[b.entry as usize] = l;
                for c in &self.changes[b.first as usize..b.last as usize] {
                    a[c.target as usize] -= l * a[c.source as usize];
                }
            }
        }
        true
    }

    /// Solves L U x = b in place.
    pub(crate) fn solve(&self, lu: &[f64], x: &mut [f64]) {
        for l in &self.lower {
            x[l.row as usize] -= lu[l.entry as usize] * x[l.column as usize];
        }
        for (back, k) in (0..self.n).rev().enumerate() {
            let mut s = x[k];
            for u in &self.upper[self.upper_starts[back] as usize..self.upper_starts[back + 1] as usize] {
                s -= lu[u.entry as usize] * x[u.column as usize];
            }
            x[k] = s * lu[self.diagonal[k] as usize];
        }
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
        let mut b: Vec<f64> =
            (0..n).map(|r| shift * x[r] - (0..n).map(|c| dense[r * n + c] * x[c]).sum::<f64>()).collect();
        let mut a = Vec::new();
        plan.shifted(shift, &dense, &mut a);
        assert!(plan.factor(&mut a));
        plan.solve(&a, &mut b);
        for (got, want) in b.iter().zip(x) {
            assert!((got - want).abs() < 1e-13, "{got} against {want}");
        }
    }
}
