//! A hypothesis that has heard the complaint, and nothing else yet.

use crate::infer::complaint::{self, MISHEARD};
use crate::infer::forecast::Forecast;
use crate::infer::hypotheses::{Entry, Hypothesis};
use crate::infer::numeric::ln;
use crate::infer::table::View;

/// So many cars all severities weigh beside those nearby when the complaint is heard.
const OF_ALL: f64 = 0.5;
/// The same of cars that nobody has seen, half of which complain.
const UNSEEN: f64 = 0.04;

/// The hypothesis with the cars that were drawn for it: whether each shows the symptom, and where in its range its severity
/// lies (no matter for sound cars). *Other* has no cars.
#[must_use]
pub fn heard(entry: Entry, shows: &[bool], at: &[f64]) -> View {
    let prior = entry.prior / entry.cells() as f64;
    let forecast = match entry.hypothesis {
        Hypothesis::Other => {
            let start = vec![ln(prior) + complaint::log_likelihood(None)];
            return View::new(entry.class, start, None);
        }
        Hypothesis::Inside => Forecast::of_sound(shows.len()),
        Hypothesis::Fault(_) | Hypothesis::Pair(..) => Forecast::of_fault(at.to_vec()),
    };
    let shows: Vec<f64> = shows.iter().map(|shows| f64::from(u8::from(*shows))).collect();
    let mean = shows.iter().sum::<f64>() / shows.len() as f64;
    let start = forecast.near.iter().map(|near| {
        let heard: f64 = near.iter().zip(&shows).map(|(w, s)| w * s).sum::<f64>();
        let all = near.iter().sum::<f64>() + OF_ALL + UNSEEN;
        let p = (heard + OF_ALL * mean + 0.5 * UNSEEN) / all;
        ln(prior) + ln((1.0 - MISHEARD) * p + MISHEARD * 0.5)
    });
    View::new(entry.class, start.collect(), Some(forecast))
}
