//! What is still to be bought: the bags that the days to come need, and the conditions, as the model takes them.

use model::buying::{Buying, Credit, Feed, Measure, Size};
use quantity::Answers;

use super::prices;
use crate::store_room::Phase;

/// A feed that is still eaten.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Eaten {
    pub(super) phase: Phase,
    /// The day of age of the first of `kg`.
    pub(super) from: i32,
    /// What is eaten of it on each day to come.
    pub(super) kg: Vec<f64>,
    /// What is left of it in the store.
    pub(super) in_hand_kg: f64,
    /// The sizes of bags on offer: what one holds, kg, and what it costs on the first day of buying.
    pub(super) sizes: Vec<(f64, f64)>,
}

/// All that decides what is bought when. Days are days of age.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Wanted {
    /// The weight of which every size on offer is a whole number, kg; `None` where each feed comes in bags of one size, which is
    /// then its measure.
    pub(super) measure_kg: Option<f64>,
    /// In the order in which they are eaten; none without bags to buy or in hand.
    pub(super) feeds: Vec<Eaten>,
    /// The first day on which anything can come.
    pub(super) first: i32,
    /// The last day on which anything is eaten.
    pub(super) last: i32,
    /// Feed of days up to this one comes on the first day.
    pub(super) covers: i32,
    /// Later feed comes so many days before it is opened.
    pub(super) ahead: i32,
    /// Days that feed keeps from the day it comes.
    pub(super) keeps: i32,
    /// What a bag holds that the store room is counted in, kg.
    pub(super) bag_kg: f64,
    /// Bags that find room.
    pub(super) room: Option<usize>,
    pub(super) fee: f64,
    /// Added to the rise of prices that was told, percent a month.
    pub(super) more_rise: f64,
    /// Interest a year, as a share.
    pub(super) interest: f64,
    /// The most that may be owed; `None` without limit.
    pub(super) limit: Option<f64>,
    /// Money by day if no feed were bought.
    pub(super) money: Vec<f64>,
}

impl Wanted {
    /// What a measure of a feed weighs: a bag, or what bags of all sizes have in common.
    fn measure_of(&self, eaten: &Eaten) -> f64 {
        self.measure_kg.unwrap_or(eaten.sizes[0].0)
    }

    /// Measures that a bag of a size holds.
    pub(super) fn measures_in(&self, eaten: &Eaten, size: usize) -> usize {
        (eaten.sizes[size].0 / self.measure_of(eaten)).round() as usize
    }

    /// So many measures in the bags that the store room is counted in.
    pub(super) fn in_bags(&self, measures: usize) -> usize {
        measures.div_ceil(self.in_own_bag())
    }

    /// Measures in a bag that the store room is counted in.
    fn in_own_bag(&self) -> usize {
        self.measure_kg.map_or(1, |measure| (self.bag_kg / measure).round().max(1.0) as usize)
    }

    /// The measures of a feed, opened and eaten up on which days of age: what is in hand first.
    pub(super) fn measures(&self, eaten: &Eaten) -> (Vec<i32>, Vec<(i32, i32)>) {
        let measure_kg = self.measure_of(eaten);
        let mut so_far = 0.0;
        let reached: Vec<f64> = eaten
            .kg
            .iter()
            .map(|kg| {
                so_far += kg;
                so_far
            })
            .collect();
        let last = eaten.from + eaten.kg.len() as i32 - 1;
        let day = |kg: f64, opens: bool| {
            let before = |reached: &f64| if opens { *reached <= kg + 1e-9 } else { *reached < kg - 1e-9 };
            (eaten.from + reached.partition_point(before) as i32).min(last)
        };
        let count = |kg: f64| (kg / measure_kg - 1e-9).ceil().max(0.0) as usize;
        let in_hand = eaten.in_hand_kg.max(0.0);
        let held = (0..count(in_hand)).map(|at| day((at + 1) as f64 * measure_kg, false));
        let bought = (0..count(so_far - in_hand)).map(|at| {
            let begins = in_hand + at as f64 * measure_kg;
            (day(begins, true), day(begins + measure_kg, false))
        });
        (held.collect(), bought.collect())
    }

    /// For the model: periods are days from the first on.
    pub(super) fn model(&self, answers: &Answers) -> Buying {
        let period = |day: i32| usize::try_from(day - self.first).unwrap_or(0);
        let days = self.first..=self.last.max(self.first);
        let mut stock = Vec::new();
        let mut feeds = Vec::new();
        for eaten in &self.feeds {
            let (held, bought) = self.measures(eaten);
            stock.extend(held.into_iter().map(period));
            let measure = |(opened, finished): (i32, i32)| {
                let needed = if opened <= self.covers { self.first } else { opened - self.ahead };
                Measure { needed: period(needed), finished: period(finished) }
            };
            let size = |(at, (_, price)): (usize, &(f64, f64))| Size {
                measures: self.measures_in(eaten, at),
                price: days.clone().map(|day| price * self.factor(answers, day)).collect(),
            };
            feeds.push(Feed {
                measures: bought.into_iter().map(measure).collect(),
                sizes: eaten.sizes.iter().enumerate().map(size).collect(),
            });
        }
        let money = days.clone().map(|day| self.money.get(period(day)).copied().unwrap_or_default());
        let credit = Credit { rate: self.interest / 365.0, money: money.collect(), limit: self.limit };
        Buying {
            feeds,
            fee: days.map(|_| self.fee).collect(),
            holding: 0.0,
            keeps: self.keeps as usize + 1,
            room: self.room.map(|bags| bags * self.in_own_bag()),
            stock,
            credit: (self.interest > 0.0 || self.limit.is_some()).then_some(credit),
        }
    }

    /// How many times its first price a bag costs on a day. What is asked beyond the prices told goes no lower than nothing.
    fn factor(&self, answers: &Answers, day: i32) -> f64 {
        let more = self.more_rise / 100.0 * f64::from(day - self.first) / 30.0;
        let told = prices::factor(answers, day);
        if self.more_rise == 0.0 { told } else { told + more }
    }
}
