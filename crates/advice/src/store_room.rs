//! When feed comes into the store room: how many bags of which feed on which day.

use quantity::Answers;

use crate::buying::prices;
use crate::outcome::Outcome;
use crate::series::Listed;

/// A kind of feed, in the order in which it is eaten.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Phase {
    /// The first feed.
    Starter,
    /// The second, where there are three or four.
    Grower,
    /// The last but one of four, else the last.
    Finisher,
    /// The last of four, often without the medicine that the others hold.
    Last,
}

impl Phase {
    /// All of them.
    pub const ALL: [Phase; 4] = [Phase::Starter, Phase::Grower, Phase::Finisher, Phase::Last];

    /// The stable name used in JSON and message keys.
    pub fn name(self) -> &'static str {
        match self {
            Phase::Starter => "starter",
            Phase::Grower => "grower",
            Phase::Finisher => "finisher",
            Phase::Last => "last",
        }
    }

    /// The figure of the last day it is eaten.
    pub fn last_day_figure(self) -> &'static str {
        self.figures().1
    }

    /// The figure of its bags, and of its last day.
    fn figures(self) -> (&'static str, &'static str) {
        match self {
            Phase::Starter => ("feed.bags_starter", "feed.starter_until"),
            Phase::Grower => ("feed.bags_grower", "feed.grower_until"),
            Phase::Finisher => ("feed.bags_finisher", "feed.finisher_until"),
            Phase::Last => ("feed.bags_last", "sale.last_age"),
        }
    }
}

/// Bags of one feed that come on one day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Delivery {
    /// Which feed.
    pub phase: Phase,
    /// The day of age they come on; negative before placement.
    pub day: i32,
    /// How many.
    pub bags: f64,
    /// What a bag holds, kg, where feed is to be had in bags of another size too; else `feed.bag_kg`.
    pub size_kg: Option<f64>,
    /// The day of age the first of them is opened.
    pub eaten_from: i32,
    /// The last day of age they are eaten.
    pub eaten_until: i32,
}

impl Delivery {
    /// How many bags it would be in a plan's own bags.
    ///
    /// - `bag_kg`: what each of them holds
    pub fn in_bags_of(&self, bag_kg: f64) -> f64 {
        self.bags * self.size_kg.map_or(1.0, |size| size / bag_kg)
    }
}

/// The figures that deliveries are made from.
pub(crate) const NEEDS: &[&str] = &[
    "feed.bags_starter",
    "feed.bags_grower",
    "feed.bags_finisher",
    "feed.bags_last",
    "feed.total",
    "feed.keeps",
    "feed.store_room",
    "feed.grower_price",
    "feed.last_price",
];

/// Whether all feed is bought before the chicks come.
pub(crate) fn all_at_once(answers: &Answers) -> bool {
    answers.choice("feed.buying") == Some("all-at-once")
}

/// Whether the cheapest days are looked for.
pub(crate) fn cheapest(answers: &Answers) -> bool {
    answers.choice("feed.buying") == Some("cheapest")
}

/// Whether feed is bought in bags of two sizes: only who looks for the cheapest days is told which.
pub(crate) fn in_two_sizes(answers: &Answers) -> bool {
    let other = answers.number("feed.other_bag_kg");
    let apart = other.is_some() && other != answers.number("feed.bag_kg");
    apart
        && cheapest(answers)
        && Phase::ALL.iter().any(|phase| prices::of_other_bag(answers, *phase).is_some())
}

/// The bags that come on a day, or on all days together, by what each holds, the larger first.
pub fn bags_by_size(answers: &Answers, outcome: &Outcome, day: Option<i32>) -> Vec<(f64, Option<f64>)> {
    let all = deliveries(answers, outcome);
    let mut sizes: Vec<(f64, Option<f64>)> = Vec::new();
    for one in all.iter().filter(|one| day.is_none_or(|day| day == one.day)) {
        match sizes.iter_mut().find(|(_, size)| *size == one.size_kg) {
            Some((bags, _)) => *bags += one.bags,
            None => sizes.push((one.bags, one.size_kg)),
        }
    }
    sizes.sort_by(|(_, one), (_, other)| other.partial_cmp(one).unwrap_or(std::cmp::Ordering::Equal));
    sizes
}

/// The last day of age on which feed of the first day of deliveries is eaten; `None` while deliveries are not known.
pub(crate) fn first_eaten_until(answers: &Answers, outcome: &Outcome) -> Option<f64> {
    let all = deliveries(answers, outcome);
    let first = all.iter().map(|one| one.day).min()?;
    let last = all.iter().filter(|one| one.day == first).map(|one| one.eaten_until).max()?;
    Some(f64::from(last))
}

