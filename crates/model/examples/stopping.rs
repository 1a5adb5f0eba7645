//! Prints how often the rule that says "enough" is right, and what it costs in birds. Takes about a minute.

use model::weighing::stopping::FEWEST;
use model::weighing::trial::{Trial, run};
use model::weighing::{Wanted, sample_size};

fn main() {
    let settings: Vec<(f64, f64)> =
        [0.08, 0.12, 0.16].iter().flat_map(|cv| [0.02, 0.03, 0.05].map(|error| (*cv, error))).collect();
    println!(
        "| flock | CV % | error % | mean within, % | range right, % | plain range right, % | birds, looking | birds, fixed |"
    );
    println!("|---|---|---|---|---|---|---|---|");
    for flock in [300, 1600] {
        for tried in run(Trial { runs: 20_000, flock, seed: 1 }, &settings) {
            let wanted = Wanted {
                variation: tried.variation,
                error: tried.error,
                flock: Some(f64::from(flock)),
                confidence: 0.95,
            };
            let fixed = sample_size(wanted, 2.0).unwrap_or_default().max(FEWEST);
            println!(
                "| {flock} | {:.0} | {:.0} | {:.1} | {:.1} | {:.1} | {:.0} | {fixed:.0} |",
                100.0 * tried.variation,
                100.0 * tried.error,
                100.0 * tried.within,
                100.0 * tried.covered,
                100.0 * tried.plainly,
                tried.birds,
            );
        }
    }
}
