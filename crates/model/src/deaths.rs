//! A watch over the deaths of a batch: one running sum, two thresholds, steady, look and act.
//!
//! How often it rings falsely and how soon it notices is told by `cargo run --example deaths_watch -p model`.

use crate::counts::Law;
use crate::cusum::{self, Day, Score};

/// What a watch is tuned to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Design {
    /// How many times the deaths expected it is quickest to notice.
    pub tuned_to: f64,
    /// The clumping it allows for: size of the negative binomial law, none for Poisson.
    pub size: Option<f64>,
    /// The chance that steady deaths reach look within the batch.
    pub look_chance: f64,
    /// The chance that steady deaths reach act within the batch.
    pub act_chance: f64,
}

/// The usual design (our judgement).
///
/// Of the one false act in 20 batches that all signals together may cost, deaths have two thirds. Size 2 is the most clumped
/// of the usual ones, so the chances hold for every size from 2 on; a size told by the grower's
/// own batches ([`crate::counts::clumping`]) may take its place. 0.26 leaves 0.3 false looks a batch where the sum starts
/// anew after each, since -ln(1 - 0.26) = 0.30. Tuned to two and
/// a half times, it notices tripled and doubled deaths about as soon as a sum tuned to either.
pub const USUAL: Design = Design { tuned_to: 2.5, size: Some(2.0), look_chance: 0.26, act_chance: 0.033 };

/// How a day stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// As expected.
    Steady,
    /// Look closer: count again, look at birds, water, heat.
    Look,
    /// Act.
    Act,
}

impl Level {
    /// How a sum stands against the one from which on to look, and the one from which on to act.
    pub(crate) fn of<T: PartialOrd>(sum: T, look: T, act: T) -> Level {
        if sum >= act {
            Level::Act
        } else if sum >= look {
            Level::Look
        } else {
            Level::Steady
        }
    }
}

/// A watch over a batch whose expected deaths are known day by day.
///
/// To find its thresholds takes some milliseconds; they hang on the expected deaths alone, so they can be kept with the
/// plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Watch {
    /// How each day's deaths are scored.
    pub scores: Vec<Score>,
    /// The sum, in points, from which on to look.
    pub look: u32,
    /// The sum, in points, from which on to act.
    pub act: u32,
}

impl Watch {
    /// The watch whose false signals are as rare as the design asks.
    ///
    /// - `expected`: deaths expected each day, above 0; the more days, the higher the thresholds
    ///
    /// `None` for an expectation of 0, a design that cannot be, and where no threshold is high enough.
    pub fn over(expected: &[f64], design: Design) -> Option<Watch> {
        let score = |expected: &f64| Score::likelihood_ratio(*expected, design.tuned_to, design.size);
        let scores: Vec<Score> = expected.iter().map(score).collect::<Option<_>>()?;
        let steady: Vec<Day> = scores
            .iter()
            .zip(expected)
            .map(|(score, expected)| Day { score: *score, law: Law::of(*expected, design.size) })
            .collect();
        let look = cusum::least_threshold(&steady, design.look_chance)?;
        let act = cusum::least_threshold(&steady, design.act_chance)?;
        Some(Watch { scores, look, act })
    }

    /// The sum, in points, at the end of each day, from the first day of the batch.
    ///
    /// A day whose deaths were not written down leaves the sum as it was: it is no day without deaths. The sum stops at the
    /// threshold of acting, so that it is soon down again when the cause is gone.
    pub fn sums(&self, deaths: &[Option<u32>]) -> Vec<u32> {
        let next = |sum: &mut u32, (score, deaths): (&Score, &Option<u32>)| {
            *sum = deaths.map_or(*sum, |deaths| score.next(*sum, deaths).min(self.act));
            Some(*sum)
        };
        self.scores.iter().zip(deaths).scan(0, next).collect()
    }

    /// How a sum stands.
    pub fn level(&self, sum: u32) -> Level {
        Level::of(sum, self.look, self.act)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn levels(watch: &Watch, deaths: &[Option<u32>]) -> Vec<Level> {
        watch.sums(deaths).into_iter().map(|sum| watch.level(sum)).collect()
    }

    /// Derived: 7 dead where 2 are expected add 7 (ln 2.5 - ln 1.75) - 2 ln 1.75 = 1.38 a day to a sum that was 0; look is at
    /// 2.84, so the third day reaches it.
    #[test]
    fn a_rise_passes_look_before_act() {
        let watch = Watch::over(&[2.0; 42], USUAL).unwrap();
        assert!(levels(&watch, &[Some(2); 42]).iter().all(|level| *level == Level::Steady));
        let mut deaths = vec![Some(2); 20];
        deaths.extend([Some(7); 10]);
        let levels = levels(&watch, &deaths);
        assert!(levels.is_sorted() && levels.contains(&Level::Look) && levels.contains(&Level::Act));
        assert_eq!((watch.look, levels.iter().filter(|level| **level == Level::Steady).count()), (71, 22));
    }

    #[test]
    fn a_day_not_written_down_is_no_day_without_deaths() {
        let watch = Watch::over(&[1.0; 10], USUAL).unwrap();
        let sums = watch.sums(&[Some(4), None, Some(0)]);
        assert!(sums[0] == sums[1] && sums[2] < sums[1], "{sums:?}");
    }

    #[test]
    fn more_days_need_higher_thresholds() {
        let over = |days| Watch::over(&vec![1.5; days], USUAL).unwrap();
        let (short, long) = (over(28), over(56));
        assert!(short.look < long.look && short.act < long.act && short.look < short.act);
        assert_eq!(Watch::over(&[1.0, 0.0], USUAL), None);
        assert_eq!(Watch::over(&[1.0], Design { tuned_to: 1.0, ..USUAL }), None);
    }
}
