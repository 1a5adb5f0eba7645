//! How often a watch over deaths rings falsely and how soon it notices a rise, for the thresholds proposed.
//!
//! One running sum of log likelihood ratios with two thresholds, look and act, found by the exact chain so that steady
//! days ring as often as allowed. Part 1 says what no watch over deaths alone can beat; parts 2 and 5 are exact; parts 3,
//! 4 and 6 are drawn, each number followed by its standard error, the same draws every time.
//!
//! Run: `cargo run --example deaths_watch -p model`.

use std::process::ExitCode;

use model::chance::Draw;
use model::counts::Law;
use model::cusum::{self, Day, Score};
use model::deaths::{self, Design, USUAL};
use model::drill::deaths_by_age;
use model::quantile::normal_share_below;
use model::triggers::{self, BatchDay, Call};

const DAYS: usize = 42;
/// The day of age from which deaths rise.
const RISE_AT: usize = 20;
const BATCHES: u32 = 10_000;
const SEED: u64 = 42;

const LEVELS: [f64; 5] = [0.5, 1.0, 2.0, 4.0, 8.0];
const RISES: [f64; 4] = [1.5, 2.0, 3.0, 5.0];
const SIZES: [Option<f64>; 6] = [Some(2.0), Some(3.0), Some(4.0), Some(5.0), Some(6.0), None];

/// A watch over a batch and what it expects.
struct Watch {
    expected: Vec<f64>,
    watch: deaths::Watch,
}

impl Watch {
    fn over(expected: Vec<f64>, design: Design) -> Option<Watch> {
        Some(Watch { watch: deaths::Watch::over(&expected, design)?, expected })
    }

    fn steady(level: f64, design: Design) -> Option<Watch> {
        Watch::over(vec![level; DAYS], design)
    }

    /// The days of the chain when deaths are `times` those expected and clumped by `size`.
    fn days(&self, times: f64, size: Option<f64>) -> Vec<Day> {
        let day =
            |(score, expected): (&Score, &f64)| Day { score: *score, law: Law::of(times * expected, size) };
        self.watch.scores.iter().zip(&self.expected).map(day).collect()
    }

    /// The chance to have signalled by each day of a rise, exactly.
    fn noticed(&self, threshold: u32, times: f64, size: Option<f64>) -> Option<Vec<f64>> {
        let (steady, risen) = (self.days(1.0, size), self.days(times, size));
        cusum::noticed_by(&steady[..RISE_AT], &risen[RISE_AT..], threshold)
    }

    /// False signals of a batch when the sum starts anew after each.
    fn signals(&self, counts: &[u32], threshold: u32) -> u32 {
        let (mut sum, mut signals) = (0, 0);
        for (score, count) in self.watch.scores.iter().zip(counts) {
            sum = score.next(sum, *count);
            if sum >= threshold {
                (sum, signals) = (0, signals + 1);
            }
        }
        signals
    }

    /// Days from the rise to the signal; `None` where it rang before, and an inner none where it did not ring.
    fn days_to_notice(&self, counts: &[u32], threshold: u32) -> Option<Option<usize>> {
        let mut sum = 0;
        for (day, (score, count)) in self.watch.scores.iter().zip(counts).enumerate() {
            sum = score.next(sum, *count);
            if sum >= threshold {
                return (day >= RISE_AT).then(|| Some(day + 1 - RISE_AT));
            }
        }
        Some(None)
    }
}

/// A count drawn from the law by inversion, from a place of chance.
fn drawn(law: Law, batch: u32, day: usize) -> Option<u32> {
    let share =
        normal_share_below(Draw { seed: SEED, scenario: batch, stream: 0, day: day as u32, n: 0 }.normal());
    law.quantile(share).and_then(|count| count.try_into().ok())
}

/// The counts of one batch whose deaths are `times` those expected from the rise on.
fn batch(expected: &[f64], times: f64, size: Option<f64>, number: u32) -> Option<Vec<u32>> {
    let law =
        |day: usize, expected: f64| Law::of(if day < RISE_AT { expected } else { times * expected }, size);
    expected.iter().enumerate().map(|(day, &mean)| drawn(law(day, mean), number, day)).collect()
}

/// Mean and standard error.
fn mean(numbers: &[f64]) -> (f64, f64) {
    let count = numbers.len() as f64;
    let mean = numbers.iter().sum::<f64>() / count;
    let squares: f64 = numbers.iter().map(|number| (number - mean).powi(2)).sum();
    (mean, (squares / (count - 1.0) / count).sqrt())
}

fn written((mean, error): (f64, f64)) -> String {
    format!("{mean:.3} ±{error:.3}")
}

