//! Two faults at once, where no single one explains what was noted: something else foresaw one of the notes [`SURPRISE`]
//! times better than what is believed in the end, before the finding or after all notes.
//!
//! There are hundreds of pairs, too many to be run. Which ones are worth it is read off the faults by themselves: a pair is
//! given, note by note, the better of what its two faults foresee, each at the severity at which that is most. That is more
//! than it can truly foresee, so that the [`TRIED`] pairs that come out best are the ones that could matter; their cars do the
//! whole attempt, and the belief is computed anew with them. What they have before the complaint is
//! [`super::hypotheses::PAIRS`].

use crate::infer::chain::Chain;
use crate::infer::draws::DRAWS;
use crate::infer::guests::Asked;
use crate::infer::hypotheses::{Hypotheses, Hypothesis};
use crate::infer::numeric::ln;
use crate::infer::run::{Player, Run, first_cars};

/// A note that something else foresaw so many times better than what is believed was not explained by it.
const SURPRISE: f64 = 20.0;
/// Pairs that are tried.
const TRIED: usize = 24;

/// What one fault by itself foresees: per node of severity, natural logs of the chance of the complaint and of each note,
/// whatever was noted before.
type Foreseen = Vec<Vec<f64>>;

/// Two faults with their weight before the complaint.
type Weighed = ((u16, u16), f64);

/// A pair that might be worth trying.
struct Candidate {
    /// It is what is true.
    is_true: bool,
    /// Natural log of what it could have of the belief at most, up to what is common to all.
    most: f64,
    pair: Weighed,
}

impl Run<'_> {
    /// Whether no single fault explains what was noted; or whether the job hides several, whose readings must be measured
    /// against what is true.
    pub(super) fn asks_for_pairs(&self) -> bool {
        let lock = self.course.lock();
        let before = self.taken.iter().filter(|note| self.course.notes[**note].deed < lock).count();
        let unexplained = [before, self.taken.len()]
            .into_iter()
            .any(|notes| ln(SURPRISE) < self.table.surprise(&self.path.beliefs[notes], notes));
        unexplained || 1 < self.course.faulty_at_start.len()
    }

    /// Lays out the pairs that could matter, lets their cars do what was done, and looks at the belief anew.
    pub(super) fn pair_up(&mut self) {
        let standing: Vec<usize> =
            (0..self.players.len()).filter(|h| self.players[*h].stands.is_some()).collect();
        self.let_go_on(&standing);
        let Some(last) = self.taken.last().copied() else { return };
        let pairs = self.worth_trying();
        let hypothesis = |((a, b), _): &Weighed| Hypothesis::Pair(*a, *b);
        let cars = 0..DRAWS * self.hypotheses.times;
        let asked: Vec<Vec<Asked>> =
            pairs.iter().map(|pair| first_cars(hypothesis(pair), cars.clone())).collect();
        let mut guests = self.host.bring_in(&asked.concat()).into_iter();
        let first = self.players.len();
        for (pair, asked) in pairs.iter().zip(&asked) {
            let guests: Vec<_> = guests.by_ref().take(asked.len()).collect();
            if !guests.is_empty() {
                self.hypotheses.pair(&self.job.car, pair.0, pair.1);
                self.players.push(Player { hypothesis: hypothesis(pair), guests, stands: None });
            }
        }
        let new: Vec<usize> = (first..self.players.len()).collect();
        self.table.n_classes = self.hypotheses.classes.len();
        self.advance(&new, self.course.notes[last].deed);
        for h in new {
            let view = self.view(h);
            self.table.views.push(view);
            self.catch_up(h, 0);
        }
        self.look();
    }

    /// The pairs that could matter most, with their weights before the complaint; those of what is true among them.
    fn worth_trying(&self) -> Vec<Weighed> {
        let mut foreseen: Vec<Option<Foreseen>> = vec![None; self.job.car.faults.len()];
        for (h, entry) in self.hypotheses.list.iter().enumerate() {
            if let Some(fault) = entry.fault() {
                foreseen[usize::from(fault)] = Some(self.foreseen(h));
            }
        }
        let unit = |fault: u16| self.job.car.faults[usize::from(fault)].unit;
        let truth = &self.course.faulty_at_start;
        let is_true = |(a, b): (u16, u16)| truth.contains(&unit(a)) && truth.contains(&unit(b));
        let mut all: Vec<Candidate> = Hypotheses::pairs(&self.job.car)
            .into_iter()
            .filter_map(|(pair, prior)| {
                let of = |fault: u16| foreseen[usize::from(fault)].as_ref();
                let most = ln(prior) + together(of(pair.0)?, of(pair.1)?);
                Some(Candidate { is_true: is_true(pair), most, pair: (pair, prior) })
            })
            .collect();
        // The sort is stable: equals stay in the order of the car file.
        all.sort_by(|a, b| b.is_true.cmp(&a.is_true).then(b.most.total_cmp(&a.most)));
        all.into_iter().take(TRIED).map(|candidate| candidate.pair).collect()
    }

    /// What a fault by itself foresees.
    fn foreseen(&self, h: usize) -> Foreseen {
        let view = &self.table.views[h];
        let Some(forecast) = &view.forecast else { return Vec::new() };
        let prior = ln(self.hypotheses.list[h].prior / view.start.len() as f64);
        let of = |(node, start): (usize, &f64)| {
            let by_itself = self.table.items.iter().enumerate().take(forecast.notes.len());
            let notes = by_itself.map(|(note, item)| {
                let anywhere = item.marginal.chance(item.noted.seen);
                Chain::new(forecast, node).take(forecast, note, &item.noted, anywhere)
            });
            std::iter::once(start - prior).chain(notes).collect()
        };
        view.start.iter().enumerate().map(of).collect()
    }
}

/// The most that two faults could foresee together, natural log.
fn together(a: &Foreseen, b: &Foreseen) -> f64 {
    let of = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a.max(*b)).sum::<f64>();
    let all = a.iter().flat_map(|a| b.iter().map(move |b| of(a, b)));
    all.fold(f64::NEG_INFINITY, f64::max)
}
