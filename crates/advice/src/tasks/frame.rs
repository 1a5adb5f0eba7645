//! The days of one batch that its tasks are counted from, as days of age.

use std::collections::BTreeSet;

use quantity::{Answers, CivilDay};

use super::Anchor;
use crate::families::{space, turnaround};
use crate::outcome::Outcome;
use crate::plan::{self, Standing, Widening};
use crate::store_room;

/// Feed stands in the store so many days before the chicks where the grower says nothing else: common practice.
const FEED_ON_HAND_D: i32 = 14;

/// Chicks need heat for two weeks where the grower says nothing else: common practice.
const DAYS_OF_HEAT: i32 = 14;

/// Chicks are booked four weeks ahead where the grower says nothing else: common practice.
const BOOKED_D: i32 = 28;

/// Warming takes a day, two in the cold season: breeders' handbooks, from memory.
const WARMING_D: i32 = 1;

/// The days that tasks are counted from; `None` is a day that is not known yet.
pub(super) struct Frame {
    pub(super) empty: Option<i32>,
    pub(super) litter: Option<i32>,
    pub(super) feed: i32,
    pub(super) warming: Option<i32>,
    pub(super) last_heat: i32,
    pub(super) sale: Option<i32>,
    pub(super) last_sale: Option<i32>,
    pub(super) next: Option<i32>,
    /// Chicks placed.
    pub(super) chicks: Option<f64>,
    /// Days on which rings are widened.
    pub(super) widened: Vec<Widened>,
    /// The day of the plan on which the guards go.
    pub(super) guards_out: Option<i32>,
    /// The days on which the next feed is begun.
    pub(super) feed_changes: Vec<i32>,
    /// Days on which feed comes after the first.
    pub(super) deliveries: Vec<i32>,
    /// The last day on which the feed of each day of delivery can be ordered.
    pub(super) feed_orders: Vec<i32>,
    /// Days on which birds are sold.
    pub(super) sold: Vec<Sold>,
    /// The day on which the chicks are booked.
    pub(super) booked: i32,
}

/// How rings stand from a day on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Widened {
    pub(super) day: i32,
    /// Chicks a square metre.
    pub(super) density: f64,
    /// Rings joined into one.
    pub(super) joined: f64,
    /// Overlap at each join, whole centimetres: rounded up it would crowd the chicks.
    pub(super) overlap_cm: f64,
}

impl Widened {
    fn of(step: &Widening) -> Option<Widened> {
        let Standing::Rings { joined, overlap, chicks_per_m2 } = step.standing else { return None };
        let overlap_cm = (overlap.in_centimetres() + 1e-6).floor();
        Some(Widened { day: step.from_day, density: chicks_per_m2, joined, overlap_cm })
    }
}

/// Days in a row on which birds are sold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sold {
    pub(super) first: i32,
    pub(super) last: i32,
    /// Birds on each of them; `None` while that is not known.
    pub(super) birds_a_day: Option<f64>,
}

impl Frame {
    /// Of answers and figures.
    pub(super) fn of(answers: &Answers, outcome: &Outcome) -> Frame {
        let placement = answers.day("batch.placement");
        let age = |day: CivilDay| Some(day.days_since(placement?));
        let figure = |id: &str| outcome.day(id).and_then(age);
        let litter = figure("litter.spread_date");
        let steps = plan::widening(answers, outcome);
        let (whole, rings): (Vec<Widening>, Vec<Widening>) =
            steps.into_iter().filter(|step| step.from_day > 0).partition(Widening::is_whole_house);
        let age_of = |id: &str| outcome.number(id).map(|day| day as i32);
        Frame {
            empty: figure(turnaround::EMPTY_FROM),
            litter,
            feed: -days(answers, "feed.on_hand_before_d").unwrap_or(FEED_ON_HAND_D),
            warming: placement.map(|day| warming(answers, day).max(litter.unwrap_or(i32::MIN))),
            // The chick day is the first day of heat; no heat is kept for birds that are sold.
            last_heat: (days(answers, "brooding.days_d").unwrap_or(DAYS_OF_HEAT) - 1)
                .min(age_of("sale.first_age").map_or(i32::MAX, |sale| sale - 1)),
            sale: age_of("sale.first_age"),
            last_sale: age_of("sale.last_age"),
            next: figure(turnaround::NEXT_PLACEMENT),
            chicks: answers.number("batch.chicks"),
            widened: rings.iter().filter_map(Widened::of).collect(),
            guards_out: whole.first().map(|step| step.from_day),
            feed_changes: feed_changes(outcome),
            deliveries: later_deliveries(answers, outcome),
            feed_orders: feed_orders(answers, outcome),
            sold: sold(answers, outcome),
            booked: -days(answers, "batch.deposit_before_d").unwrap_or(BOOKED_D),
        }
    }

