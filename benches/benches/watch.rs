//! The watch of a running batch: from a walk that is there, from the book, and its dearest parts.

use std::hint::black_box;

use advice::diary::Diary;
use advice::past::Past;
use advice::uneven::Uneven;
use advice::walk::Walk;
use advice::watch::Watch;
use book::{Access, BatchId, BookState, DeviceId, FarmId, PersonId, Role, Subject, fold};
use criterion::{Criterion, criterion_group, criterion_main};
use model::deaths::{self, USUAL};
use quantity::CivilDay;
use uuid::Uuid;

const FARM: FarmId = FarmId(Uuid::from_u128(1));

/// The invented farm's book.
fn state() -> BookState {
    let someone = Uuid::from_u128(2);
    let access = Access::granted(FARM, PersonId(someone), DeviceId(someone), Role::Owner);
    fold(FARM, demo::Farm::mango_ridge().unwrap().entries(&access).unwrap())
}

/// The batch that was placed last, and the last day written of it.
fn running(state: &BookState) -> (BatchId, CivilDay) {
    let placed = state.counting_of("chicks-placed");
    let last = placed.iter().max_by_key(|record| record.entry().day).unwrap();
    let Subject::Batch(batch) = last.entry().subject else { panic!("chicks of no batch") };
    let days = state.counting_about(Subject::Batch(batch)).map(|record| record.entry().day);
    (batch, days.max().unwrap())
}

fn benchmarks(criterion: &mut Criterion) {
    let state = state();
    let (batch, on) = running(&state);
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
