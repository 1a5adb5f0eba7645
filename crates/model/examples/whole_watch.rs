//! Designs the thresholds of everything that is watched beside deaths, and measures the watch as a whole: how often steady
//! batches are looked at and acted on, over all signals together, and how soon changes of water, feed, warmth and weight
//! are noticed. Each number is followed by its standard error; the same draws every time.
//!
//! Run: `cargo run --example whole_watch -p model`.

use std::process::ExitCode;

use model::deaths::{self, Level, USUAL};
use model::drill::{self, Change, Drill, deaths_by_age, entered, steady_levels};
use model::surprise::Tuning;
use model::watching::{self, FEED, WATCHED, WATER, Watched};

const DAYS: i32 = 42;
const BATCHES: u32 = 20_000;
const SEED: u64 = 7;
/// What a signal may cost of false looks and false acts in a batch.
const LOOKS: f64 = 0.05;
const ACTS: f64 = 0.001;
/// The losses added up, likewise.
const LOSSES_LOOKS: f64 = 0.05;
const LOSSES_ACTS: f64 = 0.003;

fn times(sums: &[f64], limit: f64) -> u32 {
    let over: Vec<Level> =
        sums.iter().map(|sum| if *sum >= limit { Level::Act } else { Level::Steady }).collect();
    entered(&over, Level::Act)
}

/// The least tenth whose mean count of entries is at most `rare`.
fn least(batches: &[Vec<f64>], rare: f64) -> f64 {
    let mean = |limit: f64| {
        batches.iter().map(|sums| f64::from(times(sums, limit))).sum::<f64>() / batches.len() as f64
    };
    let (mut low, mut high) = (0, 400);
    while high - low > 1 {
        let middle = (low + high) / 2;
        if mean(f64::from(middle) / 10.0) <= rare { high = middle } else { low = middle }
    }
    f64::from(high) / 10.0
}

fn design() {
    println!("1. Least thresholds, in tenths, for {LOOKS} false looks and {ACTS} false acts a batch");
    for (at, watched) in WATCHED.iter().enumerate() {
        // No stop at act while act is not yet known.
        let free = Tuning { look: f64::INFINITY, act: f64::INFINITY, ..watched.tuning };
        let sums =
            |batch| free.follow(&drill::steady(SEED, batch, at, DAYS)).iter().map(|step| step.sum).collect();
        let batches: Vec<Vec<f64>> = (0..BATCHES).map(sums).collect();
        println!(
            "   {:<14} look {:>5}  act {:>5}",
            watched.name,
            least(&batches, LOOKS),
            least(&batches, ACTS)
        );
    }
    for mean in [1.0, 4.0] {
        let expected = deaths_by_age(mean, DAYS as usize);
        let sums = |batch| {
            let found = Drill { seed: SEED, batch, stream: 0 }.deaths(&expected, USUAL.size);
            let days: Vec<(Option<u32>, f64)> = found.into_iter().zip(expected.iter().copied()).collect();
            watching::losses(&days, USUAL.size).iter().map(|day| day.surprise).collect()
        };
        let batches: Vec<Vec<f64>> = (0..BATCHES).map(sums).collect();
        let (look, act) = (least(&batches, LOSSES_LOOKS), least(&batches, LOSSES_ACTS));
        println!("   losses at {mean} a day   look {look:>5}  act {act:>5}");
    }
}

/// Mean and standard error.
fn mean(numbers: &[f64]) -> String {
    let count = numbers.len() as f64;
    let mean = numbers.iter().sum::<f64>() / count;
    let squares: f64 = numbers.iter().map(|number| (number - mean).powi(2)).sum();
    format!("{mean:.4} ±{:.4}", (squares / (count - 1.0) / count).sqrt())
}

fn budget() -> Option<()> {
    println!(
        "\n2. Steady batches of {DAYS} days, one in ten days not written: false looks | batches with a false act"
    );
    for (level, size) in [(0.5, 2.0), (1.0, 2.0), (2.0, 2.0), (4.0, 2.0), (2.0, 4.0)] {
        let expected = deaths_by_age(level, DAYS as usize);
        let watch = deaths::Watch::over(&expected, USUAL)?;
        let mut names: Vec<&str> = vec!["deaths", "losses"];
        names.extend(WATCHED.iter().map(|watched| watched.name));
        let mut counts: Vec<[Vec<f64>; 2]> = vec![Default::default(); names.len()];
        let (mut looks, mut acts) = (Vec::new(), Vec::new());
        for batch in 0..BATCHES / 2 {
            let all = steady_levels(SEED, batch, &watch, &expected, Some(size));
            let of = |level| all.iter().map(move |levels| f64::from(entered(levels, level)));
            looks.push(of(Level::Look).sum());
            acts.push(f64::from(u8::from(of(Level::Act).sum::<f64>() > 0.0)));
            for (count, levels) in counts.iter_mut().zip(&all) {
                count[0].push(f64::from(entered(levels, Level::Look)));
                count[1].push(f64::from(entered(levels, Level::Act).min(1)));
            }
        }
        println!("   {level} deaths a day, size {size}: all together {} | {}", mean(&looks), mean(&acts));
        if (level, size) == (2.0, 2.0) {
            for (name, [looks, acts]) in names.iter().zip(&counts) {
                println!("      {name:<14} {} | {}", mean(looks), mean(acts));
            }
        }
    }
    Some(())
}

fn notices() {
    println!(
        "\n3. A change from day 21 that stays: share noticed within 2, 4, 7 days | batches that rang before left out"
    );
    let cases: [(&Watched, &[f64]); 7] = [
        (&WATER, &[0.9, 0.8, 0.7]),
        (&FEED, &[0.9, 0.8, 0.7]),
        (&watching::COLD, &[-2.0, -4.0]),
        (&watching::WARM, &[3.0, 5.0]),
        (&watching::HUMIDITY, &[10.0, 20.0]),
        (&watching::WEIGHT, &[0.95, 0.9]),
        (&watching::LITTER, &[0.7, 1.7]),
    ];
    for (watched, changes) in cases {
        for by in changes {
            let is_share = watched.tuning.expected == 0.0;
            let change = Change { from: 21, by: if is_share { by.ln() } else { *by } };
            let what = if is_share { format!("to {by} times") } else { format!("by {by}") };
            let of = |wanted| within(watched, change, wanted).map(|share| format!("{share:.3}")).join(" ");
            println!("   {:<9} {what:<13} look {} | act {}", watched.name, of(Level::Look), of(Level::Act));
        }
    }
}

fn within(watched: &Watched, change: Change, wanted: Level) -> [f64; 3] {
    let (mut noticed, mut batches) = ([0.0; 3], 0.0);
    for batch in 0..4000 {
        let seen = Drill { seed: SEED, batch, stream: 30 }.seen(watched, DAYS, Some(change));
        let steps = watched.tuning.follow(&seen);
        let first = steps.iter().find(|step| step.level >= wanted).map(|step| step.seen.day - change.from);
        if first.is_some_and(|day| day < 0) {
            continue;
        }
        batches += 1.0;
        for (count, limit) in noticed.iter_mut().zip([2, 4, 7]) {
            *count += f64::from(u8::from(first.is_some_and(|day| day < limit)));
        }
    }
    noticed.map(|count| count / batches)
}

fn main() -> ExitCode {
    design();
    notices();
    match budget() {
        Some(()) => ExitCode::SUCCESS,
        None => ExitCode::FAILURE,
    }
}
