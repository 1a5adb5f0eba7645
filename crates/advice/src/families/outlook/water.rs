//! How much water the days to come take.

use model::outlook::futures::{Future, Now};
use quantity::{Answers, Series};

use super::birds::days;
use super::middle;
use crate::outcome::Outcome;
use crate::procedure::Simulated;

/// Water drunk on each day to come.
pub const WATER: &str = "outlook.water";

/// Only where the futures were asked for, and the plan says how much water goes with feed.
pub(super) fn by_day(_: &Answers, outcome: &Outcome) -> Option<Series> {
    let (now, futures) = outcome.drawn().futures()?;
    days(WATER, now, |at| futures.iter().filter_map(|future| future.water_l(now, at)).collect())
}

/// The most that is drunk on a day up to the first day of sale, and the first day that takes more than the tank holds; `None`
/// where the middle is beyond the days looked at.
pub(super) fn answer(
    now: &Now,
    futures: &[Future],
    at_sale: Option<usize>,
    tank_l: f64,
) -> Vec<Option<Simulated>> {
    let until = at_sale.map_or(0, |at| at + 1);
    let most = |future: &Future| {
        (0..until).map(|at| future.water_l(now, at)).try_fold(0.0, |most, day| Some(f64::max(most, day?)))
    };
    let most: Vec<f64> = futures.iter().filter_map(most).filter(|most| *most > 0.0).collect();
    let first = f64::from(now.first_day);
    let beyond = first + now.days.len() as f64;
    let too_much = |future: &Future| {
        let day = (0..now.days.len()).find(|at| future.water_l(now, *at).is_some_and(|day| day > tank_l));
        day.map_or(beyond, |at| first + at as f64)
    };
    let has_tank = tank_l > 0.0 && !most.is_empty();
    let short = has_tank.then(|| middle(&futures.iter().map(too_much).collect::<Vec<f64>>(), Some(beyond)));
    vec![middle(&most, None), short.flatten()]
}
