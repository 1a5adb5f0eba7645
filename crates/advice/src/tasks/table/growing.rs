//! From the first week to the last.

use super::Anchor::{LastHeat, Placement};
use super::Stage::{Brooding, Growing};
use super::When::{Between, FeedDelivered, FeedMixing, GuardsOut, On, Weekly, Widening};
use super::{MORNING, OFFICE, TaskSpec, Told, task};

pub(super) static TASKS: &[TaskSpec] = &[
    task("rings-widened", Brooding, Widening).calls(MORNING).says(&[
        ("density", Told::Run(0)),
        ("joined", Told::Run(1)),
        ("overlap", Told::Run(2)),
    ]),
    task("large-equipment", Brooding, Between((Placement, 5), (Placement, 7))),
    task("guards-out", Brooding, GuardsOut).calls(MORNING),
    task("heat-ends", Brooding, On(LastHeat, 0)),
    task("weighing", Growing, Weekly).calls(MORNING).says(&[("birds", Told::Run(0))]),
    task("curtains-in-heat", Growing, On(Placement, 14)),
    task("feed-mixed", Growing, FeedMixing).calls(MORNING),
    task("feed-delivered", Growing, FeedDelivered).calls(OFFICE).says(&[("bags", Told::BagsThatDay)]),
];
