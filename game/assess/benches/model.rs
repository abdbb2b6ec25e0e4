//! `cargo bench -p assess`: the cases of `pinhole bench` under criterion.

use std::hint::black_box;
use std::path::Path;

use assess::pack::Library;
use assess::speed::marking::Marking;
use assess::speed::{Cases, Steps, many_drives, run_abreast};
use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use rayon::prelude::*;
use sim_core::circuit::ensemble::Registers;

/// Cars in a row.
const CARS: usize = 16;
/// Runs of the attempt under hypotheses.
const RUNS: usize = 64;

fn library() -> Library {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    Library::open(&root).expect("the files of this checkout")
}

/// Elements are simulated milliseconds.
fn stretches(c: &mut Criterion) {
    let cases = Cases::of(&library()).expect("the cases");
    for (name, stretch) in
        [("driving", &cases.driving), ("pull-down", &cases.pull_down), ("overnight hold", &cases.hold)]
    {
        let mut group = c.benchmark_group(name);
        group.throughput(Throughput::Elements((stretch.seconds() * 1e3) as u64));
        group.bench_function("steps as in use", |b| b.iter(|| black_box(stretch.run(Steps::Chosen))));
        group.bench_function("a hundredth of the error", |b| b.iter(|| black_box(stretch.run(Steps::Fine))));
        let minute = stretch.shortened(60);
        group.throughput(Throughput::Elements((minute.seconds() * 1e3) as u64));
        group.sample_size(10);
        group.bench_function("steps of one tick", |b| b.iter(|| black_box(minute.run(Steps::OneTick))));
        group.finish();
    }
}

fn many(c: &mut Criterion) {
    let drives = many_drives(&library(), CARS).expect("the cars");
    let mut group = c.benchmark_group("cars in a row, driving");
    group.sample_size(20);
    group.throughput(Throughput::Elements(drives.iter().map(|d| (d.seconds() * 1e3) as u64).sum()));
    group.bench_function("one thread", |b| {
        b.iter(|| drives.iter().map(|d| d.run(Steps::Chosen).steps()).sum::<u64>());
    });
    group.bench_function("side by side", |b| {
        b.iter(|| black_box(run_abreast(&drives, None, Registers::Widest)))
    });
    group.bench_function("all threads", |b| {
        b.iter(|| drives.par_iter().with_max_len(1).map(|d| d.run(Steps::Chosen).steps()).sum::<u64>());
    });
    group.finish();
}

/// Elements are runs.
fn marking(c: &mut Criterion) {
    let marking = Marking::of(&library()).expect("the attempt");
    let mut group = c.benchmark_group("runs under hypotheses");
    group.sample_size(10);
    group.throughput(Throughput::Elements(RUNS as u64));
    group.bench_function("one by one", |b| b.iter(|| black_box(marking.run_one_by_one(RUNS))));
    group.bench_function("side by side", |b| b.iter(|| black_box(marking.run_side_by_side(RUNS))));
    group.bench_function("all threads", |b| b.iter(|| black_box(marking.run_on_all_threads(RUNS))));
    group.finish();
}

criterion_group!(benches, stretches, many, marking);
criterion_main!(benches);
