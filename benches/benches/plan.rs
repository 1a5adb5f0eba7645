//! A plan from its file to its page: what a grower waits for.

use std::hint::black_box;

use advice::{plan, plan_file};
use criterion::{Criterion, criterion_group, criterion_main};
use present::plan::Shown;
use present::{Viewer, html, text, view};
use quantity::Source;

const FILE: &str = include_str!("../../demo/mango-ridge.toml");

fn worked_out() -> plan::Plan {
    let raws = plan_file::read(FILE).unwrap_or_default();
    plan::work_out(plan::read(&raws, Source::File, true).answers)
}

fn benchmarks(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("plan");
    group.bench_function("read and work out", |bench| bench.iter(|| black_box(worked_out())));
    let plan = worked_out();
    let viewer = Viewer::plain();
    group.bench_function("document", |bench| {
        bench.iter(|| black_box(Shown::new(&plan, &viewer).document()));
    });
    let document = Shown::new(&plan, &viewer).document();
    group.bench_function("document to HTML", |bench| {
        bench.iter(|| black_box(html::blocks(&document, &viewer)))
    });
    group.bench_function("document to text", |bench| {
        bench.iter(|| black_box(text::write(&document, &viewer, true)));
    });
    group.bench_function("JSON with workings", |bench| {
        bench.iter(|| black_box(serde_json::to_string(&view::plan(&plan, &viewer, true))));
    });
    group.finish();
}

criterion_group!(benches, benchmarks);
criterion_main!(benches);
