//! Sparse elimination with a plan made once per compiled circuit.
//!
//! The plan lists, in order, which entry is changed by which two others, so that the numbers run through
//! without a search; entries are numbered in the order in which a solve uses them. The matrix has a dominant
//! diagonal in the order of the layout, so no rows are exchanged; a pivot that is not positive tells the
//! caller to take a smaller step. What runs through the numbers is not inlined into a step: its loops then have the
//! registers to themselves.

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

/// Where which entry of a plan stands.
#[derive(Clone, Debug)]
pub(crate) struct EntriesAt {
    n: usize,
    at: Vec<u32>,
}

impl EntriesAt {
    const NONE: u32 = u32::MAX;
    const FILLED: u32 = u32::MAX - 1;

    /// Number of the entry at (row, column), if it is kept.
    pub(crate) fn entry(&self, row: usize, column: usize) -> Option<u32> {
        Some(self.at[row * self.n + column]).filter(|entry| *entry != Self::NONE)
    }
}

impl Plan {
    /// From the places (row, column) that the Jacobian writes; rows at or beyond `n` take no part in the
    /// elimination. Also tells the entry at each place. `None` for more than [`MOST`] rows.
    pub(crate) fn of(n: usize, written: &[(usize, usize)]) -> Option<(Self, EntriesAt)> {
        let rows = written.iter().map(|(row, _)| row + 1).max().unwrap_or(0).max(n);
        if MOST < rows {
            return None;
        }
        // Row by row; what is filled has its entry's number put in below.
        let mut at = vec![EntriesAt::NONE; rows * n];
        for place in written.iter().map(|(r, c)| r * n + c).chain((0..n).map(|k| k * n + k)) {
            at[place] = EntriesAt::FILLED;
        }
        let mut right = Vec::with_capacity(n);
        for k in 0..n {
            right.clear();
            right.extend((k + 1..n).filter(|j| at[k * n + j] != EntriesAt::NONE));
            for row in at[..n * n].chunks_exact_mut(n).skip(k + 1).filter(|row| row[k] != EntriesAt::NONE) {
                for j in &right {
                    row[*j] = EntriesAt::FILLED;
                }
            }
        }
        let mut n_entries = 0;
        let mut take = |offs: &mut Vec<Off>, row: usize, column: usize| {
            let place = &mut at[row * n + column];
            if *place != EntriesAt::NONE {
                *place = n_entries;
                n_entries += 1;
                offs.push(Off { row: row as u8, column: column as u8 });
            }
        };
        let [mut lower, mut upper, mut diagonal, mut beyond] = [const { Vec::new() }; 4];
        for row in 0..n {
            (0..row).for_each(|column| take(&mut lower, row, column));
        }
        for row in (0..n).rev() {
            (row + 1..n).rev().for_each(|column| take(&mut upper, row, column));
        }
        (0..n).for_each(|k| take(&mut diagonal, k, k));
        for row in n..rows {
            (0..n).for_each(|column| take(&mut beyond, row, column));
        }
        let [lower_rows, upper_rows, beyond_rows] = [&lower, &upper, &beyond].map(|offs| Run::all(offs));
        let mut plan =
            Self { n, lower, lower_rows, upper, upper_rows, beyond, beyond_rows, ..Self::default() };
        plan.list_elimination(&at);
        Some((plan, EntriesAt { n, at }))
    }

    fn list_elimination(&mut self, at: &[u32]) {
        let n = self.n;
        self.starts.push(0);
        let mut right = Vec::with_capacity(n);
        for k in 0..n {
            right.clear();
            right.extend((k + 1..n).filter(|j| at[k * n + j] != EntriesAt::NONE));
            for row in at[..n * n].chunks_exact(n).skip(k + 1).filter(|row| row[k] != EntriesAt::NONE) {
                let first = self.changes.len() as u32;
                self.changes.extend(right.iter().map(|j| Change { target: row[*j], source: at[k * n + j] }));
                let last = self.changes.len() as u32;
                self.below.push(Below { entry: row[k], first, last });
            }
            self.starts.push(self.below.len() as u32);
        }
    }

    /// Number of the diagonal entry of row `k`.
    pub(crate) fn diagonal(&self, k: usize) -> usize {
        self.lower.len() + self.upper.len() + k
    }

    /// Number of entries that are eliminated.
    pub(crate) fn n_entries(&self) -> usize {
        self.diagonal(self.n)
    }

    /// Number of all entries, those in rows beyond n included.
    pub(crate) fn n_written(&self) -> usize {
        self.n_entries() + self.beyond.len()
    }

