//! Made ready: ordered, brought in, built, tried.

use super::Anchor::{Booked, Feed, Litter, Placement, Warming};
use super::Stage::Ready;
use super::When::{FeedOrdered, On, OnLitter};
use super::{EVENING_BEFORE, MORNING, OFFICE, Remind, TaskSpec, Told, task};
use crate::tasks::FEED_ORDER;

/// Shops and mills are open.
const SHOPS_OPEN: Remind = Remind::AtHour(8);

pub(super) static TASKS: &[TaskSpec] = &[
    task("chicks-booked", Ready, On(Booked, 0))
        .calls(OFFICE)
        .says(&[("chicks", Told::Field("batch.chicks"))]),
    task("vaccines-ordered", Ready, On(Placement, -14)).calls(OFFICE),
    task(FEED_ORDER, Ready, FeedOrdered).calls(SHOPS_OPEN),
    task("feed-in", Ready, On(Feed, 0)).calls(OFFICE),
    task("guard-cut", Ready, On(Placement, -7)).says(&[("strips", Told::Figure("guard.strips"))]),
    task("thermometer", Ready, On(Placement, -7)),
    task("stand-by", Ready, On(Placement, -7)).calls(OFFICE),
    task("dead-pit", Ready, On(Placement, -7)),
    task("litter-in", Ready, On(Litter, 0)).calls(MORNING).says(&[("bags", Told::Figure("litter.bags"))]),
    task("transport", Ready, On(Placement, -3)).calls(OFFICE),
    task("guard-set", Ready, OnLitter(-2))
        .says(&[("rings", Told::Figure("guard.rings")), ("strips", Told::Figure("guard.strips_per_ring"))]),
    task("curtains", Ready, OnLitter(-2)),
    task("brooder-trial", Ready, On(Warming, -1)).calls(MORNING),
    task("warming", Ready, On(Warming, 0)).calls(MORNING),
    task("husk-paper", Ready, OnLitter(-1))
        .only(|answers, _| answers.choice("litter.kind") == Some("rice-husk")),
    task("vehicle", Ready, On(Placement, -1)),
    task("water-in", Ready, On(Placement, 0)).calls(EVENING_BEFORE),
    task("water-sanitised", Ready, On(Placement, 0))
        .only(|answers, _| answers.number("water.sanitiser_ppm").is_some())
        .says(&[("product", Told::Figure("water.sanitiser"))]),
    task("feed-on-paper", Ready, On(Placement, 0)),
];
