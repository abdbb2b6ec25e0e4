//! Workshops that wait for time to pass, side by side.
//!
//! An action is a coroutine: where time passes it hands its circuit to an [`Exchange`] and waits until it comes back.
//! Alone there is no exchange: the circuit runs at once, and nothing ever waits. [`side_by_side`] plays many workshops
//! on one thread and lets an [`Ensemble`] step the circuits they have handed out. Each takes the steps it would take
//! alone, so nothing else knows about it.

use std::cell::RefCell;
use std::ops::{Deref, DerefMut};
use std::pin::{Pin, pin};
use std::task::{Context, Poll, Waker};

use crate::circuit::ensemble::{Ensemble, Errand};
use crate::circuit::{Circuit, Pace};
use crate::units::Tick;

/// Where one workshop hands its circuit out and takes it back.
#[derive(Debug, Default)]
pub struct Exchange {
    out: RefCell<Option<Errand<Box<Circuit>>>>,
    back: RefCell<Option<Box<Circuit>>>,
}

/// The exchange that is used; alone without.
pub type Beside<'a> = Option<&'a Exchange>;

/// Where a circuit stands that may run beside others. It is away only while its owner waits for it, and nobody can ask
/// then.
#[derive(Clone, Debug)]
pub struct Seat(Option<Box<Circuit>>);

impl Seat {
    /// A seat for a circuit.
    #[must_use]
    pub fn of(circuit: Circuit) -> Self {
        Self(Some(Box::new(circuit)))
    }

    /// A copy of the circuit.
    pub(super) fn copy(&self) -> Circuit {
        Circuit::clone(self)
    }

    /// Hands the circuit out for an errand and waits until it is back.
    pub(super) async fn run_abroad(
        &mut self,
        exchange: &Exchange,
        to: Tick,
        pace: Pace,
        pause: Tick,
        on_event: bool,
    ) {
        if let Some(circuit) = self.0.take() {
            exchange.out.replace(Some(Errand { circuit, to, pace, pause, on_event }));
        }
        let back = std::future::poll_fn(|_| exchange.back.take().map_or(Poll::Pending, Poll::Ready)).await;
        self.0 = Some(back);
    }

    /// One step of its own length, at most to `to`, which must lie ahead.
    pub async fn step_timed(&mut self, to: Tick, beside: Beside<'_>) {
        let next = self.tick().plus(1);
        match beside {
            Some(exchange) => self.run_abroad(exchange, to, Pace::Timed, next, false).await,
            None => self.step(to, Pace::Timed),
        }
    }

    /// Runs to exactly `to`, unless it is there.
    pub async fn run_timed(&mut self, to: Tick, beside: Beside<'_>) {
        match beside {
            Some(exchange) if self.tick() < to => {
                self.run_abroad(exchange, to, Pace::Timed, to, false).await;
            }
            Some(_) => {}
            None => self.run_to(to, Pace::Timed),
        }
    }
}

impl Deref for Seat {
    type Target = Circuit;
    fn deref(&self) -> &Circuit {
        match &self.0 {
            Some(circuit) => circuit,
            None => unreachable!("circuit away"),
        }
    }
}

impl DerefMut for Seat {
    fn deref_mut(&mut self) -> &mut Circuit {
        match &mut self.0 {
            Some(circuit) => circuit,
            None => unreachable!("circuit away"),
        }
    }
}

/// Carries out what waits for nobody, because no exchange was given.
///
/// # Panics
/// When an exchange was given after all.
pub fn at_once<T>(work: impl Future<Output = T>) -> T {
    match pin!(work).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(result) => result,
        Poll::Pending => unreachable!("nothing waits"),
    }
}

/// What is to be done in one workshop.
type Work<'a> = Pin<Box<dyn Future<Output = ()> + 'a>>;

/// Does the work on every item on this thread, the circuits of all of them side by side. `work` must wait for
/// nothing but what the exchange given to it brings back, and send one circuit only: a copy of it gets a round of its own.
pub fn side_by_side<T>(items: impl IntoIterator<Item = T>, work: impl AsyncFn(T, Beside<'_>)) {
    let items: Vec<T> = items.into_iter().collect();
    let exchanges: Vec<Exchange> = items.iter().map(|_| Exchange::default()).collect();
    let work = &work;
    let begin = |(item, exchange)| -> Option<Work<'_>> { Some(Box::pin(work(item, Some(exchange)))) };
    let mut all: Vec<Option<Work<'_>>> = items.into_iter().zip(&exchanges).map(begin).collect();
    let mut ensemble = Ensemble::<Box<Circuit>>::default();
    let mut go_on = |which: usize, ensemble: &mut Ensemble<_>| {
        let Some(work) = &mut all[which] else { return };
        if work.as_mut().poll(&mut Context::from_waker(Waker::noop())).is_ready() {
            all[which] = None;
        }
        if let Some(errand) = exchanges[which].out.take() {
            ensemble.send(which, errand);
        }
    };
    for which in 0..exchanges.len() {
        go_on(which, &mut ensemble);
    }
    while let Some((which, circuit)) = ensemble.next_back() {
        exchanges[which].back.replace(Some(circuit));
        go_on(which, &mut ensemble);
    }
}