    /// Row and column of an entry.
    #[cfg(test)]
    pub(crate) fn place(&self, entry: usize) -> (usize, usize) {
        let first_diagonal = self.diagonal(0);
        let offs = self.lower.iter().chain(&self.upper);
        let off = match entry.checked_sub(first_diagonal) {
            None => offs.copied().nth(entry),
            Some(k) if k < self.n => return (k, k),
            Some(k) => self.beyond.get(k - self.n).copied(),
        };
        off.map_or_else(|| panic!("the plan has no entry {entry}"), |o| (o.row.into(), o.column.into()))
    }

    /// Entries of J become those of `shift`·I − J.
    #[inline(always)]
    pub(crate) fn shift<R: Real>(&self, shift: R, entries: &mut [R]) {
        for j in &mut *entries {
            *j = -*j;
        }
        for d in &mut entries[self.lower.len() + self.upper.len()..] {
            *d += shift;
        }
    }

    /// L and U in place, the rows of U divided by their pivots, the pivots inverted. Says where every pivot was
    /// positive; elsewhere nothing is to be made of the numbers.
    #[inline(never)]
    pub(crate) fn factor<R: Real>(&self, a: &mut [R]) -> R::Mask {
        R::within(
            #[inline(always)]
            || {
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
            },
        )
    }

    /// Adds to the rows beyond n of `x` what the slopes there make of the solution before them.
    #[inline(never)]
    pub(crate) fn add_beyond<R: Real>(&self, entries: &[R], x: &mut Column<R>) {
        R::within(
            #[inline(always)]
            || {
                row_by_row::<MORE, R>(&self.beyond_rows, &self.beyond, entries, x);
            },
        );
    }

    /// Solves L U x = b in place.
    #[inline(never)]
    pub(crate) fn solve<R: Real>(&self, lu: &[R], x: &mut Column<R>) {
        R::within(
            #[inline(always)]
            || {
                let (lower, rest) = lu.split_at(self.lower.len());
                let (upper, inverse) = rest.split_at(self.upper.len());
                row_by_row::<LESS, R>(&self.lower_rows, &self.lower, lower, x);
                for (x, d) in x.iter_mut().zip(inverse) {
                    *x *= *d;
                }
                row_by_row::<LESS, R>(&self.upper_rows, &self.upper, upper, x);
            },
        );
    }
}

/// Products are added.
const MORE: bool = true;
/// Products are taken away.
const LESS: bool = false;

/// Row by row, so that a row's sum stays in a register: each entry times the unknown it multiplies is put to it.
///
/// Rows are short: they are taken by fours and what is left at once, which costs less than to count entry by entry.
#[inline(always)]
fn row_by_row<const SIGN: bool, R: Real>(
    rows: &[Run],
    mut offs: &[Off],
    mut entries: &[R],
    x: &mut Column<R>,
) {
    for run in rows {
        let mut sum = x[usize::from(run.row)];
        for _ in 0..run.len / 4 {
            take::<4, SIGN, R>(&mut offs, &mut entries, x, &mut sum);
        }
        match run.len % 4 {
            1 => take::<1, SIGN, R>(&mut offs, &mut entries, x, &mut sum),
            2 => take::<2, SIGN, R>(&mut offs, &mut entries, x, &mut sum),
            3 => take::<3, SIGN, R>(&mut offs, &mut entries, x, &mut sum),
            _ => {}
        }
        x[usize::from(run.row)] = sum;
    }
}

/// The next `N` entries, one after the other.
#[inline(always)]
fn take<const N: usize, const SIGN: bool, R: Real>(
    offs: &mut &[Off],
    entries: &mut &[R],
    x: &Column<R>,
    sum: &mut R,
) {
    if let Some((here, after)) = offs.split_first_chunk::<N>()
        && let Some((of_row, rest)) = entries.split_first_chunk::<N>()
    {
        for (o, e) in here.iter().zip(of_row) {
            let part = *e * x[usize::from(o.column)];
            if SIGN == MORE {
                *sum += part;
            } else {
                *sum -= part;
            }
        }
        (*offs, *entries) = (after, rest);
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
        let (plan, _) = Plan::of(n, &written).unwrap();
        let (shift, x) = (4.0, [1.0, -2.0, 3.0, 0.5, 7.0]);
        let mut b = [0.0; MOST];
        for r in 0..n {
            b[r] = shift * x[r] - (0..n).map(|c| dense[r * n + c] * x[c]).sum::<f64>();
        }
        let mut a: Vec<f64> =
            (0..plan.n_written()).map(|i| plan.place(i)).map(|(r, c)| dense[r * n + c]).collect();
        plan.shift(shift, &mut a);
        assert!(plan.factor(&mut a));
        plan.solve(&a, &mut b);
        for (got, want) in b.iter().zip(x) {
            assert!((got - want).abs() < 1e-13, "{got} against {want}");
        }
    }
}
