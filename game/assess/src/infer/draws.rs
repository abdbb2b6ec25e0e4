//! Draws that fill the range of every unknown evenly: Latin hypercubes of sixteen, one after the other.
//!
//! Each unknown (severity, every tolerance) has its range cut into [`DRAWS`] equal strata; each of a block of sixteen draws
//! takes one of them, every stratum once, in an order of its own (McKay, Beckman and Conover, Technometrics 21, 1979).
//! With some forty unknowns and sixteen draws this covers each unknown better than additive sequences or Halton's, whose
//! high coordinates run side by side at such small numbers. The orders are Fisher–Yates shuffles driven by the published
//! 64-bit mixer of Steele, Lea and Flood (OOPSLA 2014), keyed with the numbers of the unknown and the block: no seed, the
//! same for every hypothesis, attempt and machine. All hypotheses share the draws, so that what differs between them is
//! the fault, not the luck.
//!
//! Within its stratum the first block takes the middle, the next ones ¼, ¾, ⅛, ⅝ … (van der Corput 1935), so that several
//! blocks together cut the range finer.

/// Draws of one block.
pub const DRAWS: usize = 16;

/// A draw by its number, from 0: gives one coordinate after the other, each in (0, 1).
#[derive(Clone, Debug)]
pub struct Draw {
    draw: usize,
    next_unknown: u64,
}

impl Draw {
    /// The coordinates of draw number `draw`.
    #[must_use]
    pub fn new(draw: usize) -> Self {
        Self { draw, next_unknown: 0 }
    }

    /// A coordinate of a draw that no tolerance takes: where the severity of a second fault lies.
    #[must_use]
    pub fn aside(draw: usize) -> f64 {
        /// Far behind the last tolerance of any car.
        const ASIDE: u64 = 1 << 32;
        Self { draw, next_unknown: ASIDE }.next_u()
    }

    /// The next coordinate.
    pub fn next_u(&mut self) -> f64 {
        let block = self.draw / DRAWS;
        let stratum = shuffled(self.next_unknown, block as u64)[self.draw % DRAWS];
        self.next_unknown += 1;
        (stratum as f64 + within(block)) / DRAWS as f64
    }
}

/// Where in their strata the draws of a block lie: ½, ¼, ¾, ⅛, ⅝ …
fn within(block: usize) -> f64 {
    let (mut left, mut place, mut at) = (block + 1, 0.5, 0.0);
    while 0 < left {
        at += place * (left % 2) as f64;
        left /= 2;
        place /= 2.0;
    }
    at
}

/// The order of the strata for one unknown in one block.
fn shuffled(unknown: u64, block: u64) -> [usize; DRAWS] {
    let mut order: [usize; DRAWS] = std::array::from_fn(|i| i);
    // Spread the keys far apart, so that neighbouring unknowns do not read one stream shifted by one.
    let key =
        unknown.wrapping_mul(0xD1B5_4A32_D192_ED03).wrapping_add(block.wrapping_mul(0x8CB9_2BA7_2F3D_8DD7));
    let mut state = mix(key);
    for last in (1..DRAWS).rev() {
        state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        // Top bits times the range: no bias that could matter at sixteen.
        let pick = ((mix(state) >> 32) * (last as u64 + 1)) >> 32;
        order.swap(last, pick as usize);
    }
    order
}

/// Finaliser of SplitMix64.
fn mix(mut z: u64) -> u64 {
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn column(unknown: usize) -> Vec<f64> {
        (0..DRAWS)
            .map(|draw| {
                let mut draw = Draw::new(draw);
                (0..=unknown).map(|_| draw.next_u()).last().unwrap()
            })
            .collect()
    }

    #[test]
    fn inv_every_stratum_once() {
        for unknown in 0..60 {
            let mut u = column(unknown);
            u.sort_by(f64::total_cmp);
            for (k, u) in u.iter().enumerate() {
                assert_eq!(*u, (k as f64 + 0.5) / 16.0);
            }
        }
    }

    /// Two unknowns that ran side by side would be one to the marker.
    #[test]
    fn inv_unknowns_do_not_run_side_by_side() {
        let columns: Vec<Vec<f64>> = (0..60).map(column).collect();
        let mut worst: f64 = 0.0;
        let mut squares = 0.0;
        let mut pairs = 0.0;
        for (i, a) in columns.iter().enumerate() {
            for b in &columns[..i] {
                let r: f64 = a.iter().zip(b).map(|(a, b)| (a - 0.5) * (b - 0.5)).sum::<f64>()
                    / (16.0 * 255.0 / 3072.0);
                worst = worst.max(r.abs());
                squares += r * r;
                pairs += 1.0;
            }
        }
        // Independent shuffles of 16 have a correlation of variance 1/15; five of its σ is 1.29, so the
        // bound on the worst of 1 770 pairs is set where chance reaches it once in some ten tables.
        assert!(worst < 0.92, "{worst}");
        assert!((squares / pairs - 1.0 / 15.0).abs() < 0.01, "{}", squares / pairs);
    }

    #[test]
    fn reg_first_coordinates() {
        let mut draw = Draw::new(0);
        let first: Vec<f64> = (0..6).map(|_| draw.next_u() * 32.0).collect();
        assert_eq!(
            first,
            [27.0, 7.0, 29.0, 15.0, 27.0, 23.0],
            "frozen: a change of these changes every mark"
        );
    }
}
