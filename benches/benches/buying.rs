//! The cheapest way of buying feed: by feed with shared deliveries, with interest, with a store that is full.
//!
//! The peer solves the first two as a whole-number programme (`benches/peers/buying.py`); both print the least cost.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use model::buying::{Buying, Credit, Feed, Measure, Size};

const DAYS: usize = 57;
const BAG_KG: f64 = 50.0;

/// 1 600 birds that eat 12 g on the first day and 4.2 g more each day, in three feeds, bought from 14 days before.
fn batch() -> Buying {
    in_measures_of(BAG_KG)
}

/// The same in bags of 50 and of 25 kg, the small ones a little dearer by the kilogram.
fn in_two_sizes() -> Buying {
    let mut buying = in_measures_of(BAG_KG / 2.0);
    for feed in &mut buying.feeds {
        let large = feed.sizes[0].price.clone();
        feed.sizes[0].price = large.iter().map(|price| 0.52 * price).collect();
        feed.sizes.push(Size { measures: 2, price: large });
    }
    buying
}

/// Each feed in bags of one weight, at the price of a bag of 50 kg.
fn in_measures_of(measure_kg: f64) -> Buying {
    let phases = [(0usize, 10usize, 31.0), (11, 24, 29.5), (25, 42, 28.75)];
    let feed = |(from, until, price): (usize, usize, f64)| {
        let eaten: Vec<f64> = (from..=until).map(|day| 1.6 * (12.0 + 4.2 * day as f64)).collect();
        let total: f64 = eaten.iter().sum();
        let bags = (total / measure_kg - 1e-9).ceil() as usize;
        let day = |kg: f64| {
            let mut so_far = 0.0;
            let reached = eaten.iter().position(|today| {
                so_far += today;
                so_far > kg
            });
            from + reached.unwrap_or(until - from)
        };
        let due = |bag: usize| {
            let opened = day(bag as f64 * measure_kg + 1e-9);
            let needed = if opened <= 14 { 0 } else { opened + 14 - 7 };
            Measure { needed, finished: day((bag + 1) as f64 * measure_kg - 1e-9) + 14 }
        };
        let price = (0..DAYS).map(|day| price * (1.0 + 0.02 * day as f64 / 30.0)).collect();
        Feed::in_bags((0..bags).map(due).collect(), price)
    };
    Buying {
        feeds: phases.map(feed).into(),
        fee: vec![9.0; DAYS],
        holding: 0.0,
        keeps: 43,
        room: None,
        stock: Vec::new(),
        credit: None,
    }
}

fn benchmarks(criterion: &mut Criterion) {
    let plain = batch();
    let money: Vec<f64> = (0..DAYS).map(|day| if day < 20 { 1500.0 } else { 400.0 }).collect();
    let borrowed = Buying { credit: Some(Credit { rate: 0.3 / 365.0, money, limit: None }), ..plain.clone() };
    // Money comes in as birds are sold, and what may be owed until then is less than the cheapest way would owe.
    let purse = |day: usize| match day {
        0..30 => 900.0,
        30..42 => 2_400.0,
        _ => 4_200.0,
    };
    let credit = Credit { rate: 0.3 / 365.0, money: (0..DAYS).map(purse).collect(), limit: Some(450.0) };
    let limited = Buying { credit: Some(credit), ..plain.clone() };
    let full = Buying { room: Some(60), ..plain.clone() };
    let sizes = in_two_sizes();
    let full_sizes = Buying { room: Some(120), ..sizes.clone() };
    let mut group = criterion.benchmark_group("buying");
    for (name, buying) in [
        ("shared deliveries", &plain),
        ("with interest", &borrowed),
        ("within a limit", &limited),
        ("full store", &full),
        ("two sizes", &sizes),
        ("two sizes, full store", &full_sizes),
    ] {
        let best = buying.best().unwrap();
        let gap = best.cost.total() - best.lower_bound;
        println!("{name}: least cost {:.6}, gap {gap:.6}", best.cost.total());
        group.bench_function(name, |bench| bench.iter(|| black_box(buying.best())));
    }
    group.finish();
}

criterion_group!(benches, benchmarks);
criterion_main!(benches);
