//! Between which weights the birds themselves lie on the days to come, and how many of them are what a buyer takes.

use model::outlook::futures::{Future, Now};
use model::outlook::spread::Birds;
use model::risk;
use model::scenarios::SIGMAS_IN_90;
use quantity::{Answers, BandKind, Series};

use super::middle;
use crate::outcome::Outcome;
use crate::procedure::Simulated;

/// What nineteen of twenty birds weigh at least, by day.
pub const LIGHT: &str = "outlook.light_bird";
/// What nineteen of twenty birds weigh at most, by day.
pub const HEAVY: &str = "outlook.heavy_bird";

/// An end of nine birds in ten.
#[derive(Clone, Copy)]
enum End {
    Light,
    Heavy,
}

impl End {
    /// So many times the mean it weighs in a future.
    fn times(self, future: &Future) -> f64 {
        let birds = Birds::of(future.cv);
        match self {
            End::Light => birds.at(-SIGMAS_IN_90),
            End::Heavy => birds.at(SIGMAS_IN_90),
        }
    }
}

/// Only where the futures were asked for.
pub(super) fn light(_: &Answers, outcome: &Outcome) -> Option<Series> {
    by_day(LIGHT, End::Light, outcome)
}

/// The same of the heavy end.
pub(super) fn heavy(_: &Answers, outcome: &Outcome) -> Option<Series> {
    by_day(HEAVY, End::Heavy, outcome)
}

fn by_day(id: &'static str, end: End, outcome: &Outcome) -> Option<Series> {
    let (now, futures) = outcome.drawn().futures()?;
    let times: Vec<f64> = futures.iter().map(|future| end.times(future)).collect();
    days(id, now, |at| {
        let each = futures.iter().zip(&times);
        each.filter_map(|(future, times)| Some(times * future.days.get(at)?.weight_g)).collect()
    })
}

/// A figure by day out of a column of futures for each of the days to come: its middle with nine of ten.
pub(super) fn days(id: &'static str, now: &Now, column: impl Fn(usize) -> Vec<f64>) -> Option<Series> {
    let mut series = Series {
        id,
        index: Vec::new(),
        values: Vec::new(),
        low: Vec::new(),
        high: Vec::new(),
        kind: Some(BandKind::Prediction90),
    };
    for at in 0..now.days.len() {
        let sorted = risk::sorted(&column(at));
        let point = |share| risk::quantile(&sorted, share);
        series.index.push(f64::from(now.first_day) + at as f64);
        series.values.push(point(0.5)?);
        series.low.push(point(0.05)?);
        series.high.push(point(0.95)?);
    }
    Some(series)
}

/// What is asked of the birds.
pub(super) struct Asked {
    /// The mean weight at which they are sold, g.
    pub(super) wanted_g: f64,
    /// The first day of sale, as a place among the days to come; `None` where it is past.
    pub(super) at_sale: Option<usize>,
    /// What a buyer takes, kg; 0 for no limit.
    pub(super) least_kg: f64,
    pub(super) most_kg: f64,
}

/// How far they differ in percent; the light and the heavy end at sale, and on the day they weigh enough on average; the percent
/// of them that a buyer takes at sale.
pub(super) fn answer(futures: &[Future], asked: &Asked) -> Vec<Option<Simulated>> {
    let column = |read: &dyn Fn(&Future) -> Option<f64>| {
        middle(&futures.iter().filter_map(read).collect::<Vec<f64>>(), None)
    };
    let on_sale = |future: &Future| Some(future.days.get(asked.at_sale?)?.weight_g);
    let when_heavy_enough = |future: &Future| {
        future.days.iter().map(|point| point.weight_g).find(|weight| *weight >= asked.wanted_g)
    };
    let reached = futures.iter().filter(|future| when_heavy_enough(future).is_some()).count();
    let is_reached = 2 * reached > futures.len();
    let heavy_enough = |end: End| {
        is_reached.then(|| column(&|future| Some(end.times(future) * when_heavy_enough(future)?))).flatten()
    };
    let most_kg = if asked.most_kg > 0.0 { asked.most_kg } else { f64::INFINITY };
    let has_buyer = asked.least_kg > 0.0 || asked.most_kg > 0.0;
    let taken = |future: &Future| {
        let mean_kg = on_sale(future)? / 1000.0;
        Some(100.0 * Birds::of(future.cv).between(asked.least_kg / mean_kg, most_kg / mean_kg))
    };
    vec![
        column(&|future| Some(100.0 * future.cv)),
        column(&|future| Some(End::Light.times(future) * on_sale(future)?)),
        column(&|future| Some(End::Heavy.times(future) * on_sale(future)?)),
        heavy_enough(End::Light),
        heavy_enough(End::Heavy),
        has_buyer.then(|| column(&taken)).flatten(),
    ]
}
