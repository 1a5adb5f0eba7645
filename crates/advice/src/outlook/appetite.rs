//! How much the birds of this house eat beside the plan's table: at each age, by its earlier batches, and of late, by this one.
//!
//! What a day's feed is held against is the table, the weight the birds have reached and the heat. What is left over is of three
//! kinds: of the house at an age (its feed, its feeders, its breed against the table), of the batch, which fades in days, and of
//! the day. The first is learnt from earlier batches, as far as they are enough (a mean shrunk towards the table, as in
//! [efron-morris-1975], from memory); the second from the days of late.

use std::collections::BTreeMap;

use model::growth::between;
use model::outlook::filter::State;
use model::outlook::futures::{FEED_WITH_WEIGHT, eaten_in_heat};
use quantity::Answers;

use super::{APPETITE_DAYS, HEAT_DAYS, Standard, too_hot};
use crate::diary::{Diary, set_number};
use crate::families::growing;
use crate::families::outlook as keys;
use crate::outcome::Outcome;
use crate::past::{Past, PastBatch};

/// How far the appetite of a batch strays from what is usual in its house, the same of one day, and how far a house strays from the
/// table at an age; shares (our judgement).
const OF_A_BATCH: f64 = 0.08;
const OF_A_DAY: f64 = 0.07;
const OF_A_HOUSE: f64 = 0.12;

/// A day's feed further off than this was not all written, or written twice: it counts as if it were so far off.
const MOST: f64 = 0.3;

/// Days about an age that tell of it.
const ABOUT_D: i32 = 3;

/// What is usual in a house.
pub(super) struct Usual {
    /// ln of what birds eat of the table, by day of age.
    by_day: BTreeMap<i32, f64>,
    /// How far that may be off.
    off: f64,
}

impl Usual {
    /// By the earlier batches of the house.
    pub(super) fn of(past: &Past, answers: &Answers, standard: &Standard) -> Usual {
        let Some(table) = answers.by_day(growing::EXPECTED_FEED) else {
            return Usual { by_day: BTreeMap::new(), off: OF_A_HOUSE };
        };
        let batches: Vec<BTreeMap<i32, f64>> =
            past.batches.iter().map(|batch| beside_table(batch, table, standard)).collect();
        let told = |day: i32| -> Vec<f64> { batches.iter().filter_map(|batch| about(batch, day)).collect() };
        let by_day = table.keys().filter_map(|&day| {
            let seen = told(day);
            let believed = 1.0 - left_open(seen.len()) / OF_A_HOUSE.powi(2);
            Some((day, believed * model::weighing::mean(&seen)?))
        });
        let by_day: BTreeMap<i32, f64> = by_day.collect();
        let taught = batches.iter().filter(|batch| !batch.is_empty()).count();
        Usual { by_day, off: left_open(taught).sqrt() }
    }

    /// So many times the table's feed is eaten at an age.
    pub(super) fn times(&self, day: i32) -> f64 {
        self.by_day.get(&day).copied().unwrap_or_default().exp()
    }
}

/// The variance of what a house is at an age, after so many batches.
fn left_open(batches: usize) -> f64 {
    let of_one = OF_A_BATCH.powi(2) + OF_A_DAY.powi(2) / f64::from(2 * ABOUT_D + 1);
    1.0 / (OF_A_HOUSE.powi(-2) + batches as f64 / of_one)
}

/// ln of what the birds of a batch ate of the table, for what they weighed, by day.
fn beside_table(batch: &PastBatch, table: &BTreeMap<i32, f64>, standard: &Standard) -> BTreeMap<i32, f64> {
    let weighed = |day: i32| Some((between(&batch.weight_g, day)? / standard.on(day)?).ln());
    let on = |(day, grams): &(i32, f64)| {
        let off = (grams / table.get(day)?).ln() - FEED_WITH_WEIGHT * weighed(*day).unwrap_or_default();
        off.is_finite().then(|| (*day, off.clamp(-MOST, MOST)))
    };
    batch.feed_g.iter().filter_map(on).collect()
}

