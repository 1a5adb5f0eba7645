//! Invented batches beside published ones, and everything written down beside the checks that pages use.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod entries;
mod statistics;

use invented::{Event, Life, Scenario, live};
use quantity::CivilDay;

fn first_of(month: i8) -> CivilDay {
    CivilDay::new(2027, month, 1).unwrap()
}

/// Quiet batches of a month with luck of their own each.
fn lives(month: i8, chicks: u32) -> Vec<(Scenario, Life)> {
    let of = |seed| Scenario::quiet(seed, first_of(month), chicks);
    (0..60).map(of).map(|scenario| (scenario.clone(), live(&scenario))).collect()
}

/// A batch in which everything goes wrong.
fn unlucky(seed: u64) -> Scenario {
    Scenario::quiet(seed, first_of(9), 1_600)
        .with(Event::DrinkerLineFails { day: 16 })
        .with(Event::HotSpell { first: 18, days: 4 })
        .with(Event::LateFeed { day: 21, late: 3 })
        .with(Event::SickSpell { first: 25, days: 8 })
}
