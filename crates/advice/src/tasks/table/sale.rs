//! The sale, and what comes after it.

use quantity::Answers;

use super::Anchor::{LastSale, Next, Sale};
use super::Stage::{After, Sale as Selling};
use super::When::{Between, On, SaleDays, Sales};
use super::{EVENING_BEFORE, MORNING, OFFICE, Remind, TaskSpec, Told, task};

/// Feed goes away in the evening, so that birds slaughtered in the morning have been without it for 8 to 12 hours.
const EVENING: Remind = Remind::AtHour(18);

fn sold(answers: &Answers, kind: Option<&str>) -> bool {
    answers.choice("sale.kind") == kind
}

pub(super) static TASKS: &[TaskSpec] = &[
    task("buyers-booked", Selling, On(Sale, -14))
        .calls(OFFICE)
        .says(&[("birds", Told::Figure("sale.birds"))]),
    task("medicine-stopped", Selling, On(Sale, -14)).calls(OFFICE),
    task("catchers-booked", Selling, On(Sale, -7)).calls(OFFICE),
    task("withdrawal-checked", Selling, On(Sale, -2)).calls(OFFICE),
    task("feed-off", Selling, SaleDays(-1))
        .calls(EVENING)
        .only(|answers, _| sold(answers, Some("slaughter"))),
    task("feed-stays", Selling, SaleDays(-1)).calls(EVENING).only(|answers, _| sold(answers, Some("live"))),
    task("feed-asked", Selling, SaleDays(-1)).calls(EVENING).only(|answers, _| sold(answers, None)),
    task("catching", Selling, SaleDays(0)).calls(EVENING_BEFORE),
    task("sale", Selling, Sales).calls(MORNING).says(&[("birds", Told::Run(0)), ("days", Told::Run(1))]),
    task("batch-closed", After, On(LastSale, 1)).calls(OFFICE),
    task("litter-sold", After, On(LastSale, 1)),
    task("next-wash", After, On(LastSale, 2)),
    task("downtime", After, Between((LastSale, 3), (Next, -1))),
    task("next-chicks", After, On(Next, 0)),
];
