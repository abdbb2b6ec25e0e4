//! Technicians: who does which of the car's tests in which order, and how carefully.

use assess::plan::test::{Kind, Test};
use dice::Dice;

/// A way to work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Technician {
    /// Conditions first, then air, then current; leaves nothing out.
    ByTheBook,
    /// Volts and amperes first, little air.
    ElectricsFirst,
    /// Listens, then looks.
    HissHunter,
    /// Three or four trials in any order, and forgets to undo things.
    Impatient,
    /// Everything twice.
    RepeatsEverything,
    /// Any order, never the conditions, and leaves lines out.
    ForgetsConditions,
    /// Every test there is, conditions first, the others in any order; leaves nothing out. Nobody drawn works so.
    Thorough,
}

impl Technician {
    /// Those who are drawn.
    const DRAWN: [Self; 6] = [
        Self::ByTheBook,
        Self::ElectricsFirst,
        Self::HissHunter,
        Self::Impatient,
        Self::RepeatsEverything,
        Self::ForgetsConditions,
    ];

    /// One of them, each as often.
    pub(crate) fn draw(dice: &mut Dice) -> Self {
        *dice.pick(&Self::DRAWN)
    }

    /// Share of the lines that are left out; notes never are.
    pub(crate) fn leaves_out(self) -> f64 {
        match self {
            Self::ByTheBook | Self::Thorough => 0.0,
            Self::ElectricsFirst | Self::HissHunter | Self::RepeatsEverything => 0.01,
            Self::Impatient | Self::ForgetsConditions => 0.05,
        }
    }

    /// What is tried, in order.
    pub(crate) fn order<'t>(self, tests: &[&'t Test], dice: &mut Dice) -> Vec<&'t Test> {
        let mut of = |kinds: &[Kind]| {
            let mut found: Vec<&Test> = tests.iter().copied().filter(|t| kinds.contains(&t.kind)).collect();
            shuffle(&mut found, dice);
            found
        };
        let (conditions, air) = (of(&[Kind::Condition]), of(&[Kind::Air]));
        let (electric, ear) = (of(&[Kind::Electric]), of(&[Kind::ByEar, Kind::ByEye]));
        let take = |list: &[&'t Test], n: usize| list.iter().take(n).copied().collect::<Vec<_>>();
        let mut order: Vec<&Test> = match self {
            Self::ByTheBook => {
                [take(&conditions, 9), take(&air, 6), take(&electric, 3), take(&ear, 1)].concat()
            }
            Self::ElectricsFirst => [take(&electric, 9), take(&air, 3), take(&conditions, 1)].concat(),
            Self::HissHunter => [take(&ear, 9), take(&air, 3), take(&conditions, 1)].concat(),
            Self::Thorough => {
                let mut others = [air, electric, ear].concat();
                shuffle(&mut others, dice);
                [conditions, others].concat()
            }
            Self::Impatient => {
                let mut any = [take(&air, 9), take(&electric, 9), take(&ear, 9)].concat();
                shuffle(&mut any, dice);
                any.truncate(3 + dice.below(2));
                any
            }
            Self::RepeatsEverything => {
                let once = [take(&conditions, 2), take(&air, 3), take(&electric, 2)].concat();
                once.into_iter().flat_map(|test| [test, test]).collect()
            }
            Self::ForgetsConditions => {
                let mut any = [take(&air, 9), take(&electric, 9), take(&ear, 9)].concat();
                shuffle(&mut any, dice);
                any.truncate(6 + dice.below(6));
                any
            }
        };
        // Nobody does the same in the same order for ever.
        if self == Self::ByTheBook && 3 < order.len() {
            let swapped = 1 + dice.below(order.len() - 2);
            order.swap(swapped, swapped + 1);
        }
        order
    }
}

/// Fisher and Yates.
fn shuffle<T>(list: &mut [T], dice: &mut Dice) {
    for last in (1..list.len()).rev() {
        list.swap(last, dice.below(last + 1));
    }
}
