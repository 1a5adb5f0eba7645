//! What is to say about feed, its keeping and its store room.

use quantity::{Answers, DayOfAge, Unit};

use super::{Check, number};
use crate::buying::prices;
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;
use crate::store_room::{self, Phase};

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    own_curve_not_given,
    own_curve_without_feed,
    milled_after_delivery,
    feed_comes_too_late,
    cannot_keep,
    no_cheapest_days,
    feed_too_old,
    milling_not_told,
    store_too_small,
    store_not_told,
    other_bag_half_told,
];

fn own_curve_not_given(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let missing = crate::families::growth::has_own(answers) && answers.curve("batch.own_curve").is_none();
    missing.then(|| Finding::new("own-curve-not-given", Weight::Problem).at("batch.own_curve"))
}

fn own_curve_without_feed(answers: &Answers, _: &Outcome) -> Option<Finding> {
    crate::families::feed::own_tells_no_feed(answers)
        .then(|| Finding::new("own-curve-without-feed", Weight::Look).at("batch.own_curve"))
}

fn milled_after_delivery(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let milled = answers.day("feed.milled")?;
    let comes = outcome.day("feed.first_delivery")?;
    (milled > comes).then(|| {
        Finding::new("milled-after-delivery", Weight::Problem)
            .at("feed.milled")
            .with("comes", Detail::Figure("feed.first_delivery"))
            .with("milled", number(f64::from(milled.number()), Unit::Date, 0))
            .out("fetch-after-milling")
            .out("ask-milling-day")
    })
}

/// A later feed that comes after the day it is opened.
fn feed_comes_too_late(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let placement = answers.day("batch.placement")?;
    let late = store_room::deliveries(answers, outcome).into_iter().find(|one| one.day > one.eaten_from)?;
    let comes = DayOfAge(late.day).date(placement);
    Some(
        Finding::new("feed-comes-after-it-is-needed", Weight::Problem)
            .at("feed.ahead_d")
            .with("comes", number(f64::from(comes.number()), Unit::Date, 0))
            .out("feed-earlier"),
    )
}

fn feed_too_old(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let days = outcome.number("feed.too_old_by")?;
    (days > 0.0).then(|| {
        let finding = Finding::new("feed-too-old", Weight::Problem)
            .at("feed.milled")
            .with("days", Detail::Figure("feed.too_old_by"))
            .with("good", Detail::Figure("feed.good_until"))
            .with("eaten", Detail::Figure("feed.first_bought_eaten"))
            .with("milled", Detail::Figure("feed.milled_not_before"));
        let fresh_enough = outcome.day("feed.milled_not_before") <= outcome.day("feed.first_delivery");
        let finding = if fresh_enough { finding.out("buy-fresher") } else { finding };
        finding.out(if store_room::all_at_once(answers) { "buy-by-phase" } else { "cover-fewer-days" })
    })
}

/// A delivery that would be too old even if it were milled on the day it comes.
fn cannot_keep(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let keeps = outcome.number("feed.keeps")?;
    let deliveries = store_room::deliveries(answers, outcome);
    let waits = |one: &store_room::Delivery| f64::from(one.eaten_until - one.day);
    let worst = deliveries.iter().max_by(|one, other| waits(one).total_cmp(&waits(other)))?;
    (waits(worst) > keeps).then(|| {
        let finding = Finding::new("feed-cannot-keep", Weight::Problem)
            .at("feed.buying")
            .with("day", number(f64::from(worst.day), Unit::One, 0))
            .with("until", number(f64::from(worst.eaten_until), Unit::One, 0))
            .with("waits", number(waits(worst), Unit::Day, 0))
            .with("keeps", Detail::Figure("feed.keeps"));
        finding.out(if store_room::all_at_once(answers) { "buy-by-phase" } else { "more-deliveries" })
    })
}

/// The days that cost least were asked for, and there are none.
fn no_cheapest_days(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.number("feed.bags")?;
    let none = store_room::cheapest(answers) && outcome.cheapest_deliveries(answers).is_none();
    none.then(|| Finding::new("no-cheapest-days", Weight::Problem).at("feed.buying"))
}

fn milling_not_told(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("feed.milled_not_before")?;
    let planned = answers.number("feed.bag_kg").is_some() && answers.day("feed.milled").is_none();
    planned.then(|| {
        Finding::new("milling-not-told", Weight::Look)
            .at("feed.milled")
            .with("milled", Detail::Figure("feed.milled_not_before"))
    })
}

fn store_too_small(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let day = outcome.number("feed.store_peak_day")?;
    let short = outcome.number("feed.store_short")?;
    let (bag_kg, room) = (answers.number("feed.bag_kg")?, outcome.number("feed.store_room")?);
    if short <= 0.0 {
        return None;
    }
    let finding = Finding::new("store-too-small", Weight::Problem)
        .at("feed.store_bags")
        .with("size", number(bag_kg, Unit::Kilogram, u8::from(bag_kg.fract() != 0.0)))
        .with("short", Detail::Figure("feed.store_short"))
        .with("peak", Detail::Figure("feed.store_peak"))
        .with("room", Detail::Figure("feed.store_room"))
        .with("day", number(day, Unit::One, 0));
    let (alone_day, alone) = largest_delivery(answers, outcome, bag_kg)?;
    let finding = if alone > room && room > 0.0 {
        finding
            .with("alone_day", number(f64::from(alone_day), Unit::One, 0))
            .with("alone", number(alone, Unit::Pieces, 0))
            .with("parts", number((alone / room).ceil(), Unit::One, 0))
            .out("split-delivery")
    } else {
        finding.out("more-deliveries")
    };
    Some(finding.out("more-room"))
}

/// The day on which most feed comes, and how many of a plan's own bags that is.
fn largest_delivery(answers: &Answers, outcome: &Outcome, bag_kg: f64) -> Option<(i32, f64)> {
    let all = store_room::deliveries(answers, outcome);
    let on = |day: i32| all.iter().filter(|one| one.day == day).map(|one| one.in_bags_of(bag_kg)).sum();
    let days = all.iter().map(|one| (one.day, on(one.day)));
    days.max_by(|one: &(i32, f64), other| one.1.total_cmp(&other.1)).map(|(day, bags)| (day, bags.ceil()))
}

fn store_not_told(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("feed.store_peak")?;
    outcome.get("feed.store_room").is_none().then(|| {
        Finding::new("store-not-told", Weight::Note)
            .at("feed.store_bags")
            .with("peak", Detail::Figure("feed.store_peak"))
    })
}

/// A bag of another size without a weight of its own, or without a price.
fn other_bag_half_told(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let weight = answers.number("feed.other_bag_kg");
    let prices = Phase::ALL.iter().filter(|phase| prices::of_other_bag(answers, **phase).is_some()).count();
    let apart = weight.is_some_and(|weight| answers.number("feed.bag_kg") != Some(weight));
    let half = (weight.is_some() || prices > 0) && !(apart && prices > 0);
    half.then(|| Finding::new("other-bag-half-told", Weight::Look).at("feed.other_bag_kg"))
}