/// The mean of the days about one.
fn about(batch: &BTreeMap<i32, f64>, day: i32) -> Option<f64> {
    let days: Vec<f64> = batch.range(day - ABOUT_D..=day + ABOUT_D).map(|(_, off)| *off).collect();
    model::weighing::mean(&days)
}

/// Appetite and heat of late. What heat takes is taken out of the appetite first, so that the same heat ahead counts once.
pub(super) fn write(diary: &mut Diary, usual: &Usual, state: &State, today: i32) {
    let mut outcome = Outcome::default();
    outcome.days_of(&diary.answers, crate::families::series_named("growing.feed_a_bird_by_day"));
    let answers = &diary.answers;
    let expected = |day: i32| Some(answers.by_day(growing::EXPECTED_FEED)?.get(&day)? * usual.times(day));
    let off = |day: i32| {
        let eaten = outcome.on_day("growing.feed_a_bird_by_day", day)?;
        let cooler = eaten_in_heat(too_hot(answers, day).unwrap_or_default().max(0.0));
        let off = (eaten / (expected(day)? * cooler)).ln() - FEED_WITH_WEIGHT * state.level;
        off.is_finite().then(|| off.clamp(-MOST, MOST))
    };
    let seen: Vec<f64> = ((today - APPETITE_DAYS).max(0)..=today).filter_map(off).collect();
    let far_off = OF_A_BATCH.hypot(usual.off);
    let of_days = OF_A_DAY.powi(-2);
    let precision = far_off.powi(-2) + of_days * seen.len() as f64;
    let appetite = of_days * seen.iter().sum::<f64>() / precision;
    let hot: Vec<f64> = ((today - HEAT_DAYS + 1)..=today).filter_map(|day| too_hot(answers, day)).collect();
    let hot = model::weighing::mean(&hot).unwrap_or_default();
    set_number(&mut diary.answers, keys::APPETITE, 100.0 * appetite);
    set_number(&mut diary.answers, keys::APPETITE_OFF, 100.0 * precision.powf(-0.5));
    set_number(&mut diary.answers, keys::APPETITE_AHEAD, 100.0 * far_off);
    set_number(&mut diary.answers, keys::TOO_HOT, hot);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn batch(times: f64) -> PastBatch {
        let days = |of: &dyn Fn(i32) -> f64| (1..=40).map(|day| (day, of(day))).collect::<Vec<(i32, f64)>>();
        PastBatch {
            batch: book::BatchId(uuid::Uuid::from_u128(1)),
            name: None,
            placement: quantity::CivilDay::new(2031, 1, 1).unwrap(),
            weight_g: days(&|day| 50.0 * f64::from(day)),
            losses_percent: Vec::new(),
            feed_g: days(&|day| if day < 15 { times * 100.0 } else { 100.0 }),
            water_ml: Vec::new(),
        }
    }

    fn usual(batches: Vec<PastBatch>) -> Usual {
        let table: BTreeMap<i32, f64> = (0..=42).map(|day| (day, 100.0)).collect();
        let mut answers = Answers::default();
        crate::diary::set_days(&mut answers, growing::EXPECTED_FEED, table);
        let planned = (0..=42).map(|day| (day, 50.0 * f64::from(day))).collect();
        let standard = Standard { planned, beyond: BTreeMap::new() };
        Usual::of(&Past { batches }, &answers, &standard)
    }

    /// A house whose birds eat more than the table in their second week is believed the more, the more batches show it, and only
    /// of that age.
    #[test]
    fn a_house_teaches_its_appetite_by_age() {
        let times = |count: usize| usual(vec![batch(1.25); count]).times(8);
        assert_eq!(times(0), 1.0);
        assert!(1.0 < times(1) && times(1) < times(2) && times(2) < times(5) && times(5) < 1.25);
        assert!(times(5) > 1.2, "{}", times(5));
        assert!((usual(vec![batch(1.25); 5]).times(30) - 1.0).abs() < 1e-9);
        let off = |count: usize| usual(vec![batch(1.25); count]).off;
        assert_eq!(off(0), OF_A_HOUSE);
        assert!(off(1) < off(0) && off(5) < off(1));
    }
}
