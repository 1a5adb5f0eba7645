//! The watch of a running batch: from a walk that is there, from the book, and its dearest parts.

mod mango_ridge;

use std::hint::black_box;

use advice::diary::Diary;
use advice::past::Past;
use advice::uneven::Uneven;
use advice::walk::Walk;
use advice::watch::Watch;
use criterion::{Criterion, criterion_group, criterion_main};
use model::deaths::{self, USUAL};

fn benchmarks(criterion: &mut Criterion) {
    let state = mango_ridge::state();
    let (batch, on) = mango_ridge::running(&state);
    let read = || {
        let past = Past::read(&state, batch, on);
        Walk::ahead_of(Diary::read(&state, batch, on), &past)
    };
    let walk = read();
    let mut group = criterion.benchmark_group("watch");
    group.bench_function("of a walk", |bench| bench.iter(|| black_box(Watch::of(&walk))));
    let expected: Vec<f64> = (0..43).map(|day| if day < 7 { 4.0 } else { 1.5 }).collect();
    group.bench_function("lines of deaths", |bench| {
        bench.iter(|| black_box(deaths::Watch::over(&expected, USUAL)));
    });
    group.bench_function("why uneven", |bench| bench.iter(|| black_box(Uneven::of(&walk))));
    group.bench_function("reading, and the walk of a batch", |bench| bench.iter(|| black_box(read())));
    group.finish();
}

criterion_group!(benches, benchmarks);
criterion_main!(benches);
