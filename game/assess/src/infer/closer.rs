//! Which hypotheses go on, and which are worth more cars.
//!
//! **Standing still.** A hypothesis whose share falls below [`STANDS`] is done no further: it keeps its share. What it could
//! have gained since, had it foreseen every note as well as the best cell of all, is reckoned along; as soon as that could
//! make its share [`ROUSED`], its cars go on from where they stood and it is as if it had never stood still.
//!
//! **More cars** go where the belief lies, or lay: a hypothesis that has [`CLOSER`] of it after any note is given [`DRAWS`] more
//! cars. What was likely once and is no more may have fallen for want of cars. (A second round took a third
//! longer; what was calibrated is without it: `docs/calibration.md`.)

use crate::infer::draws::DRAWS;
use crate::infer::guests::Asked;
use crate::infer::run::{Run, Standing, first_cars};
use crate::infer::table::Item;

/// Share below which a hypothesis stands still.
const STANDS: f64 = 3e-4;
/// Share that a hypothesis which stands still must not be able to have.
const ROUSED: f64 = 0.01;
/// Share of the belief that is worth more cars.
const CLOSER: f64 = 0.01;

impl Run<'_> {
    /// Lets hypotheses stand still that have become very unlikely; never the sound cars, which the others are held
    /// against.
    pub(super) fn stand_still(&mut self) {
        let shares = self.shares(self.last());
        let after = self.taken.len();
        for (player, share) in self.players.iter_mut().zip(shares).skip(1) {
            if player.is_on_its_way() && share < STANDS {
                player.stands = Some(Standing { share, after });
            }
        }
    }

    /// Lets hypotheses go on that could have come to matter; whether there were any.
    pub(super) fn rouse(&mut self) -> bool {
        let could = |standing: Standing| {
            let gain: f64 = self.path.could_gain[standing.after..].iter().sum();
            standing.share * sim_core::math::exp(gain)
        };
        let roused: Vec<usize> = self
            .players
            .iter()
            .enumerate()
            .filter(|(_, player)| player.stands.is_some_and(|standing| ROUSED < could(standing)))
            .map(|(h, _)| h)
            .collect();
        self.let_go_on(&roused)
    }

    /// Lets hypotheses go on that stand still; whether there were any.
    pub(super) fn let_go_on(&mut self, which: &[usize]) -> bool {
        let Some(last) = self.taken.last().copied() else { return false };
        self.advance(which, self.course.notes[last].deed);
        for h in which {
            if let Some(standing) = self.players[*h].stands.take() {
                self.catch_up(*h, standing.after);
            }
        }
        if !which.is_empty() {
            self.look();
        }
        !which.is_empty()
    }

    /// Lets a hypothesis take in the notes from number `from` on; its cars have done the deeds.
    pub(super) fn catch_up(&mut self, h: usize, from: usize) {
        for item in from..self.table.items.len() {
            let noted = self.table.items[item].noted.clone();
            self.forecast(&[h], item, &noted);
            if let Some(forecast) = &mut self.table.views[h].forecast {
                let Item { common, of_sound, .. } = &self.table.items[item];
                forecast.draw_towards(common, Some(of_sound));
            }
        }
    }

    /// Gives more cars to the hypotheses in which the belief lies.
    pub(super) fn look_closer(&mut self) {
        let Some(last) = self.taken.last().copied() else { return };
        let shares: Vec<Vec<f64>> = self.path.beliefs.iter().map(|belief| self.shares(belief)).collect();
        let is_close = |h: &usize| shares.iter().skip(1).any(|shares| CLOSER <= shares[*h]);
        let on_its_way = (1..self.players.len()).filter(|h| self.players[*h].is_on_its_way());
        let close: Vec<usize> = on_its_way.filter(is_close).collect();
        let asked: Vec<Vec<Asked>> = close.iter().map(|h| self.more_cars(*h)).collect();
        let mut guests = self.host.bring_in(&asked.concat()).into_iter();
        for (h, asked) in close.iter().zip(&asked) {
            self.players[*h].guests.extend(guests.by_ref().take(asked.len()));
        }
        self.advance(&close, self.course.notes[last].deed);
        for h in close {
            self.table.views[h] = self.view(h);
            self.catch_up(h, 0);
        }
        self.look();
    }

    /// The next cars of a hypothesis.
    fn more_cars(&self, h: usize) -> Vec<Asked> {
        let player = &self.players[h];
        let many = player.guests.len();
        let times = self.hypotheses.times;
        first_cars(player.hypothesis, many..many + DRAWS * times)
    }
}
