//! What is measured day by day and held against what was expected of it: its own level, the surprise of a day, and a
//! running sum of surprises that remembers a small change which stays.
//!
//! A house drinks a tenth more than a plan says, every day: that is its level and no news. The level is learnt from the
//! days before (a local level filter), a day's surprise is its distance from it in standard deviations, and the sums of
//! surprises upwards and downwards ring at thresholds ([page-1954]). A wild day moves the level no further than two
//! standard deviations would. A day that was not written is not there: it adds nothing, it only makes the level less sure.

use crate::deaths::Level;

/// Which change is bad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// A fall.
    Down,
    /// A rise.
    Up,
    /// Either.
    Both,
}

/// How something is watched.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tuning {
    /// What a first day is expected to be, before a batch's own level is known.
    pub expected: f64,
    /// How far the level of a batch usually is from that (standard deviation).
    pub start: f64,
    /// How far the level moves in a day (standard deviation).
    pub drift: f64,
    /// How far a day is from the level (standard deviation), before the batch tells its own.
    pub noise: f64,
    /// How many days that knowledge of the noise is worth.
    pub noise_days: f64,
    /// Taken off each surprise before it is added, in standard deviations: half the change that is to be found.
    pub allowance: f64,
    /// The sum from which on to look.
    pub look: f64,
    /// The sum from which on to act.
    pub act: f64,
    /// Which change is bad.
    pub side: Side,
}

/// Something measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// Day of age.
    pub day: i32,
    /// What was measured.
    pub value: f64,
    /// Its own error known beforehand, as a variance, such as that of a mean of few birds; 0 where it has none.
    pub error: f64,
}

/// A day of a watch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// What was measured.
    pub seen: Seen,
    /// The level expected of the day by those before.
    pub expected: f64,
    /// The standard deviation of the day around it.
    pub deviation: f64,
    /// The distance in standard deviations.
    pub surprise: f64,
    /// The running sum that stands higher, of those that count.
    pub sum: f64,
    /// How the day stands.
    pub level: Level,
}

/// A wild day moves the level no further than so many standard deviations would.
const MOST_SURPRISE: f64 = 2.0;
/// A wild day adds no more than this surprise to a sum: one day alone, a slip of the pen, shall not ring.
const MOST_ADDED: f64 = 3.5;

impl Tuning {
    /// How a sum stands.
    pub fn level(&self, sum: f64) -> Level {
        Level::of(sum, self.look, self.act)
    }

    /// Follows what was measured, in the order of days.
    pub fn follow(&self, seen: &[Seen]) -> Vec<Step> {
        let mut filter = Filter::of(self);
        seen.iter().map(|seen| filter.next(self, *seen)).collect()
    }
}

/// What is known after some days.
struct Filter {
    day: Option<i32>,
    level: f64,
    /// Variance of the level.
    doubt: f64,
    /// Sum of squares of the noise, and the days it is worth.
    noise: (f64, f64),
    fall: f64,
    rise: f64,
}

impl Filter {
    fn of(tuning: &Tuning) -> Filter {
        Filter {
            day: None,
            level: tuning.expected,
            doubt: tuning.start.powi(2),
            noise: (tuning.noise_days * tuning.noise.powi(2), tuning.noise_days),
            fall: 0.0,
            rise: 0.0,
        }
    }

    fn next(&mut self, tuning: &Tuning, seen: Seen) -> Step {
        let gap = self.day.map_or(0, |day| (seen.day - day).max(0));
        self.doubt += tuning.drift.powi(2) * f64::from(gap);
        let noise = self.noise.0 / self.noise.1;
        let spread = self.doubt + noise + seen.error;
        let (expected, deviation) = (self.level, spread.sqrt());
        let surprise = (seen.value - expected) / deviation;
        self.add(tuning, surprise);
        self.learn(surprise, spread, noise);
        self.day = Some(seen.day);
        let sum = self.sum(tuning.side);
        Step { seen, expected, deviation, surprise, sum, level: tuning.level(sum) }
    }

    /// The sums stop at the threshold of acting: when the cause is gone they are soon down again.
    fn add(&mut self, tuning: &Tuning, surprise: f64) {
        let next = |sum: f64, by: f64| (sum + by.min(MOST_ADDED) - tuning.allowance).clamp(0.0, tuning.act);
        self.rise = next(self.rise, surprise);
        self.fall = next(self.fall, -surprise);
    }