fn named(size: Option<f64>) -> String {
    size.map_or("Poisson".to_owned(), |size| format!("size {size}"))
}

/// The power of the best test of four days against tripled deaths, that knows the day of the rise and is wrong with the
/// chance `wrong` (Neyman and Pearson: the sum of the counts beyond a limit).
fn best_power(mean: f64, size: Option<f64>, wrong: f64) -> Option<f64> {
    let of_four = |times: f64| Law::of(4.0 * times * mean, size.map(|size| 4.0 * size));
    let limit = of_four(1.0).quantile(1.0 - wrong)? + 1;
    let (inside, at_limit) = (of_four(1.0).at_least(limit), of_four(1.0).chance(limit - 1));
    let by_lot = (wrong - inside) / at_limit;
    Some(of_four(3.0).at_least(limit) + by_lot * of_four(3.0).chance(limit - 1))
}

fn bound() -> Option<()> {
    println!(
        "1. The most that four days of tripled deaths can tell (exact), were the day of the rise known and"
    );
    println!("   the whole chance of a false act in a batch spent on these four days");
    for level in LEVELS {
        print!("   {level:>4} a day:");
        for size in SIZES {
            print!("  {} {:.3}", named(size), best_power(level, size, USUAL.act_chance)?);
        }
        println!();
    }
    Some(())
}

fn thresholds() -> Option<()> {
    println!(
        "\n2. Thresholds in points, for size 2, deaths by age; act within 4 and 7 days of tripled, 7 of"
    );
    println!("   doubled deaths (exact, steady level, size 3)");
    for tuned_to in [2.0, USUAL.tuned_to, 3.0] {
        for level in LEVELS {
            let design = Design { tuned_to, ..USUAL };
            let by_age = Watch::over(deaths_by_age(level, DAYS), design)?;
            let flat = Watch::steady(level, design)?;
            let (tripled, doubled) = (
                flat.noticed(flat.watch.act, 3.0, Some(3.0))?,
                flat.noticed(flat.watch.act, 2.0, Some(3.0))?,
            );
            println!(
                "   tuned to x{tuned_to}, {level:>4} a day: look {:>3}, act {:>3}; {:.3}, {:.3}; {:.3}",
                by_age.watch.look, by_age.watch.act, tripled[3], tripled[6], doubled[6]
            );
        }
    }
    Some(())
}

fn false_alarms() -> Option<()> {
    println!("\n3. False signals a batch of {DAYS} days, deaths by age; thresholds for size 2");
    println!("   false looks | batches with a false act, drawn; exact");
    for level in LEVELS {
        let watch = Watch::over(deaths_by_age(level, DAYS), USUAL)?;
        for size in SIZES {
            let (mut looks, mut acts) = (Vec::new(), Vec::new());
            for number in 0..BATCHES {
                let counts = batch(&watch.expected, 1.0, size, number)?;
                looks.push(f64::from(watch.signals(&counts, watch.watch.look)));
                acts.push(f64::from(watch.signals(&counts, watch.watch.act).min(1)));
            }
            let exact = cusum::signal_chance(&watch.days(1.0, size), watch.watch.act, 0)?;
            let (looks, acts) = (written(mean(&looks)), written(mean(&acts)));
            println!("   {level:>4} a day, {:<7}: {looks} | {acts}; {exact:.4}", named(size));
        }
    }
    Some(())
}

fn notices() -> Option<()> {
    println!("\n4. Days to notice, steady level, thresholds for size 2, batches that rang before left out");
    println!("   look within 4 | act within 4 | act within 7 | median days to act (none: not by day {DAYS})");
    for size in [Some(2.0), Some(4.0), Some(6.0)] {
        for level in LEVELS {
            let watch = Watch::steady(level, USUAL)?;
            for rise in RISES {
                print_notice(&watch, level, rise, size)?;
            }
        }
    }
    Some(())
}

fn print_notice(watch: &Watch, level: f64, rise: f64, size: Option<f64>) -> Option<()> {
    let (mut looks, mut acts) = (Vec::new(), Vec::new());
    for number in 0..BATCHES {
        let counts = batch(&watch.expected, rise, size, number)?;
        looks.extend(watch.days_to_notice(&counts, watch.watch.look));
        acts.extend(watch.days_to_notice(&counts, watch.watch.act));
    }
    let within = |found: &[Option<usize>], limit: usize| {
        let hits: Vec<f64> =
            found.iter().map(|days| f64::from(days.is_some_and(|days| days <= limit))).collect();
        written(mean(&hits))
    };
    // Those that never rang stand behind all that did.
    let mut order: Vec<usize> = acts.iter().map(|days| days.unwrap_or(usize::MAX)).collect();
    order.sort_unstable();
    let median = order.get(order.len() / 2).filter(|days| **days < usize::MAX);
    let median = median.map_or("none".to_owned(), usize::to_string);
    println!(
        "   {}, {level:>4} a day x{rise:<3}: {} | {} | {} | {median}",
        named(size),
        within(&looks, 4),
        within(&acts, 4),
        within(&acts, 7)
    );
    Some(())
}

