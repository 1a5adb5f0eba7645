//! The batches of the farm: what each one's plan says, its luck, and what went wrong.

use invented::Event;

/// A batch.
pub(crate) struct Row {
    /// What its plan says otherwise than that of the larger house; nothing for the running batch.
    pub(crate) plan: &'static str,
    /// Names its luck.
    pub(crate) seed: u64,
    /// What went wrong.
    pub(crate) events: &'static [Event],
}

/// Four that are over, and the one that runs.
pub(crate) const BATCHES: [Row; 5] = [
    Row {
        plan: include_str!("../../../demo/past/2026-11.toml"),
        seed: 202_611,
        events: &[Event::HotSpell { first: 8, days: 3 }, Event::SickSpell { first: 24, days: 8 }],
    },
    Row {
        plan: include_str!("../../../demo/past/2027-01.toml"),
        seed: 202_701,
        events: &[Event::LateFeed { day: 26, late: 2 }],
    },
    Row { plan: include_str!("../../../demo/past/2027-03.toml"), seed: 202_703, events: &[] },
    Row { plan: include_str!("../../../demo/past/2027-06.toml"), seed: 202_706, events: &[] },
    Row {
        plan: "",
        seed: 202_709,
        events: &[
            Event::LateFeed { day: 9, late: 2 },
            Event::DrinkerLineFails { day: 16 },
            Event::HotSpell { first: 19, days: 4 },
        ],
    },
];
