//! What the figures have to say about themselves, in a plan or in a quick sum. One file a family.

use quantity::{Answers, Unit};

use crate::finding::{Detail, Finding};
use crate::outcome::Outcome;

mod disinfectant;
mod equipment;
mod farm;
mod feed;
mod guard;
mod heat;
mod heat_index;
mod litter;
mod medicine;
pub mod money;
mod performance;
mod space;
mod turnaround;
mod vaccine;
mod water;
mod weighing;

/// Looks at answers and figures for one thing worth saying.
type Check = fn(&Answers, &Outcome) -> Option<Finding>;

/// Every check there is, by family.
static CHECKS: &[&[Check]] = &[
    farm::CHECKS,
    space::CHECKS,
    money::FIRST,
    equipment::CHECKS,
    guard::CHECKS,
    heat::CHECKS,
    heat_index::CHECKS,
    disinfectant::CHECKS,
    litter::CHECKS,
    turnaround::CHECKS,
    feed::CHECKS,
    water::CHECKS,
    money::CHECKS,
    vaccine::CHECKS,
    medicine::CHECKS,
    weighing::CHECKS,
    performance::CHECKS,
];

/// All findings that the answers and figures at hand give rise to, the weightiest first.
pub fn all(answers: &Answers, outcome: &Outcome) -> Vec<Finding> {
    let checks = CHECKS.iter().flat_map(|checks| checks.iter());
    let mut findings: Vec<Finding> = checks.filter_map(|check| check(answers, outcome)).collect();
    findings.extend(money::prices_of_zero(answers, outcome));
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    findings
}

fn number(value: f64, unit: Unit, decimals: u8) -> Detail {
    Detail::Number { value, unit, decimals }
}