/// Every delivery, in the order in which it is eaten; empty while bags or days are not known. Where no cheapest way can be
/// found, each feed comes before it is opened.
pub fn deliveries(answers: &Answers, outcome: &Outcome) -> Vec<Delivery> {
    let cheapest = cheapest(answers).then(|| outcome.cheapest_deliveries(answers)).flatten();
    cheapest.unwrap_or_else(|| by_calendar(answers, outcome))
}

/// Every delivery of who buys by the calendar: the first feed early, the rest in time before it is opened.
fn by_calendar(answers: &Answers, outcome: &Outcome) -> Vec<Delivery> {
    let Some(calendar) = Calendar::of(answers, outcome) else { return Vec::new() };
    let mut from = 0;
    let mut all = Vec::new();
    for phase in Phase::ALL {
        let (bags, until) = phase.figures();
        let (Some(bags), Some(until)) = (outcome.number(bags), outcome.number(until)) else {
            return Vec::new();
        };
        let until = until as i32;
        if bags > 0.0 && until >= from {
            all.extend(calendar.split(
                outcome,
                Delivery {
                    phase,
                    day: calendar.first,
                    bags,
                    size_kg: None,
                    eaten_from: from,
                    eaten_until: until,
                },
            ));
        }
        from = from.max(until + 1);
    }
    all
}

/// When feed comes, by what was told.
struct Calendar {
    /// The day of the first delivery.
    first: i32,
    /// The last day that the first delivery must reach.
    covers: i32,
    /// Days ahead of need that later deliveries come.
    ahead: i32,
    /// Days that feed milled on the day it comes would keep.
    keeps: i32,
    bag_kg: f64,
}

impl Calendar {
    fn of(answers: &Answers, outcome: &Outcome) -> Option<Calendar> {
        let days = |key| answers.number(key).map(|days| days as i32);
        let all = all_at_once(answers);
        Some(Calendar {
            first: -days("feed.on_hand_before_d")?,
            covers: if all { i32::MAX } else { days("feed.on_hand_days_d")? },
            ahead: days("feed.ahead_d")?,
            keeps: outcome.number("feed.keeps")? as i32,
            bag_kg: answers.number("feed.bag_kg")?,
        })
    }

    /// The part of a feed that the first delivery brings, and the rest in time before it is opened.
    fn split(&self, outcome: &Outcome, whole: Delivery) -> Vec<Delivery> {
        let now = self.bags_in_first(outcome, &whole);
        let rest_from = whole.eaten_from.max(self.covers.saturating_add(1));
        let rest = Delivery {
            day: (rest_from - self.ahead).max(self.first),
            bags: whole.bags - now,
            eaten_from: if now > 0.0 { rest_from.min(whole.eaten_until) } else { whole.eaten_from },
            ..whole
        };
        let eaten_until = if rest.bags > 0.0 { self.covers } else { whole.eaten_until };
        let first = Delivery { day: self.first, bags: now, eaten_until, ..whole };
        let parts = self.parts(outcome, rest);
        [first].into_iter().chain(parts).filter(|delivery| delivery.bags > 0.0).collect()
    }

    /// What comes later, in parts that are each eaten before feed milled that day is too old.
    fn parts(&self, outcome: &Outcome, rest: Delivery) -> Vec<Delivery> {
        let days = (self.keeps - self.ahead).max(1);
        let (mut from, mut left, mut eaten) = (rest.eaten_from, rest.bags, 0.0);
        let mut parts = Vec::new();
        while left > 0.0 && from <= rest.eaten_until {
            let until = (from + days - 1).min(rest.eaten_until);
            eaten += self.eaten(outcome, from, until);
            let taken = rest.bags - left;
            let whole_bags = (eaten / self.bag_kg - 1e-9).ceil() - taken;
            let bags = if until == rest.eaten_until { left } else { whole_bags.clamp(0.0, left) };
            parts.push(Delivery {
                day: (from - self.ahead).max(rest.day),
                bags,
                eaten_from: from,
                eaten_until: until,
                ..rest
            });
            left -= bags;
            from = until + 1;
        }
        parts
    }

    fn eaten(&self, outcome: &Outcome, from: i32, until: i32) -> f64 {
        (from..=until).filter_map(|day| outcome.on_day("feed.by_day", day)).sum()
    }

    fn bags_in_first(&self, outcome: &Outcome, whole: &Delivery) -> f64 {
        if whole.eaten_until <= self.covers {
            return whole.bags;
        }
        let kg = self.eaten(outcome, whole.eaten_from, self.covers);
        (kg / self.bag_kg - 1e-9).ceil().min(whole.bags)
    }
}

/// What is delivered on which day, kg; `None` while the bags are not known.
pub(crate) fn delivered_kg(answers: &Answers, outcome: &Outcome) -> Option<Listed> {
    let bag_kg = answers.number("feed.bag_kg")?;
    outcome.number("feed.bags_last")?;
    Some(
        deliveries(answers, outcome)
            .into_iter()
            .map(|one| (one.day, one.in_bags_of(bag_kg) * bag_kg))
            .collect(),
    )
}
