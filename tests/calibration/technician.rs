//! Technicians: who tries what in which order, and how carefully.

use dice::Dice;

/// What a test is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Deserialize)]
pub(crate) enum Kind {
    /// The day, the fluid, what the customer would see.
    Condition,
    /// Pressures and times.
    Air,
    /// Volts, amperes, ohms.
    Electric,
    /// Heard.
    Ear,
}

/// Something that can be tried, from set-up to undoing it.
#[derive(Clone, Debug, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Trial {
    /// Its name.
    pub(crate) id: String,
    /// What it is about.
    pub(crate) kind: Kind,
    /// Lines of the text bench; `note` writes down what was shown last.
    pub(crate) lines: Vec<String>,
}

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
}

impl Technician {
    /// All of them.
    const ALL: [Self; 6] = [
        Self::ByTheBook,
        Self::ElectricsFirst,
        Self::HissHunter,
        Self::Impatient,
        Self::RepeatsEverything,
        Self::ForgetsConditions,
    ];

    /// One of them, each as often.
    pub(crate) fn draw(dice: &mut Dice) -> Self {
        *dice.pick(&Self::ALL)
    }

    /// Share of the lines that are left out; lines of a note never are.
    fn leaves_out(self) -> f64 {
        match self {
            Self::ByTheBook => 0.0,
            Self::ElectricsFirst | Self::HissHunter | Self::RepeatsEverything => 0.01,
            Self::Impatient | Self::ForgetsConditions => 0.05,
        }
    }

    /// What is tried, in order.
    pub(crate) fn order(self, trials: &[Trial], dice: &mut Dice) -> Vec<Trial> {
        let mut of = |kind: Kind| {
            let mut found: Vec<&Trial> = trials.iter().filter(|trial| trial.kind == kind).collect();
            shuffle(&mut found, dice);
            found
        };
        let (conditions, air) = (of(Kind::Condition), of(Kind::Air));
        let (electric, ear) = (of(Kind::Electric), of(Kind::Ear));
        let take =
            |list: &[&'_ Trial], n: usize| list.iter().take(n).map(|t| (*t).clone()).collect::<Vec<_>>();
        let mut order: Vec<Trial> = match self {
            Self::ByTheBook => {
                [take(&conditions, 9), take(&air, 6), take(&electric, 3), take(&ear, 1)].concat()
            }
            Self::ElectricsFirst => [take(&electric, 9), take(&air, 3), take(&conditions, 1)].concat(),
            Self::HissHunter => [take(&ear, 9), take(&air, 3), take(&conditions, 1)].concat(),
            Self::Impatient => {
                let mut any = [take(&air, 9), take(&electric, 9), take(&ear, 9)].concat();
                shuffle(&mut any, dice);
                any.truncate(3 + dice.below(2));
                any
            }
            Self::RepeatsEverything => {
                let once = [take(&conditions, 2), take(&air, 3), take(&electric, 2)].concat();
                once.into_iter().flat_map(|trial| [trial.clone(), trial]).collect()
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

    /// The lines of what is tried, less those that are left out.
    pub(crate) fn lines(self, order: &[Trial], dice: &mut Dice) -> Vec<String> {
        let left_out = self.leaves_out();
        let lines = order.iter().flat_map(|trial| &trial.lines);
        lines.filter(|line| *line == "note" || left_out <= dice.unit()).cloned().collect()
    }
}

/// Fisher and Yates.
fn shuffle<T>(list: &mut [T], dice: &mut Dice) {
    for last in (1..list.len()).rev() {
        list.swap(last, dice.below(last + 1));
    }
}
