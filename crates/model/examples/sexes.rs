//! Prints how often weights of one sex are taken for two, and how often two sexes are found by weights alone. Takes some
//! minutes.

use model::chance::Draw;
use model::weighing::sexes::found_apart;

/// Weights of a flock of which every other bird is of the heavier sex; `gap` 0 is one sex.
fn weights(scenario: u32, birds: u32, variation: f64, gap: f64) -> Vec<f64> {
    let weight = |n: u32| {
        let z = Draw { seed: 1, scenario, stream: 1, day: birds, n }.normal();
        let mean = 2000.0 * (1.0 + if n.is_multiple_of(2) { gap / 2.0 } else { -gap / 2.0 });
        (mean * (1.0 + variation * z)).max(100.0)
    };
    (0..birds).map(weight).collect()
}

fn share_found(runs: u32, birds: u32, variation: f64, gap: f64) -> f64 {
    let found = |scenario: &u32| found_apart(&weights(*scenario, birds, variation, gap)).is_some();
    (0..runs).filter(found).count() as f64 / f64::from(runs)
}

fn main() {
    println!("| birds | CV within a sex % | gap % | two claimed, % of weighings |");
    println!("|---|---|---|---|");
    for (variation, gap, runs) in [
        (0.08, 0.0, 4_000),
        (0.12, 0.0, 4_000),
        (0.06, 0.15, 400),
        (0.06, 0.2, 400),
        (0.08, 0.15, 400),
        (0.08, 0.2, 400),
    ] {
        for birds in [30, 60, 100, 200, 400] {
            let share = 100.0 * share_found(runs, birds, variation, gap);
            println!("| {birds} | {:.0} | {:.0} | {share:.1} |", 100.0 * variation, 100.0 * gap);
        }
    }
}
