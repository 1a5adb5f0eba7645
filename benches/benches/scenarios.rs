//! The futures of one batch and what is counted from them; divide a run by its count for the time a scenario.

use std::hint::black_box;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use model::risk;
use model::scenarios::{
    self, Batch, FCR_SPREAD, FEED_PRICE_SPREAD, LOSSES_SPREAD, LOST_BIRD_FEED, SALE_PRICE_SPREAD, SoldBy,
    WEIGHT_SPREAD, WEIGHT_WITH_FCR,
};

const COUNT: u32 = 10_000;

const BATCH: Batch = Batch {
    chicks: 1600.0,
    chick_cost: 7.0,
    fixed_cost: 9000.0,
    feed_price: 5.2,
    feed_price_cv: FEED_PRICE_SPREAD.value,
    sale_price: 17.0,
    sale_price_cv: SALE_PRICE_SPREAD.value,
    sold_by: SoldBy::Kilogram,
    losses: 0.04,
    losses_spread: LOSSES_SPREAD.value,
    weight_kg: 2.035,
    weight_cv: WEIGHT_SPREAD.value,
    fcr: 1.8,
    fcr_cv: FCR_SPREAD.value,
    weight_fcr_correlation: WEIGHT_WITH_FCR.value,
    lost_bird_feed: LOST_BIRD_FEED.value,
};

fn benchmarks(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("scenarios");
    group.throughput(Throughput::Elements(COUNT.into()));
    group.bench_function("run", |bench| {
        bench.iter(|| black_box(scenarios::run(black_box(1), COUNT, &BATCH)));
    });
    let futures = scenarios::run(1, COUNT, &BATCH).unwrap();
    let profits: Vec<f64> = futures.iter().map(|future| future.profit).collect();
    group.bench_function("summary", |bench| bench.iter(|| black_box(risk::summary(black_box(&profits)))));
    group.finish();
}

criterion_group!(benches, benchmarks);
criterion_main!(benches);
