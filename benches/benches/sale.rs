//! When to sell: from the book to the page, and its dearest parts.

mod mango_ridge;

use std::hint::black_box;

use advice::orders::Orders;
use advice::sale::Sale;
use criterion::{Criterion, criterion_group, criterion_main};
use model::selling::Sales;
use present::{Viewer, html, sale};

fn benchmarks(criterion: &mut Criterion) {
    let state = mango_ridge::state();
    let (batch, on) = mango_ridge::running(&state);
    let read = || Sale::read(&state, batch, on);
    let looked_at = read();
    let selling = looked_at.selling().unwrap();
    let (now, futures) = looked_at.walk.plan.outcome.drawn().futures().unwrap();
    let viewer = Viewer::plain();
    let mut group = criterion.benchmark_group("sale");
    group.sample_size(20);
    group.bench_function("from the book, 10 000 futures on all days", |bench| {
        bench.iter(|| black_box(read()));
    });
    group.bench_function("of that, all days of futures that are drawn", |bench| {
        bench.iter(|| black_box(Sales::of(futures, now, &selling.terms)));
    });
    group.bench_function("orders", |bench| bench.iter(|| black_box(Orders::of(&looked_at))));
    group.bench_function("the page of it", |bench| {
        bench.iter(|| black_box(html::blocks(&sale::document(&looked_at, &viewer), &viewer)));
    });
    group.finish();
}

criterion_group!(benches, benchmarks);
criterion_main!(benches);
