//! Runs the cases of a family: each with a seed of its own, a limit on its time, panics caught and counted.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use dice::Dice;

/// Longest time for one case: many hundred times what it takes, on a busy machine too.
const LIMIT: Duration = Duration::from_secs(60);

/// Memory that no family may need, MB.
const MOST_MB: u64 = 1_500;

/// What became of a case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fate {
    Refused,
    Whole,
}

/// A kind of cases.
pub(super) struct Family {
    pub(super) name: &'static str,
    pub(super) cases: usize,
}

/// The die of a case.
fn dice_of(seed: u128, case: usize) -> Dice {
    Dice::new(seed, case as u128 * 2 + 1)
}

#[derive(Default)]
struct Counts {
    refused: usize,
    whole: usize,
    panics: Vec<usize>,
}

/// A worker with its case in hand.
struct Worker {
    /// Case and when it began.
    in_hand: Arc<Mutex<Option<(usize, Instant)>>>,
    thread: std::thread::JoinHandle<()>,
}

impl Family {
    /// Runs all cases. `prepare` makes what cases share on one thread, and the case itself.
    pub(super) fn run<C: FnMut(&mut Dice) -> Fate>(&self, prepare: impl Fn() -> C + Send + Sync + 'static) {
        let seed = dice::seed();
        let prepare = Arc::new(prepare);
        let next = Arc::new(AtomicUsize::new(0));
        let counts = Arc::new(Mutex::new(Counts::default()));
        reset_peak();
        let start = || self.worker(seed, &prepare, &next, &counts);
        let mut worker = start();
        let mut hangs = Vec::new();
        while !worker.thread.is_finished() {
            std::thread::sleep(Duration::from_millis(20));
            let in_hand = *worker.in_hand.lock().unwrap();
            if let Some((case, _)) = in_hand.filter(|(_, since)| LIMIT < since.elapsed()) {
                // It is left behind; another worker goes on with the next case.
                hangs.push(case);
                assert!(hangs.len() < 4, "{}: cases {hangs:?} hang", self.name);
                worker = start();
            }
        }
        let peak = peak_mb();
        let counts = counts.lock().unwrap();
        println!(
            "{:<12} {:>7} cases {:>7} refused {:>7} whole {:>3} panics {:>3} hangs {:>5} MB at most, seed {seed:x}",
            self.name,
            self.cases,
            counts.refused,
            counts.whole,
            counts.panics.len(),
            hangs.len(),
            peak
        );
        assert!(counts.panics.is_empty(), "{}: cases {:?} panicked", self.name, counts.panics);
        assert!(hangs.is_empty(), "{}: cases {hangs:?} hang", self.name);
        assert_eq!(counts.refused + counts.whole, self.cases);
        assert!(peak < MOST_MB, "{peak} MB");
    }

    fn worker<C: FnMut(&mut Dice) -> Fate>(
        &self,
        seed: u128,
        prepare: &Arc<impl Fn() -> C + Send + Sync + 'static>,
        next: &Arc<AtomicUsize>,
        counts: &Arc<Mutex<Counts>>,
    ) -> Worker {
        let in_hand = Arc::new(Mutex::new(None));
        let (mine, prepare) = (Arc::clone(&in_hand), Arc::clone(prepare));
        let (next, counts, cases) = (Arc::clone(next), Arc::clone(counts), self.cases);
        // `PINHOLE_FUZZ_ONLY=n` does one case alone.
        let only: Option<usize> = std::env::var("PINHOLE_FUZZ_ONLY").ok().and_then(|n| n.parse().ok());
        let thread = std::thread::spawn(move || {
            let mut case = prepare();
            loop {
                let n = next.fetch_add(1, Ordering::Relaxed);
                if cases <= n {
                    return;
                }
                if only.is_some_and(|only| only != n) {
                    counts.lock().unwrap().refused += 1;
                    continue;
                }
                *mine.lock().unwrap() = Some((n, Instant::now()));
                let fate = catch_unwind(AssertUnwindSafe(|| case(&mut dice_of(seed, n))));
                *mine.lock().unwrap() = None;
                let mut counts = counts.lock().unwrap();
                match fate {
                    Ok(Fate::Refused) => counts.refused += 1,
                    Ok(Fate::Whole) => counts.whole += 1,
                    Err(_) => {
                        counts.panics.push(n);
                        // What it left half done is nobody's.
                        case = prepare();
                    }
                }
            }
        });
        Worker { in_hand, thread }
    }
}

/// Forgets the most memory that was used so far (Linux; elsewhere nothing is measured).
fn reset_peak() {
    drop(std::fs::write("/proc/self/clear_refs", "5"));
}

fn peak_mb() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|l| l.strip_prefix("VmHWM:")).unwrap_or_default();
    line.trim().trim_end_matches(" kB").trim().parse::<u64>().unwrap_or(0) / 1024
}