    /// The age on a day that tasks are counted from.
    pub(super) fn age(&self, anchor: Anchor) -> Option<i32> {
        match anchor {
            Anchor::Empty => self.empty,
            Anchor::Litter => self.litter,
            Anchor::Feed => Some(self.feed),
            Anchor::Booked => Some(self.booked),
            Anchor::Warming => self.warming,
            Anchor::Placement => Some(0),
            Anchor::LastHeat => Some(self.last_heat),
            Anchor::Sale => self.sale,
            Anchor::LastSale => self.last_sale,
            Anchor::Next => self.next,
        }
    }
}

fn days(answers: &Answers, key: &str) -> Option<i32> {
    answers.number(key).map(|days| days as i32)
}

/// The days of age on which the next feed is begun.
fn feed_changes(outcome: &Outcome) -> Vec<i32> {
    let last = outcome.number("sale.last_age");
    let mut changes: Vec<i32> = ["feed.starter_until", "feed.grower_until", "feed.finisher_until"]
        .into_iter()
        .filter_map(|id| outcome.number(id).filter(|until| last.is_some_and(|last| *until < last)))
        .map(|until| until as i32 + 1)
        .collect();
    changes.dedup();
    changes
}

/// Birds sold: day by day as they were scheduled, else evenly from the first day to the last.
fn sold(answers: &Answers, outcome: &Outcome) -> Vec<Sold> {
    let on = |day: i32| outcome.on_day("sale.birds_by_day", day);
    if let Some(schedule) = answers.schedule("sale.days") {
        let step = |(day, _)| Sold { first: day, last: day, birds_a_day: on(day) };
        // Where fewer birds are left than were promised, the last days have none.
        return schedule.steps().map(step).filter(|sold| sold.birds_a_day.is_none_or(|n| n >= 0.5)).collect();
    }
    let age_of = |id: &str| outcome.number(id).map(|day| day as i32);
    let (Some(first), Some(last)) = (age_of("sale.first_age"), age_of("sale.last_age")) else {
        return Vec::new();
    };
    let birds: Option<Vec<f64>> = (first..=last).map(on).collect();
    let mean = birds.filter(|birds| !birds.is_empty());
    let birds_a_day = mean.map(|birds| (birds.iter().sum::<f64>() / birds.len() as f64).round());
    vec![Sold { first, last, birds_a_day }]
}

/// As many days before each day of delivery as it takes from the order; days of age.
fn feed_orders(answers: &Answers, outcome: &Outcome) -> Vec<i32> {
    let Some(lead) = days(answers, "feed.lead_d") else { return Vec::new() };
    let days: BTreeSet<i32> = store_room::deliveries(answers, outcome).iter().map(|one| one.day).collect();
    days.into_iter().map(|day| day - lead).collect()
}

/// Days of deliveries of feed after the first of them, in the order in which what they bring is eaten.
fn later_deliveries(answers: &Answers, outcome: &Outcome) -> Vec<i32> {
    let all = store_room::deliveries(answers, outcome);
    let first = all.iter().map(|one| one.day).min();
    let mut later: Vec<i32> = Vec::new();
    for one in all.iter().filter(|one| Some(one.day) != first) {
        if !later.contains(&one.day) {
            later.push(one.day);
        }
    }
    later
}

/// The day of age on which warming begins: a day earlier in the cold season.
fn warming(answers: &Answers, placement: CivilDay) -> i32 {
    let cold = space::hottest_months(answers).is_some_and(|hot| is_cold(placement.month(), &hot));
    if cold { -2 * WARMING_D } else { -WARMING_D }
}

/// The cold season is taken to lie half a year from the hottest months.
fn is_cold(month: i8, hottest: &[i8]) -> bool {
    const HALF_A_YEAR: i8 = 6;
    hottest.contains(&((month + HALF_A_YEAR - 1) % 12 + 1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cold_season_is_half_a_year_from_the_hot_one() {
        let hot = [9, 10, 11];
        let cold: Vec<i8> = (1..=12).filter(|month| is_cold(*month, &hot)).collect();
        assert_eq!(cold, [3, 4, 5]);
    }
}