    /// The level and the noise after a day.
    fn learn(&mut self, surprise: f64, spread: f64, noise: f64) {
        let held = surprise.clamp(-MOST_SURPRISE, MOST_SURPRISE);
        let gain = self.doubt / spread;
        self.level += gain * held * spread.sqrt();
        self.doubt *= 1.0 - gain;
        // Of the square of a surprise the noise has its share of the spread.
        self.noise.0 += noise * (1.0 + (held.powi(2) - 1.0) * noise / spread);
        self.noise.1 += 1.0;
    }

    fn sum(&self, side: Side) -> f64 {
        match side {
            Side::Down => self.fall,
            Side::Up => self.rise,
            Side::Both => self.fall.max(self.rise),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TUNING: Tuning = Tuning {
        expected: 0.0,
        start: 0.15,
        drift: 0.01,
        noise: 0.08,
        noise_days: 10.0,
        allowance: 0.5,
        look: 3.5,
        act: 5.0,
        side: Side::Down,
    };

    fn days(values: impl IntoIterator<Item = f64>) -> Vec<Seen> {
        (0..).zip(values).map(|(day, value)| Seen { day, value, error: 0.0 }).collect()
    }

    fn zigzag(around: f64) -> impl Iterator<Item = f64> {
        (0..).map(move |day| around + if day % 2 == 0 { 0.05 } else { -0.05 })
    }

    #[test]
    fn a_level_of_its_own_is_no_news() {
        let steps = TUNING.follow(&days(zigzag(0.2).take(30)));
        assert!(steps.iter().all(|step| step.level == Level::Steady), "{steps:?}");
        assert!((steps[29].expected - 0.2).abs() < 0.03 && steps[29].deviation < 0.08);
    }

    #[test]
    fn a_fall_that_stays_is_looked_at_before_it_is_acted_on() {
        let steps = TUNING.follow(&days(zigzag(0.2).take(20).chain(zigzag(0.0).take(8))));
        let levels: Vec<Level> = steps.iter().map(|step| step.level).collect();
        let first = |wanted| levels.iter().position(|level| *level == wanted).unwrap();
        assert!(first(Level::Look) >= 20 && first(Level::Look) < first(Level::Act), "{levels:?}");
        let risen = TUNING.follow(&days(zigzag(0.0).take(20).chain(zigzag(0.3).take(8))));
        assert!(risen.iter().all(|step| step.level == Level::Steady), "a rise is not bad here");
        let both = Tuning { side: Side::Both, ..TUNING };
        let risen = both.follow(&days(zigzag(0.0).take(20).chain(zigzag(0.3).take(8))));
        assert!(risen.iter().any(|step| step.level == Level::Act));
    }

    #[test]
    fn a_missing_day_adds_nothing_and_makes_less_sure() {
        let all = days(zigzag(0.0).take(10));
        let mut gap = all.clone();
        gap.drain(4..9);
        let (with, without) = (TUNING.follow(&all), TUNING.follow(&gap));
        assert_eq!(without.len(), 5);
        assert!(without[4].deviation > with[9].deviation);
    }

    /// Derived: on the first day the spread is start² + noise² + error.
    #[test]
    fn the_first_day_knows_nothing_but_the_tuning() {
        let step = TUNING.follow(&[Seen { day: 3, value: -0.17, error: 0.0 }])[0];
        assert!((step.deviation - 0.17).abs() < 1e-12 && (step.surprise + 1.0).abs() < 1e-12);
        assert!((step.sum - 0.5).abs() < 1e-12);
        let unsure = TUNING.follow(&[Seen { day: 3, value: -0.17, error: 0.17f64.powi(2) }])[0];
        assert!((unsure.surprise + 0.5f64.sqrt()).abs() < 1e-12);
    }

    #[test]
    fn the_sum_stops_at_act_and_comes_down() {
        let steps = TUNING.follow(&days([-0.9; 6].into_iter().chain([0.2; 8])));
        assert!(steps.iter().any(|step| step.sum == TUNING.act));
        assert_eq!(steps.last().unwrap().level, Level::Steady);
    }
}
