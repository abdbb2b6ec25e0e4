//! Sparse elimination with a plan made once per compiled circuit.
//!
//! The matrix I/(hγ) − J has a dominant diagonal in the order of the layout, so no rows are exchanged;
//! a pivot that is not positive tells the caller to take a smaller step.

/// Dense storage with a known pattern.
#[derive(Clone, Debug, Default)]
pub(crate) struct Plan {
    n: usize,
    /// Per column k: the rows i > k that hold something there after fill-in.
    below: Lists,
    /// Per row k: the columns j > k that hold something after fill-in.
    right: Lists,
    /// Places of the factors, fill-in included: row-major index in an n × n matrix, sorted.
    pub(crate) places: Vec<u32>,
    /// Places that the Jacobian writes, rows beyond n included, sorted.
    pub(crate) written: Vec<u32>,
}

/// Lists of indices, one behind the other.
#[derive(Clone, Debug, Default)]
struct Lists {
    start: Vec<u32>,
    items: Vec<u16>,
}

impl Lists {
    fn push(&mut self, items: impl Iterator<Item = usize>) {
        if self.start.is_empty() {
            self.start.push(0);
        }
        self.items.extend(items.map(|i| i as u16));
        self.start.push(self.items.len() as u32);
    }

    fn of(&self, k: usize) -> &[u16] {
        &self.items[self.start[k] as usize..self.start[k + 1] as usize]
    }
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
        let (mut below, mut right) = (Lists::default(), Lists::default());
        for k in 0..n {
            below.push((k + 1..n).filter(|i| filled[i * n + k]));
            right.push((k + 1..n).filter(|j| filled[k * n + j]));
            for &i in below.of(k) {
                for &j in right.of(k) {
                    filled[i as usize * n + j as usize] = true;
                }
            }
        }
        let places = (0..n * n).filter(|p| filled[*p]).map(|p| p as u32).collect();
        let mut written: Vec<u32> = written.iter().map(|(r, c)| (r * n + c) as u32).collect();
        written.sort_unstable();
        written.dedup();
        Self { n, below, right, places, written }
    }

    /// L and U in place; `false` when a pivot is not positive.
    pub(crate) fn factor(&self, a: &mut [f64]) -> bool {
        let n = self.n;
        for k in 0..n {
            let pivot = a[k * n + k];
            if pivot.is_nan() || pivot <= 0.0 {
                return false;
            }
            let inverse = 1.0 / pivot;
            for &i in self.below.of(k) {
                let row = i as usize * n;
                let l = a[row + k] * inverse;
                a[row + k] = l;
                for &j in self.right.of(k) {
                    a[row + j as usize] -= l * a[k * n + j as usize];
                }
            }
        }
        true
    }

    /// Solves L U x = b in place.
    pub(crate) fn solve(&self, lu: &[f64], x: &mut [f64]) {
        let n = self.n;
        for k in 0..n {
            let xk = x[k];
            if xk == 0.0 {
                continue;
            }
            for &i in self.below.of(k) {
                x[i as usize] -= lu[i as usize * n + k] * xk;
            }
        }
        for k in (0..n).rev() {
            let mut s = x[k];
            for &j in self.right.of(k) {
                s -= lu[k * n + j as usize] * x[j as usize];
            }
            x[k] = s / lu[k * n + k];
        }
    }
}