fn days_for_nine_of_ten() -> Option<()> {
    println!(
        "\n5. Days until nine of ten tripled batches have rung (exact): look / act, thresholds for the true size"
    );
    for level in LEVELS {
        print!("   {level:>4} a day:");
        for size in SIZES {
            let watch = Watch::steady(level, Design { size, ..USUAL })?;
            let days = |threshold| {
                let by = watch.noticed(threshold, 3.0, size)?;
                Some(by.iter().position(|by| *by >= 0.9).map_or("-".to_owned(), |day| (day + 1).to_string()))
            };
            print!("  {} {}/{}", named(size), days(watch.watch.look)?, days(watch.watch.act)?);
        }
        println!();
    }
    Some(())
}

/// The chance of a false act in a batch that it would cost to reach act within 4 days in nine of ten tripled batches.
fn price_of_four_days() -> Option<()> {
    println!(
        "\n   The chance of a false act in a batch that act within 4 days in nine of ten would cost (exact)"
    );
    for level in LEVELS {
        print!("   {level:>4} a day:");
        for size in SIZES {
            let watch = Watch::steady(level, Design { size, ..USUAL })?;
            let soon = |threshold: &u32| watch.noticed(*threshold, 3.0, size).is_some_and(|by| by[3] >= 0.9);
            let threshold = (1..=watch.watch.look.max(watch.watch.act)).rev().find(soon);
            let cost = |threshold| cusum::signal_chance(&watch.days(1.0, size), threshold, 0);
            print!(
                "  {} {}",
                named(size),
                threshold.and_then(cost).map_or("-".to_owned(), |cost| format!("{cost:.3}"))
            );
        }
        println!();
    }
    Some(())
}

fn fixed_rules() -> Option<()> {
    println!(
        "\n6. Fixed rules on steady days, one in a thousand birds dead a day: batches that break it | days that do"
    );
    for size in [2.0, 4.0] {
        for birds in [300u32, 500, 1000, 2000, 5000] {
            println!("   {birds} birds, size {size}");
            let batches: Vec<Vec<BatchDay>> =
                (0..BATCHES / 5).map(|number| quiet_batch(birds, size, number)).collect::<Option<_>>()?;
            for trigger in triggers::TRIGGERS {
                print_rule(trigger.name, &batches, |days| (trigger.holds)(days));
            }
            print_rule("any that asks to act", &batches, |days| {
                triggers::holding(days).any(|trigger| trigger.call == Call::Act)
            });
        }
    }
    Some(())
}

fn print_rule(name: &str, batches: &[Vec<BatchDay>], holds: impl Fn(&[BatchDay]) -> bool) {
    let days =
        |batch: &Vec<BatchDay>| (1..=batch.len()).filter(|until| holds(&batch[..*until])).count() as f64;
    let days: Vec<f64> = batches.iter().map(days).collect();
    let broken: Vec<f64> = days.iter().map(|days| days.min(1.0)).collect();
    if days.iter().any(|days| *days > 0.0) {
        println!("     {name:<30} {} | {}", written(mean(&broken)), written(mean(&days)));
    }
}

fn quiet_batch(birds: u32, size: f64, number: u32) -> Option<Vec<BatchDay>> {
    let mut alive = birds;
    let mut day = |age: usize| {
        let normal = f64::from(birds) / 1000.0;
        let dead = drawn(Law::of(normal, Some(size)), number, age)?;
        let this = BatchDay {
            age_d: age as u32,
            birds: alive,
            dead: Some(dead),
            sudden: None,
            normal_dead: Some(normal),
            water_l: None,
            feed_kg: None,
            hottest_c: None,
        };
        alive = alive.saturating_sub(dead);
        Some(this)
    };
    (0..DAYS).map(&mut day).collect()
}

fn main() -> ExitCode {
    let parts =
        [bound, thresholds, false_alarms, notices, days_for_nine_of_ten, price_of_four_days, fixed_rules];
    match parts.iter().try_for_each(|part| part()) {
        Some(()) => ExitCode::SUCCESS,
        None => ExitCode::FAILURE,
    }
}
